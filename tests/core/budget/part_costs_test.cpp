// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/budget/part_costs.h"
#include "tests/support/test_book.h"

#include <gtest/gtest.h>

using namespace ohmwright;

namespace {

class PartsOfAnOrder : public testing::Test
{
protected:
    Id<PurchaseItem> item(Id<Purchase> order, const char *name, int count, Money price)
    {
        PurchaseItem row;
        row.purchase = order;
        row.name = QString::fromLatin1(name);
        row.count = count;
        row.unitPrice = price;
        row.coreCharge = Money::zero(price.currency());
        return book.add(row);
    }

    Id<Purchase> order(Currency currency, const char *rate)
    {
        Seller seller;
        seller.name = QStringLiteral("Yard");
        Purchase row;
        row.seller = book.add(seller);
        row.orderedOn = QDate(2026, 3, 1);
        row.currency = currency;
        row.rate = *Rate::parse(QString::fromLatin1(rate), NumberStyle::pointDecimal());
        row.freight = Money(1000, currency);
        row.duty = Money(333, currency);
        row.tax = Money::zero(currency);
        return book.add(row);
    }

    Id<Part> part(const char *name, std::optional<Id<PurchaseItem>> bought)
    {
        Part row = namedPart(QString::fromLatin1(name));
        row.bought = bought;
        row.key = keyFrom(row.name);
        return book.add(row);
    }

    TestBook book;
};

} // namespace

TEST_F(PartsOfAnOrder, costTheSameWhetherAskedOneByOneOrAllAtOnce)
{
    const Currency pound = *Currency::fromCode(u"GBP");
    const auto home = order(euro(), "1");
    const auto abroad = order(pound, "1.1734");
    const auto modules = item(home, "module", 3, euros(10001));
    const auto more = item(home, "more modules", 1, euros(501));
    const auto pump = item(abroad, "pump", 2, Money(4999, pound));
    for (const char *name : {"m3", "m1", "m2"})
        part(name, modules);
    part("two-for-one", more);
    part("two-for-one-as-well", more);
    part("pump", pump);
    const auto wanted = part("wanted", std::nullopt);

    const auto costs = landedCosts(book.records());
    for (const Part &p : book.records().all<Part>()) {
        const auto one = landedCostOf(book.records(), p);
        const auto it = costs.find(p.id);
        ASSERT_EQ(one.has_value(), it != costs.end()) << p.key.toStdString();
        if (one) {
            EXPECT_EQ(*one, it->second) << p.key.toStdString();
        }
    }
    EXPECT_FALSE(costs.contains(wanted));
    EXPECT_EQ(costs.size(), 6U);
}

TEST_F(PartsOfAnOrder, areNoneInABookWithoutPurchases)
{
    part("found", std::nullopt);
    EXPECT_TRUE(landedCosts(book.records()).empty());
}
