// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/plan/loom_forecast.h"

#include "core/quantity/dates.h"

#include <QCoreApplication>
#include <QHash>

#include <algorithm>

namespace ohmwright::plan {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("Loom", text);
}

} // namespace

QString LoomForecast::arrivalOf(const LeafNeed &need) const
{
    if (need.met || need.subject.isEmpty())
        return {};
    const auto at = std::ranges::find(arrivals, need.subject, &LoomArrival::subject);
    if (at == arrivals.end())
        return {};
    const auto words = [&](const QString &sentence, int day) {
        return sentence.arg(loomDay(today.addDays(day), today));
    };
    if (at->sendBy)
        return words(at->isAsked ? tr("ask by %1") : tr("order by %1"), *at->sendBy);
    return at->ready ? words(QStringLiteral("80\u00A0%: %1"), *at->ready) : QString();
}

LoomForecast forNetwork(const LoomForecast &forecast, const Network &made, const Network &now)
{
    QHash<QString, std::size_t> known;
    for (std::size_t task = 0; task < made.tasks.size(); ++task)
        known.insert(made.tasks[task].key, task);
    LoomForecast result = forecast;
    result.tasks.assign(now.tasks.size(), {});
    for (std::size_t task = 0; task < now.tasks.size(); ++task) {
        const auto at = known.constFind(now.tasks[task].key);
        if (at != known.constEnd())
            result.tasks[task] = forecast.of(*at);
    }
    return result;
}

QString loomDate(QDate date, QDate today)
{
    const QString whole = showDate(date);
    return date.year() == today.year() ? whole.section(QLatin1Char(' '), 0, 1) : whole;
}

QString loomDay(QDate date, QDate today)
{
    const bool near = date >= today && date < today.addMonths(10);
    return near ? showDate(date).section(QLatin1Char(' '), 0, 1) : loomDate(date, today);
}

} // namespace ohmwright::plan
