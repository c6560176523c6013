// SPDX-License-Identifier: GPL-3.0-or-later
// How the page is put together; what it does is in build_order_page.cpp.
#include "core/plan/plan_edits.h"
#include "ui/build_order/build_order_page.h"
#include "ui/build_order/loom_sheet.h"
#include "ui/build_order/loom_view.h"
#include "ui/build_order/move_panel.h"
#include "ui/build_order/moves_model.h"
#include "ui/build_order/task_editor.h"
#include "ui/shell/theme.h"
#include "ui/widgets/chip_row.h"
#include "ui/widgets/drafted_table_delegate.h"
#include "ui/widgets/empty_page.h"
#include "ui/widgets/entry_form.h"
#include "ui/widgets/section_title.h"

#include <QCheckBox>
#include <QComboBox>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QLineEdit>
#include <QMenu>
#include <QPushButton>
#include <QScrollArea>
#include <QShortcut>
#include <QSplitter>
#include <QStackedWidget>
#include <QTableView>
#include <QVBoxLayout>

#include <utility>

namespace ohmwright::ui {

namespace {

const QString kByChain = QStringLiteral("chain");
const QString kByDate = QStringLiteral("date");

LoomColours coloursOf(const Theme &theme)
{
    const Tokens &t = theme.tokens();
    return {t.paper, t.panel, t.ink, t.mute, t.blue, t.highVoltage, t.unknown};
}

QLabel *quietLabel(const QString &text = {})
{
    auto *label = new QLabel(text);
    label->setTextFormat(Qt::PlainText);
    label->setWordWrap(true);
    label->setForegroundRole(QPalette::PlaceholderText);
    return label;
}

} // namespace

BuildOrderPage::BuildOrderPage(Book &book, const Theme &theme, Outside *outside, QWidget *parent)
    : QWidget(parent), m_book(book), m_theme(theme), m_outside(outside),
      m_stack(new QStackedWidget),
      m_empty(new EmptyPage(
          theme, QStringLiteral("build_order"), tr("No tasks yet"),
          tr("Here the whole build is drawn as a wiring loom, from teardown to road-ready: each "
             "task with a cavity for everything it needs, and below it the few moves that bring "
             "the next milestone nearer. Put in the first task, and what it waits for."),
          tr("&Add the first task"))),
      m_milestones(new QComboBox), m_facts(new QLabel), m_below(new QPushButton(tr("&Moves"))),
      m_add(new QPushButton(tr("&Add a task"))), m_paper(new QPushButton(tr("On &paper"))),
      m_by(new ChipRow(theme, tr("Laid out"), ChipMode::One)),
      m_split(new QSplitter(Qt::Horizontal)), m_rows(new QSplitter(Qt::Vertical)),
      m_loom(new LoomView), m_movesHeading(new SectionTitle(theme, tr("Next moves"))),
      m_movesView(new QTableView), m_moves(new MovesModel(this)), m_noMoves(quietLabel()),
      m_side(new QScrollArea), m_newTask(new EntryForm(theme, tr("Add &it"))),
      m_newAfter(quietLabel()), m_newTaskBox(new QWidget), m_movePanel(new MovePanel(book, theme)),
      m_editor(new TaskEditor(book, theme)),
      m_hint(quietLabel(tr("Choose a move or a task to see it here.")))
{
    auto *page = new QWidget;
    auto *column = new QVBoxLayout(page);
    column->setContentsMargins(24, 18, 20, 14);
    column->setSpacing(10);
    column->addWidget(makeHeader());
    makeMoves();
    auto *below = new QWidget;
    auto *moves = new QVBoxLayout(below);
    moves->setContentsMargins(0, 6, 0, 0);
    moves->setSpacing(6);
    moves->addWidget(m_movesHeading);
    moves->addWidget(m_movesView, 1);
    moves->addWidget(m_noMoves);
    moves->addStretch(0);
    m_split->addWidget(below);
    m_split->addWidget(makeSide());
    m_split->setStretchFactor(0, 1);
    m_split->setStretchFactor(1, 0);
    m_split->setChildrenCollapsible(false);
    m_split->setHandleWidth(17);
    // the loom is wide: it has the whole width, and what belongs to it stands below
    m_rows->addWidget(m_loom);
    m_rows->addWidget(m_split);
    m_rows->setStretchFactor(0, 5);
    m_rows->setStretchFactor(1, 7);
    // the chart first: what one move means is seen on it
    m_rows->setSizes({400, 260});
    m_rows->setChildrenCollapsible(false);
    column->addWidget(m_rows, 1);

    auto *all = new QVBoxLayout(this);
    all->setContentsMargins(0, 0, 0, 0);
    all->addWidget(m_stack);
    m_stack->addWidget(m_empty);
    m_stack->addWidget(page);

    connectChart();
    connect(m_empty, &EmptyPage::started, this, [this] { beginTask(); });
    connect(&book, &Book::changed, this, &BuildOrderPage::bookChanged);
    connect(&theme, &Theme::changed, this, [this] { m_loom->setColours(coloursOf(m_theme)); });
    m_loom->setColours(coloursOf(theme));
    // whoever turns to this page comes for the chart, not to choose another milestone
    setFocusProxy(m_loom);
}

QWidget *BuildOrderPage::makeHeader()
{
    auto *header = new QWidget;
    m_headerColumn = new QVBoxLayout(header);
    m_headerColumn->setContentsMargins(0, 0, 0, 0);
    m_headerColumn->setSpacing(4);
    m_headerRow = new QHBoxLayout;
    QHBoxLayout *row = m_headerRow;
    row->setSpacing(12);
    m_headerColumn->addLayout(row);
    auto *label = new QLabel(tr("&Milestone"));
    label->setFont(m_theme.font(Lettering::Small));
    label->setBuddy(m_milestones);
    m_milestones->setFont(m_theme.font(Lettering::Heading));
    m_milestones->setSizeAdjustPolicy(QComboBox::AdjustToContents);
    m_milestones->setMinimumContentsLength(12);
    m_facts->setTextFormat(Qt::PlainText);
    m_facts->setWordWrap(true);
    row->addWidget(label);
    row->addWidget(m_milestones);
    row->addSpacing(6);
    row->addWidget(m_facts, 1);
    row->addStretch(0); // takes the room of the facts when they stand below
    m_by->addChip(kByChain, tr("By chain"), true);
    m_by->addChip(kByDate, tr("By date"));
    m_by->setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Fixed);
    row->addWidget(m_by);
    m_below->setCheckable(true);
    connect(m_below, &QPushButton::toggled, this, &BuildOrderPage::fitRows);
    row->addWidget(m_below);
    makeChartMenu();
    row->addWidget(m_paper);
    row->addWidget(m_add);
    connect(m_by, &ChipRow::changed, this, [this](const QStringList &on) {
        m_loom->setBy(on.contains(kByDate) ? plan::LoomBy::Date : plan::LoomBy::Chain);
    });
    connect(m_milestones, &QComboBox::activated, this, &BuildOrderPage::chooseMilestone);
    connect(m_add, &QPushButton::clicked, this, [this] {
        const auto at = m_loom->currentIndex();
        beginTask(m_loom->currentTask(), at ? m_network.tasks[*at].area : QString());
    });
    return header;
}

