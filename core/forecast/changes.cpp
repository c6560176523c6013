// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/forecast/changes.h"

#include "core/forecast/free_work.h"
#include "core/forecast/hours.h"
#include "core/forecast/usual_week.h"
#include "core/parts/options.h"

#include <QCoreApplication>

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
    const DaySpan span = spanOf(records, *day);
    if (span.to > span.from && span.to + *minutes > kMinutesOfADay && span.from < *minutes)
        return fail(ProblemCode::BadInput, tr("%1 has not %2 left beside the work there is.")
                                               .arg(dayName(*day), duration(*minutes)));
    return change;
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
        if (const QString why = whyNotToday(records, *part); !why.isEmpty())
            return fail(ProblemCode::NotAllowed, why);
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
        if (const QString why = whyKept(records, *task, waitedOnBy(records)); !why.isEmpty())
            return fail(ProblemCode::NotAllowed, why);
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
        addHelper(changed, change.weekday);
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
        // nothing open waits on it (free_work.h)
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
