// SPDX-License-Identifier: GPL-3.0-or-later
// Textbook networks are in tests/published/plan.
#include "core/plan/network.h"
#include "tests/core/plan/random_network.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cstddef>
#include <limits>
#include <optional>

namespace ohmwright::plan {
namespace {

using ::testing::Each;
using ::testing::ElementsAre;
using ::testing::IsEmpty;
using testing::RandomNetworks;
using testing::task;

// a 3 days, then b 4 and c 1 side by side, then d 2
Network diamond()
{
    return Network{{task("a", 3), task("b", 4, {0}), task("c", 1, {0}), task("d", 2, {1, 2})}};
}

TEST(CriticalPath, RunsForwardAndBackward)
{
    const Pass pass = criticalPath(diamond());
    EXPECT_EQ(pass.length, 9);
    EXPECT_THAT(pass.earlyStart, ElementsAre(0, 3, 3, 7));
    EXPECT_THAT(pass.earlyFinish, ElementsAre(3, 7, 4, 9));
    EXPECT_THAT(pass.lateStart, ElementsAre(0, 3, 6, 7));
    EXPECT_THAT(pass.lateFinish, ElementsAre(3, 7, 7, 9));
    EXPECT_EQ(pass.slack(1), 0);
    EXPECT_EQ(pass.slack(2), 3);
}

TEST(CriticalPath, OfNothingIsNothing)
{
    const Pass pass = criticalPath(Network{});
    EXPECT_EQ(pass.length, 0);
    EXPECT_THAT(pass.earlyStart, IsEmpty());
}

TEST(CriticalPath, ADeadlineMovesTheBackwardPassOnly)
{
    const Pass late = criticalPath(diamond(), 12);
    EXPECT_EQ(late.length, 9);
    EXPECT_THAT(late.earlyStart, ElementsAre(0, 3, 3, 7));
    EXPECT_THAT(late.lateStart, ElementsAre(3, 6, 9, 10));
    const Pass early = criticalPath(diamond(), 7);
    EXPECT_EQ(early.length, 9);
    EXPECT_EQ(early.slack(0), -2);
    EXPECT_EQ(early.slack(2), 1);
}

TEST(CriticalPath, DoneTasksTakeNoTimeAndHoldNothingUp)
{
    Network network = diamond();
    network.tasks[0].done = true;
    const Pass pass = criticalPath(network);
    EXPECT_EQ(pass.length, 6);
    EXPECT_THAT(pass.earlyStart, ElementsAre(0, 0, 0, 4));
    EXPECT_THAT(pass.lateFinish, ElementsAre(0, 4, 4, 6));

    // done out of turn: what it waited on holds up nothing after it
    network = diamond();
    network.tasks[1].done = true;
    network.tasks[2].done = true;
    EXPECT_THAT(criticalPath(network).earlyStart, ElementsAre(0, 0, 0, 0));
    EXPECT_EQ(criticalPath(network).length, 3);
}

TEST(CriticalPath, AStartedTaskCountsWhole)
{
    Network network = diamond();
    network.tasks[0].started = true;
    EXPECT_EQ(criticalPath(network).length, 9);
}

TEST(CriticalPath, DaysBelowZeroCountAsNoneAndSumsDoNotOverflow)
{
    Network network{{task("a", -5), task("b", 2, {0})}};
    EXPECT_EQ(criticalPath(network).length, 2);

    constexpr int kMost = std::numeric_limits<int>::max();
    network = Network{{task("a", kMost), task("b", kMost, {0}), task("c", kMost, {1})}};
    for (const std::optional<int> deadline :
         {std::optional<int>(), std::optional(kMost), std::optional(-kMost)}) {
        const Pass pass = criticalPath(network, deadline);
        EXPECT_EQ(pass.length, kLongestDays);
        EXPECT_THAT(pass.earlyFinish, Each(kLongestDays));
        EXPECT_LE(pass.slack(2), 0);
    }
}

TEST(CriticalPath, LeavesNoSlackAlongSomePathFromTodayToTheEnd)
{
    RandomNetworks random(11);
    for (int round = 0; round < 500; ++round) {
        const Network network = random.make({});
        const Pass pass = criticalPath(network);
        int earliest = pass.length;
        bool reachesEnd = pass.length == 0;
        for (std::size_t i = 0; i < network.tasks.size(); ++i) {
            if (network.tasks[i].done)
                continue;
            ASSERT_GE(pass.slack(i), 0);
            ASSERT_EQ(pass.earlyFinish[i], pass.earlyStart[i] + network.tasks[i].elapsedDays);
            ASSERT_EQ(pass.lateFinish[i], pass.lateStart[i] + network.tasks[i].elapsedDays);
            if (pass.slack(i) == 0) {
                earliest = std::min(earliest, pass.earlyStart[i]);
                reachesEnd = reachesEnd || pass.earlyFinish[i] == pass.length;
            }
            for (const std::size_t before : network.tasks[i].after) {
                if (network.tasks[before].done)
                    continue;
                ASSERT_LE(pass.earlyFinish[before], pass.earlyStart[i]);
                ASSERT_LE(pass.lateFinish[before], pass.lateStart[i]);
            }
        }
        ASSERT_EQ(earliest, 0);
        ASSERT_TRUE(reachesEnd);
    }
}

TEST(CriticalPath, AChainOfTwoHundredThousandTasksIsNoDeeperThanOneOfTwo)
{
    const Pass pass = criticalPath(testing::longChain(200'000));
    EXPECT_EQ(pass.length, 200'000);
    EXPECT_EQ(pass.lateStart.back(), 199'999);
}

TEST(CriticalPathDeathTest, ALoopIsRefused)
{
    Network network{{task("a", 1, {1}), task("b", 1, {0}), task("c", 4)}};
#ifdef QT_NO_DEBUG
    const Pass pass = criticalPath(network);
    EXPECT_EQ(pass.length, 0);
    EXPECT_THAT(pass.lateFinish, ElementsAre(0, 0, 0));
#else
    EXPECT_DEATH((void)criticalPath(network), "the network has a loop");
#endif
    // one that runs through a done task holds nothing up
    network.tasks[0].done = true;
    EXPECT_EQ(criticalPath(network).length, 4);
}

} // namespace
} // namespace ohmwright::plan
