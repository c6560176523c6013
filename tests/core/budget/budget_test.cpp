// SPDX-License-Identifier: GPL-3.0-or-later
// Landed cost and budget: everything adds up to the last minor unit, in any currency.
#include "core/budget/budget.h"
#include "tests/support/test_book.h"

#include <random>

namespace ohmwright {
namespace {

class BudgetTest : public testing::Test
{
protected:
    Id<Purchase> order(Currency currency, const char *rate, std::int64_t freight, std::int64_t tax,
                       const std::vector<std::int64_t> &prices, std::int64_t paid,
                       Id<BudgetLine> line = {})
    {
        Seller seller;
        seller.name = QStringLiteral("Seller");
        Purchase purchase;
        purchase.seller = book.add(seller);
        purchase.orderedOn = QDate(2026, 5, 1);
        purchase.currency = currency;
        purchase.rate = *Rate::parse(QString::fromLatin1(rate), NumberStyle::pointDecimal());
        purchase.freight = Money(freight, currency);
        purchase.duty = Money::zero(currency);
        purchase.tax = Money(tax, currency);
        const Id<Purchase> id = book.add(purchase);
        for (const std::int64_t price : prices) {
            PurchaseItem item;
            item.purchase = id;
            item.name = QStringLiteral("Item");
            item.unitPrice = Money(price, currency);
            item.coreCharge = Money::zero(currency);
            if (line.isSet())
                item.line = line;
            book.add(item);
        }
        if (paid) {
            Payment payment;
            payment.purchase = id;
            payment.on = QDate(2026, 5, 1);
            payment.amount = Money(paid, currency);
            book.add(payment);
        }
        return id;
    }
    LandedPurchase landed(Id<Purchase> id)
    {
        return landedCost(book.records(), *book.records().find(id));
    }
    Id<BudgetLine> line(const QString &name, std::int64_t allowance)
    {
        BudgetLine record;
        record.name = name;
        record.allowance = euros(allowance);
        return book.add(record);
    }

