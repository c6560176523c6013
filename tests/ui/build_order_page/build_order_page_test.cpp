// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/parts/consistency.h"
#include "core/parts/guided_tests.h"
#include "core/plan/plan_edits.h"
#include "tests/support/test_book.h"
#include "tests/ui/driving.h"
#include "ui/build_order/build_order_page.h"
#include "ui/build_order/loom_sheet.h"
#include "ui/build_order/loom_view.h"
#include "ui/build_order/moves_model.h"
#include "ui/build_order/needs_model.h"
#include "ui/build_order/record_forms.h"
#include "ui/build_order/task_editor.h"
#include "ui/widgets/caution_card.h"
#include "ui/widgets/drafted_table_delegate.h"
#include "ui/widgets/entry_form.h"
#include "ui/widgets/pick_or_new.h"

#include <QAbstractButton>
#include <QAbstractItemModelTester>
#include <QCheckBox>
#include <QComboBox>
#include <QFile>
#include <QLabel>
#include <QLineEdit>
#include <QSignalSpy>
#include <QTableView>
#include <QTemporaryDir>

#include <gtest/gtest.h>

#include <optional>

using namespace ohmwright;
using namespace ohmwright::ui;
using namespace ohmwright::ui::driving;

namespace {

class TheBuildOrderPage : public testing::Test
{
protected:
    TheBuildOrderPage()
    {
        Task road = namedTask("Road-ready", true);
        road.targetOn = QDate(2026, 12, 1);
        goal = book.add(road);
        Task box = namedTask("Build battery box");
        box.area = "battery";
        box.workMinutes = 300;
        first = book.add(box);
        Task fit = namedTask("Fit pack");
        fit.area = "battery";
        fit.highVoltage = true;
        second = book.add(fit);
        after(first, second);
        after(second, goal);
    }

    void after(Id<Task> before, Id<Task> task)
    {
        TaskNeed need;
        need.task = task;
        need.kind = NeedKind::Task;
        need.after = before;
        book.add(need);
    }

    void needs(Id<Task> task, TaskNeed need)
    {
        need.task = task;
        book.add(need);
    }

    void open()
    {
        page = std::make_unique<BuildOrderPage>(*book, themed.theme);
        page->resize(1140, 740);
        showActive(*page);
    }

    QTableView *movesView()
    {
        for (auto *view : page->findChildren<QTableView *>())
            if (qobject_cast<MovesModel *>(view->model()))
                return view;
        return nullptr;
    }
    QTableView *needsView()
    {
        for (auto *view : page->findChildren<QTableView *>())
            if (qobject_cast<NeedsModel *>(view->model()))
                return view;
        return nullptr;
    }
    MovesModel *moves() { return qobject_cast<MovesModel *>(movesView()->model()); }
    LoomView *loom() { return page->findChild<LoomView *>(); }
    TaskEditor *editor() { return page->findChild<TaskEditor *>(); }
    // The visible line with that name.
    QLineEdit *line(const char *name)
    {
        for (auto *edit : page->findChildren<QLineEdit *>())
            if (edit->isVisible() && spoken(edit) == QLatin1String(name))
                return edit;
        return nullptr;
    }
    QAbstractButton *button(const char *text)
    {
        for (auto *found : page->findChildren<QAbstractButton *>())
            if (found->isVisible() && QString(found->text()).remove(u'&') == QLatin1String(text))
                return found;
        return nullptr;
    }
    // The move of that kind, chosen by keys in the list.
    void choose(plan::MoveKind kind)
    {
        movesView()->setFocus();
        press(Qt::Key_Home, Qt::ControlModifier);
        for (int row = 0; row < moves()->rowCount(); ++row) {
            if (moves()->move(movesView()->currentIndex().row())->kind == kind)
                return;
            press(Qt::Key_Down);
        }
        FAIL() << "no such move";
    }
    bool shows(const QString &words)
    {
        for (auto *label : page->findChildren<QLabel *>())
            if (label->isVisible() && label->text().contains(words))
                return true;
        return false;
    }
    const Task &task(Id<Task> id) { return *book.records().find(id); }

