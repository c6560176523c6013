// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/bench/bench_page.h"

#include "core/budget/budget.h"
#include "core/parts/deadlines.h"
#include "core/parts/questions.h"
#include "core/plan/plan_view.h"
#include "core/quantity/dates.h"
#include "ui/bench/bench_moves.h"
#include "ui/bench/bench_rows.h"
#include "ui/bench/work_log_panel.h"
#include "ui/forecast/forecaster.h"
#include "ui/shell/drafted_style.h"
#include "ui/shell/theme.h"
#include "ui/widgets/empty_page.h"
#include "ui/widgets/figure_label.h"
#include "ui/widgets/money_bar.h"
#include "ui/widgets/section_title.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QScrollBar>
#include <QShowEvent>
#include <QVBoxLayout>

#include <algorithm>

namespace ohmwright::ui {

namespace {

constexpr int kTwoColumnsFrom = 900; // pixels
constexpr std::size_t kRowsShown = 7;

QLabel *quiet(const Theme &theme, const QString &text)
{
    auto *label = new QLabel(text);
    label->setWordWrap(true);
    label->setFont(theme.font(Lettering::Small));
    QPalette palette = label->palette();
    palette.setColor(QPalette::WindowText, theme.tokens().mute);
    label->setPalette(palette);
    return label;
}

QString daysLeft(int days)
{
    return days == 0   ? BenchPage::tr("today")
           : days == 1 ? BenchPage::tr("1 day")
                       : BenchPage::tr("%1 days").arg(days);
}

} // namespace

BenchPage::BenchPage(Book &book, Forecaster &forecaster, const Theme &theme, QWidget *parent)
    : QScrollArea(parent), m_book(book), m_forecaster(forecaster), m_theme(theme),
      m_workLog(new WorkLogPanel(book, theme, this))
{
    m_workLog->hide();
    setWidgetResizable(true);
    setFrameShape(QFrame::NoFrame);
    setFocusPolicy(Qt::NoFocus);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_soon.setSingleShot(true);
    m_soon.setInterval(0);
    connect(&m_soon, &QTimer::timeout, this, &BenchPage::rebuild);
    connect(&m_book, &Book::changed, this, &BenchPage::later);
    connect(&m_theme, &Theme::changed, this, &BenchPage::later);
    connect(&m_forecaster, &Forecaster::updated, this, &BenchPage::later);
    // only words change: what the last forecast told stays where it is
    connect(&m_forecaster, &Forecaster::progressed, this, &BenchPage::showForecastState);
}

void BenchPage::later()
{
    m_stale = true;
    if (isVisible())
        m_soon.start();
}

void BenchPage::setAskedByChecks(std::vector<Question> questions)
{
    m_askedByChecks = std::move(questions);
    later();
}

std::size_t BenchPage::shownOf(const QString &list, std::size_t all) const
{
    return m_unfolded.contains(list) ? all : std::min(all, kRowsShown);
}

void BenchPage::addRest(QVBoxLayout &column, const QString &list, std::size_t all)
{
    if (all <= kRowsShown)
        return;
    const bool whole = m_unfolded.contains(list);
    auto *rest =
        new QPushButton(whole ? tr("Show fewer") : tr("Show %1 more").arg(all - kRowsShown));
    rest->setObjectName(QString(QStringLiteral("rest of ") + list));
    rest->setAccessibleName(QString(rest->text() + u": " + list));
    connect(rest, &QPushButton::clicked, this, [this, list, whole] {
        if (whole)
            m_unfolded.remove(list);
        else
            m_unfolded.insert(list);
        later();
    });
    column.addWidget(rest, 0, Qt::AlignLeft);
}

void BenchPage::showEvent(QShowEvent *event)
{
    QScrollArea::showEvent(event);
    m_forecaster.want();
    if (m_stale)
        rebuild();
}

SectionTitle *BenchPage::addHeading(QVBoxLayout &column, const QString &text, const QString &remark)
{
    if (column.count() > 0)
        column.addSpacing(14);
    auto *heading = new SectionTitle(m_theme, text);
    heading->setRemark(remark);
    column.addWidget(heading);
    return heading;
}

void BenchPage::showForecastState()
{
    const bool behind = m_forecaster.isBehind() && m_forecaster.latest();
    for (const auto &[heading, remark] : m_foretold)
        if (heading)
            heading->setRemark(behind ? tr("%1; being made anew").arg(remark) : remark);
}

// When the next milestones are reached, in one line each.
void BenchPage::addForecast(QVBoxLayout &column)
{
    const auto told = m_forecaster.latest();
    if (!told) { // its place is kept from the start
        addHeading(column, tr("Forecast"), {});
        column.addWidget(quiet(m_theme, tr("It is being worked out.")));
        return;
    }
    if (told->plan.milestones.empty())
        return;
    const QString remark = tr("50, 80 and 95 %");
    m_foretold.emplace_back(addHeading(column, tr("Forecast"), remark), remark);
    const auto day = [&](int days) {
        return days == plan::kNever ? tr("never") : showDate(told->forecast.dayOf(days));
    };
    for (std::size_t i = 0; i < std::min<std::size_t>(told->plan.milestones.size(), 3); ++i) {
        const std::size_t m = told->plan.milestones[i];
        const forecast::ActivityForecast &a = told->forecast.activities[m];
        auto *row = new BenchRowButton(m_theme, {day(a.ready[1]), told->plan.activities[m].name,
                                                 tr("as likely as not by %1, almost surely by %2")
                                                     .arg(day(a.ready[0]), day(a.ready[2])),
                                                 false});
        connect(row, &QPushButton::clicked, this, &BenchPage::forecastWanted);
        column.addWidget(row);
    }
}

void BenchPage::addOrders(QVBoxLayout &column)
{
    const auto told = m_forecaster.latest();
    const QString remark = told ? tr("to keep the days at %1 %").arg(told->confidence) : QString();
    SectionTitle *heading = addHeading(column, tr("Order by"), remark);
    if (!told || !told->complete) { // the first one, of which only the dates are there
        column.addWidget(quiet(m_theme, tr("The days are being worked out.")));
        return;
    }
    m_foretold.emplace_back(heading, remark);
    const QString list = tr("to order");
    std::size_t needed = 0;
    for (const forecast::OrderBy &order : told->orders) {
        const forecast::Activity &a = told->plan.activities[order.activity];
        if (a.toAsk || !order.needed)
            continue; // letters stand among the moves
        ++needed;
        if (needed > shownOf(list, needed))
            continue;
        auto *row = new BenchRowButton(
            m_theme,
            {order.latestDay == 0 ? tr("today") : showDate(told->forecast.dayOf(order.latestDay)),
             a.name, tr("%1 to %2 days to come").arg(a.wait.least).arg(a.wait.most), false});
        connect(row, &QPushButton::clicked, this, [this, key = a.part] { emit partWanted(key); });
        column.addWidget(row);
    }
    if (needed == 0)
        column.addWidget(quiet(m_theme, tr("Nothing that a task waits for is still to order.")));
    addRest(column, list, needed);
}

void BenchPage::resizeEvent(QResizeEvent *event)
{
    QScrollArea::resizeEvent(event);
    if ((width() >= kTwoColumnsFrom) != m_wide) {
        m_wide = width() >= kTwoColumnsFrom;
        m_soon.start();
    }
}

void BenchPage::rebuild()
{
    m_stale = false;
    m_foretold.clear();
    const Records &records = m_book.records();
    const QDate today = m_book.clock().today();
    m_workLog->setParent(this); // before the page it stood on goes
    m_workLog->hide();
    auto *page = new QWidget;
    auto *rows = new QVBoxLayout(page);
    rows->setContentsMargins(24, 16, 24, 24);
    rows->setSpacing(14);
    auto *title = new SectionTitle(m_theme, tr("Bench"), TitleLevel::Page);
    title->setRemark(showDate(today));
    auto *log = new QPushButton(tr("&Log a part"));
    makePrimary(*log);
    title->addAtEnd(log);
    connect(log, &QPushButton::clicked, this, &BenchPage::logWanted);
    rows->addWidget(title);
    if (records.all<Part>().size() == 0 && records.all<Task>().size() == 0) {
        auto *empty = new EmptyPage(
            m_theme, QStringLiteral("bench"), tr("A new book"),
            tr("Here will stand what you can do next, what holds up the next milestone, what runs "
               "out "
               "soon, and what is left to spend. Start with the first part you have or want."),
            tr("Log the first &part"));
        connect(empty, &EmptyPage::started, this, &BenchPage::logWanted);
        rows->addWidget(empty, 1);
        setWidget(page);
        return;
    }
    auto *left = new QVBoxLayout;
    auto *right = new QVBoxLayout;
    for (QVBoxLayout *column : {left, right})
        column->setSpacing(4);
    if (m_wide) {
        auto *columns = new QHBoxLayout;
        columns->setSpacing(36);
        columns->addLayout(left, 1);
        columns->addLayout(right, 1);
        rows->addLayout(columns);
    } else {
        rows->addLayout(left);
        rows->addLayout(right);
    }
    const auto section = [&](QVBoxLayout *column, const QString &text, const QString &remark) {
        addHeading(*column, text, remark);
    };
    const auto row = [&](QVBoxLayout *column, BenchRow content, auto &&act) {
        auto *button = new BenchRowButton(m_theme, std::move(content));
        connect(button, &QPushButton::clicked, this, act);
        column->addWidget(button);
    };

    const plan::Network network = plan::networkOf(records, today);
    const auto milestone = plan::nextMilestone(network);
    const BenchMoves moves = benchMoves(network, milestone, m_forecaster.latest(), today);

    section(left, tr("What you can do now"),
            milestone ? tr("towards “%1”").arg(network.tasks[*milestone].title) : QString());
    const std::vector<plan::Move> &doable = moves.doable;
    for (std::size_t i = 0; i < shownOf(tr("to do now"), doable.size()); ++i) {
        const plan::Task &task = network.tasks[doable[i].for_.front()];
        row(left, {leadOf(doable[i], today), task.title, task.area, task.highVoltage},
            [this, key = task.key] { emit taskWanted(key); });
    }
    if (doable.empty())
        left->addWidget(
            quiet(m_theme, tr("No task can start just now: something below must move first.")));
    addRest(*left, tr("to do now"), doable.size());
    std::size_t startable = 0;
    for (std::size_t task = 0; task < network.tasks.size(); ++task)
        startable += plan::canStart(network, task) ? 1 : 0;
    if (startable > doable.size())
        left->addWidget(quiet(m_theme, tr("%1 more can start on the build order, for what comes "
                                          "later.")
                                           .arg(startable - doable.size())));

    if (milestone) {
        const plan::Task &goal = network.tasks[*milestone];
        section(left, tr("What holds up “%1”").arg(goal.title),
                moves.held.likely ? tr("%1 will not be kept, likely %2")
                                        .arg(showDate(*goal.date), showDate(*moves.held.likely))
                : goal.date ? tr("to keep %1; %2 days of work and waiting")
                                  .arg(showDate(*goal.date))
                                  .arg(moves.held.chainDays)
                            : tr("%1 days of work and waiting").arg(moves.held.chainDays));
        const std::vector<forecast::MoveSoon> &others = moves.others;
        for (std::size_t i = 0; i < shownOf(tr("held up"), others.size()); ++i) {
            const plan::Move &move = others[i].move;
            row(left,
                {leadOf(move, today), tr("%1: %2").arg(plan::moveKindName(move.kind), move.title),
                 move.why, false},
                [this, goal = network.tasks[others[i].milestone].key, kind = move.kind,
                 subject = move.subject] { emit moveWanted(goal, kind, subject); });
        }
        addRest(*left, tr("held up"), others.size());
    }

    addForecast(*left);
    section(left, tr("Work log"), {});
    left->addWidget(m_workLog);
    m_workLog->show();

    addOrders(*right);
    const Budget budget = budgetOf(records, today);
    section(right, tr("Left to spend"), budget.currency.code());
    auto *figure = new FigureLabel(m_theme);
    figure->setLettering(Lettering::Figure);
    figure->setFigure(showMoney(budget.left(), NumberStyle::pointDecimal()));
    auto *figureRow = new QHBoxLayout;
    figureRow->addWidget(figure);
    figureRow->addStretch(1);
    right->addLayout(figureRow);
    auto *bar = new MoneyBar(m_theme);
    const Money whole = budget.whole();
    const auto show = [](Money money) {
        return showMoney(money, NumberStyle::pointDecimal());
    };
    const QString words =
        tr("%1 spent, %2 committed, %3 to come, of %4 with contingency and what came back.")
            .arg(show(budget.total.spent), show(budget.total.committed), show(budget.total.toCome),
                 show(whole));
    bar->setShares({budget.total.spent.minor(), budget.total.committed.minor(),
                    budget.total.toCome.minor(), whole.minor()},
                   words);
    right->addWidget(bar);
    right->addWidget(quiet(m_theme, words));
    auto *lines = new QPushButton(tr("Show the lines"));
    connect(lines, &QPushButton::clicked, this,
            [this] { emit pageWanted(QStringLiteral("budget")); });
    right->addWidget(lines, 0, Qt::AlignLeft);

    const std::vector<Deadline> ending = endingSoon(records, today);
    section(right, tr("Runs out soon"), tr("within %1 days").arg(kEndingSoonDays));
    for (std::size_t i = 0; i < shownOf(tr("ending soon"), ending.size()); ++i) {
        const Part &part = *records.find(ending[i].part);
        row(right, {daysLeft(ending[i].daysLeft), part.name, describe(ending[i]), false},
            [this, key = part.key] { emit partWanted(key); });
    }
    if (ending.empty())
        right->addWidget(quiet(m_theme, tr("No warranty, return or claim window ends soon.")));
    addRest(*right, tr("ending soon"), ending.size());

    const std::vector<Question> questions =
        joined(records, openQuestions(records), m_askedByChecks);
    section(right, tr("Open questions"),
            questions.empty() ? QString() : QString::number(questions.size()));
    for (std::size_t i = 0; i < shownOf(tr("open questions"), questions.size()); ++i) {
        const Part &part = *records.find(questions[i].part);
        row(right,
            {tr("not known"), tr("%1: %2").arg(part.name, describe(questions[i].figure)),
             tr("asked by %1").arg(questions[i].askedBy.join(tr(", "))), false},
            [this, key = part.key] { emit partWanted(key); });
    }
    if (questions.empty())
        right->addWidget(quiet(m_theme, tr("Every figure that is asked for is recorded.")));
    addRest(*right, tr("open questions"), questions.size());

    section(right, tr("Last done"), {});
    std::vector<const Task *> done;
    for (const Task &task : records.all<Task>())
        if (task.state == TaskState::Done)
            done.push_back(&task);
    std::stable_sort(done.begin(), done.end(),
                     [](auto *a, auto *b) { return *a->doneOn > *b->doneOn; });
    for (std::size_t i = 0; i < std::min<std::size_t>(done.size(), 4); ++i)
        row(right, {showDate(*done[i]->doneOn), done[i]->title, {}, done[i]->highVoltage},
            [this, key = done[i]->key] { emit taskWanted(key); });
    if (done.empty())
        right->addWidget(quiet(m_theme, tr("Nothing yet.")));
    left->addStretch(1);
    right->addStretch(1);
    rows->addStretch(1);
    const int place = verticalScrollBar()->value();
    setWidget(page);
    verticalScrollBar()->setValue(place);
    showForecastState();
}

} // namespace ohmwright::ui
