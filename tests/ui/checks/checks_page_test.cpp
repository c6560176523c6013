// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/test_book.h"
#include "tests/ui/checks/sample_checks.h"
#include "tests/ui/driving.h"
#include "ui/checks/check_sheet.h"
#include "ui/checks/checks_list.h"
#include "ui/checks/checks_model.h"
#include "ui/checks/checks_page.h"
#include "ui/checks/given_table.h"
#include "ui/checks/plot_view.h"
#include "ui/checks/try_bar.h"
#include "ui/widgets/caution_card.h"
#include "ui/widgets/drafted_table_delegate.h"
#include "ui/widgets/problem_line.h"
#include "ui/widgets/state_mark.h"

#include <QElapsedTimer>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QScrollBar>
#include <QSignalSpy>
#include <QTableView>

#include <gtest/gtest.h>

using namespace ohmwright;
using namespace ohmwright::ui;
using namespace ohmwright::ui::driving;

namespace {

class NoOutside : public Outside
{
public:
    QStringList chooseFiles(QWidget *, const QString &, const QString &) override { return {}; }
    QString chooseSaveFile(QWidget *, const QString &, const QString &, const QString &) override
    {
        return {};
    }
    void openFile(const QString &) override {}
    void openAddress(const QUrl &) override {}
};

class TheChecksPage : public testing::Test
{
protected:
    void open()
    {
        page = std::make_unique<ChecksPage>(*book, source, themed.theme, outside);
        page->resize(1160, 740);
        showActive(*page);
    }
    QTableView *table() { return &page->list().table(); }
    ChecksModel *model() { return qobject_cast<ChecksModel *>(table()->model()); }
    const CheckEntry *current() { return model()->entryAt(table()->currentIndex().row()); }
    QString shownTitle()
    {
        return page->sheet().view() ? page->sheet().view()->entry.check.title : QString();
    }
    // All words to be seen on the page of working.
    QString words()
    {
        QStringList all;
        for (auto *label : page->sheet().widget()->findChildren<QLabel *>())
            if (!label->isHidden())
                all << label->text();
        return all.join(QLatin1Char('\n'));
    }
    GivenTable *given()
    {
        // a page that is on its way out is still somebody's child for a moment
        return page->sheet().widget()->findChild<GivenTable *>();
    }
    ValueCell *cell(const char *field) { return given()->cell(QLatin1String(field)); }
    QLineEdit *line() { return qobject_cast<QLineEdit *>(QApplication::focusWidget()); }
    QLineEdit *filter() { return page->list().findChild<QLineEdit *>(); }
    QPushButton *button(const char *text)
    {
        for (auto *found : page->findChildren<QPushButton *>())
            if (found->isVisible() && QString(found->text()).remove(u'&') == QLatin1String(text))
                return found;
        return nullptr;
    }
    void editCurrent(const char *field, const char *typed)
    {
        cell(field)->setFocus();
        press(Qt::Key_Return);
        ASSERT_NE(line(), nullptr);
        line()->selectAll();
        line()->insert(QString::fromUtf8(typed));
        press(Qt::Key_Return);
    }

    Themed themed;
    TestBook book;
    NoOutside outside;
    samples::SampleSource source;
    std::unique_ptr<ChecksPage> page;
};

} // namespace

TEST_F(TheChecksPage, OpensTheWorstOfTheFirstGroup)
{
    open();
    ASSERT_TRUE(model()->isHeading(0));
    ASSERT_NE(current(), nullptr);
    EXPECT_EQ(table()->currentIndex().row(), 1);
    EXPECT_EQ(shownTitle(), model()->entryAt(1)->check.title);
}

TEST_F(TheChecksPage, GoesThroughTheChecksByArrowsAndPassesOverHeadings)
{
    open();
    table()->setFocus();
    QStringList seen{shownTitle()};
    for (int i = 0; i < 8; ++i) {
        press(Qt::Key_Down);
        ASSERT_NE(current(), nullptr);
        EXPECT_EQ(shownTitle(), current()->check.title);
        seen << shownTitle();
    }
    EXPECT_EQ(seen.size(), 9);
    EXPECT_EQ(QSet<QString>(seen.begin(), seen.end()).size(), 9);
    press(Qt::Key_Up);
    EXPECT_EQ(shownTitle(), seen.at(7));
}

