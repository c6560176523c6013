// SPDX-License-Identifier: GPL-3.0-or-later
// A loom folded for paper: cut into bands that stand one below the other, on one sheet or several.
//
// A band shows one stretch of the loom. Whatever row has nothing in that stretch is closed up, so
// a band is as low as its own work allows, and the letters of the whole get larger. A wire that
// goes on in the next band has the same number at both ends of the cut, counted from the top.
// Pure geometry, like the loom itself; lengths are scene units.
#pragma once

#include "core/plan/loom.h"

#include <QSizeF>

#include <cstddef>
#include <vector>

namespace ohmwright::plan {

struct LoomBand
{
    Loom loom;                      // closed up; only what lies between the cuts is in place
    double left = 0, right = 0;     // the cuts
    std::vector<double> in, out;    // heights of the wires that are cut, top to bottom
    bool first = true, last = true; // nothing comes before, after it
    double nameMargin = 0;          // left of the cut: what the branches' names and numbers take
    double tail = 0;                // right of the cut: what the numbers take
    std::size_t sheet = 0;          // on which it stands
    [[nodiscard]] double width() const { return nameMargin + (right - left) + tail; }
    [[nodiscard]] double height() const { return loom.bounds.height(); }
};

struct LoomFold
{
    std::vector<LoomBand> bands; // left to right; top to bottom and sheet by sheet on paper
    double scale = 0;            // paper's units a scene unit
    std::size_t sheets = 1;      // that are needed; none is empty
};

// The room on one sheet, in the paper's units.
struct LoomPaper
{
    QSizeF room;
    std::size_t sheets = 1; // as many as there may be, at least 1
    double mostScale = 1;   // paper's units a scene unit; above 0
    double between = 26;    // between two bands, scene units
};

// Number of bands, where they are cut and the scale, chosen together so that the scale is the
// largest; fewer bands where that costs next to nothing, for folding is a nuisance to read. Never
// cut through a housing or a text. An empty loom has no bands. Costs about (columns squared) times
// (tasks + wires) for up to 80 columns; beyond that it may not cut at every one of them.
//
// `memory` may be kept from one fold of a loom to the next, on whatever paper: that is quicker.
struct LoomFoldMemory
{
    std::vector<double> heights; // per pair of cuts; below 0: not known yet
};
LoomFold foldLoom(const Loom &loom, const LoomPaper &paper, LoomFoldMemory *memory = nullptr);

} // namespace ohmwright::plan
