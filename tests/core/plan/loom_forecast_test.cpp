// SPDX-License-Identifier: GPL-3.0-or-later
// What the loom shows of a forecast: the strip below a housing, and the layout by date. That
// nothing overlaps is checked with all else that holds for every loom, in loom_test.cpp.
#include "core/plan/loom.h"
#include "core/plan/loom_facts.h"
#include "tests/core/plan/loom_networks.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <string>

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

LoomDays days(int start, int finish, std::array<std::optional<int>, 3> ready, int slack)
{
    LoomDays made;
    made.start = start;
    made.finish = finish;
    made.ready = ready;
    made.floatDays = slack;
    return made;
}

// Done, then two in a row on the same day, then one three weeks later; and one apart.
Network smallNetwork()
{
    Network network{{task("a1", "a"), task("a2", "a", {0}), task("a3", "a", {1}),
                     task("a4", "a", {2}), task("b1", "b")}};
    network.tasks[0].done = true;
    return network;
}

LoomFacts smallFacts()
{
    LoomFacts facts;
    facts.forecast = LoomForecast();
    facts.forecast->today = QDate(2026, 11, 27); // a Friday
    facts.forecast->tasks = {{},
                             days(0, 0, {0, 1, 5}, 0),
                             days(0, 1, {1, 3, 9}, 0),
                             days(24, 26, {26, 40, 61}, 0),
                             days(1, 2, {2, 2, 2}, 12)};
    return facts;
}

LoomOptions byDate()
{
    LoomOptions options;
    options.by = LoomBy::Date;
    return options;
}

double xOf(const Loom &loom, LoomRule::Kind kind)
{
    const auto at = std::find_if(loom.rules.begin(), loom.rules.end(),
                                 [&](const LoomRule &rule) { return rule.kind == kind; });
    return at == loom.rules.end() ? -1 : at->x;
}

TEST(LoomForecast, TellsTheDayBelowTheHousingAndTheFloat)
{
    const Loom loom = layOutLoom(smallNetwork(), smallFacts(), {});
    EXPECT_TRUE(loom.tasks[0].ready.lines.isEmpty()) << "what is done has no day to come";
    EXPECT_EQ(loom.tasks[1].ready.lines, QStringList(QStringLiteral("80\u00A0%: 28 Nov")));
    EXPECT_EQ(loom.tasks[3].ready.lines, QStringList(QStringLiteral("80\u00A0%: 6 Jan")));
    EXPECT_TRUE(loom.tasks[1].slack.lines.isEmpty());
    EXPECT_EQ(loom.tasks[4].slack.lines, QStringList(QStringLiteral("12\u00A0d")));
    EXPECT_GE(loom.tasks[1].ready.box.top(), loom.tasks[1].body.bottom());
    EXPECT_EQ(loom.today, QDate(2026, 11, 27));
}

TEST(LoomForecast, WhiskersCompareAndMarkEightyPercent)
{
    const Loom loom = layOutLoom(smallNetwork(), smallFacts(), {});
    const double perDay = loom.whiskerPerDay;
    EXPECT_GT(perDay, 0);
    EXPECT_NEAR(loom.tasks[2].whisker.width(), 8 * perDay, 1e-9);
    EXPECT_NEAR(loom.tasks[3].whisker.width(), 35 * perDay, 1e-9);
    EXPECT_NEAR(loom.tasks[3].whiskerMark, loom.tasks[3].whisker.left() + 14 * perDay, 1e-9);
    EXPECT_TRUE(loom.tasks[4].whisker.isNull()) << "no spread, no whisker";
    EXPECT_LE(loom.tasks[3].whisker.right(), loom.tasks[3].body.right());
}

TEST(LoomForecast, SaysSoWhenADayNeverComes)
{
    LoomFacts facts = smallFacts();
    facts.forecast->tasks[3].ready = {40, std::nullopt, std::nullopt};
    const Loom loom = layOutLoom(smallNetwork(), facts, {});
    EXPECT_EQ(loom.tasks[3].ready.lines, QStringList(QStringLiteral("80\u00A0%: not in reach")));
    EXPECT_TRUE(loom.tasks[3].whisker.isNull());
}

TEST(LoomForecast, SharesOfDrivingComeFromTheForecastUnlessGiven)
{
    LoomFacts facts = smallFacts();
    facts.forecast->tasks[2].driving = 0.9;
    facts.forecast->tasks[3].driving = 0.4;
    const auto share = [&] {
        const Loom loom = layOutLoom(smallNetwork(), facts, {});
        const auto wire = std::find_if(loom.wires.begin(), loom.wires.end(),
                                       [](const LoomWire &at) { return at.to == 3; });
        return wire->share;
    };
    EXPECT_DOUBLE_EQ(share(), 0.4);
    facts.drives = {0, 0, 0.2, 0.3, 0};
    EXPECT_DOUBLE_EQ(share(), 0.2);
}

