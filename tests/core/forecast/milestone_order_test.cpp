// SPDX-License-Identifier: GPL-3.0-or-later
// The order of priority: the usual one unless another brings the milestones earlier.
#include "core/forecast/milestone_order.h"
#include "core/forecast/spread.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <numeric>

namespace ohmwright::forecast {
namespace {

// One evening of eight slots every day.
plan::Workload evenings(int hands)
{
    plan::Workload load;
    load.timeline.profiles = {{hands}};
    for (int slot = 0; slot < 8; ++slot)
        load.timeline.line.push_back({0, 0, false});
    load.timeline.repeatDays = 1;
    load.held = {0};
    return load;
}

std::size_t add(plan::Workload &load, int work, std::vector<std::size_t> after = {})
{
    plan::Activity activity;
    activity.work = work;
    activity.demand = {work > 0 ? 1 : 0};
    activity.after = std::move(after);
    load.activities.push_back(std::move(activity));
    return load.activities.size() - 1;
}

Drawn likely(const plan::Workload &load)
{
    Drawn drawn;
    for (const plan::Activity &activity : load.activities) {
        drawn.work.push_back(activity.work);
        drawn.waitDays.push_back(activity.waitDays);
    }
    return drawn;
}

double goalDays(const plan::Workload &load, const OrderSearch &search,
                const std::vector<std::size_t> &order)
{
    plan::Levelling levelling(load);
    levelling.setOrder(order);
    double days = 0;
    for (const Drawn &drawn : search.luck) {
        const plan::Levelled plan = levelling.pass({drawn.work, drawn.waitDays, {}});
        for (const Goal &goal : search.goals)
            days += plan.readyDay[goal.activity];
    }
    return days / static_cast<double>(search.luck.size());
}

// All that the first goal waits on, then what the second does besides, then the rest; each as in
// `order`.
std::vector<std::size_t> usual(const plan::Workload &load, const std::vector<Goal> &goals,
                               std::vector<std::size_t> order)
{
    std::vector<std::size_t> rank(load.activities.size(), goals.size());
    for (std::size_t g = goals.size(); g-- > 0;) {
        rank[goals[g].activity] = g;
        for (std::size_t at = load.activities.size(); at-- > 0;) // what is before has a lower index
            if (rank[at] == g)
                for (const std::size_t before : load.activities[at].after)
                    rank[before] = g;
    }
    std::ranges::stable_sort(order, {}, [&](std::size_t at) { return rank[at]; });
    return order;
}

TEST(MilestoneOrder, IsTheUsualOneWhereNoneIsBetter)
{
    plan::Workload load = evenings(50); // whatever the order, all are done at once
    const std::size_t late = add(load, 8);
    const std::size_t first = add(load, 4);
    const std::size_t second = add(load, 4, {first});
    const std::size_t one = add(load, 0, {second});
    const std::size_t other = add(load, 0, {one, late});
    OrderSearch search;
    search.goals = {{one, {}}, {other, {}}};
    search.luck = {likely(load)};
    search.passes = 2000;
    for (std::uint64_t seed = 1; seed <= 5; ++seed) {
        search.seed = seed;
        EXPECT_EQ(milestoneOrder(load, search),
                  (std::vector<std::size_t>{first, second, one, late, other}))
            << "all that the first goal waits on, then the rest";
    }
}

// By hand: one pair of hands; the goal's own three evenings come first, then those of the other
// goal that nothing of the first waits on, though they are longer.
TEST(MilestoneOrder, BringsTheFirstMilestoneForward)
{
    plan::Workload load = evenings(1);
    const std::size_t longer = add(load, 40);
    const std::size_t shorter = add(load, 24);
    const std::size_t end = add(load, 0, {longer});
    const std::size_t goal = add(load, 0, {shorter});
    OrderSearch search;
    search.goals = {{goal, {}}, {end, {}}};
    search.luck = {likely(load)};
    search.passes = 2000;
    EXPECT_EQ(goalDays(load, search, milestoneOrder(load, search)), 2 + 7);
}

TEST(MilestoneOrder, IsNeverWorseForTheGoalsThanTheUsualOne)
{
    double gained = 0;
    for (std::uint64_t seed = 1; seed <= 12; ++seed) {
        plan::Workload load = evenings(2);
        auto chance = [seed, at = std::uint64_t{0}]() mutable {
            return luck(seed, at++, 7);
        };
        for (int i = 0; i < 40; ++i) {
            std::vector<std::size_t> after;
            for (std::size_t before = 0; before < load.activities.size(); ++before)
                if (chance() < 0.06)
                    after.push_back(before);
            add(load, 1 + static_cast<int>(chance() * 14), std::move(after));
            load.activities.back().waitDays = chance() < 0.2 ? static_cast<int>(chance() * 12) : 0;
        }
        OrderSearch search;
        search.seed = seed;
        search.goals = {{20, {}}, {39, {}}};
        for (int sample = 0; sample < 4; ++sample) {
            search.luck.push_back(likely(load));
            for (int &work : search.luck.back().work)
                work = 1 + static_cast<int>(work * (0.5 + chance() * 1.5));
        }
        const std::vector<std::size_t> unsearched = milestoneOrder(load, search); // latest finish
        search.passes = 4000;
        const std::vector<std::size_t> found = milestoneOrder(load, search);
        std::vector<std::size_t> all = found;
        std::ranges::sort(all);
        std::vector<std::size_t> counted(load.activities.size());
        std::iota(counted.begin(), counted.end(), 0);
        EXPECT_EQ(all, counted) << "each once";
        const double was = goalDays(load, search, usual(load, search.goals, unsearched));
        // A day, since a twentieth of the end counts as well.
        EXPECT_LE(goalDays(load, search, found), was + 1);
        gained += was - goalDays(load, search, found);
        EXPECT_EQ(found, milestoneOrder(load, search)) << "the same input gives the same order";
    }
    EXPECT_GT(gained, 0) << "and now and then it is better";
}

} // namespace
} // namespace ohmwright::forecast
