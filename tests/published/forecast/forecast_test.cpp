// SPDX-License-Identifier: GPL-3.0-or-later
// The forecast beside what scipy and networkx make of the same questions (forecast_check.py), and
// beside closed forms. Means lie within four standard errors.
#include "core/forecast/forecast.h"
#include "core/forecast/order_by.h"
#include "tests/support/chance.h"

#include <QFile>
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <QProcess>
#include <QTemporaryDir>

#include <gtest/gtest.h>

#include <cmath>

namespace ohmwright::forecast {
namespace {

constexpr int kSamples = 20'000;

QJsonObject answersTo(const QJsonObject &questions)
{
    QTemporaryDir folder;
    QFile asked(folder.filePath(QStringLiteral("questions.json")));
    EXPECT_TRUE(asked.open(QIODevice::WriteOnly));
    asked.write(QJsonDocument(questions).toJson());
    asked.close();
    QProcess python;
    python.start(
        QStringLiteral("/usr/bin/python3"),
        {QStringLiteral(OHMWRIGHT_SOURCE_DIR "/tests/published/forecast/forecast_check.py"),
         asked.fileName(), folder.filePath(QStringLiteral("answers.json"))});
    EXPECT_TRUE(python.waitForFinished(300'000));
    EXPECT_EQ(python.exitCode(), 0) << python.readAllStandardError().toStdString();
    QFile answers(folder.filePath(QStringLiteral("answers.json")));
    EXPECT_TRUE(answers.open(QIODevice::ReadOnly));
    return QJsonDocument::fromJson(answers.readAll()).object();
}

QJsonArray array(const ThreePoint &e)
{
    return {e.least, e.likely, e.most};
}

// A day that is one slot, hands without end: waiting alone.
plan::Timeline everyDay()
{
    plan::Timeline timeline;
    for (int day = 0; day < 7; ++day)
        timeline.line.push_back({day, 0, false});
    timeline.profiles = {{1000}};
    return timeline;
}

Activity wait(const QString &key, ThreePoint days, std::vector<std::size_t> after = {})
{
    Activity a;
    a.key = a.name = key;
    a.wait = days;
    a.after = std::move(after);
    return a;
}

WorkPlan planOf(std::vector<Activity> activities)
{
    WorkPlan plan;
    plan.today = QDate(2026, 6, 15);
    plan.timeline = everyDay();
    plan.resources = {QStringLiteral("hands")};
    plan.held = {0};
    plan.activities = std::move(activities);
    for (std::size_t i = 0; i < plan.activities.size(); ++i)
        if (plan.activities[i].kind == ActivityKind::Milestone)
            plan.milestones.push_back(i);
    return plan;
}

struct MeanAndError
{
    double mean = 0, error = 0;
};

MeanAndError meanOf(const std::vector<int> &values)
{
    double sum = 0;
    double squares = 0;
    for (const int value : values) {
        sum += value;
        squares += static_cast<double>(value) * value;
    }
    const auto n = static_cast<double>(values.size());
    const double mean = sum / n;
    return {mean, std::sqrt((squares / n - mean * mean) / n)};
}

const std::vector<ThreePoint> kEstimates{
    {100, 140, 300}, {200, 480, 500}, {0, 100, 1000}, {1000, 1000, 4000}, {50, 400, 400}};

TEST(PublishedForecast, quantilesAreThoseOfTheBetaDistribution)
{
    QJsonArray asked;
    const QJsonArray at{0.01, 0.05, 0.2, 0.5, 0.8, 0.95, 0.99};
    for (const ThreePoint &e : kEstimates)
        asked << QJsonObject{{"estimate", array(e)}, {"at", at}};
    const QJsonArray told =
        answersTo({{"quantiles", asked}, {"maxima", QJsonArray()}, {"networks", QJsonArray()}})
            .value("quantiles")
            .toArray();
    ASSERT_EQ(told.size(), static_cast<qsizetype>(kEstimates.size()));
    for (qsizetype i = 0; i < told.size(); ++i) {
        const ThreePoint &e = kEstimates[static_cast<std::size_t>(i)];
        const Quantiles quantiles(e);
        for (qsizetype q = 0; q < at.size(); ++q)
            EXPECT_NEAR(quantiles.at(at[q].toDouble()), told[i].toArray()[q].toDouble(),
                        0.001 * (e.most - e.least));
    }
}

// PERT: the mean of a chain is the sum of (least + 4 likely + most) / 6, its variance the sum of
// the variances (Malcolm et al. 1959).
TEST(PublishedForecast, aChainTakesTheSumOfTheMeans)
{
    std::vector<Activity> chain;
    double mean = 0;
    for (const ThreePoint &e : kEstimates) {
        chain.push_back(wait(QStringLiteral("wait-%1").arg(chain.size()), e,
                             chain.empty() ? std::vector<std::size_t>{}
                                           : std::vector<std::size_t>{chain.size() - 1}));
        mean += e.mean();
    }
    const WorkPlan plan = planOf(std::move(chain));
    Settings settings;
    settings.samples = kSamples;
    const Samples samples = Simulation(plan, settings).sample({kEstimates.size() - 1}, {});
    const MeanAndError found = meanOf(samples.ready[0]);
    EXPECT_NEAR(found.mean, mean, 4 * found.error);
}

TEST(PublishedForecast, theLaterOfTwoIsThatOfTheIntegral)
{
    const std::vector<std::pair<ThreePoint, ThreePoint>> pairs{{{100, 200, 600}, {150, 250, 450}},
                                                               {{0, 300, 1000}, {0, 300, 1000}},
                                                               {{500, 600, 700}, {100, 300, 1500}}};
    QJsonArray asked;
    for (const auto &[a, b] : pairs)
        asked << QJsonObject{{"estimates", QJsonArray{array(a), array(b)}},
                             {"quantiles", QJsonArray{0.5, 0.8, 0.95}}};
    const QJsonArray told =
        answersTo({{"quantiles", QJsonArray()}, {"maxima", asked}, {"networks", QJsonArray()}})
            .value("maxima")
            .toArray();
    ASSERT_EQ(told.size(), static_cast<qsizetype>(pairs.size()));
    for (std::size_t i = 0; i < pairs.size(); ++i) {
        const QJsonObject expected = told[static_cast<qsizetype>(i)].toObject();
        Activity end = wait(QStringLiteral("end"), {}, {0, 1});
        end.kind = ActivityKind::Milestone;
        const WorkPlan plan = planOf({wait(QStringLiteral("a"), pairs[i].first),
                                      wait(QStringLiteral("b"), pairs[i].second), end});
        Settings settings;
        settings.samples = kSamples;
        const Simulation simulation(plan, settings);
        Samples samples = simulation.sample({2}, {});
        const MeanAndError found = meanOf(samples.ready[0]);
        EXPECT_NEAR(found.error * std::sqrt(kSamples), expected["deviation"].toDouble(),
                    0.03 * expected["deviation"].toDouble());
        EXPECT_NEAR(found.mean, expected["mean"].toDouble(), 4 * found.error);
        const Forecast forecast = simulation.run();
        for (std::size_t q = 0; q < 3; ++q) {
            // asymptotic error of a quantile, with the density taken from the deviation
            const double error = 4 * 2.5 * found.error + 0.5;
            EXPECT_NEAR(forecast.activities[2].ready[q],
                        expected["quantiles"].toArray()[static_cast<qsizetype>(q)].toDouble(),
                        error);
        }
        const double first = expected["first"].toDouble();
        EXPECT_NEAR(forecast.activities[0].driving, first,
                    4 * std::sqrt(first * (1 - first) / forecast.traced) + 0.003); // whole days tie
    }
}

// Of two parallel exponentials with rates l1 and l2 the first is the later one, and so drives the
// end, with chance l2 / (l1 + l2): textbook, any on stochastic processes.
TEST(PublishedForecast, theLaterOfTwoExponentialsDrivesTheEnd)
{
    plan::Workload load;
    load.timeline = everyDay();
    load.activities.resize(3);
    load.activities[2].after = {0, 1};
    plan::Levelling levelling(load);
    const double first = 1 / 9000.0; // rates a day
    const double second = 1 / 5000.0;
    int driven = 0;
    for (int sample = 0; sample < kSamples; ++sample) {
        const auto number = static_cast<std::uint64_t>(sample);
        const auto draw = [&](double rate, std::uint64_t thing) {
            return static_cast<int>(std::min(90'000.0, -std::log(luck(7, number, thing)) / rate));
        };
        const std::vector<int> waits{draw(first, 1), draw(second, 2), 0};
        const plan::Levelled &plan = levelling.pass({{}, waits, {}});
        driven += int{plan.driver[2] == plan::Driver{plan::DrivenBy::Link, 0}};
    }
    const double chance = second / (first + second);
    EXPECT_NEAR(static_cast<double>(driven) / kSamples, chance,
                4 * std::sqrt(chance * (1 - chance) / kSamples));
}

// A test that fails with chance p each time is repeated p / (1 - p) times on average: the mean of
// the geometric distribution.
TEST(PublishedForecast, repetitionsAreGeometric)
{
    Activity test = wait(QStringLiteral("test"), {10, 10, 10});
    Activity again = wait(QStringLiteral("again"), {100, 100, 100}, {0});
    again.kind = ActivityKind::Redo;
    again.risk = 0;
    WorkPlan plan = planOf({test, again});
    plan.risks = {{0, 0.3}};
    Settings settings;
    settings.samples = kSamples;
    const MeanAndError found = meanOf(Simulation(plan, settings).sample({1}, {}).ready[0]);
    EXPECT_NEAR(found.mean, 10 + 100 * 0.3 / 0.7, 4 * found.error);
}

// With hands without end and no spread, the float is that of the critical path method, and a
// delivery may be ordered as late as its float says.
TEST(PublishedForecast, floatAndOrderByAreThoseOfNetworkx)
{
    constexpr int kNetworks = 200;
    std::vector<WorkPlan> plans;
    QJsonArray asked;
    Chance chance(11);
    for (int n = 0; n < kNetworks; ++n) {
        const int count = chance.between(3, 25);
        std::vector<Activity> activities;
        QJsonArray days;
        QJsonArray after;
        for (int i = 0; i < count; ++i) {
            const int length = i + 1 == count ? 0 : chance.between(0, 40);
            Activity a = wait(QStringLiteral("a-%1").arg(i), {length, length, length});
            QJsonArray before;
            for (int b = 0; b < i; ++b)
                if (i + 1 == count || chance.oneIn(4)) { // the last waits on all
                    a.after.push_back(static_cast<std::size_t>(b));
                    before << b;
                }
            if (a.after.empty()) {
                a.kind = ActivityKind::Delivery;
                a.toOrder = true;
            }
            if (i + 1 == count)
                a.kind = ActivityKind::Milestone;
            days << length;
            after << before;
            activities.push_back(std::move(a));
        }
        plans.push_back(planOf(std::move(activities)));
        asked << QJsonObject{{"days", days}, {"after", after}};
    }
    const QJsonArray told =
        answersTo({{"quantiles", QJsonArray()}, {"maxima", QJsonArray()}, {"networks", asked}})
            .value("networks")
            .toArray();
    ASSERT_EQ(told.size(), kNetworks);
    Settings settings;
    settings.samples = 1;
    settings.orderPasses = 0;
    for (std::size_t n = 0; n < plans.size(); ++n) {
        const QJsonObject expected = told[static_cast<qsizetype>(n)].toObject();
        const QJsonArray floats = expected["float"].toArray();
        const Simulation simulation(plans[n], settings);
        const Forecast forecast = simulation.run();
        EXPECT_EQ(forecast.activities.back().plannedFinish, expected["length"].toInt());
        for (std::size_t i = 0; i < forecast.activities.size(); ++i)
            EXPECT_EQ(forecast.activities[i].floatDays, floats[static_cast<qsizetype>(i)].toInt())
                << "network " << n << ", activity " << i;
        for (const OrderBy &order : orderByDays(plans[n], simulation, 80))
            EXPECT_EQ(order.latestDay, floats[static_cast<qsizetype>(order.activity)].toInt());
    }
}

} // namespace
} // namespace ohmwright::forecast
