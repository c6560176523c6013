// SPDX-License-Identifier: GPL-3.0-or-later
// Inside of loom.h: columns by date instead of by chain, and the axis they stand on.
#pragma once

#include "core/plan/loom_place.h"

#include <vector>

namespace ohmwright::plan::loom {

// Sets every task's column and the axis's rules. Columns follow one another in time: whatever
// starts in one starts no earlier than all in the columns left of it, and no column holds days of
// two weeks. A link never runs backwards: a task whose day is before that of one it waits on
// stands behind that one all the same.
void settleByDate(const Network &network, const LoomForecast &forecast, Placement &placement);

// Per column: the room its gap must have for the rules in it, scene units.
std::vector<double> roomForRules(const Placement &placement);

// Rules and band of the finished loom. `columnLeft` as routed; `top` of all that is drawn.
void ruleAxis(const Placement &placement, const std::vector<double> &columnLeft,
              const std::vector<double> &columnWidth, double top, Loom &loom);

} // namespace ohmwright::plan::loom
