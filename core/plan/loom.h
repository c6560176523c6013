// SPDX-License-Identifier: GPL-3.0-or-later
// Where everything lies when the build is drawn as a wiring loom.
//
// Pure geometry from a Network: no fonts (widths are passed in), no colours, no widgets. The view
// in ui/build_order paints it; the PDF writer can paint the same.
//
// A branch of the loom is one area's tasks, laid left to right in an order that never makes a wire
// run backwards; a wire joins two branches where a task waits on one in another area; a milestone
// is a bulkhead plate with a numbered cavity for each wire that ends there.
#pragma once

#include "core/plan/network.h"

#include <QPointF>
#include <QRectF>

#include <functional>

namespace ohmwright::plan {

struct LoomTask
{
    std::size_t task = 0;
    QRectF body;                       // the connector housing (or the milestone's plate)
    std::vector<QRectF> cavities;      // one per need (tasks before it count as one cavity each)
    std::vector<bool> filled;          // same length
    QString missing;                   // what hangs from the first empty leaf cavity; may be empty
    QPointF missingAt;                 // left end of that text's baseline
    bool onDrivingChain = false;
    bool startable = false;
};

struct LoomBranch
{
    QString area;
    double y = 0;
    double left = 0, right = 0;        // extent of the laced trunk
    QRectF sleeve;                     // the name sleeve; overlaps no housing
    bool highVoltage = false;          // any task on it is
};

struct LoomWire
{
    std::size_t from = 0, to = 0;      // tasks
    std::vector<QPointF> path;         // control points: start, c1, c2, end (cubics, 3n+1 points)
    bool driving = false;
    bool alongTrunk = false;           // runs within its branch
    bool highVoltage = false;
};

struct Loom
{
    std::vector<LoomTask> tasks;       // by task index
    std::vector<LoomBranch> branches;  // top to bottom
    std::vector<LoomWire> wires;
    QRectF bounds;
    int crossings = 0;                 // wires crossing wires, for tests and tuning
};

struct LoomMetrics
{
    std::function<double(const QString &)> textWidth;  // of a housing's title, in scene units
    double housingHeight = 34, gapX = 40, branchGap = 92, cavityWidth = 9, cavityHeight = 7;
};

// `driving` lights a chain (HoldUps::driving); may be empty. Deterministic.
Loom layOutLoom(const Network &network, const std::vector<std::size_t> &driving,
                const LoomMetrics &metrics);

} // namespace ohmwright::plan