TEST_F(TheChecksPage, EntersThePageOfWorkingByEnter)
{
    open();
    page->showCheck(QStringLiteral("precharge"));
    table()->setFocus();
    press(Qt::Key_Return);
    EXPECT_NE(qobject_cast<ValueCell *>(QApplication::focusWidget()), nullptr);
    page->showCheck(QStringLiteral("range")); // nothing of it can be edited
    table()->setFocus();
    press(Qt::Key_Return);
    EXPECT_EQ(QApplication::focusWidget(), &page->sheet());
    const int before = page->sheet().verticalScrollBar()->value();
    press(Qt::Key_PageDown);
    EXPECT_GT(page->sheet().verticalScrollBar()->value(), before);
}

TEST_F(TheChecksPage, ShowsAllOfACheck)
{
    open();
    page->showCheck(QStringLiteral("precharge"));
    const Check &check = page->sheet().view()->entry.check;
    const QString told = words();
    EXPECT_TRUE(told.contains(check.sentence));
    EXPECT_TRUE(told.contains(check.source));
    EXPECT_TRUE(told.contains(QStringLiteral("Traction circuit")));
    for (const CheckInput &input : check.inputs) {
        EXPECT_TRUE(told.contains(input.origin.name)) << input.origin.name.toStdString();
        EXPECT_TRUE(told.contains(input.origin.path));
        EXPECT_TRUE(told.contains(input.origin.source));
    }
    for (const CheckStep &step : check.steps) {
        EXPECT_TRUE(told.contains(step.what));
        EXPECT_TRUE(told.contains(step.result));
    }
    for (const Comparison &c : check.comparisons) {
        EXPECT_TRUE(told.contains(c.what));
        EXPECT_TRUE(told.contains(c.limitFrom));
    }
    EXPECT_TRUE(told.contains(check.afterwards));
    EXPECT_TRUE(told.contains(QStringLiteral("Older than the rework")));
    EXPECT_NE(page->sheet().widget()->findChild<CautionCard *>(), nullptr);
}

TEST_F(TheChecksPage, ShowsBothVerdictsOfALoosenedThresholdWithTheReason)
{
    open();
    page->showCheck(QStringLiteral("precharge"));
    const Check &check = page->sheet().view()->entry.check;
    ASSERT_TRUE(check.publishedVerdict);
    const QString told = words();
    EXPECT_TRUE(told.contains(
        QStringLiteral("as published: %1").arg(verdictWord(*check.publishedVerdict))));
    EXPECT_TRUE(told.contains(check.loosened.front().reason));
    EXPECT_TRUE(told.contains(check.loosened.front().published));
}

TEST_F(TheChecksPage, DrawsThePlotsOfACheck)
{
    open();
    page->showCheck(QStringLiteral("drive"));
    auto *plot = page->sheet().widget()->findChild<PlotView *>();
    ASSERT_NE(plot, nullptr);
    EXPECT_EQ(plot->plot().title, page->sheet().view()->entry.check.plots.front().title);
}

TEST_F(TheChecksPage, EditsAValueInPlaceAndKeepsTheFocusOnIt)
{
    open();
    page->showCheck(QStringLiteral("precharge"));
    cell("precharge.resistance")->setFocus();
    press(Qt::Key_F2);
    ASSERT_NE(line(), nullptr);
    EXPECT_EQ(spoken(line()), QStringLiteral("precharge resistor"));
    line()->selectAll();
    type("47");
    press(Qt::Key_Return);
    // a bare number takes the unit that stood there
    EXPECT_EQ(source.edits, QStringList(QStringLiteral("precharge.resistance=47 Ω")));
    auto *now = qobject_cast<ValueCell *>(QApplication::focusWidget());
    ASSERT_NE(now, nullptr);
    EXPECT_EQ(now->field(), QStringLiteral("precharge.resistance"));
    EXPECT_TRUE(now->text().startsWith(QLatin1String("47")));
}

