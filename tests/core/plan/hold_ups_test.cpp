// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/plan/network.h"
#include "tests/core/plan/random_network.h"

#include <QDate>
#include <QString>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cstddef>
#include <limits>
#include <optional>
#include <vector>

namespace ohmwright::plan {
namespace {

using ::testing::ElementsAre;
using ::testing::IsEmpty;
using ::testing::SizeIs;
using testing::task;
using testing::unmet;

using Indices = std::vector<std::size_t>;

// 0 measure shaft (2 days) -> 1 draw coupling (1) -> 2 fit motor (3) -> 4 first turn (milestone)
// 3 build pack (5) -> 4
Network firstTurn()
{
    Network network{{task("measure", 2), task("draw", 1, {0}), task("fit", 3, {1}), task("pack", 5),
                     task("turn", 0, {2, 3})}};
    network.tasks[4].milestone = true;
    network.tasks[4].date = QDate(2026, 3, 20);
    return network;
}

const Move *find(const HoldUps &holdUps, MoveKind kind, const QString &subject)
{
    const auto found =
        std::find_if(holdUps.moves.begin(), holdUps.moves.end(), [&](const Move &move) {
            return move.kind == kind && move.subject == subject;
        });
    return found == holdUps.moves.end() ? nullptr : &*found;
}

TEST(HoldUps, OfTasksAloneAreTheTasksThatCanStart)
{
    const HoldUps held = holdUps(firstTurn(), 4);
    EXPECT_EQ(held.milestone, 4U);
    EXPECT_THAT(held.chain, ElementsAre(0, 1, 2, 3, 4));
    ASSERT_THAT(held.moves, SizeIs(2));

    const Move &measure = held.moves[0];
    EXPECT_EQ(measure.kind, MoveKind::Do);
    EXPECT_EQ(measure.subject, u"measure");
    EXPECT_EQ(measure.title, u"Task measure");
    EXPECT_EQ(measure.why, u"can start now");
    EXPECT_THAT(measure.needs, IsEmpty());
    EXPECT_THAT(measure.for_, ElementsAre(0));
    EXPECT_THAT(measure.frees, ElementsAre(1, 2, 4));
    EXPECT_EQ(measure.chainDays, 6);
    EXPECT_EQ(measure.latestStart, QDate(2026, 3, 14));

    const Move &pack = held.moves[1];
    EXPECT_EQ(pack.subject, u"pack");
    EXPECT_THAT(pack.frees, ElementsAre(4));
    EXPECT_EQ(pack.chainDays, 5);

    EXPECT_EQ(held.chainDays, 6);
    EXPECT_THAT(held.driving, ElementsAre(0, 1, 2, 4));
}

TEST(HoldUps, AnUnmetNeedTakesThePlaceOfItsTaskAndLengthensTheChain)
{
    Network network = firstTurn();
    network.tasks[3].needs = {unmet("n1", MoveKind::Order, "modules", 30)};
    network.tasks[3].needs[0].reason = "wanted, no offer taken yet";
    network.tasks[2].needs = {unmet("n2", MoveKind::Ask, "letter", 10)};
    const HoldUps held = holdUps(network, 4);
    ASSERT_THAT(held.moves, SizeIs(3));

    const Move &order = held.moves[0];
    EXPECT_EQ(order.kind, MoveKind::Order);
    EXPECT_EQ(order.subject, u"modules");
    EXPECT_EQ(order.title, u"the modules");
    EXPECT_EQ(order.why, u"wanted, no offer taken yet");
    EXPECT_THAT(order.needs, ElementsAre(QString("n1")));
    EXPECT_THAT(order.for_, ElementsAre(3));
    EXPECT_THAT(order.frees, ElementsAre(3, 4)); // the task itself waits on it too
    EXPECT_EQ(order.chainDays, 35);
    EXPECT_EQ(order.latestStart, QDate(2026, 2, 13));

    EXPECT_EQ(held.moves[1].subject, u"letter");  // 10 + 3
    EXPECT_EQ(held.moves[2].subject, u"measure"); // 6
    EXPECT_EQ(held.chainDays, 35);
    EXPECT_THAT(held.driving, ElementsAre(3, 4));
}

TEST(HoldUps, NeedsOfOneSubjectAreOneMoveExplainedByTheSlowest)
{
    Network network = firstTurn();
    network.tasks[0].needs = {unmet("n1", MoveKind::Order, "bolts", 2),
                              unmet("n2", MoveKind::Order, "bolts", 4)};
    network.tasks[3].needs = {unmet("n3", MoveKind::Order, "bolts", 4),
                              unmet("n4", MoveKind::Chase, "bolts", 1)};
    network.tasks[3].needs[0].subjectName = "other bolts";
    const HoldUps held = holdUps(network, 4);
    ASSERT_THAT(held.moves, SizeIs(2));
    const Move &bolts = held.moves[0];
    EXPECT_EQ(bolts.kind, MoveKind::Order);
    EXPECT_THAT(bolts.needs, ElementsAre(QString("n1"), QString("n2"), QString("n3")));
    EXPECT_THAT(bolts.for_, ElementsAre(0, 3));
    EXPECT_THAT(bolts.frees, ElementsAre(0, 1, 2, 3, 4));
    EXPECT_EQ(bolts.why, u"because of n2");
    EXPECT_EQ(bolts.title, u"the bolts");
    EXPECT_EQ(bolts.chainDays, 10); // 4 + 6, not 4 + 5
    EXPECT_EQ(held.moves[1].kind, MoveKind::Chase);
}

TEST(HoldUps, TheLongestWayOfAMergedMoveNeedNotBeThatOfItsSlowestNeed)
{
    Network network = firstTurn();
    network.tasks[0].needs = {unmet("n1", MoveKind::Order, "bolts", 2)}; // 2 + 6
    network.tasks[2].needs = {unmet("n2", MoveKind::Order, "bolts", 4)}; // 4 + 3
    const HoldUps held = holdUps(network, 4);
    ASSERT_NE(find(held, MoveKind::Order, "bolts"), nullptr);
    EXPECT_EQ(find(held, MoveKind::Order, "bolts")->chainDays, 8);
    EXPECT_EQ(find(held, MoveKind::Order, "bolts")->why, u"because of n2");
    EXPECT_EQ(held.chainDays, 8);
    EXPECT_THAT(held.driving, ElementsAre(0, 1, 2, 4));
}

TEST(HoldUps, MetNeedsHoldUpNothing)
{
    Network network = firstTurn();
    network.tasks[3].needs = {unmet("n1", MoveKind::Order, "modules", 30)};
    network.tasks[3].needs[0].met = true;
    EXPECT_EQ(find(holdUps(network, 4), MoveKind::Order, "modules"), nullptr);
    EXPECT_NE(find(holdUps(network, 4), MoveKind::Do, "pack"), nullptr);
}

TEST(HoldUps, ADoneTaskCutsTheChainBehindIt)
{
    Network network = firstTurn();
    network.tasks[0].needs = {unmet("n1", MoveKind::FindOut, "shaft", 3)};
    network.tasks[1].needs = {unmet("n2", MoveKind::Order, "paper", 3)};
    network.tasks[1].done = true;
    const HoldUps held = holdUps(network, 4);
    EXPECT_THAT(held.chain, ElementsAre(2, 3, 4));
    ASSERT_THAT(held.moves, SizeIs(2));
    EXPECT_EQ(held.moves[0].subject, u"pack");
    EXPECT_EQ(held.moves[1].subject, u"fit");
}

TEST(HoldUps, WhatDoesNotLeadToTheMilestoneIsLeftOut)
{
    Network network = firstTurn();
    network.tasks.push_back(task("radio", 40));
    network.tasks.push_back(task("polish", 40, {2, 4}));
    network.tasks[5].needs = {unmet("n1", MoveKind::Order, "radio set", 90)};
    const HoldUps held = holdUps(network, 4);
    EXPECT_THAT(held.chain, ElementsAre(0, 1, 2, 3, 4));
    EXPECT_EQ(held.chainDays, 6); // what comes after the milestone does not count
    EXPECT_THAT(held.moves, SizeIs(2));
}

TEST(HoldUps, AMilestoneOnTheWayIsATaskLikeOthers)
{
    Network network = firstTurn();
    network.tasks.push_back(task("road", 0, {4}));
    network.tasks[5].date = QDate(2026, 6, 1);
    const HoldUps held = holdUps(network, 5);
    EXPECT_THAT(held.chain, ElementsAre(0, 1, 2, 3, 4, 5));
    EXPECT_EQ(held.moves[0].latestStart, QDate(2026, 5, 26));

    for (const std::size_t before : {0U, 1U, 2U, 3U})
        network.tasks[before].done = true;
    const HoldUps last = holdUps(network, 5);
    ASSERT_THAT(last.moves, SizeIs(1));
    EXPECT_EQ(last.moves[0].subject, u"turn");
    EXPECT_THAT(last.moves[0].frees, ElementsAre(5));
}

TEST(HoldUps, AMilestoneThatWaitsOnNothingIsItsOwnMove)
{
    Network network = firstTurn();
    network.tasks[2].done = true;
    network.tasks[3].done = true;
    const HoldUps held = holdUps(network, 4);
    EXPECT_THAT(held.chain, ElementsAre(4));
    ASSERT_THAT(held.moves, SizeIs(1));
    EXPECT_EQ(held.moves[0].kind, MoveKind::Do);
    EXPECT_EQ(held.moves[0].subject, u"turn");
    EXPECT_THAT(held.moves[0].frees, IsEmpty());
    EXPECT_EQ(held.moves[0].latestStart, QDate(2026, 3, 20));
    EXPECT_THAT(held.driving, ElementsAre(4));
}

TEST(HoldUps, ADoneMilestoneIsHeldUpByNothing)
{
    Network network = firstTurn();
    network.tasks[4].done = true;
    const HoldUps held = holdUps(network, 4);
    EXPECT_EQ(held.milestone, 4U);
    EXPECT_THAT(held.chain, IsEmpty());
    EXPECT_THAT(held.moves, IsEmpty());
    EXPECT_THAT(held.driving, IsEmpty());
    EXPECT_EQ(held.chainDays, 0);
}

TEST(HoldUps, WithoutADateThereIsNoLatestStartAndTheOrderStands)
{
    Network network = firstTurn();
    network.tasks[4].date.reset();
    HoldUps held = holdUps(network, 4);
    EXPECT_EQ(held.moves[0].subject, u"measure");
    EXPECT_EQ(held.moves[0].latestStart, std::nullopt);
    network.tasks[4].date = QDate();
    EXPECT_EQ(holdUps(network, 4).moves[0].latestStart, std::nullopt);
}

TEST(HoldUps, AStartedTaskCountsWholeAndSaysSo)
{
    Network network = firstTurn();
    network.tasks[3].started = true;
    const Move *pack = nullptr;
    const HoldUps held = holdUps(network, 4);
    pack = find(held, MoveKind::Do, "pack");
    ASSERT_NE(pack, nullptr);
    EXPECT_EQ(pack->why, u"under way");
    EXPECT_EQ(pack->chainDays, 5);
}

TEST(HoldUps, EqualDaysAreSortedByTasksFreedThenKey)
{
    Network network{
        {task("a", 2), task("b", 1, {0}), task("c", 1, {1}), task("d", 4), task("e", 0, {2, 3})}};
    network.tasks[3].needs = {
        unmet("n1", MoveKind::Ask, "yes", 0), unmet("n2", MoveKind::Order, "z", 0),
        unmet("n3", MoveKind::Order, "B", 0), unmet("n4", MoveKind::Order, "a", 0)};
    QString told;
    for (const Move &move : holdUps(network, 4).moves)
        told += moveKindName(move.kind) + u' ' + move.subject + u"; ";
    EXPECT_EQ(told, u"do a; order B; order a; ask yes; order z; ");
}

TEST(HoldUps, OfEquallyLongChainsTheLowestTasksDrive)
{
    const Network network{{task("end", 0, {4, 3, 2}), task("a", 2), task("b", 3, {5, 1}),
                           task("c", 3, {1}), task("d", 3, {1}), task("f", 2)}};
    EXPECT_THAT(holdUps(network, 0).driving, ElementsAre(1, 2, 0));
}

TEST(HoldUps, OverdueCountsAsDueAndSumsDoNotOverflow)
{
    Network network = firstTurn();
    network.tasks[3].needs = {unmet("n1", MoveKind::Chase, "letter", -12)};
    EXPECT_EQ(find(holdUps(network, 4), MoveKind::Chase, "letter")->chainDays, 5);

    constexpr int kMost = std::numeric_limits<int>::max();
    for (Task &each : network.tasks)
        each.elapsedDays = kMost;
    network.tasks[3].needs[0].daysToMeet = kMost;
    const HoldUps held = holdUps(network, 4);
    EXPECT_EQ(held.chainDays, kLongestDays);
    ASSERT_TRUE(held.moves[0].latestStart.has_value());
    EXPECT_TRUE(held.moves[0].latestStart->isValid());
}

TEST(HoldUps, ALinkNamedTwiceCountsOnce)
{
    Network network = firstTurn();
    network.tasks[4].after = {2, 3, 2, 2};
    const HoldUps held = holdUps(network, 4);
    EXPECT_THAT(held.chain, ElementsAre(0, 1, 2, 3, 4));
    EXPECT_THAT(held.driving, ElementsAre(0, 1, 2, 4));
}

TEST(HoldUps, AChainOfTwoHundredThousandTasksIsNoDeeperThanOneOfTwo)
{
    constexpr std::size_t kLength = 200'000;
    Network network = testing::longChain(kLength);
    network.tasks[kLength / 2].needs = {unmet("n", MoveKind::Order, "halfway", 5)};
    const HoldUps held = holdUps(network, kLength - 1);
    EXPECT_EQ(held.chain.size(), kLength);
    EXPECT_EQ(held.driving.size(), kLength);
    EXPECT_EQ(held.chainDays, static_cast<int>(kLength));
    ASSERT_THAT(held.moves, SizeIs(2));
    EXPECT_EQ(held.moves[0].frees.size(), kLength - 1);
    EXPECT_EQ(held.moves[1].frees.size(), kLength / 2);
}

TEST(HoldUps, OfMoreMovesThanAWordHasBitsAreEachFreedTheirOwn)
{
    // 200 tasks side by side, each with a need of its own, then the milestone
    constexpr std::size_t kWide = 200;
    Network network;
    Task last = task("last", 0);
    for (std::size_t i = 0; i < kWide; ++i) {
        network.tasks.push_back(task(QString::number(i), static_cast<int>(i)));
        network.tasks[i].needs = {
            unmet(QString("n%1").arg(i), MoveKind::Order, QString("s%1").arg(i), 0)};
        last.after.push_back(i);
    }
    network.tasks.push_back(last);
    const HoldUps held = holdUps(network, kWide);
    ASSERT_THAT(held.moves, SizeIs(kWide));
    for (std::size_t i = 0; i < kWide; ++i)
        EXPECT_THAT(held.moves[i].frees, ElementsAre(kWide - 1 - i, kWide));
}

TEST(HoldUpsDeathTest, BrokenNetworksAreRefused)
{
    Network loop{{task("a", 1, {1}), task("b", 1, {0}), task("c", 1)}};
    Network nameless{{task("a", 1)}};
    nameless.tasks[0].needs = {unmet("n", MoveKind::Pay, "", 1)};
#ifdef QT_NO_DEBUG
    EXPECT_THAT(holdUps(loop, 1).chain, IsEmpty());
    EXPECT_THAT(holdUps(loop, 1).moves, IsEmpty());
    EXPECT_EQ(holdUps(loop, 1).chainDays, 0);
    EXPECT_THAT(holdUps(loop, 7).moves, IsEmpty());
    ASSERT_THAT(holdUps(nameless, 0).moves, SizeIs(1));
    EXPECT_EQ(holdUps(nameless, 0).moves[0].subject, u"n");
#else
    EXPECT_DEATH((void)holdUps(loop, 1), "the chain has a loop");
    EXPECT_DEATH((void)holdUps(loop, 7), "no such task");
    EXPECT_DEATH((void)holdUps(nameless, 0), "without a subject");
#endif
    EXPECT_THAT(holdUps(loop, 2).chain, ElementsAre(2)); // the loop is not on this chain
}

} // namespace
} // namespace ohmwright::plan
