// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/forecast/try_line.h"

#include "core/forecast/changes.h"
#include "core/forecast/free_work.h"
#include "core/forecast/hours.h"
#include "ui/build_order/task_texts.h"
#include "ui/forecast/change_trial.h"
#include "ui/forecast/forecaster.h"
#include "ui/shell/theme.h"
#include "ui/widgets/pick_or_new.h"

#include <QAccessible>
#include <QComboBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QStackedWidget>
#include <QVBoxLayout>

#include <optional>

namespace ohmwright::ui {

namespace {

constexpr int kValueWidth = 420;

// Places of the values in their stack, in the order of the kinds.
enum Kind { More, Evening, Helper, Order, Without };

QComboBox *dayPick(const QString &name)
{
    auto *combo = new QComboBox;
    combo->setAccessibleName(name);
    for (int day = 0; day < 7; ++day)
        combo->addItem(forecast::dayName(static_cast<Weekday>(day)),
                       wordOf(static_cast<Weekday>(day)));
    return combo;
}

QLabel *unit(const QString &text)
{
    auto *label = new QLabel(text);
    label->setForegroundRole(QPalette::PlaceholderText);
    return label;
}

QLineEdit *figure(const QString &name, const QString &first)
{
    auto *line = new QLineEdit(first);
    line->setAccessibleName(name);
    line->setMaxLength(8);
    line->setMaximumWidth(90);
    return line;
}

QWidget *inARow(std::initializer_list<QWidget *> widgets)
{
    auto *row = new QWidget;
    auto *layout = new QHBoxLayout(row);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(8);
    for (QWidget *widget : widgets)
        layout->addWidget(widget);
    if (widgets.size() > 1)
        layout->addStretch(1);
    return row;
}

// As hours are typed elsewhere: "2", "1.5 h", "90 min".
std::optional<int> minutesOfHours(const QString &typed)
{
    const Result<int> minutes = readWorkMinutes(typed.trimmed());
    return minutes && *minutes >= 15 && *minutes <= 1440 ? std::optional(*minutes) : std::nullopt;
}

} // namespace

TryLine::TryLine(Forecaster &forecaster, const Theme &theme, QWidget *parent)
    : QWidget(parent), m_forecaster(forecaster), m_theme(theme),
      m_trial(new ChangeTrial(forecaster, this)), m_kind(new QComboBox),
      m_values(new QStackedWidget), m_button(new QPushButton(tr("T&ry it"))), m_answer(new QLabel)
{
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(8);
    auto *row = new QHBoxLayout;
    row->setSpacing(10);
    m_kind->setAccessibleName(tr("What to try"));
    m_kind->addItems({tr("More minutes a week"), tr("An evening more"), tr("A helper"),
                      tr("A part ordered today"), tr("Without a task")});
    row->addWidget(m_kind);
    makeValues();
    m_values->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    connect(m_values, &QStackedWidget::currentChanged, this, &TryLine::fitValue);
    fitValue();
    row->addWidget(m_values, 3);
    row->addWidget(m_button);
    row->addStretch(1);
    column->addLayout(row);
    m_answer->setTextFormat(Qt::PlainText);
    m_answer->setWordWrap(true);
    m_answer->hide();
    column->addWidget(m_answer);
    connect(m_kind, &QComboBox::currentIndexChanged, m_values, &QStackedWidget::setCurrentIndex);
    connect(m_button, &QPushButton::clicked, this, [this] {
        if (m_trial->isWorking())
            m_trial->cancel();
        else
            ask();
    });
    for (QLineEdit *line : {m_minutes, m_hours})
        connect(line, &QLineEdit::returnPressed, this, &TryLine::ask);
    connect(m_trial, &ChangeTrial::changed, this, &TryLine::showState);
    connect(&m_forecaster, &Forecaster::updated, this, &TryLine::readBook);
    readBook();
    showState();
}

void TryLine::makeValues()
{
    m_minutes = figure(tr("Minutes more a week"), QStringLiteral("60"));
    m_values->addWidget(inARow({m_minutes, unit(tr("min"))}));
    m_eveningDay = dayPick(tr("Day of the further evening"));
    m_hours = figure(tr("Hours on it"), QStringLiteral("2"));
    m_values->addWidget(inARow({m_eveningDay, m_hours, unit(tr("h"))}));
    m_helperDay = dayPick(tr("Day the helper comes"));
    m_helperDay->setCurrentIndex(static_cast<int>(Weekday::Saturday));
    m_values->addWidget(inARow({m_helperDay, unit(tr("in its working times"))}));
    m_part = new PickOrNew(m_theme);
    m_part->setKnownOnly(true);
    m_part->setAccessibleName(tr("Part ordered today"));
    m_part->setPlaceholderText(tr("a part that is still to order"));
    m_values->addWidget(inARow({m_part}));
    m_task = new PickOrNew(m_theme);
    m_task->setKnownOnly(true);
    m_task->setAccessibleName(tr("Task left out"));
    m_task->setPlaceholderText(tr("no tests, no papers, no high voltage"));
    m_values->addWidget(inARow({m_task}));
}

// No wider than what is asked for, so that the button stands beside it.
void TryLine::fitValue()
{
    const bool name = m_values->currentIndex() == Order || m_values->currentIndex() == Without;
    m_values->setMaximumWidth(name ? kValueWidth : m_values->currentWidget()->sizeHint().width());
}

// What can be picked: parts that could be ordered today, and tasks that nothing waits on and that
// protect nobody.
void TryLine::readBook()
{
    const auto told = m_forecaster.latest();
    if (!told)
        return;
    std::vector<KnownName> parts;
    std::vector<KnownName> tasks;
    const forecast::WaitedOn waited = forecast::waitedOnBy(*told->records);
    for (const forecast::Activity &a : told->plan.activities) {
        const Part *part = a.toOrder ? told->records->byKey<Part>(a.part) : nullptr;
        if (part && forecast::whyNotToday(*told->records, *part).isEmpty())
            parts.push_back({a.part, a.name,
                             a.after.empty() ? tr("planned to be ordered today already")
                                             : tr("waits for a task to order it")});
        const Task *task =
            a.kind == forecast::ActivityKind::Task ? told->records->byKey<Task>(a.key) : nullptr;
        if (task && forecast::whyKept(*told->records, *task, waited).isEmpty())
            tasks.push_back({a.key, a.name, task->area});
    }
    m_part->setKnown(std::move(parts));
    m_task->setKnown(std::move(tasks));
}

QString TryLine::code() const
{
    switch (m_values->currentIndex()) {
    case Evening:
        return QStringLiteral("evening:%1+%2")
            .arg(m_eveningDay->currentData().toString())
            .arg(minutesOfHours(m_hours->text()).value_or(0));
    case Helper:
        return QStringLiteral("helper:") + m_helperDay->currentData().toString();
    case Order:
        return QStringLiteral("order:") +
               (m_part->keyNow().isEmpty() ? m_part->name() : m_part->keyNow());
    case Without:
        return QStringLiteral("drop:") +
               (m_task->keyNow().isEmpty() ? m_task->name() : m_task->keyNow());
    default:
        return QStringLiteral("hours+") + m_minutes->text().trimmed();
    }
}

void TryLine::ask()
{
    if (m_values->currentIndex() == Evening && !minutesOfHours(m_hours->text()))
        m_trial->refuse(tr("“%1” says no hours between 0.25 and 24.").arg(m_hours->text()));
    else
        m_trial->ask(code());
}

void TryLine::showState()
{
    m_button->setText(m_trial->isWorking() ? tr("S&top trying") : tr("T&ry it"));
    QString text;
    if (!m_trial->problem().isEmpty())
        text = m_trial->problem();
    else if (m_trial->isWorking())
        text = tr("Playing the plan with it …");
    else if (!m_trial->answer().isEmpty())
        text = m_trial->answer().front() + u'\n' +
               (m_trial->answer().mid(1).join(QStringLiteral("\n")));
    m_answer->setText(text);
    m_answer->setVisible(!text.isEmpty());
    m_answer->setAccessibleName(text);
    if (!text.isEmpty()) {
        QAccessibleEvent told(m_answer, QAccessible::NameChanged);
        QAccessible::updateAccessibility(&told);
    }
}

} // namespace ohmwright::ui
