// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/forecast/waits.h"

#include "core/plan/overdue.h"
#include "core/plan/plan_view.h"
#include "core/quantity/dates.h"

#include <QCoreApplication>

#include <algorithm>

namespace ohmwright::forecast {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("Forecast", text);
}

// Not before day `first`.
ThreePoint asLongAgain(const ThreePoint &estimate, int first)
{
    ThreePoint left = estimate;
    left.least = first;
    left.likely = std::max(estimate.likely, first);
    left.most = std::max(estimate.most, left.likely + (estimate.most - estimate.likely));
    return left;
}

QString countedAs(const ThreePoint &left)
{
    return tr("counted as taking as long again, %1 to %2\u00A0days from today, likely %3.")
        .arg(left.least)
        .arg(left.most)
        .arg(left.likely);
}

} // namespace

ThreePoint leadOf(const Part &part)
{
    ThreePoint days = threePoint(part.leadDays.value_or(plan::kAssumedLeadDays), part.leastLeadDays,
                                 part.mostLeadDays);
    days.assumed = days.assumed || !part.leadDays;
    return days;
}

ThreePoint answerOf(const Letter &letter)
{
    ThreePoint days = threePoint(letter.answerDays.value_or(plan::kAssumedAnswerDays),
                                 letter.leastAnswerDays, letter.mostAnswerDays);
    days.assumed = days.assumed || !letter.answerDays;
    return days;
}

WaitLeft deliveryLeft(const Records &records, const Part &part, QDate today)
{
    const ThreePoint lead = leadOf(part);
    if (const std::optional<QDate> since = plan::overdueSince(records, part, today)) {
        const ThreePoint left = asLongAgain(lead, 0);
        return {
            left,
            tr("“%1” is overdue since %2: %3").arg(part.name, showDate(*since), countedAs(left))};
    }
    // without a purchase nobody knows since when: the whole of it
    const std::optional<QDate> expected = plan::chaseOn(records, part, today);
    const int likely = expected ? static_cast<int>(today.daysTo(*expected)) : lead.likely;
    ThreePoint left = lead;
    left.likely = likely;
    left.least = std::max(0, likely - (lead.likely - lead.least));
    left.most = likely + (lead.most - lead.likely);
    return {left, {}};
}

WaitLeft answerLeft(const Letter &letter, QDate today)
{
    const ThreePoint days = answerOf(letter);
    if (const std::optional<QDate> since = plan::overdueSince(letter, today)) {
        const ThreePoint left = asLongAgain(days, plan::daysToAskAgain(letter, today));
        return {left, tr("The answer to “%1”, asked %2, is overdue since %3: %4")
                          .arg(letter.subject, showDate(*letter.askedOn), showDate(*since),
                               countedAs(left))};
    }
    ThreePoint left = days;
    const int elapsed = letter.askedOn ? static_cast<int>(letter.askedOn->daysTo(today)) : 0;
    for (int *one : {&left.least, &left.likely, &left.most})
        *one = std::max(0, *one - elapsed);
    return {left, {}};
}

ThreePoint waitAgain(const Records &records, const ohmwright::Task &task)
{
    ThreePoint wait = threePoint(task.waitDays, task.leastWaitDays, task.mostWaitDays);
    const auto longer = [&](const ThreePoint &days) {
        wait.least += days.least;
        wait.likely += days.likely;
        wait.most += days.most;
        wait.assumed = wait.assumed || days.assumed;
    };
    if (const Part *part = records.find(task.buys))
        longer(leadOf(*part));
    if (const Letter *letter = records.find(task.asks))
        longer(answerOf(*letter));
    return wait;
}

} // namespace ohmwright::forecast
