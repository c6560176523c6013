// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/fixed_clock.h"
#include "tests/ui/driving.h"
#include "ui/start/start_sheet.h"

#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QRadioButton>
#include <QSignalSpy>

#include <gtest/gtest.h>

using namespace ohmwright;
using namespace ohmwright::ui;
using namespace ohmwright::ui::driving;

namespace {

class AStartSheet : public testing::Test
{
protected:
    AStartSheet()
    {
        sheet.resize(1100, 760);
        showActive(sheet);
        sheet.begin();
    }

    // The combo box that has the focus.
    static QComboBox *choice() { return qobject_cast<QComboBox *>(QApplication::focusWidget()); }

    const Starter gearbox = *findStarter(QStringLiteral("gearbox"));
    Themed themed;
    StartSheet sheet{themed.theme};
};

} // namespace

TEST_F(AStartSheet, offersTheStartersAndAnEmptyBookWithTheUsualAnswersSet)
{
    QStringList offers;
    for (const QRadioButton *button : sheet.findChildren<QRadioButton *>())
        offers << button->text();
    EXPECT_EQ(offers.size(), 4);
    EXPECT_EQ(offers.back(), QStringLiteral("An empty book"));
    EXPECT_EQ(sheet.starter(), QStringLiteral("gearbox"));
    for (const StarterQuestion &question : gearbox.questions)
        EXPECT_EQ(sheet.answers().value(question.key), question.usual)
            << question.key.toStdString();
}

TEST_F(AStartSheet, makesTheBookWithEnterAlone)
{
    const QSignalSpy wanted(&sheet, &StartSheet::wanted);
    press(Qt::Key_Return);
    EXPECT_EQ(wanted.count(), 1);
    EXPECT_EQ(sheet.starter(), QStringLiteral("gearbox"));
}

TEST_F(AStartSheet, countsInTheCurrencyTypedAndRefusesWhatIsNone)
{
    EXPECT_EQ(sheet.currency(), Currency());
    auto *line = sheet.findChild<QLineEdit *>();
    ASSERT_NE(line, nullptr);
    line->setFocus();
    line->selectAll();
    type("gbp");
    const QSignalSpy wanted(&sheet, &StartSheet::wanted);
    press(Qt::Key_Return);
    EXPECT_EQ(wanted.count(), 1);
    EXPECT_EQ(sheet.currency(), Currency::fromCode(u"GBP"));
    line->selectAll();
    type("lbs");
    EXPECT_FALSE(sheet.currency().has_value());
    EXPECT_TRUE(line->hasFocus());
}

TEST_F(AStartSheet, picksTheStarterWithTheArrowsDownToTheEmptyBook)
{
    press(Qt::Key_Down);
    EXPECT_EQ(sheet.starter(), QStringLiteral("unit"));
    press(Qt::Key_Down);
    EXPECT_EQ(sheet.starter(), QStringLiteral("axle"));
    press(Qt::Key_Down);
    EXPECT_EQ(sheet.starter(), QString());
    EXPECT_TRUE(sheet.answers().isEmpty());
    const QSignalSpy wanted(&sheet, &StartSheet::wanted);
    press(Qt::Key_Return);
    EXPECT_EQ(wanted.count(), 1);
}

TEST_F(AStartSheet, answersItsSixQuestionsWithTabAndArrowsAndTheBookFollows)
{
    const QSignalSpy wanted(&sheet, &StartSheet::wanted);
    QStringList asked;
    for (const StarterQuestion &question : gearbox.questions) {
        press(Qt::Key_Tab);
        ASSERT_NE(choice(), nullptr) << question.key.toStdString();
        asked << spoken(choice(), QAccessible::Description);
        if (question.key == QLatin1String("charging"))
            press(Qt::Key_Down);
    }
    EXPECT_EQ(asked.size(), 6);
    EXPECT_EQ(sheet.answers().value(QStringLiteral("charging")), QStringLiteral("dc"));
    press(Qt::Key_Return);
    ASSERT_EQ(wanted.count(), 1) << "Enter in a question makes the book too";

    const FixedClock clock;
    const auto book = createFromStarter({}, sheet.starter(), sheet.answers(),
                                        QStringLiteral("Green van"), Currency(), clock);
    ASSERT_TRUE(book.has_value()) << book.error().sentence.toStdString();
    EXPECT_NE((*book)->records().byKey<Task>(QStringLiteral("dc-first-charge")), nullptr);
}

TEST_F(AStartSheet, goesFromTheQuestionsToItsButtons)
{
    for (int i = 0; i < 7; ++i)
        press(Qt::Key_Tab);
    EXPECT_NE(qobject_cast<QLineEdit *>(QApplication::focusWidget()), nullptr) << "the currency";
    press(Qt::Key_Tab);
    auto *close = qobject_cast<QPushButton *>(QApplication::focusWidget());
    ASSERT_NE(close, nullptr);
    press(Qt::Key_Tab);
    auto *make = qobject_cast<QPushButton *>(QApplication::focusWidget());
    ASSERT_NE(make, nullptr);
    const QSignalSpy wanted(&sheet, &StartSheet::wanted);
    press(Qt::Key_Space);
    EXPECT_EQ(wanted.count(), 1);
}

TEST_F(AStartSheet, closesWithEscapeAndForgetsNothing)
{
    const QSignalSpy closed(&sheet, &StartSheet::closed);
    press(Qt::Key_Down);
    press(Qt::Key_Tab);
    press(Qt::Key_Escape);
    EXPECT_EQ(closed.count(), 1);
    EXPECT_EQ(sheet.starter(), QStringLiteral("unit"));
    sheet.begin();
    EXPECT_EQ(sheet.starter(), QStringLiteral("gearbox"));
}

TEST_F(AStartSheet, isNotSqueezedOnANarrowPage)
{
    sheet.resize(560, 400);
    QTest::qWait(1);
    for (const QComboBox *box : sheet.findChildren<QComboBox *>()) {
        if (!box->isVisible())
            continue;
        EXPECT_GE(box->height(), box->sizeHint().height());
    }
}

TEST_F(AStartSheet, namesWhatTakesTheFocusAndSaysWhatIsWrong)
{
    for (auto *widget : sheet.findChildren<QWidget *>()) {
        if (widget->focusPolicy() == Qt::NoFocus || !widget->isVisible())
            continue;
        EXPECT_FALSE(spoken(widget).isEmpty()) << widget->metaObject()->className();
    }
    sheet.setProblem(QStringLiteral("The disk is full."));
    bool told = false;
    for (const QLabel *label : sheet.findChildren<QLabel *>())
        told = told || (label->isVisible() && label->text() == QLatin1String("The disk is full."));
    EXPECT_TRUE(told);
}
