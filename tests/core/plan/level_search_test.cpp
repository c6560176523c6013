// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/plan/level_rules.h"
#include "core/plan/level_search.h"
#include "tests/core/plan/random_workload.h"
#include "tests/support/chance.h"
#include "tests/support/level_check.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <vector>

namespace ohmwright::plan {
namespace {

using ::testing::ElementsAre;
using testing::LevelCheck;
using testing::randomWorkload;

// One slot a day; work and links: 0 (1), 1 (4), 2 (2) after 0, 3 (3) after 0, 4 (1) after 2 and 3.
Workload five()
{
    Workload workload{{{{0, 0}}, {{1}}, 0, 1}, {}, std::vector<Activity>(5)};
    const std::vector<int> work{1, 4, 2, 3, 1};
    for (std::size_t a = 0; a < work.size(); ++a) {
        workload.activities[a].work = work[a];
        workload.activities[a].demand = {1};
        workload.activities[a].manner = Manner::Unbroken;
    }
    workload.activities[2].after = {0};
    workload.activities[3].after = {0};
    workload.activities[4].after = {2, 3};
    return workload;
}

TEST(PriorityRules, FollowTheirNames)
{
    level::Planner planner(five());
    // Critical path 0 3 4 of 5 days: latest finishes 1 5 4 4 5, slacks 0 1 1 0 0.
    EXPECT_THAT(level::ruleValues(planner, PriorityRule::LatestFinish), ElementsAre(1, 5, 4, 4, 5));
    EXPECT_THAT(level::ruleValues(planner, PriorityRule::LeastSlack), ElementsAre(0, 1, 1, 0, 0));
    // Themselves counted.
    EXPECT_THAT(level::ruleValues(planner, PriorityRule::MostSuccessors),
                ElementsAre(-4, -1, -2, -2, -1));
    EXPECT_THAT(level::ruleValues(planner, PriorityRule::LongestWorkload),
                ElementsAre(-7, -4, -3, -4, -1));
    EXPECT_THAT(level::byRule(planner, PriorityRule::LatestFinish), ElementsAre(0, 2, 3, 1, 4));
}

TEST(PriorityRules, DrawnOrdersAreFeasibleAndLeanTowardsTheRule)
{
    level::Planner planner(five());
    const std::vector<double> values = level::ruleValues(planner, PriorityRule::LatestFinish);
    level::Lot lot(5);
    std::vector<std::int32_t> order;
    int zeroFirst = 0;
    for (int i = 0; i < 400; ++i) {
        level::drawOrder(planner, values, lot, order);
        ASSERT_EQ(planner.feasible(order), order);
        zeroFirst += order.front() == 0 ? 1 : 0;
    }
    EXPECT_GT(zeroFirst, 300); // of the two that can be first the better one by four days
    EXPECT_LT(zeroFirst, 400);
}

TEST(LevelSearch, FindsASoundPlanNoLaterThanTheFirstAndNoEarlierThanItsBound)
{
    Chance chance(21);
    for (int i = 0; i < 300; ++i) {
        SCOPED_TRACE(i);
        const Workload workload = randomWorkload(chance);
        Levelling levelling(workload);
        const int first = levelling.pass().endDay;
        LevelSearch search;
        search.schedules = chance.between(1, 150);
        search.seed = static_cast<std::uint64_t>(i);
        const LevelFound found = searchOrder(workload, search);
        levelling.setOrder(found.order);
        const Levelled &plan = levelling.pass();
        ASSERT_EQ(LevelCheck(workload).faults(plan, levelling.workedSlots()), "");
        ASSERT_EQ(plan.endDay, found.endDay);
        ASSERT_EQ(plan.end, found.end);
        ASSERT_LE(found.endDay, first);
        ASSERT_GE(found.endDay, found.boundEndDay);
        ASSERT_LE(found.schedules, search.schedules);
        if (found.stopped == LevelFound::Stopped::AtBound) {
            ASSERT_EQ(found.endDay, found.boundEndDay);
        }
    }
}

TEST(LevelSearch, FindsTheSameForTheSameSeed)
{
    Chance chance(22);
    for (int i = 0; i < 30; ++i) {
        const Workload workload = randomWorkload(chance);
        LevelSearch search;
        search.schedules = 200;
        const LevelFound found = searchOrder(workload, search);
        EXPECT_EQ(searchOrder(workload, search).order, found.order);
    }
}

// Two strands share one pair of hands; each can be first, and the goal is the end of one.
TEST(LevelSearch, BringsTheGoalsForward)
{
    Workload workload{{{{0, 0}}, {{1}}, 0, 1}, {}, std::vector<Activity>(10)};
    for (std::size_t a = 0; a < 10; ++a) {
        workload.activities[a].work = a < 5 ? 3 : 2;
        workload.activities[a].demand = {1};
        if (a % 5 > 0)
            workload.activities[a].after = {a - 1};
    }
    LevelSearch search;
    search.goals = {9};
    const LevelFound found = searchOrder(workload, search);
    EXPECT_EQ(found.end, 10);
    EXPECT_EQ(found.stopped, LevelFound::Stopped::AtBound);
    search.goals = {4};
    EXPECT_EQ(searchOrder(workload, search).end, 15);
    search.goals = {};
    EXPECT_EQ(searchOrder(workload, search).end, 25);
}

TEST(LevelSearch, StopsWhenToldTo)
{
    Chance chance(23);
    Workload workload = five();
    workload.activities[1].demand = {1, 1};
    workload.timeline.profiles = {{1, 1}};
    LevelSearch search;
    int asked = 0;
    search.cancelled = [&asked] {
        return ++asked >= 1;
    };
    const LevelFound found = searchOrder(workload, search);
    EXPECT_LE(found.schedules, 2);
    EXPECT_EQ(found.order.size(), 5U);
}

TEST(LevelSearch, OfNothingIsOverAtOnce)
{
    const LevelFound found = searchOrder(Workload{{{{0, 0}}, {{1}}, 0, 1}, {}, {}});
    EXPECT_EQ(found.endDay, 0);
    EXPECT_TRUE(found.order.empty());
}

} // namespace
} // namespace ohmwright::plan