TEST_F(TheChecksPage, EditsByThePointerAndTakesWhatIsLeftByTab)
{
    open();
    page->showCheck(QStringLiteral("precharge"));
    QTest::mouseDClick(cell("link.capacitance"), Qt::LeftButton);
    ASSERT_NE(line(), nullptr);
    line()->selectAll();
    type("800 uF");
    press(Qt::Key_Tab);
    EXPECT_EQ(source.edits.size(), 1);
    EXPECT_TRUE(source.edits.front().startsWith(QLatin1String("link.capacitance=800 ")));
    auto *next = qobject_cast<ValueCell *>(QApplication::focusWidget());
    ASSERT_NE(next, nullptr);
    EXPECT_EQ(next->field(), QStringLiteral("precharge.resistance"));
}

TEST_F(TheChecksPage, LeavesAValueAsItWasByEscapeOrWhenNothingIsChanged)
{
    open();
    page->showCheck(QStringLiteral("precharge"));
    cell("precharge.resistance")->setFocus();
    press(Qt::Key_Return);
    line()->selectAll();
    type("47");
    press(Qt::Key_Escape);
    EXPECT_EQ(QApplication::focusWidget(), cell("precharge.resistance"));
    press(Qt::Key_Return);
    press(Qt::Key_Return);
    EXPECT_FALSE(cell("precharge.resistance")->isEditing());
    EXPECT_TRUE(source.edits.isEmpty());
}

TEST_F(TheChecksPage, RefusesAnotherMeasureInPlaceAndKeepsWhatWasTyped)
{
    open();
    page->showCheck(QStringLiteral("precharge"));
    editCurrent("precharge.resistance", "22 V");
    EXPECT_TRUE(source.edits.isEmpty());
    ASSERT_NE(line(), nullptr);
    EXPECT_EQ(line()->text(), QStringLiteral("22 V"));
    EXPECT_FALSE(spoken(line(), QAccessible::Description).isEmpty());
    bool shown = false;
    for (auto *problem : given()->findChildren<ProblemLine *>())
        shown = shown || (problem->isVisible() && !problem->problem().isEmpty());
    EXPECT_TRUE(shown);
    line()->selectAll();
    type("22");
    for (auto *problem : given()->findChildren<ProblemLine *>())
        EXPECT_FALSE(problem->isVisible());
}

TEST_F(TheChecksPage, TellsWhatTheBookRefusesAtTheValue)
{
    open();
    page->showCheck(QStringLiteral("precharge"));
    source.refuses = true;
    editCurrent("precharge.resistance", "22 Ω");
    ASSERT_NE(line(), nullptr);
    EXPECT_TRUE(spoken(line(), QAccessible::Description).contains("may not raise"));
}

TEST_F(TheChecksPage, KeepsWhatIsRefusedAndTypedWhenTheBookChangesElsewhere)
{
    open();
    page->showCheck(QStringLiteral("precharge"));
    editCurrent("precharge.resistance", "22 V");
    source.figures[QStringLiteral("link.capacitance")] = QStringLiteral("900 µF");
    book.add(namedPart("Another"));
    ASSERT_NE(line(), nullptr);
    EXPECT_EQ(line()->text(), QStringLiteral("22 V"));
    EXPECT_FALSE(spoken(line(), QAccessible::Description).isEmpty());
}

TEST_F(TheChecksPage, KeepsWhatIsHalfTypedWhenTheBookChangesElsewhere)
{
    open();
    page->showCheck(QStringLiteral("precharge"));
    cell("precharge.resistance")->setFocus();
    press(Qt::Key_Return);
    line()->selectAll();
    type("4");
    source.figures[QStringLiteral("link.capacitance")] = QStringLiteral("900 µF");
    book.add(namedPart("Another"));
    ASSERT_NE(line(), nullptr);
    EXPECT_EQ(line()->text(), QStringLiteral("4"));
    type("7");
    press(Qt::Key_Return);
    EXPECT_EQ(source.edits, QStringList(QStringLiteral("precharge.resistance=47 Ω")));
}