void BuildOrderPage::makeChartMenu()
{
    auto *menu = new QMenu(m_paper);
    connect(menu->addAction(tr("&Print…")), &QAction::triggered, this, &BuildOrderPage::printChart);
    menu->addSeparator();
    for (const auto &[words, kind] :
         {std::pair(tr("Save as P&DF"), "pdf"), {tr("Save as &SVG"), "svg"}}) {
        QMenu *papers = menu->addMenu(words);
        papers->setEnabled(m_outside);
        fillPaperMenu(*papers, QLatin1String(kind));
    }
    m_paper->setMenu(menu);
}

void BuildOrderPage::makeMoves()
{
    auto *delegate = new DraftedTableDelegate(m_theme, this);
    m_movesView->setModel(m_moves);
    delegate->setFigureColumn(MovesModel::Frees, 0);
    delegate->dress(*m_movesView, true);
    m_movesView->setSelectionMode(QAbstractItemView::SingleSelection);
    m_movesView->setAccessibleName(tr("Next moves, what to start first on top"));
    QHeaderView *header = m_movesView->horizontalHeader();
    header->setStretchLastSection(false);
    header->setSectionResizeMode(MovesModel::Title, QHeaderView::Stretch);
    const QFontMetrics metrics(m_theme.font(Lettering::Body));
    m_movesView->setColumnWidth(MovesModel::Kind, metrics.horizontalAdvance(tr("find out")) + 28);
    m_movesView->setColumnWidth(MovesModel::StartBy,
                                metrics.horizontalAdvance(QStringLiteral("30 Sep 2026")) + 32);
    m_movesView->setColumnWidth(MovesModel::Frees, metrics.horizontalAdvance(tr("Frees")) + 28);
    connect(m_movesView->selectionModel(), &QItemSelectionModel::currentRowChanged, this,
            [this] { chooseMove(); });
    connect(m_movesView, &QTableView::activated, this, [this] {
        showSide();
        m_movePanel->act();
    });
}

