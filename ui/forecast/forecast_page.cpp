// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/forecast/forecast_page.h"

#include "core/forecast/drivers.h"
#include "core/quantity/dates.h"
#include "ui/forecast/forecast_table.h"
#include "ui/forecast/forecaster.h"
#include "ui/forecast/try_line.h"
#include "ui/shell/theme.h"
#include "ui/widgets/section_title.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QProgressBar>
#include <QPushButton>
#include <QTableView>
#include <QVBoxLayout>

#include <algorithm>
#include <cmath>

namespace ohmwright::ui {

namespace {

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

// What stays free while it is hidden, so that nothing jumps.
void keepPlace(QWidget &widget)
{
    QSizePolicy policy = widget.sizePolicy();
    policy.setRetainSizeWhenHidden(true);
    widget.setSizePolicy(policy);
}

QString nameOf(const ForecastTold &told, const QString &milestone)
{
    for (const std::size_t m : told.plan.milestones)
        if (told.plan.activities[m].key == milestone)
            return told.plan.activities[m].name;
    return {};
}

} // namespace

ForecastPage::ForecastPage(Book &book, Forecaster &forecaster, const Theme &theme, QWidget *parent)
    : QScrollArea(parent), m_book(book), m_forecaster(forecaster), m_theme(theme), m_facts(quiet()),
      m_doubts(quiet()), m_state(new QLabel), m_progress(new QProgressBar),
      m_stop(new QPushButton(tr("&Stop")))
{
    setWidgetResizable(true);
    setFrameShape(QFrame::NoFrame);
    setFocusPolicy(Qt::NoFocus);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    auto *page = new QWidget;
    auto *column = new QVBoxLayout(page);
    column->setContentsMargins(24, 18, 24, 24);
    column->setSpacing(14);
    auto *top = new QHBoxLayout;
    top->setSpacing(12);
    top->addWidget(m_facts, 1);
    m_state->setText(tr("being made anew"));
    m_state->setForegroundRole(QPalette::PlaceholderText);
    m_progress->setRange(0, 100);
    m_progress->setFixedWidth(120);
    m_progress->setTextVisible(false);
    m_progress->setAccessibleName(tr("How far the forecast has got"));
    for (QWidget *widget : {static_cast<QWidget *>(m_state), static_cast<QWidget *>(m_progress),
                            static_cast<QWidget *>(m_stop)}) {
        keepPlace(*widget);
        top->addWidget(widget);
    }
    column->addLayout(top);
    connect(m_stop, &QPushButton::clicked, &m_forecaster, &Forecaster::cancel);
    makeTables(*column);
    column->addWidget(m_doubts);
    column->addStretch(1);
    setWidget(page);
    connect(&m_forecaster, &Forecaster::updated, this, &ForecastPage::refresh);
    connect(&m_forecaster, &Forecaster::progressed, this, &ForecastPage::showProgress);
    // a choice that was just decided must not stand there as open till the forecast has caught up
    connect(&m_book, &Book::changed, this, [this](const Change &change) {
        const auto told = m_forecaster.latest();
        if (told && told->complete && change.touches("choice"))
            fillChoices();
    });
    setFocusProxy(&m_milestones->view());
    refresh();
    showProgress();
}

void ForecastPage::makeTables(QVBoxLayout &column)
{
    using Column = ForecastTable::Column;
    const auto add = [&](ForecastTable *table) {
        column.addWidget(table);
        connect(table, &ForecastTable::activated, this, &ForecastPage::follow);
        return table;
    };
    const auto words = [](const QString &header, const QString &tip = {}) {
        return Column{header, false, 0, {}, tip, false};
    };
    const auto figure = [](const QString &header, int decimals, const QString &unit,
                           const QString &tip = {}) {
        return Column{header, true, decimals, unit, tip, false};
    };
    const QString currency = m_book.records().build().currency.code();
    m_milestones = add(new ForecastTable(
        m_theme, tr("Milestones"),
        {words(tr("Milestone")), words(tr("Likely plan")), words(tr("50\u00A0%")),
         words(tr("80\u00A0%")), words(tr("95\u00A0%")),
         words(tr("Wished for"), tr("Late: not reached by then in 80\u00A0% of the plays."))},
        tr("There is no milestone that is not reached yet.")));
    m_driving = add(new ForecastTable(
        m_theme, tr("What drives it"),
        {words(tr("Task or wait")), figure(tr("How often"), 0, tr("%")), words(tr("Planned from")),
         figure(tr("Float to the end"), 0, tr("d"),
                tr("How long it may slip without moving the end of the plan."))},
        tr("Nothing is left to be done.")));
    m_orders = add(
        new ForecastTable(m_theme, tr("Order by"),
                          {words(tr("Part")), words(tr("Order by")),
                           figure(tr("Delivery"), 0, tr("days")), figure(tr("Price"), 2, currency)},
                          tr("Nothing that a task waits for is still to order.")));
    m_choices = add(new ForecastTable(
        m_theme, tr("Open choices"),
        {words(tr("Option")), figure(tr("Tasks"), 0, {}), figure(tr("Hours"), 1, tr("h")),
         figure(tr("Cost"), 2, currency),
         Column{
             tr("Unpriced"), true, 0, {}, tr("Parts without a price that can be counted."), true},
         words(tr("End at 50\u00A0%")), words(tr("At 80\u00A0%")), words(tr("Start by"))},
        tr("No choice is open.")));
    m_gains = add(new ForecastTable(
        m_theme, tr("What would help"),
        {words(tr("Change")), figure(tr("Earlier, mean"), 0, tr("days")),
         figure(tr("Earlier at 80\u00A0%"), 0, tr("days"),
                tr("In steps of the evenings there are: where work ends on Saturdays, of weeks.")),
         figure(tr("Give or take"), 1, tr("days"),
                tr("Standard error of the days at 80\u00A0%, which is left to chance."))},
        tr("No single change gains a day that can be told from chance.")));
    m_try = new QWidget;
    auto *trying = new QVBoxLayout(m_try);
    trying->setContentsMargins(0, 0, 0, 0);
    trying->setSpacing(8);
    auto *heading = new SectionTitle(m_theme, tr("Try"));
    heading->setRemark(tr("what a change of your own would bring; the book stays as it is"));
    trying->addWidget(heading);
    trying->addWidget(new TryLine(m_forecaster, m_theme));
    column.addWidget(m_try);
    m_cash =
        add(new ForecastTable(m_theme, tr("Cash needed up to the end of"),
                              {words(tr("Month")), figure(tr("Needed, 50\u00A0%"), 2, currency),
                               figure(tr("Needed, 80\u00A0%"), 2, currency),
                               figure(tr("Set aside by then"), 2, currency), words({})},
                              tr("Nothing is left to pay.")));
    m_learnedBlock = new QWidget;
    auto *block = new QVBoxLayout(m_learnedBlock);
    block->setContentsMargins(0, 0, 0, 0);
    block->setSpacing(8);
    block->addWidget(new SectionTitle(m_theme, tr("What the hours say")));
    m_learned = new QVBoxLayout;
    m_learned->setSpacing(6);
    block->addLayout(m_learned);
    column.addWidget(m_learnedBlock);
}

void ForecastPage::follow(const QString &key)
{
    if (key.startsWith(QLatin1String("part:")))
        emit partWanted(key.mid(5));
    else if (key.startsWith(QLatin1String("choice:")))
        emit recordWanted(QStringLiteral("choice"), key.section(u':', 1, 1));
    else if (key.startsWith(QLatin1String("letter:")))
        emit recordWanted(QStringLiteral("letter"), key.mid(7));
    else if (!key.contains(u':'))
        emit taskWanted(key);
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
    m_state->setVisible(m_forecaster.isBehind() && m_forecaster.latest());
    m_progress->setValue(progress.value_or(0));
}

void ForecastPage::refresh()
{
    const auto told = m_forecaster.latest();
    for (QWidget *early : {m_milestones, m_driving})
        early->setVisible(told != nullptr);
    const bool complete = told && told->complete;
    for (QWidget *late :
         std::initializer_list<QWidget *>{m_orders, m_choices, m_gains, m_try, m_cash})
        late->setVisible(complete);
    if (!complete)
        m_learnedBlock->hide();
    m_doubts->setVisible(told && !told->plan.doubts.isEmpty());
    if (!told) {
        m_facts->setText(tr("The plan is played through thousands of times, each time with other "
                            "luck: how long work takes, when parts arrive, which tests fail."));
        return;
    }
    QString facts = tr("Played through %1 times from %2 with %3\u00A0h of work a week")
                        .arg(told->forecast.samples)
                        .arg(showDate(told->plan.today))
                        .arg(told->plan.minutesPerWeek / 60.0, 0, 'f', 1);
    if (told->plan.hoursAssumed)
        facts += tr(", assumed on Tuesday, Thursday and Saturday until working times are told");
    if (told->plan.estimatesAssumed > 0)
        facts += tr("; %1 of %2 estimates have no least and most, which are assumed")
                     .arg(told->plan.estimatesAssumed)
                     .arg(told->plan.activities.size());
    m_facts->setText(facts + u'.');
    m_doubts->setText(told->plan.doubts.join(u'\n'));
    fillMilestones();
    fillDriving();
    if (!complete)
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
    std::vector<ForecastTable::Row> rows;
    for (const std::size_t m : told.plan.milestones) {
        const forecast::ActivityForecast &a = told.forecast.activities[m];
        const Task *task = told.records->byKey<Task>(told.plan.activities[m].key);
        const std::optional<QDate> date =
            !task ? std::nullopt : (task->fixedOn ? task->fixedOn : task->targetOn);
        QString wished = date ? showDate(*date) : QString();
        if (task && task->fixedOn)
            wished = tr("%1 (appointment)").arg(wished);
        if (date && (a.ready[1] == plan::kNever || told.forecast.dayOf(a.ready[1]) > *date))
            wished += tr(", late");
        rows.push_back({{told.plan.activities[m].name, day(told.forecast, a.plannedFinish),
                         day(told.forecast, a.ready[0]), day(told.forecast, a.ready[1]),
                         day(told.forecast, a.ready[2]), wished},
                        told.plan.activities[m].key,
                        {},
                        false});
    }
    m_milestones->fill(rows);
}

void ForecastPage::fillDriving()
{
    const ForecastTold &told = *m_forecaster.latest();
    std::vector<ForecastTable::Row> rows;
    for (std::size_t m = 0; m < told.plan.milestones.size(); ++m) {
        const std::size_t goal = told.plan.milestones[m];
        if (told.plan.activities[goal].key != told.milestone)
            continue;
        m_driving->setRemark(tr("to “%1”").arg(told.plan.activities[goal].name));
        for (const forecast::Drives &one :
             forecast::whatDrives(told.plan, told.forecast, m, forecast::kDriversShown)) {
            const forecast::ActivityForecast &a = told.forecast.activities[one.activity];
            const QString share = tr("%1\u00A0%").arg(std::lround(one.share * 100));
            const QString key = told.plan.activities[one.activity].key;
            if (one.isAgain) {
                rows.push_back({{one.name, share, QString(), QString()}, key, {}, false});
                continue;
            }
            ForecastTable::Row row{{one.name, share, day(told.forecast, a.plannedStart),
                                    tr("%1\u00A0d").arg(a.floatDays)},
                                   key,
                                   {},
                                   false};
            if (!one.isLinked) {
                row.cells.back() = tr("hands only");
                row.tips.insert(
                    3, tr("The milestone does not wait on it: hands, a bay or a tool were on it "
                          "first. It could wait %1\u00A0days.")
                           .arg(a.floatDays));
            }
            rows.push_back(std::move(row));
        }
    }
    m_driving->fill(rows);
}

void ForecastPage::fillOrders()
{
    const ForecastTold &told = *m_forecaster.latest();
    m_orders->setRemark(tr("the latest day that moves no milestone, at %1\u00A0%, of each alone: "
                           "all others ordered "
                           "and asked today")
                            .arg(told.confidence));
    std::vector<ForecastTable::Row> rows;
    for (const forecast::OrderBy &order : told.orders) {
        const forecast::Activity &a = told.plan.activities[order.activity];
        const auto behind =
            forecast::orderedBehind(told.plan, told.forecast, order, told.confidence);
        const QString by = !order.needed ? tr("any day")
                           : behind ? tr("after “%1”").arg(told.plan.activities[*behind].name)
                           : order.latestDay == 0 ? tr("today")
                                                  : day(told.forecast, order.latestDay);
        rows.push_back(
            {{a.toAsk ? tr("letter: %1").arg(a.name) : a.name, by,
              a.wait.isFixed() ? tr("%1\u00A0days").arg(a.wait.likely)
                               : tr("%1–%2\u00A0days").arg(a.wait.least).arg(a.wait.most),
              a.forShop && a.cost ? tr("%1, for the shop").arg(showCash(*a.cost))
              : a.cost            ? showCash(*a.cost)
              : a.toAsk           ? QString()
                                  : tr("not known")},
             a.key,
             {},
             false});
    }
    m_orders->fill(rows);
}

// Each choice as a heading with the day to decide by, its options below it.
void ForecastPage::fillChoices()
{
    const ForecastTold &told = *m_forecaster.latest();
    std::vector<ForecastTable::Row> rows;
    for (const forecast::ChoiceOutlook &choice : told.choices) {
        const Choice *now = m_book.records().find(choice.choice);
        if (!now || now->taken)
            continue; // decided, or gone, since this forecast
        const QString key = QStringLiteral("choice:") + choice.key;
        rows.push_back(
            {{choice.decideBy ? tr("%1: decide by %2")
                                    .arg(choice.question, day(told.forecast, *choice.decideBy))
                              : choice.question},
             key,
             {},
             true});
        for (const forecast::OptionOutlook &option : choice.options)
            rows.push_back(
                {{option.name, QString::number(option.openTasks),
                  tr("%1\u00A0h").arg(option.openMinutes / 60.0, 0, 'f', 1), showCash(option.cost),
                  option.unpriced > 0 ? QString::number(option.unpriced) : QString(),
                  day(told.forecast, option.ready50), day(told.forecast, option.ready80),
                  option.startBy ? day(told.forecast, *option.startBy) : tr("any day")},
                 key + u':' + option.name,
                 {},
                 false});
    }
    m_choices->fill(rows);
}

void ForecastPage::fillGains()
{
    const ForecastTold &told = *m_forecaster.latest();
    const QString goal = nameOf(told, told.milestone);
    m_gains->setRemark(goal.isEmpty() ? QString()
                                      : tr("to reach “%1” earlier, on the same luck").arg(goal));
    std::vector<ForecastTable::Row> rows;
    for (std::size_t i = 0; i < told.gains.size(); ++i) {
        const forecast::Gain &gain = told.gains[i];
        rows.push_back({{told.gainTexts[i], tr("%1\u00A0days").arg(gain.meanDays, 0, 'f', 0),
                         tr("%1\u00A0days").arg(gain.days, 0, 'f', 0),
                         tr("%1\u00A0days").arg(gain.standardError, 0, 'f', 1)},
                        {},
                        {{0, QStringLiteral("--try ") + gain.change.code()}},
                        false});
    }
    m_gains->fill(rows);
}

void ForecastPage::fillCash()
{
    const ForecastTold &told = *m_forecaster.latest();
    m_cash->setRemark(told.cash.runsOut
                          ? tr("from today; runs out in %1, at 80\u00A0%")
                                .arg(told.cash.runsOut->toString(QStringLiteral("MMMM yyyy")))
                          : tr("from today"));
    std::vector<ForecastTable::Row> rows;
    for (const forecast::CashMonth &month : told.cash.months)
        rows.push_back(
            {{month.month.toString(QStringLiteral("MMMM yyyy")), showCash(month.due50),
              showCash(month.due80), month.available ? showCash(*month.available) : tr("not told"),
              month.available && *month.available < month.due80 ? tr("too little") : QString()},
             {},
             {},
             false});
    m_cash->fill(rows);
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
        auto *text =
            quiet((one.tasks == 1
                       ? tr("%1: 1 done task took %2 times its estimate.").arg(wordOf(one.trade))
                       : tr("%1: %2 done tasks took %3 times their estimate.")
                             .arg(wordOf(one.trade))
                             .arg(one.tasks))
                      .arg(one.factor(), 0, 'f', 2));
        row->addWidget(text, 1);
        if (one.isOffered()) {
            auto *take = new QPushButton(one.openTasks == 1
                                             ? tr("Change 1 open estimate")
                                             : tr("Change %1 open estimates").arg(one.openTasks));
            take->setAccessibleName(tr("%1 of %2 work by %3 times")
                                        .arg(take->text(), wordOf(one.trade))
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
    m_learnedBlock->setVisible(m_learned->count() > 0);
}

} // namespace ohmwright::ui
