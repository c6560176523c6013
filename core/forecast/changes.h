// SPDX-License-Identifier: GPL-3.0-or-later
// What a single change would bring: an hour more a week, a helper on Saturdays, a part ordered
// today, a task dropped.
#pragma once

#include "core/forecast/forecast.h"
#include "core/quantity/result.h"

namespace ohmwright::forecast {

// Written as a person types it after --try:
//   hours+90          minutes more a week, on the day with the longest working time
//   helper:saturday   one more pair of hands in that day's working times
//   order:PART        ordered today, whatever task is for it
//   drop:TASK         not done at all; what it waited on stays
struct PlanChange
{
    enum class Kind { Hours, Helper, Order, Drop };
    Kind kind = Kind::Hours;
    int minutes = 60;
    Weekday weekday = Weekday::Saturday;
    QString key;
    [[nodiscard]] QString code() const; // as typed
    bool operator==(const PlanChange &) const = default;
};

// BadInput with a sentence if it cannot be read; NotFound if the book has no such thing open.
Result<PlanChange> parsePlanChange(const QString &text, const Records &records);
// "Order the pack today", "A helper on Saturdays".
QString describe(const PlanChange &change, const Records &records);

// The records as they would be; a copy, nothing is written.
Records changedBy(const Records &records, const PlanChange &change, QDate today);

// Gains of one milestone, in days at 80 %.
struct Gain
{
    PlanChange change;
    double days = 0;
    double standardError = 0; // from 20 batches of samples, on common random numbers
    // At least a day, and above twice the standard error.
    [[nodiscard]] bool isSure() const { return days >= 1 && days > 2 * standardError; }
};

inline constexpr int kGainPercent = 80;

// `milestone`: key of the task. Both plans with the same samples and, as far as they share
// activities, the same order of priority.
Gain gainOf(const Records &records, const WorkPlan &plan, const Simulation &simulation,
            const QString &milestone, const PlanChange &change, const Settings &settings,
            const Watch &watch = {});

// Changes worth trying: an hour more, a helper on each day with working times, every part that
// waits for a task to order it, and the tasks that most often drive the milestone. What may protect
// people is never among them: high voltage, testing, paperwork, tasks that need a permit, a test or
// a letter.
std::vector<PlanChange> worthTrying(const Records &records, const WorkPlan &plan,
                                    const Forecast &forecast, const QString &milestone);

// Samples that many changes are tried on, one after the other.
inline constexpr int kGainSamples = 4000;

// Those of worthTrying whose gain is sure on at most kGainSamples, greatest first.
std::vector<Gain> sureGains(const Records &records, const WorkPlan &plan,
                            const Simulation &simulation, const Forecast &forecast,
                            const QString &milestone, const Settings &settings,
                            const Watch &watch = {});

} // namespace ohmwright::forecast
