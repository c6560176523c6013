// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/forecast/changes.h"

#include "core/forecast/hours.h"
#include "core/parts/options.h"

#include <QCoreApplication>

#include <algorithm>

namespace ohmwright::forecast {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("Forecast", text);
}

constexpr int kMinutesOfADay = 24 * 60;

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

// The usual week alone, told or assumed.
Records withUsualWeek(const Records &records)
{
    Records week;
    week.all<Build>() = records.all<Build>();
    week.all<WorkingTime>() = records.all<WorkingTime>();
    tellAssumedHours(week);
    return week;
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

// From when to when somebody works on a day of the usual week, and when those working times begin
// that say no start (as hours.h has it). `from` is `to` on a free day.
struct DaySpan
{
    int starts = 0, from = 0, to = 0; // minutes of the day
};

DaySpan spanOf(const Records &records, Weekday weekday)
{
    DaySpan span;
    std::optional<int> earliest;
    for (const WorkingTime &time : records.all<WorkingTime>())
        if (const std::optional<int> start = minuteOf(time.starts);
            start && time.weekday == weekday)
            earliest = std::min(earliest.value_or(*start), *start);
    span.starts = earliest.value_or(usualStart(static_cast<int>(weekday) + 1));
    span.from = span.to = span.starts;
    for (const WorkingTime &time : records.all<WorkingTime>())
        if (time.weekday == weekday) {
            // what would run over midnight is planned before it (hours.h)
            const int start = std::max(0, std::min(minuteOf(time.starts).value_or(span.starts),
                                                   kMinutesOfADay - time.minutes));
            span.from = std::min(span.from, start);
            span.to = std::max(span.to, start + time.minutes);
        }
    return span;
}

// Alone, behind what there is on that day, or before it where midnight is too near.
void addEvening(Records &records, Weekday weekday, int minutes)
{
    tellAssumedHours(records);
    const DaySpan span = spanOf(records, weekday);
    const auto clock = [](int minute) {
        return QStringLiteral("%1:%2")
            .arg(minute / 60, 2, 10, QLatin1Char('0'))
            .arg(minute % 60, 2, 10, QLatin1Char('0'));
    };
    std::vector<WorkingTime> times = records.all<WorkingTime>().rows();
    WorkingTime further;
    std::int64_t last = 0;
    for (WorkingTime &time : times) {
        last = std::max(last, time.id.value());
        if (time.weekday == weekday && time.starts.isEmpty())
            time.starts = clock(span.starts); // else they would begin with the further one
    }
    further.id = Id<WorkingTime>(last + 1);
    further.key = QStringLiteral("further");
    further.weekday = weekday;
    further.minutes = minutes;
    further.starts = span.to + minutes <= kMinutesOfADay ? clock(span.to)
                     : span.from >= minutes              ? clock(span.from - minutes)
                                                         : QString();
    times.push_back(further);
    records.all<WorkingTime>().assign(std::move(times));
}

// A task as good as done, and what waited on it waiting on the tasks it waited on itself: the way
// through it stays.
void leaveOut(Records &records, const QString &key, QDate today)
{
    const auto *task = records.byKey<ohmwright::Task>(key);
    if (!task)
        return;
    const Id<ohmwright::Task> gone = task->id;
    std::vector<Id<ohmwright::Task>> before;
    for (const TaskNeed &need : records.of<TaskNeed>(gone))
        if (need.after)
            before.push_back(*need.after);
    std::vector<TaskNeed> needs;
    std::int64_t last = 0;
    for (const TaskNeed &need : records.all<TaskNeed>())
        last = std::max(last, need.id.value());
    for (const TaskNeed &need : records.all<TaskNeed>()) {
        if (need.after != gone) {
            needs.push_back(need);
            continue;
        }
        for (const Id<ohmwright::Task> one : before) {
            TaskNeed handedOn = need;
            handedOn.id = Id<TaskNeed>(++last);
            handedOn.after = one;
            needs.push_back(handedOn);
        }
    }
    records.all<TaskNeed>().assign(std::move(needs));
    changeAll<ohmwright::Task>(records, [&](ohmwright::Task &one) {
        if (one.id == gone) {
            one.state = TaskState::Done;
            one.doneOn = today;
        }
    });
}

Result<int> minutesIn(const QString &text)
{
    bool number = false;
    const int minutes = text.toInt(&number);
    if (!number || minutes < 1 || minutes > kMinutesOfADay)
        return fail(ProblemCode::BadInput,
                    tr("“%1” says no minutes between 1 and 1440.").arg(text));
    return minutes;
}

Result<Weekday> weekdayIn(const QString &text)
{
    const auto day = fromWord<Weekday>(text.trimmed().toLower());
    if (!day)
        return fail(ProblemCode::BadInput, tr("“%1” is no day of the week.").arg(text));
    return *day;
}

Result<PlanChange> parseEvening(const QString &rest, const Records &records)
{
    PlanChange change;
    change.kind = PlanChange::Kind::Evening;
    const qsizetype plus = rest.indexOf(u'+');
    if (plus < 0)
        return fail(ProblemCode::BadInput,
                    tr("“%1” says no minutes: write evening:monday+120.").arg(rest));
    const Result<Weekday> day = weekdayIn(rest.left(plus));
    if (!day)
        return fail(day.error());
    const Result<int> minutes = minutesIn(rest.mid(plus + 1));
    if (!minutes)
        return fail(minutes.error());
    change.weekday = *day;
    change.minutes = *minutes;
    const DaySpan span = spanOf(withUsualWeek(records), *day);
    if (span.to > span.from && span.to + *minutes > kMinutesOfADay && span.from < *minutes)
        return fail(ProblemCode::BadInput, tr("%1 has not %2 left beside the work there is.")
                                               .arg(dayName(*day), duration(*minutes)));
    return change;
}

} // namespace