TEST(LoomForecast, APlateTellsItsThreeDaysBesideItsOwnDate)
{
    Network network{{task("a1", "a"), task("goal", "a", {0})}};
    network.tasks[1].milestone = true;
    network.tasks[1].date = QDate(2026, 12, 24);
    LoomFacts facts = loomFactsOf(network, HoldUps());
    facts.forecast = LoomForecast();
    facts.forecast->today = QDate(2026, 11, 27);
    facts.forecast->tasks = {days(0, 2, {2, 4, 8}, 0), days(2, 2, {2, 4, 8}, 0)};
    const Loom loom = layOutLoom(network, facts, {});
    EXPECT_EQ(
        loom.tasks[1].date.lines,
        QStringList({"by 24 Dec 2026", QStringLiteral("50\u00A0%: 29 Nov"),
                     QStringLiteral("80\u00A0%: 1 Dec"), QStringLiteral("95\u00A0%: 5 Dec")}));
}

TEST(LoomForecast, WhatIsMissingSaysWhenItComes)
{
    Network network = smallNetwork();
    LeafNeed blank;
    blank.key = "n1";
    blank.subject = "part:blank";
    blank.subjectName = "blank";
    blank.reason = "wanted";
    network.tasks[3].needs = {blank};
    LoomFacts facts = smallFacts();
    facts.forecast->arrivals = {{"part:blank", 17, {}, false}};
    const Loom loom = layOutLoom(network, facts, {});
    EXPECT_EQ(loom.tasks[3].missing.lines,
              QStringList({"part: blank", QStringLiteral("80\u00A0%: 14 Dec")}));
    facts.forecast->arrivals = {{"part:blank", 17, 4, false}};
    EXPECT_EQ(layOutLoom(network, facts, {}).tasks[3].missing.lines,
              QStringList({"part: blank", "order by 1 Dec"}))
        << "still to order";
    ASSERT_GE(loom.tasks[3].missingLead.size(), 2U);
    EXPECT_EQ(loom.tasks[3].missingLead.front(), loom.tasks[3].missingFrom);
}

TEST(LoomForecast, ByDateTasksFollowTheirDaysAndTodayPartsDoneFromToCome)
{
    const Loom loom = layOutLoom(smallNetwork(), smallFacts(), {}, byDate());
    const double today = xOf(loom, LoomRule::Kind::Today);
    EXPECT_LT(loom.tasks[0].body.right(), today);
    for (const std::size_t to : {1U, 2U, 3U, 4U})
        EXPECT_GT(loom.tasks[to].body.left(), today);
    EXPECT_LT(loom.tasks[1].body.right(), loom.tasks[2].body.left()) << "same day, one waits";
    EXPECT_LT(loom.tasks[2].body.right(), loom.tasks[3].body.left());
    EXPECT_FALSE(loom.axisBand.isEmpty());
    EXPECT_LE(loom.axisBand.bottom(), loom.tasks[0].body.top());
    EXPECT_TRUE(loom.bounds.contains(loom.axisBand));
}

// The axis tells the plan: so do the words, and no whisker of another scale stands on it.
TEST(LoomForecast, ByDateBothThePlanAndTheEightyPercentAreWritten)
{
    const LoomFacts facts = smallFacts();
    const Loom loom = layOutLoom(smallNetwork(), facts, {}, byDate());
    const LoomForecast &forecast = *facts.forecast;
    for (const std::size_t at : {1U, 2U, 3U, 4U}) {
        const LoomTask &own = loom.tasks[at];
        const QDate plan = forecast.today.addDays(*forecast.of(at).finish);
        const QDate ready = forecast.today.addDays(*forecast.of(at).ready[1]);
        EXPECT_EQ(own.plan.lines, QStringList("plan " + loomDay(plan, forecast.today)));
        EXPECT_EQ(own.ready.lines,
                  QStringList(QStringLiteral("80\u00A0%: ") + loomDay(ready, forecast.today)));
        EXPECT_FALSE(own.plan.cut || own.ready.cut);
        EXPECT_LE(own.plan.box.bottom(), own.ready.box.top() + 1e-9);
        EXPECT_TRUE(own.whisker.isNull());
        EXPECT_LE(own.ready.box.right(), own.body.right() + 1e-9);
    }
    EXPECT_TRUE(loom.tasks[0].plan.lines.isEmpty()) << "done";
}

TEST(LoomForecast, ADayWithinTenMonthsNeedsNoYear)
{
    const QDate today(2026, 11, 27);
    EXPECT_EQ(loomDay({2027, 2, 6}, today), "6 Feb");
    EXPECT_EQ(loomDay({2027, 9, 26}, today), "26 Sep");
    EXPECT_EQ(loomDay({2027, 9, 27}, today), "27 Sep 2027");
    EXPECT_EQ(loomDay({2026, 11, 3}, today), "3 Nov");
    EXPECT_EQ(loomDay({2025, 11, 3}, today), "3 Nov 2025");
}

