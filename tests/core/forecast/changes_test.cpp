// SPDX-License-Identifier: GPL-3.0-or-later
// Changes to the plan that was made by hand (six_tasks.h): how they are written, what they do, what
// is worth advising.
#include "core/forecast/gains.h"
#include "core/forecast/hours.h"
#include "core/forecast/usual_week.h"
#include "tests/core/forecast/six_tasks.h"

#include <algorithm>
#include <limits>

namespace ohmwright::forecast {
namespace {

class ChangesOfSixTasks : public testing::Test
{
protected:
    const Records &records() const { return m_six.book.records(); }
    QString read(const char *text) const
    {
        const Result<PlanChange> change = parsePlanChange(QLatin1String(text), records());
        return change ? change->code() : change.error().sentence;
    }
    QString described(const char *text) const
    {
        const Result<PlanChange> change = parsePlanChange(QLatin1String(text), records());
        return change ? describe(*change, records()) : change.error().sentence;
    }
    std::vector<Gain> gains(const char *text)
    {
        const WorkPlan plan = workPlanOf(records(), kToday);
        Settings settings;
        settings.samples = 100;
        const Simulation simulation(plan, settings);
        return gainsOf(records(), plan, simulation, plan.milestones,
                       *parsePlanChange(QLatin1String(text), records()), settings);
    }