    Themed themed;
    TestBook book;
    Id<Task> goal, first, second;
    std::unique_ptr<BuildOrderPage> page;
};

} // namespace

TEST_F(TheBuildOrderPage, showsTheMovesOfTheNextMilestoneAndItsFigures)
{
    open();
    ASSERT_EQ(moves()->rowCount(), 1);
    EXPECT_EQ(moves()->move(0)->title, "Build battery box");
    EXPECT_TRUE(shows("1 Dec 2026"));
    EXPECT_TRUE(shows("3 tasks to go"));
    EXPECT_TRUE(shows("days on the longest chain"));
}

TEST_F(TheBuildOrderPage, marksATaskDoneByEnterAndUndoTakesItBack)
{
    open();
    const QSignalSpy said(page.get(), &BuildOrderPage::said);
    movesView()->setFocus();
    press(Qt::Key_Return);
    EXPECT_EQ(task(first).state, TaskState::Done);
    EXPECT_EQ(moves()->move(0)->title, "Fit pack");
    EXPECT_EQ(said.count(), 1);
    OHMWRIGHT_ASSERT_OK(book->undo());
    EXPECT_EQ(task(first).state, TaskState::Open);
    EXPECT_EQ(moves()->move(0)->title, "Build battery box");
}

TEST_F(TheBuildOrderPage, startsATaskByKeyOnTheChartAndTakesItBack)
{
    open();
    page->showTask(task(first).key);
    press(Qt::Key_S);
    EXPECT_EQ(task(first).state, TaskState::Started);
    EXPECT_TRUE(task(first).startedOn.has_value());
    press(Qt::Key_S);
    EXPECT_EQ(task(first).state, TaskState::Open);
    EXPECT_FALSE(task(first).startedOn.has_value());
}

TEST_F(TheBuildOrderPage, goesFromTheChartToATasksTime)
{
    open();
    page->showTask(task(first).key);
    press(Qt::Key_T);
    ASSERT_NE(line("Hands-on time"), nullptr);
    EXPECT_TRUE(line("Hands-on time")->hasFocus());
}

TEST_F(TheBuildOrderPage, showsAForecastByDateAndSavesIt)
{
    open();
    QTemporaryDir folder;
    const QString path = folder.filePath(QStringLiteral("c.svg"));
    loom()->setBy(plan::LoomBy::Date);
    page->saveChart(path, QPageSize::A3, false);
    EXPECT_FALSE(QFile::exists(path)) << "by date there must be a forecast";
    plan::LoomForecast forecast;
    forecast.today = book->clock().today();
    forecast.tasks.resize(loom()->network().tasks.size());
    for (plan::LoomDays &days : forecast.tasks)
        days.start = days.finish = 3;
    page->setForecast(forecast, loom()->network());
    EXPECT_FALSE(loom()->loom().rules.empty());
    page->saveChart(path, QPageSize::A3, false);
    EXPECT_TRUE(QFile::exists(path));
    const QString whole = folder.filePath(QStringLiteral("whole.svg"));
    page->saveChart(whole, std::nullopt, false);
    EXPECT_TRUE(QFile::exists(whole));
    const QString pdf = folder.filePath(QStringLiteral("c.pdf"));
    page->saveChart(pdf, QPageSize::A4, false, kAsReadingTakes);
    EXPECT_TRUE(QFile::exists(pdf));
}

TEST_F(TheBuildOrderPage, lightsTheTaskOfTheChosenMoveInTheChart)
{
    TaskNeed helper;
    helper.kind = NeedKind::Person;
    helper.what = "someone to hold the pack";
    needs(second, helper);
    open();
    choose(plan::MoveKind::Ask);
    EXPECT_EQ(loom()->currentTask(), task(second).key);
    EXPECT_TRUE(loom()->isFollowing());
    EXPECT_EQ(editor()->task(), second);
}

