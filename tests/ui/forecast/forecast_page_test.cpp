// SPDX-License-Identifier: GPL-3.0-or-later
// The forecast in the window: worked out beside it, shown, followed, given up.
#include "tests/core/forecast/six_tasks.h"
#include "tests/ui/driving.h"
#include "ui/forecast/forecast_page.h"
#include "ui/forecast/forecaster.h"
#include "ui/widgets/drafted_table_delegate.h"

#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
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

    template <class W>
    W *named(const char *name)
    {
        for (auto *widget : m_page.findChildren<W *>())
            if (widget->accessibleName() == QLatin1String(name))
                return widget;
        ADD_FAILURE() << "nothing called " << name;
        return nullptr;
    }
    QString shownText(const char *part)
    {
        for (auto *label : m_page.findChildren<QLabel *>())
            if (label->isVisible() && label->text().contains(QString::fromUtf8(part)))
                return label->text();
        return {};
    }
    QPushButton *button(const char *part)
    {
        for (auto *one : m_page.findChildren<QPushButton *>())
            if (one->isVisible() && one->text().contains(QLatin1String(part)))
                return one;
        ADD_FAILURE() << "no button " << part;
        return nullptr;
    }
    // Picks a kind of change as a person does at the keyboard.
    void pick(const char *kind)
    {
        auto *kinds = named<QComboBox>("What to try");
        ASSERT_NE(kinds, nullptr);
        m_page.ensureWidgetVisible(kinds);
        kinds->setFocus();
        press(Qt::Key_Home);
        for (int i = 0; i < kinds->count() && kinds->currentText() != QLatin1String(kind); ++i)
            press(Qt::Key_Down);
        ASSERT_EQ(kinds->currentText(), QLatin1String(kind));
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
        if (button->text().contains(QStringLiteral("open estimate")))
            take = button;
    ASSERT_NE(take, nullptr);
    take->setFocus();
    press(Qt::Key_Space);
    EXPECT_EQ(m_six.book.records().find(open)->workMinutes, 300);
}

