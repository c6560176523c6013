// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/ui/driving.h"
#include "ui/widgets/passed_on_undo.h"

#include <QApplication>
#include <QLineEdit>
#include <QShortcut>
#include <QVBoxLayout>

#include <gtest/gtest.h>

namespace ohmwright::ui {
namespace {

TEST(PassedOnUndo, IsTheWindowsUnlessTheFieldHasSomethingToTakeBack)
{
    const PassedOnUndo passed(*qApp);
    QWidget window;
    auto *column = new QVBoxLayout(&window);
    auto *line = new QLineEdit(QStringLiteral("250 A"));
    column->addWidget(line);
    int undone = 0;
    auto *undo = new QShortcut(QKeySequence::Undo, &window);
    QObject::connect(undo, &QShortcut::activated, [&] { ++undone; });
    driving::showActive(window);
    line->setFocus();
    driving::press(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(undone, 1);
    driving::type(QStringLiteral("0"));
    driving::press(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(undone, 1);
    EXPECT_EQ(line->text(), QStringLiteral("250 A"));
}

} // namespace
} // namespace ohmwright::ui
