// SPDX-License-Identifier: GPL-3.0-or-later
// Pieces for tables: how wide each column is, and a piece for each row.
#pragma once

#include "core/sheet/document.h"
#include "ui/sheet/piece.h"
#include "ui/sheet/sheet_style.h"

namespace ohmwright::sheet {

// Appends the caption, the column headers and the rows. Rows are cut only when taller than a page;
// headers, and the group a row belongs to, come again on each page. A total stays with the row
// above it, and a short table on one page.
void addTable(const Table &table, const SheetStyle &style, double width, double bodyHeight,
              Pieces &pieces);

} // namespace ohmwright::sheet
