// SPDX-License-Identifier: GPL-3.0-or-later
// The first everyday job: log a newly bought part in one edit, with whatever is known at the bench.
// The window's sheet and `ohmwright log-part` both fill in a LogEntry.
#pragma once

#include "core/book/book.h"
#include "core/parts/figures.h"

#include <variant>
#include <vector>

namespace ohmwright {

// Joins a record that is there, or makes a new one.
template <class R>
using ThereOrNew = std::variant<Id<R>, R>;

struct LogPrice
{
    ThereOrNew<Seller> seller;
    // Joining an order in the book: its shared costs stay as they are, and here are refused.
    std::optional<Id<Purchase>> purchase;
    Money unitPrice;
    int count = 1;
    // For a new order, in the price's currency.
    Money freight, duty, tax;
    Money coreCharge;
    std::optional<Rate> rate; // none: the newest day rate, or 1 in the book's currency
    QString rateSource;
    bool paid = true; // on the day it was bought
    QString reference;
};

struct LogRating
{
    FigureName figure;
    std::optional<Amount> value; // none: an open question, if a circuit or the sheet asks
    std::optional<Amount> duration;
    Evidence evidence = Evidence::Nameplate;
    QString source;
    QString note;
    std::optional<QDate> on; // read or measured; none: the day of logging
};

struct LogPhoto
{
    QByteArray bytes;
    QString fileName, mediaType, title;
};

struct LogEntry
{
    QString name;
    PartKind kind = PartKind::Unit;
    PartState state = PartState::InHand; // wanted, ordered or in hand
    QDate on;                            // bought, or put on the list
    std::optional<ThereOrNew<Donor>> donor;
    std::optional<LogPrice> price;
    std::optional<Id<BudgetLine>> line;
    std::optional<Id<Part>> partOf;
    std::optional<Id<PartType>> type;
    std::vector<Id<Circuit>> circuits;
    std::vector<LogRating> ratings;
    QString serial, condition, place, note;
    std::optional<int> warrantyDays, returnDays; // from `on`
    std::optional<Money> estimate;
    std::optional<int> leadDays;
    std::vector<LogPhoto> photos;
};

// Nothing is written on a Problem; its `where` names the entry's field ("unit_price", "rate", …).
// A foreign price without a rate is refused when the book knows no day rate for that currency.
Result<Id<Part>> logPart(Book &book, const LogEntry &entry);

// The newest day rate of a currency on or before a day; 1 for the book's own.
std::optional<Rate> rateOn(const Records &records, Currency currency, QDate day);

} // namespace ohmwright
