// SPDX-License-Identifier: GPL-3.0-or-later
// What a change would bring, in days of each milestone, and which changes are worth telling.
#pragma once

#include "core/forecast/changes.h"

namespace ohmwright::forecast {

inline constexpr int kGainPercent = 80;

// Gains of one milestone, in days; below 0 it is reached later.
struct Gain
{
    PlanChange change;
    QString milestone; // key of its task
    double days = 0;   // at kGainPercent
    // Mean over the samples. Finer than `days`, which go by the evenings there are: work that ends
    // on Saturdays gains whole weeks.
    double meanDays = 0;
    double standardError = 0; // of `days`: from 20 batches of samples, on common random numbers
    // At least a day, and above twice the standard error.
    [[nodiscard]] bool isSure() const { return days >= 1 && days > 2 * standardError; }
    [[nodiscard]] bool isSureLoss() const { return days <= -1 && -days > 2 * standardError; }
};

// "at 80 %: 7 days earlier, give or take 1; in the mean 9 days earlier", "no sure gain: 1 day, give
// or take 2".
QString gainInWords(const Gain &gain);

// Of each of `milestones`, which are activities of the plan. Both plans with the same samples and,
// as far as they share activities, the same order of priority. Empty when cancelled.
std::vector<Gain> gainsOf(const Records &records, const WorkPlan &plan,
                          const Simulation &simulation, const std::vector<std::size_t> &milestones,
                          const PlanChange &change, const Settings &settings,
                          const Watch &watch = {});

// Of one milestone, by the key of its task; all 0 when cancelled or when there is none.
Gain gainOf(const Records &records, const WorkPlan &plan, const Simulation &simulation,
            const QString &milestone, const PlanChange &change, const Settings &settings,
            const Watch &watch = {});

// Changes worth trying: an hour more, a helper on each day with working times, every part that
// waits for a task to order it and could be ordered today all the same, and of the tasks that no
// other waits on and that protect nobody (free_work.h) those that most often drive the milestone.
std::vector<PlanChange> worthTrying(const Records &records, const WorkPlan &plan,
                                    const Forecast &forecast, const QString &milestone);

// Samples that many changes are tried on, one after the other.
inline constexpr int kGainSamples = 4000;

// Those of worthTrying whose gain is sure on at most kGainSamples, and a day at least in the mean
// too, greatest first.
std::vector<Gain> sureGains(const Records &records, const WorkPlan &plan,
                            const Simulation &simulation, const Forecast &forecast,
                            const QString &milestone, const Settings &settings,
                            const Watch &watch = {});

} // namespace ohmwright::forecast
