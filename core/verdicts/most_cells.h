// SPDX-License-Identifier: GPL-3.0-or-later
// The inverse answer for a type or a part alone: how many cells in series its voltage limit, and
// that of each part inside it, allows with the cells of the book's pack at full charge.
#pragma once

#include "core/parts/compare.h"
#include "core/verdicts/book_inputs.h"

#include <optional>

namespace ohmwright {

// A row to compare by, one cell for each unit; what it was worked with stands in `from`, and so
// does what could still lower it. A limit in cells, as of a battery management, counts too. None
// where no unit has a DC voltage limit or one in cells: nobody asks it of a bracket.
//
// Inside a part counts what has a DC voltage limit or is on the pack's circuit; what is connected
// to another circuit alone (the control board on 12 V) does not.
std::optional<ComparedRow> mostCellsRow(const BookInputs &in,
                                        const std::vector<ComparedUnit> &units);

} // namespace ohmwright
