// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

class QWidget;

namespace ohmwright::ui {

// The Tab key goes through what lies in `root` as it is read, layout by layout. For a part of a
// window whose rows are made anew: what is made later would otherwise come last. Where the part
// itself stands in the window's order stays as it is.
void tabInReadingOrder(QWidget &root);

} // namespace ohmwright::ui
