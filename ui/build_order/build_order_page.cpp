// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/build_order/build_order_page.h"

#include "core/forecast/move_days.h"
#include "core/plan/loom_facts.h"
#include "core/plan/plan_edits.h"
#include "core/plan/plan_view.h"
#include "core/quantity/dates.h"
#include "ui/build_order/loom_view.h"
#include "ui/build_order/move_panel.h"
#include "ui/build_order/moves_model.h"
#include "ui/build_order/task_editor.h"
#include "ui/forecast/forecaster.h"
#include "ui/shell/theme.h"
#include "ui/widgets/empty_page.h"
#include "ui/widgets/entry_form.h"
#include "ui/widgets/section_title.h"

#include <QComboBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QResizeEvent>
#include <QScrollArea>
#include <QSplitter>
#include <QStackedWidget>
#include <QTableView>

#include <algorithm>
#include <utility>

namespace ohmwright::ui {

BuildOrderPage::~BuildOrderPage() = default;

void BuildOrderPage::showEvent(QShowEvent *event)
{
    QWidget::showEvent(event);
    if (m_stale)
        refresh();
}

void BuildOrderPage::resizeEvent(QResizeEvent *event)
{
    QWidget::resizeEvent(event);
    // too narrow for two columns: the side goes below
    const bool narrow = event->size().width() < 96 * fontMetrics().averageCharWidth();
    const Qt::Orientation wanted = narrow ? Qt::Vertical : Qt::Horizontal;
    if (m_split->orientation() != wanted)
        m_split->setOrientation(wanted);
    fitHeader();
    fitRows();
}

// The milestone's facts stand beside it where there is room, else below.
void BuildOrderPage::fitHeader()
{
    const bool beside = width() >= 150 * fontMetrics().averageCharWidth();
    if (beside == (m_headerRow->indexOf(m_facts) >= 0))
        return;
    m_headerRow->removeWidget(m_facts);
    m_headerColumn->removeWidget(m_facts);
    if (beside)
        m_headerRow->insertWidget(m_headerRow->indexOf(m_milestones) + 2, m_facts, 1);
    else
        m_headerColumn->addWidget(m_facts);
}

// A window too low for both shows the chart, or what stands below it.
void BuildOrderPage::fitRows()
{
    const bool low = height() < 30 * fontMetrics().height();
    m_below->setVisible(low);
    m_loom->setVisible(!low || !m_below->isChecked());
    m_split->setVisible(!low || m_below->isChecked());
}

void BuildOrderPage::bookChanged()
{
    m_stale = true;
    if (isVisible())
        refresh();
}

void BuildOrderPage::refresh()
{
    m_stale = false;
    const QDate today = m_book.clock().today();
    plan::Network network = plan::networkOf(m_book.records(), today);
    LoomRisks risks = loomRisksOf(m_book.records());
    const bool same =
        network == m_network && risks == m_risks && !network.tasks.empty() && today == m_shownOn;
    m_network = std::move(network);
    m_risks = std::move(risks);
    m_shownOn = today;
    const bool empty = m_network.tasks.empty() && m_newTaskBox->isHidden();
    if (empty)
        m_stack->setCurrentWidget(m_empty);
    else
        m_stack->setCurrentIndex(1);
    if (!same) {
        refreshMilestones();
        refreshMoves();
        paintChart();
    }
    m_editor->refresh();
    const plan::Move *move = m_moves->move(m_movesView->currentIndex().row());
    // who works down the list is shown what stands there now
    const bool nothingShown = !m_book.records().find(m_editor->task());
    if (move && (nothingShown || m_movesView->hasFocus())) {
        m_choosing = true;
        lightMove(*move, !nothingShown);
        m_choosing = false;
    }
    showSide();
}

void BuildOrderPage::refreshMilestones()
{
    const auto chosen = m_network.find(m_milestone);
    if (!chosen || !m_network.tasks[*chosen].milestone) {
        const auto next = plan::nextMilestone(m_network);
        m_milestone = next ? m_network.tasks[*next].key : QString();
    }
    std::vector<const plan::Task *> milestones;
    for (const plan::Task &task : m_network.tasks)
        if (task.milestone)
            milestones.push_back(&task);
    const QDate last(9999, 12, 31);
    std::stable_sort(milestones.begin(), milestones.end(),
                     [&](const plan::Task *a, const plan::Task *b) {
                         return std::pair(a->done, a->date.value_or(last)) <
                                std::pair(b->done, b->date.value_or(last));
                     });
    const QSignalBlocker quiet(m_milestones);
    m_milestones->clear();
    for (const plan::Task *task : milestones)
        m_milestones->addItem(task->done ? tr("%1 (done)").arg(task->title) : task->title,
                              task->key);
    m_milestones->setCurrentIndex(m_milestones->findData(m_milestone));
    m_milestones->setEnabled(!milestones.empty());
}

void BuildOrderPage::refreshMoves()
{
    const plan::Move *chosen = m_moves->move(m_movesView->currentIndex().row());
    const auto kind = chosen ? chosen->kind : plan::MoveKind::Do;
    const QString subject = chosen ? chosen->subject : QString();
    const int row = m_movesView->currentIndex().row();
    const QDate today = m_book.clock().today();
    m_holdUps = {};
    const auto milestone = m_network.find(m_milestone);
    const auto loop = plan::findLoop(m_network);
    if (milestone && loop.empty())
        m_holdUps = plan::holdUps(m_network, *milestone);
    if (m_told && !m_holdUps.moves.empty())
        forecast::tellLatestDays(m_holdUps, m_network, m_told->plan, m_told->orders,
                                 m_told->confidence);
    m_choosing = true;
    m_moves->setMoves(m_holdUps.moves, today);
    const int kept = chosen ? m_moves->rowOf(kind, subject) : -1;
    const int show = kept >= 0 ? kept : std::min(std::max(row, 0), m_moves->rowCount() - 1);
    if (show >= 0)
        m_movesView->setCurrentIndex(m_moves->index(show, MovesModel::Title));
    m_choosing = false;
    m_movesView->setVisible(m_moves->rowCount() > 0);
    m_noMoves->setVisible(m_moves->rowCount() == 0);
    if (!loop.empty())
        m_noMoves->setText(tr("The tasks run in a loop: %1 Take out one of these links.")
                               .arg(plan::describeLoop(m_network, loop)));
    else if (!milestone)
        m_noMoves->setText(tr("Make a task a milestone to see here what holds it up."));
    else
        m_noMoves->setText(tr("This milestone is reached."));
    m_movesHeading->setRemark(m_moves->rowCount() == 0
                                  ? QString()
                                  : tr("%1, what to start first on top").arg(m_moves->rowCount()));
    QStringList facts;
    if (milestone) {
        const plan::Task &goal = m_network.tasks[*milestone];
        facts << (goal.date ? tr("%1 (%2)").arg(showDate(*goal.date), daysAway(today, *goal.date))
                            : tr("no date yet"));
        if (m_holdUps.likely)
            facts << tr("will not be kept, likely %1: the moves keep that")
                         .arg(showDate(*m_holdUps.likely));
        if (!goal.done) {
            facts << tr("%1 days on the longest chain, hands not counted").arg(m_holdUps.chainDays);
            facts << tr("%1 tasks to go").arg(m_holdUps.chain.size());
        }
    }
    m_facts->setText(facts.join(tr("   ·   ")));
}

void BuildOrderPage::paintChart()
{
    plan::LoomFacts facts = plan::loomFactsOf(m_network, m_holdUps);
    if (m_forecast)
        facts.forecast = plan::forNetwork(*m_forecast, m_forecastOf, m_network);
    m_loom->setNetwork(m_network, facts, m_risks);
}

void BuildOrderPage::setForecast(const plan::LoomForecast &forecast, const plan::Network &made,
                                 std::shared_ptr<const ForecastTold> told)
{
    m_forecast = forecast;
    m_forecastOf = made;
    m_told = std::move(told);
    if (m_stale || m_network.tasks.empty())
        return;
    refreshMoves();
    paintChart();
}

void BuildOrderPage::setForecastMissing(const QString &sentence)
{
    m_loom->setForecastMissing(sentence);
}

void BuildOrderPage::chooseMilestone()
{
    m_milestone = m_milestones->currentData().toString();
    m_movesView->setCurrentIndex({});
    refreshMoves();
    paintChart();
    chooseMove();
}

void BuildOrderPage::showMilestone(const QString &key)
{
    if (m_stale)
        refresh();
    const int at = m_milestones->findData(key);
    if (at < 0)
        return;
    m_milestones->setCurrentIndex(at);
    chooseMilestone();
}

void BuildOrderPage::showMove(const QString &milestone, plan::MoveKind kind, const QString &subject)
{
    showMilestone(milestone);
    m_below->setChecked(true);
    if (const int row = m_moves->rowOf(kind, subject); row >= 0)
        m_movesView->setCurrentIndex(m_moves->index(row, MovesModel::Title));
    m_movesView->setFocus();
}

void BuildOrderPage::showTask(const QString &key)
{
    if (m_stale)
        refresh();
    if (!m_network.find(key))
        return;
    m_loom->setCurrentTask(key);
    chooseTask(key);
    m_loom->setFocus();
}

// The chart shows one task and what hangs together with it; a move for several is shown at the
// first of them.
void BuildOrderPage::lightMove(const plan::Move &move, bool follow)
{
    if (move.for_.empty())
        return;
    const QString key = m_network.tasks[move.for_.front()].key;
    m_loom->setCurrentTask(key);
    m_loom->setFollowing(follow);
    m_editor->setTask(idOf(key));
}

void BuildOrderPage::chooseMove()
{
    if (m_choosing)
        return;
    if (const plan::Move *move = m_moves->move(m_movesView->currentIndex().row())) {
        m_choosing = true;
        lightMove(*move, true);
        m_choosing = false;
    }
    showSide();
    m_side->ensureVisible(0, 0);
}

void BuildOrderPage::chooseTask(const QString &key)
{
    if (m_choosing)
        return;
    m_choosing = true;
    m_editor->setTask(idOf(key));
    // the move of this task itself, if that is one
    m_movesView->setCurrentIndex(
        m_moves->index(m_moves->rowOf(plan::MoveKind::Do, key), MovesModel::Title));
    m_choosing = false;
    showSide();
    m_side->ensureVisible(0, 0);
}

void BuildOrderPage::showSide()
{
    const plan::Move *move = m_moves->move(m_movesView->currentIndex().row());
    if (move)
        m_movePanel->setMove(m_network, *move);
    m_movePanel->setVisible(move);
    const bool task = m_book.records().find(m_editor->task());
    m_editor->setVisible(task);
    m_hint->setVisible(!task && !move);
}

Id<Task> BuildOrderPage::idOf(const QString &key) const
{
    const Task *task = m_book.records().byKey<Task>(key);
    return task ? task->id : Id<Task>();
}

void BuildOrderPage::tell(const Outcome &outcome, const QString &sentence)
{
    if (outcome)
        emit said(sentence, Tone::Told);
    else
        emit said(told(outcome.error()), Tone::Problem);
}

void BuildOrderPage::beginTask(const QString &afterKey, const QString &area)
{
    m_newAfterKey = afterKey;
    m_newArea = area;
    const Task *after = m_book.records().byKey<Task>(afterKey);
    m_newAfter->setText(after ? tr("It waits on “%1”.").arg(after->title)
                              : tr("It waits on nothing yet."));
    m_newTaskBox->show();
    m_below->setChecked(true);
    m_stack->setCurrentIndex(1);
    m_side->ensureVisible(0, 0);
    m_newTask->focusFirst();
}

Outcome BuildOrderPage::addNewTask()
{
    NewTask task;
    task.title = m_newTask->text(QStringLiteral("title"));
    task.area = m_newArea;
    task.milestone = m_newTask->isChecked(QStringLiteral("milestone"));
    if (const Id<Task> after = idOf(m_newAfterKey); after.isSet())
        task.after = after;
    const Result<Id<Task>> made = addTask(m_book, task);
    if (!made)
        return fail(made.error());
    const QString key = m_book.records().find(*made)->key;
    m_newTask->setText(QStringLiteral("title"), {});
    m_newTask->setChecked(QStringLiteral("milestone"), false);
    m_newTaskBox->hide();
    if (m_stale)
        refresh();
    m_loom->setCurrentTask(key);
    chooseTask(key);
    m_loom->setFocus();
    emit said(tr("“%1” is on the build order.").arg(task.title), Tone::Told);
    return {};
}

} // namespace ohmwright::ui
