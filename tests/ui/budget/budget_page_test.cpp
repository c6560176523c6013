// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/budget/budget_edits.h"
#include "tests/support/test_book.h"
#include "tests/ui/driving.h"
#include "ui/budget/budget_page.h"
#include "ui/budget/entries_model.h"
#include "ui/budget/lines_model.h"
#include "ui/widgets/figure_label.h"
#include "ui/widgets/money_bar.h"

#include <QAbstractButton>
#include <QAbstractItemModelTester>
#include <QElapsedTimer>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QSignalSpy>
#include <QTableView>

#include <gtest/gtest.h>

using namespace ohmwright;
using namespace ohmwright::ui;
using namespace ohmwright::ui::driving;

namespace {

class TheBudgetPage : public testing::Test
{
protected:
    TheBudgetPage()
    {
        battery = *addLine(*book, "Battery", euros(500000));
        drive = *addLine(*book, "Drive", euros(300000));
        Seller seller;
        seller.name = "Yard";
        Purchase order;
        order.key = "order";
        order.seller = book.add(seller);
        order.orderedOn = QDate(2026, 5, 1);
        order.currency = euro();
        order.freight = euros(10000);
        order.duty = order.tax = euros(0);
        purchase = book.add(order);
        PurchaseItem item;
        item.name = "Modules";
        item.purchase = purchase;
        item.unitPrice = euros(200000);
        item.coreCharge = euros(5000);
        item.line = battery;
        modules = book.add(item);
        Part wanted = namedPart("Coupling", PartState::Wanted);
        wanted.estimate = euros(15000);
        wanted.line = drive;
        coupling = book.add(wanted);
    }

    void open()
    {
        page = std::make_unique<BudgetPage>(*book, themed.theme);
        page->resize(1140, 740);
        showActive(*page);
    }
    template <class Model>
    QTableView *view()
    {
        for (auto *found : page->findChildren<QTableView *>())
            if (qobject_cast<Model *>(found->model()))
                return found;
        return nullptr;
    }
    LinesModel *lines() { return qobject_cast<LinesModel *>(view<LinesModel>()->model()); }
    EntriesModel *entries() { return qobject_cast<EntriesModel *>(view<EntriesModel>()->model()); }
    QLineEdit *line(const char *name, int which = 0)
    {
        for (auto *edit : page->findChildren<QLineEdit *>())
            if (edit->isVisible() && spoken(edit) == QLatin1String(name) && which-- == 0)
                return edit;
        return nullptr;
    }
    QAbstractButton *button(const char *text)
    {
        for (auto *found : page->findChildren<QAbstractButton *>())
            if (found->isVisible() && QString(found->text()).remove(u'&') == QLatin1String(text))
                return found;
        return nullptr;
    }
    QStringList figures()
    {
        QStringList texts;
        for (auto *label : page->findChildren<FigureLabel *>())
            texts << label->figure();
        return texts;
    }
    void chooseEntry(EntryKind kind)
    {
        view<EntriesModel>()->setFocus();
        press(Qt::Key_Home, Qt::ControlModifier);
        for (int row = 0; row < entries()->rowCount(); ++row) {
            const LineEntry *at = entries()->entry(view<EntriesModel>()->currentIndex().row());
            if (at && at->kind == kind)
                return;
            press(Qt::Key_Down);
        }
        FAIL() << "no such entry";
    }

    Themed themed;
    TestBook book;
    Id<BudgetLine> battery, drive;
    Id<Purchase> purchase;
    Id<PurchaseItem> modules;
    Id<Part> coupling;
    std::unique_ptr<BudgetPage> page;
};

} // namespace

TEST_F(TheBudgetPage, showsTheWholeBudgetAndWhatTheFirstLineIsMadeOf)
{
    open();
    const Budget budget = budgetOf(book.records(), book.clock.today());
    EXPECT_TRUE(figures().contains(showMoney(budget.left(), NumberStyle::pointDecimal())));
    EXPECT_EQ(lines()->rowCount(), 2);
    ASSERT_EQ(entries()->rowCount(), 2);
    EXPECT_EQ(entries()->entry(0)->name, "Yard");
    EXPECT_EQ(entries()->entry(1)->name, "Modules");
    for (int row = 0; row < lines()->rowCount(); ++row)
        EXPECT_NE(view<LinesModel>()->indexWidget(lines()->index(row, LinesModel::Bar)), nullptr);
}

