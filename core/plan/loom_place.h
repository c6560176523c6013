// SPDX-License-Identifier: GPL-3.0-or-later
// Inside of loom.h, first half: which column and which run each task stands in, and in which order
// the branches lie. Whole numbers only; loom_route.h turns them into lengths.
#pragma once

#include "core/plan/loom.h"

#include <QString>

#include <cstddef>
#include <vector>

namespace ohmwright::plan::loom {

struct Link
{
    std::size_t from = 0, to = 0;
    std::size_t afterIndex = 0; // of Task::after
    bool implied = false;       // by a longer chain
    bool drawn = true;
    bool driving = false;
};

struct Placement
{
    std::vector<std::size_t> order; // every task after all it waits on
    std::vector<Link> links;        // by `to`, then `from`; none double, none backwards
    std::vector<std::vector<std::size_t>> into, outOf; // per task: indices of links
    std::vector<QString> areas;        // per branch, as first met; where runs are shared, per piece
    std::vector<std::size_t> branchOf; // per task
    std::vector<std::vector<std::size_t>> tasksOf; // per branch, by column, then order
    std::vector<int> column;                       // per task; column 0 holds sleeves only
    std::vector<int> run;                          // per task: run within its branch
    std::vector<int> runsOf;                       // per branch
    int columns = 0;
    struct Rule // of the date axis, in the gap right of a column
    {
        LoomRule::Kind kind = LoomRule::Kind::Week;
        int gap = 0;
        QDate day;
    };
    std::vector<Rule> rules; // left to right
};

Placement place(const Network &network, const LoomFacts &facts, const LoomOptions &options);

// Branches from top to bottom, and which of them fork upwards instead of down.
struct Stacking
{
    std::vector<std::size_t> order;
    std::vector<bool> upwards; // per branch
    std::vector<int> firstRow; // per branch: its uppermost
    int rows = 0;
};

// One below the other in this order.
Stacking stackedUp(const Placement &placement, std::vector<std::size_t> order,
                   std::vector<bool> upwards);

// Left to right, each as near as can be to what it waits on, on rows that are free there: the
// column before a branch's first task is its sleeve's.
Stacking packed(const Placement &placement);

// Per task: its row, counted over all runs from the top.
std::vector<int> rowsFor(const Placement &placement, const Stacking &stacking);

// An order of branches that keeps wires between them short: by centre of gravity, then by moving
// single branches while that helps.
std::vector<std::size_t> shortOrder(const Placement &placement);

} // namespace ohmwright::plan::loom
