// SPDX-License-Identifier: GPL-3.0-or-later
// Money records: purchases as lots with shared costs, payments, budget lines, what was got back.
#pragma once

#include "core/quantity/money.h"
#include "core/records/ledger.h"

namespace ohmwright {

struct BudgetLine
{
    Id<BudgetLine> id;
    QString key, name;
    Money allowance; // in the book's currency, not negative
    int position = 0;
    QString note;
    bool operator==(const BudgetLine &) const = default;
};

// The day's rate of a foreign currency; the newest one is offered for a new purchase and used for
// estimates.
struct DayRate
{
    Id<DayRate> id;
    QString key;
    Currency currency;
    QDate on;
    Rate rate; // book currency for one unit of `currency`
    QString source;
    bool operator==(const DayRate &) const = default;
};

enum class ShareBy { Price, Count };
template <>
struct EnumWords<ShareBy>
{
    static constexpr std::array words{"price", "count"};
};

// One order: several items, with freight, duty and tax shared among them.
struct Purchase
{
    Id<Purchase> id;
    QString key;
    Id<Seller> seller;
    QDate orderedOn;
    Currency currency;
    Rate rate; // that day's; 1 in the book's own currency
    QString rateSource;
    Money freight, duty, tax; // in `currency`, not negative
    ShareBy shareBy = ShareBy::Price;
    QString reference; // order or invoice number
    std::optional<QDate> promisedOn, arrivedOn;
    QString note;
    bool operator==(const Purchase &) const = default;
};

struct PurchaseItem
{
    Id<PurchaseItem> id;
    QString key;
    Id<Purchase> purchase;
    int position = 0;
    QString name;
    int count = 1;                       // 1 to 100000
    Money unitPrice;                     // in the purchase's currency, before the shared costs
    Money coreCharge;                    // deposit on the old unit, for the whole item
    std::optional<QDate> coreReturnedOn; // the deposit came back that day
    std::optional<Id<BudgetLine>> line;
    bool operator==(const PurchaseItem &) const = default;
};

struct Payment
{
    Id<Payment> id;
    Id<Purchase> purchase;
    int position = 0;
    QDate on;
    Money amount; // in the purchase's currency
    QString note;
    bool operator==(const Payment &) const = default;
};

// Money that comes back: the old engine sold, a part returned, a part sold on.
struct GotBack
{
    Id<GotBack> id;
    QString key, name;
    Money amount;
    Rate rate;
    std::optional<QDate> expectedOn, receivedOn;
    std::optional<Id<Part>> part;
    std::optional<Id<BudgetLine>> line;
    QString note;
    bool operator==(const GotBack &) const = default;
};

} // namespace ohmwright
