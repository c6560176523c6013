// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/plan/levelling.h"
#include "tests/support/level_check.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <array>
#include <cstddef>
#include <string>
#include <vector>

namespace ohmwright::plan {
namespace {

using ::testing::ElementsAre;
using ::testing::IsEmpty;

// One slot a day for ever, with the given capacities.
Timeline everyDay(std::vector<int> capacity)
{
    return {{{0, 0}}, {std::move(capacity)}, 0, 1};
}

// Day 0 is a Monday. Tuesday and Thursday evening of four slots with one pair of hands, Saturday of
// eight with two; one bay.
Timeline twoEveningsAndSaturday()
{
    Timeline timeline;
    timeline.profiles = {{1, 1}, {2, 1}};
    for (const auto &[day, slots, profile] :
         {std::array{1, 4, 0}, std::array{3, 4, 0}, std::array{5, 8, 1}}) {
        for (int i = 0; i < slots; ++i)
            timeline.line.push_back({day, profile});
    }
    return timeline;
}

Activity activity(int work, std::vector<int> demand, std::vector<std::size_t> after = {})
{
    Activity made;
    made.work = work;
    made.demand = std::move(demand);
    made.after = std::move(after);
    return made;
}

const Levelled &sound(Levelling &levelling, const Workload &workload)
{
    const Levelled &plan = levelling.pass();
    EXPECT_EQ(testing::LevelCheck(workload).faults(plan, levelling.workedSlots()), "");
    return plan;
}

TEST(Levelling, WithoutAnythingEndsAtOnce)
{
    Levelling levelling(Workload{everyDay({1}), {}, {}});
    EXPECT_EQ(levelling.pass().endDay, 0);
    EXPECT_THAT(levelling.troubles(), IsEmpty());
}

TEST(Levelling, SharesOnePairOfHandsOut)
{
    const Workload workload{everyDay({1}), {}, {activity(2, {1}), activity(3, {1})}};
    Levelling levelling(workload);
    const Levelled &plan = sound(levelling, workload);
    EXPECT_THAT(plan.start, ElementsAre(0, 2));
    EXPECT_THAT(plan.finish, ElementsAre(2, 5));
    EXPECT_EQ(plan.driver[0], (Driver{DrivenBy::Nothing, -1}));
    EXPECT_EQ(plan.driver[1], (Driver{DrivenBy::Resource, 0}));
}

TEST(Levelling, SplitWorkGoesRoundWhatIsTaken)
{
    Workload workload{twoEveningsAndSaturday(), {}, {activity(6, {1}), activity(6, {1})}};
    workload.activities[0].releaseDay = 3;
    Levelling levelling(workload);
    levelling.setOrder(std::vector<std::size_t>{0, 1});
    const Levelled &plan = sound(levelling, workload);
    EXPECT_THAT(plan.start, ElementsAre(4, 0));
    EXPECT_THAT(plan.finish, ElementsAre(10, 10)); // Saturday has two pairs of hands
    EXPECT_EQ(plan.driver[0], (Driver{DrivenBy::Release, -1}));
    EXPECT_EQ(plan.interrupter[1], 0);
}

TEST(Levelling, WaitingCountsDaysAndAMilestoneMayFallOnADayWithoutSlots)
{
    Workload workload{twoEveningsAndSaturday(),
                      {},
                      {activity(4, {1}), activity(0, {}, {0}), activity(1, {1}, {1})}};
    workload.activities[0].waitDays = 5;
    Levelling levelling(workload);
    const Levelled &plan = sound(levelling, workload);
    EXPECT_THAT(plan.startDay, ElementsAre(1, 6, 8)); // Tuesday, Sunday, Tuesday
    EXPECT_EQ(plan.driver[2], (Driver{DrivenBy::Link, 1}));
}

TEST(Levelling, OneSittingWaitsForASittingLongEnough)
{
    Workload workload{twoEveningsAndSaturday(), {}, {activity(2, {1}), activity(5, {1})}};
    workload.activities[1].manner = Manner::OneSitting;
    Levelling levelling(workload);
    const Levelled &plan = sound(levelling, workload);
    EXPECT_EQ(plan.startDay[1], 5);
    EXPECT_THAT(levelling.troubles(), IsEmpty());
}

TEST(Levelling, ASittingLongerThanAnyIsToldAndSplit)
{
    Workload workload{twoEveningsAndSaturday(), {}, {activity(9, {1})}};
    workload.activities[0].manner = Manner::OneSitting;
    Levelling levelling(workload);
    const Levelled &plan = sound(levelling, workload);
    EXPECT_EQ(plan.broken[0], 1);
    EXPECT_EQ(plan.finishDay[0], 5);
    EXPECT_THAT(levelling.troubles(), ElementsAre(LevelTrouble{LevelTrouble::Kind::TooLong, 0}));
}

TEST(Levelling, ABayIsKeptOverNightsInWhichTheWorkRests)
{
    // The first has the bay from Tuesday to Saturday, the second would have time on Thursday.
    Workload workload{twoEveningsAndSaturday(),
                      {0, 1},
                      {activity(6, {2, 1}), activity(1, {1, 1}), activity(4, {1, 0})}};
    workload.activities[0].demand = {1, 1};
    workload.activities[2].releaseDay = 3;
    Levelling levelling(workload);
    levelling.setOrder(std::vector<std::size_t>{2, 0, 1});
    const Levelled &plan = sound(levelling, workload);
    EXPECT_THAT(plan.start, ElementsAre(0, 10, 4));
    EXPECT_THAT(plan.finish, ElementsAre(10, 11, 8));
    EXPECT_EQ(plan.driver[1], (Driver{DrivenBy::Resource, 0}));
    EXPECT_EQ(plan.interrupter[0], 2);
}

TEST(Levelling, WhatNoSlotHasIsNeverAndSoIsWhatComesAfter)
{
    const Workload workload{
        everyDay({1}), {}, {activity(1, {2}), activity(1, {1}, {0}), activity(1, {1})}};
    Levelling levelling(workload);
    const Levelled &plan = levelling.pass();
    EXPECT_THAT(plan.startDay, ElementsAre(kNever, kNever, 0));
    EXPECT_EQ(plan.endDay, kNever);
    EXPECT_THAT(levelling.troubles(),
                ElementsAre(LevelTrouble{LevelTrouble::Kind::NeverEnough, 0},
                            LevelTrouble{LevelTrouble::Kind::BehindNever, 1}));
}

TEST(Levelling, LatestStartsLeaveTheEndWhereItIs)
{
    const Workload workload{
        everyDay({2}), {}, {activity(5, {1}), activity(2, {1}), activity(1, {1}, {1})}};
    Levelling levelling(workload);
    const Levelled &plan = sound(levelling, workload);
    EXPECT_EQ(plan.endDay, 4);
    EXPECT_THAT(levelling.latest(4).floatDays, ElementsAre(0, 2, 2));
    EXPECT_THAT(levelling.latest(6).floatDays, ElementsAre(2, 4, 4));
    EXPECT_THAT(levelling.latest(3).floatDays, ElementsAre(-1, 1, 1));
}

// Worked out by hand. Slots of an hour: Tuesdays 0 1, 8 9; Thursdays 2 3, 10 11; Saturdays with a
// helper 4 to 7, 12 to 15; days 1, 3, 5, 8, 10, 12.
class SixTasks : public ::testing::Test
{
protected:
    enum { Mounts, Paint, MotorThere, HangMotor, Wires, Ready };

