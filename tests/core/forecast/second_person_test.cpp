// SPDX-License-Identifier: GPL-3.0-or-later
// A task that needs a person beside the one who works is planned when two are there.
#include "core/forecast/forecast.h"
#include "tests/core/forecast/six_tasks.h"

namespace ohmwright::forecast {
namespace {

class SecondPerson : public testing::Test
{
protected:
    void look()
    {
        m_plan = workPlanOf(m_six.book.records(), kToday);
        Settings settings;
        settings.samples = 100;
        m_forecast = forecastOf(m_plan, settings);
    }
    std::size_t at(const char *key) const { return activityOf(m_plan, key); }
    const ActivityForecast &of(const char *key) const { return m_forecast.activities[at(key)]; }

    SixTasks m_six;
    WorkPlan m_plan;
    Forecast m_forecast;
};

// Measured by one, with another beside him: both pairs of hands on Saturday 27 (day 12), for the
// same two hours by the clock.
TEST_F(SecondPerson, whereAPersonIsNeededTwoPairsOfHandsAreTaken)
{
    TaskNeed need;
    need.task = m_six.measure;
    need.kind = NeedKind::Person;
    need.what = QStringLiteral("second person");
    m_six.book.add(need);
    look();
    EXPECT_EQ(m_plan.activities[at("measure")].demand[0], 2);
    EXPECT_EQ(m_plan.activities[at("measure")].work.likely, 120);
    EXPECT_EQ(of("measure").plannedStart, 12);
    EXPECT_EQ(of("rolling").plannedFinish, 15);

    // an hour of it is done, whoever stood by
    m_six.change<Task>(m_six.measure, [&](Task &t) {
        t.state = TaskState::Started;
        t.startedOn = kToday.addDays(-3);
    });
    WorkEntry entry;
    entry.task = m_six.measure;
    entry.on = kToday.addDays(-3);
    entry.minutes = 60;
    entry.hands = 2;
    m_six.book.add(entry);
    look();
    EXPECT_EQ(m_plan.activities[at("measure")].work.likely, 60);
    EXPECT_TRUE(m_plan.doubts.isEmpty()) << m_plan.doubts.join(u'\n').toStdString();
}

} // namespace
} // namespace ohmwright::forecast