TEST_F(TheChecksPage, MakesATaskForWhatIsNotKnown)
{
    open();
    page->showCheck(QStringLiteral("circuit_ratings"));
    const QSignalSpy said(page.get(), &ChecksPage::said);
    const QString unknown = page->sheet().view()->entry.check.unknowns.front();
    QPushButton *find = given()->findOutButton(unknown);
    ASSERT_NE(find, nullptr);
    EXPECT_TRUE(spoken(find).contains(unknown));
    find->setFocus();
    press(Qt::Key_Space);
    EXPECT_EQ(source.foundOut, QStringList(QString(QStringLiteral("circuit_ratings:") + unknown)));
    EXPECT_EQ(given()->findOutButton(unknown), nullptr);
    EXPECT_TRUE(words().contains("A task finds it out"));
    EXPECT_EQ(said.count(), 1);
}

TEST_F(TheChecksPage, SaysWhenATaskCouldNotBeMade)
{
    open();
    page->showCheck(QStringLiteral("circuit_ratings"));
    source.refuses = true;
    const QSignalSpy said(page.get(), &ChecksPage::said);
    const QString unknown = page->sheet().view()->entry.check.unknowns.front();
    given()->findOutButton(unknown)->setFocus();
    press(Qt::Key_Space);
    ASSERT_EQ(said.count(), 1);
    EXPECT_EQ(said.at(0).at(1).value<Tone>(), Tone::Problem);
    EXPECT_NE(given()->findOutButton(unknown), nullptr);
}

TEST_F(TheChecksPage, FiltersByTypingAndByVerdict)
{
    open();
    filter()->setFocus();
    type("precharge");
    EXPECT_EQ(model()->rowCount(), 2);
    press(Qt::Key_Down);
    EXPECT_EQ(QApplication::focusWidget(), table());
    EXPECT_EQ(shownTitle(), model()->entryAt(1)->check.title);
    filter()->setFocus();
    press(Qt::Key_Escape);
    EXPECT_GT(model()->rowCount(), 9);
    press(Qt::Key_Tab); // over the button to try, to the first verdict: fails
    while (QApplication::focusWidget() && !spoken(QApplication::focusWidget()).contains("fails"))
        press(Qt::Key_Tab);
    press(Qt::Key_Space);
    for (int row = 0; row < model()->rowCount(); ++row)
        if (const CheckEntry *entry = model()->entryAt(row)) {
            EXPECT_EQ(entry->check.verdict, Verdict::Fails);
        }
}

TEST_F(TheChecksPage, KeepsTheChosenCheckWhenTheFilterHidesItAndShowsItAgain)
{
    open();
    page->showCheck(QStringLiteral("precharge"));
    const QString title = shownTitle();
    filter()->setFocus();
    type("nothing of the kind");
    EXPECT_EQ(model()->rowCount(), 0);
    EXPECT_EQ(shownTitle(), title);
    press(Qt::Key_Escape);
    ASSERT_NE(current(), nullptr);
    EXPECT_EQ(current()->check.title, title);
}

