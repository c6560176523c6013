// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/build_order/task_editor.h"

#include "core/parts/cautions.h"
#include "core/plan/plan_edits.h"
#include "core/plan/plan_view.h"
#include "core/quantity/amount.h"
#include "core/quantity/dates.h"
#include "ui/build_order/estimate_form.h"
#include "ui/build_order/need_form.h"
#include "ui/build_order/needs_model.h"
#include "ui/build_order/task_texts.h"
#include "ui/shell/theme.h"
#include "ui/widgets/caution_card.h"
#include "ui/widgets/drafted_table_delegate.h"
#include "ui/widgets/entry_form.h"
#include "ui/widgets/pick_or_new.h"
#include "ui/widgets/problem_line.h"
#include "ui/widgets/section_title.h"
#include "ui/widgets/state_mark.h"
#include "ui/widgets/wrap_layout.h"

#include <QCheckBox>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLineEdit>
#include <QPushButton>
#include <QShortcut>
#include <QTableView>
#include <QVBoxLayout>

#include <algorithm>

namespace ohmwright::ui {

namespace {

const QString kTitle = QStringLiteral("title");
const QString kArea = QStringLiteral("area");
const QString kWork = QStringLiteral("work_minutes");
const QString kWait = QStringLiteral("wait_days");
const QString kMilestone = QStringLiteral("milestone");
const QString kHighVoltage = QStringLiteral("high_voltage");
const QString kFixed = QStringLiteral("fixed_on");
const QString kTarget = QStringLiteral("target_on");
const QString kNote = QStringLiteral("note");

constexpr auto kHalf = EntryForm::Width::Half;
constexpr int kMostNeedsShown = 6;

} // namespace

TaskEditor::TaskEditor(Book &book, const Theme &theme, QWidget *parent)
    : QWidget(parent), m_book(book), m_theme(theme), m_heading(new SectionTitle(theme, tr("Task"))),
      m_state(new StateMark(theme, Mark::Waits)), m_done(new QPushButton),
      m_start(new QPushButton(tr("&Start"))), m_remove(new QPushButton(tr("Remove"))),
      m_problem(new ProblemLine(theme)), m_cautions(new QVBoxLayout),
      m_form(new EntryForm(theme, QString())), m_area(new PickOrNew(theme)),
      m_needsHeading(new SectionTitle(theme, tr("Needs"))), m_needs(new NeedsModel(this)),
      m_needsView(new QTableView), m_takeOut(new QPushButton(tr("Take it out"))),
      m_meet(new QPushButton(tr("Met today"))), m_needForm(new NeedForm(book, theme)),
      m_estimate(new EstimateForm(book, theme))
{
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(8);
    column->addWidget(m_heading);
    auto *head = new QWidget; // the buttons go below the state where both do not fit
    auto *row = new WrapLayout(head, 8);
    m_state->setMinimumHeight(m_start->sizeHint().height()); // in line with the buttons
    row->addWidget(m_state);
    for (QPushButton *button : {m_start, m_done, m_remove})
        row->addWidget(button);
    column->addWidget(head);
    column->addWidget(m_problem);
    makeForm();
    column->addWidget(m_form);
    column->addWidget(m_needsHeading);
    makeNeeds();
    column->addWidget(m_needsView);
    auto *needButtons = new QHBoxLayout;
    needButtons->setSpacing(8);
    needButtons->addWidget(m_meet);
    needButtons->addWidget(m_takeOut);
    needButtons->addStretch(1);
    column->addLayout(needButtons);
    column->addWidget(m_needForm);
    column->addWidget(m_estimate);
    connect(m_estimate, &EstimateForm::notKept, this, &TaskEditor::notKept);
    column->addLayout(m_cautions);
    m_remove->setAccessibleName(tr("Remove this task"));
    m_takeOut->setAccessibleDescription(tr("Takes the chosen need out of the task"));
    m_meet->setAccessibleDescription(tr("Says that the chosen need is met since today"));
    connect(m_done, &QPushButton::clicked, this, &TaskEditor::toggleDone);
    connect(m_start, &QPushButton::clicked, this, &TaskEditor::toggleStarted);
    connect(m_remove, &QPushButton::clicked, this, &TaskEditor::remove);
    connect(m_takeOut, &QPushButton::clicked, this, &TaskEditor::takeOutNeed);
    connect(m_meet, &QPushButton::clicked, this, &TaskEditor::meetChosenNeed);
}

void TaskEditor::makeForm()
{
    m_form->addLine(kTitle, tr("Title"));
    m_form->addEditor(kArea, tr("Area"), m_area, kHalf);
    m_form->addCheck(kHighVoltage, tr("High voltage"), kHalf);
    m_form->addLine(kWork, tr("Hands-on time"), kHalf);
    m_form->addLine(kWait, tr("Then waits"), kHalf);
    m_form->addCheck(kMilestone, tr("Milestone"), EntryForm::Width::Full);
    m_form->addLine(kFixed, tr("Appointment on"), kHalf);
    m_form->addLine(kTarget, tr("Wished for"), kHalf);
    m_form->addLine(kNote, tr("Note"));
    m_form->setSavesItself(true);
    m_form->setSave([this] { return keep(); });
    connect(m_form, &EntryForm::saved, this, &TaskEditor::refresh);
}

void TaskEditor::makeNeeds()
{
    auto *delegate = new DraftedTableDelegate(m_theme, this);
    m_needsView->setModel(m_needs);
    delegate->dress(*m_needsView, true);
    m_needsView->setSelectionMode(QAbstractItemView::SingleSelection);
    m_needsView->setAccessibleName(tr("Needs of this task"));
    m_needsView->horizontalHeader()->hide();
    m_needsView->setColumnWidth(NeedsModel::State, 92);
    connect(m_needsView->selectionModel(), &QItemSelectionModel::currentChanged, this,
            &TaskEditor::chooseNeed);
    connect(m_needsView, &QTableView::activated, this, &TaskEditor::openNeed);
    auto *out = new QShortcut(Qt::Key_Delete, m_needsView);
    out->setContext(Qt::WidgetShortcut);
    connect(out, &QShortcut::activated, this, &TaskEditor::takeOutNeed);
}

void TaskEditor::setTask(Id<Task> task)
{
    if (m_task != task) {
        if (m_form->isTouched() && !m_form->save()) {
            emit notKept(tr("What was typed for “%1” was not kept. %2")
                             .arg(m_form->text(kTitle), m_form->problem()));
        }
        m_form->forgetTouched();
        m_form->clearProblems();
        m_problem->setProblem({});
    }
    m_task = task;
    m_needForm->setTask(task);
    m_estimate->setTask(task);
    refresh();
}

void TaskEditor::refresh()
{
    const Records &records = m_book.records();
    const Task *task = records.find(m_task);
    setEnabled(task);
    if (!task)
        return;
    if (!m_form->isTouched()) {
        QStringList areas;
        for (const Task &other : records.all<Task>())
            if (!other.area.isEmpty() && !areas.contains(other.area))
                areas << other.area;
        std::vector<KnownName> known;
        for (const QString &area : areas)
            known.push_back({area, area, {}});
        m_area->setKnown(std::move(known));
        m_area->setKey(task->area);
        m_form->setText(kTitle, task->title);
        m_form->setText(kWork, showWorkTime(task->workMinutes));
        m_form->setText(kWait, showWaitDays(task->waitDays));
        m_form->setText(kNote, task->note);
        m_form->setDate(kFixed, task->fixedOn);
        m_form->setDate(kTarget, task->targetOn);
    }
    m_form->setChecked(kMilestone, task->milestone);
    m_form->setChecked(kHighVoltage, task->highVoltage);
    m_form->setFieldVisible(kFixed, task->milestone);
    m_form->setFieldVisible(kTarget, task->milestone);
    m_heading->setText(task->milestone ? tr("Milestone") : tr("Task"));
    const bool finished = task->state == TaskState::Done;
    m_done->setText(finished ? tr("Open it again") : tr("Mark it &done"));
    m_start->setVisible(task->state == TaskState::Open && !task->milestone);
    showNeeds(*task);
    m_estimate->refresh();
    m_state->setMark(finished                   ? Mark::Done
                     : m_needs->openCount() > 0 ? Mark::Waits
                                                : Mark::CanStart);
    if (finished)
        m_state->setWords(tr("done %1").arg(showDate(*task->doneOn)));
    else if (task->state == TaskState::Started)
        m_state->setWords(task->startedOn ? tr("under way since %1").arg(showDate(*task->startedOn))
                                          : tr("under way"));
    else
        m_state->setWords(markWord(m_state->mark()));
    showCaution(*task);
}

void TaskEditor::showCaution(const Task &task)
{
    const auto caution = cautionFor(task);
    const QString id = caution ? caution->id : QString();
    if (id == m_cautionId)
        return;
    m_cautionId = id;
    delete m_caution;
    m_caution = nullptr;
    if (!caution)
        return;
    m_caution = new CautionCard(m_theme, caution->title, caution->lines);
    m_caution->setHighVoltage(caution->highVoltage);
    m_cautions->addWidget(m_caution);
    m_caution->show();
}

void TaskEditor::showNeeds(const Task &task)
{
    const int before = m_needsView->currentIndex().row();
    m_needs->setRows(needRows(m_book.records(), task.id, m_book.clock().today()));
    const int count = m_needs->rowCount();
    m_needsHeading->setRemark(
        count == 0 ? tr("nothing yet")
                   : tr("%1 of %2 met").arg(count - m_needs->openCount()).arg(count));
    m_needsView->setVisible(count > 0);
    m_needsView->setFixedHeight(std::min(count, kMostNeedsShown) *
                                    m_needsView->verticalHeader()->defaultSectionSize() +
                                2 * m_needsView->frameWidth());
    if (count > 0)
        m_needsView->setCurrentIndex(
            m_needs->index(std::clamp(before, 0, count - 1), NeedsModel::State));
    chooseNeed();
    m_needForm->refresh();
}

void TaskEditor::chooseNeed()
{
    const NeedRow *need = m_needs->row(m_needsView->currentIndex().row());
    m_takeOut->setVisible(need);
    m_meet->setVisible(need && need->bySaying);
    if (need)
        m_meet->setText(need->met ? tr("Not met after all") : tr("Met today"));
}

void TaskEditor::begin()
{
    auto *title = qobject_cast<QLineEdit *>(m_form->editor(kTitle));
    title->setFocus();
    title->selectAll();
}

Outcome TaskEditor::fillIn(Task &task) const
{
    task.title = m_form->text(kTitle);
    if (task.title.isEmpty())
        return fail(ProblemCode::BadInput, tr("The task needs a title."), {}, kTitle);
    task.area = m_area->name();
    task.note = m_form->text(kNote);
    const Result<int> work = readWorkMinutes(m_form->text(kWork));
    if (!work)
        return fail(work.error().code, work.error().sentence, work.error().whatToDo, kWork);
    task.workMinutes = *work;
    const Result<int> wait = readWaitDays(m_form->text(kWait));
    if (!wait)
        return fail(wait.error().code, wait.error().sentence, wait.error().whatToDo, kWait);
    task.waitDays = *wait;
    task.highVoltage = m_form->isChecked(kHighVoltage);
    task.milestone = m_form->isChecked(kMilestone);
    const QDate today = m_book.clock().today();
    const auto fixed = m_form->date(kFixed, today);
    const auto target = m_form->date(kTarget, today);
    if (!fixed)
        return fail(fixed.error());
    if (!target)
        return fail(target.error());
    // only a milestone has a date to keep
    task.fixedOn = task.milestone ? *fixed : std::nullopt;
    task.targetOn = task.milestone ? *target : std::nullopt;
    return {};
}

Outcome TaskEditor::keep()
{
    const Task *found = m_book.records().find(m_task);
    if (!found)
        return fail(ProblemCode::NotFound, tr("This task is no longer in the book."));
    Task task = *found;
    if (Outcome filled = fillIn(task); !filled)
        return filled;
    if (task == *found)
        return {};
    return m_book.edit(tr("Change “%1”").arg(task.title), [&] { return m_book.update(task); });
}

void TaskEditor::tell(const Outcome &outcome)
{
    m_problem->setProblem(outcome ? QString() : told(outcome.error()));
}

void TaskEditor::toggleDone()
{
    const Task *task = m_book.records().find(m_task);
    if (!task)
        return;
    const QString title = task->title;
    const bool open = task->state == TaskState::Done;
    const Outcome changed =
        open ? reopenTask(m_book, m_task) : finishTask(m_book, m_task, m_book.clock().today());
    tell(changed);
    if (changed)
        emit done(open ? tr("“%1” is open again.").arg(title) : tr("“%1” is done.").arg(title));
    else
        emit notKept(told(changed.error()));
}

void TaskEditor::toggleStarted()
{
    const Task *task = m_book.records().find(m_task);
    if (!task)
        return;
    const QString title = task->title;
    const bool start = task->state != TaskState::Started;
    const Outcome changed = setTaskStarted(m_book, m_task, start, m_book.clock().today());
    tell(changed);
    if (changed)
        emit done(start ? tr("“%1” is under way.").arg(title)
                        : tr("“%1” is not begun after all.").arg(title));
    else
        emit notKept(told(changed.error()));
}

void TaskEditor::beginTime()
{
    auto *time = qobject_cast<QLineEdit *>(m_form->editor(kWork));
    time->setFocus();
    time->selectAll();
}

void TaskEditor::remove()
{
    const QString title = m_form->text(kTitle);
    const Outcome removed = removeTask(m_book, m_task);
    tell(removed);
    if (removed)
        emit done(tr("“%1” is removed. Undo brings it back.").arg(title));
}

void TaskEditor::takeOutNeed()
{
    if (const NeedRow *need = m_needs->row(m_needsView->currentIndex().row()))
        tell(removeNeed(m_book, need->need));
}

void TaskEditor::meetChosenNeed()
{
    const NeedRow *need = m_needs->row(m_needsView->currentIndex().row());
    if (!need || !need->bySaying)
        return;
    tell(meetNeed(m_book, need->need,
                  need->met ? std::nullopt : std::optional(m_book.clock().today())));
}

void TaskEditor::openNeed()
{
    const NeedRow *need = m_needs->row(m_needsView->currentIndex().row());
    const Part *part = need ? m_book.records().find(need->part) : nullptr;
    if (part)
        emit partWanted(part->key);
}

} // namespace ohmwright::ui