    SixTasks m_six;
};

TEST_F(ChangesOfSixTasks, AnEveningIsReadOrRefusedWithASentence)
{
    EXPECT_EQ(read("evening:monday+120"), QStringLiteral("evening:monday+120"));
    EXPECT_EQ(read("evening:Monday+1"), QStringLiteral("evening:monday+1"));
    EXPECT_EQ(read("evening:monday+1440"), QStringLiteral("evening:monday+1440"));
    for (const char *wrong :
         {"evening:", "evening:monday", "evening:monday+", "evening:monday+0",
          "evening:monday+1441", "evening:monday+-5", "evening:monday+two", "evening:someday+60",
          "evening:monday-120", "evening:+60", "evening:monday+1.5"})
        EXPECT_TRUE(read(wrong).endsWith(u'.')) << wrong << read(wrong).toStdString();
    // Saturday has five hours of work already
    EXPECT_EQ(read("evening:saturday+600"), QStringLiteral("evening:saturday+600"));
    EXPECT_TRUE(read("evening:saturday+1440").endsWith(u'.'));
}

TEST_F(ChangesOfSixTasks, AreToldInPlainWords)
{
    EXPECT_EQ(described("evening:monday+120"),
              QStringLiteral("Monday evenings, 2\u00A0h more a week"));
    EXPECT_EQ(described("evening:sunday+150"),
              QStringLiteral("Sundays, 2\u00A0h 30\u00A0min more a week"));
    EXPECT_EQ(described("hours+60"), QStringLiteral("An hour more a week"));
    EXPECT_EQ(described("hours+45"), QStringLiteral("45\u00A0min more a week"));
    EXPECT_EQ(described("helper:saturday"), QStringLiteral("A helper on Saturdays"));
    EXPECT_EQ(described("order:coupling"), QStringLiteral("“Coupling” ordered today"));
    m_six.add("shelf", 60, {});
    EXPECT_EQ(described("drop:shelf"), QStringLiteral("Without “shelf”"));
}

// The coupling is there on Monday 29 (day 14). With hands on Mondays it is fitted that evening, not
// on Tuesday; everything else has been done before, as planned.
TEST_F(ChangesOfSixTasks, AMondayEveningGainsTheDayThatFittingWaitsForHands)
{
    const std::vector<Gain> gained = gains("evening:monday+120");
    ASSERT_EQ(gained.size(), 1U);
    EXPECT_EQ(gained[0].milestone, QStringLiteral("rolling"));
    EXPECT_EQ(gained[0].days, 1);
    EXPECT_EQ(gained[0].meanDays, 1);
    EXPECT_EQ(gained[0].standardError, 0);
    EXPECT_TRUE(gained[0].isSure());
    EXPECT_EQ(gains("evening:sunday+120")[0].days, 0); // day 13: the coupling is not there
}

TEST_F(ChangesOfSixTasks, AFurtherEveningFollowsTheOneThereIsAndIsWorkedAlone)
{
    const PlanChange change = *parsePlanChange(QStringLiteral("evening:tuesday+120"), records());
    const Hours before = hoursOf(records(), kToday);
    const Hours after = hoursOf(changedBy(records(), change, kToday), kToday);
    EXPECT_EQ(after.minutesPerWeek, before.minutesPerWeek + 120);
    int counted = 0;
    for (const auto &slot : after.timeline.line) {
        if (slot.day != 1)
            continue;
        ++counted;
        EXPECT_EQ(after.timeline.profiles[static_cast<std::size_t>(slot.profile)][0], 1);
    }
    EXPECT_EQ(counted, 240 / kSlotMinutes);
    // the book is as it was
    EXPECT_EQ(records().all<WorkingTime>().size(), 4U);
}

TEST_F(ChangesOfSixTasks, AnEveningAddsToTheHoursThatAreOnlyAssumed)
{
    for (const WorkingTime &time : std::vector(records().all<WorkingTime>().rows()))
        OHMWRIGHT_ASSERT_OK(
            m_six.book->edit(QStringLiteral("none"), [&] { return m_six.book->remove(time.id); }));
    const PlanChange change = *parsePlanChange(QStringLiteral("evening:monday+120"), records());
    EXPECT_EQ(hoursOf(changedBy(records(), change, kToday), kToday).minutesPerWeek,
              hoursOf(records(), kToday).minutesPerWeek + 120);
    const std::array<bool, 7> days = workingDays(records());
    EXPECT_EQ(days, (std::array{false, true, false, true, false, true, false}));
}

TEST_F(ChangesOfSixTasks, ATaskLeftOutIsInThePlanNoMore)
{
    m_six.add("shelf", 60, {});
    const auto holds = [&](const Records &of) {
        const WorkPlan plan = workPlanOf(of, kToday);
        return std::any_of(plan.activities.begin(), plan.activities.end(),
                           [](const Activity &a) { return a.key == QLatin1String("shelf"); });
    };
    EXPECT_TRUE(holds(records()));
    EXPECT_FALSE(holds(
        changedBy(records(), *parsePlanChange(QStringLiteral("drop:shelf"), records()), kToday)));
}

TEST_F(ChangesOfSixTasks, WhatCanBringNothingSaysWhy)
{
    const auto why = [&](const char *text) {
        return whyNothing(*parsePlanChange(QLatin1String(text), records()), records(),
                          workPlanOf(records(), kToday));
    };
    EXPECT_EQ(why("helper:saturday"), QString());
    EXPECT_TRUE(why("helper:monday").startsWith(QStringLiteral("Nobody works on Mondays")));
    EXPECT_TRUE(why("order:coupling").contains(QStringLiteral("ordered today already")));
    m_six.change<ohmwright::Task>(m_six.strip,
                                  [&](ohmwright::Task &t) { t.buys = m_six.coupling; });
    EXPECT_EQ(why("order:coupling"), QString());
}

TEST_F(ChangesOfSixTasks, WhatAMilestoneWaitsOnIsToldByLinks)
{
    m_six.add("paint", 120, {});
    const WorkPlan plan = workPlanOf(records(), kToday);
    const std::vector<char> waited = waitedOn(plan, plan.milestones.front());
    for (std::size_t i = 0; i < plan.activities.size(); ++i)
        EXPECT_EQ(waited[i] != 0, plan.activities[i].key != QStringLiteral("paint"))
            << plan.activities[i].key.toStdString();
}

TEST(GainInWords, TellsTheMeanAndTheDaysAt80PercentOrThatItIsNotSure)
{
    Gain gain;
    gain.days = 7;
    gain.meanDays = 9.2;
    gain.standardError = 0.8;
    EXPECT_EQ(
        gainInWords(gain),
        QStringLiteral(
            "at 80\u00A0%: 7\u00A0days earlier, give or take 1; in the mean 9\u00A0days earlier"));
    gain.days = 1;
    gain.standardError = 2;
    EXPECT_EQ(gainInWords(gain), QStringLiteral("no sure gain: 1\u00A0day, give or take 2"));
    gain.days = -7;
    gain.meanDays = -6;
    gain.standardError = 1;
    EXPECT_EQ(
        gainInWords(gain),
        QStringLiteral(
            "at 80\u00A0%: 7\u00A0days later, give or take 1; in the mean 6\u00A0days later"));
    gain = {};
    EXPECT_EQ(gainInWords(gain), QStringLiteral("no gain"));
    gain.standardError = 0.3;
    EXPECT_EQ(gainInWords(gain), QStringLiteral("no gain, give or take 1\u00A0day"));
    gain.standardError = std::numeric_limits<double>::infinity();
    EXPECT_TRUE(gainInWords(gain).startsWith(QStringLiteral("no sure gain")));
}

} // namespace
} // namespace ohmwright::forecast
