// SPDX-License-Identifier: GPL-3.0-or-later
// Opening a unit while a window runs, and parts that a task is to buy.
#include "core/parts/guided_tests.h"
#include "core/plan/opening.h"
#include "core/plan/plan_edits.h"
#include "core/plan/plan_view.h"
#include "tests/support/test_book.h"

#include <algorithm>

namespace ohmwright {
namespace {

const QDate kToday(2026, 6, 15);

class Opening : public testing::Test
{
protected:
    Opening()
    {
        Part part = namedPart(QStringLiteral("Inverter"));
        part.key = QStringLiteral("inverter");
        part.role = PartRole::Inverter;
        part.returnUntil = kToday.addDays(10);
        m_part = m_book.add(part);
        Task task = namedTask(QStringLiteral("Read the board"));
        task.opens = m_part;
        m_task = m_book.add(task);
        Task goal = namedTask(QStringLiteral("Talks"), true);
        m_goal = m_book.add(goal);
        OHMWRIGHT_EXPECT_OK(linkTasks(*m_book, m_task, m_goal));
    }
    static void OHMWRIGHT_EXPECT_OK(const Outcome &outcome)
    {
        EXPECT_TRUE(outcome) << (outcome ? "" : outcome.error().sentence.toStdString());
    }
    plan::HoldUps held(QDate today = kToday)
    {
        const plan::Network network = plan::networkOf(m_book.records(), today);
        return plan::holdUps(network, *plan::nextMilestone(network));
    }
    template <class R>
    void change(Id<R> id, const std::function<void(R &)> &how)
    {
        R row = *m_book.records().find(id);
        how(row);
        OHMWRIGHT_EXPECT_OK(
            m_book->edit(QStringLiteral("change"), [&] { return m_book->update(row); }));
    }

