// SPDX-License-Identifier: GPL-3.0-or-later
// Tasks that wait for a unit that talks, or for a permit to work: met only by what the record says
// today. Common practice, no published source.
#include "core/plan/plan_view.h"
#include "tests/support/test_book.h"

namespace ohmwright::plan {
namespace {

class NeedsOfEngineering : public testing::Test
{
protected:
    TestBook book;
    const QDate today = book.clock.today();
    const Id<ohmwright::Task> task = book.add(namedTask(QStringLiteral("Switch the inverter on")));

    TaskNeed need(ohmwright::NeedKind kind) const
    {
        TaskNeed need;
        need.task = task;
        need.kind = kind;
        return need;
    }
    LeafNeed judged(const TaskNeed &need) const
    {
        return judge(book.records(), need, StockShares::of(book.records()), today);
    }
};

TEST_F(NeedsOfEngineering, AUnitMustHaveTalkedNotOnlyBeUnderstood)
{
    const Id<Part> part = book.add(namedPart(QStringLiteral("Inverter")));
    for (const InterfaceState state :
         {InterfaceState::ToFindOut, InterfaceState::Understood, InterfaceState::Talks}) {
        Interface unit;
        unit.name = QStringLiteral("Inverter's vehicle bus");
        unit.part = part;
        unit.state = state;
        if (state == InterfaceState::Talks)
            unit.talkedOn = today;
        TaskNeed talks = need(ohmwright::NeedKind::Interface);
        talks.interface = book.add(unit);
        const LeafNeed leaf = judged(talks);
        EXPECT_EQ(leaf.met, state == InterfaceState::Talks) << wordOf(state).toStdString();
        EXPECT_EQ(leaf.reason.isEmpty(), leaf.met);
        EXPECT_EQ(leaf.subjectName, unit.name);
    }
}

TEST_F(NeedsOfEngineering, APermitHoldsOnlyWithAllThatMakesItSafeAndOnlyToday)
{
    WorkPermit permit;
    permit.name = QStringLiteral("Close the pack");
    permit.glovesTestedOn = today.addMonths(-2);
    permit.glovesValidUntil = today.addMonths(4);
    permit.lockedOff = true;
    permit.waitMinutes = 10;
    permit.absenceProvenOn = today;
    permit.absenceReading = amount("0.4 V");
    permit.instrument = QStringLiteral("voltage detector 1000 V");
    permit.workedBy = QStringLiteral("A");
    permit.secondPerson = QStringLiteral("B");
    TaskNeed leave = need(ohmwright::NeedKind::Permit);
    leave.permit = book.add(permit);
    EXPECT_TRUE(judged(leave).met);
    EXPECT_FALSE(judge(book.records(), leave, {}, today.addDays(1)).met);

    permit.key.clear();
    permit.secondPerson.clear();
    leave.permit = book.add(permit);
    const LeafNeed alone = judged(leave);
    EXPECT_FALSE(alone.met);
    EXPECT_EQ(alone.reason, QStringLiteral("no second person"));
}

// A permit some authority gives stands in words; only a person can say that it came.
TEST_F(NeedsOfEngineering, APermitInWordsIsMetByTheDaySomeoneSaidSo)
{
    TaskNeed leave = need(ohmwright::NeedKind::Permit);
    leave.what = QStringLiteral("permit of the landlord");
    EXPECT_FALSE(judged(leave).met);
    leave.metOn = today;
    EXPECT_TRUE(judged(leave).met);
}

} // namespace
} // namespace ohmwright::plan