// The coupling comes on a Monday and is fitted on the Tuesday after: hands on Monday gain that day.
TEST_F(ForecastOnPage, answersAQuestionOfOnesOwn)
{
    showAndWait();
    pick("An evening more");
    press(Qt::Key_Tab);
    ASSERT_EQ(QApplication::focusWidget(), named<QComboBox>("Day of the further evening"));
    press(Qt::Key_Tab);
    auto *hours = named<QLineEdit>("Hours on it");
    ASSERT_EQ(QApplication::focusWidget(), hours);
    QTest::keyClick(hours, Qt::Key_A, Qt::ControlModifier);
    type(QStringLiteral("2 h"));
    press(Qt::Key_Return);
    ASSERT_TRUE(QTest::qWaitFor([&] { return !shownText("Monday evenings").isEmpty(); }, 20'000));
    EXPECT_EQ(shownText("Monday evenings"),
              QStringLiteral(
                  "Monday evenings, 2\u00A0h more a week\n"
                  "rolling: at 80\u00A0%: 1\u00A0day earlier; in the mean 1\u00A0day earlier."));
    EXPECT_EQ(m_six.book.records().all<WorkingTime>().size(), 4U) << "nothing is written";

    // a newer book is asked again by itself: the coupling is there on Tuesday now
    m_six.change<Part>(m_six.coupling,
                       [](Part &p) { p.leadDays = p.leastLeadDays = p.mostLeadDays = 15; });
    EXPECT_TRUE(QTest::qWaitFor(
        [&] { return shownText("Monday evenings").endsWith(QStringLiteral("rolling: no gain.")); },
        20'000));
}

TEST_F(ForecastOnPage, refusesAChangeThatCannotBeMeant)
{
    showAndWait();
    pick("An evening more");
    auto *hours = named<QLineEdit>("Hours on it");
    for (const char *nonsense : {"many", "0", "25", "-1"}) {
        hours->setFocus();
        QTest::keyClick(hours, Qt::Key_A, Qt::ControlModifier);
        type(QLatin1String(nonsense));
        press(Qt::Key_Return);
        EXPECT_FALSE(shownText("says no hours").isEmpty()) << nonsense;
    }
    pick("More minutes a week");
    auto *minutes = named<QLineEdit>("Minutes more a week");
    minutes->setFocus();
    QTest::keyClick(minutes, Qt::Key_A, Qt::ControlModifier);
    type(QStringLiteral("1441"));
    press(Qt::Key_Return);
    EXPECT_FALSE(shownText("says no minutes").isEmpty());
    pick("Without a task");
    QTest::mouseClick(button("T&ry it"), Qt::LeftButton);
    EXPECT_FALSE(shownText("Say which task").isEmpty());
}

TEST_F(ForecastOnPage, aQuestionIsGivenUpWhenAsked)
{
    showAndWait();
    m_forecaster.setSamples(1'000'000);
    pick("A helper");
    QTest::mouseClick(button("T&ry it"), Qt::LeftButton);
    QPushButton *stop = button("S&top trying");
    ASSERT_NE(stop, nullptr);
    QTest::mouseClick(stop, Qt::LeftButton);
    EXPECT_NE(button("T&ry it"), nullptr);
    EXPECT_TRUE(shownText("A helper on").isEmpty());
}

TEST_F(ForecastOnPage, optionsStandBeneathTheirChoiceTillItIsDecided)
{
    Choice choice;
    choice.key = QStringLiteral("joint");
    choice.question = QStringLiteral("Glue or rivets");
    const Id<Choice> id = m_six.book.add(choice);
    Id<ChoiceOption> first;
    for (const char *name : {"Glue", "Rivets"}) {
        ChoiceOption option;
        option.choice = id;
        option.name = QLatin1String(name);
        const Id<ChoiceOption> added = m_six.book.add(option);
        if (!first.isSet())
            first = added;
    }
    m_six.change<Task>(m_six.glue, [&](Task &t) { t.option = first; });
    showAndWait();
    QTableView *choices = table("Open choices");
    ASSERT_EQ(choices->model()->rowCount(), 3);
    EXPECT_TRUE(cell(choices, 0, 0).startsWith(QStringLiteral("Glue or rivets")));
    EXPECT_EQ(choices->columnSpan(0, 0), choices->model()->columnCount());
    EXPECT_EQ(cell(choices, 1, 0), QStringLiteral("Glue"));
    EXPECT_EQ(cell(choices, 2, 0), QStringLiteral("Rivets"));
    QSignalSpy records(&m_page, &ForecastPage::recordWanted);
    choices->setFocus();
    choices->setCurrentIndex(choices->model()->index(2, 0));
    press(Qt::Key_Return);
    ASSERT_EQ(records.size(), 1);
    EXPECT_EQ(records[0][1].toString(), QStringLiteral("joint"));

    m_six.change<Choice>(id, [&](Choice &c) { c.taken = first; });
    EXPECT_EQ(choices->model()->rowCount(), 0) << "at once, not when the forecast is made anew";
    EXPECT_GT(table("Milestones")->model()->rowCount(), 0);
}

TEST_F(ForecastOnPage, whatTheLastOneToldStaysWhileItIsMadeAnew)
{
    showAndWait();
    const int orders = table("Order by")->model()->rowCount();
    ASSERT_GT(orders, 0);
    EXPECT_TRUE(shownText("being made anew").isEmpty());
    bool kept = true;
    QObject::connect(&m_forecaster, &Forecaster::progressed, &m_page, [&] {
        kept = kept && table("Order by")->isVisible() &&
               table("Order by")->model()->rowCount() == orders;
    });
    m_six.change<Task>(m_six.strip, [](Task &t) { t.workMinutes = t.mostWorkMinutes.value(); });
    m_six.change<Task>(m_six.strip, [](Task &t) { t.note = QStringLiteral("gently"); });
    EXPECT_FALSE(shownText("being made anew").isEmpty());
    ASSERT_TRUE(QTest::qWaitFor([&] { return !m_forecaster.isBehind(); }, 20'000));
    EXPECT_TRUE(kept);
    EXPECT_TRUE(shownText("being made anew").isEmpty());
}

// Painting is for a milestone of its own, which is due first: what “rolling” waits for is hands.
TEST_F(ForecastOnPage, saysWhatDrivesByItsHandsAlone)
{
    const Id<Task> paint = m_six.add("paint", 240, {});
    m_six.add("painted", 0, {paint}, [](Task &t) {
        t.milestone = true;
        t.fixedOn = QDate(2026, 6, 18);
    });
    m_forecaster.setMilestone(QStringLiteral("rolling"));
    showAndWait();
    QTableView *driving = table("What drives it");
    bool found = false;
    for (int row = 0; row < driving->model()->rowCount(); ++row) {
        const QString value = driving->model()->index(row, 3).data(FigureRole).toString();
        if (cell(driving, row, 0) == QStringLiteral("paint")) {
            found = true;
            EXPECT_EQ(value, QStringLiteral("hands only"));
            EXPECT_TRUE(driving->model()
                            ->index(row, 3)
                            .data(Qt::ToolTipRole)
                            .toString()
                            .contains(QStringLiteral("It could wait")));
        } else {
            EXPECT_NE(value, QStringLiteral("hands only")) << cell(driving, row, 0).toStdString();
        }
    }
    EXPECT_TRUE(found);
}

TEST_F(ForecastOnPage, figuresStandOnTheirDecimalSign)
{
    showAndWait();
    QTableView *orders = table("Order by");
    EXPECT_EQ(orders->model()->index(0, 3).data(FigureRole).toString(),
              QStringLiteral("180.00\u00A0EUR"));
    EXPECT_EQ(orders->model()->index(0, 2).data(FigureRole).toString(),
              QStringLiteral("14\u00A0days"));
    EXPECT_TRUE(orders->model()->headerData(3, Qt::Horizontal, Qt::TextAlignmentRole).toInt() &
                Qt::AlignRight);
}

} // namespace
} // namespace ohmwright::ui
