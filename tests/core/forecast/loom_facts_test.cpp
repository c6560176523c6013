// SPDX-License-Identifier: GPL-3.0-or-later
// What the loom is told of the forecast of a book that was planned by hand (six_tasks.h).
#include "core/forecast/loom_facts.h"
#include "core/plan/plan_view.h"
#include "tests/core/forecast/six_tasks.h"

namespace ohmwright::forecast {
namespace {

TEST(LoomFactsOfAForecast, TellEachTaskItsDaysAndEachDeliveryItsDay)
{
    SixTasks six;
    const Records &records = six.book.records();
    const plan::Network network = plan::networkOf(records, kToday);
    const WorkPlan plan = workPlanOf(records, kToday);
    Settings settings;
    settings.samples = 400;
    const Forecast forecast = forecastOf(plan, settings);
    const plan::LoomForecast told = loomForecastOf(plan, forecast, network);
    ASSERT_EQ(told.tasks.size(), network.tasks.size());
    EXPECT_EQ(told.today, kToday);
    const auto of = [&](const char *key) {
        return told.of(network.find(QLatin1String(key)).value());
    };
    EXPECT_EQ(of("strip").start, 1); // as planned with pencil and paper
    EXPECT_EQ(of("strip").finish, 3);
    EXPECT_EQ(of("lift").start, 5);
    EXPECT_EQ(of("rolling").finish, 15);
    EXPECT_TRUE(of("rolling").ready[0] && of("rolling").ready[2]);
    EXPECT_LE(*of("rolling").ready[0], *of("rolling").ready[1]);
    EXPECT_LE(*of("rolling").ready[1], *of("rolling").ready[2]);
    EXPECT_GT(of("fit").driving, 0);
    // The need of the task that fits it finds the delivery.
    const plan::Task &fit = network.tasks[network.find(QStringLiteral("fit")).value()];
    ASSERT_EQ(fit.needs.size(), 1U);
    EXPECT_EQ(told.arrivalOf(fit.needs[0]),
              QStringLiteral("80\u00A0%: ") + plan::loomDay(kToday.addDays(14), kToday));
    // With the days to order by, the chart and the list tell the same one.
    const std::vector<OrderBy> orders = orderByDays(plan, Simulation(plan, settings), 80);
    ASSERT_EQ(orders.size(), 1U);
    EXPECT_EQ(loomForecastOf(plan, forecast, network, orders).arrivalOf(fit.needs[0]),
              QStringLiteral("order by ") +
                  plan::loomDay(kToday.addDays(orders[0].latestDay), kToday));
}

TEST(LoomFactsOfAForecast, AreEmptyForOneThatWasCancelled)
{
    SixTasks six;
    const WorkPlan plan = workPlanOf(six.book.records(), kToday);
    Forecast cancelled;
    cancelled.cancelled = true;
    const plan::LoomForecast told =
        loomForecastOf(plan, cancelled, plan::networkOf(six.book.records(), kToday));
    EXPECT_TRUE(told.tasks.empty());
    EXPECT_TRUE(told.today.isNull());
}

} // namespace
} // namespace ohmwright::forecast
