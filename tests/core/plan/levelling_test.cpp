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
            timeline.slots.push_back({day, profile});
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

} // namespace
} // namespace ohmwright::plan