TEST_F(TheBuildOrderPage, takesAnAskedPersonAsAgreedToday)
{
    TaskNeed helper;
    helper.kind = NeedKind::Person;
    helper.what = "someone to hold the pack";
    needs(second, helper);
    open();
    choose(plan::MoveKind::Ask);
    press(Qt::Key_Return);
    EXPECT_EQ(book.records().of<TaskNeed>(second).back().metOn, book.clock.today());
}

TEST_F(TheBuildOrderPage, goesToThePartThatMustBeOrdered)
{
    TaskNeed need;
    need.kind = NeedKind::Part;
    need.part = book.add(namedPart("Coupling blank", PartState::Wanted));
    needs(first, need);
    open();
    const QSignalSpy wanted(page.get(), &BuildOrderPage::partWanted);
    choose(plan::MoveKind::Order);
    press(Qt::Key_Return);
    ASSERT_EQ(wanted.count(), 1);
    EXPECT_EQ(wanted.at(0).at(0).toString(), book.records().find(*need.part)->key);
}

TEST_F(TheBuildOrderPage, goesToTheCardOfAUnitThatDoesNotTalkAndOfAPermitThatDoesNotHold)
{
    Interface bus;
    bus.name = "Inverter's vehicle bus";
    bus.part = book.add(namedPart("Inverter"));
    TaskNeed talks;
    talks.kind = NeedKind::Interface;
    talks.interface = book.add(bus);
    needs(first, talks);
    WorkPermit permit;
    permit.name = "Close the pack";
    TaskNeed leave;
    leave.kind = NeedKind::Permit;
    leave.permit = book.add(permit);
    needs(second, leave);
    open();
    const QSignalSpy wanted(page.get(), &BuildOrderPage::recordWanted);
    choose(plan::MoveKind::FindOut);
    press(Qt::Key_Return);
    ASSERT_EQ(wanted.count(), 1);
    EXPECT_EQ(wanted.at(0).at(0).toString(), "interface");
    EXPECT_EQ(wanted.at(0).at(1).toString(), book.records().find(*talks.interface)->key);
    choose(plan::MoveKind::Ask);
    press(Qt::Key_Return);
    ASSERT_EQ(wanted.count(), 2);
    EXPECT_EQ(wanted.at(1).at(0).toString(), "work_permit");
    EXPECT_EQ(wanted.at(1).at(1).toString(), book.records().find(*leave.permit)->key);
}

TEST_F(TheBuildOrderPage, makesATaskToFindOutAFigure)
{
    TaskNeed need;
    need.kind = NeedKind::Figure;
    need.part = book.add(namedPart("Inverter"));
    need.quantity = RatedQuantity::Mass;
    needs(second, need);
    open();
    choose(plan::MoveKind::FindOut);
    press(Qt::Key_Return);
    EXPECT_EQ(book.records().all<Task>().size(), 4U);
}

TEST_F(TheBuildOrderPage, recordsWhenALetterWasAsked)
{
    Letter letter;
    letter.subject = "May the pack sit behind the seats?";
    const Id<Letter> id = book.add(letter);
    TaskNeed need;
    need.kind = NeedKind::Letter;
    need.letter = id;
    needs(first, need);
    open();
    choose(plan::MoveKind::Ask);
    press(Qt::Key_Return);
    ASSERT_NE(line("Asked on"), nullptr);
    line("Asked on")->setFocus();
    type("99 foo");
    press(Qt::Key_Return);
    EXPECT_EQ(book.records().find(id)->state, LetterState::ToAsk);
    EXPECT_EQ(line("Asked on")->text(), "99 foo");
    line("Asked on")->selectAll();
    type("yesterday");
    press(Qt::Key_Return);
    EXPECT_EQ(book.records().find(id)->state, LetterState::Asked);
    EXPECT_EQ(book.records().find(id)->askedOn, book.clock.today().addDays(-1));
    EXPECT_EQ(moves()->move(0)->kind, plan::MoveKind::Chase);
}

