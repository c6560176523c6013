// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/forecast/changes.h"

#include "core/forecast/hours.h"

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

template <class R, class Change>
void changeAll(Records &records, Change change)
{
    std::vector<R> rows = records.all<R>().rows();
    for (R &row : rows)
        change(row);
    records.all<R>().assign(std::move(rows));
}

// The pattern that stands for the hours a week while none is told (hours.h), as working times.
void tellAssumedHours(Records &records)
{
    if (records.all<WorkingTime>().size() > 0)
        return;
    const int minutes = records.build().hoursPerWeek * 60;
    std::vector<WorkingTime> times;
    const auto add = [&](Weekday day, int length) {
        WorkingTime time;
        time.id = Id<WorkingTime>(static_cast<std::int64_t>(times.size()) + 1);
        time.key = wordOf(day);
        time.weekday = day;
        time.minutes = std::clamp(length, 1, 1440);
        times.push_back(time);
    };
    if (minutes <= 24 * 60) {
        add(Weekday::Tuesday, minutes / 4);
        add(Weekday::Thursday, minutes / 4);
        add(Weekday::Saturday, minutes / 2);
    } else {
        for (int day = 0; day < 7; ++day)
            add(static_cast<Weekday>(day), minutes / 7);
    }
    records.all<WorkingTime>().assign(std::move(times));
}

void addMinutes(Records &records, int minutes)
{
    tellAssumedHours(records);
    std::vector<WorkingTime> times = records.all<WorkingTime>().rows();
    const auto longest = std::max_element(
        times.begin(), times.end(),
        [](const WorkingTime &a, const WorkingTime &b) { return a.minutes < b.minutes; });
    longest->minutes = std::min(1440, longest->minutes + minutes);
    records.all<WorkingTime>().assign(std::move(times));
}

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

bool mayBeLeftOut(const Records &records, const QString &key)
{
    const auto *task = records.byKey<ohmwright::Task>(key);
    if (!task || task->highVoltage || task->trade == Trade::Testing ||
        task->trade == Trade::Paperwork)
        return false;
    const auto needs = records.of<TaskNeed>(task->id);
    return std::none_of(needs.begin(), needs.end(), [](const TaskNeed &need) {
        return need.kind == NeedKind::Permit || need.kind == NeedKind::Test ||
               need.kind == NeedKind::Letter;
    });
}

} // namespace

QString PlanChange::code() const
{
    switch (kind) {
    case Kind::Hours:
        return QStringLiteral("hours+%1").arg(minutes);
    case Kind::Helper:
        return QStringLiteral("helper:") + wordOf(weekday);
    case Kind::Order:
        return QStringLiteral("order:") + key;
    case Kind::Drop:
        return QStringLiteral("drop:") + key;
    }
    return {};
}

Result<PlanChange> parsePlanChange(const QString &text, const Records &records)
{
    PlanChange change;
    const QString rest = text.section(u':', 1).trimmed();
    const auto unknown = [&] {
        return fail(ProblemCode::BadInput, tr("“%1” is no change that can be tried.").arg(text),
                    tr("Write hours+60, helper:saturday, order:PART or drop:TASK."));
    };
    if (text.startsWith(QLatin1String("hours+"))) {
        bool number = false;
        change.minutes = text.mid(6).toInt(&number);
        if (!number || change.minutes < 1 || change.minutes > 1440)
            return fail(ProblemCode::BadInput,
                        tr("“%1” says no minutes between 1 and 1440.").arg(text));
        return change;
    }
    if (text.startsWith(QLatin1String("helper:"))) {
        const auto day = fromWord<Weekday>(rest.toLower());
        if (!day)
            return fail(ProblemCode::BadInput, tr("“%1” is no day of the week.").arg(rest));
        change.kind = PlanChange::Kind::Helper;
        change.weekday = *day;
        return change;
    }
    change.key = rest;
    if (text.startsWith(QLatin1String("order:"))) {
        const Part *part = records.byKey<Part>(rest);
        if (!part)
            return fail(ProblemCode::NotFound, tr("There is no part “%1”.").arg(rest));
        if (part->state != PartState::Wanted)
            return fail(ProblemCode::NotFound,
                        tr("“%1” is not wanted, it is %2.").arg(part->name, wordOf(part->state)));
        change.kind = PlanChange::Kind::Order;
        return change;
    }
    if (text.startsWith(QLatin1String("drop:"))) {
        const ohmwright::Task *task = records.byKey<ohmwright::Task>(rest);
        if (!task)
            return fail(ProblemCode::NotFound, tr("There is no task “%1”.").arg(rest));
        if (task->state == TaskState::Done)
            return fail(ProblemCode::NotFound, tr("“%1” is done already.").arg(task->title));
        change.kind = PlanChange::Kind::Drop;
        return change;
    }
    return unknown();
}

QString describe(const PlanChange &change, const Records &records)
{
    switch (change.kind) {
    case PlanChange::Kind::Hours:
        return change.minutes == 60 ? tr("An hour more a week")
                                    : tr("%1 minutes more a week").arg(change.minutes);
    case PlanChange::Kind::Helper: {
        QString day = wordOf(change.weekday);
        day[0] = day[0].toUpper();
        return tr("A helper on %1s").arg(day);
    }
    case PlanChange::Kind::Order: {
        const Part *part = records.byKey<Part>(change.key);
        return tr("“%1” ordered today").arg(part ? part->name : change.key);
    }
    case PlanChange::Kind::Drop: {
        const auto *task = records.byKey<ohmwright::Task>(change.key);
        return tr("Without “%1”").arg(task ? task->title : change.key);
    }
    }
    return {};
}

