// SPDX-License-Identifier: GPL-3.0-or-later
// Single mode files of PSPLIB (R. Kolisch, A. Sprecher, European Journal of Operational Research 96
// (1997) 205-216), read into a workload of one slot a day.
#pragma once

#include "core/plan/levelling.h"

#include <optional>
#include <string>

namespace ohmwright::plan::psplib {

// Nothing if the file can't be read or is not one of these.
std::optional<Workload> readSm(const std::string &path);

} // namespace ohmwright::plan::psplib