TEST_F(TheBuildOrderPage, recordsATestResult)
{
    TestRecord test;
    test.name = "Isolation, pack out";
    test.kind = TestKind::Isolation;
    const Id<TestRecord> id = book.add(test);
    TaskNeed need;
    need.kind = NeedKind::Test;
    need.test = id;
    needs(first, need);
    open();
    choose(plan::MoveKind::Test);
    press(Qt::Key_Return);
    auto *result = qobject_cast<QComboBox *>(QApplication::focusWidget());
    ASSERT_NE(result, nullptr);
    bool cautioned = false; // above the first field
    for (auto *card : page->findChildren<CautionCard *>())
        cautioned |= card->isVisible() && card->mapTo(page.get(), QPoint()).y() <
                                              result->mapTo(page.get(), QPoint()).y();
    EXPECT_TRUE(cautioned);
    type("p");
    press(Qt::Key_Tab);
    type("550 MOhm");
    line("On")->setFocus();
    type("today");
    press(Qt::Key_Return);
    EXPECT_EQ(book.records().find(id)->result, TestResult::Passed);
    EXPECT_EQ(book.records().find(id)->doneOn, book.clock.today());
    ASSERT_TRUE(book.records().find(id)->value);
    EXPECT_EQ(book.records().find(id)->value->si(), 550e6);
}

TEST_F(TheBuildOrderPage, goesToTheStepsOfAGuidedTestInsteadOfItsResult)
{
    TestRecord test;
    test.name = "First power-up";
    test.kind = TestKind::FirstPowerUp;
    const Id<TestRecord> id = book.add(test);
    ASSERT_TRUE(book->edit("steps", [&] { return addGuidedSteps(*book, *book.records().find(id)); })
                    .has_value());
    TaskNeed need;
    need.kind = NeedKind::Test;
    need.test = id;
    needs(first, need);
    open();
    const QSignalSpy wanted(page.get(), &BuildOrderPage::recordWanted);
    choose(plan::MoveKind::Test);
    EXPECT_NE(button("Go to its steps"), nullptr);
    EXPECT_EQ(button("Keep the result"), nullptr) << "it would pass with every step open";
    press(Qt::Key_Return);
    ASSERT_EQ(wanted.count(), 1);
    EXPECT_EQ(wanted.at(0).at(0).toString(), "test_record");
    EXPECT_EQ(wanted.at(0).at(1).toString(), book.records().find(id)->key);
}

TEST_F(TheBuildOrderPage, refusesAResultThatAProvenSystemRestsOn)
{
    TestRecord test;
    test.name = "Stop button, tried";
    test.result = TestResult::Passed;
    test.doneOn = book.clock.today();
    const Id<TestRecord> id = book.add(test);
    SafetySystem system;
    system.name = "Stop button";
    system.test = id;
    system.state = SafetyState::Proven;
    book.add(system);
    TestForm form(*book, themed.theme);
    form.setTest(id);
    showActive(form);
    form.begin();
    type("f");
    press(Qt::Key_Tab);
    press(Qt::Key_Return);
    EXPECT_EQ(book.records().find(id)->result, TestResult::Passed);
    EXPECT_TRUE(findInconsistencies(book.records()).empty());
}

TEST_F(TheBuildOrderPage, inALowWindowShowsTheChartOrWhatStandsBelow)
{
    open();
    EXPECT_EQ(button("Moves"), nullptr);
    page->resize(900, 380);
    QApplication::processEvents();
    ASSERT_NE(button("Moves"), nullptr);
    EXPECT_TRUE(loom()->isVisible());
    EXPECT_FALSE(movesView()->isVisible());
    button("Moves")->click();
    EXPECT_FALSE(loom()->isVisible());
    EXPECT_TRUE(movesView()->isVisible());
    page->resize(1140, 740);
    QApplication::processEvents();
    EXPECT_TRUE(loom()->isVisible());
    EXPECT_TRUE(movesView()->isVisible());
}

TEST_F(TheBuildOrderPage, addsATaskAfterTheChosenOneByN)
{
    open();
    page->showTask(task(second).key);
    press(Qt::Key_N);
    type("Torque the pack bolts");
    press(Qt::Key_Return);
    const Task *made = book.records().byKey<Task>("torque-the-pack-bolts");
    ASSERT_NE(made, nullptr);
    EXPECT_EQ(made->area, "battery");
    EXPECT_EQ(book.records().of<TaskNeed>(made->id).front().after, second);
    EXPECT_EQ(loom()->currentTask(), "torque-the-pack-bolts");
}