std::array<bool, 7> workingDays(const Records &records)
{
    const Records week = withUsualWeek(records);
    std::array<bool, 7> days{};
    for (const WorkingTime &time : week.all<WorkingTime>())
        days[static_cast<std::size_t>(time.weekday)] = true;
    return days;
}

bool isFreeWork(const Records &records, const ohmwright::Task &task)
{
    if (task.milestone || task.highVoltage || task.trade == Trade::Testing ||
        task.trade == Trade::Paperwork || task.failPercent.value_or(0) > 0 || task.buys ||
        task.asks || task.opens)
        return false;
    const auto needs = records.of<TaskNeed>(task.id);
    return std::none_of(needs.begin(), needs.end(), [](const TaskNeed &need) {
        return need.kind == NeedKind::Permit || need.kind == NeedKind::Test ||
               need.kind == NeedKind::Letter;
    });
}

std::set<Id<ohmwright::Task>> neededByWork(const Records &records)
{
    std::set<Id<ohmwright::Task>> needed;
    for (const TaskNeed &need : records.all<TaskNeed>()) {
        const auto *waiting = need.after ? records.find(need.task) : nullptr;
        if (waiting && waiting->state != TaskState::Done && !waiting->milestone)
            needed.insert(*need.after);
    }
    return needed;
}

bool mayBeLeftOut(const Records &records, const ohmwright::Task &task,
                  const std::set<Id<ohmwright::Task>> &needed)
{
    return isFreeWork(records, task) && !needed.contains(task.id);
}

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
    case Kind::Evening:
        return QStringLiteral("evening:%1+%2").arg(wordOf(weekday)).arg(minutes);
    }
    return {};
}

Result<PlanChange> parsePlanChange(const QString &text, const Records &records)
{
    PlanChange change;
    const QString rest = text.section(u':', 1).trimmed();
    const auto unknown = [&] {
        return fail(ProblemCode::BadInput, tr("“%1” is no change that can be tried.").arg(text),
                    tr("Write hours+60, evening:monday+120, helper:saturday, order:PART or "
                       "drop:TASK."));
    };
    if (text.startsWith(QLatin1String("hours+"))) {
        const Result<int> minutes = minutesIn(text.mid(6));
        if (!minutes)
            return fail(minutes.error());
        change.minutes = *minutes;
        return change;
    }
    if (text.startsWith(QLatin1String("evening:")))
        return parseEvening(rest, records);
    if (text.startsWith(QLatin1String("helper:"))) {
        const Result<Weekday> day = weekdayIn(rest);
        if (!day)
            return fail(day.error());
        change.kind = PlanChange::Kind::Helper;
        change.weekday = *day;
        return change;
    }
    change.key = rest;
    if (text.startsWith(QLatin1String("order:"))) {
        if (rest.isEmpty())
            return fail(ProblemCode::BadInput, tr("Say which part is ordered today."));
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
        if (rest.isEmpty())
            return fail(ProblemCode::BadInput, tr("Say which task is left out."));
        const ohmwright::Task *task = records.byKey<ohmwright::Task>(rest);
        if (!task)
            return fail(ProblemCode::NotFound, tr("There is no task “%1”.").arg(rest));
        if (task->state == TaskState::Done)
            return fail(ProblemCode::NotFound, tr("“%1” is done already.").arg(task->title));
        if (!isPlannedWith(records, task->option))
            return fail(ProblemCode::NotFound,
                        tr("“%1” is set aside, so it is in no plan.").arg(task->title));
        if (!isFreeWork(records, *task))
            return fail(ProblemCode::NotAllowed,
                        tr("No plan leaves out “%1”: a milestone, high voltage, a test, a paper, "
                           "what may fail, needs a test, a permit or a letter, or buys, opens or "
                           "asks for something.")
                            .arg(task->title));
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
                                    : tr("%1 more a week").arg(duration(change.minutes));
    case PlanChange::Kind::Helper:
        return tr("A helper on %1s").arg(dayName(change.weekday));
    case PlanChange::Kind::Evening:
        return change.weekday >= Weekday::Saturday
                   ? tr("%1s, %2 more a week")
                         .arg(dayName(change.weekday), duration(change.minutes))
                   : tr("%1 evenings, %2 more a week")
                         .arg(dayName(change.weekday), duration(change.minutes));
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
    case PlanChange::Kind::Evening:
        addEvening(changed, change.weekday, change.minutes);
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
        leaveOut(changed, change.key, today);
        break;
    }
    return changed;
}

QString whyNothing(const PlanChange &change, const Records &records, const WorkPlan &plan)
{
    if (change.kind == PlanChange::Kind::Helper &&
        !workingDays(records)[static_cast<std::size_t>(change.weekday)])
        return tr("Nobody works on %1s, so a helper finds nobody to help.")
            .arg(dayName(change.weekday));
    if (change.kind != PlanChange::Kind::Order)
        return {};
    const Part *part = records.byKey<Part>(change.key);
    const QString name = part ? part->name : change.key;
    for (const Activity &a : plan.activities)
        if (a.toOrder && a.part == change.key)
            return a.after.empty() ? tr("“%1” is planned as ordered today already.").arg(name)
                                   : QString();
    return tr("No open task waits for “%1”.").arg(name);
}

} // namespace ohmwright::forecast
