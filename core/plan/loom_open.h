// SPDX-License-Identifier: GPL-3.0-or-later
// The same build with what is done left out. For paper, where what is still to be done needs the
// room.
#pragma once

#include "core/plan/loom.h"

#include <QString>

#include <utility>
#include <vector>

namespace ohmwright::plan {

struct LoomOpen
{
    Network network;
    LoomFacts facts;
    int leftOut = 0;                            // tasks and milestones
    std::vector<std::pair<QString, int>> areas; // how many of each area, as first met
};

// What is set aside stays. A link to a task that is left out becomes a need that is met, so a task
// keeps the number of its cavities, and how many are filled.
LoomOpen leaveOutDone(const Network &network, const LoomFacts &facts);

} // namespace ohmwright::plan
