// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/ui/parts/page_fixture.h"
#include "ui/cards/record_card.h"
#include "ui/cards/record_pages.h"
#include "ui/cards/records_panel.h"
#include "ui/parts/compare_page.h"
#include "ui/widgets/drafted_table_delegate.h"
#include "ui/widgets/marks.h"

#include <QLabel>

using namespace ohmwright;
using namespace ohmwright::ui;
using namespace ohmwright::ui::driving;

namespace {

class TheComparePage : public APartsPage
{
protected:
    Id<PartType> type(const char *partNumber, const char *name)
    {
        PartType made;
        made.make = QStringLiteral("Kestrin");
        made.partNumber = QString::fromLatin1(partNumber);
        made.name = QString::fromLatin1(name);
        made.key = keyFrom(made.make + u' ' + made.partNumber);
        return book.add(made);
    }

    template <class Owner>
    Id<Rating> rate(Id<Owner> of, const char *value)
    {
        Rating rating;
        if constexpr (std::is_same_v<Owner, Part>)
            rating.part = of;
        else
            rating.type = of;
        rating.current = CurrentKind::Dc;
        rating.value = amount(value);
        rating.evidence = Evidence::Nameplate;
        rating.source = QStringLiteral("photo 3");
        return book.add(rating);
    }

    ComparePage &comparison() { return page->comparison(); }
    QAbstractItemModel &figures() { return *comparison().table().model(); }
    QString cell(int row, int column, int role = Qt::DisplayRole)
    {
        return figures().index(row, column).data(role).toString();
    }
    QString focusName() { return spoken(QApplication::focusWidget()); }

    // To the control of that name, by the Tab key alone.
    void tabTo(const QString &name)
    {
        for (int i = 0; i < 60 && focusName() != name; ++i)
            press(Qt::Key_Tab);
        ASSERT_EQ(focusName(), name);
    }
};

} // namespace

TEST_F(TheComparePage, comparesTwoTypesFromTheCardByKeysAlone)
{
    rate(type("0448-A", "Inverter, early case"), "420 V");
    type("9900", "Pump");
    rate(type("0448-C", "Inverter, late case"), "475 V");
    open();
    ASSERT_TRUE(page->showRecord(QStringLiteral("part_type"), QStringLiteral("kestrin-0448-a")));
    page->pages().panel(QStringLiteral("part_type")).card().focusFirst();
    tabTo(QStringLiteral("Compare Inverter, early case with…"));
    press(Qt::Key_Space);
    ASSERT_TRUE(comparison().isVisible());
    ASSERT_EQ(focusName(), "Compare with");
    EXPECT_FALSE(comparison().table().isVisible()) << "one alone is no comparison";
    press(Qt::Key_Down); // all that can be chosen; the nearest part number stands first
    press(Qt::Key_Down);
    press(Qt::Key_Return);
    ASSERT_EQ(comparison().units().size(), 2U);
    ASSERT_TRUE(comparison().table().isVisible());
    ASSERT_EQ(figures().columnCount(), 4);
    EXPECT_EQ(figures().headerData(2, Qt::Horizontal, Qt::DisplayRole).toString(),
              "0448-C, Inverter, late case");
    EXPECT_EQ(cell(0, 0), "DC voltage limit");
    EXPECT_EQ(cell(0, 1), QStringLiteral("420\u00a0V"));
    EXPECT_EQ(cell(0, 2, SecondLineRole), "nameplate, photo 3");
    EXPECT_EQ(cell(0, 3), "differs");
    EXPECT_EQ(
        cell(0, 2, Qt::AccessibleTextRole),
        QStringLiteral("DC voltage limit of 0448-C, Inverter, late case: 475\u00a0V, nameplate, "
                       "photo 3"));
    tabTo(QStringLiteral("Figures side by side"));
    press(Qt::Key_Escape);
    EXPECT_FALSE(comparison().isVisible()) << "back to where it was begun";
    EXPECT_EQ(page->pages().panel(QStringLiteral("part_type")).card().record() != 0, true);
}

TEST_F(TheComparePage, comparesAPartWithTheOneThatReplacesItAtOnce)
{
    const auto next = part("New relay", PartState::Wanted);
    const auto old = part("Old relay");
    rate(old, "400 V");
    rate(next, "600 V");
    OHMWRIGHT_ASSERT_OK(book->edit(QStringLiteral("replace"), [&] {
        Part edited = *book.records().find(old);
        edited.replacedBy = next;
        return book->update(edited);
    }));
    open();
    page->list().choose(old);
    const auto shown = [&](const QString &words) {
        QApplication::processEvents();
        for (const QLabel *label : page->detail().findChildren<QLabel *>())
            if (label->isVisible() && label->text() == words)
                return true;
        return false;
    };
    EXPECT_TRUE(shown(QStringLiteral("DC voltage limit, differs"))) << "on the part itself";
    auto *button = control<QPushButton>(QStringLiteral("Compare Old relay with…"));
    ASSERT_NE(button, nullptr);
    button->setFocus();
    press(Qt::Key_Space);
    ASSERT_TRUE(comparison().isVisible());
    EXPECT_EQ(comparison().units(), (std::vector<ComparedId>{old, next}));
    EXPECT_EQ(cell(0, 3), "differs");
    press(Qt::Key_Escape);
    EXPECT_EQ(page->detail().part(), old);
    EXPECT_TRUE(page->detail().isVisible());
}

TEST_F(TheComparePage, followsTheBookAndTakesUnitsOut)
{
    const auto early = type("0448-A", "Early");
    const auto late = type("0448-C", "Late");
    rate(early, "420 V");
    open();
    comparison().begin({early, late});
    page->pages().showPage(QStringLiteral("comparison"));
    EXPECT_EQ(cell(0, 3), "not known");
    EXPECT_EQ(cell(0, 2), "not known");
    rate(late, "420 V");
    EXPECT_EQ(cell(0, 3), "same");
    auto *out = control<QPushButton>(QStringLiteral("Take out Late"));
    ASSERT_NE(out, nullptr);
    out->setFocus();
    press(Qt::Key_Space);
    EXPECT_EQ(comparison().units(), std::vector<ComparedId>{early});
    EXPECT_EQ(focusName(), "Compare with");
    EXPECT_FALSE(comparison().table().isVisible());
    OHMWRIGHT_ASSERT_OK(book->undo());
    OHMWRIGHT_ASSERT_OK(book->undo());
    OHMWRIGHT_ASSERT_OK(book->undo());
    OHMWRIGHT_ASSERT_OK(book->undo());
    EXPECT_TRUE(comparison().units().empty()) << "what is gone from the book is gone from here";
}

TEST_F(TheComparePage, refusesANameNobodyHasAtItsField)
{
    const auto early = type("0448-A", "Early");
    open();
    page->compare(early);
    driving::type("nothing of that name");
    press(Qt::Key_Tab);
    auto *line = control<QLineEdit>(QStringLiteral("Compare with"));
    EXPECT_TRUE(spoken(line, QAccessible::Description).contains("nothing of that name"))
        << spoken(line, QAccessible::Description).toStdString();
    EXPECT_EQ(comparison().units().size(), 1U);
}
