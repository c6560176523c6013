// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/ui/driving.h"
#include "ui/widgets/overlay_list.h"
#include "ui/widgets/pick_or_new.h"

#include <QInputMethodEvent>
#include <QSignalSpy>
#include <QVBoxLayout>

#include <gtest/gtest.h>

#include <memory>

using namespace ohmwright::ui;
using namespace ohmwright::ui::driving;

namespace {

class APickOrNew : public testing::Test
{
protected:
    APickOrNew()
    {
        auto *column = new QVBoxLayout(&window);
        line = new PickOrNew(themed.theme);
        next = new QLineEdit;
        column->addWidget(line);
        column->addWidget(next);
        column->addStretch(1);
        line->setKnown({{"s1", QString::fromUtf8("Müller Autoverwertung"), "dismantler"},
                        {"s2", "Hafen Salvage", "insurance auction"},
                        {"s3", "Hafen", "private"}});
        window.resize(500, 400);
        showActive(window);
        line->setFocus();
    }

    OverlayList *list() { return window.findChild<OverlayList *>(); }
    QString highlighted()
    {
        const int row = list()->currentRow();
        return row < 0 ? QString() : list()->rows()[static_cast<std::size_t>(row)].text;
    }

    Themed themed;
    QWidget window;
    PickOrNew *line = nullptr;
    QLineEdit *next = nullptr;
};

} // namespace

TEST_F(APickOrNew, takesAKnownNameByAFewLettersAndTab)
{
    const QSignalSpy chosen(line, &PickOrNew::chosen);
    const QSignalSpy fresh(line, &PickOrNew::newName);
    type("mul");
    EXPECT_EQ(highlighted(), QString::fromUtf8("Müller Autoverwertung"));
    press(Qt::Key_Tab);
    EXPECT_EQ(line->key(), QStringLiteral("s1"));
    EXPECT_EQ(line->text(), QString::fromUtf8("Müller Autoverwertung"));
    EXPECT_EQ(QApplication::focusWidget(), next);
    ASSERT_EQ(chosen.count(), 1);
    EXPECT_EQ(chosen.at(0).at(0).toString(), QStringLiteral("s1"));
    EXPECT_EQ(fresh.count(), 0);
}

TEST_F(APickOrNew, takesANewNameAndSaysSo)
{
    const QSignalSpy chosen(line, &PickOrNew::chosen);
    const QSignalSpy fresh(line, &PickOrNew::newName);
    type("Garage");
    EXPECT_EQ(highlighted(), QStringLiteral("new: Garage"));
    EXPECT_TRUE(line->isNew());
    press(Qt::Key_Return);
    EXPECT_FALSE(list()->isOpen());
    ASSERT_EQ(fresh.count(), 1);
    EXPECT_EQ(fresh.at(0).at(0).toString(), QStringLiteral("Garage"));
    EXPECT_TRUE(line->key().isEmpty());
    EXPECT_EQ(chosen.count(), 0);
    press(Qt::Key_Tab);
    EXPECT_EQ(fresh.count(), 1) << "leaving must not tell it a second time";
}

TEST_F(APickOrNew, offersANewNameThatBeginsLikeAKnownOne)
{
    const QSignalSpy fresh(line, &PickOrNew::newName);
    type("Haf");
    EXPECT_EQ(highlighted(), QStringLiteral("Hafen Salvage"));
    press(Qt::Key_Up);
    EXPECT_EQ(highlighted(), QStringLiteral("new: Haf"));
    press(Qt::Key_Return);
    ASSERT_EQ(fresh.count(), 1);
    EXPECT_EQ(fresh.at(0).at(0).toString(), QStringLiteral("Haf"));
}

TEST_F(APickOrNew, prefersTheNameThatIsTypedInFull)
{
    type("hafen");
    EXPECT_EQ(highlighted(), QStringLiteral("Hafen"));
    EXPECT_EQ(list()->rows().size(), 2U) << "what is known already is not offered as new";
    press(Qt::Key_Tab);
    EXPECT_EQ(line->key(), QStringLiteral("s3"));
    EXPECT_EQ(line->text(), QStringLiteral("Hafen"));
}

