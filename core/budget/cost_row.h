// SPDX-License-Identifier: GPL-3.0-or-later
// What the units compared cost, landed.
#pragma once

#include "core/parts/compare.h"

#include <optional>

namespace ohmwright {

// Parts that were bought; of others, and of types, no cost is known. None if none was bought.
std::optional<ComparedRow> landedCostRow(const Records &records,
                                         const std::vector<ComparedUnit> &units);

} // namespace ohmwright
