// SPDX-License-Identifier: GPL-3.0-or-later
// Inside of loom.h, second half: the wires' ways, and with them every column's and run's place.
//
// A wire leaves its task to the right into the gap beside its column, changes height there in a
// lane of its own, runs along a channel between two runs, and changes height again in the gap
// before its target. Gaps and channels grow with what runs in them. Wires from one task share
// lane and channel as far as they go together; so do wires into one task for their last stretch.
#pragma once

#include "core/plan/loom_place.h"

#include <QPointF>
#include <QRectF>

#include <cstddef>
#include <vector>

namespace ohmwright::plan::loom {

struct RouteInput
{
    const Placement *placement = nullptr;
    const LoomMetrics *metrics = nullptr;
    std::vector<int> row; // per task
    int rows = 0;
    std::vector<bool> startsBranch;     // per row: the channel above it parts two branches
    std::vector<double> columnWidth;    // per column
    std::vector<double> gapRoom;        // per column: more room right of its gap's lanes, for rules
    std::vector<double> rowUp, rowDown; // per row: space taken above and below its centre line
    // Per task: from its column's left edge to where wires end, and to where they start.
    std::vector<double> enterAt, leaveAt;
    std::vector<double> port;   // per link: height above (-) or below its target's centre
    std::vector<bool> ownLanes; // per task: wires into it do not merge before it
};

struct Routed
{
    std::vector<double> columnLeft;         // per column
    std::vector<double> rowY;               // per row: centre line
    std::vector<std::vector<QPointF>> path; // per link; empty when not drawn
    std::vector<bool> alongTrunk;           // per link
    std::vector<QRectF> bundles;            // bands behind wires that run side by side
    std::vector<LoomTie> ties;              // around them
    double bottom = 0;
    int crossings = 0;
    double length = 0;
};

Routed route(const RouteInput &input);

} // namespace ohmwright::plan::loom
