// SPDX-License-Identifier: GPL-3.0-or-later
// What stands out on the chart: chains followed, tasks found, the next evening; and by date.
#include "tests/core/plan/loom_networks.h"
#include "ui/build_order/loom_navigation.h"
#include "ui/build_order/loom_view.h"

#include <QApplication>
#include <QSignalSpy>
#include <QTest>

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <memory>
#include <set>

namespace ohmwright::ui {

namespace {

using plan::LoomBy;
using plan::Network;

plan::Task task(const char *key, const char *title, std::vector<std::size_t> after = {})
{
    plan::Task made;
    made.key = QLatin1String(key);
    made.title = QLatin1String(title);
    made.area = QStringLiteral("motor");
    made.after = std::move(after);
    return made;
}

// t1 and t2 before t3, then t4 and t5; t6 apart.
Network smallNetwork()
{
    return {{task("t1", "Measure bell face"), task("t2", "Clean motor"),
             task("t3", "Coupling machined", {0, 1}), task("t4", "Join motor", {2}),
             task("t5", "Mount motor", {2}), task("t6", "Sell engine")}};
}

plan::LoomFacts smallFacts()
{
    plan::LoomFacts facts;
    facts.forecast = plan::LoomForecast();
    facts.forecast->today = QDate(2026, 11, 27);
    facts.forecast->tasks.resize(6);
    const std::array starts{1, 1, 6, 9, 12, 4};
    for (std::size_t at = 0; at < starts.size(); ++at) {
        facts.forecast->tasks[at].start = facts.forecast->tasks[at].finish = starts.at(at);
        facts.forecast->tasks[at].ready = {starts.at(at), starts.at(at) + 2, starts.at(at) + 5};
    }
    return facts;
}

class LoomFindTest : public testing::Test
{
protected:
    void SetUp() override
    {
        m_view = std::make_unique<LoomView>();
        m_view->resize(1100, 500);
        m_view->setNetwork(smallNetwork(), smallFacts());
        m_view->show();
        m_view->activateWindow();
        m_view->setFocus();
        QApplication::processEvents();
    }
    void press(Qt::Key key, Qt::KeyboardModifiers with = Qt::NoModifier)
    {
        QTest::keyClick(m_view.get(), key, with);
    }
    void type(const char *text) { QTest::keyClicks(m_view.get(), QLatin1String(text)); }
    [[nodiscard]] QString current() const { return m_view->currentTask(); }
    // Keys of the tasks that stand out.
    [[nodiscard]] QStringList lit() const
    {
        QStringList keys;
        for (std::size_t at = 0; at < m_view->lit().size(); ++at) {
            if (m_view->lit()[at])
                keys.append(m_view->network().tasks[at].key);
        }
        return keys;
    }

