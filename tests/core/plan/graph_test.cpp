// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/plan/network.h"
#include "tests/core/plan/random_network.h"

#include <QString>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cstddef>
#include <optional>
#include <vector>

namespace ohmwright::plan {
namespace {

using testing::Chances;
using ::testing::ElementsAre;
using ::testing::IsEmpty;
using testing::RandomNetworks;
using testing::task;

using Indices = std::vector<std::size_t>;

bool waitsOn(const Network &network, std::size_t task, std::size_t before)
{
    const Indices &after = network.tasks[task].after;
    return std::find(after.begin(), after.end(), before) != after.end();
}

Network threeInARow()
{
    return Network{{task("a", 1), task("b", 1, {0}), task("c", 1, {1})}};
}

TEST(Find, GivesTheTaskWithTheKeyOrNone)
{
    const Network network = threeInARow();
    EXPECT_EQ(network.find("c"), std::optional<std::size_t>(2));
    EXPECT_EQ(network.find("d"), std::nullopt);
    EXPECT_EQ(Network{}.find("a"), std::nullopt);
}

TEST(FindLoop, FindsNoneWhereThereIsNone)
{
    EXPECT_THAT(findLoop(Network{}), IsEmpty());
    EXPECT_THAT(findLoop(threeInARow()), IsEmpty());
    // two ways to the same task are no loop
    const Network twoWays{{task("a", 1), task("b", 1, {0}), task("c", 1, {0, 1, 0})}};
    EXPECT_THAT(findLoop(twoWays), IsEmpty());
}

TEST(FindLoop, GivesTheLoopFromItsLowestTaskEachWaitingOnTheOneBefore)
{
    // 1 waits on 3, 3 on 2, 2 on 1; 0 waits on the loop, 4 holds it up
    const Network network{{task("a", 1, {3}), task("b", 1, {3}), task("c", 1, {1, 4}),
                           task("d", 1, {2}), task("e", 1)}};
    EXPECT_THAT(findLoop(network), ElementsAre(1, 2, 3));
}

TEST(FindLoop, CountsDoneTasksToo)
{
    Network network{{task("a", 1, {1}), task("b", 1, {0})}};
    network.tasks[0].done = true;
    network.tasks[1].done = true;
    EXPECT_THAT(findLoop(network), ElementsAre(0, 1));
}

TEST(FindLoop, ATaskAfterItselfIsALoopOfOne)
{
    const Network network{{task("a", 1), task("b", 1, {0, 1})}};
    EXPECT_THAT(findLoop(network), ElementsAre(1));
}

TEST(FindLoop, TakesTheShortestLoopThroughTheLowestTaskThenTheLowestLastOne)
{
    // 0 waits on 5, 4 and 3; these lead back to it by 2, 1 and 2
    const Network network{{task("a", 1, {5, 4, 3}), task("b", 1, {0}), task("c", 1, {0, 1}),
                           task("d", 1, {2}), task("e", 1, {1}), task("f", 1, {2})}};
    EXPECT_THAT(findLoop(network), ElementsAre(0, 2, 3));
}

TEST(LoopIfLinked, IsEmptyWhereTheLinkMakesNone)
{
    const Network network = threeInARow();
    EXPECT_THAT(loopIfLinked(network, 0, 2), IsEmpty());
    EXPECT_THAT(loopIfLinked(network, 0, 1), IsEmpty()); // linked so already
}

TEST(LoopIfLinked, NamesTheTaskFirstAndWhatItWouldWaitOnLast)
{
    const Network network = threeInARow();
    EXPECT_THAT(loopIfLinked(network, 2, 0), ElementsAre(0, 1, 2));
    EXPECT_THAT(loopIfLinked(network, 1, 0), ElementsAre(0, 1));
    EXPECT_THAT(loopIfLinked(network, 1, 1), ElementsAre(1));
}

TEST(LoopIfLinked, LeavesLoopsAloneThatDoNotUseTheLink)
{
    const Network network{{task("a", 1, {1}), task("b", 1, {0}), task("c", 1), task("d", 1)}};
    EXPECT_THAT(loopIfLinked(network, 2, 3), IsEmpty());
    EXPECT_THAT(loopIfLinked(network, 0, 3), IsEmpty());
}

TEST(DescribeLoop, TellsWhoWaitsOnWhom)
{
    Network network{{task("a", 1, {1}), task("b", 1, {0})}};
    network.tasks[0].title = "Fit pack";
    network.tasks[1].title = "Build pack";
    EXPECT_EQ(describeLoop(network, findLoop(network)),
              u"Fit pack waits on Build pack, which waits on Fit pack.");
    EXPECT_EQ(describeLoop(network, loopIfLinked(network, 1, 1)), u"Build pack waits on itself.");
    EXPECT_EQ(describeLoop(network, {}), u"");
}

TEST(DescribeLoop, FollowsTheLinksNotTheIndices)
{
    // c waits on b, b on a; now a would wait on c
    Network network = threeInARow();
    network.tasks[1].title.clear(); // then the key names it
    EXPECT_EQ(describeLoop(network, loopIfLinked(network, 2, 0)),
              u"Task a waits on Task c, which waits on b, which waits on Task a.");
}

TEST(DescribeLoop, NamesTenWholeAndOfMoreTheFirstEight)
{
    const Network network = testing::longChain(11);
    EXPECT_EQ(describeLoop(network, loopIfLinked(network, 9, 0)),
              u"0 waits on 9, which waits on 8, which waits on 7, which waits on 6, which waits on "
              u"5, which waits on 4, which waits on 3, which waits on 2, which waits on 1, which "
              u"waits on 0.");
    EXPECT_EQ(
        describeLoop(network, loopIfLinked(network, 10, 0)),
        u"0 waits on 10, which waits on 9, which waits on 8, which waits on 7, which waits on "
        u"6, which waits on 5, which waits on 4, and so on through 3 more back to 0.");
}

TEST(TopologicalOrder, PutsEachTaskAfterAllItWaitsOnLowestFirst)
{
    EXPECT_THAT(topologicalOrder(Network{}), IsEmpty());
    const Network network{
        {task("a", 1, {3}), task("b", 1), task("c", 1, {1, 0}), task("d", 1), task("e", 1, {1})}};
    EXPECT_THAT(topologicalOrder(network), ElementsAre(1, 3, 0, 2, 4));
}

TEST(CanStart, NeedsAllTasksBeforeItDoneAndAllNeedsMet)
{
    Network network{{task("a", 1), task("b", 1, {0})}};
    network.tasks[1].needs = {testing::unmet("n", MoveKind::Order, "bolt", 3)};
    EXPECT_TRUE(canStart(network, 0));
    EXPECT_FALSE(canStart(network, 1));
    network.tasks[0].done = true;
    EXPECT_FALSE(canStart(network, 0));
    EXPECT_FALSE(canStart(network, 1));
    network.tasks[1].needs[0].met = true;
    EXPECT_TRUE(canStart(network, 1));
    network.tasks[1].started = true;
    EXPECT_TRUE(canStart(network, 1));
}

TEST(GraphProperties, ALoopFoundIsALoopAndNoneIsFoundOnlyInAnOrderableNetwork)
{
    RandomNetworks random(20240229);
    int looped = 0;
    for (int round = 0; round < 2000; ++round) {
        Chances chances;
        chances.backward = round % 2 == 0 ? 0.05 : 0;
        const Network network = random.make(chances);
        const Indices loop = findLoop(network);
        if (loop.empty()) {
            const Indices order = topologicalOrder(network);
            ASSERT_EQ(order.size(), network.tasks.size());
            Indices place(order.size());
            for (std::size_t i = 0; i < order.size(); ++i)
                place[order[i]] = i;
            for (std::size_t i = 0; i < order.size(); ++i) {
                for (const std::size_t before : network.tasks[i].after)
                    ASSERT_LT(place[before], place[i]);
            }
            continue;
        }
        ++looped;
        ASSERT_EQ(round % 2, 0) << "a loop in a network made without any";
        ASSERT_EQ(*std::min_element(loop.begin(), loop.end()), loop.front());
        ASSERT_TRUE(waitsOn(network, loop.front(), loop.back()));
        for (std::size_t i = 1; i < loop.size(); ++i)
            ASSERT_TRUE(waitsOn(network, loop[i], loop[i - 1]));
        Indices once = loop;
        std::sort(once.begin(), once.end());
        ASSERT_EQ(std::unique(once.begin(), once.end()), once.end());
    }
    EXPECT_GT(looped, 300);
}

TEST(GraphProperties, AddingAnyLinkReportedLoopFreeKeepsTheNetworkLoopFree)
{
    RandomNetworks random(7);
    int refused = 0, added = 0;
    for (int round = 0; round < 300; ++round) {
        Network network = random.make({});
        for (int link = 0; link < 30; ++link) {
            const std::size_t before = random.below(network.tasks.size());
            const std::size_t after = random.below(network.tasks.size());
            const Indices loop = loopIfLinked(network, before, after);
            Network linked = network;
            linked.tasks[after].after.push_back(before);
            if (loop.empty()) {
                ++added;
                ASSERT_THAT(findLoop(linked), IsEmpty());
                network = linked;
                continue;
            }
            ++refused;
            ASSERT_THAT(findLoop(linked), ::testing::Not(IsEmpty()));
            ASSERT_EQ(loop.front(), after);
            ASSERT_EQ(loop.back(), before);
            for (std::size_t i = 1; i < loop.size(); ++i)
                ASSERT_TRUE(waitsOn(network, loop[i], loop[i - 1]));
        }
    }
    EXPECT_GT(refused, 500);
    EXPECT_GT(added, 500);
}

TEST(GraphDepth, AChainOfTwoHundredThousandTasksIsNoDeeperThanOneOfTwo)
{
    constexpr std::size_t kLength = 200'000;
    Network network = testing::longChain(kLength);
    EXPECT_THAT(findLoop(network), IsEmpty());
    EXPECT_EQ(topologicalOrder(network).back(), kLength - 1);
    EXPECT_EQ(loopIfLinked(network, kLength - 1, 0).size(), kLength);

    network.tasks.front().after = {kLength - 1};
    const Indices loop = findLoop(network);
    ASSERT_EQ(loop.size(), kLength);
    EXPECT_EQ(loop.front(), 0U);
    EXPECT_EQ(loop.back(), kLength - 1);
    EXPECT_TRUE(
        describeLoop(network, loop).endsWith(u", and so on through 199992 more back to 0."));
}

// Broken promises of the caller: fatal where assertions are on, else what the header says.
#ifdef QT_NO_DEBUG
#define EXPECT_ASSERTED(statement, message) EXPECT_TRUE(statement)
#else
#define EXPECT_ASSERTED(statement, message) EXPECT_DEATH(EXPECT_TRUE(statement), message)
#endif

TEST(GraphDeathTest, AnOrderOfALoopIsRefused)
{
    const Network network{{task("a", 1, {1}), task("b", 1, {0})}};
    EXPECT_ASSERTED(topologicalOrder(network).empty(), "the network has a loop");
}

TEST(GraphDeathTest, TasksThatDoNotExistAreRefused)
{
    const Network network = threeInARow();
    EXPECT_ASSERTED(loopIfLinked(network, 0, 3).empty(), "no such task");
    EXPECT_ASSERTED(loopIfLinked(network, 3, 0).empty(), "no such task");
    EXPECT_ASSERTED(!canStart(network, 3), "no such task");
    const Network astray{{task("a", 1), task("b", 1, {0, 9})}};
    EXPECT_ASSERTED(topologicalOrder(astray) == Indices({0, 1}), "a task that does not exist");
}

} // namespace
} // namespace ohmwright::plan
