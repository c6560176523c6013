// SPDX-License-Identifier: GPL-3.0-or-later
// Inside of loom_dress.h.
#pragma once

#include "core/plan/loom.h"

namespace ohmwright::ui {

// Takes out the stretches of trunk in which no wire lies, with their ties, and the bends in which
// none ever does: a tube between two housings reads as a link. Each run keeps the stretch before
// its first housing, where its name stands.
void openEmptyTubes(plan::Loom &loom);

} // namespace ohmwright::ui
