// SPDX-License-Identifier: GPL-3.0-or-later
// The same build with what is done told in short: of each area's done tasks one remains, "7 done".
// For paper, where what is still to be done needs the room.
#pragma once

#include "core/plan/loom.h"

namespace ohmwright::plan {

struct LoomCondensed
{
    Network network;
    LoomFacts facts;
    int folded = 0; // tasks that stand in a "… done" now
};

// Milestones, tasks set aside, and the only done task of an area stay as they are. What waits on a
// task that was folded waits on its area's; what those waited on is left out, so no loop can come
// of it, even where a task was done before one it waits on. Keys of the new ones: "done/" and the
// area.
LoomCondensed condenseDone(const Network &network, const LoomFacts &facts);

} // namespace ohmwright::plan
