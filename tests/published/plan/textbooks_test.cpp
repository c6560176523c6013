// SPDX-License-Identifier: GPL-3.0-or-later
// Activity networks of textbooks through the forward and backward pass. Each figure carries a flag:
//   C  read in a copy of the named book, a reprint of it, or a text quoting it
//   M  from memory; the printed schedule is consistent with it
//   D  worked out here by arithmetic
// The books count in weeks or months; a day stands for one of them.
#include "core/plan/network.h"
#include "tests/core/plan/random_network.h"

#include <QString>

#include <gtest/gtest.h>

#include <cstddef>
#include <map>
#include <utility>
#include <vector>

namespace ohmwright::plan {
namespace {

using testing::task;

struct Activity
{
    char name;
    int duration;
    const char *before;
};

Network fromActivities(const std::vector<Activity> &activities)
{
    Network network;
    for (const Activity &activity : activities) {
        std::vector<std::size_t> after;
        for (const char *before = activity.before; *before != 0; ++before)
            after.push_back(static_cast<std::size_t>(*before - 'A'));
        network.tasks.push_back(
            task(QString(QLatin1Char(activity.name)), activity.duration, std::move(after)));
    }
    return network;
}

// The longest chain to a milestone that waits on everything, by name: "ACE".
QString drivingPath(Network network)
{
    std::vector<std::size_t> all(network.tasks.size());
    for (std::size_t i = 0; i < all.size(); ++i)
        all[i] = i;
    network.tasks.push_back(task("", 0, std::move(all)));
    QString names;
    for (const std::size_t index : holdUps(network, network.tasks.size() - 1).driving)
        names += network.tasks[index].key;
    return names;
}

// F. S. Hillier, G. J. Lieberman, Introduction to Operations Research: Reliable Construction Co.
// Durations in weeks C, predecessors partly C, the rest M.
const std::vector<Activity> kReliableConstruction = {
    {'A', 2, ""},  {'B', 4, "A"}, {'C', 10, "B"}, {'D', 6, "C"},  {'E', 4, "C"},
    {'F', 5, "E"}, {'G', 7, "D"}, {'H', 9, "EG"}, {'I', 7, "C"},  {'J', 8, "FI"},
    {'K', 4, "J"}, {'L', 5, "J"}, {'M', 2, "H"},  {'N', 6, "KL"},
};

TEST(ReliableConstruction, TakesFortyFourWeeksAlongItsCriticalPath)
{
    const Network network = fromActivities(kReliableConstruction);
    EXPECT_EQ(criticalPath(network).length, 44);  // C
    EXPECT_EQ(drivingPath(network), u"ABCEFJLN"); // C
}

TEST(ReliableConstruction, HasThePrintedSlacks)
{
    const Pass pass = criticalPath(fromActivities(kReliableConstruction));
    // M, recomputed
    const std::map<char, int> slacks = {{'D', 4}, {'G', 4}, {'H', 4}, {'M', 4}, {'I', 2}, {'K', 1}};
    for (std::size_t i = 0; i < kReliableConstruction.size(); ++i) {
        const char name = kReliableConstruction[i].name;
        const auto slack = slacks.find(name);
        EXPECT_EQ(pass.slack(i), slack == slacks.end() ? 0 : slack->second) << name;
    }
}

TEST(ReliableConstruction, ItsDeadlineOfFortySevenWeeksGivesEveryActivityThreeMore)
{
    const Network network = fromActivities(kReliableConstruction);
    const Pass own = criticalPath(network);
    const Pass allowed = criticalPath(network, 47); // the deadline C, the slacks D
    for (std::size_t i = 0; i < network.tasks.size(); ++i)
        EXPECT_EQ(allowed.slack(i), own.slack(i) + 3);
}

// D. R. Anderson, D. J. Sweeney, T. A. Williams, An Introduction to Management Science: Porta-Vac.
// Expected times in weeks and the schedule C; predecessors M, consistent with the schedule.
TEST(PortaVac, HasThePrintedSchedule)
{
    const std::vector<Activity> activities = {
        {'A', 6, ""},  {'B', 2, ""},  {'C', 3, "A"},  {'D', 5, "A"}, {'E', 3, "A"},
        {'F', 2, "C"}, {'G', 3, "D"}, {'H', 4, "BE"}, {'I', 2, "H"}, {'J', 2, "FGI"},
    };
    struct Row
    {
        int earlyStart, earlyFinish, lateStart, lateFinish, slack;
    };
    const std::vector<Row> schedule = {
        // C
        {0, 6, 0, 6, 0},     {0, 2, 7, 9, 7},     {6, 9, 10, 13, 4},   {6, 11, 7, 12, 1},
        {6, 9, 6, 9, 0},     {9, 11, 13, 15, 4},  {11, 14, 12, 15, 1}, {9, 13, 9, 13, 0},
        {13, 15, 13, 15, 0}, {15, 17, 15, 17, 0},
    };
    const Network network = fromActivities(activities);
    const Pass pass = criticalPath(network);
    for (std::size_t i = 0; i < schedule.size(); ++i) {
        EXPECT_EQ(pass.earlyStart[i], schedule[i].earlyStart) << activities[i].name;
        EXPECT_EQ(pass.earlyFinish[i], schedule[i].earlyFinish) << activities[i].name;
        EXPECT_EQ(pass.lateStart[i], schedule[i].lateStart) << activities[i].name;
        EXPECT_EQ(pass.lateFinish[i], schedule[i].lateFinish) << activities[i].name;
        EXPECT_EQ(pass.slack(i), schedule[i].slack) << activities[i].name;
    }
    EXPECT_EQ(pass.length, 17);                // C
    EXPECT_EQ(drivingPath(network), u"AEHIJ"); // C
}

// B. W. Taylor, Introduction to Management Science, chapter 8, solutions: activities on arrows.
// An arrow from node i waits on every arrow that ends there.
struct Arrow
{
    int from, to, duration, earlyStart, earlyFinish, lateStart, lateFinish, slack;
};

void expectArrows(const std::vector<Arrow> &arrows, int length, const QString &nodes)
{
    Network network;
    for (const Arrow &arrow : arrows) {
        std::vector<std::size_t> after;
        for (std::size_t i = 0; i < arrows.size(); ++i) {
            if (arrows[i].to == arrow.from)
                after.push_back(i);
        }
        network.tasks.push_back(task(QString::number(arrow.from) + u'-' + QString::number(arrow.to),
                                     arrow.duration, std::move(after)));
    }
    const Pass pass = criticalPath(network);
    EXPECT_EQ(pass.length, length);
    QString critical = QStringLiteral("1");
    for (std::size_t i = 0; i < arrows.size(); ++i) {
        SCOPED_TRACE(network.tasks[i].key.toStdString());
        EXPECT_EQ(pass.earlyStart[i], arrows[i].earlyStart);
        EXPECT_EQ(pass.earlyFinish[i], arrows[i].earlyFinish);
        EXPECT_EQ(pass.lateStart[i], arrows[i].lateStart);
        EXPECT_EQ(pass.lateFinish[i], arrows[i].lateFinish);
        EXPECT_EQ(pass.slack(i), arrows[i].slack);
        if (pass.slack(i) == 0)
            critical += u'-' + QString::number(arrows[i].to);
    }
    EXPECT_EQ(critical, nodes);
}

TEST(TaylorArrows, FirstNetworkHasThePrintedSchedule)
{
    expectArrows(
        {
            // C
            {1, 2, 7, 0, 7, 2, 9, 2},
            {1, 3, 10, 0, 10, 0, 10, 0},
            {2, 4, 6, 7, 13, 9, 15, 2},
            {3, 4, 5, 10, 15, 10, 15, 0},
            {3, 5, 4, 10, 14, 14, 18, 4},
            {4, 5, 3, 15, 18, 15, 18, 0},
            {5, 6, 2, 18, 20, 18, 20, 0},
        },
        20, "1-3-4-5-6");
}

TEST(TaylorArrows, SecondNetworkWithADummyHasThePrintedSchedule)
{
    expectArrows(
        {
            // C
            {1, 2, 8, 0, 8, 1, 9, 1},
            {1, 3, 10, 0, 10, 0, 10, 0},
            {1, 4, 9, 0, 9, 6, 15, 6},
            {2, 5, 6, 8, 14, 9, 15, 1},
            {2, 6, 4, 8, 12, 16, 20, 8},
            {3, 5, 5, 10, 15, 10, 15, 0},
            {4, 5, 0, 9, 9, 15, 15, 6}, // dummy
            {4, 7, 7, 9, 16, 20, 27, 11},
            {5, 7, 12, 15, 27, 15, 27, 0},
            {5, 8, 15, 15, 30, 16, 31, 1},
            {6, 9, 18, 12, 30, 20, 38, 8},
            {7, 8, 4, 27, 31, 27, 31, 0},
            {8, 9, 7, 31, 38, 31, 38, 0},
        },
        38, "1-3-5-7-8-9");
}

} // namespace
} // namespace ohmwright::plan