QWidget *BuildOrderPage::makeSide()
{
    makeNewTask();
    auto *content = new QWidget;
    auto *column = new QVBoxLayout(content);
    column->setContentsMargins(0, 0, 8, 8);
    column->setSpacing(18);
    column->addWidget(m_newTaskBox);
    column->addWidget(m_movePanel);
    column->addWidget(m_editor);
    column->addWidget(m_hint);
    column->addStretch(1);
    m_movePanel->hide();
    m_editor->hide();
    m_side->setWidget(content);
    m_side->setWidgetResizable(true);
    m_side->setFrameShape(QFrame::NoFrame);
    m_side->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_side->setMinimumWidth(m_theme.font(Lettering::Body).pointSizeF() > 0
                                ? QFontMetrics(m_theme.font(Lettering::Body)).averageCharWidth() *
                                      48
                                : 360);
    m_side->setFocusPolicy(Qt::NoFocus);
    const auto say = [this](const QString &sentence) {
        emit said(sentence, Tone::Told);
    };
    const auto warn = [this](const QString &sentence) {
        emit said(sentence, Tone::Problem);
    };
    connect(m_movePanel, &MovePanel::done, this, say);
    connect(m_movePanel, &MovePanel::partWanted, this, &BuildOrderPage::partWanted);
    connect(m_movePanel, &MovePanel::openingWanted, this, &BuildOrderPage::openingWanted);
    connect(m_movePanel, &MovePanel::recordWanted, this, &BuildOrderPage::recordWanted);
    connect(m_editor, &TaskEditor::done, this, say);
    connect(m_editor, &TaskEditor::notKept, this, warn);
    connect(m_editor, &TaskEditor::partWanted, this, &BuildOrderPage::partWanted);
    return m_side;
}

void BuildOrderPage::makeNewTask()
{
    auto *column = new QVBoxLayout(m_newTaskBox);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(6);
    column->addWidget(new SectionTitle(m_theme, tr("New task")));
    m_newTask->addLine(QStringLiteral("title"), tr("Title"));
    m_newTask->addCheck(QStringLiteral("milestone"), tr("Milestone"));
    m_newTask->setSave([this] { return addNewTask(); });
    column->addWidget(m_newTask);
    column->addWidget(m_newAfter);
    m_newTaskBox->hide();
    auto *leave = new QShortcut(Qt::Key_Escape, m_newTaskBox);
    leave->setContext(Qt::WidgetWithChildrenShortcut);
    connect(leave, &QShortcut::activated, this, [this] {
        m_newTaskBox->hide();
        m_newTask->clearProblems();
        refresh();
        m_loom->setFocus();
    });
}

void BuildOrderPage::connectChart()
{
    connect(m_loom, &LoomView::currentTaskChanged, this, &BuildOrderPage::chooseTask);
    connect(m_loom, &LoomView::taskActivated, this, [this](const QString &key) {
        chooseTask(key);
        m_below->setChecked(true);
        m_editor->begin();
    });
    connect(m_loom, &LoomView::addRequested, this, &BuildOrderPage::beginTask);
    connect(m_loom, &LoomView::linkRequested, this,
            [this](const QString &before, const QString &task) {
                tell(linkTasks(m_book, idOf(before), idOf(task)), tr("Linked."));
            });
    connect(m_loom, &LoomView::unlinkRequested, this,
            [this](const QString &before, const QString &task) {
                tell(unlinkTasks(m_book, idOf(before), idOf(task)), tr("The link is taken out."));
            });
    connect(m_loom, &LoomView::doneToggled, this, [this](const QString &key) {
        chooseTask(key);
        m_editor->toggleDone();
    });
    connect(m_loom, &LoomView::startedToggled, this, [this](const QString &key) {
        chooseTask(key);
        m_editor->toggleStarted();
    });
    connect(m_loom, &LoomView::timeRequested, this, [this](const QString &key) {
        chooseTask(key);
        m_below->setChecked(true);
        m_editor->beginTime();
    });
    connect(m_loom, &LoomView::byChanged, this, [this](plan::LoomBy by) {
        m_by->setOn(by == plan::LoomBy::Date ? kByDate : kByChain, true);
    });
}

} // namespace ohmwright::ui
