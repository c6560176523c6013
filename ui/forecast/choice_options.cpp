// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/forecast/choice_options.h"

#include "core/parts/options.h"
#include "core/quantity/dates.h"
#include "ui/forecast/forecaster.h"
#include "ui/shell/drafted_style.h"
#include "ui/shell/theme.h"
#include "ui/widgets/section_title.h"

#include <QGridLayout>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QVBoxLayout>

#include <algorithm>

namespace ohmwright::ui {

namespace {

constexpr std::size_t kSideBySide = 3; // more go into a further band below

QLabel *words(const QString &text, bool quiet)
{
    auto *label = new QLabel(text);
    label->setTextFormat(Qt::PlainText);
    label->setWordWrap(true);
    label->setAlignment(Qt::AlignTop | Qt::AlignLeft);
    if (quiet)
        label->setForegroundRole(QPalette::PlaceholderText);
    return label;
}

QString day(const ForecastTold &told, int days)
{
    return days == plan::kNever ? ChoiceOptions::tr("never") : showDate(told.forecast.dayOf(days));
}

QString workOf(const forecast::OptionOutlook &option)
{
    const QString hours = ChoiceOptions::tr("%1\u00A0h").arg(option.openMinutes / 60.0, 0, 'f', 1);
    return option.openTasks == 1
               ? ChoiceOptions::tr("1 task, %1").arg(hours)
               : ChoiceOptions::tr("%1 tasks, %2").arg(option.openTasks).arg(hours);
}

QString costOf(const forecast::OptionOutlook &option)
{
    const QString cost = showMoney(option.cost, NumberStyle::pointDecimal());
    return option.unpriced == 0 ? cost
           : option.unpriced == 1
               ? ChoiceOptions::tr("%1 and 1 part unpriced").arg(cost)
               : ChoiceOptions::tr("%1 and %2 parts unpriced").arg(cost).arg(option.unpriced);
}

QString checksOf(const VerdictCounts &counts)
{
    return ChoiceOptions::tr("fails %1, unknown %2, tight %3, holds %4")
        .arg(countOf(Verdict::Fails, counts))
        .arg(countOf(Verdict::Unknown, counts))
        .arg(countOf(Verdict::Tight, counts))
        .arg(countOf(Verdict::Holds, counts));
}

} // namespace

struct ChoiceOptions::Told
{
    Id<ChoiceOption> option;
    QString name;
    QStringList facts; // one for each of the lines
};

ChoiceOptions::ChoiceOptions(Book &book, Forecaster &forecaster, const Theme &theme,
                             QWidget *parent)
    : QWidget(parent), m_book(book), m_forecaster(forecaster), m_theme(theme),
      m_title(new SectionTitle(theme, tr("Side by side"))), m_sentence(words({}, true)),
      m_place(new QVBoxLayout), m_why(new QWidget), m_whyLabel(words({}, false)),
      m_because(new QLineEdit), m_problem(words({}, false))
{
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 6);
    column->setSpacing(8);
    column->addWidget(m_title);
    column->addWidget(m_sentence);
    m_place->setContentsMargins(0, 0, 0, 0);
    column->addLayout(m_place);
    auto *why = new QVBoxLayout(m_why);
    why->setContentsMargins(0, 0, 0, 0);
    why->setSpacing(6);
    why->addWidget(m_whyLabel);
    auto *row = new QHBoxLayout;
    row->setSpacing(8);
    m_because->setMaxLength(2000);
    m_because->setPlaceholderText(tr("cheaper; has papers; in stock"));
    m_because->setAccessibleName(tr("Why it is taken"));
    m_whyLabel->setBuddy(m_because);
    auto *take = new QPushButton(tr("&Decide"));
    makePrimary(*take);
    auto *leave = new QPushButton(tr("Leave it &open"));
    row->addWidget(m_because, 1);
    row->addWidget(take);
    row->addWidget(leave);
    why->addLayout(row);
    why->addWidget(m_problem);
    column->addWidget(m_why);
    m_why->hide();
    connect(take, &QPushButton::clicked, this, &ChoiceOptions::decide);
    connect(m_because, &QLineEdit::returnPressed, this, &ChoiceOptions::decide);
    connect(leave, &QPushButton::clicked, this, &ChoiceOptions::leaveOpen);
    const auto follow = [this] {
        if (isVisible())
            refresh();
    };
    connect(&m_forecaster, &Forecaster::updated, this, follow);
    connect(&m_forecaster, &Forecaster::progressed, this, follow);
}