TEST_F(TheChecksPage, TriesOnAScratchCopyAndDropsIt)
{
    open();
    page->showCheck(QStringLiteral("precharge"));
    const Verdict before = page->sheet().view()->entry.check.verdict;
    button("Try changes")->setFocus();
    press(Qt::Key_Space);
    ASSERT_TRUE(page->isTrying());
    auto *bar = page->findChild<TryBar *>();
    EXPECT_TRUE(bar->isVisible());
    EXPECT_FALSE(bar->keepButton()->isEnabled());
    editCurrent("precharge.resistance", "400 Ω");
    EXPECT_TRUE(source.edits.isEmpty());
    const CheckEntry &entry = page->sheet().view()->entry;
    EXPECT_EQ(entry.check.verdict, Verdict::Fails);
    EXPECT_EQ(entry.before, before);
    const int row = model()->rowOf(entry.key);
    EXPECT_EQ(model()->index(row, ChecksModel::VerdictColumn).data().toString(),
              QString(verdictWord(before) + QStringLiteral(" → fails")));
    EXPECT_TRUE(words().contains("Tried; 60 Ω in the book"));
    EXPECT_TRUE(turnedTold({entry}).contains("1 verdict turns"));
    bar->dropButton()->setFocus();
    press(Qt::Key_Space);
    EXPECT_FALSE(page->isTrying());
    EXPECT_FALSE(bar->isVisible());
    EXPECT_EQ(page->sheet().view()->entry.check.verdict, before);
    EXPECT_EQ(source.figures, samples::vanFigures());
    EXPECT_FALSE(button("Try changes")->isChecked());
}

TEST_F(TheChecksPage, KeepsWhatWasTriedAsOneEdit)
{
    open();
    page->showCheck(QStringLiteral("precharge"));
    button("Try changes")->setFocus();
    press(Qt::Key_Space);
    editCurrent("precharge.resistance", "22 Ω");
    editCurrent("link.capacitance", "800 µF");
    auto *bar = page->findChild<TryBar *>();
    bar->keepButton()->setFocus();
    press(Qt::Key_Space);
    EXPECT_EQ(source.keeps, 1);
    EXPECT_EQ(source.figures.value(QStringLiteral("precharge.resistance")), QStringLiteral("22 Ω"));
    EXPECT_FALSE(page->isTrying());
    EXPECT_FALSE(page->sheet().view()->entry.before);
}

TEST_F(TheChecksPage, TellsWhenItCannotKeepAndGoesOnTrying)
{
    open();
    page->showCheck(QStringLiteral("precharge"));
    button("Try changes")->setFocus();
    press(Qt::Key_Space);
    editCurrent("precharge.resistance", "22 Ω");
    source.refuses = true;
    auto *bar = page->findChild<TryBar *>();
    bar->keepButton()->setFocus();
    press(Qt::Key_Space);
    EXPECT_TRUE(page->isTrying());
    EXPECT_TRUE(bar->findChild<ProblemLine *>()->isVisible());
    EXPECT_TRUE(bar->findChild<ProblemLine *>()->problem().contains("quicker"));
}

TEST_F(TheChecksPage, ShowsOnlyWhatTurnedWhenAsked)
{
    open();
    page->showCheck(QStringLiteral("precharge"));
    button("Try changes")->setFocus();
    press(Qt::Key_Space);
    editCurrent("precharge.resistance", "400 Ω");
    for (auto *chip : page->list().findChildren<QAbstractButton *>())
        if (chip->isVisible() && spoken(chip).contains("turned")) {
            chip->setFocus();
            press(Qt::Key_Space);
        }
    EXPECT_EQ(model()->rowCount(), 2);
}

TEST_F(TheChecksPage, TypesInTheFilterOverThreeHundredChecksWithoutDelay)
{
    source.others = [] {
        return samples::manyChecks(300);
    };
    open();
    EXPECT_EQ(model()->rowCount(), 305);
    filter()->setFocus();
    QElapsedTimer timer;
    timer.start();
    type("branch 277");
    EXPECT_LT(timer.elapsed(), 4000); // a hang, not a benchmark
    EXPECT_EQ(model()->rowCount(), 2);
    press(Qt::Key_Down);
    EXPECT_TRUE(shownTitle().startsWith(QLatin1String("Branch 277,")));
}

