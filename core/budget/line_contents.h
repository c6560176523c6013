// SPDX-License-Identifier: GPL-3.0-or-later
// What a budget line is made of: its purchases with their items, what is still wanted, money that
// tasks need, and what came or comes back. The sums of the entries are the line's.
#pragma once

#include "core/budget/budget.h"
#include "core/records/records.h"

#include <QDate>

#include <optional>
#include <vector>

namespace ohmwright {

enum class EntryKind { Purchase, Item, Wanted, GotBack };

struct LineEntry
{
    EntryKind kind = EntryKind::Item;
    QString name;            // seller, item, part
    std::optional<QDate> on; // ordered, met, expected or received
    // Which of them are set goes by the kind.
    Id<Purchase> purchase;
    Id<PurchaseItem> item;
    Id<Part> part; // of an item: the first part that came with it, if any is recorded
    Id<GotBack> back;
    // Purchase's or estimate's own currency. Of a purchase: everything in it, whichever line.
    std::optional<Money> price;  // all pieces, before shared costs
    std::optional<Money> shared; // freight, duty and tax
    std::optional<Money> core;
    std::optional<Money> landed; // price and shared costs
    std::optional<Money> paid;   // of a purchase
    std::optional<Money> inBook; // landed and core in the book's currency
    // What this entry adds to the line, book's currency. A purchase adds nothing but through its
    // items, unless it has none.
    Money spent, committed, toCome, gotBack, expectedBack;
    bool counted = true;  // false: no estimate, or no rate for its currency
    bool forShop = false; // part or all of it is not counted to the build
    bool operator==(const LineEntry &) const = default;
};

// `line` not set: what has no line. Purchases newest first, each followed by its items of this
// line; then wanted parts by name; then what comes back.
std::vector<LineEntry> contentsOf(const Records &records, Id<BudgetLine> line, QDate today);

} // namespace ohmwright