TEST_F(TheBuildOrderPage, refusesALinkThatClosesALoopAndNamesTheLoop)
{
    open();
    const QSignalSpy said(page.get(), &BuildOrderPage::said);
    emit loom()->linkRequested(task(second).key, task(first).key);
    ASSERT_EQ(said.count(), 1);
    EXPECT_EQ(said.at(0).at(1).value<Tone>(), Tone::Problem);
    const QString sentence = said.at(0).at(0).toString();
    EXPECT_TRUE(sentence.contains("loop"));
    EXPECT_TRUE(sentence.contains("Fit pack"));
    EXPECT_TRUE(sentence.contains("Build battery box"));
}

TEST_F(TheBuildOrderPage, refusesToFinishATaskThatStillNeedsSomethingAndSaysWhat)
{
    open();
    page->showTask(task(second).key);
    press(Qt::Key_D);
    EXPECT_EQ(task(second).state, TaskState::Open);
    EXPECT_TRUE(shows("“Build battery box” is not done"));
}

TEST_F(TheBuildOrderPage, keepsEachLineOfATaskWhenItIsLeft)
{
    open();
    page->showTask(task(first).key);
    press(Qt::Key_Return);
    ASSERT_EQ(QApplication::focusWidget(), line("Title"));
    type("Weld battery box");
    press(Qt::Key_Tab);
    EXPECT_EQ(task(first).title, "Weld battery box");
    line("Hands-on time")->setFocus();
    line("Hands-on time")->selectAll();
    type("90 min");
    press(Qt::Key_Tab);
    EXPECT_EQ(task(first).workMinutes, 90);
    EXPECT_EQ(line("Hands-on time")->text(), "1 h 30 min");
    type("2 wk");
    press(Qt::Key_Tab);
    EXPECT_EQ(task(first).waitDays, 14);
    OHMWRIGHT_ASSERT_OK(book->undo());
    OHMWRIGHT_ASSERT_OK(book->undo());
    EXPECT_EQ(line("Hands-on time")->text(), "5 h");
}

TEST_F(TheBuildOrderPage, refusesATimeThatIsNoneAndKeepsWhatWasTyped)
{
    open();
    page->showTask(task(first).key);
    line("Hands-on time")->setFocus();
    line("Hands-on time")->selectAll();
    type("3 kg");
    press(Qt::Key_Tab);
    EXPECT_EQ(task(first).workMinutes, 300);
    EXPECT_EQ(line("Hands-on time")->text(), "3 kg");
    EXPECT_FALSE(spoken(line("Hands-on time"), QAccessible::Description).isEmpty());
}

TEST_F(TheBuildOrderPage, addsANeedOfAKindAndTakesItOutByDelete)
{
    open();
    page->showTask(task(first).key);
    auto *kind = page->findChildren<QComboBox *>().last();
    for (auto *combo : page->findChildren<QComboBox *>())
        if (combo->isVisible() && combo->findText("second person") >= 0)
            kind = combo;
    kind->setFocus();
    type("second");
    line("Which")->setFocus();
    type("Jo");
    press(Qt::Key_Return);
    press(Qt::Key_Return);
    ASSERT_EQ(book.records().of<TaskNeed>(first).size(), 1U);
    EXPECT_EQ(book.records().of<TaskNeed>(first).front().what, "Jo");
    EXPECT_EQ(needsView()->model()->rowCount(), 1);
    needsView()->setFocus();
    press(Qt::Key_Delete);
    EXPECT_TRUE(book.records().of<TaskNeed>(first).empty());
}