    std::unique_ptr<LoomView> m_view;
};

TEST_F(LoomFindTest, PAndALightOneSideOfTheChain)
{
    m_view->setCurrentTask("t3");
    press(Qt::Key_P);
    EXPECT_EQ(lit(), QStringList({"t1", "t2", "t3"}));
    press(Qt::Key_A);
    EXPECT_EQ(lit(), QStringList({"t3", "t4", "t5"}));
    press(Qt::Key_F);
    EXPECT_EQ(lit(), QStringList({"t1", "t2", "t3", "t4", "t5"}));
    press(Qt::Key_Escape);
    EXPECT_EQ(lit(), QStringList());
}

TEST_F(LoomFindTest, WalkingAlongALitChainKeepsItLit)
{
    m_view->setCurrentTask("t5");
    press(Qt::Key_P);
    const QStringList chain = lit();
    EXPECT_EQ(chain, QStringList({"t1", "t2", "t3", "t5"}));
    press(Qt::Key_Left, Qt::ControlModifier);
    EXPECT_EQ(current(), "t3");
    EXPECT_EQ(lit(), chain);
    m_view->setCurrentTask("t6");
    EXPECT_EQ(lit(), QStringList("t6"));
}

TEST_F(LoomFindTest, ControlWithUpAndDownChoosesAnotherWireOfTheFork)
{
    m_view->setCurrentTask("t3");
    press(Qt::Key_Right, Qt::ControlModifier);
    const QString first = current();
    ASSERT_TRUE(first == "t4" || first == "t5");
    press(Qt::Key_Down, Qt::ControlModifier);
    press(Qt::Key_Down, Qt::ControlModifier);
    const QString lower = current();
    press(Qt::Key_Up, Qt::ControlModifier);
    EXPECT_EQ(QStringList({lower, current()}).contains("t4"), true);
    EXPECT_NE(current(), lower);
}

TEST_F(LoomFindTest, TypingFindsATaskAndEnterStaysThere)
{
    m_view->setCurrentTask("t6");
    press(Qt::Key_Slash);
    EXPECT_TRUE(m_view->isFinding());
    type("mo");
    EXPECT_EQ(current(), "t5") << "what begins with it comes first";
    EXPECT_EQ(lit().size(), 6) << "all are of the area motor";
    type("unt");
    EXPECT_EQ(lit(), QStringList("t5"));
    press(Qt::Key_Return);
    EXPECT_FALSE(m_view->isFinding());
    EXPECT_EQ(current(), "t5");
    EXPECT_EQ(lit(), QStringList());
}

TEST_F(LoomFindTest, EscapeGoesBackToWhereOneWas)
{
    m_view->setCurrentTask("t6");
    press(Qt::Key_Slash);
    type("coup");
    EXPECT_EQ(current(), "t3");
    press(Qt::Key_Escape);
    EXPECT_FALSE(m_view->isFinding());
    EXPECT_EQ(current(), "t6");
}

TEST_F(LoomFindTest, UpAndDownGoThroughWhatWasFound)
{
    press(Qt::Key_Slash);
    type("motor");
    const QString first = current();
    press(Qt::Key_Down);
    EXPECT_NE(current(), first);
    press(Qt::Key_Up);
    EXPECT_EQ(current(), first);
    press(Qt::Key_Backspace);
    EXPECT_TRUE(m_view->isFinding());
}

TEST_F(LoomFindTest, LettersTypedToFindDoNothingElse)
{
    const QSignalSpy done(m_view.get(), &LoomView::doneToggled);
    const QSignalSpy added(m_view.get(), &LoomView::addRequested);
    press(Qt::Key_Slash);
    type("dnsbe");
    EXPECT_EQ(done.size(), 0);
    EXPECT_EQ(added.size(), 0);
    EXPECT_EQ(m_view->by(), LoomBy::Chain);
}

TEST(LoomFindOrder, IsByHowTheTitleBeginsThenByPlace)
{
    const Network network = smallNetwork();
    const plan::Loom loom = plan::layOutLoom(network, {}, {});
    EXPECT_EQ(loomFind(network, loom, "COUP"), std::vector<std::size_t>{2});
    EXPECT_EQ(loomFind(network, loom, "  "), std::vector<std::size_t>{});
    EXPECT_EQ(loomFind(network, loom, "zinc"), std::vector<std::size_t>{});
    const auto motor = loomFind(network, loom, "motor");
    ASSERT_EQ(motor.size(), 6U);
    // Clean, Join and Mount motor before those that only hang on the branch.
    EXPECT_EQ((std::set<std::size_t>{motor[0], motor[1], motor[2]}),
              (std::set<std::size_t>{1, 3, 4}));
}

TEST_F(LoomFindTest, EShowsTheFirstPlannedDaysWork)
{
    press(Qt::Key_E);
    EXPECT_EQ(lit(), QStringList({"t1", "t2"}));
    EXPECT_GE(m_view->zoom(), 0.8);
    for (const std::size_t at : {0U, 1U})
        EXPECT_TRUE(m_view->viewport()->rect().contains(m_view->taskRect(at)));
    press(Qt::Key_Escape);
    EXPECT_EQ(lit(), QStringList());
}

TEST_F(LoomFindTest, WithoutAForecastTheEveningIsAllThatCanStart)
{
    m_view->setNetwork(smallNetwork(), {});
    press(Qt::Key_E);
    EXPECT_EQ(lit(), QStringList({"t1", "t2", "t6"}));
}

TEST_F(LoomFindTest, BLaysItOutByDateAndBackAndKeepsTheChoice)
{
    const QSignalSpy changed(m_view.get(), &LoomView::byChanged);
    m_view->setCurrentTask("t3");
    EXPECT_TRUE(m_view->loom().rules.empty());
    press(Qt::Key_B);
    EXPECT_EQ(m_view->by(), LoomBy::Date);
    EXPECT_FALSE(m_view->loom().rules.empty());
    EXPECT_EQ(current(), "t3");
    press(Qt::Key_B);
    EXPECT_TRUE(m_view->loom().rules.empty());
    EXPECT_EQ(changed.size(), 2);
}

TEST_F(LoomFindTest, ByDateWithoutAForecastSaysWhatIsMissing)
{
    m_view->setNetwork(smallNetwork(), {});
    const QImage chain = m_view->viewport()->grab().toImage();
    press(Qt::Key_B);
    const QImage lacking = m_view->viewport()->grab().toImage();
    EXPECT_NE(lacking, chain);
    m_view->setForecastMissing("The forecast is being worked out.");
    EXPECT_NE(m_view->viewport()->grab().toImage(), lacking);
    m_view->setNetwork(smallNetwork(), smallFacts());
    EXPECT_FALSE(m_view->loom().rules.empty());
}

TEST_F(LoomFindTest, SAndTAskForTheTaskToBeStartedAndItsTime)
{
    const QSignalSpy started(m_view.get(), &LoomView::startedToggled);
    const QSignalSpy time(m_view.get(), &LoomView::timeRequested);
    press(Qt::Key_S);
    EXPECT_EQ(started.size(), 0) << "nothing is chosen";
    m_view->setCurrentTask("t1");
    press(Qt::Key_S);
    press(Qt::Key_T);
    ASSERT_EQ(started.size(), 1);
    EXPECT_EQ(started[0], QList<QVariant>{"t1"});
    ASSERT_EQ(time.size(), 1);
    EXPECT_EQ(time[0], QList<QVariant>{"t1"});
}

TEST_F(LoomFindTest, TheForecastIsToldInWords)
{
    const QString words = LoomWords::description(m_view->network(), m_view->loom(), 0);
    EXPECT_TRUE(words.contains(QStringLiteral("planned 28 Nov"))) << words.toStdString();
    EXPECT_TRUE(words.contains(QStringLiteral("80\u00A0%: 30 Nov"))) << words.toStdString();
}

} // namespace

} // namespace ohmwright::ui
