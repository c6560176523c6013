// SPDX-License-Identifier: GPL-3.0-or-later
// The loom folded for paper, and what is left out of it. The networks are invented; what must hold
// of a fold follows from what it is for.
#include "core/plan/loom_fold.h"
#include "core/plan/loom_open.h"
#include "tests/core/plan/loom_networks.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <set>

namespace ohmwright::plan {

namespace {

LoomPaper paper(double width, double height, std::size_t sheets = 1)
{
    LoomPaper made;
    made.room = {width, height};
    made.sheets = sheets;
    return made;
}

Loom drawn(const Network &network, const LoomFacts &facts, LoomBy by, bool share)
{
    LoomOptions how;
    how.by = by;
    how.shareRuns = share;
    return layOutLoom(network, facts, {}, how);
}

// Whatever way it is folded: the bands follow one another, fit their sheets, and every task stands
// whole on one of them.
void expectSound(const Loom &loom, const LoomFold &fold, const LoomPaper &on)
{
    ASSERT_FALSE(fold.bands.empty());
    EXPECT_LE(fold.scale, on.mostScale);
    EXPECT_EQ(fold.bands.front().left, loom.bounds.left());
    EXPECT_EQ(fold.bands.back().right, loom.bounds.right());
    std::vector<int> seen(loom.tasks.size(), 0);
    std::vector<double> used(fold.sheets, 0);
    for (std::size_t at = 0; at < fold.bands.size(); ++at) {
        const LoomBand &band = fold.bands[at];
        EXPECT_EQ(band.first, at == 0);
        EXPECT_EQ(band.last, at + 1 == fold.bands.size());
        EXPECT_LE(band.width() * fold.scale, on.room.width() + 1e-6);
        ASSERT_LT(band.sheet, fold.sheets);
        used[band.sheet] += (used[band.sheet] > 0 ? on.between : 0) + band.height();
        if (at > 0) {
            EXPECT_EQ(band.left, fold.bands[at - 1].right);
            EXPECT_EQ(band.in.size(), fold.bands[at - 1].out.size())
                << "a wire has the same number on both sides";
            EXPECT_GE(band.sheet, fold.bands[at - 1].sheet);
        }
        for (const std::vector<double> &cut : {band.in, band.out}) {
            for (std::size_t wire = 1; wire < cut.size(); ++wire)
                EXPECT_GT(cut[wire] - cut[wire - 1], 9) << "room for a number";
        }
        std::vector<QRectF> bodies;
        for (const LoomTask &task : band.loom.tasks) {
            QRectF own = task.body | task.title.box | task.missing.box | task.ready.box;
            own |= task.plan.box | task.slack.box | task.date.box;
            if (own.left() < band.left || own.right() > band.right) {
                EXPECT_TRUE(own.right() < band.left + 2 || own.left() > band.right - 2)
                    << "cut through";
                continue;
            }
            ++seen[task.task];
            EXPECT_GE(own.top(), band.loom.bounds.top() - 1e-6);
            EXPECT_LE(own.bottom(), band.loom.bounds.bottom() + 1e-6);
            for (const QRectF &other : bodies)
                EXPECT_FALSE(other.intersects(own)) << "one on another";
            bodies.push_back(own);
        }
    }
    for (const double height : used)
        EXPECT_LE(height * fold.scale, on.room.height() + 1e-6);
    EXPECT_TRUE(std::all_of(seen.begin(), seen.end(), [](int times) { return times == 1; }));
}

TEST(LoomFold, EveryTaskStandsOnOneBandThatFits)
{
    const Network network = vanNetwork();
    const LoomFacts facts = inventedForecast(network);
    for (const LoomBy by : {LoomBy::Chain, LoomBy::Date}) {
        for (const bool share : {false, true}) {
            const Loom loom = drawn(network, facts, by, share);
            for (const std::size_t sheets : {1U, 2U, 4U}) {
                SCOPED_TRACE(testing::Message() << "share " << share << " sheets " << sheets);
                const LoomPaper on = paper(1134, 700, sheets);
                expectSound(loom, foldLoom(loom, on), on);
            }
        }
    }
}

TEST(LoomFold, MoreSheetsNeverGiveSmallerLetters)
{
    const Network network = randomNetwork(3, 120, 9, 5);
    const Loom loom = drawn(network, inventedForecast(network), LoomBy::Chain, true);
    double before = 0;
    for (const std::size_t sheets : {1U, 2U, 3U, 4U}) {
        const LoomFold fold = foldLoom(loom, paper(1134, 700, sheets));
        EXPECT_GE(fold.scale, before * 0.96 - 1e-9); // a band less is worth so much
        EXPECT_LE(fold.sheets, sheets);
        before = fold.scale;
    }
}

TEST(LoomFold, WhatIsSmallIsNeitherFoldedNorEnlargedBeyondTheMost)
{
    Network network;
    Task task;
    task.key = task.title = QStringLiteral("Drain tank");
    network.tasks = {task};
    const LoomFold fold = foldLoom(drawn(network, {}, LoomBy::Chain, false), paper(1134, 700));
    ASSERT_EQ(fold.bands.size(), 1U);
    EXPECT_DOUBLE_EQ(fold.scale, 1);
    EXPECT_TRUE(foldLoom({}, paper(1134, 700)).bands.empty());
}

TEST(LoomFold, SharedRunsHoldEveryTaskApart)
{
    for (std::uint32_t seed = 1; seed <= 12; ++seed) {
        const Network network = randomNetwork(seed, 30 + seed * 9, 2 + seed % 8, seed % 5);
        const LoomFacts facts = inventedForecast(network);
        for (const LoomBy by : {LoomBy::Chain, LoomBy::Date}) {
            SCOPED_TRACE("seed " + std::to_string(seed));
            const Loom apart = drawn(network, facts, by, false);
            const Loom shared = drawn(network, facts, by, true);
            ASSERT_EQ(shared.tasks.size(), network.tasks.size());
            EXPECT_LE(shared.bounds.height(), apart.bounds.height() * 1.25);
            for (const LoomTask &task : shared.tasks) {
                const LoomBranch &branch = shared.branches[task.branch];
                EXPECT_LT(branch.sleeve.right(), task.body.left());
                for (const LoomTask &other : shared.tasks) {
                    if (other.task < task.task) {
                        EXPECT_FALSE(other.body.intersects(task.body));
                    }
                }
                for (const LoomBranch &other : shared.branches)
                    EXPECT_FALSE(other.sleeve.intersects(task.body));
                for (const std::size_t before : network.tasks[task.task].after)
                    EXPECT_LT(shared.tasks[before].body.right(), task.body.left());
            }
        }
    }
}

TEST(LoomOpen, LeavesOutWhatIsDoneAndKeepsTheCavities)
{
    const Network network = vanNetwork();
    const LoomFacts facts = inventedForecast(network);
    const LoomOpen open = leaveOutDone(network, facts);
    std::set<QString> kept;
    for (const Task &task : open.network.tasks)
        kept.insert(task.key);
    int areas = 0;
    for (const auto &[area, count] : open.areas)
        areas += count;
    EXPECT_EQ(areas, open.leftOut);
    EXPECT_EQ(open.network.tasks.size() + static_cast<std::size_t>(open.leftOut),
              network.tasks.size());
    for (const Task &task : network.tasks) {
        EXPECT_EQ(kept.contains(task.key), !task.done || task.aside) << task.key.toStdString();
        if (!kept.contains(task.key))
            continue;
        const std::size_t now = *open.network.find(task.key);
        const Task &own = open.network.tasks[now];
        EXPECT_EQ(own.after.size() + own.needs.size(), task.after.size() + task.needs.size());
        EXPECT_EQ(loomState(open.network, now), loomState(network, *network.find(task.key)));
        EXPECT_EQ(loomWaits(open.network, now).size(),
                  loomWaits(network, *network.find(task.key)).size());
        EXPECT_EQ(open.facts.forecast->of(now), facts.forecast->of(*network.find(task.key)));
    }
    EXPECT_TRUE(findLoop(open.network).empty());
}

} // namespace

} // namespace ohmwright::plan
