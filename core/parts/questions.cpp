// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/parts/questions.h"

#include "core/parts/keys.h"
#include "core/parts/life.h"

#include <QCoreApplication>

#include <algorithm>
#include <iterator>
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

std::vector<Question> joined(const Records &records, std::vector<Question> questions,
                             std::vector<Question> others)
{
    std::erase_if(others, [&](const Question &question) {
        const Part *part = records.find(question.part);
        return !part || isGone(part->state) ||
               figureFor(records, *part, question.figure).inForce != nullptr;
    });
    if (others.empty())
        return questions;
    std::move(others.begin(), others.end(), std::back_inserter(questions));
    std::map<Id<Part>, QString> keys; // looked up once, not at every comparison
    for (const Question &question : questions)
        if (const Part *part = records.find(question.part))
            keys.try_emplace(question.part, part->key);
    std::stable_sort(questions.begin(), questions.end(), [&](const Question &a, const Question &b) {
        if (a.part != b.part)
            return keys[a.part] < keys[b.part];
        return a.figure < b.figure;
    });
    std::vector<Question> once;
    for (Question &question : questions) {
        if (once.empty() || once.back().part != question.part ||
            once.back().figure != question.figure) {
            once.push_back(std::move(question));
            continue;
        }
        Question &same = once.back();
        same.askedBy << question.askedBy;
        same.askedBy.removeDuplicates();
        same.tasks.insert(same.tasks.end(), question.tasks.begin(), question.tasks.end());
        if (same.note.isEmpty())
            same.note = question.note;
    }
    return once;
}

const Task *findOutTask(const Records &records, const QString &title)
{
    const auto &tasks = records.all<Task>();
    const auto found = std::find_if(tasks.begin(), tasks.end(), [&](const Task &task) {
        return task.title == title && task.state != TaskState::Done;
    });
    return found == tasks.end() ? nullptr : &*found;
}

namespace {

// Every need of an open task for the part or what it sits in, or for that figure of the part.
std::vector<TaskNeed> needsWaiting(const Records &records, Id<Part> part,
                                   std::optional<RatedQuantity> quantity)
{
    std::vector<TaskNeed> waiting;
    std::set<Id<Part>> held;
    for (const Part *at = records.find(part); at && held.insert(at->id).second;)
        at = records.find(at->partOf);
    for (const TaskNeed &need : records.all<TaskNeed>()) {
        const Task *task = records.find(need.task);
        if (!task || task->state == TaskState::Done || !need.part)
            continue;
        const bool forPart = need.kind == NeedKind::Part && held.contains(*need.part);
        const bool forFigure = need.kind == NeedKind::Figure && need.part == part && quantity &&
                               need.quantity == quantity;
        if (forPart || forFigure)
            waiting.push_back(need);
    }
    return waiting;
}

// Inside an edit. A direct need for a figure is replaced by the wait for the task.
Result<Id<Task>> insertFindOutTask(Book &book, const QString &title, const QString &note,
                                   const std::vector<TaskNeed> &waiting)
{
    Task task;
    task.title = title;
    task.key = freshKey<Task>(book.records(), title);
    task.workMinutes = 60;
    task.note = note;
    if (!waiting.empty())
        task.area = book.records().find(waiting.front().task)->area;
    Result<Id<Task>> made = book.insert(task);
    if (!made)
        return made;
    std::set<Id<Task>> linked;
    for (const TaskNeed &need : waiting) {
        if (need.kind == NeedKind::Figure)
            if (Outcome removed = book.remove(need.id); !removed)
                return fail(removed.error());
        if (!linked.insert(need.task).second)
            continue;
        const auto needs = book.records().of<TaskNeed>(need.task);
        TaskNeed wait;
        wait.task = need.task;
        wait.kind = NeedKind::Task;
        wait.after = *made;
        wait.position = needs.empty() ? 0 : needs.back().position + 1;
        if (const auto added = book.insert(wait); !added)
            return fail(added.error());
    }
    return made;
}

Result<Id<Task>> makeTask(Book &book, const QString &title, const QString &note,
                          const std::vector<TaskNeed> &waiting)
{
    // asked twice it is still one thing to find out
    if (const Task *task = findOutTask(book.records(), title))
        return task->id;
    Result<Id<Task>> made = Id<Task>();
    const Outcome done = book.edit(title, [&]() -> Outcome {
        made = insertFindOutTask(book, title, note, waiting);
        return made ? Outcome() : Outcome(fail(made.error()));
    });
    if (!done)
        return fail(done.error());
    return made;
}

} // namespace

QString findOutTitle(const QString &what)
{
    return tr("Find out: %1").arg(what);
}

QString findOutTitle(const Records &records, const Question &question)
{
    const Part *part = records.find(question.part);
    return findOutTitle(
        tr("%1 of %2").arg(describe(question.figure), part ? part->name : QString()));
}

Result<Id<Task>> makeFindOutTask(Book &book, const Question &question)
{
    const Part *part = book.records().find(question.part);
    if (!part)
        return fail(ProblemCode::NotFound, tr("This part is no longer in the book."));
    return makeTask(book, findOutTitle(book.records(), question),
                    tr("Asked by %1.").arg(question.askedBy.join(tr(", "))),
                    needsWaiting(book.records(), part->id, question.figure.quantity));
}

Result<Id<Task>> makeFindOutTask(Book &book, const QString &what, const QString &askedBy,
                                 std::optional<Id<Part>> part)
{
    return makeTask(book, findOutTitle(what), tr("Asked by %1.").arg(askedBy),
                    part ? needsWaiting(book.records(), *part, std::nullopt)
                         : std::vector<TaskNeed>());
}

} // namespace ohmwright
