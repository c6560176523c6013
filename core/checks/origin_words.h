// SPDX-License-Identifier: GPL-3.0-or-later
// Where an input comes from, in one line: for the build sheet and the commands.
#pragma once

#include "core/checks/given.h"

namespace ohmwright {

// "nameplate, plate on the lid, older than the rework": the evidence's word, its source if told,
// and what weakens it.
[[nodiscard]] QString evidenceOf(const Origin &from);

} // namespace ohmwright
