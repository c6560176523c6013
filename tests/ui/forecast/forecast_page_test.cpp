// SPDX-License-Identifier: GPL-3.0-or-later
// The forecast in the window: worked out beside it, shown, followed, given up.
#include "tests/core/forecast/six_tasks.h"
#include "tests/ui/driving.h"
#include "ui/forecast/forecast_page.h"
#include "ui/forecast/forecaster.h"

#include <QPushButton>
#include <QSignalSpy>
#include <QTableView>

namespace ohmwright::ui {
namespace {

using namespace driving;

class ForecastOnPage : public testing::Test
{
protected:
    ForecastOnPage() : m_forecaster(*m_six.book), m_page(*m_six.book, m_forecaster, m_themed.theme)
    {
        m_forecaster.setSamples(200);
        m_page.resize(1100, 900);
    }

    void showAndWait()
    {
        showActive(m_page);
        waitForIt();
    }
    void waitForIt()
    {
        ASSERT_TRUE(QTest::qWaitFor(
            [&] {
                const auto told = m_forecaster.latest();
                return told && told->complete && !m_forecaster.progress();
            },
            20'000));
    }
    QTableView *table(const char *name)
    {
        for (auto *view : m_page.findChildren<QTableView *>())
            if (view->accessibleName() == QLatin1String(name))
                return view;
        ADD_FAILURE() << "no table " << name;
        return nullptr;
    }
    static QString cell(QTableView *view, int row, int column)
    {
        return view->model()->index(row, column).data().toString();
    }

    SixTasks m_six;
    Themed m_themed;
    Forecaster m_forecaster;
    ForecastPage m_page;
};

TEST_F(ForecastOnPage, nothingIsWorkedOutBeforeSomebodyLooks)
{
    QTest::qWait(400);
    EXPECT_EQ(m_forecaster.latest(), nullptr);
    showAndWait();
    EXPECT_NE(m_forecaster.latest(), nullptr);
}

TEST_F(ForecastOnPage, tellsTheHandMadePlan)
{
    showAndWait();
    QTableView *milestones = table("Milestones");
    ASSERT_EQ(milestones->model()->rowCount(), 1);
    EXPECT_EQ(cell(milestones, 0, 0), QStringLiteral("rolling"));
    for (int column = 1; column <= 4; ++column)
        EXPECT_EQ(cell(milestones, 0, column), QStringLiteral("30 Jun 2026"));
    QTableView *orders = table("Order by");
    ASSERT_EQ(orders->model()->rowCount(), 1);
    EXPECT_EQ(cell(orders, 0, 0), QStringLiteral("Coupling"));
    EXPECT_EQ(cell(orders, 0, 1), QStringLiteral("16 Jun 2026"));
    QTableView *driving = table("What drives it");
    QStringList drivers;
    for (int row = 0; row < driving->model()->rowCount(); ++row)
        drivers << cell(driving, row, 0);
    EXPECT_TRUE(drivers.contains(QStringLiteral("Coupling")));
    EXPECT_FALSE(drivers.contains(QStringLiteral("glue")));
}

TEST_F(ForecastOnPage, followsAnEditAndLeadsToWhatItNames)
{
    showAndWait();
    m_six.change<Part>(m_six.coupling,
                       [](Part &p) { p.leadDays = p.leastLeadDays = p.mostLeadDays = 21; });
    ASSERT_TRUE(QTest::qWaitFor(
        [&] { return cell(table("Milestones"), 0, 3) == QStringLiteral("7 Jul 2026"); }, 20'000));
    waitForIt();
    QSignalSpy parts(&m_page, &ForecastPage::partWanted);
    QSignalSpy tasks(&m_page, &ForecastPage::taskWanted);
    QTableView *orders = table("Order by");
    orders->setFocus();
    orders->setCurrentIndex(orders->model()->index(0, 0));
    press(Qt::Key_Return);
    ASSERT_EQ(parts.size(), 1);
    EXPECT_EQ(parts[0][0].toString(), QStringLiteral("coupling"));
    QTableView *milestones = table("Milestones");
    milestones->setFocus();
    milestones->setCurrentIndex(milestones->model()->index(0, 0));
    press(Qt::Key_Return);
    ASSERT_EQ(tasks.size(), 1);
    EXPECT_EQ(tasks[0][0].toString(), QStringLiteral("rolling"));
}

TEST_F(ForecastOnPage, isGivenUpWithStopAndByTheNextEdit)
{
    m_forecaster.setSamples(1'000'000);
    showActive(m_page);
    ASSERT_TRUE(QTest::qWaitFor([&] { return m_forecaster.progress().has_value(); }, 5000));
    auto *stop = m_page.findChild<QPushButton *>();
    for (auto *button : m_page.findChildren<QPushButton *>())
        if (button->text().contains(QStringLiteral("Stop")))
            stop = button;
    ASSERT_NE(stop, nullptr);
    QTest::mouseClick(stop, Qt::LeftButton);
    EXPECT_FALSE(m_forecaster.progress());
    m_forecaster.setSamples(200);
    m_six.change<Task>(m_six.glue, [](Task &t) { t.workMinutes = t.mostWorkMinutes.value(); });
    m_six.change<Task>(m_six.glue, [](Task &t) { t.note = QStringLiteral("epoxy"); });
    waitForIt();
}

TEST_F(ForecastOnPage, offersWhatTheHoursSayAndChangesEstimatesOnlyWhenAsked)
{
    for (int i = 0; i < 3; ++i) {
        const Id<Task> done =
            m_six.add(qPrintable(QStringLiteral("wire-%1").arg(i)), 100, {}, [&](Task &t) {
                t.trade = Trade::Electrical;
                t.state = TaskState::Done;
                t.doneOn = QDate(2026, 6, 14);
            });
        WorkEntry entry;
        entry.task = done;
        entry.on = QDate(2026, 6, 14);
        entry.minutes = 150;
        m_six.book.add(entry);
    }
    const Id<Task> open =
        m_six.add("wire-more", 200, {}, [](Task &t) { t.trade = Trade::Electrical; });
    showAndWait();
    EXPECT_EQ(m_six.book.records().find(open)->workMinutes, 200);
    QPushButton *take = nullptr;
    for (auto *button : m_page.findChildren<QPushButton *>())
        if (button->text().contains(QStringLiteral("open estimates")))
            take = button;
    ASSERT_NE(take, nullptr);
    take->setFocus();
    press(Qt::Key_Space);
    EXPECT_EQ(m_six.book.records().find(open)->workMinutes, 300);
}

} // namespace
} // namespace ohmwright::ui