    TestBook m_book;
    Id<Part> m_part;
    Id<Task> m_task, m_goal;
};

TEST_F(Opening, waitsForAcceptanceChecksThenForTheRecordedDecision)
{
    plan::HoldUps now = held();
    ASSERT_EQ(now.moves.size(), 1U);
    EXPECT_EQ(now.moves[0].kind, plan::MoveKind::Test);
    EXPECT_EQ(now.moves[0].subject, QStringLiteral("acceptance:inverter"));
    EXPECT_EQ(now.moves[0].latestStart, kToday.addDays(10)) << "while it can still go back";
    EXPECT_TRUE(now.moves[0].why.contains(QStringLiteral("return until")))
        << now.moves[0].why.toStdString();

    const Result<Id<TestRecord>> checks = addAcceptanceChecks(*m_book, m_part);
    OHMWRIGHT_ASSERT_OK(checks);
    now = held();
    ASSERT_EQ(now.moves.size(), 1U);
    EXPECT_EQ(now.moves[0].subject, QStringLiteral("test:") + m_book.records().find(*checks)->key);

    change<TestRecord>(*checks, [](TestRecord &t) {
        t.result = TestResult::Passed;
        t.doneOn = kToday;
    });
    now = held();
    ASSERT_EQ(now.moves.size(), 1U);
    EXPECT_EQ(now.moves[0].kind, plan::MoveKind::Do);
    EXPECT_EQ(now.moves[0].subject, QStringLiteral("open:inverter"));
    EXPECT_FALSE(now.moves[0].latestStart.has_value());
    EXPECT_FALSE(finishTask(*m_book, m_task, kToday));

    change<Part>(m_part, [](Part &p) {
        p.openedOn = kToday;
        p.openedBecause = QStringLiteral("The board's limits are not on the case.");
    });
    now = held();
    ASSERT_EQ(now.moves.size(), 1U);
    EXPECT_TRUE(now.moves[0].needs.empty()) << "the task itself can start";
    OHMWRIGHT_ASSERT_OK(finishTask(*m_book, m_task, kToday));
}

TEST_F(Opening, needsNothingOnceNoWindowRunsAnyMore)
{
    const plan::HoldUps later = held(kToday.addDays(11));
    ASSERT_EQ(later.moves.size(), 1U);
    EXPECT_TRUE(later.moves[0].needs.empty());
}

TEST_F(Opening, aFailedCheckHoldsItUpAndSaysSo)
{
    const Result<Id<TestRecord>> checks = addAcceptanceChecks(*m_book, m_part);
    OHMWRIGHT_ASSERT_OK(checks);
    change<TestRecord>(*checks, [](TestRecord &t) {
        t.result = TestResult::Failed;
        t.doneOn = kToday;
    });
    EXPECT_TRUE(held().moves[0].why.contains(QStringLiteral("settle it with the seller")));
}

// Never is energising an unknown unit suggested as an acceptance check.
TEST_F(Opening, acceptanceStepsFitTheRoleAndEnergiseNothing)
{
    std::vector<Part> parts;
    for (std::size_t i = 0; i < EnumWords<PartRole>::words.size(); ++i) {
        Part part;
        part.role = static_cast<PartRole>(i);
        parts.push_back(part);
    }
    Part module;
    module.kind = PartKind::Module;
    parts.push_back(module);
    parts.emplace_back();
    for (const Part &part : parts) {
        const std::vector<TestStep> steps = acceptanceSteps(&part);
        EXPECT_GE(steps.size(), 4U);
        for (const TestStep &step : steps)
            for (const char *word : {"switch on", "switched on", "12 V on", "power it", "energise",
                                     "apply voltage", "connect the supply"})
                EXPECT_FALSE(step.name.contains(QLatin1String(word), Qt::CaseInsensitive))
                    << step.name.toStdString();
    }
    const auto mentions = [](const std::vector<TestStep> &steps, const char *word) {
        return std::any_of(steps.begin(), steps.end(),
                           [&](const TestStep &s) { return s.name.contains(QLatin1String(word)); });
    };
    EXPECT_TRUE(mentions(acceptanceSteps(&module), "every cell"));
    Part motor;
    motor.role = PartRole::Motor;
    EXPECT_TRUE(mentions(acceptanceSteps(&motor), "phases"));
    EXPECT_FALSE(mentions(acceptanceSteps(&motor), "every cell"));
}

TEST_F(Opening, aPartThatATaskIsToBuyWaitsOnThatTask)
{
    Part wanted = namedPart(QStringLiteral("Pack"), PartState::Wanted);
    wanted.key = QStringLiteral("pack");
    wanted.leadDays = 20;
    const Id<Part> pack = m_book.add(wanted);
    Task buy = namedTask(QStringLiteral("Buy the pack"));
    buy.buys = pack;
    const Id<Task> buyer = m_book.add(buy);
    TaskNeed need;
    need.task = m_goal;
    need.kind = NeedKind::Part;
    need.part = pack;
    m_book.add(need);
    const plan::HoldUps now = held();
    // not "order the pack", but the task that is for it, with the delivery behind it
    ASSERT_EQ(now.moves.size(), 2U);
    const auto move = std::find_if(now.moves.begin(), now.moves.end(), [&](const plan::Move &m) {
        return m.subject == m_book.records().find(buyer)->key;
    });
    ASSERT_NE(move, now.moves.end());
    EXPECT_EQ(move->chainDays, 20);
    OHMWRIGHT_ASSERT_OK(finishTask(*m_book, buyer, kToday));
    const plan::HoldUps after = held();
    EXPECT_TRUE(std::any_of(after.moves.begin(), after.moves.end(), [](const plan::Move &m) {
        return m.kind == plan::MoveKind::Order && m.subject == QStringLiteral("part:pack");
    }));
}

TEST_F(Opening, aTaskOfAnOptionNotTakenHoldsUpNothing)
{
    Choice choice;
    choice.question = QStringLiteral("Which inverter");
    const Id<Choice> id = m_book.add(choice);
    Id<ChoiceOption> options[2];
    for (int i = 0; i < 2; ++i) {
        ChoiceOption option;
        option.choice = id;
        option.key = QStringLiteral("option-%1").arg(i);
        option.name = option.key;
        options[i] = m_book.add(option);
    }
    change<Task>(m_task, [&](Task &t) { t.option = options[1]; });
    const plan::Network network = plan::networkOf(m_book.records(), kToday);
    const auto at = network.find(m_book.records().find(m_task)->key);
    ASSERT_TRUE(at);
    EXPECT_TRUE(network.tasks[*at].aside);
    EXPECT_FALSE(plan::canStart(network, *at));
    const plan::HoldUps now = held();
    ASSERT_EQ(now.moves.size(), 1U) << "only the milestone itself is left";
    EXPECT_EQ(now.moves[0].for_.front(), now.milestone);
}

} // namespace
} // namespace ohmwright
