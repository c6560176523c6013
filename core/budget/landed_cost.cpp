// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/budget/budget.h"

#include <algorithm>

namespace ohmwright {

namespace {

// Shares `sum` in proportion to `caps` with no share above its cap; sum <= total of caps. Largest
// remainder can give one minor unit too many to an item that is all but paid.
std::vector<Money> shareWithin(Money sum, const std::vector<std::int64_t> &caps)
{
    std::vector<Money> shares = shareOut(sum, caps);
    Money over = Money::zero(sum.currency());
    for (std::size_t i = 0; i < shares.size(); ++i) {
        const Money cap(caps[i], sum.currency());
        if (cap < shares[i]) {
            over += shares[i] - cap;
            shares[i] = cap;
        }
    }
    for (std::size_t i = 0; i < shares.size() && !over.isZero(); ++i) {
        const Money room = Money(caps[i], sum.currency()) - shares[i];
        const Money more = room < over ? room : over;
        shares[i] += more;
        over -= more;
    }
    return shares;
}

} // namespace

LandedPurchase landedCost(const Records &records, const Purchase &purchase)
{
    const Currency foreign = purchase.currency;
    const Currency own = records.build().currency;
    LandedPurchase result;
    result.purchase = purchase.id;
    result.total = result.paid = Money::zero(foreign);
    result.inBook = result.spent = result.committed = Money::zero(own);
    const auto items = records.of<PurchaseItem>(purchase.id);
    for (const Payment &payment : records.of<Payment>(purchase.id))
        result.paid += payment.amount;
    if (items.empty()) {
        // shared costs of an order whose items are not entered yet still are money
        result.total = purchase.freight + purchase.duty + purchase.tax;
        result.inBook = purchase.rate.convert(result.total, own);
        result.spent = purchase.rate.convert(result.paid, own);
        result.committed =
            result.spent < result.inBook ? result.inBook - result.spent : Money::zero(own);
        return result;
    }
    std::vector<std::int64_t> weights;
    for (const PurchaseItem &item : items)
        weights.push_back(purchase.shareBy == ShareBy::Price ? (item.unitPrice * item.count).minor()
                                                             : item.count);
    std::vector<std::int64_t> outlays;
    // each shared cost by itself, so that a customs form and a carrier's bill can be checked apart
    const auto freight = shareOut(purchase.freight, weights);
    const auto duty = shareOut(purchase.duty, weights);
    const auto tax = shareOut(purchase.tax, weights);
    for (std::size_t i = 0; i < items.size(); ++i) {
        LandedItem landed;
        landed.item = items[i].id;
        landed.landed = items[i].unitPrice * items[i].count + freight[i] + duty[i] + tax[i];
        landed.core = items[i].coreCharge;
        result.total += landed.landed + landed.core;
        outlays.push_back((landed.landed + landed.core).minor());
        result.items.push_back(landed);
    }
    result.inBook = purchase.rate.convert(result.total, own);
    const bool paidUp = !(result.paid < result.total);
    result.spent = paidUp && result.paid == result.total ? result.inBook
                                                         : purchase.rate.convert(result.paid, own);
    result.committed = paidUp ? Money::zero(own) : result.inBook - result.spent;
    const auto inBook = shareOut(result.inBook, outlays);
    std::vector<std::int64_t> caps;
    caps.reserve(inBook.size());
    for (const Money share : inBook)
        caps.push_back(share.minor());
    const std::vector<Money> owed = shareWithin(result.committed, caps);
    // paid more than the order came to: the surplus is spent all the same, in proportion
    const std::vector<Money> extra =
        shareOut(result.spent + result.committed - result.inBook, outlays);
    for (std::size_t i = 0; i < items.size(); ++i) {
        result.items[i].inBook = inBook[i];
        result.items[i].committed = owed[i];
        result.items[i].spent = inBook[i] - owed[i] + extra[i];
    }
    return result;
}

std::optional<Money> landedCostOf(const Records &records, const Part &part)
{
    const PurchaseItem *item = records.find(part.bought);
    const Purchase *purchase = item ? records.find(item->purchase) : nullptr;
    if (!purchase)
        return std::nullopt;
    std::vector<Id<Part>> siblings;
    for (const Part &other : records.all<Part>())
        if (other.bought == part.bought)
            siblings.push_back(other.id);
    for (const LandedItem &landed : landedCost(records, *purchase).items) {
        if (landed.item != item->id)
            continue;
        const std::size_t shares = std::max(siblings.size(), static_cast<std::size_t>(item->count));
        const std::vector<std::int64_t> equal(shares, 1);
        const auto mine = std::find(siblings.begin(), siblings.end(), part.id) - siblings.begin();
        return shareOut(landed.inBook, equal)[static_cast<std::size_t>(mine)];
    }
    return std::nullopt;
}

} // namespace ohmwright