void ChoiceOptions::showEvent(QShowEvent *event)
{
    QWidget::showEvent(event);
    m_forecaster.want();
    refresh();
}

void ChoiceOptions::showChoice(std::int64_t id)
{
    if (m_choice.value() != id) {
        m_choice = Id<Choice>(id);
        m_taking = {};
        m_why->hide();
    }
    refresh();
}

// The facts of each option in the lines' order; shorter while the forecast does not know it.
std::vector<ChoiceOptions::Told> ChoiceOptions::told(const Choice &choice) const
{
    std::vector<Told> options;
    const auto forecast = m_forecaster.latest();
    const forecast::ChoiceOutlook *outlook = nullptr;
    if (forecast && forecast->complete)
        for (const forecast::ChoiceOutlook &one : forecast->choices)
            if (one.choice == choice.id)
                outlook = &one;
    for (const ChoiceOption &option : m_book.records().of<ChoiceOption>(choice.id)) {
        Told shown{option.id, option.name, {}};
        if (outlook)
            for (const forecast::OptionOutlook &one : outlook->options) {
                if (one.option != option.id)
                    continue;
                const bool empty = one.openTasks == 0 && one.unpriced == 0 && one.cost.minor() == 0;
                shown.facts << (empty ? tr("nothing belongs to it yet") : workOf(one))
                            << (empty ? tr("nothing") : costOf(one));
                const auto counts = forecast->optionChecks.find(option.id);
                shown.facts << (counts == forecast->optionChecks.end() ? tr("not known")
                                                                       : checksOf(counts->second))
                            << day(*forecast, one.ready50) << day(*forecast, one.ready80)
                            << (one.startBy ? day(*forecast, *one.startBy) : tr("any day"));
            }
        options.push_back(std::move(shown));
    }
    return options;
}

void ChoiceOptions::refresh()
{
    const Choice *choice = m_book.records().find(m_choice);
    if (!choice)
        return;
    const auto forecast = m_forecaster.latest();
    QString remark;
    QString sentence;
    std::vector<Told> options;
    if (const ChoiceOption *taken = m_book.records().find(choice->taken)) {
        sentence = choice->decidedOn
                       ? tr("“%1” was taken on %2.").arg(taken->name, showDate(*choice->decidedOn))
                       : tr("“%1” was taken.").arg(taken->name);
        if (!choice->because.isEmpty())
            sentence += u' ' + tr("Why: %1").arg(choice->because);
        sentence += u'\n' + tr("To open it again, empty “Taken” below.");
        m_why->hide();
    } else {
        options = told(*choice);
        const bool known =
            !options.empty() && std::all_of(options.begin(), options.end(),
                                            [](const Told &one) { return !one.facts.isEmpty(); });
        if (options.empty())
            sentence = tr("No option yet: add each way it could be decided under Options below.");
        else if (!known)
            sentence = m_forecaster.isBehind()
                           ? tr("What each option would bring is being worked out.")
                           : tr("What each option would bring is not worked out: the forecast was "
                                "stopped.");
        if (forecast && forecast->complete)
            for (const forecast::ChoiceOutlook &one : forecast->choices)
                if (one.choice == choice->id)
                    remark = one.decideBy ? tr("decide by %1").arg(day(*forecast, *one.decideBy))
                                          : tr("no milestone waits for it");
        if (known && m_forecaster.isBehind())
            remark += tr("; being made anew");
    }
    m_title->setText(choice->taken ? tr("Decided") : tr("Side by side"));
    m_title->setRemark(remark);
    m_sentence->setText(sentence);
    m_sentence->setVisible(!sentence.isEmpty());
    lay(options);
}

