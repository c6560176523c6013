// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/forecast/gains.h"

#include "core/forecast/free_work.h"
#include "core/forecast/usual_week.h"

#include <QCoreApplication>

#include <algorithm>
#include <array>
#include <cmath>
#include <map>

namespace ohmwright::forecast {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("Forecast", text);
}

constexpr std::size_t kBatches = 20;
constexpr std::size_t kTasksToDrop = 5;

std::size_t activityOf(const WorkPlan &plan, const QString &key)
{
    const auto found = std::find_if(plan.activities.begin(), plan.activities.end(),
                                    [&](const Activity &a) { return a.key == key; });
    return static_cast<std::size_t>(found - plan.activities.begin());
}

// The same order for what both plans have; what is new stands last.
std::vector<std::size_t> orderFor(const WorkPlan &changed, const WorkPlan &plan,
                                  const std::vector<std::size_t> &order)
{
    std::map<QString, std::size_t> places;
    for (std::size_t i = 0; i < changed.activities.size(); ++i)
        places.emplace(changed.activities[i].key, i);
    std::vector<std::size_t> result;
    std::vector<char> taken(changed.activities.size(), 0);
    for (const std::size_t i : order)
        if (const auto found = places.find(plan.activities[i].key); found != places.end()) {
            result.push_back(found->second);
            taken[found->second] = 1;
        }
    for (std::size_t i = 0; i < taken.size(); ++i)
        if (!taken[i])
            result.push_back(i);
    return result;
}

// The day at kGainPercent of some of the samples.
double dayOf(const std::vector<int> &ready, std::size_t from, std::size_t to)
{
    std::vector<int> some(ready.begin() + static_cast<std::ptrdiff_t>(from),
                          ready.begin() + static_cast<std::ptrdiff_t>(to));
    return static_cast<double>(dayAt(some, kGainPercent));
}

// `base` and `now`: the milestone's days in the same samples of the plan as it is and as it would
// be. Neither is empty.
void compare(const std::vector<int> &base, const std::vector<int> &now, Gain &gain)
{
    gain.days = dayOf(base, 0, base.size()) - dayOf(now, 0, now.size());
    double gained = 0;
    int counted = 0;
    for (std::size_t s = 0; s < base.size(); ++s)
        if (base[s] != plan::kNever && now[s] != plan::kNever) {
            gained += base[s] - now[s];
            ++counted;
        }
    gain.meanDays = counted > 0 ? gained / counted : 0;
    const std::size_t size = base.size() / kBatches;
    if (size == 0) {
        gain.standardError = HUGE_VAL; // too few samples to be sure of anything
        return;
    }
    double sum = 0;
    double squares = 0;
    for (std::size_t batch = 0; batch < kBatches; ++batch) {
        const double one = dayOf(base, batch * size, (batch + 1) * size) -
                           dayOf(now, batch * size, (batch + 1) * size);
        sum += one;
        squares += one * one;
    }
    const double mean = sum / kBatches;
    const double variance = std::max(0.0, (squares - kBatches * mean * mean) / (kBatches - 1));
    gain.standardError = std::sqrt(variance / kBatches);
}

// `base`: the milestones' days in the samples of the plan as it is. Empty when cancelled.
std::vector<Gain> gainsOver(const Samples &base, const Records &records, const WorkPlan &plan,
                            const Simulation &simulation,
                            const std::vector<std::size_t> &milestones, const PlanChange &change,
                            const Settings &settings, const Watch &watch)
{
    if (base.cancelled)
        return {};
    std::vector<Gain> gains;
    std::vector<std::size_t> after;
    std::vector<std::size_t> asked; // places in `milestones`
    const WorkPlan changed = workPlanOf(changedBy(records, change, plan.today), plan.today);
    for (std::size_t m = 0; m < milestones.size(); ++m) {
        Gain gain;
        gain.change = change;
        gain.milestone = plan.activities[milestones[m]].key;
        const std::size_t there = activityOf(changed, gain.milestone);
        if (there != changed.activities.size()) {
            after.push_back(there);
            asked.push_back(m);
        }
        gains.push_back(gain);
    }
    const Simulation other(changed, settings, orderFor(changed, plan, simulation.order()));
    const Samples now = other.sample(after, {}, watch);
    if (now.cancelled)
        return {};
    for (std::size_t i = 0; i < asked.size(); ++i)
        compare(base.ready[asked[i]], now.ready[i], gains[asked[i]]);
    return gains;
}

QString days(long count)
{
    return count == 1 ? tr("1\u00A0day") : tr("%1\u00A0days").arg(count);
}

QString meanInWords(double meanDays)
{
    const long mean = std::lround(std::abs(meanDays));
    if (mean == 0)
        return tr("in the mean less than a day");
    return (meanDays > 0 ? tr("in the mean %1 earlier") : tr("in the mean %1 later"))
        .arg(days(mean));
}

} // namespace

