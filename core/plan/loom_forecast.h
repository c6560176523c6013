// SPDX-License-Identifier: GPL-3.0-or-later
// What the loom shows of a forecast, as plain values: core/forecast fills them in
// (loomForecastOf), a test makes them by hand.
#pragma once

#include "core/plan/network.h"

#include <QDate>
#include <QString>

#include <array>
#include <cstddef>
#include <optional>
#include <vector>

namespace ohmwright::plan {

// Of one task. Days are counted from today; none where it is not known or never comes.
struct LoomDays
{
    std::optional<int> start, finish; // planned, by the likely estimates
    std::optional<int> floatDays;     // the start may slip so far without moving the last end
    std::array<std::optional<int>, 3> ready; // done by then in 50, 80 and 95 % of the samples
    double driving = 0;                      // share of samples in which it drives the end, 0 to 1
    // It is in the forecast; a task that is done is not.
    [[nodiscard]] bool known() const { return start || finish || ready[0] || ready[1] || ready[2]; }
    bool operator==(const LoomDays &) const = default;
};

// A part on its way or an answer awaited, or still to order or to ask for.
struct LoomArrival
{
    QString subject;           // LeafNeed::subject: "part:pack", "letter:scheme"
    std::optional<int> ready;  // here by then in 80 % of the samples
    std::optional<int> sendBy; // the day to order or ask by, where it is still to do
    bool isAsked = false;      // a letter
    bool operator==(const LoomArrival &) const = default;
};

struct LoomForecast
{
    QDate today;
    std::vector<LoomDays> tasks; // per task of the network; shorter: the rest is not known
    std::vector<LoomArrival> arrivals;

    [[nodiscard]] const LoomDays &of(std::size_t task) const
    {
        static const LoomDays unknown;
        return task < tasks.size() ? tasks[task] : unknown;
    }
    // "order by 24 Dec", "ask by 2 Apr", of what is under way "80 %: 14 Dec"; empty if the forecast
    // does not say.
    [[nodiscard]] QString arrivalOf(const LeafNeed &need) const;
    bool operator==(const LoomForecast &) const = default;
};

// The same forecast for another network: tasks keep their days by key, new ones have none.
LoomForecast forNetwork(const LoomForecast &forecast, const Network &made, const Network &now);

// "6 Aug"; of another year than `today` "6 Aug 2027".
QString loomDate(QDate date, QDate today);

// "6 Aug" for the next ten months, in which that is one day only; else as loomDate().
QString loomDay(QDate date, QDate today);

} // namespace ohmwright::plan
