// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/ui/driving.h"
#include "ui/shell/thumb_index.h"

#include <QAccessible>
#include <QSignalSpy>

#include <gtest/gtest.h>

using namespace ohmwright::ui;
using namespace ohmwright::ui::driving;

namespace {

class AThumbIndex : public testing::Test
{
protected:
    AThumbIndex()
    {
        index.addLeaf(QStringLiteral("Bench"), QStringLiteral("bench"));
        index.addLeaf(QStringLiteral("Parts"), QStringLiteral("parts"));
        index.addLeaf(QStringLiteral("Build order"), QStringLiteral("build_order"));
        index.resize(index.sizeHint().width(), 500);
        showActive(index);
        index.setFocus();
    }

    Themed themed;
    ThumbIndex index{themed.theme};
};

} // namespace

TEST_F(AThumbIndex, turnsPagesWithUpAndDownAndStopsAtTheEnds)
{
    press(Qt::Key_Down);
    EXPECT_EQ(index.currentIndex(), 1);
    press(Qt::Key_Down);
    press(Qt::Key_Down);
    EXPECT_EQ(index.currentIndex(), 2);
    press(Qt::Key_Up);
    EXPECT_EQ(index.currentIndex(), 1);
    press(Qt::Key_Home);
    press(Qt::Key_Up);
    EXPECT_EQ(index.currentIndex(), 0);
    press(Qt::Key_End);
    EXPECT_EQ(index.currentIndex(), 2);
}

TEST_F(AThumbIndex, turnsToTheTabThatIsClicked)
{
    QTest::mouseClick(&index, Qt::LeftButton, {}, index.tabRect(1).center());
    EXPECT_EQ(index.currentIndex(), 1);
}

TEST_F(AThumbIndex, goesIntoThePageWithEnterAndLeft)
{
    const QSignalSpy entered(&index, &ThumbIndex::leafEntered);
    press(Qt::Key_Return);
    press(Qt::Key_Left);
    EXPECT_EQ(entered.count(), 2);
}

TEST_F(AThumbIndex, isAListOfPageTabsToAScreenReader)
{
    QAccessibleInterface *face = QAccessible::queryAccessibleInterface(&index);
    ASSERT_NE(face, nullptr);
    EXPECT_EQ(face->role(), QAccessible::PageTabList);
    EXPECT_EQ(face->text(QAccessible::Name), QStringLiteral("Bench")) << "the open page";
    index.setBadge(1, QStringLiteral("4 open"), QStringLiteral("4 open questions"));
    EXPECT_EQ(face->child(0)->role(), QAccessible::PageTab);
    EXPECT_EQ(face->child(0)->text(QAccessible::Name), QStringLiteral("Bench"));
    EXPECT_EQ(face->child(1)->text(QAccessible::Name), QStringLiteral("Parts, 4 open questions"));
    EXPECT_EQ(face->child(2)->text(QAccessible::Name), QStringLiteral("Build order"));
}

TEST_F(AThumbIndex, keepsNamesForScreenReadersAndTipsWhenItIsNarrow)
{
    const int wide = index.sizeHint().width();
    index.setCompact(true);
    EXPECT_LT(index.sizeHint().width(), wide - 40);
    EXPECT_EQ(QAccessible::queryAccessibleInterface(&index)->child(2)->text(QAccessible::Name),
              QStringLiteral("Build order"));
    EXPECT_EQ(index.tabToolTip(2), QStringLiteral("Build order (Ctrl+3)"));
    index.setCompact(false);
    EXPECT_EQ(index.sizeHint().width(), wide);
}

TEST_F(AThumbIndex, joinsTheCurrentTabToThePageAndCutsTheOthersOff)
{
    index.setCurrentIndex(1);
    index.clearFocus();
    const QImage picture = index.grab().toImage();
    const Tokens &tokens = themed.theme.tokens();
    EXPECT_EQ(picture.pixelColor(1, index.tabRect(1).center().y()), tokens.paper);
    EXPECT_EQ(picture.pixelColor(0, index.tabRect(0).center().y()), tokens.ink);
    EXPECT_EQ(picture.pixelColor(0, index.height() - 2), tokens.ink);
}
