// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/plan/overdue.h"

#include "core/plan/plan_view.h"

#include <algorithm>

namespace ohmwright::plan {

namespace {

std::optional<QDate> expectedOn(const Letter &letter)
{
    if (letter.state != LetterState::Asked || !letter.askedOn)
        return std::nullopt;
    return letter.askedOn->addDays(letter.answerDays.value_or(kAssumedAnswerDays));
}

std::optional<QDate> expectedOn(const Records &records, const Part &part)
{
    const PurchaseItem *item = records.find(part.bought);
    const Purchase *purchase = item ? records.find(item->purchase) : nullptr;
    if (part.state != PartState::Ordered || !purchase)
        return std::nullopt;
    return purchase->promisedOn
               ? *purchase->promisedOn
               : purchase->orderedOn.addDays(part.leadDays.value_or(kAssumedLeadDays));
}

std::optional<QDate> ifPast(std::optional<QDate> day, QDate today)
{
    return day && *day < today ? day : std::nullopt;
}

} // namespace

std::optional<QDate> overdueSince(const Letter &letter, QDate today)
{
    return ifPast(expectedOn(letter), today);
}

std::optional<QDate> overdueSince(const Records &records, const Part &part, QDate today)
{
    return ifPast(expectedOn(records, part), today);
}

int daysToAskAgain(const Letter &letter, QDate today)
{
    return letter.askAgainOn ? std::max(0, static_cast<int>(today.daysTo(*letter.askAgainOn))) : 0;
}

QDate chaseOn(const Letter &letter, QDate today)
{
    return std::max(today, letter.askAgainOn.value_or(expectedOn(letter).value_or(today)));
}

std::optional<QDate> chaseOn(const Records &records, const Part &part, QDate today)
{
    const std::optional<QDate> expected = expectedOn(records, part);
    return expected ? std::optional(std::max(today, *expected)) : std::nullopt;
}

} // namespace ohmwright::plan
