// SPDX-License-Identifier: GPL-3.0-or-later
// Splitting into groups of one size. Published instances are of groups of any size; a zero added
// makes them whole groups. Ratios of balanced differencing to the optimum: W. Michiels et al.,
// STACS 2003 (4/3, 19/12 and 103/60 for 3, 4 and 5 items in a group). Where nothing is published:
// brute force, independent of the code under test, and labelled so.
#include "core/checks/balanced_groups.h"
#include "tests/support/chance.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <functional>
#include <limits>
#include <numeric>

namespace ohmwright {

namespace {

std::vector<PairOfValues> plain(const std::vector<double> &values)
{
    std::vector<PairOfValues> items;
    for (const double value : values)
        items.push_back({value, 1});
    return items;
}

std::vector<double> sums(const std::vector<PairOfValues> &items, const Groups &groups)
{
    std::vector<double> result;
    for (const auto &group : groups) {
        double sum = 0;
        for (const std::size_t i : group)
            sum += items[i].first;
        result.push_back(sum);
    }
    std::sort(result.begin(), result.end());
    return result;
}

bool areWhole(const Groups &groups, std::size_t items, std::size_t size)
{
    std::vector<std::size_t> seen;
    for (const auto &group : groups) {
        if (group.size() != size)
            return false;
        seen.insert(seen.end(), group.begin(), group.end());
    }
    std::sort(seen.begin(), seen.end());
    std::vector<std::size_t> all(items);
    std::iota(all.begin(), all.end(), std::size_t{0});
    return seen == all;
}

// Brute force: every assignment of items to numbered groups, no pruning.
void everySplit(std::size_t items, std::size_t size, const std::function<void(const Groups &)> &see)
{
    Groups groups(items / size);
    const std::function<void(std::size_t)> place = [&](std::size_t item) {
        if (item == items)
            return see(groups);
        for (auto &group : groups) {
            if (group.size() == size)
                continue;
            group.push_back(item);
            place(item + 1);
            group.pop_back();
        }
    };
    place(0);
}

std::vector<PairOfValues> randomItems(Chance &chance, std::size_t count)
{
    std::vector<PairOfValues> items;
    for (std::size_t i = 0; i < count; ++i)
        items.push_back({chance.between(1, 1000) / 10.0, chance.between(1, 1000) / 7.0});
    return items;
}

} // namespace

// {8,7,6,5,4} into two: optimum {8,7} and {6,5,4}, difference 0. {8,7,6,5,3}: difference 1.
// {5,5,4,4,3,3,3} into three: 9 each. {3,3,2,2,2} into two: 6 each. R. L. Graham 1969 and texts
// on number partitioning; optima recomputed.
TEST(BalancedGroups, FindsThePublishedOptima)
{
    struct Case
    {
        std::vector<double> values;
        std::size_t size;
        std::vector<double> expected;
    };
    for (const Case &c :
         {Case{{8, 7, 6, 5, 4, 0}, 3, {15, 15}}, Case{{8, 7, 6, 5, 3, 0}, 3, {14, 15}},
          Case{{5, 5, 4, 4, 3, 3, 3, 0, 0}, 3, {9, 9, 9}}, Case{{3, 3, 2, 2, 2, 0}, 3, {6, 6}},
          Case{{8, 7, 6, 5, 4, 0}, 2, {8, 11, 11}}}) {
        const std::vector<PairOfValues> items = plain(c.values);
        const BalancedGroups best = groupEvenly(items, c.size, 1);
        EXPECT_TRUE(best.proven);
        EXPECT_EQ(sums(items, best.groups), c.expected);
    }
}

// The largest sum is at most 4/3, 19/12, 103/60 of the optimum for 3, 4, 5 items in a group: the
// bound published for balanced differencing, the optimum here by brute force.
TEST(BalancedGroups, DifferencingKeepsItsPublishedRatio)
{
    Chance chance(12);
    const std::array ratios{4.0 / 3, 19.0 / 12, 103.0 / 60};
    for (int round = 0; round < 60; ++round) {
        const std::size_t size = 3 + static_cast<std::size_t>(round % 3);
        const std::vector<PairOfValues> items = randomItems(chance, 2 * size);
        double best = std::numeric_limits<double>::infinity();
        everySplit(items.size(), size, [&](const Groups &groups) {
            best = std::min(best, sums(items, groups).back());
        });
        const Groups made = balancedDifferencing(items, size, 1);
        ASSERT_TRUE(areWhole(made, items.size(), size));
        EXPECT_LE(sums(items, made).back(), ratios[size - 3] * best * (1 + 1e-12));
    }
}

// Independent brute force over both values at once.
TEST(BalancedGroups, EqualsBruteForceOnSmallSets)
{
    Chance chance(34);
    for (int round = 0; round < 120; ++round) {
        const std::size_t size = std::array{2U, 3U, 4U}[static_cast<std::size_t>(round % 3)];
        const std::size_t count = size == 4 ? 8 : size == 3 ? 9 : 8;
        const double weight = chance.between(0, 10) / 10.0;
        const std::vector<PairOfValues> items = randomItems(chance, count);
        double best = std::numeric_limits<double>::infinity();
        everySplit(count, size, [&](const Groups &groups) {
            best = std::min(best, spreadOf(items, groups, weight));
        });
        const BalancedGroups made = groupEvenly(items, size, weight);
        ASSERT_TRUE(areWhole(made.groups, count, size));
        EXPECT_TRUE(made.proven);
        EXPECT_NEAR(made.cost, best, 1e-11);
        EXPECT_LE(leastSpread(items, size, weight), best + 1e-11);
    }
}

TEST(BalancedGroups, LargeSetsStayWholeAboveTheBoundAndNoWorseThanDifferencing)
{
    Chance chance(56);
    for (int round = 0; round < 12; ++round) {
        const std::size_t size = static_cast<std::size_t>(chance.between(1, 6));
        const std::size_t count = size * static_cast<std::size_t>(chance.between(8, 20));
        const std::vector<PairOfValues> items = randomItems(chance, count);
        const BalancedGroups made = groupEvenly(items, size, 0.5);
        ASSERT_TRUE(areWhole(made.groups, count, size));
        EXPECT_GE(made.cost, made.bound - 1e-11);
        EXPECT_LE(made.cost, spreadOf(items, balancedDifferencing(items, size, 0.5), 0.5) + 1e-11);
    }
}

TEST(BalancedGroups, UnitsOfTheValuesDoNotMatter)
{
    Chance chance(78);
    const std::vector<PairOfValues> items = randomItems(chance, 24);
    std::vector<PairOfValues> scaled = items;
    for (PairOfValues &item : scaled)
        item = {item.first * 1024, item.second / 4096}; // powers of two: exact
    const BalancedGroups one = groupEvenly(items, 3, 0.5);
    const BalancedGroups other = groupEvenly(scaled, 3, 0.5);
    EXPECT_EQ(one.groups, other.groups);
    EXPECT_DOUBLE_EQ(one.cost, other.cost);
}

} // namespace ohmwright
