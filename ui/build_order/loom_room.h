// SPDX-License-Identifier: GPL-3.0-or-later
// More room in a loom that is laid out already: what lies beyond a line is moved away from it, and
// wires that cross it get longer. Nothing changes its shape or its order.
#pragma once

#include "core/plan/loom.h"

#include <vector>

namespace ohmwright::ui {

struct LoomRoom
{
    double at = 0;   // height of the line, scene units
    double more = 0; // that is to be free below it, 0 or more
};

// Lines between the rows, top to bottom; none may pass through a housing or its texts.
void makeRoomBelow(plan::Loom &loom, const std::vector<LoomRoom> &lines);

// One upright line between two columns.
void makeRoomRightOf(plan::Loom &loom, double x, double more);

} // namespace ohmwright::ui
