// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/plan/plan_edits.h"

#include "core/parts/consistency.h"
#include "core/parts/keys.h"
#include "core/plan/opening.h"
#include "core/plan/plan_view.h"
#include "core/quantity/dates.h"

#include <QCoreApplication>

#include <algorithm>

namespace ohmwright {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("PlanEdits", text);
}

tl::unexpected<Problem> gone()
{
    return fail(ProblemCode::NotFound, tr("This task is no longer in the book."));
}

tl::unexpected<Problem> notAllowed(const QString &sentence, const QString &whatToDo = {})
{
    return fail(ProblemCode::NotAllowed, sentence, whatToDo);
}

int nextPosition(const Records &records, Id<Task> task)
{
    const auto needs = records.of<TaskNeed>(task);
    return needs.empty() ? 0 : needs.back().position + 1;
}

const TaskNeed *linkBetween(const Records &records, Id<Task> before, Id<Task> task)
{
    for (const TaskNeed &need : records.of<TaskNeed>(task))
        if (need.after == before)
            return &need;
    return nullptr;
}

std::size_t indexOf(const Records &records, Id<Task> task)
{
    return static_cast<std::size_t>(records.find(task) - records.all<Task>().rows().data());
}

Outcome insertLink(Book &book, Id<Task> before, Id<Task> task)
{
    TaskNeed need;
    need.task = task;
    need.kind = NeedKind::Task;
    need.after = before;
    need.position = nextPosition(book.records(), task);
    const auto id = book.insert(need);
    return id ? Outcome() : Outcome(fail(id.error()));
}

// +1 puts back, -1 takes out.
Outcome moveStock(Book &book, Id<Task> task, int sign)
{
    std::vector<TaskNeed> needs;
    for (const TaskNeed &need : book.records().of<TaskNeed>(task))
        if (need.kind == NeedKind::Consumable && need.part && need.amount)
            needs.push_back(need);
    for (const TaskNeed &need : needs) {
        Part part = *book.records().find(*need.part);
        if (!part.stock)
            continue;
        const double change = need.amount->to(part.stock->unit()).number();
        part.stock =
            Amount(std::max(0.0, part.stock->number() + sign * change), part.stock->unit());
        if (Outcome updated = book.update(part); !updated)
            return updated;
    }
    return {};
}

} // namespace

Result<Id<Task>> addTask(Book &book, const NewTask &wanted)
{
    if (wanted.title.trimmed().isEmpty())
        return fail(ProblemCode::BadInput, tr("The task needs a title."), {},
                    QStringLiteral("title"));
    Id<Task> made;
    const Outcome done = book.edit(tr("Add “%1”").arg(wanted.title.trimmed()), [&]() -> Outcome {
        Task task;
        task.title = wanted.title.trimmed();
        task.key = freshKey<Task>(book.records(), task.title);
        task.area = wanted.area.trimmed();
        task.milestone = wanted.milestone;
        task.highVoltage = wanted.highVoltage;
        task.workMinutes = wanted.workMinutes;
        task.waitDays = wanted.waitDays;
        task.targetOn = wanted.targetOn;
        const Result<Id<Task>> id = book.insert(task);
        if (!id)
            return fail(id.error());
        made = *id;
        return wanted.after ? insertLink(book, *wanted.after, made) : Outcome();
    });
    if (!done)
        return fail(done.error());
    return made;
}

Outcome linkTasks(Book &book, Id<Task> before, Id<Task> task)
{
    const Records &records = book.records();
    const Task *first = records.find(before);
    const Task *second = records.find(task);
    if (!first || !second)
        return gone();
    if (before == task)
        return notAllowed(tr("A task cannot wait on itself."));
    if (linkBetween(records, before, task))
        return notAllowed(tr("“%1” already waits on “%2”.").arg(second->title, first->title));
    if (second->state == TaskState::Done && first->state != TaskState::Done)
        return notAllowed(tr("“%1” is done already and cannot wait on “%2”, which is not.")
                              .arg(second->title, first->title));
    const plan::Network network = plan::networkOf(records, book.clock().today());
    const auto loop = plan::loopIfLinked(network, indexOf(records, before), indexOf(records, task));
    if (!loop.empty())
        return notAllowed(tr("That would close a loop: %1").arg(plan::describeLoop(network, loop)),
                          tr("Take out one of these links first."));
    return book.edit(tr("“%1” waits on “%2”").arg(second->title, first->title),
                     [&] { return insertLink(book, before, task); });
}

