// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/plan/opening.h"

#include "core/parts/life.h"
#include "core/quantity/dates.h"

#include <QCoreApplication>
#include <QStringList>

namespace ohmwright::plan {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("Opening", text);
}

// The first of return and warranty to end; none when neither runs.
std::optional<QDate> firstEnd(const Part &part, QDate today)
{
    std::optional<QDate> first;
    for (const std::optional<QDate> &until : {part.returnUntil, part.warrantyUntil})
        if (until && *until >= today && (!first || *until < *first))
            first = until;
    return first;
}

// "the return until 12 Dec 2026 and the warranty until 3 Mar 2027"; empty when neither runs.
QString atStake(const Part &part, QDate today)
{
    QStringList windows;
    if (part.returnUntil && *part.returnUntil >= today)
        windows << tr("the return until %1").arg(showDate(*part.returnUntil));
    if (part.warrantyUntil && *part.warrantyUntil >= today)
        windows << tr("the warranty until %1").arg(showDate(*part.warrantyUntil));
    return windows.join(tr(" and "));
}

} // namespace

std::optional<LeafNeed> openingNeed(const Records &records, const ohmwright::Task &task,
                                    QDate today)
{
    const Part *part = records.find(task.opens);
    if (!part || part->openedOn || !hasReached(part->state, PartState::InHand) ||
        task.state == TaskState::Done)
        return std::nullopt;
    const QString stake = atStake(*part, today);
    if (stake.isEmpty())
        return std::nullopt;

    LeafNeed leaf;
    leaf.key = QStringLiteral("opening:") + task.key;
    leaf.kind = NeedKind::Test;
    leaf.move = MoveKind::Test;
    leaf.by = firstEnd(*part, today); // what they find must reach the seller in time
    bool any = false;
    for (const TestRecord &test : records.all<TestRecord>()) {
        if (test.kind != TestKind::Acceptance || test.part != part->id)
            continue;
        any = true;
        if (test.result == TestResult::Passed)
            continue;
        leaf.subject = QStringLiteral("test:") + test.key;
        leaf.subjectName = test.name;
        leaf.reason =
            test.result == TestResult::Failed
                ? tr("acceptance checks failed %1: settle it with the seller before opening, which "
                     "may end %2")
                      .arg(showDate(*test.doneOn), stake)
                : tr("acceptance checks come before opening, which may end %1").arg(stake);
        return leaf;
    }
    if (!any) {
        leaf.subject = QStringLiteral("acceptance:") + part->key;
        leaf.subjectName = tr("Acceptance checks of %1").arg(part->name);
        leaf.reason =
            tr("none recorded yet; they come before opening, which may end %1").arg(stake);
        return leaf;
    }
    leaf.kind = NeedKind::Part;
    leaf.move = MoveKind::Do;
    leaf.by.reset();
    leaf.subject = QStringLiteral("open:") + part->key;
    leaf.subjectName = tr("Decide to open %1").arg(part->name);
    leaf.reason =
        tr("accepted on arrival; opening may end %1: record it with its reason").arg(stake);
    return leaf;
}

} // namespace ohmwright::plan
