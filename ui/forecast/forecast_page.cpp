// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/forecast/forecast_page.h"

#include "core/quantity/dates.h"
#include "ui/forecast/forecaster.h"
#include "ui/shell/theme.h"
#include "ui/widgets/drafted_table_delegate.h"
#include "ui/widgets/section_title.h"

#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QProgressBar>
#include <QPushButton>
#include <QStandardItemModel>
#include <QTableView>
#include <QVBoxLayout>

#include <algorithm>
#include <cmath>

namespace ohmwright::ui {

namespace {

constexpr int kKeyRole = Qt::UserRole + 1;
constexpr std::size_t kDriversShown = 10;
constexpr double kDriverWorthTelling = 0.05;

QString day(const forecast::Forecast &forecast, int days)
{
    return days == plan::kNever ? ForecastPage::tr("never") : showDate(forecast.dayOf(days));
}

QLabel *quiet(const QString &text = {})
{
    auto *label = new QLabel(text);
    label->setTextFormat(Qt::PlainText);
    label->setWordWrap(true);
    label->setForegroundRole(QPalette::PlaceholderText);
    return label;
}

QString showCash(const Money &money)
{
    return showMoney(money, NumberStyle::pointDecimal());
}

} // namespace

ForecastPage::ForecastPage(Book &book, Forecaster &forecaster, const Theme &theme, QWidget *parent)
    : QScrollArea(parent), m_book(book), m_forecaster(forecaster), m_theme(theme), m_facts(quiet()),
      m_doubts(quiet()), m_progress(new QProgressBar), m_stop(new QPushButton(tr("&Stop")))
{
    setWidgetResizable(true);
    setFrameShape(QFrame::NoFrame);
    setFocusPolicy(Qt::NoFocus);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    auto *page = new QWidget;
    auto *column = new QVBoxLayout(page);
    column->setContentsMargins(24, 18, 24, 24);
    column->setSpacing(8);
    auto *top = new QHBoxLayout;
    top->setSpacing(12);
    top->addWidget(m_facts, 1);
    m_progress->setRange(0, 100);
    m_progress->setMaximumWidth(160);
    m_progress->setTextVisible(false);
    m_progress->setAccessibleName(tr("How far the forecast has got"));
    top->addWidget(m_progress);
    top->addWidget(m_stop);
    column->addLayout(top);
    connect(m_stop, &QPushButton::clicked, &m_forecaster, &Forecaster::cancel);
    m_milestones = makeTable(
        *column, tr("Milestones"),
        {tr("Milestone"), tr("Likely plan"), tr("50 %"), tr("80 %"), tr("95 %"), tr("Wished for")},
        tr("There is no milestone that is not reached yet."));
    m_driving = makeTable(*column, tr("What drives it"),
                          {tr("Task or wait"), tr("How often"), tr("Planned from"), tr("Float")},
                          tr("Nothing is left to be done."));
    m_orders = makeTable(*column, tr("Order by"),
                         {tr("Part"), tr("Order by"), tr("Delivery"), tr("Price")},
                         tr("Nothing that a task waits for is still to order."));
    m_choices = makeTable(*column, tr("Open choices"),
                          {tr("Option"), tr("Tasks"), tr("Hours"), tr("Cost"), tr("End at 50 %"),
                           tr("At 80 %"), tr("Start by")},
                          tr("No choice is open."));
    m_gains =
        makeTable(*column, tr("What would help"), {tr("Change"), tr("Gains"), tr("Give or take")},
                  tr("No single change gains a day that can be told from chance."));
    m_cash = makeTable(*column, tr("Cash needed by month"),
                       {tr("Month"), tr("50 %"), tr("80 %"), tr("There is"), QString()},
                       tr("Nothing is left to pay."), {1, 2, 3});
    m_learnedHeading = new SectionTitle(theme, tr("What the hours say"));
    column->addWidget(m_learnedHeading);
    m_learned = new QVBoxLayout;
    m_learned->setSpacing(6);
    column->addLayout(m_learned);
    column->addWidget(m_doubts);
    column->addStretch(1);
    setWidget(page);
    connect(&m_forecaster, &Forecaster::updated, this, &ForecastPage::refresh);
    connect(&m_forecaster, &Forecaster::progressed, this, &ForecastPage::showProgress);
    setFocusProxy(m_milestones.view);
    refresh();
    showProgress();
}

ForecastPage::Table ForecastPage::makeTable(QVBoxLayout &column, const QString &heading,
                                            const QStringList &headers, const QString &none,
                                            const QList<int> &figures)
{
    Table table;
    table.figures = figures;
    table.heading = new SectionTitle(m_theme, heading);
    table.view = new QTableView;
    table.model = new QStandardItemModel(0, static_cast<int>(headers.size()), table.view);
    table.model->setHorizontalHeaderLabels(headers);
    table.none = quiet(none);
    table.view->setModel(table.model);
    auto *delegate = new DraftedTableDelegate(m_theme, this);
    for (const int figure : figures) {
        delegate->setFigureColumn(figure, 2);
        table.model->setHeaderData(figure, Qt::Horizontal, int(Qt::AlignRight | Qt::AlignVCenter),
                                   Qt::TextAlignmentRole);
    }
    delegate->dress(*table.view, false);
    table.view->setSelectionMode(QAbstractItemView::SingleSelection);
    table.view->setEditTriggers(QAbstractItemView::NoEditTriggers);
    table.view->setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    table.view->setAccessibleName(heading);
    table.view->setTabKeyNavigation(false);
    QHeaderView *header = table.view->horizontalHeader();
    header->setStretchLastSection(false);
    header->setSectionResizeMode(QHeaderView::ResizeToContents);
    header->setSectionResizeMode(0, QHeaderView::Stretch);
    column.addWidget(table.heading);
    column.addWidget(table.view);
    column.addWidget(table.none);
    connect(table.view, &QTableView::activated, this, [this](const QModelIndex &index) {
        const QString key = index.siblingAtColumn(0).data(kKeyRole).toString();
        if (key.startsWith(QLatin1String("part:")))
            emit partWanted(key.mid(5));
        else if (key.startsWith(QLatin1String("choice:")))
            emit recordWanted(QStringLiteral("choice"), key.mid(7));
        else if (!key.isEmpty() && !key.contains(u':'))
            emit taskWanted(key);
    });
    return table;
}

void ForecastPage::fill(Table &table, const std::vector<QStringList> &rows, const QStringList &keys,
                        const QStringList &codes)
{
    const QModelIndex was = table.view->currentIndex();
    table.model->setRowCount(0);
    for (std::size_t r = 0; r < rows.size(); ++r) {
        QList<QStandardItem *> items;
        for (qsizetype c = 0; c < rows[r].size(); ++c) {
            auto *item = new QStandardItem(rows[r][c]);
            item->setEditable(false);
            if (table.figures.contains(static_cast<int>(c)))
                item->setData(rows[r][c], FigureRole);
            items << item;
        }
        if (static_cast<qsizetype>(r) < keys.size())
            items.front()->setData(keys[static_cast<qsizetype>(r)], kKeyRole);
        if (static_cast<qsizetype>(r) < codes.size())
            items.front()->setToolTip(codes[static_cast<qsizetype>(r)]);
        table.model->appendRow(items);
    }
    if (was.isValid() && was.row() < table.model->rowCount())
        table.view->setCurrentIndex(table.model->index(was.row(), was.column()));
    table.view->setVisible(!rows.empty());
    table.none->setVisible(rows.empty());
    table.view->setFixedHeight(table.view->horizontalHeader()->sizeHint().height() +
                               table.model->rowCount() *
                                   table.view->verticalHeader()->defaultSectionSize() +
                               2 * table.view->frameWidth() + 2);
}

void ForecastPage::showEvent(QShowEvent *event)
{
    QScrollArea::showEvent(event);
    m_forecaster.want();
}

void ForecastPage::showProgress()
{
    const std::optional<int> progress = m_forecaster.progress();
    m_progress->setVisible(progress.has_value());
    m_stop->setVisible(progress.has_value());
    m_progress->setValue(progress.value_or(0));
}

void ForecastPage::refresh()
{
    const auto told = m_forecaster.latest();
    for (const Table *table :
         {&m_milestones, &m_driving, &m_orders, &m_choices, &m_gains, &m_cash}) {
        table->heading->setVisible(told != nullptr);
        table->view->setVisible(false);
        table->none->setVisible(false);
    }
    m_learnedHeading->setVisible(false);
    if (!told) {
        m_facts->setText(tr("The plan is played through thousands of times, each time with other "
                            "luck: how long work takes, when parts arrive, which tests fail."));
        m_doubts->clear();
        return;
    }
    QStringList facts{tr("%1 plays of the plan from %2, with %3 h of work a week")
                          .arg(told->forecast.samples)
                          .arg(showDate(told->plan.today))
                          .arg(told->plan.minutesPerWeek / 60.0, 0, 'f', 1)};
    if (told->plan.hoursAssumed)
        facts.front() += tr(", spread over Tuesday, Thursday and Saturday: assumed until working "
                            "times are told");
    if (told->plan.estimatesAssumed > 0)
        facts << tr("%1 of %2 estimates stand alone; their least and most are assumed")
                     .arg(told->plan.estimatesAssumed)
                     .arg(told->plan.activities.size());
    m_facts->setText(facts.join(tr(".  ")) + u'.');
    m_doubts->setText(told->plan.doubts.join(u'\n'));
    m_doubts->setVisible(!told->plan.doubts.isEmpty());
    fillMilestones();
    fillDriving();
    if (!told->complete)
        return;
    fillOrders();
    fillChoices();
    fillGains();
    fillCash();
    fillLearned();
}

void ForecastPage::fillMilestones()
{
    const ForecastTold &told = *m_forecaster.latest();
    std::vector<QStringList> rows;
    QStringList keys;
    for (const std::size_t m : told.plan.milestones) {
        const forecast::ActivityForecast &a = told.forecast.activities[m];
        const Task *task = m_book.records().byKey<Task>(told.plan.activities[m].key);
        const std::optional<QDate> date =
            !task ? std::nullopt : (task->fixedOn ? task->fixedOn : task->targetOn);
        QString wished = date ? showDate(*date) : QString();
        if (date && (a.ready[1] == plan::kNever || told.forecast.dayOf(a.ready[1]) > *date))
            wished += tr(", late at 80 %");
        rows.push_back({told.plan.activities[m].name, day(told.forecast, a.plannedFinish),
                        day(told.forecast, a.ready[0]), day(told.forecast, a.ready[1]),
                        day(told.forecast, a.ready[2]), wished});
        keys << told.plan.activities[m].key;
    }
    fill(m_milestones, rows, keys);
}

void ForecastPage::fillDriving()
{
    const ForecastTold &told = *m_forecaster.latest();
    std::vector<QStringList> rows;
    QStringList keys;
    for (std::size_t m = 0; m < told.plan.milestones.size(); ++m) {
        const forecast::Activity &goal = told.plan.activities[told.plan.milestones[m]];
        if (goal.key != told.milestone)
            continue;
        m_driving.heading->setRemark(tr("to “%1”").arg(goal.name));
        const std::vector<double> &driving = told.forecast.drivingMilestone[m];
        std::vector<std::size_t> most;
        for (std::size_t i = 0; i < driving.size(); ++i)
            if (driving[i] >= kDriverWorthTelling &&
                told.plan.activities[i].kind != forecast::ActivityKind::Milestone &&
                told.plan.activities[i].kind != forecast::ActivityKind::Redo)
                most.push_back(i);
        std::stable_sort(most.begin(), most.end(),
                         [&](std::size_t a, std::size_t b) { return driving[a] > driving[b]; });
        most.resize(std::min(most.size(), kDriversShown));
        for (const std::size_t i : most) {
            const forecast::ActivityForecast &a = told.forecast.activities[i];
            rows.push_back({told.plan.activities[i].name,
                            tr("%1 %").arg(std::lround(driving[i] * 100)),
                            day(told.forecast, a.plannedStart), tr("%1 d").arg(a.floatDays)});
            keys << told.plan.activities[i].key;
        }
    }
    fill(m_driving, rows, keys);
}

void ForecastPage::fillOrders()
{
    const ForecastTold &told = *m_forecaster.latest();
    m_orders.heading->setRemark(
        tr("the latest day that moves no milestone, at %1 %").arg(told.confidence));
    std::vector<QStringList> rows;
    QStringList keys;
    for (const forecast::OrderBy &order : told.orders) {
        const forecast::Activity &a = told.plan.activities[order.activity];
        const QString by = !order.needed          ? tr("any day")
                           : order.latestDay == 0 ? tr("today")
                                                  : day(told.forecast, order.latestDay);
        rows.push_back({a.name, by,
                        a.wait.isFixed() ? tr("%1 days").arg(a.wait.likely)
                                         : tr("%1 to %2 days").arg(a.wait.least).arg(a.wait.most),
                        a.cost ? showCash(*a.cost) : tr("not known")});
        keys << a.key;
    }
    fill(m_orders, rows, keys);
}

// Options side by side, one row each, under the day by which to decide.
void ForecastPage::fillChoices()
{
    const ForecastTold &told = *m_forecaster.latest();
    std::vector<QStringList> rows;
    QStringList keys;
    QStringList remarks;
    for (const forecast::ChoiceOutlook &choice : told.choices) {
        if (choice.decideBy)
            remarks << tr("decide by %1").arg(day(told.forecast, *choice.decideBy));
        for (const forecast::OptionOutlook &option : choice.options) {
            rows.push_back(
                {tr("%1: %2").arg(choice.question, option.name), QString::number(option.openTasks),
                 tr("%1 h").arg(option.openMinutes / 60.0, 0, 'f', 1),
                 option.unpriced > 0
                     ? tr("%1 and %2 unpriced").arg(showCash(option.cost)).arg(option.unpriced)
                     : showCash(option.cost),
                 day(told.forecast, option.ready50), day(told.forecast, option.ready80),
                 option.startBy ? day(told.forecast, *option.startBy) : tr("any day")});
            keys << QStringLiteral("choice:") + choice.key;
        }
    }
    m_choices.heading->setRemark(remarks.join(tr(", ")));
    fill(m_choices, rows, keys);
}

void ForecastPage::fillGains()
{
    const ForecastTold &told = *m_forecaster.latest();
    m_gains.heading->setRemark(tr("days gained at 80 %, on the same luck"));
    std::vector<QStringList> rows;
    QStringList codes;
    for (std::size_t i = 0; i < told.gains.size(); ++i) {
        rows.push_back({told.gainTexts[i], tr("%1 days").arg(told.gains[i].days, 0, 'f', 0),
                        tr("%1 d").arg(told.gains[i].standardError, 0, 'f', 1)});
        codes << told.gains[i].change.code();
    }
    fill(m_gains, rows, {}, codes);
}

void ForecastPage::fillCash()
{
    const ForecastTold &told = *m_forecaster.latest();
    m_cash.heading->setRemark(
        told.cash.runsOut ? tr("runs out in %1, at 80 %")
                                .arg(told.cash.runsOut->toString(QStringLiteral("MMMM yyyy")))
                          : tr("from today to the end of each month"));
    std::vector<QStringList> rows;
    for (const forecast::CashMonth &month : told.cash.months)
        rows.push_back(
            {month.month.toString(QStringLiteral("MMMM yyyy")), showCash(month.due50),
             showCash(month.due80), month.available ? showCash(*month.available) : tr("not told"),
             month.available && *month.available < month.due80 ? tr("too little") : QString()});
    fill(m_cash, rows, {});
}

void ForecastPage::fillLearned()
{
    while (QLayoutItem *item = m_learned->takeAt(0)) {
        if (item->widget())
            item->widget()->deleteLater();
        delete item;
    }
    for (const forecast::Learned &one : m_forecaster.latest()->learned) {
        auto *line = new QWidget;
        auto *row = new QHBoxLayout(line);
        row->setContentsMargins(0, 0, 0, 0);
        auto *text = quiet(tr("%1: %2 done tasks took %3 times their estimate.")
                               .arg(wordOf(one.trade))
                               .arg(one.tasks)
                               .arg(one.factor(), 0, 'f', 2));
        row->addWidget(text, 1);
        if (one.isOffered()) {
            auto *take = new QPushButton(tr("Change %1 open estimates").arg(one.openTasks));
            take->setAccessibleName(tr("Change %1 open estimates of %2 work by %3 times")
                                        .arg(one.openTasks)
                                        .arg(wordOf(one.trade))
                                        .arg(one.factor(), 0, 'f', 2));
            connect(take, &QPushButton::clicked, this,
                    [this, trade = one.trade, factor = one.factor()] {
                        const Outcome done = forecast::scaleEstimates(m_book, trade, factor);
                        emit said(done ? tr("Estimates of %1 work are changed. Undo brings them "
                                            "back.")
                                             .arg(wordOf(trade))
                                       : done.error().sentence,
                                  done ? Tone::Told : Tone::Problem);
                    });
            row->addWidget(take);
        }
        m_learned->addWidget(line);
    }
    m_learnedHeading->setVisible(m_learned->count() > 0);
}

} // namespace ohmwright::ui
