// SPDX-License-Identifier: GPL-3.0-or-later
// The order in which activities are best planned, looked for with a budget of passes.
#pragma once

#include "core/plan/level_rules.h"
#include "core/plan/levelling.h"

#include <cstddef>
#include <cstdint>
#include <functional>
#include <vector>

namespace ohmwright::plan {

struct LevelSearch
{
    // Passes, forward or backward, each giving every activity a start. At least one is made; the
    // one with unlimited resources, for the lower bound, is not counted.
    int schedules = 1000;
    std::uint64_t seed = 1; // the same seed and budget find the same order everywhere
    // The activities to be done early (a milestone, say); empty: all of them. What none of them
    // waits for comes behind in the order found, and only gets what they leave.
    std::vector<std::size_t> goals;
    std::function<bool()> cancelled; // asked every few passes; empty: never
};

struct LevelFound
{
    enum class Stopped {
        Spent,     // the budget is used up
        AtBound,   // nothing can be better
        Cancelled, // the best so far
    };
    std::vector<std::size_t> order; // for Levelling::setOrder
    // When the goals are finished and waited for in a pass with that order; kNever if one never is.
    int end = 0, endDay = 0;
    // No plan has the goals ready earlier: each with every resource for itself, and the work of
    // each resource spread over all there is of it.
    int boundEnd = 0, boundEndDay = 0;
    int schedules = 0;
    Stopped stopped = Stopped::Spent;
};

// A population of orders, crossed and improved. To begin with, orders by the priority rules and
// drawn around them; each is pushed back and forth once (double justification: V. Valls, F.
// Ballestín, S. Quintanilla, European Journal of Operational Research 165 (2005) 375-386), which
// for unbroken work never makes it later; pairs are crossed at two points (S. Hartmann, Naval
// Research Logistics 45 (1998) 733-750). R. Kolisch and S. Hartmann compare such methods in
// European Journal of Operational Research 174 (2006) 23-37.
LevelFound searchOrder(const Workload &workload, const LevelSearch &search = {});

} // namespace ohmwright::plan