TEST_F(TheBudgetPage, turnsToAnotherLineByTheArrowAndGoesToItsPart)
{
    open();
    const QSignalSpy wanted(page.get(), &BudgetPage::partWanted);
    view<LinesModel>()->setFocus();
    press(Qt::Key_Down);
    ASSERT_EQ(entries()->rowCount(), 1);
    EXPECT_EQ(entries()->entry(0)->name, "Coupling");
    press(Qt::Key_Return);
    press(Qt::Key_Down);
    press(Qt::Key_Return);
    ASSERT_EQ(wanted.count(), 1);
    EXPECT_EQ(wanted.at(0).at(0).toString(), book.records().find(coupling)->key);
}

TEST_F(TheBudgetPage, addsAPaymentByKeysAndUndoTakesItBack)
{
    open();
    chooseEntry(EntryKind::Purchase);
    press(Qt::Key_Return);
    ASSERT_EQ(QApplication::focusWidget(), line("Paid"));
    type("1.500,50");
    press(Qt::Key_Return);
    ASSERT_EQ(book.records().of<Payment>(purchase).size(), 1U);
    EXPECT_EQ(book.records().of<Payment>(purchase).front().amount, euros(150050));
    EXPECT_EQ(lines()->line(0)->spent, euros(150050));
    OHMWRIGHT_ASSERT_OK(book->undo());
    EXPECT_TRUE(lines()->line(0)->spent.isZero());
}

TEST_F(TheBudgetPage, refusesAPaymentInAnotherCurrencyAndKeepsWhatWasTyped)
{
    open();
    chooseEntry(EntryKind::Purchase);
    press(Qt::Key_Return);
    type("20 USD");
    press(Qt::Key_Return);
    EXPECT_TRUE(book.records().of<Payment>(purchase).empty());
    EXPECT_EQ(line("Paid")->text(), "20 USD");
    EXPECT_TRUE(spoken(line("Paid"), QAccessible::Description).contains("EUR"));
}

TEST_F(TheBudgetPage, recordsACoreThatCameBack)
{
    open();
    chooseEntry(EntryKind::Item);
    ASSERT_NE(line("Back on"), nullptr);
    line("Back on")->setFocus();
    press(Qt::Key_Return);
    EXPECT_EQ(book.records().find(modules)->coreReturnedOn, book.clock.today());
    EXPECT_EQ(lines()->line(0)->gotBack, euros(5000));
}

TEST_F(TheBudgetPage, addsALineAndTurnsToIt)
{
    open();
    button("Add a line")->setFocus();
    press(Qt::Key_Space);
    type("Paint");
    press(Qt::Key_Tab);
    type("250");
    press(Qt::Key_Return);
    ASSERT_EQ(lines()->rowCount(), 3);
    EXPECT_EQ(lines()->line(2)->allowance, euros(25000));
    EXPECT_EQ(view<LinesModel>()->currentIndex().row(), 2);
}

TEST_F(TheBudgetPage, changesAnAllowanceWhenItsLineIsLeft)
{
    open();
    line("Allowance")->setFocus();
    line("Allowance")->selectAll();
    type("6000");
    press(Qt::Key_Tab);
    EXPECT_EQ(book.records().find(battery)->allowance, euros(600000));
    EXPECT_EQ(line("Allowance")->text(), "6000.00");
}

TEST_F(TheBudgetPage, changesTheContingencyAndRefusesHalfAPercent)
{
    open();
    line("Contingency")->setFocus();
    line("Contingency")->selectAll();
    type("12.5");
    press(Qt::Key_Tab);
    EXPECT_EQ(book.records().build().contingencyPercent, 10);
    line("Contingency")->selectAll();
    line("Contingency")->setFocus();
    line("Contingency")->selectAll();
    type("15 %");
    press(Qt::Key_Tab);
    EXPECT_EQ(book.records().build().contingencyPercent, 15);
}

TEST_F(TheBudgetPage, recordsMoneyThatCameBackOnTheChosenLine)
{
    open();
    line("What for")->setFocus();
    type("Old engine");
    line("Amount")->setFocus();
    type("400");
    line("On")->setFocus();
    for (int which = 0; line("On", which); ++which)
        line("On", which)->setFocus();
    type("today");
    press(Qt::Key_Return);
    ASSERT_EQ(book.records().all<GotBack>().size(), 1U);
    const GotBack &back = book.records().all<GotBack>().rows().front();
    EXPECT_EQ(back.amount, euros(40000));
    EXPECT_EQ(back.receivedOn, book.clock.today());
    EXPECT_EQ(back.line, battery);
}

