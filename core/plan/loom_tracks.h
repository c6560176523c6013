// SPDX-License-Identifier: GPL-3.0-or-later
// Inside of loom_route.h: parallel stretches side by side in a gap or a channel, in an order that
// crosses as few as it can.
#pragma once

#include <cstddef>
#include <vector>

namespace ohmwright::plan::loom {

// One stretch. `lo` to `hi` is where it runs; at each branch point something joins it from the
// side of lower (-1) or higher (+1) tracks.
struct Stretch
{
    struct Join
    {
        double at = 0;
        int side = 0;
    };

    double lo = 0, hi = 0;
    double width = 0; // what it needs across, clearance included
    std::vector<Join> joins;
    std::size_t owner = 0; // whose wire; for the caller
    double track = 0;      // out: middle, from the lower edge of all tracks

    void join(double at, int side);
};

// Gives every stretch its track; those that overlap lie `width` apart. Returns the breadth of all.
// Stretches nearer than `clearance` along their length count as overlapping.
double layTracks(std::vector<Stretch> &stretches, double clearance);

} // namespace ohmwright::plan::loom
