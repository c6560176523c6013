// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/plan/loom_forecast.h"

#include "core/quantity/dates.h"

#include <QHash>

#include <algorithm>

namespace ohmwright::plan {

std::optional<int> LoomForecast::arrivalOf(const LeafNeed &need) const
{
    if (need.met || need.subject.isEmpty())
        return std::nullopt;
    const auto at = std::find_if(arrivals.begin(), arrivals.end(), [&](const LoomArrival &arrival) {
        return arrival.subject == need.subject;
    });
    return at == arrivals.end() ? std::nullopt : at->ready;
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