Records changedBy(const Records &records, const PlanChange &change, QDate today)
{
    Records changed = records;
    switch (change.kind) {
    case PlanChange::Kind::Hours:
        addMinutes(changed, change.minutes);
        break;
    case PlanChange::Kind::Helper:
        tellAssumedHours(changed);
        changeAll<WorkingTime>(changed, [&](WorkingTime &time) {
            if (time.weekday == change.weekday)
                ++time.hands;
        });
        break;
    case PlanChange::Kind::Order: {
        const Part *part = records.byKey<Part>(change.key);
        changeAll<ohmwright::Task>(changed, [&](ohmwright::Task &task) {
            if (part && task.buys == part->id)
                task.buys.reset();
        });
        break;
    }
    case PlanChange::Kind::Drop:
        changeAll<ohmwright::Task>(changed, [&](ohmwright::Task &task) {
            if (task.key == change.key) {
                task.state = TaskState::Done;
                task.doneOn = today;
            }
        });
        break;
    }
    return changed;
}

namespace {

// `base`: the milestone's days in the samples of the plan as it is.
Gain gainOver(const std::vector<int> &base, const Records &records, const WorkPlan &plan,
              const Simulation &simulation, const QString &milestone, const PlanChange &change,
              const Settings &settings, const Watch &watch)
{
    Gain gain;
    gain.change = change;
    const WorkPlan changed = workPlanOf(changedBy(records, change, plan.today), plan.today);
    const std::size_t after = activityOf(changed, milestone);
    if (base.empty() || after == changed.activities.size())
        return gain;
    const Simulation other(changed, settings, orderFor(changed, plan, simulation.order()));
    const Samples tried = other.sample({after}, {}, watch);
    if (tried.cancelled)
        return gain;
    const auto daysAt = [](const std::vector<int> &ready, std::size_t from, std::size_t to) {
        std::vector<int> some(ready.begin() + static_cast<std::ptrdiff_t>(from),
                              ready.begin() + static_cast<std::ptrdiff_t>(to));
        return static_cast<double>(dayAt(some, kGainPercent));
    };
    const std::vector<int> &now = tried.ready[0];
    gain.days = daysAt(base, 0, base.size()) - daysAt(now, 0, now.size());
    const std::size_t size = base.size() / kBatches;
    if (size == 0) {
        gain.standardError = HUGE_VAL; // too few samples to be sure of anything
        return gain;
    }
    double sum = 0;
    double squares = 0;
    for (std::size_t batch = 0; batch < kBatches; ++batch) {
        const double one = daysAt(base, batch * size, (batch + 1) * size) -
                           daysAt(now, batch * size, (batch + 1) * size);
        sum += one;
        squares += one * one;
    }
    const double mean = sum / kBatches;
    const double variance = std::max(0.0, (squares - kBatches * mean * mean) / (kBatches - 1));
    gain.standardError = std::sqrt(variance / kBatches);
    return gain;
}

// Empty if there is no such milestone, or when cancelled.
std::vector<int> readyDays(const WorkPlan &plan, const Simulation &simulation,
                           const QString &milestone, const Watch &watch)
{
    const std::size_t at = activityOf(plan, milestone);
    if (at == plan.activities.size())
        return {};
    Samples base = simulation.sample({at}, {}, watch);
    return base.cancelled ? std::vector<int>() : std::move(base.ready[0]);
}

} // namespace

Gain gainOf(const Records &records, const WorkPlan &plan, const Simulation &simulation,
            const QString &milestone, const PlanChange &change, const Settings &settings,
            const Watch &watch)
{
    return gainOver(readyDays(plan, simulation, milestone, watch), records, plan, simulation,
                    milestone, change, settings, watch);
}

std::vector<PlanChange> worthTrying(const Records &records, const WorkPlan &plan,
                                    const Forecast &forecast, const QString &milestone)
{
    using Kind = PlanChange::Kind;
    std::vector<PlanChange> changes{PlanChange{}};
    Records told = records;
    tellAssumedHours(told);
    std::array<bool, 7> days{};
    for (const WorkingTime &time : told.all<WorkingTime>())
        days[static_cast<std::size_t>(time.weekday)] = true;
    for (std::size_t day = 0; day < days.size(); ++day)
        if (days[day])
            changes.push_back({Kind::Helper, 0, static_cast<Weekday>(day), {}});
    for (const Activity &a : plan.activities)
        if (a.toOrder && !a.after.empty())
            changes.push_back({Kind::Order, 0, {}, a.part});

    for (std::size_t m = 0; m < plan.milestones.size(); ++m) {
        if (plan.activities[plan.milestones[m]].key != milestone)
            continue;
        const std::vector<double> &driving = forecast.drivingMilestone[m];
        std::vector<std::size_t> tasks;
        for (std::size_t i = 0; i < plan.activities.size(); ++i)
            if (plan.activities[i].kind == ActivityKind::Task && driving[i] > 0 &&
                mayBeLeftOut(records, plan.activities[i].key))
                tasks.push_back(i);
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
    std::vector<Gain> gains;
    Settings fewer = settings;
    fewer.samples = std::min(settings.samples, kGainSamples);
    const Simulation quick(plan, fewer, simulation.order());
    const std::vector<int> base = readyDays(plan, quick, milestone, watch);
    for (const PlanChange &change : worthTrying(records, plan, forecast, milestone)) {
        if (watch.isCancelled())
            return {};
        const Gain gain = gainOver(base, records, plan, quick, milestone, change, fewer, watch);
        if (gain.isSure())
            gains.push_back(gain);
    }
    std::stable_sort(gains.begin(), gains.end(),
                     [](const Gain &a, const Gain &b) { return a.days > b.days; });
    return gains;
}

} // namespace ohmwright::forecast
