// SPDX-License-Identifier: GPL-3.0-or-later
// How a table's width is shared out among its columns.
#pragma once

#include "core/sheet/document.h"

#include <vector>

namespace ohmwright::sheet {

// What a column's contents ask for, gap to the next column included.
struct ColumnNeed
{
    double least = 0;      // its longest word or figure
    double natural = 0;    // without any line break
    int share = 0;         // as in Column
    bool stretches = true; // has use for more than its natural width
};

// Adds up to `total`. Columns with a share divide what the others leave, in proportion; no column
// gets less than its least, as long as there is room for that.
std::vector<double> shareOutWidth(const std::vector<ColumnNeed> &needs, double total);

} // namespace ohmwright::sheet
