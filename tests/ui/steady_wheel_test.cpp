// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/ui/driving.h"
#include "ui/widgets/steady_wheel.h"

#include <QApplication>
#include <QComboBox>
#include <QListWidget>
#include <QScrollBar>
#include <QSpinBox>
#include <QVBoxLayout>
#include <QWheelEvent>

#include <gtest/gtest.h>

namespace ohmwright::ui {
namespace {

// What the wheel does over a field; not accepted, it goes on to what the field stands in.
bool isTaken(QWidget &over)
{
    const QPointF at = over.rect().center();
    QWheelEvent wheel(at, over.mapToGlobal(at), {}, {0, -120}, Qt::NoButton, Qt::NoModifier,
                      Qt::NoScrollPhase, false);
    QApplication::sendEvent(&over, &wheel);
    return wheel.isAccepted();
}

class ASteadyWheel : public testing::Test
{
protected:
    ASteadyWheel()
    {
        auto *column = new QVBoxLayout(&form);
        kind->addItems(
            {QStringLiteral("bonding"), QStringLiteral("precharge"), QStringLiteral("torque")});
        list->addItems({QStringLiteral("one"), QStringLiteral("two"), QStringLiteral("three")});
        list->setFixedHeight(30);
        column->addWidget(kind);
        column->addWidget(count);
        column->addWidget(list);
        driving::showActive(form);
    }

    SteadyWheel steady{*qApp};
    QWidget form;
    QComboBox *kind = new QComboBox;
    QSpinBox *count = new QSpinBox;
    QListWidget *list = new QListWidget;
};

TEST_F(ASteadyWheel, ChangesNoFieldNotEvenTheFocusedOne)
{
    kind->setFocus();
    EXPECT_FALSE(isTaken(*kind));
    EXPECT_EQ(kind->currentIndex(), 0);
    count->setFocus();
    EXPECT_FALSE(isTaken(*count));
    EXPECT_EQ(count->value(), 0);
}

TEST_F(ASteadyWheel, StillScrolls)
{
    EXPECT_TRUE(isTaken(*list->viewport()));
    EXPECT_GT(list->verticalScrollBar()->value(), 0);
}

TEST_F(ASteadyWheel, LeavesTheKeysAsTheyAre)
{
    kind->setFocus();
    driving::press(Qt::Key_Down);
    EXPECT_EQ(kind->currentIndex(), 1);
}

} // namespace
} // namespace ohmwright::ui
