// SPDX-License-Identifier: GPL-3.0-or-later
// Long, since what holds for every loom is checked by the same few functions.
#include "core/plan/loom.h"
#include "tests/core/plan/loom_networks.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <set>
#include <string>
#include <vector>

namespace ohmwright::plan {

namespace {

Task task(const char *key, const char *area, std::vector<std::size_t> after = {})
{
    Task made;
    made.key = QLatin1String(key);
    made.title = QLatin1String(key);
    made.area = QLatin1String(area);
    made.after = std::move(after);
    return made;
}

LeafNeed need(NeedKind kind, bool met, const char *subject, const char *reason = "")
{
    LeafNeed made;
    made.key = QStringLiteral("n.%1").arg(QLatin1String(subject));
    made.kind = kind;
    made.met = met;
    made.subject = made.key;
    made.subjectName = QLatin1String(subject);
    made.reason = QLatin1String(reason);
    return made;
}

struct Box
{
    QRectF rect;
    std::size_t task; // whose; branches count on from the last task
    std::string what;
};

// Everything that must stay clear of everything else that belongs to another task.
std::vector<Box> boxesOf(const Network &network, const Loom &loom)
{
    std::vector<Box> boxes;
    const auto add = [&](const QRectF &rect, std::size_t owner, const QString &what) {
        if (!rect.isEmpty())
            boxes.push_back({rect, owner, what.toStdString()});
    };
    for (const LoomTask &at : loom.tasks) {
        const QString &title = network.tasks[at.task].title;
        add(at.body, at.task, QStringLiteral("housing of ") + title);
        add(at.missing.box, at.task, QStringLiteral("missing text of ") + title);
        add(at.ready.box, at.task, QStringLiteral("day of ") + title);
        add(at.slack.box, at.task, QStringLiteral("float of ") + title);
        add(at.whisker, at.task, QStringLiteral("whisker of ") + title);
        add(at.highVoltageMark, at.task, QStringLiteral("HV of ") + title);
        if (network.tasks[at.task].milestone) {
            add(at.title.box, at.task, QStringLiteral("name of ") + title);
            add(at.date.box, at.task, QStringLiteral("date of ") + title);
        }
    }
    for (std::size_t at = 0; at < loom.branches.size(); ++at)
        add(loom.branches[at].sleeve, loom.tasks.size() + at,
            QStringLiteral("sleeve ") + loom.branches[at].area);
    return boxes;
}

void expectNothingOverlaps(const Network &network, const Loom &loom)
{
    std::vector<Box> boxes = boxesOf(network, loom);
    std::sort(boxes.begin(), boxes.end(),
              [](const Box &a, const Box &b) { return a.rect.left() < b.rect.left(); });
    for (std::size_t first = 0; first < boxes.size(); ++first) {
        for (std::size_t second = first + 1; second < boxes.size(); ++second) {
            if (boxes[second].rect.left() >= boxes[first].rect.right())
                break;
            // Text on a plate's own label lines may touch, never cover, so half a unit is let pass.
            const QRectF shared = boxes[first].rect & boxes[second].rect;
            EXPECT_FALSE(shared.width() > 0.5 && shared.height() > 0.5)
                << boxes[first].what << " overlaps " << boxes[second].what;
        }
        EXPECT_TRUE(loom.bounds.contains(boxes[first].rect)) << boxes[first].what;
    }
}

std::vector<QPointF> pointsOn(const LoomWire &wire)
{
    std::vector<QPointF> points;
    for (std::size_t at = 0; at + 3 < wire.path.size(); at += 3) {
        for (int step = 0; step <= 12; ++step) {
            const double t = step / 12.0;
            const double u = 1 - t;
            points.push_back(u * u * u * wire.path[at] + 3 * u * u * t * wire.path[at + 1] +
                             3 * u * t * t * wire.path[at + 2] + t * t * t * wire.path[at + 3]);
        }
    }
    return points;
}

void expectWiresKeepClear(const Network &network, const Loom &loom)
{
    const std::vector<Box> boxes = boxesOf(network, loom);
    for (const LoomWire &wire : loom.wires) {
        const std::vector<QPointF> points = pointsOn(wire);
        for (std::size_t at = 0; at + 1 < points.size(); ++at) {
            const QRectF piece =
                QRectF(points[at], points[at + 1]).normalized().adjusted(-0.01, -0.01, 0.01, 0.01);
            for (const Box &box : boxes) {
                const bool ownEnd = (box.task == wire.from || box.task == wire.to) &&
                                    box.rect == loom.tasks[box.task].body;
                if (!ownEnd) {
                    EXPECT_FALSE(box.rect.adjusted(0.5, 0.5, -0.5, -0.5).intersects(piece))
                        << "wire from " << network.tasks[wire.from].title.toStdString() << " to "
                        << network.tasks[wire.to].title.toStdString() << " crosses " << box.what;
                }
            }
        }
    }
}

void expectWiresRunForward(const Loom &loom)
{
    for (const LoomWire &wire : loom.wires) {
        ASSERT_GE(wire.path.size(), 4U);
        ASSERT_EQ(wire.path.size() % 3, 1U);
        for (std::size_t at = 1; at < wire.path.size(); ++at)
            EXPECT_GE(wire.path[at].x(), wire.path[at - 1].x() - 1e-6);
        const QRectF &from = loom.tasks[wire.from].body;
        const QRectF &to = loom.tasks[wire.to].body;
        EXPECT_NEAR(wire.path.front().x(), from.right(), 1e-6);
        EXPECT_NEAR(wire.path.front().y(), from.center().y(), 1e-6);
        EXPECT_NEAR(wire.path.back().x(), to.left(), 1e-6);
        EXPECT_LT(from.right(), to.left());
    }
}

void expectEveryNeedHasItsCavity(const Network &network, const Loom &loom)
{
    for (const LoomTask &at : loom.tasks) {
        const Task &own = network.tasks[at.task];
        ASSERT_EQ(at.cavities.size(), own.after.size() + own.needs.size());
        for (std::size_t cavity = 0; cavity < at.cavities.size(); ++cavity) {
            const LoomCavity &made = at.cavities[cavity];
            EXPECT_EQ(made.forTask, cavity < own.after.size());
            EXPECT_EQ(made.filled, made.forTask ? network.tasks[own.after[made.index]].done
                                                : own.needs[made.index].met);
            EXPECT_TRUE(at.body.contains(made.box)) << own.title.toStdString();
            EXPECT_FALSE(at.title.box.intersects(made.box.adjusted(0, 1, 0, 0)))
                << own.title.toStdString();
            for (std::size_t other = 0; other < cavity; ++other)
                EXPECT_FALSE(made.box.intersects(at.cavities[other].box));
        }
    }
}

void expectPlateWiresEndInTheirCavity(const Network &network, const Loom &loom)
{
    for (const LoomWire &wire : loom.wires) {
        if (!network.tasks[wire.to].milestone)
            continue;
        const QRectF &cavity = loom.tasks[wire.to].cavities.at(wire.cavity).box;
        EXPECT_NEAR(wire.path.back().y(), cavity.center().y(), 1e-6);
    }
}

void expectSound(const Network &network, const Loom &loom)
{
    expectNothingOverlaps(network, loom);
    expectWiresKeepClear(network, loom);
    expectWiresRunForward(loom);
    expectEveryNeedHasItsCavity(network, loom);
    expectPlateWiresEndInTheirCavity(network, loom);
}

// All pairs joined by wires, directly or not.
std::vector<std::set<std::size_t>> reachedBy(const Network &network, const Loom &loom)
{
    std::vector<std::set<std::size_t>> before(network.tasks.size());
    // Tasks by column: whatever waits stands farther right.
    std::vector<const LoomTask *> order;
    for (const LoomTask &at : loom.tasks)
        order.push_back(&at);
    std::sort(order.begin(), order.end(),
              [](const LoomTask *a, const LoomTask *b) { return a->column < b->column; });
    for (const LoomTask *at : order) {
        for (const LoomWire &wire : loom.wires) {
            if (wire.to != at->task)
                continue;
            before[at->task].insert(wire.from);
            before[at->task].insert(before[wire.from].begin(), before[wire.from].end());
        }
    }
    return before;
}

void expectSame(const Loom &first, const Loom &second)
{
    ASSERT_EQ(first.tasks.size(), second.tasks.size());
    ASSERT_EQ(first.wires.size(), second.wires.size());
    EXPECT_EQ(first.bounds, second.bounds);
    EXPECT_EQ(first.crossings, second.crossings);
    for (std::size_t at = 0; at < first.tasks.size(); ++at)
        EXPECT_EQ(first.tasks[at].body, second.tasks[at].body);
    for (std::size_t at = 0; at < first.wires.size(); ++at)
        EXPECT_EQ(first.wires[at].path, second.wires[at].path);
}

TEST(Loom, IsEmptyForAnEmptyNetwork)
{
    const Loom loom = layOutLoom({}, {}, {});
    EXPECT_TRUE(loom.tasks.empty());
    EXPECT_TRUE(loom.bounds.isNull());
}

TEST(Loom, ShowsASingleTaskWithItsSleeve)
{
    const Network network{{task("weigh", "body")}};
    const Loom loom = layOutLoom(network, {}, {});
    ASSERT_EQ(loom.branches.size(), 1U);
    EXPECT_EQ(loom.branches[0].area, "body");
    EXPECT_LT(loom.branches[0].sleeve.right(), loom.tasks[0].body.left());
    EXPECT_EQ(loom.tasks[0].state, LoomState::CanStart);
    expectSound(network, loom);
}

TEST(Loom, OfTheVanIsSound)
{
    const Network network = vanNetwork();
    const Loom loom = layOutLoom(network, inventedFacts(network), {});
    EXPECT_EQ(loom.tasks.size(), network.tasks.size());
    EXPECT_EQ(loom.branches.size(), 10U);
    expectSound(network, loom);
}

TEST(Loom, OfRandomNetworksIsSound)
{
    for (std::uint32_t seed = 1; seed <= 40; ++seed) {
        const std::size_t tasks = 3 + (seed * 37) % 150;
        const Network network =
            randomNetwork(seed, tasks, 1 + seed % 12, seed % 7, 1 + seed % 4, 2 + seed * 3);
        LoomOptions options;
        options.implied = seed % 3 == 0 ? ImpliedLinks::Faint : ImpliedLinks::Omit;
        SCOPED_TRACE("seed " + std::to_string(seed));
        expectSound(network, layOutLoom(network, inventedFacts(network), {}, options));
    }
}

TEST(Loom, WithAForecastIsSoundByChainAndByDate)
{
    for (std::uint32_t seed = 0; seed <= 30; ++seed) {
        const Network network = seed == 0
                                    ? vanNetwork()
                                    : randomNetwork(seed, 3 + (seed * 41) % 150, 1 + seed % 12,
                                                    seed % 7, 1 + seed % 4, 2 + seed * 3);
        const LoomFacts facts = inventedForecast(network);
        LoomOptions options;
        for (const LoomBy by : {LoomBy::Chain, LoomBy::Date}) {
            options.by = by;
            SCOPED_TRACE("seed " + std::to_string(seed));
            expectSound(network, layOutLoom(network, facts, {}, options));
        }
    }
}

TEST(Loom, IsTheSameEveryTime)
{
    const Network network = randomNetwork(7, 200, 9, 5);
    const LoomFacts facts = inventedFacts(network);
    expectSame(layOutLoom(network, facts, {}), layOutLoom(network, facts, {}));
}

TEST(Loom, CrossesNoMoreWiresThanTheAreasInGivenOrderDo)
{
    LoomOptions asGiven;
    asGiven.keepAreaOrder = true;
    const Network van = vanNetwork();
    EXPECT_LT(layOutLoom(van, {}, {}).crossings, layOutLoom(van, {}, {}, asGiven).crossings);
    for (std::uint32_t seed = 1; seed <= 15; ++seed) {
        const Network network = randomNetwork(seed, 40 + seed * 9, 3 + seed % 9, 3);
        SCOPED_TRACE("seed " + std::to_string(seed));
        EXPECT_LE(layOutLoom(network, {}, {}).crossings,
                  layOutLoom(network, {}, {}, asGiven).crossings);
    }
}

TEST(Loom, CrossesNothingWhereNothingNeedsTo)
{
    // Two chains and a link between neighbours.
    const Network network{{task("a1", "a"), task("a2", "a", {0}), task("b1", "b"),
                           task("b2", "b", {2, 0}), task("a3", "a", {1})}};
    EXPECT_EQ(layOutLoom(network, {}, {}).crossings, 0);
}

TEST(Loom, LaysAChainAlongOneStraightTrunk)
{
    const Network network{{task("a1", "a"), task("a2", "a", {0}), task("a3", "a", {1})}};
    const Loom loom = layOutLoom(network, {}, {});
    ASSERT_EQ(loom.wires.size(), 2U);
    for (const LoomWire &wire : loom.wires) {
        EXPECT_TRUE(wire.alongTrunk);
        EXPECT_EQ(wire.path.size(), 4U);
    }
    EXPECT_EQ(loom.branches[0].runs.size(), 1U);
}

TEST(Loom, ForksABranchWhereWorkGoesOnSideBySide)
{
    const Network network{
        {task("a1", "a"), task("a2", "a", {0}), task("a3", "a", {0}), task("a4", "a", {1, 2})}};
    const Loom loom = layOutLoom(network, {}, {});
    ASSERT_EQ(loom.branches.size(), 1U);
    ASSERT_EQ(loom.branches[0].runs.size(), 2U);
    EXPECT_EQ(loom.branches[0].runs[1].fork.size(), 4U);
    EXPECT_NE(loom.tasks[1].row, loom.tasks[2].row);
}

TEST(Loom, LeavesOutTheWireOfALinkThatALongerChainImplies)
{
    const Network network{{task("a", "x"), task("b", "x", {0}), task("c", "y", {0, 1})}};
    const Loom omitted = layOutLoom(network, {}, {});
    EXPECT_EQ(omitted.impliedOmitted, 1);
    EXPECT_EQ(omitted.wires.size(), 2U);
    EXPECT_EQ(omitted.tasks[2].cavities.size(), 2U);
    LoomOptions faint;
    faint.implied = ImpliedLinks::Faint;
    const Loom all = layOutLoom(network, {}, {}, faint);
    EXPECT_EQ(all.impliedOmitted, 0);
    ASSERT_EQ(all.wires.size(), 3U);
    EXPECT_EQ(std::count_if(all.wires.begin(), all.wires.end(),
                            [](const LoomWire &wire) { return wire.implied; }),
              1);
}

TEST(Loom, WithoutImpliedLinksStillJoinsWhateverWaits)
{
    const Network network = randomNetwork(21, 120, 6, 4, 4, 25);
    LoomOptions every;
    every.implied = ImpliedLinks::Draw;
    const Loom reduced = layOutLoom(network, {}, {});
    const Loom full = layOutLoom(network, {}, {}, every);
    EXPECT_GT(reduced.impliedOmitted, 0);
    EXPECT_EQ(reachedBy(network, reduced), reachedBy(network, full));
}

TEST(Loom, KeepsTheDrivingChainThickAlsoWhereALongerChainImpliesIt)
{
    const Network network{{task("a", "x"), task("b", "x", {0}), task("c", "y", {0, 1})}};
    LoomFacts facts;
    facts.driving = {0, 2};
    const Loom loom = layOutLoom(network, facts, {});
    EXPECT_EQ(loom.wires.size(), 3U);
    for (const LoomWire &wire : loom.wires)
        EXPECT_EQ(wire.driving, wire.from == 0 && wire.to == 2);
    EXPECT_TRUE(loom.tasks[0].onDrivingChain);
    EXPECT_FALSE(loom.tasks[1].onDrivingChain);
}

TEST(Loom, TellsStatesApart)
{
    Network network{{task("done", "a"), task("can", "a", {0}), task("begun", "a", {0}),
                     task("waits", "a", {1}), task("lacks", "a", {0})}};
    network.tasks[0].done = true;
    network.tasks[2].started = true;
    network.tasks[4].needs = {need(NeedKind::Part, false, "coupling blank")};
    const Loom loom = layOutLoom(network, {}, {});
    EXPECT_EQ(loom.tasks[0].state, LoomState::Done);
    EXPECT_EQ(loom.tasks[1].state, LoomState::CanStart);
    EXPECT_EQ(loom.tasks[2].state, LoomState::UnderWay);
    EXPECT_EQ(loom.tasks[3].state, LoomState::Waits);
    EXPECT_EQ(loom.tasks[4].state, LoomState::Waits);
    EXPECT_EQ(loomWaits(network, 3), QStringList{"task can"});
    EXPECT_EQ(loomWaits(network, 4), QStringList{"part coupling blank"});
    EXPECT_TRUE(loomWaits(network, 1).isEmpty());
}

TEST(Loom, HangsWhatIsMissingFromTheFirstEmptyLeafCavity)
{
    Network network{{task("a", "x"), task("b", "x", {0})}};
    network.tasks[1].needs = {need(NeedKind::Tool, true, "crimper"),
                              need(NeedKind::Part, false, "blank", "no offer"),
                              need(NeedKind::Letter, false, "approval")};
    const Loom loom = layOutLoom(network, {}, {});
    const LoomTask &at = loom.tasks[1];
    EXPECT_EQ(at.missing.lines.value(0), QStringLiteral("part: blank") + QChar(QChar::Nbsp) + "+1");
    EXPECT_EQ(at.missing.lines.value(1), "no offer");
    EXPECT_FALSE(at.missingIsQuestion);
    EXPECT_NEAR(at.missingFrom.x(), at.cavities[2].box.center().x(), 1e-9);
    EXPECT_TRUE(loom.tasks[0].missing.lines.isEmpty());
}

TEST(Loom, AsksWhereAFigureIsNotKnown)
{
    Network network{{task("a", "x")}};
    network.tasks[0].needs = {need(NeedKind::Figure, false, "heater flow")};
    const Loom loom = layOutLoom(network, {}, {});
    EXPECT_EQ(loom.tasks[0].missing.lines.value(0), "? heater flow");
    EXPECT_TRUE(loom.tasks[0].missingIsQuestion);
}

TEST(Loom, SaysNothingIsMissingOnceDone)
{
    Network network{{task("a", "x")}};
    network.tasks[0].done = true;
    network.tasks[0].needs = {need(NeedKind::Part, false, "blank")};
    EXPECT_TRUE(layOutLoom(network, {}, {}).tasks[0].missing.lines.isEmpty());
}

TEST(Loom, ElidesWhatDoesNotFit)
{
    Network network{{task("a", "an area with a name much longer than any sleeve may become")}};
    network.tasks[0].title =
        "Donaudampfschifffahrtsgesellschaft of unusual and tiresome length, again";
    network.tasks[0].needs = {need(
        NeedKind::Part, false, "a thing with a very long name that nobody can remember at all")};
    const LoomMetrics metrics;
    const Loom loom = layOutLoom(network, {}, metrics);
    EXPECT_TRUE(loom.tasks[0].title.cut);
    EXPECT_LE(loom.tasks[0].title.lines.size(), 2);
    EXPECT_TRUE(loom.tasks[0].title.lines.back().endsWith(QChar(0x2026)));
    EXPECT_LE(loom.tasks[0].title.box.width(), loom.tasks[0].body.width());
    EXPECT_LE(loom.tasks[0].body.width(), metrics.housingMaxWidth);
    EXPECT_TRUE(loom.tasks[0].missing.cut);
    EXPECT_LE(loom.branches[0].sleeve.width(), metrics.sleeveMaxWidth + 1);
    expectSound(network, loom);
}

TEST(Loom, FindsRoomForThirtyCavities)
{
    Network network{{task("a", "x"), task("b", "x", {0})}};
    for (int at = 0; at < 30; ++at)
        network.tasks[1].needs.push_back(need(NeedKind::Part, at % 2 == 0, "bolt"));
    expectSound(network, layOutLoom(network, {}, {}));
}

TEST(Loom, PutsAMilestoneWithoutAnAreaOfItsOwnOnTheBranchMostOfItsWiresComeFrom)
{
    Network network{{task("a1", "a"), task("b1", "b"), task("b2", "b"), task("m", "", {0, 1, 2})}};
    network.tasks[3].milestone = true;
    const Loom loom = layOutLoom(network, {}, {});
    ASSERT_EQ(loom.branches.size(), 2U);
    EXPECT_EQ(loom.branches[loom.tasks[3].branch].area, "b");
    EXPECT_GE(loom.tasks[3].body.height(), 3 * LoomMetrics().plateCavityPitch);
    expectSound(network, loom);
}

TEST(Loom, WritesTheForecastBesideAPlateAndElseItsDate)
{
    Network network{{task("a", "x"), task("m", "x", {0}), task("n", "x", {1})}};
    network.tasks[1].milestone = true;
    network.tasks[2].milestone = true;
    network.tasks[2].date = QDate(2026, 6, 9);
    LoomFacts facts;
    facts.dates = {"", "50 %: 14 May\n80 %: 9 Jun", ""};
    const Loom loom = layOutLoom(network, facts, {});
    EXPECT_EQ(loom.tasks[1].date.lines, (QStringList{"50 %: 14 May", "80 %: 9 Jun"}));
    EXPECT_EQ(loom.tasks[2].date.lines, QStringList{"by 2026-06-09"});
    expectSound(network, loom);
}

TEST(Loom, MarksHighVoltageOnlyWhereBothEndsAre)
{
    Network network{{task("a", "x"), task("b", "x", {0}), task("c", "x", {1})}};
    network.tasks[1].highVoltage = true;
    network.tasks[2].highVoltage = true;
    const Loom loom = layOutLoom(network, {}, {});
    ASSERT_EQ(loom.wires.size(), 2U);
    EXPECT_FALSE(loom.wires[0].highVoltage);
    EXPECT_TRUE(loom.wires[1].highVoltage);
    EXPECT_TRUE(loom.tasks[0].highVoltageMark.isEmpty());
    EXPECT_FALSE(loom.tasks[1].highVoltageMark.isEmpty());
    EXPECT_TRUE(loom.branches[0].highVoltage);
    EXPECT_TRUE(loom.branches[0].name.lines.value(0).endsWith("HV"));
}

TEST(Loom, KeepsBranchesWhereTheyWereWhenAskedTo)
{
    Network network = vanNetwork();
    const Loom before = layOutLoom(network, {}, {});
    network.tasks[0].done = !network.tasks[0].done;
    network.tasks.push_back(task("zz99", "spare wheel", {0}));
    LoomOptions options;
    options.like = &before;
    const Loom after = layOutLoom(network, {}, {}, options);
    ASSERT_EQ(after.branches.size(), before.branches.size() + 1);
    for (std::size_t at = 0; at < before.branches.size(); ++at)
        EXPECT_EQ(after.branches[at].area, before.branches[at].area);
    EXPECT_EQ(after.branches.back().area, "spare wheel");
    expectSound(network, after);
}

TEST(Loom, DrawsALoopWithoutTheLinksThatCloseIt)
{
    const Network network{{task("a", "x", {2}), task("b", "x", {0}), task("c", "x", {1})}};
    const Loom loom = layOutLoom(network, {}, {});
    EXPECT_EQ(loom.tasks.size(), 3U);
    EXPECT_EQ(loom.wires.size(), 2U);
    expectWiresRunForward(loom);
}

TEST(Loom, GivesALinkNamedTwiceOneWireAndBothCavities)
{
    const Network network{{task("a", "x"), task("b", "x", {0, 0})}};
    const Loom loom = layOutLoom(network, {}, {});
    EXPECT_EQ(loom.wires.size(), 1U);
    EXPECT_EQ(loom.tasks[1].cavities.size(), 2U);
}

TEST(Loom, TakesItsWidthsFromTheFont)
{
    const Network network{{task("a", "x")}};
    LoomMetrics wide;
    wide.textWidth = [](LoomText, const QString &text) {
        return 90.0 * static_cast<double>(text.size());
    };
    EXPECT_GT(layOutLoom(network, {}, wide).tasks[0].body.width(),
              layOutLoom(network, {}, {}).tasks[0].body.width());
}

// The goal is 100 ms for 2,000 tasks in a release build on a garage laptop; here the build may be
// unoptimised, sanitized and share its processor, so only the order of magnitude is held.
TEST(Loom, LaysOutTwoThousandTasksQuickly)
{
    const Network network = randomNetwork(3, 2000, 12, 8);
    const LoomFacts facts = inventedFacts(network);
    const auto start = std::chrono::steady_clock::now();
    const Loom loom = layOutLoom(network, facts, {});
    const std::chrono::duration<double> took = std::chrono::steady_clock::now() - start;
    EXPECT_LT(took.count(), 3.0);
    EXPECT_EQ(loom.tasks.size(), 2000U);
    expectNothingOverlaps(network, loom);
    expectWiresRunForward(loom);
    expectEveryNeedHasItsCavity(network, loom);
}

} // namespace

} // namespace ohmwright::plan