TEST_F(TheBudgetPage, listsWhatCouldNotBeCounted)
{
    book.add(namedPart("Unpriced", PartState::Wanted));
    open();
    auto *gaps = page->findChild<QListWidget *>();
    ASSERT_EQ(gaps->count(), 1);
    EXPECT_TRUE(gaps->item(0)->text().contains("Unpriced"));
    EXPECT_TRUE(gaps->isVisible());
}

TEST_F(TheBudgetPage, saysNothingOfGapsWhereThereAreNone)
{
    open();
    auto *gaps = page->findChild<QListWidget *>();
    ASSERT_NE(gaps, nullptr);
    EXPECT_FALSE(gaps->isVisible());
}

// Columns in which nothing stands, and where there is little room the bar, give way to the names.
TEST_F(TheBudgetPage, keepsRoomForNames)
{
    open();
    const auto hidden = [&](auto column) {
        using Column = decltype(column);
        QTableView *table = std::is_same_v<Column, EntriesModel::Column> ? view<EntriesModel>()
                                                                         : view<LinesModel>();
        return table->isColumnHidden(column);
    };
    EXPECT_FALSE(hidden(EntriesModel::Shared));
    EXPECT_FALSE(hidden(EntriesModel::Core)) << "Battery has freight and a core";
    view<LinesModel>()->setFocus();
    press(Qt::Key_Down);
    EXPECT_TRUE(hidden(EntriesModel::Shared));
    EXPECT_TRUE(hidden(EntriesModel::Core)) << "Drive has neither";
    EXPECT_FALSE(hidden(LinesModel::Bar));
    const auto wide = view<LinesModel>()->columnWidth(LinesModel::Name);
    page->resize(850, 480); // full HD at twice the size
    QTest::qWait(20);
    EXPECT_TRUE(hidden(LinesModel::Bar));
    const int letter = QFontMetrics(view<EntriesModel>()->font()).averageCharWidth();
    EXPECT_GE(view<EntriesModel>()->columnWidth(EntriesModel::What), letter * 16);
    EXPECT_GE(view<LinesModel>()->columnWidth(LinesModel::Name), letter * 16);
    page->resize(1140, 740);
    QTest::qWait(20);
    EXPECT_FALSE(hidden(LinesModel::Bar));
    EXPECT_EQ(view<LinesModel>()->columnWidth(LinesModel::Name), wide);
}

TEST_F(TheBudgetPage, namesEverythingThatCanHaveTheFocus)
{
    open();
    chooseEntry(EntryKind::Item);
    for (auto *widget : page->findChildren<QWidget *>()) {
        if (widget->isVisible() && (widget->focusPolicy() & Qt::TabFocus) && widget->isEnabled() &&
            !widget->focusProxy()) {
            EXPECT_FALSE(spoken(widget).isEmpty()) << widget->metaObject()->className();
        }
    }
}

TEST(TheLinesModel, keepsTheContractOfAModel)
{
    LinesModel model;
    const QAbstractItemModelTester tester(&model,
                                          QAbstractItemModelTester::FailureReportingMode::Fatal);
    const LineSums sums{Id<BudgetLine>(1), "Battery", euros(100), euros(50),
                        euros(0),          euros(0),  euros(0),   euros(0)};
    model.setLines({sums});
    QSignalSpy changed(&model, &LinesModel::dataChanged);
    QSignalSpy reset(&model, &LinesModel::modelReset);
    LineSums more = sums;
    more.spent = euros(60);
    model.setLines({more});
    EXPECT_EQ(changed.count(), 1);
    EXPECT_EQ(reset.count(), 0);
    model.setLines({});
    EXPECT_EQ(reset.count(), 1);
}

TEST(TheEntriesModel, keepsTheContractOfAModel)
{
    TestBook book;
    EntriesModel model;
    const QAbstractItemModelTester tester(&model,
                                          QAbstractItemModelTester::FailureReportingMode::Fatal);
    LineEntry entry;
    entry.kind = EntryKind::Wanted;
    entry.name = "Coupling";
    entry.counted = false;
    model.setEntries(book.records(), {entry});
    EXPECT_TRUE(model.index(0, 0).data(Qt::AccessibleTextRole).toString().contains("no estimate"));
    model.setEntries(book.records(), {});
    EXPECT_EQ(model.rowCount(), 0);
}
