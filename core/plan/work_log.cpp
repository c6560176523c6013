// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/plan/work_log.h"

#include "core/parts/keys.h"
#include "core/quantity/dates.h"

#include <QCoreApplication>

#include <algorithm>

namespace ohmwright {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("WorkLog", text);
}

QDateTime startOf(const WorkEntry &entry)
{
    return {entry.on, QTime::fromString(entry.started, QStringLiteral("HH:mm"))};
}

QString freshEntryKey(const Records &records, const WorkEntry &entry)
{
    return freshKey<WorkEntry>(records, QStringLiteral("work-") + printDate(entry.on));
}

Outcome closeOpenWork(Book &book, const QDateTime &now, const QString &note)
{
    std::vector<WorkEntry> open;
    for (const WorkEntry &entry : book.records().all<WorkEntry>())
        if (!entry.minutes)
            open.push_back(entry);
    for (WorkEntry &entry : open) {
        entry.minutes = minutesSince(entry, now);
        if (!note.isEmpty())
            entry.note += (entry.note.isEmpty() ? QString() : QStringLiteral(" ")) + note;
        if (Outcome updated = book.update(entry); !updated)
            return updated;
    }
    return {};
}

} // namespace

const WorkEntry *workUnderWay(const Records &records)
{
    const WorkEntry *last = nullptr;
    for (const WorkEntry &entry : records.all<WorkEntry>())
        if (!entry.minutes && (!last || startOf(*last) < startOf(entry)))
            last = &entry;
    return last;
}

int minutesSince(const WorkEntry &entry, const QDateTime &now)
{
    // both as the clock on the wall shows them
    const QDateTime wall(now.date(), now.time());
    const qint64 minutes = startOf(entry).secsTo(wall) / 60;
    return static_cast<int>(std::clamp<qint64>(minutes, 0, kMostMinutesLogged));
}

Result<Id<WorkEntry>> startWork(Book &book, std::optional<Id<Task>> taskId, const QDateTime &now)
{
    const Task *task = book.records().find(taskId);
    if (taskId && !task)
        return fail(ProblemCode::NotFound, tr("That task is no longer in the book."));
    if (task && task->state == TaskState::Done)
        return fail(ProblemCode::NotAllowed, tr("“%1” is done.").arg(task->title),
                    tr("Open it again first."));
    const QString what = task ? tr("Start work on “%1”").arg(task->title) : tr("Start work");
    Id<WorkEntry> made;
    const Outcome done = book.edit(what, [&]() -> Outcome {
        if (Outcome closed = closeOpenWork(book, now, {}); !closed)
            return closed;
        WorkEntry entry;
        entry.task = taskId;
        entry.on = now.date();
        entry.started = now.toString(QStringLiteral("HH:mm"));
        entry.key = freshEntryKey(book.records(), entry);
        const Result<Id<WorkEntry>> id = book.insert(entry);
        if (!id)
            return fail(id.error());
        made = *id;
        const Task *current = book.records().find(taskId);
        if (!current || current->state != TaskState::Open)
            return {};
        Task started = *current;
        started.state = TaskState::Started;
        started.startedOn = now.date();
        return book.update(started);
    });
    if (!done)
        return fail(done.error());
    return made;
}

Outcome stopWork(Book &book, const QDateTime &now, const QString &note)
{
    if (!workUnderWay(book.records()))
        return fail(ProblemCode::NotFound, tr("No work is under way."));
    return book.edit(tr("Stop work"), [&] { return closeOpenWork(book, now, note.trimmed()); });
}

Result<Id<WorkEntry>> logWork(Book &book, WorkEntry entry)
{
    if (!entry.minutes || *entry.minutes == 0)
        return fail(ProblemCode::BadInput, tr("Say how long it took."), {},
                    QStringLiteral("minutes"));
    if (entry.on > book.clock().today())
        return fail(ProblemCode::BadInput, tr("Work is logged after it was done, not ahead."), {},
                    QStringLiteral("worked_on"));
    Id<WorkEntry> made;
    const Outcome done = book.edit(tr("Log work"), [&]() -> Outcome {
        entry.key = freshEntryKey(book.records(), entry);
        const Result<Id<WorkEntry>> id = book.insert(entry);
        if (!id)
            return fail(id.error());
        made = *id;
        return {};
    });
    if (!done)
        return fail(done.error());
    return made;
}

int loggedMinutes(const Records &records, Id<Task> task)
{
    int minutes = 0;
    for (const WorkEntry &entry : records.all<WorkEntry>())
        if (entry.task == task && entry.minutes)
            minutes += *entry.minutes * entry.hands;
    return minutes;
}

} // namespace ohmwright