void ChoiceOptions::lay(const std::vector<Told> &options)
{
    const auto forecast = m_forecaster.latest();
    const bool goal = forecast && !forecast->plan.milestones.empty();
    const QString end =
        goal ? forecast->plan.activities[forecast->plan.milestones.back()].name : tr("The end");
    const QStringList lines{tr("Still to do"),  tr("Cost to come"),
                            tr("Checks"),       tr("%1 at 50\u00A0%").arg(end),
                            tr("at 80\u00A0%"), tr("Start by")};
    QStringList shown = lines;
    for (const Told &one : options)
        shown << QString::number(one.option.value()) << one.name << one.facts;
    if (shown == m_shown && m_grid)
        return; // the focus stays where it is
    m_shown = shown;
    // what had the focus has it again
    QString focused;
    if (m_grid && m_grid->isAncestorOf(focusWidget()) && focusWidget()->hasFocus())
        focused = focusWidget()->objectName();
    if (m_grid) {
        m_grid->hide();
        m_grid->deleteLater();
    }
    m_grid = new QWidget;
    auto *grid = new QGridLayout(m_grid);
    grid->setContentsMargins(0, 0, 0, 0);
    grid->setHorizontalSpacing(18);
    grid->setVerticalSpacing(5);
    const std::size_t columns = std::min(options.size(), kSideBySide);
    for (std::size_t c = 0; c < columns; ++c)
        grid->setColumnStretch(static_cast<int>(c) + 1, 1);
    QWidget *toFocus = nullptr;
    for (std::size_t at = 0; at < options.size(); ++at) {
        const Told &one = options[at];
        const int column = static_cast<int>(at % kSideBySide) + 1;
        const int top = static_cast<int>(at / kSideBySide) * (static_cast<int>(lines.size()) + 3);
        auto *name = words(one.name, false);
        name->setFont(m_theme.font(Lettering::Strong));
        grid->addWidget(name, top, column);
        for (int line = 0; line < one.facts.size(); ++line) {
            if (column == 1)
                grid->addWidget(words(lines.at(line), true), top + 1 + line, 0);
            grid->addWidget(words(one.facts.at(line), false), top + 1 + line, column);
        }
        auto *take = new QPushButton(tr("Take this one"));
        take->setObjectName(QString::number(one.option.value()));
        take->setAccessibleName(tr("Take “%1”").arg(one.name));
        QStringList described;
        for (int line = 0; line < one.facts.size(); ++line)
            described << tr("%1: %2").arg(lines.at(line), one.facts.at(line));
        take->setAccessibleDescription(described.join(tr("; ")));
        connect(take, &QPushButton::clicked, this, [this, id = one.option] { askWhy(id); });
        const int below = top + 1 + static_cast<int>(lines.size());
        grid->addWidget(take, below, column, Qt::AlignLeft);
        if (take->objectName() == focused)
            toFocus = take;
        grid->setRowMinimumHeight(below + 1, 8);
    }
    m_place->addWidget(m_grid); // before it is shown: it would open a window of its own
    m_grid->setVisible(!options.empty());
    if (toFocus)
        toFocus->setFocus(Qt::OtherFocusReason);
}

void ChoiceOptions::askWhy(Id<ChoiceOption> option)
{
    const ChoiceOption *taken = m_book.records().find(option);
    if (!taken)
        return;
    m_taking = option;
    m_whyLabel->setText(tr("Why “%1”? It may be left empty.").arg(taken->name));
    m_problem->hide();
    const Choice *choice = m_book.records().find(m_choice);
    m_because->setText(choice ? choice->because : QString());
    m_why->show();
    m_because->setFocus(Qt::OtherFocusReason);
}

void ChoiceOptions::decide()
{
    const ChoiceOption *option = m_book.records().find(m_taking);
    const QString name = option ? option->name : QString();
    const Outcome done = takeOption(m_book, m_taking, m_because->text());
    if (!done) {
        m_problem->setText(
            QStringList{done.error().sentence, done.error().whatToDo}.join(u' ').trimmed());
        m_problem->show();
        return;
    }
    m_taking = {};
    m_why->hide();
    emit decided();
    emit said(tr("“%1” is taken. Undo opens the choice again.").arg(name), Tone::Told);
}

void ChoiceOptions::leaveOpen()
{
    const QString button = QString::number(m_taking.value());
    m_taking = {};
    m_why->hide();
    if (auto *take = findChild<QPushButton *>(button))
        take->setFocus(Qt::OtherFocusReason);
}

void ChoiceOptions::keyPressEvent(QKeyEvent *event)
{
    if (event->key() == Qt::Key_Escape && m_why->isVisible())
        leaveOpen();
    else
        QWidget::keyPressEvent(event);
}

} // namespace ohmwright::ui