Outcome unlinkTasks(Book &book, Id<Task> before, Id<Task> task)
{
    const TaskNeed *need = linkBetween(book.records(), before, task);
    if (!need)
        return fail(ProblemCode::NotFound, tr("There is no such link."));
    return removeNeed(book, need->id);
}

Outcome finishTask(Book &book, Id<Task> taskId, QDate on)
{
    const Records &records = book.records();
    const Task *found = records.find(taskId);
    if (!found)
        return gone();
    if (found->state == TaskState::Done)
        return notAllowed(tr("“%1” is done already.").arg(found->title));
    if (on > book.clock().today())
        return notAllowed(tr("A task is done on the day it was done, not ahead."));
    QStringList missing;
    const auto shares = plan::StockShares::within(records, taskId);
    for (const TaskNeed &need : records.of<TaskNeed>(taskId)) {
        if (const Task *before = records.find(need.after)) {
            if (before->state != TaskState::Done)
                missing << tr("“%1” is not done").arg(before->title);
            continue;
        }
        const plan::LeafNeed leaf = plan::judge(records, need, shares, book.clock().today());
        if (!leaf.met)
            missing << tr("%1: %2").arg(leaf.subjectName, leaf.reason);
    }
    if (const auto opening = plan::openingNeed(records, *found, book.clock().today()))
        missing << tr("%1: %2").arg(opening->subjectName, opening->reason);
    if (!missing.isEmpty())
        return notAllowed(tr("“%1” cannot be done yet. Still missing: %2.")
                              .arg(found->title, missing.join(tr("; "))),
                          tr("Record what is met first, or take the need out of the task."));
    return book.edit(tr("“%1” is done").arg(found->title), [&]() -> Outcome {
        Task task = *book.records().find(taskId);
        task.state = TaskState::Done;
        task.doneOn = on;
        if (!task.startedOn || *task.startedOn > on)
            task.startedOn = on;
        if (Outcome updated = book.update(task); !updated)
            return updated;
        return moveStock(book, taskId, -1);
    });
}

Outcome reopenTask(Book &book, Id<Task> taskId)
{
    const Records &records = book.records();
    const Task *found = records.find(taskId);
    if (!found)
        return gone();
    if (found->state != TaskState::Done)
        return notAllowed(tr("“%1” is not done.").arg(found->title));
    for (const TaskNeed &need : records.all<TaskNeed>()) {
        const Task *later = need.after == taskId ? records.find(need.task) : nullptr;
        if (later && later->state == TaskState::Done)
            return notAllowed(tr("“%1” waits on it and is done.").arg(later->title),
                              tr("Reopen that first."));
    }
    return book.edit(tr("“%1” is open again").arg(found->title), [&]() -> Outcome {
        Task task = *book.records().find(taskId);
        task.state = TaskState::Started;
        task.doneOn.reset();
        if (Outcome updated = book.update(task); !updated)
            return updated;
        return moveStock(book, taskId, +1);
    });
}

Outcome setTaskStarted(Book &book, Id<Task> taskId, bool started, QDate on)
{
    const Task *found = book.records().find(taskId);
    if (!found)
        return gone();
    if (found->milestone)
        return notAllowed(tr("“%1” is a milestone; only work is begun.").arg(found->title));
    if (found->state == TaskState::Done)
        return notAllowed(tr("“%1” is done already.").arg(found->title));
    Task task = *found;
    task.state = started ? TaskState::Started : TaskState::Open;
    task.startedOn = started ? std::optional(on) : std::nullopt;
    const QString what =
        started ? tr("Start “%1”").arg(task.title) : tr("“%1” is not begun").arg(task.title);
    return book.edit(what, [&] { return book.update(task); });
}

