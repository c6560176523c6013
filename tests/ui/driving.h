// SPDX-License-Identifier: GPL-3.0-or-later
// What every test of the window needs: a themed application, a shown and active window, keys.
#pragma once

#include "ui/shell/theme.h"

#include <QAccessible>
#include <QApplication>
#include <QTest>
#include <QWidget>

#include <gtest/gtest.h>

namespace ohmwright::ui::driving {

struct Themed
{
    Themed() { theme.applyTo(*qApp); }
    Theme theme;
};

inline void showActive(QWidget &window)
{
    window.show();
    window.activateWindow();
    ASSERT_TRUE(QTest::qWaitForWindowActive(&window));
}

// To whatever has the focus, as a keyboard does.
inline void press(Qt::Key key, Qt::KeyboardModifiers modifiers = Qt::NoModifier)
{
    QWidget *target = QApplication::focusWidget();
    ASSERT_NE(target, nullptr);
    QTest::keyClick(target, key, modifiers);
}

inline void type(const QString &latin1)
{
    QWidget *target = QApplication::focusWidget();
    ASSERT_NE(target, nullptr);
    QTest::keyClicks(target, latin1);
}

inline QString spoken(QWidget *widget, QAccessible::Text which = QAccessible::Name)
{
    QAccessibleInterface *face = QAccessible::queryAccessibleInterface(widget);
    return face ? face->text(which) : QString();
}

} // namespace ohmwright::ui::driving
