// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/parts/questions.h"

#include "core/parts/keys.h"
#include "core/parts/life.h"

#include <QCoreApplication>

#include <algorithm>
#include <map>
#include <set>

namespace ohmwright {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("Questions", text);
}

struct Asked
{
    QStringList by;
    std::vector<Id<Task>> tasks;
};

using AsksOfPart = std::map<FigureName, Asked>;

bool isUnit(const Part &part)
{
    return part.kind == PartKind::Unit || part.kind == PartKind::Module;
}

void askFromCircuits(const Records &records, const Part &part, AsksOfPart &asks)
{
    const auto connections = records.of<Connection>(part.id);
    for (const Connection &c : connections) {
        const Circuit *circuit = records.find(c.circuit);
        if (!circuit)
            continue;
        for (const FigureName &figure : figuresAskedOn(*circuit))
            asks[figure].by << tr("circuit %1").arg(circuit->name);
        const Branch *branch = records.find(c.branch);
        if (branch && branch->continuousCurrent)
            asks[{RatedQuantity::Current, RatingKind::Limit, RatingBasis::Continuous,
                  circuit->current}]
                    .by
                << tr("branch %1").arg(branch->name);
    }
    if (!connections.empty() && isUnit(part) && !part.partOf)
        asks[{RatedQuantity::Mass, RatingKind::Actual, RatingBasis::Nominal, std::nullopt}].by
            << tr("the build sheet");
}

FigureName figureNeeded(const Records &records, const Part &part, const TaskNeed &need)
{
    const bool actual =
        need.basis == RatingBasis::Nominal || (!need.basis && need.quantity >= RatedQuantity::Mass);
    FigureName name;
    name.quantity = *need.quantity;
    name.kind = actual ? RatingKind::Actual : RatingKind::Limit;
    name.basis = need.basis.value_or(actual ? RatingBasis::Nominal : RatingBasis::Continuous);
    if (name.quantity == RatedQuantity::Voltage || name.quantity == RatedQuantity::Current)
        name.current = currentKindOf(records, part);
    return name;
}

void askFromTask(const Records &records, const Part &part, const TaskNeed &need, AsksOfPart &asks)
{
    const Task *task = records.find(need.task);
    if (need.kind != NeedKind::Figure || !task || task->state == TaskState::Done ||
        answersNeed(records, part, need))
        return;
    Asked &asked = asks[figureNeeded(records, part, need)];
    asked.by << tr("task %1").arg(task->title);
    asked.tasks.push_back(task->id);
}

// `asks` holds what the tasks ask; the circuits' asking joins it here.
void collectQuestions(const Records &records, const Part &part, AsksOfPart asks,
                      std::vector<Question> &into)
{
    if (isGone(part.state))
        return;
    askFromCircuits(records, part, asks);
    for (const auto &[name, asked] : asks) {
        const Figure figure = figureFor(records, part, name);
        if (figure.inForce)
            continue;
        Question q;
        q.part = part.id;
        q.figure = name;
        q.askedBy = asked.by;
        q.askedBy.removeDuplicates();
        q.tasks = asked.tasks;
        for (const Rating *r : figure.all)
            if (!r->value && !r->note.isEmpty())
                q.note = r->note;
        into.push_back(std::move(q));
    }
}

} // namespace

std::vector<FigureName> figuresAskedOn(const Circuit &circuit)
{
    return {{RatedQuantity::Voltage, RatingKind::Limit, RatingBasis::Continuous, circuit.current}};
}

std::vector<Question> openQuestions(const Records &records)
{
    std::map<Id<Part>, AsksOfPart> fromTasks;
    for (const TaskNeed &need : records.all<TaskNeed>())
        if (const Part *part = need.kind == NeedKind::Figure ? records.find(need.part) : nullptr)
            askFromTask(records, *part, need, fromTasks[part->id]);
    std::vector<Question> questions;
    for (const Part &part : records.all<Part>()) {
        const auto asked = fromTasks.find(part.id);
        collectQuestions(records, part, asked == fromTasks.end() ? AsksOfPart() : asked->second,
                         questions);
    }
    return questions;
}

std::vector<Question> openQuestions(const Records &records, Id<Part> partId)
{
    const Part *part = records.find(partId);
    if (!part)
        return {};
    AsksOfPart asks;
    for (const TaskNeed &need : records.all<TaskNeed>())
        if (need.part == partId)
            askFromTask(records, *part, need, asks);
    std::vector<Question> questions;
    collectQuestions(records, *part, std::move(asks), questions);
    return questions;
}

Result<Id<Task>> makeFindOutTask(Book &book, const Question &question)
{
    const Part *found = book.records().find(question.part);
    if (!found)
        return fail(ProblemCode::NotFound, tr("This part is no longer in the book."));
    const Part part = *found;
    Id<Task> made;
    const QString title = tr("Find out: %1 of %2").arg(describe(question.figure), part.name);
    const Outcome done = book.edit(title, [&]() -> Outcome {
        const Records &records = book.records();
        // copies: the tables change under us while we write
        std::vector<TaskNeed> waiting;
        for (const TaskNeed &need : records.all<TaskNeed>()) {
            const Task *task = records.find(need.task);
            if (need.part == part.id && task && task->state != TaskState::Done &&
                (need.kind == NeedKind::Part ||
                 (need.kind == NeedKind::Figure && need.quantity == question.figure.quantity)))
                waiting.push_back(need);
        }
        Task task;
        task.title = title;
        task.key = freshKey<Task>(records, title);
        task.workMinutes = 60;
        task.note = tr("Asked by %1.").arg(question.askedBy.join(tr(", ")));
        if (!waiting.empty())
            task.area = records.find(waiting.front().task)->area;
        const Result<Id<Task>> id = book.insert(task);
        if (!id)
            return fail(id.error());
        made = *id;
        std::set<Id<Task>> linked;
        for (const TaskNeed &need : waiting) {
            if (need.kind == NeedKind::Figure)
                if (Outcome removed = book.remove(need.id); !removed)
                    return removed;
            if (!linked.insert(need.task).second)
                continue;
            const auto needs = book.records().of<TaskNeed>(need.task);
            TaskNeed wait;
            wait.task = need.task;
            wait.kind = NeedKind::Task;
            wait.after = made;
            wait.position = needs.empty() ? 0 : needs.back().position + 1;
            if (const auto added = book.insert(wait); !added)
                return fail(added.error());
        }
        return {};
    });
    if (!done)
        return fail(done.error());
    return made;
}

} // namespace ohmwright