Outcome removeTask(Book &book, Id<Task> taskId)
{
    const Records &records = book.records();
    const Task *found = records.find(taskId);
    if (!found)
        return gone();
    QStringList waiting;
    for (const TaskNeed &need : records.all<TaskNeed>())
        if (need.after == taskId)
            waiting << tr("“%1”").arg(records.find(need.task)->title);
    if (!waiting.isEmpty())
        return notAllowed(tr("%1 still waits on it.").arg(waiting.join(tr(", "))),
                          tr("Take out those links first."));
    for (const Attachment &a : records.all<Attachment>())
        if (a.task == taskId)
            return notAllowed(tr("The attachment “%1” belongs to it.").arg(a.title),
                              tr("Remove or move that first."));
    for (const WorkEntry &entry : records.all<WorkEntry>())
        if (entry.task == taskId)
            return notAllowed(tr("Hours of %1 are logged on it.").arg(showDate(entry.on)),
                              tr("Move them to another task, or mark it done."));
    return book.edit(tr("Remove “%1”").arg(found->title), [&]() -> Outcome {
        std::vector<Task> repeating;
        for (const Task &other : book.records().all<Task>())
            if (other.redoFrom == taskId)
                repeating.push_back(other);
        for (Task &other : repeating) {
            other.redoFrom.reset();
            if (Outcome updated = book.update(other); !updated)
                return updated;
        }
        std::vector<Id<TaskNeed>> needs;
        for (const TaskNeed &need : book.records().of<TaskNeed>(taskId))
            needs.push_back(need.id);
        for (const Id<TaskNeed> need : needs)
            if (Outcome removed = book.remove(need); !removed)
                return removed;
        return book.remove(taskId);
    });
}

Result<Id<TaskNeed>> addNeed(Book &book, TaskNeed need)
{
    const Task *task = book.records().find(need.task);
    if (!task)
        return gone();
    if (need.after) {
        const Id<Task> before = *need.after;
        if (Outcome linked = linkTasks(book, before, need.task); !linked)
            return fail(linked.error());
        return linkBetween(book.records(), before, need.task)->id;
    }
    Id<TaskNeed> made;
    need.position = nextPosition(book.records(), need.task);
    const Outcome done =
        book.edit(tr("“%1” needs something more").arg(task->title), [&]() -> Outcome {
            const Result<Id<TaskNeed>> id = book.insert(need);
            if (!id)
                return fail(id.error());
            made = *id;
            for (const Inconsistency &wrong : findInconsistencies(book.records()))
                if (wrong.table == RecordTraits<TaskNeed>::table && wrong.id == made.value())
                    return fail(ProblemCode::BadInput, wrong.sentence, {},
                                QString::fromStdString(wrong.field));
            return {};
        });
    if (!done)
        return fail(done.error());
    return made;
}

Outcome removeNeed(Book &book, Id<TaskNeed> needId)
{
    const TaskNeed *need = book.records().find(needId);
    if (!need)
        return fail(ProblemCode::NotFound, tr("This need is no longer in the book."));
    const Task *task = book.records().find(need->task);
    return book.edit(tr("“%1” needs one thing less").arg(task->title),
                     [&] { return book.remove(needId); });
}

Outcome meetNeed(Book &book, Id<TaskNeed> needId, std::optional<QDate> on)
{
    const TaskNeed *found = book.records().find(needId);
    if (!found)
        return fail(ProblemCode::NotFound, tr("This need is no longer in the book."));
    const Task *task = book.records().find(found->task);
    return book.edit(on ? tr("“%1”: %2 is arranged").arg(task->title, found->what)
                        : tr("“%1”: %2 is open again").arg(task->title, found->what),
                     [&] {
                         TaskNeed need = *book.records().find(needId);
                         need.metOn = on;
                         return book.update(need);
                     });
}

} // namespace ohmwright
