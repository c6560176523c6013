// SPDX-License-Identifier: GPL-3.0-or-later
// What must hold for the hold-ups of any network, tried on many made by chance.
#include "core/plan/network.h"
#include "tests/core/plan/random_network.h"

#include <QHash>
#include <QString>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cstddef>
#include <tuple>
#include <vector>

namespace ohmwright::plan {
namespace {

using testing::Chances;
using ::testing::IsEmpty;
using testing::RandomNetworks;

using Indices = std::vector<std::size_t>;

class HoldUpsOfRandomNetworks : public ::testing::TestWithParam<unsigned>
{
protected:
    static constexpr int kRounds = 250;

    // Runs `check(network, milestone, hold-ups)` on networks small and larger.
    template <class Check>
    void onEach(Check check)
    {
        RandomNetworks random(GetParam());
        for (int round = 0; round < kRounds && !HasFatalFailure(); ++round) {
            Chances chances;
            chances.mostTasks = round % 10 == 0 ? 120 : 25;
            chances.done = round % 3 == 0 ? 0 : 0.25;
            chances.linksPerTask = 1 + 0.5 * (round % 4);
            chances.subjects = round % 2 == 0 ? 2 : 60;
            const Network network = random.make(chances);
            const std::size_t milestone = random.milestoneOf(network);
            SCOPED_TRACE(round);
            check(network, milestone, holdUps(network, milestone));
        }
    }
};

INSTANTIATE_TEST_SUITE_P(Seeds, HoldUpsOfRandomNetworks, ::testing::Values(1U, 2U, 3U, 4U));

bool holds(const Indices &ascending, std::size_t task)
{
    return std::binary_search(ascending.begin(), ascending.end(), task);
}

void meetAll(Network &network, const HoldUps &held)
{
    QHash<QString, LeafNeed *> needs;
    for (Task &task : network.tasks) {
        for (LeafNeed &need : task.needs)
            needs.insert(need.key, &need);
    }
    for (const Move &move : held.moves) {
        for (const QString &key : move.needs)
            needs.value(key)->met = true;
    }
}

TEST_P(HoldUpsOfRandomNetworks, EveryUnmetNeedAndEveryStartableTaskOnTheChainIsInExactlyOneMove)
{
    onEach([](const Network &network, std::size_t, const HoldUps &held) {
        QHash<QString, int> needs, doing;
        for (const Move &move : held.moves) {
            for (const QString &key : move.needs)
                ++needs[key];
            if (move.kind == MoveKind::Do)
                ++doing[move.subject];
        }
        QHash<QString, int> expectedNeeds, expectedDoing;
        for (const std::size_t task : held.chain) {
            for (const LeafNeed &need : network.tasks[task].needs) {
                if (!need.met)
                    expectedNeeds[need.key] = 1;
            }
            if (canStart(network, task))
                expectedDoing[network.tasks[task].key] = 1;
        }
        ASSERT_EQ(needs, expectedNeeds);
        ASSERT_EQ(doing, expectedDoing);
    });
}

TEST_P(HoldUpsOfRandomNetworks, TheChainIsAllThatIsLeftToDoForTheMilestoneAndNothingElse)
{
    onEach([](const Network &network, std::size_t milestone, const HoldUps &held) {
        if (network.tasks[milestone].done) {
            ASSERT_THAT(held.chain, IsEmpty());
            return;
        }
        ASSERT_TRUE(std::is_sorted(held.chain.begin(), held.chain.end()));
        ASSERT_TRUE(holds(held.chain, milestone));
        // closed: what a task on it waits on is done or on it too; and no larger than it must be
        std::vector<char> waitedOn(network.tasks.size(), 0);
        for (const std::size_t task : held.chain) {
            ASSERT_FALSE(network.tasks[task].done);
            for (const std::size_t before : network.tasks[task].after) {
                ASSERT_TRUE(network.tasks[before].done || holds(held.chain, before));
                waitedOn[before] = 1;
            }
        }
        for (const std::size_t task : held.chain)
            ASSERT_TRUE(task == milestone || waitedOn[task]);
    });
}

TEST_P(HoldUpsOfRandomNetworks, MovesAreSortedByLatestStartThenTasksFreedThenKeyThenKind)
{
    onEach([](const Network &network, std::size_t milestone, const HoldUps &held) {
        for (std::size_t i = 0; i < held.moves.size(); ++i) {
            const Move &move = held.moves[i];
            ASSERT_EQ(move.latestStart.has_value(), network.tasks[milestone].date.has_value());
            if (move.latestStart) {
                ASSERT_EQ(*move.latestStart,
                          network.tasks[milestone].date->addDays(-move.chainDays));
            }
            if (i == 0)
                continue;
            const Move &before = held.moves[i - 1];
            ASSERT_TRUE(!move.latestStart || *before.latestStart <= *move.latestStart);
            // strictly: no two moves share kind and subject
            ASSERT_LT(std::make_tuple(-before.chainDays, -static_cast<int>(before.frees.size()),
                                      before.subject, before.kind),
                      std::make_tuple(-move.chainDays, -static_cast<int>(move.frees.size()),
                                      move.subject, move.kind));
        }
    });
}

TEST_P(HoldUpsOfRandomNetworks, AMoveFreesJustWhatCannotStartUntilItIsMade)
{
    onEach([](const Network &network, std::size_t, const HoldUps &held) {
        for (const Move &move : held.moves) {
            ASSERT_TRUE(std::is_sorted(move.for_.begin(), move.for_.end()));
            ASSERT_TRUE(std::is_sorted(move.frees.begin(), move.frees.end()));
            // Make every other move and do whatever then can be done.
            Network others = network;
            HoldUps rest = held;
            rest.moves.erase(rest.moves.begin() + (&move - held.moves.data()));
            meetAll(others, rest);
            bool more = true;
            while (more) {
                more = false;
                for (const std::size_t task : held.chain) {
                    const bool left = move.kind == MoveKind::Do && task == move.for_.front();
                    if (!left && canStart(others, task))
                        more = others.tasks[task].done = true;
                }
            }
            Indices stuck;
            for (const std::size_t task : held.chain) {
                if (!others.tasks[task].done &&
                    (move.kind != MoveKind::Do || task != move.for_.front()))
                    stuck.push_back(task);
            }
            ASSERT_EQ(move.frees, stuck);
        }
    });
}

TEST_P(HoldUpsOfRandomNetworks, MeetingAllNeedsLeavesATaskThatCanStart)
{
    onEach([](const Network &network, std::size_t milestone, const HoldUps &held) {
        if (network.tasks[milestone].done)
            return;
        Network met = network;
        meetAll(met, held);
        ASSERT_TRUE(std::any_of(held.chain.begin(), held.chain.end(),
                                [&met](std::size_t task) { return canStart(met, task); }));
    });
}

TEST_P(HoldUpsOfRandomNetworks, MakingAllMovesAgainAndAgainReachesTheMilestone)
{
    onEach([](const Network &network, std::size_t milestone, const HoldUps &) {
        Network going = network;
        std::size_t rounds = 0;
        while (!going.tasks[milestone].done) {
            ASSERT_LE(++rounds, 2 * going.tasks.size());
            const HoldUps held = holdUps(going, milestone);
            ASSERT_FALSE(held.moves.empty());
            meetAll(going, held);
            for (const Move &move : held.moves) {
                if (move.kind == MoveKind::Do)
                    going.tasks[move.for_.front()].done = true;
            }
        }
        ASSERT_THAT(holdUps(going, milestone).moves, IsEmpty());
    });
}

// Everything set in motion today, each task begun as soon as all it waits on is there: the day the
// milestone is reached is the length of the chain.
TEST_P(HoldUpsOfRandomNetworks, TheMilestoneIsReachedChainDaysAfterEverythingIsSetInMotion)
{
    onEach([](const Network &network, std::size_t milestone, const HoldUps &held) {
        std::vector<int> finished(network.tasks.size(), 0);
        for (const std::size_t index : topologicalOrder(network)) {
            const Task &task = network.tasks[index];
            if (task.done)
                continue;
            int start = 0;
            for (const std::size_t before : task.after)
                start = std::max(start, finished[before]);
            for (const LeafNeed &need : task.needs)
                start = std::max(start, need.met ? 0 : need.daysToMeet);
            finished[index] = start + task.elapsedDays;
        }
        ASSERT_EQ(held.chainDays, finished[milestone]);
    });
}

TEST_P(HoldUpsOfRandomNetworks, TheDrivingPathIsAsLongAsTheChain)
{
    onEach([](const Network &network, std::size_t milestone, const HoldUps &held) {
        if (network.tasks[milestone].done) {
            ASSERT_THAT(held.driving, IsEmpty());
            return;
        }
        ASSERT_FALSE(held.driving.empty());
        ASSERT_EQ(held.driving.back(), milestone);
        int days = 0;
        for (const LeafNeed &need : network.tasks[held.driving.front()].needs)
            days = std::max(days, need.met ? 0 : need.daysToMeet);
        for (std::size_t i = 0; i < held.driving.size(); ++i) {
            const Task &task = network.tasks[held.driving[i]];
            ASSERT_TRUE(holds(held.chain, held.driving[i]));
            days += task.elapsedDays;
            if (i > 0) {
                ASSERT_NE(std::find(task.after.begin(), task.after.end(), held.driving[i - 1]),
                          task.after.end());
            }
        }
        ASSERT_EQ(days, held.chainDays);
        ASSERT_EQ(held.moves.front().chainDays, held.chainDays);
    });
}

} // namespace
} // namespace ohmwright::plan