TEST_F(TheChecksPage, WorksTheChecksOnlyWhenItIsSeen)
{
    int worked = 0;
    source.others = [&] {
        ++worked;
        return samples::manyChecks(8);
    };
    page = std::make_unique<ChecksPage>(*book, source, themed.theme, outside);
    book.add(namedPart("Another"));
    EXPECT_EQ(worked, 0);
    page->resize(1160, 740);
    showActive(*page);
    EXPECT_EQ(worked, 1);
    book.add(namedPart("One more"));
    EXPECT_EQ(worked, 2);
}

TEST_F(TheChecksPage, TeachesWhenThereIsNothingToCheck)
{
    source.others = [] {
        return std::vector<Check>();
    };
    open();
    EXPECT_FALSE(page->sheet().view());
    EXPECT_FALSE(table()->isVisible());
}

TEST_F(TheChecksPage, NamesEverythingThatCanHaveTheFocus)
{
    open();
    for (const char *id : {"precharge", "circuit_ratings", "drive", "axle_loads"}) {
        page->showCheck(QLatin1String(id));
        for (auto *widget : page->findChildren<QWidget *>()) {
            if (widget->isVisible() && (widget->focusPolicy() & Qt::TabFocus) &&
                widget->isEnabled() && !widget->focusProxy()) {
                EXPECT_FALSE(spoken(widget).isEmpty()) << widget->metaObject()->className();
            }
        }
    }
    EXPECT_TRUE(model()
                    ->index(1, 0)
                    .data(Qt::AccessibleTextRole)
                    .toString()
                    .contains(model()->entryAt(1)->check.title));
}

namespace {

const char *const kAll[] = {"precharge",     "circuit_ratings", "drive",     "axle_loads", "pack",
                            "rotating_part", "grouping",        "discharge", "range"};

} // namespace

// At the smallest window the book is meant for.
TEST_F(TheChecksPage, CutsNothingOffAcross)
{
    open();
    for (const int width : {860, 1160, 1900}) {
        page->resize(width, 700);
        for (const char *id : kAll) {
            page->showCheck(QLatin1String(id));
            QTest::qWait(1);
            EXPECT_LE(page->sheet().widget()->width(), page->sheet().viewport()->width())
                << id << ' ' << width;
        }
    }
}

// A desktop that asks for letters of 15 points keeps them (Theme::applyTo).
TEST_F(TheChecksPage, CutsNothingOffWithLargeLetters)
{
    const QFont before = QApplication::font();
    QFont large = before;
    constexpr double kLarge = 15;
    large.setPointSizeF(kLarge);
    QApplication::setFont(large);
    themed.theme.applyTo(*qApp);
    open();
    for (const char *id : kAll) {
        page->showCheck(QLatin1String(id));
        QTest::qWait(1);
        EXPECT_LE(page->sheet().widget()->width(), page->sheet().viewport()->width()) << id;
    }
    page.reset();
    QApplication::setFont(before);
    themed.theme.applyTo(*qApp);
}

TEST_F(TheChecksPage, TellsTheMarginUnderTheVerdictAndTheSubjectOnce)
{
    open();
    const CheckEntry &entry = *model()->entryAt(1);
    const QModelIndex verdict = model()->index(1, ChecksModel::VerdictColumn);
    const QModelIndex what = model()->index(1, ChecksModel::What);
    EXPECT_EQ(verdict.data(SecondLineRole).toString(),
              marginFigure(*entry.check.margin).replace(u'-', QChar(0x2212)));
    const QString row = what.data().toString() + what.data(SecondLineRole).toString();
    EXPECT_EQ(row.count(entry.subject), 1);
}

TEST_F(TheChecksPage, TurnsThePagesOfThreeHundredChecksByTheArrowWithoutDelay)
{
    source.others = [] {
        return samples::manyChecks(300);
    };
    open();
    table()->setFocus();
    QElapsedTimer timer;
    timer.start();
    constexpr int kPages = 100;
    for (int i = 0; i < kPages; ++i)
        press(Qt::Key_Down);
    EXPECT_LT(timer.elapsed(), 8000); // a hang, not a benchmark
    RecordProperty("milliseconds_each", static_cast<int>(timer.elapsed() / kPages));
}
