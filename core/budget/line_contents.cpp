// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/budget/line_contents.h"

#include "core/parts/log_part.h"
#include "core/parts/options.h"

#include <algorithm>
#include <array>
#include <unordered_map>

namespace ohmwright {

namespace {

struct Pieces
{
    std::int64_t all = 0, shop = 0;
    Id<Part> first;
};

class Listing
{
public:
    Listing(const Records &records, Id<BudgetLine> line, QDate today)
        : m_records(records), m_line(line), m_today(today), m_own(records.build().currency)
    {
        for (const Part &part : records.all<Part>()) {
            if (!part.bought)
                continue;
            Pieces &pieces = m_pieces[*part.bought];
            ++pieces.all;
            if (part.countedTo == CountedTo::Shop)
                ++pieces.shop;
            if (!pieces.first.isSet())
                pieces.first = part.id;
        }
    }

    std::vector<LineEntry> run()
    {
        std::vector<const Purchase *> purchases;
        for (const Purchase &purchase : m_records.all<Purchase>())
            if (touches(purchase))
                purchases.push_back(&purchase);
        std::stable_sort(
            purchases.begin(), purchases.end(),
            [](const Purchase *a, const Purchase *b) { return a->orderedOn > b->orderedOn; });
        for (const Purchase *purchase : purchases)
            addPurchase(*purchase);
        addWanted();
        addGotBack();
        return std::move(m_entries);
    }

private:
    // A line that is no longer there leaves its items without one.
    [[nodiscard]] bool here(const std::optional<Id<BudgetLine>> &line) const
    {
        const bool known = line && m_records.find(*line);
        return known ? *line == m_line : !m_line.isSet();
    }

    [[nodiscard]] bool touches(const Purchase &purchase) const
    {
        const auto items = m_records.of<PurchaseItem>(purchase.id);
        if (items.empty())
            return !m_line.isSet();
        return std::any_of(items.begin(), items.end(),
                           [&](const PurchaseItem &item) { return here(item.line); });
    }

    [[nodiscard]] LineEntry blank(EntryKind kind, const QString &name) const
    {
        LineEntry entry;
        entry.kind = kind;
        entry.name = name;
        entry.spent = entry.committed = entry.toCome = entry.gotBack = entry.expectedBack =
            Money::zero(m_own);
        return entry;
    }

    void addPurchase(const Purchase &purchase)
    {
        const LandedPurchase landed = landedCost(m_records, purchase);
        const Seller *seller = m_records.find(purchase.seller);
        LineEntry heading = blank(EntryKind::Purchase, seller ? seller->name : purchase.key);
        heading.on = purchase.orderedOn;
        heading.purchase = purchase.id;
        heading.shared = purchase.freight + purchase.duty + purchase.tax;
        heading.price = heading.core = Money::zero(purchase.currency);
        for (const PurchaseItem &item : m_records.of<PurchaseItem>(purchase.id)) {
            *heading.price += item.unitPrice * item.count;
            *heading.core += item.coreCharge;
        }
        heading.landed = *heading.price + *heading.shared;
        heading.paid = landed.paid;
        heading.inBook = landed.inBook;
        if (landed.items.empty()) {
            heading.spent = landed.spent;
            heading.committed = landed.committed;
        }
        m_entries.push_back(heading);
        for (const LandedItem &item : landed.items)
            if (here(m_records.find(item.item)->line))
                addItem(purchase, item);
    }

    void addItem(const Purchase &purchase, const LandedItem &landed)
    {
        const PurchaseItem &record = *m_records.find(landed.item);
        LineEntry entry = blank(EntryKind::Item, record.name);
        entry.purchase = purchase.id;
        entry.item = record.id;
        entry.price = record.unitPrice * record.count;
        entry.landed = landed.landed;
        entry.shared = landed.sharedCosts(*entry.price);
        entry.core = landed.core;
        entry.inBook = landed.inBook;
        entry.spent = landed.spent;
        entry.committed = landed.committed;
        if (const auto pieces = m_pieces.find(record.id); pieces != m_pieces.end()) {
            entry.part = pieces->second.first;
            if (pieces->second.shop > 0) {
                const std::array<std::int64_t, 2> weights{pieces->second.shop,
                                                          pieces->second.all - pieces->second.shop};
                entry.spent = shareOut(landed.spent, weights)[1];
                entry.committed = shareOut(landed.committed, weights)[1];
                entry.forShop = true;
            }
        }
        if (!landed.core.isZero())
            (record.coreReturnedOn ? entry.gotBack : entry.expectedBack) =
                purchase.rate.convert(landed.core, m_own);
        m_entries.push_back(entry);
    }

    void turn(Money money, LineEntry &entry, Money LineEntry::*into)
    {
        if (const auto rate = rateOn(m_records, money.currency(), m_today)) {
            entry.inBook = rate->convert(money, m_own);
            entry.*into = *entry.inBook;
        } else {
            entry.counted = false;
        }
    }

    void addWanted()
    {
        std::vector<const Part *> parts;
        for (const Part &part : m_records.all<Part>())
            if (part.state == PartState::Wanted && part.countedTo == CountedTo::Build &&
                isPlannedWith(m_records, part.option) && here(part.line))
                parts.push_back(&part);
        std::stable_sort(parts.begin(), parts.end(), [](const Part *a, const Part *b) {
            return a->name.compare(b->name, Qt::CaseInsensitive) < 0;
        });
        for (const Part *part : parts) {
            LineEntry entry = blank(EntryKind::Wanted, part->name);
            entry.part = part->id;
            entry.price = part->estimate;
            entry.counted = part->estimate.has_value();
            if (part->estimate)
                turn(*part->estimate, entry, &LineEntry::toCome);
            m_entries.push_back(entry);
        }
    }

    void addGotBack()
    {
        for (const GotBack &back : m_records.all<GotBack>()) {
            if (!here(back.line))
                continue;
            LineEntry entry = blank(EntryKind::GotBack, back.name);
            entry.back = back.id;
            entry.part = back.part.value_or(Id<Part>());
            entry.on = back.receivedOn ? back.receivedOn : back.expectedOn;
            entry.price = back.amount;
            entry.inBook = back.rate.convert(back.amount, m_own);
            (back.receivedOn ? entry.gotBack : entry.expectedBack) = *entry.inBook;
            m_entries.push_back(entry);
        }
    }

    const Records &m_records;
    Id<BudgetLine> m_line;
    QDate m_today;
    Currency m_own;
    std::unordered_map<Id<PurchaseItem>, Pieces> m_pieces;
    std::vector<LineEntry> m_entries;
};

} // namespace

std::vector<LineEntry> contentsOf(const Records &records, Id<BudgetLine> line, QDate today)
{
    return Listing(records, line, today).run();
}

} // namespace ohmwright
