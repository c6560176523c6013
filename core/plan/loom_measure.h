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
    bool forecast = false; // the strip below the housing that tells its days
    Words::Broken plan, ready, slack;
    Missing lack;
    std::size_t cavities = 0;
    int cavityRows = 1;
};

struct Sizes
{
    std::vector<Size> of;               // per task
    std::vector<double> columnWidth;    // per column
    std::vector<Words::Broken> sleeves; // per branch
    double whiskerPerDay = 0;           // scene units; one for all, so that whiskers compare
};

// Space left and right of a sleeve's name, scene units.
inline constexpr double kSleevePad = 9;
// The strip's text line is a date line; below it lies the whisker.
inline constexpr double kWhiskerHeight = 8;
// Of a loop of slack, and between it and the texts beside it.
inline constexpr double kLoopWidth = 12;
inline constexpr double kLoopGap = 6;
// A lead that goes round the strip runs so far right of the housing's edge, its text farther.
inline constexpr double kLeadIndent = 3;
inline constexpr double kBesideLead = 9;
// Between a plate and the texts beside it, scene units.
inline constexpr double kPlateTextGap = 8;

// The strip's height below a housing: two lines, or one and a whisker.
inline double stripHeight(const LoomMetrics &metrics, const Size &size)
{
    return metrics.dateLine + (size.plan.lines.isEmpty() ? kWhiskerHeight : metrics.dateLine);
}

// At least half of the tasks are: their branch carries the mark.
bool mostlyHighVoltage(const Network &network, const std::vector<std::size_t> &tasks);

Sizes measure(const Network &network, const LoomFacts &facts, const LoomMetrics &metrics,
              const Placement &placement);

} // namespace ohmwright::plan::loom
