// SPDX-License-Identifier: GPL-3.0-or-later
// Decides which piece stands on which page.
#pragma once

#include "ui/sheet/piece.h"

#include <vector>

namespace ohmwright::sheet {

// A piece, or the part [from, to) of one, with its top at `y` below the body's top.
struct Placed
{
    std::shared_ptr<const Piece> piece;
    double y = 0;
    double from = 0, to = 0;
    bool again = false; // a repeated header
};

using Page = std::vector<Placed>;

// Fills pages of the given body height from top to bottom. A piece that keeps with the next never
// ends a page, unless all that hangs together is taller than one. Pieces are cut only if they may
// flow or are taller than a page. Always at least one page.
std::vector<Page> breakIntoPages(const Pieces &pieces, double bodyHeight);

} // namespace ohmwright::sheet
