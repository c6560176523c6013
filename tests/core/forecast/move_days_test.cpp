// SPDX-License-Identifier: GPL-3.0-or-later
// The days by which moves are to be begun, of the plan made by hand (six_tasks.h), pushed back by
// hand from the milestone's date.
#include "core/forecast/move_days.h"
#include "core/plan/plan_view.h"
#include "tests/core/forecast/six_tasks.h"

namespace ohmwright::forecast {
namespace {

class MoveDays : public testing::Test
{
protected:
    void wishFor(int day)
    {
        m_six.change<Task>(m_six.rolling, [&](Task &t) { t.targetOn = kToday.addDays(day); });
    }
    // The moves towards rolling, by subject: days from today.
    std::map<QString, int> days(const std::vector<OrderBy> &orders = {})
    {
        m_plan = workPlanOf(m_six.book.records(), kToday);
        const plan::Network network = plan::networkOf(m_six.book.records(), kToday);
        m_held = plan::holdUps(network, *network.find(QStringLiteral("rolling")));
        tellLatestDays(m_held, network, m_plan, orders);
        std::map<QString, int> found;
        for (const plan::Move &move : m_held.moves)
            if (move.latestStart)
                found[move.subject] = static_cast<int>(kToday.daysTo(*move.latestStart));
        return found;
    }
    std::size_t coupling() const
    {
        for (std::size_t i = 0; i < m_plan.activities.size(); ++i)
            if (m_plan.activities[i].toOrder)
                return i;
        ADD_FAILURE();
        return 0;
    }

