// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/forecast/free_work.h"

#include "core/parts/figures.h"
#include "core/parts/life.h"
#include "core/parts/options.h"

#include <QCoreApplication>

#include <algorithm>

namespace ohmwright::forecast {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("Forecast", text);
}

bool isOnHighVoltage(const Records &records, Id<Part> part)
{
    const auto connections = records.of<Connection>(part);
    return std::any_of(connections.begin(), connections.end(), [&](const Connection &connection) {
        const Circuit *circuit = records.find(connection.circuit);
        return circuit && circuit->kind != CircuitKind::LowVoltage;
    });
}

bool isOfSafetySystem(const Records &records, const TaskNeed &need)
{
    const auto &systems = records.all<SafetySystem>();
    return std::any_of(systems.begin(), systems.end(), [&](const SafetySystem &system) {
        return (need.part && system.part == need.part) || (need.test && system.test == need.test);
    });
}

// "it is a milestone"; empty for what protects nobody.
QString whatItIs(const Records &records, const ohmwright::Task &task)
{
    if (task.milestone)
        return tr("it is a milestone");
    if (task.highVoltage)
        return tr("it is high-voltage work");
    if (task.trade == Trade::Testing)
        return tr("it is a test");
    if (task.trade == Trade::Paperwork)
        return tr("it is a paper");
    if (task.failPercent.value_or(0) > 0)
        return tr("it may fail, so it tells something");
    if (task.buys || task.asks)
        return tr("it orders a part or asks for a letter");
    if (task.opens)
        return tr("it opens a unit");
    for (const TaskNeed &need : records.of<TaskNeed>(task.id)) {
        if (isOfSafetySystem(records, need))
            return tr("it belongs to a safety system");
        if (need.part && isOnHighVoltage(records, *need.part))
            return tr("it works on a part of a high-voltage circuit");
        if (need.kind == NeedKind::Permit || need.kind == NeedKind::Test ||
            need.kind == NeedKind::Letter)
            return tr("it needs a test, a permit or a letter");
        if (need.kind == NeedKind::Person)
            return tr("it is not done alone");
    }
    return {};
}

// What a need waits for, by name, if it is not there; of money and people it is not asked.
QString lackOf(const Records &records, const TaskNeed &need)
{
    const Part *part = records.find(need.part);
    switch (need.kind) {
    case NeedKind::Task: {
        const auto *before = records.find(need.after);
        return before && before->state != TaskState::Done && isPlannedWith(records, before->option)
                   ? before->title
                   : QString();
    }
    case NeedKind::Part:
    case NeedKind::Tool:
    case NeedKind::Service:
        return part && !hasReached(part->state, need.state.value_or(PartState::InHand)) ? part->name
                                                                                        : QString();
    case NeedKind::Figure:
        return part && !answersNeed(records, *part, need)
                   ? tr("%1 of %2").arg(wordOf(*need.quantity), part->name)
                   : QString();
    case NeedKind::Test: {
        const TestRecord *test = records.find(need.test);
        return test && test->result != TestResult::Passed ? test->name : QString();
    }
    case NeedKind::Letter: {
        const Letter *letter = records.find(need.letter);
        return letter && letter->state != LetterState::Granted ? letter->subject : QString();
    }
    case NeedKind::Consumable:
    case NeedKind::Money:
    case NeedKind::Person:
    case NeedKind::Permit:
    case NeedKind::Interface:
        break;
    }
    return {};
}

} // namespace

WaitedOn waitedOnBy(const Records &records)
{
    WaitedOn waited;
    for (const ohmwright::Task &task : records.all<ohmwright::Task>()) {
        if (task.state == TaskState::Done)
            continue;
        for (const TaskNeed &need : records.of<TaskNeed>(task.id))
            if (need.after)
                waited.emplace(*need.after, &task);
    }
    return waited;
}

QString whyKept(const Records &records, const ohmwright::Task &task, const WaitedOn &waited)
{
    if (const QString what = whatItIs(records, task); !what.isEmpty())
        return tr("No plan leaves out “%1”: %2.").arg(task.title, what);
    if (const auto found = waited.find(task.id); found != waited.end())
        return tr("No plan leaves out “%1”: “%2” waits on it. If the build can do without, take "
                  "that link away first.")
            .arg(task.title, found->second->title);
    return {};
}

QString whyNotToday(const Records &records, const Part &part)
{
    for (const ohmwright::Task &buyer : records.all<ohmwright::Task>()) {
        if (buyer.buys != part.id || buyer.state == TaskState::Done ||
            !isPlannedWith(records, buyer.option))
            continue;
        for (const TaskNeed &need : records.of<TaskNeed>(buyer.id))
            if (const QString lack = lackOf(records, need); !lack.isEmpty())
                return tr("“%1” cannot be ordered today: “%2” orders it, and that waits for “%3”.")
                    .arg(part.name, buyer.title, lack);
    }
    return {};
}

} // namespace ohmwright::forecast
