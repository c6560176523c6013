// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/budget/budget_edits.h"
#include "core/budget/line_contents.h"
#include "tests/support/test_book.h"

#include <gtest/gtest.h>

using namespace ohmwright;

namespace {

Rate rate(const char *text)
{
    return *Rate::parse(QString::fromLatin1(text), NumberStyle::pointDecimal());
}

Money dollars(std::int64_t cents)
{
    return {cents, *Currency::fromCode(u"USD")};
}

class LineContents : public testing::Test
{
protected:
    LineContents()
    {
        battery = line("Battery", 500000, 0);
        drive = line("Drive", 300000, 1);
        Seller seller;
        seller.name = "Yard";
        yard = book.add(seller);
        Purchase order;
        order.key = "order";
        order.seller = yard;
        order.orderedOn = QDate(2026, 5, 1);
        order.currency = dollars(0).currency();
        order.rate = rate("0.9217");
        order.freight = dollars(12345);
        order.duty = dollars(678);
        order.tax = dollars(9999);
        purchase = book.add(order);
        modules = item("Modules", 8, 17333, 0, battery);
        inverter = item("Inverter", 1, 80001, 25000, drive);
        loose = item("Crimps", 3, 333, 0, {});
        pay(30000);
        Part shop = namedPart("Crimp for the shop", PartState::InHand, PartKind::Consumable);
        shop.bought = loose;
        shop.countedTo = CountedTo::Shop;
        book.add(shop);
        Part own = namedPart("Crimp", PartState::InHand, PartKind::Consumable);
        own.bought = loose;
        book.add(own);
        Part wanted = namedPart("Coupling", PartState::Wanted);
        wanted.estimate = euros(15000);
        wanted.line = drive;
        book.add(wanted);
        book.add(namedPart("Unpriced", PartState::Wanted));
        GotBack engine;
        engine.name = "Old engine";
        engine.amount = euros(40000);
        engine.receivedOn = QDate(2026, 6, 1);
        engine.line = drive;
        book.add(engine);
    }

    Id<BudgetLine> line(const char *name, std::int64_t cents, int position)
    {
        BudgetLine row;
        row.name = name;
        row.allowance = euros(cents);
        row.position = position;
        return book.add(row);
    }

    Id<PurchaseItem> item(const char *name, int count, std::int64_t cents, std::int64_t core,
                          std::optional<Id<BudgetLine>> on)
    {
        PurchaseItem row;
        row.name = name;
        row.purchase = purchase;
        row.count = count;
        row.unitPrice = dollars(cents);
        row.coreCharge = dollars(core);
        row.line = on;
        return book.add(row);
    }

    void pay(std::int64_t cents)
    {
        Payment row;
        row.purchase = purchase;
        row.on = QDate(2026, 5, 2);
        row.amount = dollars(cents);
        book.add(row);
    }

    std::vector<LineEntry> contents(Id<BudgetLine> of) const
    {
        return contentsOf(book.records(), of, book.clock.today());
    }

    void expectSumsOf(const LineSums &sums) const
    {
        LineSums found{sums.line, sums.name, sums.allowance, euros(0),
                       euros(0),  euros(0),  euros(0),       euros(0)};
        for (const LineEntry &entry : contents(sums.line)) {
            found.spent += entry.spent;
            found.committed += entry.committed;
            found.toCome += entry.toCome;
            found.gotBack += entry.gotBack;
            found.expectedBack += entry.expectedBack;
        }
        EXPECT_EQ(found.spent, sums.spent) << sums.name.toStdString();
        EXPECT_EQ(found.committed, sums.committed) << sums.name.toStdString();
        EXPECT_EQ(found.toCome, sums.toCome) << sums.name.toStdString();
        EXPECT_EQ(found.gotBack, sums.gotBack) << sums.name.toStdString();
        EXPECT_EQ(found.expectedBack, sums.expectedBack) << sums.name.toStdString();
    }

    void expectSums() const
    {
        for (const LineSums &sums : budgetOf(book.records(), book.clock.today()).lines)
            expectSumsOf(sums);
    }