    SixTasks m_six;
    WorkPlan m_plan;
    plan::HoldUps m_held;
};

TEST_F(MoveDays, areThoseOfTheLevelledPlanPushedLate)
{
    wishFor(15); // the plan's own end: nothing may slip but the order, by a day
    EXPECT_EQ(days(), (std::map<QString, int>{{QStringLiteral("strip"), 1},
                                              {QStringLiteral("part:coupling"), 1}}));
    // Tuesday a week later: fitted then, measured on Saturday 19, lifted on Saturday 12, stripped
    // on Tuesday 8 and Thursday 10; a coupling that takes 14 days
    wishFor(22);
    EXPECT_EQ(days(), (std::map<QString, int>{{QStringLiteral("strip"), 8},
                                              {QStringLiteral("part:coupling"), 8}}));
}

TEST_F(MoveDays, knowDaysOff)
{
    SpecialDay off;
    off.from = kToday.addDays(8);
    off.to = kToday.addDays(10);
    off.minutes = 0;
    m_six.book.add(off);
    wishFor(22);
    // nobody works on Tuesday 8 and Thursday 10: stripped on Saturday 5
    EXPECT_EQ(days().at(QStringLiteral("strip")), 5);
}

TEST_F(MoveDays, keepTheLikelyDayWhereTheDateIsMissedWhateverOneDoes)
{
    wishFor(8); // seven days before the plan's own end
    EXPECT_EQ(days().at(QStringLiteral("strip")), 1);
    EXPECT_EQ(days().at(QStringLiteral("part:coupling")), 1);
    EXPECT_EQ(m_held.likely, kToday.addDays(15));
    wishFor(15);
    days();
    EXPECT_FALSE(m_held.likely);
}

TEST_F(MoveDays, needTheOrderByDaysOfWhatTheirMovesSendOut)
{
    days();
    EXPECT_EQ(sentByMoves(m_held, m_plan), std::vector{coupling()}) << "a move orders it";
    m_six.change<Task>(m_six.strip, [&](Task &t) { t.buys = m_six.coupling; });
    days();
    EXPECT_EQ(sentByMoves(m_held, m_plan), std::vector{coupling()}) << "a task of a move does";
    m_held.moves.clear();
    EXPECT_TRUE(sentByMoves(m_held, m_plan).empty());
}

TEST_F(MoveDays, boundTheTaskThatOrders)
{
    m_six.change<Task>(m_six.strip, [&](Task &t) { t.buys = m_six.coupling; });
    wishFor(22);
    EXPECT_EQ(days().at(QStringLiteral("strip")), 5) << "a Saturday and the Tuesday after";
    // strip takes from day 1 to day 3
    EXPECT_EQ(days({{coupling(), 5, true}}).at(QStringLiteral("strip")), 3);
    const auto strip =
        std::ranges::find(m_held.moves, QStringLiteral("strip"), &plan::Move::subject);
    ASSERT_NE(strip, m_held.moves.end());
    EXPECT_TRUE(strip->why.contains(QStringLiteral("it orders “Coupling”")))
        << strip->why.toStdString();
}

TEST_F(MoveDays, takeTheForecastsDayWhereItIsEarlierAndSayWhy)
{
    wishFor(22);
    days();
    const std::vector<OrderBy> orders{{coupling(), 3, true}};
    EXPECT_EQ(days(orders).at(QStringLiteral("part:coupling")), 3);
    ASSERT_EQ(m_held.moves.size(), 2U);
    EXPECT_EQ(m_held.moves[0].subject, QStringLiteral("part:coupling")) << "sorted by day";
    EXPECT_TRUE(m_held.moves[0].why.contains(QStringLiteral("80")))
        << m_held.moves[0].why.toStdString();
    EXPECT_EQ(days({{coupling(), 12, true}}).at(QStringLiteral("part:coupling")), 8);
    EXPECT_EQ(days({{coupling(), 0, false}}).at(QStringLiteral("part:coupling")), 8)
        << "no milestone waits on that order";
}

TEST_F(MoveDays, withoutADateAreThoseOfTheForecast)
{
    EXPECT_TRUE(days().empty());
    EXPECT_EQ(days({{coupling(), 3, true}}),
              (std::map<QString, int>{{QStringLiteral("part:coupling"), 3}}));
}

TEST_F(MoveDays, ofLaterMilestonesAreToldWhenTheyHaveADaySoon)
{
    const Id<Task> road =
        m_six.add("road", 0, {m_six.rolling}, [](Task &t) { t.milestone = true; });
    Letter letter;
    letter.key = QStringLiteral("cover");
    letter.subject = QStringLiteral("Cover on the road");
    letter.state = LetterState::Asked;
    letter.askedOn = kToday.addDays(-3);
    letter.askAgainOn = kToday.addDays(20);
    TaskNeed need;
    need.task = road;
    need.kind = NeedKind::Letter;
    need.letter = m_six.book.add(letter);
    m_six.book.add(need);
    const plan::Network network = plan::networkOf(m_six.book.records(), kToday);
    const plan::HoldUps rolling = plan::holdUps(network, *network.find(QStringLiteral("rolling")));
    const std::vector<MoveSoon> soon = movesSoon(network, rolling, kToday, 21);
    ASSERT_EQ(soon.size(), 1U);
    EXPECT_EQ(soon[0].move.subject, QStringLiteral("letter:cover"));
    EXPECT_EQ(network.tasks[soon[0].milestone].key, QStringLiteral("road"));
    EXPECT_EQ(soon[0].move.latestStart, kToday.addDays(20));
    EXPECT_TRUE(movesSoon(network, rolling, kToday, 19).empty());
    const plan::HoldUps all = plan::holdUps(network, *network.find(QStringLiteral("road")));
    EXPECT_TRUE(movesSoon(network, all, kToday, 21).empty()) << "shown already";
}

// Saturday nine to two, and a friend from ten to one: five hours for one pair of hands, three for
// two, however the two times are told.
TEST(WeekMinutes, countTimesThatOverlapOnceForEachPairOfHands)
{
    TestBook book;
    for (const auto &[starts, minutes] : {std::pair("09:00", 300), {"10:00", 180}}) {
        WorkingTime time;
        time.weekday = Weekday::Saturday;
        time.starts = QLatin1String(starts);
        time.minutes = minutes;
        book.add(time);
    }
    EXPECT_EQ(plan::minutesPerWeek(book.records()), (std::array{300, 180, 180, 180}));
    Task task;
    task.workMinutes = 360;
    EXPECT_EQ(plan::elapsedDays(book.records(), task, {300, 180, 180, 180}), 9); // 8.4
    task.hands = 2;
    EXPECT_EQ(plan::elapsedDays(book.records(), task, {300, 180, 180, 180}), 7);
}

} // namespace
} // namespace ohmwright::forecast