    SixTasks()
    {
        workload.timeline.profiles = {{1}, {2}};
        for (const auto &[day, slots, profile] :
             {std::array{1, 2, 0}, std::array{3, 2, 0}, std::array{5, 4, 1}}) {
            for (int i = 0; i < slots; ++i)
                workload.timeline.line.push_back({day, profile});
        }
        workload.activities = {activity(3, {1}), activity(1, {1}, {Mounts}),
                               activity(0, {}),  activity(3, {2}, {Paint, MotorThere}),
                               activity(5, {1}), activity(0, {}, {HangMotor, Wires})};
        workload.activities[Paint].manner = Manner::OneSitting;
        workload.activities[Paint].waitDays = 3;
        workload.activities[MotorThere].releaseDay = 9;
        workload.activities[HangMotor].manner = Manner::OneSitting;
    }

    Workload workload;
};

TEST_F(SixTasks, ArePlannedAsByHand)
{
    Levelling levelling(workload);
    levelling.setOrder(std::vector<std::size_t>{0, 1, 2, 3, 4, 5});
    const Levelled &plan = sound(levelling, workload);
    EXPECT_THAT(levelling.workedSlots(),
                ElementsAre(ElementsAre(0, 1, 2), ElementsAre(3), IsEmpty(),
                            ElementsAre(12, 13, 14), ElementsAre(4, 5, 6, 7, 8), IsEmpty()));
    EXPECT_THAT(plan.startDay, ElementsAre(1, 3, 9, 12, 5, 12));
    EXPECT_THAT(plan.finishDay, ElementsAre(3, 3, 9, 12, 8, 12));
    EXPECT_THAT(plan.readyDay, ElementsAre(3, 6, 9, 12, 8, 12));
    EXPECT_EQ(plan.endDay, 12);
    // The motor comes on Wednesday; that the helper comes on Saturday only is nobody's fault.
    EXPECT_THAT(plan.driver,
                ElementsAre(Driver{DrivenBy::Nothing, -1}, Driver{DrivenBy::Link, Mounts},
                            Driver{DrivenBy::Release, -1}, Driver{DrivenBy::Link, MotorThere},
                            Driver{DrivenBy::Resource, Paint}, Driver{DrivenBy::Link, HangMotor}));
}

TEST_F(SixTasks, MayBeginAsLateAsByHand)
{
    Levelling levelling(workload);
    levelling.setOrder(std::vector<std::size_t>{0, 1, 2, 3, 4, 5});
    levelling.pass();
    // Hanging the motor goes to 13 to 15, the wires to 8 to 12, paint to 7 so that it can cure.
    const Latest &latest = levelling.latest(12);
    EXPECT_THAT(latest.startDay, ElementsAre(5, 5, 12, 12, 8, 12));
    EXPECT_THAT(latest.floatDays, ElementsAre(4, 2, 3, 0, 3, 0));
}

TEST_F(SixTasks, OneSampleTakesItsOwnDurations)
{
    Levelling levelling(workload);
    levelling.setOrder(std::vector<std::size_t>{0, 1, 2, 3, 4, 5});
    const std::vector<int> work{3, 1, 0, 3, 5, 0};
    const std::vector<int> wait{0, 10, 0, 0, 0, 0};
    const std::vector<int> release{0, 0, 2, 0, 0, 0};
    const Sample sample{work, wait, release};
    const Levelled &plan = levelling.pass(sample);
    EXPECT_EQ(testing::LevelCheck(workload, sample).faults(plan, levelling.workedSlots()), "");
    EXPECT_EQ(plan.startDay[HangMotor], 19); // cured on day 13; the Saturday after
    EXPECT_EQ(plan.driver[HangMotor], (Driver{DrivenBy::Link, Paint}));
}

TEST(Levelling, WhatComesBeforeIsPlannedBeforeWhateverTheOrderSays)
{
    const Workload workload{
        everyDay({1}), {}, {activity(1, {1}), activity(1, {1}, {0}), activity(1, {1})}};
    Levelling levelling(workload);
    levelling.setOrder(std::vector<std::size_t>{1, 2});
    EXPECT_THAT(levelling.order(), ElementsAre(2, 0, 1));
    sound(levelling, workload);
}

TEST(Levelling, ManyToolsTakeSeveralWordsAndAreEachTheirOwn)
{
    constexpr int kTools = 100;
    Workload workload{everyDay(std::vector<int>(kTools, 1)), {}, {}};
    for (int i = 0; i < 2 * kTools; ++i) {
        Activity made = activity(2, std::vector<int>(kTools, 0));
        made.demand[static_cast<std::size_t>(i % kTools)] = 1;
        workload.activities.push_back(made);
    }
    Levelling levelling(workload);
    const Levelled &plan = sound(levelling, workload);
    for (std::size_t a = 0; a < std::size_t{2} * kTools; ++a)
        EXPECT_EQ(plan.start[a], a < kTools ? 0 : 2);
}

TEST(Levelling, TimeThatEndsLeavesWhatDoesNotFitAtNever)
{
    Workload workload{everyDay({1}), {}, {activity(1, {1}), activity(2, {1})}};
    workload.timeline.repeatDays = 0;
    Levelling levelling(workload);
    EXPECT_THAT(levelling.pass().startDay, ElementsAre(0, kNever));
    EXPECT_THAT(levelling.troubles(), ElementsAre(LevelTrouble{LevelTrouble::Kind::TooLong, 1}));
}

TEST(Levelling, ASittingTooLongForAnyIsSplitHoweverLongItIs)
{
    Workload workload{twoEveningsAndSaturday(), {}, {activity(400, {1})}};
    workload.activities[0].manner = Manner::OneSitting;
    Levelling levelling(workload);
    const Levelled &plan = sound(levelling, workload);
    EXPECT_EQ(plan.finish[0], 400);
    EXPECT_EQ(plan.broken[0], 1);
}

} // namespace
} // namespace ohmwright::plan
