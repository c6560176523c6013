// SPDX-License-Identifier: GPL-3.0-or-later
// Inside of loom.h: how large every housing, plate and sleeve must be for its text and cavities.
#pragma once

#include "core/plan/loom_place.h"
#include "core/plan/loom_text.h"

#include <cstddef>
#include <vector>

namespace ohmwright::plan::loom {

struct Size // of a task, before it has a place
{
    double width = 0, height = 0; // of the housing or plate
    double cellWidth = 0;         // with the texts beside it
    double up = 0, down = 0;      // from the centre line, texts included
    Words::Broken title, missing, date;
    Missing lack;
    std::size_t cavities = 0;
    int cavityRows = 1;
};

struct Sizes
{
    std::vector<Size> of;               // per task
    std::vector<double> columnWidth;    // per column
    std::vector<Words::Broken> sleeves; // per branch
};

// Space left and right of a sleeve's name, scene units.
inline constexpr double kSleevePad = 9;
// Between a plate and the texts beside it, scene units.
inline constexpr double kPlateTextGap = 8;

// At least half of the tasks are: their branch carries the mark.
bool mostlyHighVoltage(const Network &network, const std::vector<std::size_t> &tasks);

Sizes measure(const Network &network, const LoomFacts &facts, const LoomMetrics &metrics,
              const Placement &placement);

} // namespace ohmwright::plan::loom