QString gainInWords(const Gain &gain)
{
    const long at80 = std::lround(std::abs(gain.days));
    if (gain.isSure() || gain.isSureLoss()) {
        const QString error =
            gain.standardError > 0
                ? tr(", give or take %1").arg(std::max(1L, std::lround(gain.standardError)))
                : QString();
        return (gain.isSure() ? tr("at %1\u00A0%: %2 earlier%3; %4")
                              : tr("at %1\u00A0%: %2 later%3; %4"))
            .arg(kGainPercent)
            .arg(days(at80), error, meanInWords(gain.meanDays));
    }
    if (!std::isfinite(gain.standardError))
        return tr("no sure gain: too few plays of the plan to tell");
    if (gain.days == 0 && gain.standardError == 0)
        return tr("no gain");
    if (at80 == 0)
        return tr("no gain, give or take %1")
            .arg(days(std::max(1L, std::lround(gain.standardError))));
    return tr("no sure gain: %1%2, give or take %3")
        .arg(gain.days < 0 ? tr("minus ") : QString(), days(at80))
        .arg(std::max(1L, std::lround(gain.standardError)));
}

std::vector<Gain> gainsOf(const Records &records, const WorkPlan &plan,
                          const Simulation &simulation, const std::vector<std::size_t> &milestones,
                          const PlanChange &change, const Settings &settings, const Watch &watch)
{
    return gainsOver(simulation.sample(milestones, {}, watch), records, plan, simulation,
                     milestones, change, settings, watch);
}

Gain gainOf(const Records &records, const WorkPlan &plan, const Simulation &simulation,
            const QString &milestone, const PlanChange &change, const Settings &settings,
            const Watch &watch)
{
    Gain none;
    none.change = change;
    none.milestone = milestone;
    const std::size_t at = activityOf(plan, milestone);
    if (at == plan.activities.size())
        return none;
    const std::vector<Gain> gains =
        gainsOf(records, plan, simulation, {at}, change, settings, watch);
    return gains.empty() ? none : gains.front();
}

std::vector<PlanChange> worthTrying(const Records &records, const WorkPlan &plan,
                                    const Forecast &forecast, const QString &milestone)
{
    using Kind = PlanChange::Kind;
    std::vector<PlanChange> changes{PlanChange{}};
    const std::array<bool, 7> days = workingDays(records);
    for (std::size_t day = 0; day < days.size(); ++day)
        if (days[day])
            changes.push_back({Kind::Helper, 0, static_cast<Weekday>(day), {}});
    for (const Activity &a : plan.activities)
        if (const Part *part =
                a.toOrder && !a.after.empty() ? records.byKey<Part>(a.part) : nullptr;
            part && whyNotToday(records, *part).isEmpty())
            changes.push_back({Kind::Order, 0, {}, a.part});

    const WaitedOn waited = waitedOnBy(records);
    for (std::size_t m = 0; m < plan.milestones.size(); ++m) {
        if (plan.activities[plan.milestones[m]].key != milestone)
            continue;
        const std::vector<double> &driving = forecast.drivingMilestone[m];
        std::vector<std::size_t> tasks;
        for (std::size_t i = 0; i < plan.activities.size(); ++i) {
            const Activity &a = plan.activities[i];
            const auto *task = a.kind == ActivityKind::Task && driving[i] > 0
                                   ? records.byKey<ohmwright::Task>(a.key)
                                   : nullptr;
            if (task && whyKept(records, *task, waited).isEmpty())
                tasks.push_back(i);
        }
        std::stable_sort(tasks.begin(), tasks.end(),
                         [&](std::size_t a, std::size_t b) { return driving[a] > driving[b]; });
        tasks.resize(std::min(tasks.size(), kTasksToDrop));
        for (const std::size_t i : tasks)
            changes.push_back({Kind::Drop, 0, {}, plan.activities[i].key});
    }
    return changes;
}

std::vector<Gain> sureGains(const Records &records, const WorkPlan &plan,
                            const Simulation &simulation, const Forecast &forecast,
                            const QString &milestone, const Settings &settings, const Watch &watch)
{
    const std::size_t at = activityOf(plan, milestone);
    if (at == plan.activities.size())
        return {};
    std::vector<Gain> sure;
    Settings fewer = settings;
    fewer.samples = std::min(settings.samples, kGainSamples);
    const Simulation quick(plan, fewer, simulation.order());
    const Samples base = quick.sample({at}, {}, watch);
    for (const PlanChange &change : worthTrying(records, plan, forecast, milestone)) {
        for (const Gain &gain : gainsOver(base, records, plan, quick, {at}, change, fewer, watch))
            if (gain.isSure() && std::lround(gain.meanDays) >= 1) // "mean 0 days earlier" is none
                sure.push_back(gain);
        if (watch.isCancelled())
            return {};
    }
    std::stable_sort(sure.begin(), sure.end(),
                     [](const Gain &a, const Gain &b) { return a.days > b.days; });
    return sure;
}

} // namespace ohmwright::forecast
