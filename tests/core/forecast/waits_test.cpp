// SPDX-License-Identifier: GPL-3.0-or-later
// What is left of an answer and a delivery under way, and of one that should be there by now.
#include "core/forecast/forecast.h"
#include "core/forecast/waits.h"
#include "core/plan/plan_view.h"
#include "tests/core/forecast/six_tasks.h"

namespace ohmwright::forecast {
namespace {

const QDate kAsked(2026, 5, 2);

// 45 days, 21 at least and 90 at most: expected on 16 June.
Letter asked(std::optional<QDate> askAgain = std::nullopt)
{
    Letter letter;
    letter.key = QStringLiteral("tray");
    letter.subject = QStringLiteral("Battery tray");
    letter.state = LetterState::Asked;
    letter.askedOn = kAsked;
    letter.askAgainOn = askAgain;
    letter.answerDays = 45;
    letter.leastAnswerDays = 21;
    letter.mostAnswerDays = 90;
    return letter;
}

std::array<int, 3> daysOf(const WaitLeft &left)
{
    return {left.days.least, left.days.likely, left.days.most};
}

TEST(AnswerLeft, isTheEstimateLessTheDaysSinceUntilItIsOverdue)
{
    EXPECT_EQ(daysOf(answerLeft(asked(), kAsked.addDays(10))), (std::array{11, 35, 80}));
    EXPECT_EQ(daysOf(answerLeft(asked(), kAsked.addDays(45))), (std::array{0, 0, 45}));
    EXPECT_TRUE(answerLeft(asked(), kAsked.addDays(45)).doubt.isEmpty()) << "expected today";
}

TEST(AnswerLeft, takesAsLongAgainOnceItIsOverdueHoweverLong)
{
    for (const int days : {46, 100, 400}) {
        const WaitLeft left = answerLeft(asked(), kAsked.addDays(days));
        EXPECT_EQ(daysOf(left), (std::array{0, 45, 90})) << days;
        EXPECT_TRUE(left.doubt.contains(QStringLiteral("16 Jun 2026"))) << left.doubt.toStdString();
        EXPECT_TRUE(left.doubt.contains(QStringLiteral("likely 45")));
    }
}

TEST(AnswerLeft, isNotThereBeforeTheDayToAskAgain)
{
    const QDate today = kAsked.addDays(100);
    EXPECT_EQ(daysOf(answerLeft(asked(today.addDays(5)), today)), (std::array{5, 45, 90}));
    EXPECT_EQ(daysOf(answerLeft(asked(today.addDays(60)), today)), (std::array{60, 60, 105}));
    EXPECT_EQ(daysOf(answerLeft(asked(today.addDays(-3)), today)), (std::array{0, 45, 90}));
    // a note for later says nothing while the answer is not due
    EXPECT_EQ(daysOf(answerLeft(asked(kAsked.addDays(60)), kAsked.addDays(10))),
              (std::array{11, 35, 80}));
}

class WaitsOfSixTasks : public testing::Test
{
protected:
    // The coupling on order since 1 June, 14 days from then without a promise: today.
    void order(std::optional<QDate> promised)
    {
        Seller seller;
        seller.name = QStringLiteral("Machine shop");
        Purchase purchase;
        purchase.seller = m_six.book.add(seller);
        purchase.orderedOn = QDate(2026, 6, 1);
        purchase.promisedOn = promised;
        purchase.currency = euro();
        purchase.rate = Rate();
        for (Money *sum : {&purchase.freight, &purchase.duty, &purchase.tax})
            *sum = euros(0);
        PurchaseItem item;
        item.purchase = m_six.book.add(purchase);
        item.name = QStringLiteral("Coupling");
        item.unitPrice = euros(18000);
        item.coreCharge = euros(0);
        const Id<PurchaseItem> bought = m_six.book.add(item);
        m_six.change<Part>(m_six.coupling, [&](Part &part) {
            part.bought = bought;
            part.leastLeadDays = 10;
            part.mostLeadDays = 20;
        });
        OHMWRIGHT_ASSERT_OK(m_six.book->edit(QStringLiteral("ordered"), [&] {
            return recordMove(*m_six.book, m_six.coupling, PartState::Ordered,
                              m_six.book.clock.today(), {});
        }));
    }
    WaitLeft left(QDate today) const
    {
        const Records &records = m_six.book.records();
        return deliveryLeft(records, *records.find(m_six.coupling), today);
    }

