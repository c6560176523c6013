// SPDX-License-Identifier: GPL-3.0-or-later
// What a screen reader says a widget is, where Qt has no better word than "filler": a scroll area
// one can stand in, such as pages to read.
#pragma once

#include <QAccessible>

class QWidget;

namespace ohmwright::ui {

// Before the widget has a name or is shown: Qt keeps the role it is first asked for.
void speakAs(QWidget &widget, QAccessible::Role role);

} // namespace ohmwright::ui