TEST(LoomForecast, EveryWeekBetweenIsRuledOnItsMonday)
{
    const Loom loom = layOutLoom(smallNetwork(), smallFacts(), {}, byDate());
    // 27 Nov and day 24, 21 Dec: Mondays 30 Nov, 7, 14 and 21 Dec; 7 Dec is the month's first.
    std::vector<QDate> mondays;
    double x = xOf(loom, LoomRule::Kind::Today);
    for (const LoomRule &rule : loom.rules) {
        if (rule.kind == LoomRule::Kind::Today)
            continue;
        EXPECT_EQ(rule.day.dayOfWeek(), 1);
        EXPECT_EQ(rule.kind == LoomRule::Kind::Month, rule.day.day() <= 7);
        EXPECT_GT(rule.x, x);
        x = rule.x;
        mondays.push_back(rule.day);
    }
    EXPECT_EQ(mondays, (std::vector<QDate>{QDate(2026, 11, 30), QDate(2026, 12, 7),
                                           QDate(2026, 12, 14), QDate(2026, 12, 21)}));
    EXPECT_LT(x, loom.tasks[3].body.left());
}

TEST(LoomForecast, WhatHasNoDayStandsBehindALineThatSaysSo)
{
    LoomFacts facts = smallFacts();
    facts.forecast->tasks[4] = {};
    const Loom loom = layOutLoom(smallNetwork(), facts, {}, byDate());
    const double line = xOf(loom, LoomRule::Kind::NoDate);
    EXPECT_GT(line, loom.tasks[3].body.right());
    EXPECT_GT(loom.tasks[4].body.left(), line);
}

TEST(LoomForecast, WhatIsSetAsideHoldsNothingBackByDate)
{
    Network network = smallNetwork();
    network.tasks[1].aside = network.tasks[1].done = true;
    const Loom loom = layOutLoom(network, smallFacts(), {}, byDate());
    EXPECT_EQ(loom.tasks[1].state, LoomState::SetAside);
    EXPECT_EQ(loom.tasks[1].missing.lines, QStringList("set aside"));
    EXPECT_LT(loom.tasks[2].body.right(), loom.tasks[1].body.left());
    EXPECT_TRUE(std::none_of(loom.wires.begin(), loom.wires.end(),
                             [](const LoomWire &wire) { return wire.from == 1; }));
    EXPECT_EQ(loom.impliedOmitted, 0);
}

TEST(LoomForecast, ByDateWithoutAForecastIsByChain)
{
    const Loom dated = layOutLoom(smallNetwork(), {}, {}, byDate());
    const Loom chained = layOutLoom(smallNetwork(), {}, {});
    EXPECT_TRUE(dated.rules.empty());
    for (std::size_t at = 0; at < dated.tasks.size(); ++at)
        EXPECT_EQ(dated.tasks[at].body, chained.tasks[at].body);
}

TEST(LoomForecast, ByDateOfAllDoneEndsWithToday)
{
    Network network = smallNetwork();
    for (Task &at : network.tasks)
        at.done = true;
    const Loom loom = layOutLoom(network, smallFacts(), {}, byDate());
    ASSERT_EQ(loom.rules.size(), 1U);
    for (const LoomTask &at : loom.tasks)
        EXPECT_LT(at.body.right(), loom.rules[0].x);
}

TEST(LoomForecast, ColumnsOfRandomNetworksFollowTheirDays)
{
    for (std::uint32_t seed = 1; seed <= 25; ++seed) {
        const Network network =
            randomNetwork(seed, 20 + seed * 7, 1 + seed % 9, seed % 5, 1 + seed % 3, 8 + seed);
        const LoomFacts facts = inventedForecast(network);
        const Loom loom = layOutLoom(network, facts, {}, byDate());
        SCOPED_TRACE("seed " + std::to_string(seed));
        const double today = xOf(loom, LoomRule::Kind::Today);
        for (const LoomTask &left : loom.tasks) {
            EXPECT_EQ(network.tasks[left.task].done, left.body.left() < today);
            for (const LoomTask &right : loom.tasks) {
                if (left.column < right.column && !network.tasks[left.task].done) {
                    EXPECT_LE(*left.days.start, *right.days.start);
                }
            }
        }
    }
}

TEST(LoomForecast, FollowsItsTasksByKeyIntoAnotherNetwork)
{
    const Network made = smallNetwork();
    Network now = made;
    now.tasks.insert(now.tasks.begin() + 1, task("a15", "a", {0}));
    const LoomForecast moved = forNetwork(*smallFacts().forecast, made, now);
    ASSERT_EQ(moved.tasks.size(), now.tasks.size());
    EXPECT_FALSE(moved.of(1).known());
    EXPECT_EQ(moved.of(2), smallFacts().forecast->of(1));
    EXPECT_EQ(moved.of(5), smallFacts().forecast->of(4));
}

} // namespace

} // namespace ohmwright::plan
