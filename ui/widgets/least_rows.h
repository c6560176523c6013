// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

class QScrollArea;
class QTableView;
class QWidget;

namespace ohmwright::ui {

// Where a window is low or its letters are large: the table is never lower than its head and so
// many rows, and what it stands on scrolls instead. After DraftedTableDelegate::dress.
void keepLeastRows(QTableView &view, int rows);
// `content` filling a frameless area that scrolls down when there is too little height for it.
QScrollArea *scrolledWhenLow(QWidget *content);

} // namespace ohmwright::ui
