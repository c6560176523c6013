// SPDX-License-Identifier: GPL-3.0-or-later
// Inside of loom_route.h: where every lane and track lies, and what follows from it.
#pragma once

#include "core/plan/loom_route.h"
#include "core/plan/loom_tracks.h"
#include "core/plan/loom_ways.h"

#include <cstddef>
#include <limits>
#include <vector>

namespace ohmwright::plan::loom {

inline constexpr std::size_t kNoLane = std::numeric_limits<std::size_t>::max();

// How far a bend may reach along and across, scene units.
inline constexpr double kBendAlong = 20;
inline constexpr double kBendAcross = 34;

struct Wiring
{
    struct Lanes // of one wire: indices into the stretches of its gaps and of its channel
    {
        std::size_t along = kNoLane, leaving = kNoLane, entering = kNoLane;
    };

    std::vector<Way> ways;                      // per link
    std::vector<Lanes> lanes;                   // per link
    std::vector<std::vector<Stretch>> channels; // along x, in gaps
    std::vector<std::vector<Stretch>> gaps;     // along y, in scene units
    std::vector<double> channelTop;             // of the first track
    std::vector<double> laneLeft;               // per gap: of the first lane
    std::vector<double> columnLeft, columnRight;
    std::vector<double> rowY;

    [[nodiscard]] double laneX(int gap, std::size_t lane) const;
    [[nodiscard]] double channelY(std::size_t link) const;
    // Where a link's wire ends, given how far that is from its target's centre line.
    [[nodiscard]] double endY(std::size_t link, double port) const;
};

// Upright pieces against level ones, each drawn line once however many wires share it.
int countCrossings(const RouteInput &input, const Wiring &wiring);

// Bands behind, and ties around, wires that run side by side.
void bundle(const RouteInput &input, const Wiring &wiring, Routed &routed);

} // namespace ohmwright::plan::loom
