// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/build_order/move_acts.h"

#include "core/parts/guided_tests.h"
#include "core/parts/questions.h"
#include "core/plan/plan_edits.h"

#include <QCoreApplication>

#include <algorithm>
#include <vector>

namespace ohmwright::ui {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("MoveActs", text);
}

std::vector<TaskNeed> needsOf(const Records &records, const plan::Move &move)
{
    std::vector<TaskNeed> needs;
    for (const QString &key : move.needs)
        if (const TaskNeed *need = records.find(Id<TaskNeed>(key.toLongLong())))
            needs.push_back(*need);
    return needs;
}

Result<QString> finish(Book &book, const plan::Move &move)
{
    const Task *task = book.records().byKey<Task>(move.subject);
    const QString title = task->title;
    const Outcome done = finishTask(book, task->id, book.clock().today());
    if (!done)
        return fail(done.error());
    return tr("“%1” is done.").arg(title);
}

Result<QString> findOut(Book &book, const TaskNeed &need)
{
    const auto asks = [&](const Question &q) {
        return q.figure.quantity == need.quantity && (!need.basis || q.figure.basis == *need.basis);
    };
    const std::vector<Question> questions = openQuestions(book.records(), *need.part);
    const auto found = std::find_if(questions.begin(), questions.end(), asks);
    if (found == questions.end())
        return fail(ProblemCode::NotFound, tr("This figure is no longer asked for."));
    const Result<Id<Task>> made = makeFindOutTask(book, *found);
    if (!made)
        return fail(made.error());
    return tr("“%1” is on the build order now.").arg(book.records().find(*made)->title);
}

Result<QString> meet(Book &book, const plan::Move &move, const std::vector<TaskNeed> &needs)
{
    const QDate today = book.clock().today();
    const Outcome done = book.edit(tr("%1 is arranged").arg(move.title), [&]() -> Outcome {
        for (TaskNeed need : needs) {
            need.metOn = today;
            if (Outcome updated = book.update(need); !updated)
                return updated;
        }
        return {};
    });
    if (!done)
        return fail(done.error());
    return tr("%1: arranged today.").arg(move.title);
}

template <class R>
void openCard(MoveSubject &subject, const R &row)
{
    subject.act = MoveAct::Card;
    subject.cardTable = QString::fromLatin1(RecordTraits<R>::table);
    subject.cardKey = row.key;
}

// A guided test is done step by step, which its card shows.
void ofTest(const Records &records, const TestRecord &test, MoveSubject &subject)
{
    if (records.of<TestStep>(test.id).empty()) {
        subject.act = MoveAct::Test;
        subject.test = test.id;
    } else {
        openCard(subject, test);
    }
}

// A move that comes from a task that opens a unit, not from a need of the book.
void ofOpening(const Records &records, const plan::Move &move, MoveSubject &subject)
{
    const QString key = move.subject.section(u':', 1);
    if (move.subject.startsWith(QLatin1String("acceptance:"))) {
        subject.act = MoveAct::Accept;
        subject.partKey = key;
    } else if (move.subject.startsWith(QLatin1String("open:"))) {
        subject.act = MoveAct::Open;
        subject.partKey = key;
    } else if (const TestRecord *test = records.byKey<TestRecord>(key)) {
        ofTest(records, *test, subject);
    }
}

Result<QString> addChecks(Book &book, const QString &partKey)
{
    const Part *part = book.records().byKey<Part>(partKey);
    if (!part)
        return fail(ProblemCode::NotFound, tr("That part is no longer in the book."));
    const Result<Id<TestRecord>> made = addAcceptanceChecks(book, part->id);
    if (!made)
        return fail(made.error());
    return tr("“%1” is among the test records now, with its steps.")
        .arg(book.records().find(*made)->name);
}

} // namespace

MoveSubject subjectOf(const Records &records, const plan::Move &move)
{
    MoveSubject subject;
    if (move.needs.empty()) {
        if (const Task *task = records.byKey<Task>(move.subject)) {
            subject.act = MoveAct::Finish;
            subject.task = task->id;
        }
        return subject;
    }
    const std::vector<TaskNeed> needs = needsOf(records, move);
    if (needs.empty()) {
        ofOpening(records, move, subject);
        return subject;
    }
    const TaskNeed &need = needs.front();
    if (const Part *part = records.find(need.part))
        subject.partKey = part->key;
    subject.letter = need.letter;
    switch (need.kind) {
    case NeedKind::Figure:
        subject.act = MoveAct::FindOut;
        break;
    case NeedKind::Letter:
        subject.act = MoveAct::Letter;
        break;
    case NeedKind::Test:
        if (const TestRecord *test = records.find(need.test))
            ofTest(records, *test, subject);
        break;
    case NeedKind::Permit:
        if (const WorkPermit *permit = records.find(need.permit)) {
            openCard(subject, *permit);
            break;
        }
        [[fallthrough]];
    case NeedKind::Money:
    case NeedKind::Person:
        subject.act = MoveAct::Meet;
        break;
    case NeedKind::Interface:
        if (const Interface *interface = records.find(need.interface))
            openCard(subject, *interface);
        break;
    case NeedKind::Service:
        subject.act = need.part ? MoveAct::Part : MoveAct::Meet;
        break;
    case NeedKind::Part:
    case NeedKind::Tool:
    case NeedKind::Consumable:
        subject.act = MoveAct::Part;
        break;
    case NeedKind::Task:
        break;
    }
    return subject;
}

Result<QString> actOn(Book &book, const plan::Move &move)
{
    const std::vector<TaskNeed> needs = needsOf(book.records(), move);
    switch (subjectOf(book.records(), move).act) {
    case MoveAct::Finish:
        return finish(book, move);
    case MoveAct::FindOut:
        return findOut(book, needs.front());
    case MoveAct::Meet:
        return meet(book, move, needs);
    case MoveAct::Accept:
        return addChecks(book, subjectOf(book.records(), move).partKey);
    case MoveAct::Part:
    case MoveAct::Open:
    case MoveAct::Letter:
    case MoveAct::Test:
    case MoveAct::Card:
    case MoveAct::None:
        break;
    }
    return fail(ProblemCode::NotFound, tr("This move is no longer to be made."));
}

QString actName(const Records &records, const plan::Move &move)
{
    switch (subjectOf(records, move).act) {
    case MoveAct::Finish:
        return tr("Mark it done");
    case MoveAct::FindOut:
        return tr("Make a task to find out");
    case MoveAct::Meet:
        return move.kind == plan::MoveKind::Pay     ? tr("Paid today")
               : move.kind == plan::MoveKind::Order ? tr("Booked today")
                                                    : tr("Agreed today");
    case MoveAct::Part:
        return tr("Go to the part");
    case MoveAct::Open:
        return tr("Record the opening");
    case MoveAct::Accept:
        return tr("Make its acceptance checks");
    case MoveAct::Card:
        return subjectOf(records, move).cardTable == QLatin1String("test_record")
                   ? tr("Go to its steps")
                   : tr("Go to its card");
    case MoveAct::Letter:
    case MoveAct::Test:
    case MoveAct::None:
        break;
    }
    return {};
}

} // namespace ohmwright::ui
