// SPDX-License-Identifier: GPL-3.0-or-later
// Where the Tab key goes: through what is shown, as it is read, layout by layout. Qt's own chain
// follows the order in which widgets were made, goes through hidden pages, and can close to a ring
// without the rest of the window when rows are made anew.
#pragma once

#include <vector>

class QWidget;

namespace ohmwright::ui {

// What Tab stops at inside `root`, in reading order: shown, enabled, and not standing for another.
std::vector<QWidget *> tabStops(QWidget &root);

// The stop after (or before) the one that has the focus, from the last round to the first; null
// where there is none.
QWidget *nextTabStop(QWidget &root, bool forward);

// Puts Qt's chain into that order, for a part of a window whose rows are made anew and that is
// also shown by itself. Where the part stands in the window's order stays as it is.
void tabInReadingOrder(QWidget &root);

} // namespace ohmwright::ui
