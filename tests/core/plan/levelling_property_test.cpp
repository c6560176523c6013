// SPDX-License-Identifier: GPL-3.0-or-later
// What must hold for every plan, on workloads made by chance. Each plan goes through LevelCheck.
//
// Not asserted, for it is not so: that more hands, less work or an earlier delivery make no plan of
// the same order longer. Serial schedule generation is list scheduling and has its anomalies
// (R. L. Graham, SIAM Journal on Applied Mathematics 17 (1969) 416-429).
#include "core/plan/levelling.h"
#include "tests/core/plan/plain_levelling.h"
#include "tests/core/plan/random_workload.h"
#include "tests/support/chance.h"
#include "tests/support/level_check.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cstddef>
#include <numeric>
#include <string>
#include <utility>
#include <vector>

namespace ohmwright::plan {
namespace {

using testing::LevelCheck;
using testing::randomWorkload;

constexpr int kWorkloads = 3000;

std::vector<std::size_t> shuffled(Chance &chance, std::size_t count)
{
    std::vector<std::size_t> order(count);
    std::iota(order.begin(), order.end(), std::size_t{0});
    for (std::size_t i = count; i > 1; --i)
        std::swap(order[i - 1], order[static_cast<std::size_t>(chance.below(static_cast<int>(i)))]);
    return order;
}

struct Durations
{
    std::vector<int> work, waitDays, releaseDay;
    [[nodiscard]] Sample sample() const { return {work, waitDays, releaseDay}; }
};

Durations drawn(Chance &chance, const Workload &workload)
{
    Durations made;
    for (const Activity &activity : workload.activities) {
        made.work.push_back(activity.work + chance.between(-3, 6));
        made.waitDays.push_back(activity.waitDays + chance.between(-2, 4));
        made.releaseDay.push_back(activity.releaseDay + chance.between(-5, 20));
    }
    return made;
}

TEST(LevellingProperties, EveryPlanIsSoundInWhateverOrderAndWithWhateverDurations)
{
    Chance chance(11);
    for (int i = 0; i < kWorkloads; ++i) {
        SCOPED_TRACE(i);
        const Workload workload = randomWorkload(chance);
        Levelling levelling(workload);
        for (int run = 0; run < 4; ++run) {
            if (run > 0)
                levelling.setOrder(shuffled(chance, workload.activities.size()));
            const Durations durations = drawn(chance, workload);
            const Sample sample = run < 2 ? Sample{} : durations.sample();
            const Levelled &plan = levelling.pass(sample);
            ASSERT_EQ(LevelCheck(workload, sample).faults(plan, levelling.workedSlots()), "");
        }
    }
}

TEST(LevellingProperties, EveryActivityStandsWherePlainCountingPutsIt)
{
    Chance chance(12);
    int resources = 0;
    for (int i = 0; i < kWorkloads / 10; ++i) {
        SCOPED_TRACE(i);
        const Workload workload = randomWorkload(chance);
        Levelling levelling(workload);
        if (chance.oneIn(2))
            levelling.setOrder(shuffled(chance, workload.activities.size()));
        const Levelled &plan = levelling.pass();
        const auto placed = testing::PlainLevelling(workload).run(levelling.order());
        for (std::size_t a = 0; a < workload.activities.size(); ++a) {
            SCOPED_TRACE(a);
            if (placed[a].never) {
                ASSERT_EQ(plan.startDay[a], kNever);
                continue;
            }
            ASSERT_EQ(plan.startDay[a], placed[a].startDay);
            ASSERT_EQ(plan.finishDay[a], placed[a].finishDay);
            if (workload.activities[a].work > 0) {
                ASSERT_EQ(plan.start[a], placed[a].start);
                ASSERT_EQ(plan.finish[a], placed[a].finish);
            }
            const bool blamed = plan.driver[a].by == DrivenBy::Resource;
            resources += blamed ? 1 : 0;
            ASSERT_TRUE(!blamed || placed[a].inTheWay.count(plan.driver[a].activity) == 1);
            ASSERT_TRUE(blamed || plan.broken[a] || placed[a].inTheWay.empty() ||
                        workload.activities[a].manner != Manner::Split ||
                        plan.startDay[a] == kNever);
        }
    }
    EXPECT_GT(resources, 100);
}

// A link as driver is one whose end and waiting the start follows at once; without a driver
// nothing is waited for.
TEST(LevellingProperties, TheDriverOfAStartIsNeverLaterThanTheStart)
{
    Chance chance(13);
    for (int i = 0; i < kWorkloads / 3; ++i) {
        SCOPED_TRACE(i);
        const Workload workload = randomWorkload(chance);
        Levelling levelling(workload);
        const Levelled &plan = levelling.pass();
        for (std::size_t a = 0; a < workload.activities.size(); ++a) {
            const Driver driver = plan.driver[a];
            if (plan.startDay[a] == kNever)
                continue;
            const Activity &activity = workload.activities[a];
            int ready = activity.releaseDay;
            for (const std::size_t before : activity.after)
                ready = std::max(ready, plan.readyDay[before]);
            if (driver.by == DrivenBy::Link) {
                ASSERT_EQ(plan.readyDay[static_cast<std::size_t>(driver.activity)], ready);
            }
            if (driver.by == DrivenBy::Release) {
                ASSERT_EQ(activity.releaseDay, ready);
            }
            if (driver.by == DrivenBy::Resource) {
                ASSERT_LE(plan.start[static_cast<std::size_t>(driver.activity)], plan.start[a]);
            }
        }
    }
}

TEST(LevellingProperties, NoPlanEndsBeforeEveryoneHasEverythingForHimself)
{
    Chance chance(14);
    for (int i = 0; i < kWorkloads / 3; ++i) {
        SCOPED_TRACE(i);
        const Workload workload = randomWorkload(chance);
        // Alone: enough of everything for all at once, but only where there was any.
        Workload plenty = workload;
        for (std::vector<int> &profile : plenty.timeline.profiles) {
            for (int &amount : profile)
                amount *= 100;
        }
        const int alone = Levelling(plenty).pass().endDay;
        Levelling levelling(workload);
        const Levelled &plan = levelling.pass();
        // A sitting too long for what repeats may fit into one that does not, and so come later
        // than if it had been broken up.
        if (std::count(plan.broken.begin(), plan.broken.end(), 1) == 0) {
            EXPECT_GE(plan.endDay, alone);
        }
    }
}

TEST(LevellingProperties, LatestStartsKeepTheOrderOfThingsAndLeaveFloat)
{
    Chance chance(15);
    for (int i = 0; i < kWorkloads / 3; ++i) {
        SCOPED_TRACE(i);
        const Workload workload = randomWorkload(chance);
        Levelling levelling(workload);
        const Levelled &plan = levelling.pass();
        if (plan.endDay == kNever)
            continue;
        const int later = chance.between(0, 30);
        const Latest latest = levelling.latest(plan.endDay);
        const Latest relaxed = levelling.latest(plan.endDay + later);
        const Latest hurried = levelling.latest(plan.endDay - later);
        for (std::size_t a = 0; a < workload.activities.size(); ++a) {
            ASSERT_GE(latest.floatDays[a], 0);
            ASSERT_EQ(latest.startDay[a] - plan.startDay[a], latest.floatDays[a]);
            ASSERT_LE(latest.startDay[a], plan.endDay);
            ASSERT_GE(relaxed.floatDays[a], 0);
            ASSERT_EQ(hurried.floatDays[a], latest.floatDays[a] - later);
            for (const std::size_t before : workload.activities[a].after) {
                if (workload.activities[before].work > 0 && workload.activities[a].work > 0) {
                    ASSERT_LE(latest.startDay[before], latest.startDay[a]);
                }
            }
        }
    }
}

TEST(LevellingProperties, UntracedAPassGivesTheSameDays)
{
    Chance chance(17);
    for (int i = 0; i < 500; ++i) {
        const Workload workload = randomWorkload(chance);
        const Durations durations = drawn(chance, workload);
        Levelling levelling(workload);
        levelling.setOrder(shuffled(chance, workload.activities.size()));
        const Levelled traced = levelling.pass(durations.sample());
        const Levelled &untraced = levelling.pass(durations.sample(), Levelling::Traced::No);
        ASSERT_EQ(traced.start, untraced.start);
        ASSERT_EQ(traced.finish, untraced.finish);
        ASSERT_EQ(traced.readyDay, untraced.readyDay);
        ASSERT_EQ(traced.endDay, untraced.endDay);
        const Levelled &again = levelling.pass(durations.sample()); // nothing is left over from it
        ASSERT_EQ(traced.driver, again.driver);
        ASSERT_EQ(traced.interrupter, again.interrupter);
    }
}

TEST(LevellingProperties, TheSameWorkloadGivesTheSamePlanAgainAndInACopy)
{
    Chance chance(16);
    for (int i = 0; i < 200; ++i) {
        const Workload workload = randomWorkload(chance);
        const Durations durations = drawn(chance, workload);
        Levelling levelling(workload);
        const Levelled first = levelling.pass();
        levelling.pass(durations.sample());
        levelling.latest(50);
        Levelling copy(levelling);
        const Levelled again = levelling.pass();
        const Levelled &copied = copy.pass();
        ASSERT_EQ(first.start, again.start);
        ASSERT_EQ(first.finish, again.finish);
        ASSERT_EQ(first.driver, again.driver);
        ASSERT_EQ(first.finishDay, copied.finishDay);
    }
}

} // namespace
} // namespace ohmwright::plan