    TestBook book;
    Id<BudgetLine> battery, drive;
    Id<Seller> yard;
    Id<Purchase> purchase;
    Id<PurchaseItem> modules, inverter, loose;
};

} // namespace

TEST_F(LineContents, addUpToTheLineWhateverStandsOnIt)
{
    ASSERT_EQ(budgetOf(book.records(), book.clock.today()).lines.size(), 3U);
    expectSums();
}

TEST_F(LineContents, addUpAlsoWhenPaidUpAndWhenPaidTooMuch)
{
    pay(400000);
    expectSums();
    pay(1);
    expectSums();
}

TEST_F(LineContents, countNoMoneyNeedsAndAddUpWithAnOrderWithoutItems)
{
    const Id<Task> task = book.add(namedTask("Register"));
    TaskNeed need;
    need.task = task;
    need.kind = NeedKind::Money;
    need.money = euros(12000);
    need.what = "fee";
    book.add(need);
    Purchase empty;
    empty.key = "empty";
    empty.seller = yard;
    empty.orderedOn = QDate(2026, 5, 3);
    empty.currency = euro();
    empty.freight = euros(990);
    empty.duty = empty.tax = euros(0);
    book.add(empty);
    expectSums();
}

TEST_F(LineContents, showEachItemBelowItsPurchaseAndOnlyThoseOfTheLine)
{
    const auto rows = contents(battery);
    ASSERT_EQ(rows.size(), 2U);
    EXPECT_EQ(rows[0].kind, EntryKind::Purchase);
    EXPECT_EQ(rows[0].name, "Yard");
    EXPECT_EQ(*rows[0].paid, dollars(30000));
    EXPECT_EQ(rows[1].name, "Modules");
    EXPECT_EQ(*rows[1].price, dollars(std::int64_t{8} * 17333));
    EXPECT_EQ(*rows[1].price + *rows[1].shared, *rows[1].landed);
}

TEST_F(LineContents, sayWhichWantedPartIsNotCounted)
{
    const auto rows = contents({});
    const auto found = std::find_if(
        rows.begin(), rows.end(), [](const LineEntry &entry) { return entry.name == "Unpriced"; });
    ASSERT_NE(found, rows.end());
    EXPECT_FALSE(found->counted);
}

TEST_F(LineContents, followACoreThatCameBack)
{
    OHMWRIGHT_ASSERT_OK(returnCore(*book, inverter, book.clock.today()));
    const auto rows = contents(drive);
    ASSERT_GE(rows.size(), 2U);
    // 250.00 USD at 0.9217, half away from zero
    EXPECT_EQ(rows[1].gotBack, euros(23043));
    EXPECT_TRUE(rows[1].expectedBack.isZero());
    expectSums();
}

TEST_F(LineContents, aPaymentIsRefusedInAnotherCurrencyOrAheadOfToday)
{
    const auto wrong = addPayment(*book, purchase, euros(100), book.clock.today(), {});
    ASSERT_FALSE(wrong);
    EXPECT_EQ(wrong.error().where, "amount");
    const auto ahead = addPayment(*book, purchase, dollars(100), book.clock.today().addDays(1), {});
    ASSERT_FALSE(ahead);
    EXPECT_EQ(ahead.error().where, "on");
    OHMWRIGHT_ASSERT_OK(addPayment(*book, purchase, dollars(100), book.clock.today(), {}));
    expectSums();
}

TEST_F(LineContents, aLineInUseIsNotRemovedAndAnEmptyOneIs)
{
    const auto used = removeLine(*book, drive);
    ASSERT_FALSE(used);
    EXPECT_EQ(used.error().code, ProblemCode::NotAllowed);
    const auto spare = addLine(*book, "Paint", euros(20000));
    ASSERT_TRUE(spare);
    EXPECT_EQ(book.records().find(*spare)->position, 2);
    OHMWRIGHT_ASSERT_OK(removeLine(*book, *spare));
}