TEST_F(TheBuildOrderPage, addsAnAppointmentThatEachAttemptUsesUp)
{
    open();
    page->showTask(task(first).key);
    QComboBox *kind = nullptr;
    for (auto *combo : page->findChildren<QComboBox *>())
        if (combo->isVisible() && combo->findText("second person") >= 0)
            kind = combo;
    ASSERT_NE(kind, nullptr);
    const char *usedUp = "Used up by each attempt: needed anew if the test fails";
    kind->setFocus();
    type("second");
    EXPECT_EQ(button(usedUp), nullptr) << "a helper is there again";
    kind->setFocus();
    press(Qt::Key_Up); // letter or approval
    line("Which")->setFocus();
    type("Slot at the hall");
    ASSERT_NE(button(usedUp), nullptr);
    button(usedUp)->setFocus();
    press(Qt::Key_Space);
    ASSERT_NE(button("Add this need"), nullptr);
    button("Add this need")->setFocus();
    press(Qt::Key_Space);
    ASSERT_EQ(book.records().of<TaskNeed>(first).size(), 1U);
    EXPECT_EQ(book.records().of<TaskNeed>(first).front().eachTime, true);
    const QString below =
        needsView()->model()->index(0, NeedsModel::What).data(SecondLineRole).toString();
    EXPECT_TRUE(below.contains(", anew each time")) << below.toStdString();
    EXPECT_FALSE(qobject_cast<QCheckBox *>(button(usedUp))->isChecked()) << "not for the next need";
}

TEST_F(TheBuildOrderPage, showsTheHighVoltageCautionOnSuchATaskOnly)
{
    open();
    page->showTask(task(second).key);
    ASSERT_NE(page->findChild<CautionCard *>(), nullptr);
    EXPECT_TRUE(shows("High voltage, also after switching off"));
    page->showTask(task(goal).key);
    EXPECT_FALSE(shows("High voltage, also after switching off"));
}

TEST_F(TheBuildOrderPage, teachesWhenThereIsNothingYet)
{
    TestBook fresh;
    BuildOrderPage empty(*fresh, themed.theme);
    empty.resize(900, 600);
    showActive(empty);
    auto *start = empty.findChild<QAbstractButton *>();
    for (auto *found : empty.findChildren<QAbstractButton *>())
        if (found->isVisible())
            start = found;
    start->setFocus();
    press(Qt::Key_Space);
    type("Take the engine out");
    press(Qt::Key_Return);
    EXPECT_EQ(fresh.records().all<Task>().size(), 1U);
}

TEST_F(TheBuildOrderPage, namesEverythingThatCanHaveTheFocus)
{
    TaskNeed helper;
    helper.kind = NeedKind::Person;
    helper.what = "Jo";
    needs(second, helper);
    open();
    page->showTask(task(second).key);
    for (auto *widget : page->findChildren<QWidget *>()) {
        if (widget->isVisible() && (widget->focusPolicy() & Qt::TabFocus) && widget->isEnabled() &&
            !widget->focusProxy()) {
            EXPECT_FALSE(spoken(widget).isEmpty()) << widget->metaObject()->className();
        }
    }
}

TEST(TheMovesModel, keepsTheContractOfAModel)
{
    MovesModel model;
    const QAbstractItemModelTester tester(&model,
                                          QAbstractItemModelTester::FailureReportingMode::Fatal);
    plan::Move move;
    move.subject = "a";
    move.title = "A";
    move.latestStart = QDate(2026, 6, 10);
    model.setMoves({move, move}, QDate(2026, 6, 15));
    EXPECT_EQ(model.rowCount(), 2);
    EXPECT_TRUE(model.index(0, 0).data(Qt::AccessibleTextRole).toString().contains("5 days late"));
    model.setMoves({}, QDate(2026, 6, 15));
    EXPECT_EQ(model.rowCount(), 0);
}

TEST(TheNeedsModel, keepsTheContractOfAModel)
{
    NeedsModel model;
    const QAbstractItemModelTester tester(&model,
                                          QAbstractItemModelTester::FailureReportingMode::Fatal);
    NeedRow row;
    row.what = "Inverter";
    row.kind = "part";
    model.setRows({row});
    EXPECT_EQ(model.openCount(), 1);
    EXPECT_TRUE(model.index(0, 0).data(Qt::AccessibleTextRole).toString().contains("open"));
    model.setRows({});
    EXPECT_EQ(model.rowCount(), 0);
}
