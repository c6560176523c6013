// SPDX-License-Identifier: GPL-3.0-or-later
// A milestone with an appointment, in the plan made by hand (six_tasks.h): without one, it is
// fitted and rolling on Tuesday 30 June, day 15. Day 40 is a Saturday.
#include "core/forecast/milestone_dates.h"
#include "core/forecast/order_by.h"
#include "tests/core/forecast/six_tasks.h"

namespace ohmwright::forecast {
namespace {

class Appointments : public testing::Test
{
protected:
    void fixOn(int day)
    {
        m_six.change<Task>(m_six.rolling, [&](Task &t) { t.fixedOn = kToday.addDays(day); });
    }
    void mayFail()
    {
        m_six.change<Task>(m_six.fit, [](Task &t) { t.failPercent = 33; });
    }
    // Rolling waits on fitting alone.
    void unlinkGlue()
    {
        for (const TaskNeed &need : std::vector(m_six.book.records().all<TaskNeed>().rows()))
            if (need.after == m_six.glue) {
                OHMWRIGHT_ASSERT_OK(m_six.book->edit(QStringLiteral("unlink"),
                                                     [&] { return m_six.book->remove(need.id); }));
            }
    }
    void look()
    {
        m_plan = workPlanOf(m_six.book.records(), kToday);
        Settings settings;
        settings.samples = 2000;
        m_simulation.emplace(m_plan, settings);
        m_forecast = m_simulation->run();
    }
    std::size_t at(const char *key) const { return activityOf(m_plan, key); }
    const ActivityForecast &of(const char *key) const { return m_forecast.activities[at(key)]; }

    SixTasks m_six;
    WorkPlan m_plan;
    std::optional<Simulation> m_simulation;
    Forecast m_forecast;
};

TEST_F(Appointments, AreNeverKeptBeforeTheirDay)
{
    fixOn(40);
    look();
    EXPECT_EQ(of("rolling").plannedFinish, 40);
    for (const int day : of("rolling").ready)
        EXPECT_EQ(day, 40) << "nothing spreads";
    EXPECT_EQ(of("fit").plannedFinish, 15) << "of two tasks, which keeps it is not known";
    EXPECT_EQ(of("strip").plannedStart, 1) << "what comes before is not put off";
    EXPECT_EQ(appointmentOf(m_six.book.records(), m_plan.activities[at("rolling")]),
              kToday.addDays(40));
    EXPECT_EQ(appointmentOf(m_six.book.records(), m_plan.activities[at("fit")]), std::nullopt);
}

TEST_F(Appointments, TheOneTaskTheMilestoneWaitsOnIsWhatIsDoneThen)
{
    unlinkGlue();
    fixOn(40);
    look();
    EXPECT_EQ(of("fit").plannedStart, 40);
    EXPECT_EQ(of("rolling").plannedFinish, 40);
    // there by Saturday, day 40: ordered on day 26 at the latest
    const std::vector<OrderBy> orders = orderByDays(m_plan, *m_simulation, 80);
    ASSERT_EQ(orders.size(), 1U);
    EXPECT_EQ(orders[0].latestDay, 26);
}

TEST_F(Appointments, OfSeveralTasksTheOneThatMayFailKeepsItAndIsRepeatedAfterIt)
{
    mayFail();
    fixOn(40);
    look();
    EXPECT_EQ(of("fit").plannedStart, 40);
    EXPECT_EQ(of("glue").plannedFinish, 11);
    // 67 % pass on the day; else it is done again, two hours that Saturday or an evening later
    EXPECT_EQ(of("rolling").ready[0], 40);
    EXPECT_GE(of("again:fit/fit").ready[2], 40);
    const Samples samples = m_simulation->sample({at("rolling")}, {});
    for (const int day : samples.ready[0])
        EXPECT_GE(day, 40);
}

TEST_F(Appointments, ThatAreMissedAreToldAsLate)
{
    unlinkGlue();
    fixOn(10);
    look();
    EXPECT_EQ(of("rolling").plannedFinish, 15) << "the coupling is not there before";
    fixOn(-3);
    look();
    EXPECT_EQ(of("rolling").plannedFinish, 15) << "a day that is past holds nothing back";
}

} // namespace
} // namespace ohmwright::forecast
