// SPDX-License-Identifier: GPL-3.0-or-later
// Inside of loom.h: from sizes and ways to the finished loom.
#pragma once

#include "core/plan/loom_measure.h"
#include "core/plan/loom_route.h"

#include <cstddef>
#include <vector>

namespace ohmwright::plan::loom {

// One order of branches, wired.
struct Wired
{
    Stacking stacking;
    RouteInput in;
    std::vector<std::vector<std::size_t>> plateAt; // milestones: cavity to its place from the top
    Routed routed;
};

Loom draw(const Network &network, const LoomFacts &facts, const LoomMetrics &metrics,
          const Placement &placement, const Sizes &sizes, Wired wired);

} // namespace ohmwright::plan::loom