    TestBook book;
};

// Largest remainder: 14.95 of freight over 350, 1200 and 80 is 3.21, 11.01, 0.73 (worked by hand
// from the rule of the largest remainder).
TEST_F(BudgetTest, FreightIsSharedByPriceToTheCent)
{
    const LandedPurchase l = landed(order(euro(), "1", 1495, 0, {35000, 120000, 8000}, 0));
    EXPECT_EQ(l.items[0].landed, euros(35321));
    EXPECT_EQ(l.items[1].landed, euros(121101));
    EXPECT_EQ(l.items[2].landed, euros(8073));
    EXPECT_EQ(l.total, euros(164495));
}

TEST_F(BudgetTest, AnUnpaidOrderIsCommittedAndAPaidOneIsSpent)
{
    const LandedPurchase open = landed(order(euro(), "1", 0, 0, {10000}, 0));
    EXPECT_EQ(open.committed, euros(10000));
    EXPECT_EQ(open.spent, euros(0));
    const LandedPurchase half = landed(order(euro(), "1", 0, 0, {10000}, 4000));
    EXPECT_EQ(half.committed, euros(6000));
    EXPECT_EQ(half.spent, euros(4000));
}

TEST_F(BudgetTest, EverythingAddsUpForRandomOrdersInAnyCurrency)
{
    std::mt19937 random(11);
    const char *codes[] = {"EUR", "GBP", "JPY", "KWD", "CLF"};
    for (int run = 0; run < 60; ++run) {
        const Currency currency = *Currency::fromCode(QString::fromLatin1(codes[random() % 5]));
        std::vector<std::int64_t> prices(1 + random() % 7);
        std::int64_t sum = 0;
        for (std::int64_t &price : prices)
            sum += price = static_cast<std::int64_t>(random() % 100000);
        const std::int64_t freight = static_cast<std::int64_t>(random() % 5000);
        const std::int64_t tax = static_cast<std::int64_t>(random() % 5000);
        const std::int64_t whole = sum + freight + tax;
        const std::int64_t paid =
            random() % 3 == 0 ? whole : static_cast<std::int64_t>(random() % 120) * whole / 100;
        const std::string rate = currency == euro() ? "1"
                                                    : std::to_string(1 + random() % 3) + "." +
                                                          std::to_string(random() % 99999 + 1);
        const LandedPurchase l = landed(order(currency, rate.c_str(), freight, tax, prices, paid));
        EXPECT_EQ(l.total.minor(), whole);
        Money inBook = euros(0), spent = euros(0), committed = euros(0);
        for (const LandedItem &item : l.items) {
            inBook += item.inBook;
            spent += item.spent;
            committed += item.committed;
            EXPECT_GE(item.committed.minor(), 0);
            EXPECT_GE(item.spent.minor(), 0);
        }
        EXPECT_EQ(inBook, l.inBook);
        EXPECT_EQ(spent, l.spent);
        EXPECT_EQ(committed, l.committed);
        if (paid <= whole) {
            EXPECT_EQ(l.spent + l.committed, l.inBook);
        }
    }
    const Budget budget = budgetOf(book.records(), book.clock.today());
    Money spent = euros(0);
    for (const Purchase &purchase : book.records().all<Purchase>())
        spent += landedCost(book.records(), purchase).spent;
    EXPECT_EQ(budget.total.spent, spent);
}

TEST_F(BudgetTest, LinesTellSpentCommittedToComeAndLeft)
{
    const Id<BudgetLine> battery = line(QStringLiteral("Battery"), 500000);
    order(euro(), "1", 0, 0, {100000}, 100000, battery);
    order(euro(), "1", 0, 0, {50000}, 0, battery);
    Part wanted = namedPart(QStringLiteral("Busbars"), PartState::Wanted);
    wanted.estimate = euros(12000);
    wanted.line = battery;
    book.add(wanted);
    GotBack engine;
    engine.name = QStringLiteral("Old engine");
    engine.amount = euros(30000);
    engine.receivedOn = QDate(2026, 4, 1);
    engine.line = battery;
    book.add(engine);
    const Budget budget = budgetOf(book.records(), book.clock.today());
    ASSERT_EQ(budget.lines.size(), 1U);
    const LineSums &sums = budget.lines[0];
    EXPECT_EQ(sums.spent, euros(100000));
    EXPECT_EQ(sums.committed, euros(50000));
    EXPECT_EQ(sums.toCome, euros(12000));
    EXPECT_EQ(sums.gotBack, euros(30000));
    EXPECT_EQ(sums.left(), euros(368000));
    EXPECT_EQ(budget.contingency, euros(50000));
    EXPECT_EQ(budget.left(), euros(418000));
    EXPECT_EQ(budget.whole(), euros(580000));
}

TEST_F(BudgetTest, SaysWhatItCouldNotCount)
{
    book.add(namedPart(QStringLiteral("Mystery"), PartState::Wanted));
    Part foreign = namedPart(QStringLiteral("Foreign"), PartState::Wanted);
    foreign.estimate = Money(5000, *Currency::fromCode(u"USD"));
    book.add(foreign);
    EXPECT_EQ(budgetOf(book.records(), book.clock.today()).gaps.size(), 2);
}

TEST_F(BudgetTest, ToolsForTheShopAreKeptApart)
{
    const Id<Purchase> id = order(euro(), "1", 0, 0, {8000}, 8000);
    Part tool = namedPart(QStringLiteral("Torque wrench"), PartState::InHand, PartKind::Tool);
    tool.bought = book.records().of<PurchaseItem>(id).front().id;
    tool.countedTo = CountedTo::Shop;
    book.add(tool);
    const Budget budget = budgetOf(book.records(), book.clock.today());
    EXPECT_EQ(budget.shop, euros(8000));
    EXPECT_EQ(budget.total.spent, euros(0));
}

TEST_F(BudgetTest, ACoreChargeComesBackWhenTheOldUnitGoes)
{
    const Id<Purchase> id = order(euro(), "1", 0, 0, {20000}, 0);
    PurchaseItem item = book.records().of<PurchaseItem>(id).front();
    item.coreCharge = euros(5000);
    OHMWRIGHT_ASSERT_OK(book->edit(QStringLiteral("core"), [&] { return book->update(item); }));
    EXPECT_EQ(budgetOf(book.records(), book.clock.today()).total.expectedBack, euros(5000));
    item.coreReturnedOn = QDate(2026, 6, 1);
    OHMWRIGHT_ASSERT_OK(book->edit(QStringLiteral("core"), [&] { return book->update(item); }));
    const Budget budget = budgetOf(book.records(), book.clock.today());
    EXPECT_EQ(budget.total.gotBack, euros(5000));
    EXPECT_EQ(budget.total.expectedBack, euros(0));
}

TEST_F(BudgetTest, PartsOfOneItemShareItsCostToTheCent)
{
    const Id<Purchase> id = order(euro(), "1", 100, 0, {1000}, 0);
    PurchaseItem item = book.records().of<PurchaseItem>(id).front();
    item.count = 3;
    OHMWRIGHT_ASSERT_OK(book->edit(QStringLiteral("count"), [&] { return book->update(item); }));
    Money sum = euros(0);
    for (int i = 0; i < 3; ++i) {
        Part part = namedPart(QStringLiteral("Module %1").arg(i));
        part.bought = item.id;
        book.add(part);
    }
    for (const Part &part : book.records().all<Part>())
        sum += *landedCostOf(book.records(), part);
    EXPECT_EQ(sum, euros(3100));
}

} // namespace
} // namespace ohmwright