    SixTasks m_six;
};

TEST_F(WaitsOfSixTasks, ADeliveryIsAsEarlyAndLateAsItsEstimatesAreApart)
{
    order(kToday.addDays(6));
    EXPECT_EQ(daysOf(left(kToday)), (std::array{2, 6, 12}));
    EXPECT_EQ(daysOf(left(kToday.addDays(6))), (std::array{0, 0, 6}));
    EXPECT_TRUE(left(kToday.addDays(6)).doubt.isEmpty());
}

TEST_F(WaitsOfSixTasks, ADeliveryOverduePlaysNoEarlierThanOneThatIsNot)
{
    order(kToday.addDays(6));
    const WaitLeft overdue = left(kToday.addDays(7));
    EXPECT_EQ(daysOf(overdue), (std::array{0, 14, 20}));
    EXPECT_EQ(daysOf(left(kToday.addDays(70))), daysOf(overdue));
    EXPECT_TRUE(overdue.doubt.contains(QStringLiteral("Coupling"))) << overdue.doubt.toStdString();
    EXPECT_TRUE(overdue.doubt.contains(QStringLiteral("21 Jun 2026")));
}

TEST_F(WaitsOfSixTasks, WithoutAPromiseADeliveryIsDueWhenItsTimeIsOver)
{
    order(std::nullopt);
    EXPECT_EQ(daysOf(left(kToday)), (std::array{0, 0, 6}));
    EXPECT_EQ(daysOf(left(kToday.addDays(1))), (std::array{0, 14, 20}));
}

// Fitting waits for the answer; overdue since yesterday, it is counted as 45 days from today, a
// Thursday (day 45), and nobody is told that it is there.
TEST_F(WaitsOfSixTasks, AnOverdueAnswerHoldsUpThePlanAndIsADoubt)
{
    Letter letter = asked();
    letter.askedOn = kToday.addDays(-46);
    TaskNeed need;
    need.task = m_six.fit;
    need.kind = NeedKind::Letter;
    need.letter = m_six.book.add(letter);
    m_six.book.add(need);
    const WorkPlan plan = workPlanOf(m_six.book.records(), kToday);
    ASSERT_EQ(plan.doubts.size(), 1) << plan.doubts.join(u'\n').toStdString();
    EXPECT_TRUE(plan.doubts[0].contains(QStringLiteral("overdue since"))) << "and why";
    Settings settings;
    settings.samples = 1000;
    const Forecast forecast = forecastOf(plan, settings);
    const ActivityForecast &rolling = forecast.activities[plan.milestones[0]];
    EXPECT_EQ(rolling.plannedFinish, 45);
    EXPECT_GT(rolling.ready[1], 45) << "later than likely at 80 %";

    // the hold-ups count the same, and say when to ask
    const plan::Network network = plan::networkOf(m_six.book.records(), kToday);
    const plan::HoldUps held = plan::holdUps(network, *plan::nextMilestone(network));
    bool chased = false;
    for (const plan::Move &move : held.moves)
        if (move.kind == plan::MoveKind::Chase) {
            chased = true;
            EXPECT_GE(move.chainDays, 45);
            EXPECT_EQ(move.latestStart, kToday) << "no day to ask again is noted";
            EXPECT_TRUE(move.why.contains(QStringLiteral("overdue"))) << move.why.toStdString();
        }
    EXPECT_TRUE(chased);
}

TEST_F(WaitsOfSixTasks, AnAnswerIsChasedOnTheDayNotedForIt)
{
    m_six.change<Task>(m_six.rolling, [](Task &t) { t.targetOn = kToday.addDays(300); });
    Letter letter = asked(kToday.addDays(9));
    letter.askedOn = kToday.addDays(-5);
    TaskNeed need;
    need.task = m_six.fit;
    need.kind = NeedKind::Letter;
    need.letter = m_six.book.add(letter);
    m_six.book.add(need);
    const plan::Network network = plan::networkOf(m_six.book.records(), kToday);
    for (const plan::Move &move : plan::holdUps(network, *plan::nextMilestone(network)).moves)
        if (move.kind == plan::MoveKind::Chase) {
            EXPECT_EQ(move.latestStart, kToday.addDays(9));
        }
}

} // namespace
} // namespace ohmwright::forecast
