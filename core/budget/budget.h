// SPDX-License-Identifier: GPL-3.0-or-later
// Where the money stands: landed cost of every item, and the budget's lines and totals.
//
// Everything is exact. A purchase is converted once, at its own rate, and shared out by largest
// remainder, so that items add up to purchases, purchases to lines and lines to the total, to the
// last minor unit of each currency.
#pragma once

#include "core/quantity/money.h"
#include "core/records/records.h"

#include <QDate>
#include <QStringList>

#include <vector>

namespace ohmwright {

// One item of a purchase with its share of freight, duty and tax.
struct LandedItem
{
    Id<PurchaseItem> item;
    Money landed;    // purchase's currency: price and shared costs; the core charge apart
    Money core;      // purchase's currency
    Money inBook;    // landed and core, book's currency
    Money spent;     // of inBook, paid
    Money committed; // of inBook, not yet paid
    [[nodiscard]] Money sharedCosts(Money price) const { return landed - price; }
};

struct LandedPurchase
{
    Id<Purchase> purchase;
    std::vector<LandedItem> items;  // in order of position
    Money total, paid;              // purchase's currency
    Money inBook, spent, committed; // book's currency
};

LandedPurchase landedCost(const Records &records, const Purchase &purchase);
// Of one part: its item's landed cost shared equally among the item's count. None if not bought.
std::optional<Money> landedCostOf(const Records &records, const Part &part);

struct LineSums
{
    Id<BudgetLine> line; // not set: what has no line
    QString name;
    Money allowance, spent, committed, toCome, gotBack, expectedBack;
    // What the line will have cost: spent, committed and to come, less what came back.
    [[nodiscard]] Money expected() const { return spent + committed + toCome - gotBack; }
    [[nodiscard]] Money left() const { return allowance - expected(); }
};

struct Budget
{
    Currency currency;
    std::vector<LineSums> lines; // in order of position, key; "without a line" last if not empty
    LineSums total;              // sums of the lines
    Money contingency;           // the build's percentage of the allowances
    Money shop;                  // bought for the shop, not counted to the build
    QStringList gaps;            // what could not be counted, one sentence each
    // What there is to spend: allowances, contingency, and what came back.
    [[nodiscard]] Money whole() const { return total.allowance + contingency + total.gotBack; }
    // Of allowances and contingency, after everything spent, committed and to come.
    [[nodiscard]] Money left() const { return total.left() + contingency; }
};

// A task's need of money is a condition, not a cost: what it pays for is counted with its purchase
// or estimate. `today` decides which day rate an estimate in a foreign currency is turned with.
Budget budgetOf(const Records &records, QDate today);

} // namespace ohmwright
