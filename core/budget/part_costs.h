// SPDX-License-Identifier: GPL-3.0-or-later
// Landed cost of every bought part in one pass, for lists. The same figures as landedCostOf, which
// looks through all parts for each one.
#pragma once

#include "core/budget/budget.h"

#include <unordered_map>

namespace ohmwright {

// In the book's currency. A part that was not bought is not in it.
std::unordered_map<Id<Part>, Money> landedCosts(const Records &records);

} // namespace ohmwright