TEST_F(APickOrNew, recognisesAKnownNameWhateverItsCaseAndAccentsOnLeaving)
{
    type("MULLER AUTOVERWERTUNG");
    press(Qt::Key_Escape);
    EXPECT_FALSE(list()->isOpen());
    press(Qt::Key_Tab);
    EXPECT_EQ(line->key(), QStringLiteral("s1"));
    EXPECT_FALSE(line->isNew());
}

TEST_F(APickOrNew, takesLettersBeyondLatin)
{
    QInputMethodEvent event;
    event.setCommitString(QString::fromUtf8("Ωhm & søn"));
    QApplication::sendEvent(line, &event);
    EXPECT_EQ(highlighted(), QString::fromUtf8("new: Ωhm & søn"));
    press(Qt::Key_Return);
    EXPECT_EQ(line->name(), QString::fromUtf8("Ωhm & søn"));
    EXPECT_TRUE(line->isNew());
}

TEST_F(APickOrNew, offersEverythingKnownWithDownOnAnEmptyLine)
{
    press(Qt::Key_Down);
    ASSERT_TRUE(list()->isOpen());
    EXPECT_EQ(list()->rows().size(), 3U);
    EXPECT_TRUE(highlighted().isEmpty()) << "nothing is taken that was not asked for";
    press(Qt::Key_Down);
    press(Qt::Key_Down);
    press(Qt::Key_Return);
    EXPECT_EQ(line->key(), QStringLiteral("s2"));
}

TEST_F(APickOrNew, staysEmptyWhenTabbedThrough)
{
    const QSignalSpy chosen(line, &PickOrNew::chosen);
    const QSignalSpy fresh(line, &PickOrNew::newName);
    const QSignalSpy emptied(line, &PickOrNew::emptied);
    press(Qt::Key_Tab);
    EXPECT_EQ(chosen.count() + fresh.count() + emptied.count(), 0);
}

TEST_F(APickOrNew, tellsWhenItIsEmptiedAgain)
{
    line->setKey(QStringLiteral("s2"));
    const QSignalSpy emptied(line, &PickOrNew::emptied);
    line->selectAll();
    press(Qt::Key_Backspace);
    press(Qt::Key_Tab);
    EXPECT_EQ(emptied.count(), 1);
    EXPECT_TRUE(line->key().isEmpty());
}

TEST_F(APickOrNew, keepsWhichOfTwoEqualNamesWasPicked)
{
    line->setKnown({{"a", "Traction", ""}, {"b", "Traction", "old"}});
    press(Qt::Key_Down);
    press(Qt::Key_Up);
    press(Qt::Key_Return);
    EXPECT_EQ(line->key(), QStringLiteral("b"));
    press(Qt::Key_Tab);
    EXPECT_EQ(line->key(), QStringLiteral("b"));
}

TEST_F(APickOrNew, letsEnterThroughToTheSheetOnlyWithTheListClosed)
{
    const QSignalSpy entered(line, &QLineEdit::returnPressed);
    type("Haf");
    press(Qt::Key_Return);
    EXPECT_EQ(entered.count(), 0);
    press(Qt::Key_Return);
    EXPECT_EQ(entered.count(), 1);
}

TEST_F(APickOrNew, takesAKnownNameByClick)
{
    type("h");
    const QModelIndex row = list()->model()->index(1, 0);
    QTest::mouseClick(list()->viewport(), Qt::LeftButton, {}, list()->visualRect(row).center());
    EXPECT_EQ(line->key(), QStringLiteral("s3"));
    EXPECT_EQ(QApplication::focusWidget(), line);
}

TEST_F(APickOrNew, tellsAScreenReaderWhatEnterTakes)
{
    type("haf");
    EXPECT_EQ(spoken(line, QAccessible::Description), QStringLiteral("Enter takes: Hafen Salvage"));
}

TEST_F(APickOrNew, canBeDeletedWhileItsListHangsOpen)
{
    type("h");
    ASSERT_TRUE(list()->isOpen());
    delete line;
    EXPECT_EQ(list(), nullptr);
}
