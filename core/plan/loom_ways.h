// SPDX-License-Identifier: GPL-3.0-or-later
// Inside of loom_route.h: which way each wire takes, in whole numbers.
//
// A wire leaves its task into the gap beside its column, changes height there, runs along a channel
// between two runs, and changes height again in the gap before its target.
#pragma once

#include "core/plan/loom_place.h"

#include <cstddef>
#include <vector>

namespace ohmwright::plan::loom {

inline constexpr int kNoChannel = -1;

struct Way
{
    int leaves = 0, enters = 0; // gaps; gap k lies right of column k
    int from = 0, to = 0;       // rows
    int channel = kNoChannel;   // k lies above row k; none: straight, or within one gap
    bool straight = false;      // along its run, nothing between
};

// Per link. Those not drawn have no channel.
std::vector<Way> chooseWays(const Placement &placement, const std::vector<int> &row, int rows);

} // namespace ohmwright::plan::loom
