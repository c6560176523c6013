// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/ui/driving.h"
#include "ui/shell/find_line.h"
#include "ui/widgets/overlay_list.h"

#include <QSignalSpy>
#include <QVBoxLayout>

#include <gtest/gtest.h>

using namespace ohmwright::ui;
using namespace ohmwright::ui::driving;

namespace {

class Finds : public FindSource
{
public:
    std::vector<FindHit> find(const QString &text) override
    {
        asked.push_back(text);
        if (text.startsWith(QLatin1String("zz")))
            return {};
        return {{"Parts", "p1", "Inverter", "tested", "parts"},
                {"Parts", "p2", "Inverter, spare", "wanted", "parts"},
                {"Tasks", "t1", "Mount inverter", "can start", "build_order"}};
    }

    QStringList asked;
};

class AFindLine : public testing::Test
{
protected:
    AFindLine()
    {
        auto *column = new QVBoxLayout(&window);
        line = new FindLine(themed.theme);
        other = new QLineEdit;
        column->addWidget(line);
        column->addWidget(other);
        column->addStretch(1);
        line->setSource(&finds);
        window.resize(600, 500);
        showActive(window);
        other->setFocus();
        line->begin();
    }

    OverlayList *list() { return window.findChild<OverlayList *>(); }
    bool waitForList()
    {
        return QTest::qWaitFor([this] { return list() && list()->isOpen(); }, 1000);
    }

    Themed themed;
    Finds finds;
    QWidget window;
    FindLine *line = nullptr;
    QLineEdit *other = nullptr;
};

} // namespace

TEST_F(AFindLine, asksOnceForAWordTypedFastAndGroupsTheAnswers)
{
    type("inv");
    ASSERT_TRUE(waitForList());
    EXPECT_EQ(finds.asked, QStringList{QStringLiteral("inv")});
    const auto &rows = list()->rows();
    ASSERT_EQ(rows.size(), 5U);
    EXPECT_TRUE(rows[0].heading);
    EXPECT_EQ(rows[0].text, QStringLiteral("Parts"));
    EXPECT_EQ(rows[1].text, QStringLiteral("Inverter"));
    EXPECT_TRUE(rows[3].heading);
    EXPECT_EQ(QApplication::focusWidget(), line);
}

TEST_F(AFindLine, goesWithEnterToTheFirstHitWithoutWaitingForTheList)
{
    const QSignalSpy chosen(line, &FindLine::hitChosen);
    type("inv");
    press(Qt::Key_Return);
    ASSERT_EQ(chosen.count(), 1);
    EXPECT_EQ(chosen.at(0).at(0).value<FindHit>().key, QStringLiteral("p1"));
    EXPECT_TRUE(line->text().isEmpty());
    EXPECT_FALSE(list()->isOpen());
}

TEST_F(AFindLine, stepsOverHeadingsAndRoundTheEnds)
{
    const QSignalSpy chosen(line, &FindLine::hitChosen);
    type("inv");
    ASSERT_TRUE(waitForList());
    press(Qt::Key_Down);
    press(Qt::Key_Down);
    EXPECT_EQ(list()->currentRow(), 4);
    press(Qt::Key_Down);
    EXPECT_EQ(list()->currentRow(), 1);
    press(Qt::Key_Up);
    EXPECT_EQ(list()->currentRow(), 4);
    press(Qt::Key_PageUp);
    EXPECT_EQ(list()->currentRow(), 1);
    press(Qt::Key_PageDown);
    press(Qt::Key_Return);
    ASSERT_EQ(chosen.count(), 1);
    EXPECT_EQ(chosen.at(0).at(0).value<FindHit>().key, QStringLiteral("t1"));
}

TEST_F(AFindLine, takesTheHitThatIsClicked)
{
    const QSignalSpy chosen(line, &FindLine::hitChosen);
    type("inv");
    ASSERT_TRUE(waitForList());
    const QModelIndex second = list()->model()->index(2, 0);
    QTest::mouseClick(list()->viewport(), Qt::LeftButton, {}, list()->visualRect(second).center());
    ASSERT_EQ(chosen.count(), 1);
    EXPECT_EQ(chosen.at(0).at(0).value<FindHit>().key, QStringLiteral("p2"));
}

TEST_F(AFindLine, saysPlainlyWhenNothingMatches)
{
    const QSignalSpy chosen(line, &FindLine::hitChosen);
    type("zz9");
    ASSERT_TRUE(waitForList());
    ASSERT_EQ(list()->rows().size(), 1U);
    EXPECT_EQ(list()->rows()[0].text, QStringLiteral("Nothing in the book matches “zz9”."));
    EXPECT_EQ(spoken(line, QAccessible::Description), list()->rows()[0].text);
    press(Qt::Key_Down);
    press(Qt::Key_Return);
    EXPECT_EQ(chosen.count(), 0);
}

TEST_F(AFindLine, closesWithEscapeAndWithASecondOneGoesBackWhereOneWas)
{
    type("inv");
    ASSERT_TRUE(waitForList());
    press(Qt::Key_Escape);
    EXPECT_FALSE(list()->isOpen());
    EXPECT_EQ(line->text(), QStringLiteral("inv"));
    press(Qt::Key_Escape);
    EXPECT_TRUE(line->text().isEmpty());
    EXPECT_EQ(QApplication::focusWidget(), other);
}

TEST_F(AFindLine, dropsTheListWhenTheFocusGoesOn)
{
    type("inv");
    ASSERT_TRUE(waitForList());
    press(Qt::Key_Tab);
    EXPECT_EQ(QApplication::focusWidget(), other);
    EXPECT_FALSE(list()->isOpen());
}

TEST_F(AFindLine, tellsAScreenReaderWhichHitIsHighlighted)
{
    EXPECT_EQ(spoken(line), QStringLiteral("Find in the book"));
    type("inv");
    ASSERT_TRUE(waitForList());
    press(Qt::Key_Down);
    EXPECT_EQ(spoken(line, QAccessible::Description),
              QStringLiteral("2 of 3 found: Inverter, spare, Parts"));
}
