// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/parts/part_words.h"

#include <QCoreApplication>

#include <algorithm>
#include <map>

namespace ohmwright::ui {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("PartWords", text);
}

constexpr std::size_t kRecentOrders = 20;

} // namespace

Mark markOf(PartState state)
{
    switch (state) {
    case PartState::Wanted:
        return Mark::Wanted;
    case PartState::Ordered:
        return Mark::Ordered;
    case PartState::InHand:
        return Mark::InHand;
    case PartState::Tested:
        return Mark::Tested;
    case PartState::Fitted:
        return Mark::Fitted;
    case PartState::Returned:
        return Mark::Returned;
    case PartState::Sold:
        return Mark::Sold;
    case PartState::Scrapped:
        return Mark::Scrapped;
    case PartState::Quarantined:
        return Mark::Quarantined;
    }
    return Mark::Unknown;
}

QString donorName(const Donor &donor)
{
    QStringList words{donor.make, donor.model};
    if (donor.year)
        words << QString::number(*donor.year);
    words.removeAll(QString());
    return words.join(u' ');
}

Donor donorFromText(const QString &text)
{
    QStringList words = text.simplified().split(u' ', Qt::SkipEmptyParts);
    Donor donor;
    if (words.size() > 1 && words.back().size() == 4) {
        bool digits = true;
        for (const QChar c : words.back())
            digits = digits && c >= u'0' && c <= u'9';
        if (digits)
            donor.year = words.takeLast().toInt();
    }
    if (!words.isEmpty())
        donor.make = words.takeFirst();
    donor.model = words.join(u' ');
    return donor;
}

QString sentenceOf(const Problem &problem)
{
    return problem.whatToDo.isEmpty() ? problem.sentence
                                      : problem.sentence + u' ' + problem.whatToDo;
}

QString shown(const std::optional<Amount> &amount)
{
    return amount ? showAmount(*amount, pageStyle()) : tr("unknown");
}

QString shown(const std::optional<QDate> &date)
{
    return date ? printDate(*date) : QString();
}

std::vector<KnownName> knownDonors(const Records &records)
{
    std::vector<KnownName> known;
    for (const Donor &donor : records.all<Donor>())
        known.push_back({donor.key, donorName(donor), donor.vin});
    return known;
}

std::vector<KnownName> knownParts(const Records &records)
{
    std::vector<KnownName> known;
    for (const Part &part : records.all<Part>())
        known.push_back({part.key, part.name, part.key});
    return known;
}

std::vector<KnownName> knownLines(const Records &records)
{
    std::vector<const BudgetLine *> lines;
    for (const BudgetLine &line : records.all<BudgetLine>())
        lines.push_back(&line);
    std::stable_sort(lines.begin(), lines.end(),
                     [](auto *a, auto *b) { return a->position < b->position; });
    std::vector<KnownName> known;
    for (const BudgetLine *line : lines)
        known.push_back({line->key, line->name, {}});
    return known;
}

std::vector<KnownName> knownCircuits(const Records &records)
{
    std::vector<KnownName> known;
    for (const Circuit &circuit : records.all<Circuit>())
        known.push_back({circuit.key, circuit.name, wordOf(circuit.kind)});
    return known;
}

std::vector<KnownName> knownSellers(const Records &records)
{
    std::map<Id<Seller>, QDate> last;
    for (const Purchase &purchase : records.all<Purchase>()) {
        QDate &day = last[purchase.seller];
        day = day.isValid() ? std::max(day, purchase.orderedOn) : purchase.orderedOn;
    }
    std::vector<const Seller *> sellers;
    for (const Seller &seller : records.all<Seller>())
        sellers.push_back(&seller);
    std::stable_sort(sellers.begin(), sellers.end(), [&](auto *a, auto *b) {
        const auto x = last.find(a->id);
        const auto y = last.find(b->id);
        if (x == last.end() || y == last.end())
            return x != last.end() && y == last.end();
        return x->second > y->second;
    });
    std::vector<KnownName> known;
    for (const Seller *seller : sellers)
        known.push_back({seller->key, seller->name, wordOf(seller->kind)});
    return known;
}

std::vector<KnownName> knownPurchases(const Records &records)
{
    std::vector<const Purchase *> purchases;
    for (const Purchase &purchase : records.all<Purchase>())
        purchases.push_back(&purchase);
    std::stable_sort(purchases.begin(), purchases.end(),
                     [](auto *a, auto *b) { return a->orderedOn > b->orderedOn; });
    if (purchases.size() > kRecentOrders)
        purchases.resize(kRecentOrders);
    std::vector<KnownName> known;
    for (const Purchase *purchase : purchases) {
        const Seller *seller = records.find(purchase->seller);
        known.push_back(
            {purchase->key,
             tr("%1, %2").arg(seller ? seller->name : QString(), showDate(purchase->orderedOn)),
             purchase->reference});
    }
    return known;
}

} // namespace ohmwright::ui
