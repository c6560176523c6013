// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/start/start_sheet.h"

#include "ui/shell/drafted_style.h"
#include "ui/shell/theme.h"
#include "ui/widgets/field.h"
#include "ui/widgets/problem_line.h"
#include "ui/widgets/section_title.h"

#include <QComboBox>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QRadioButton>
#include <QStackedWidget>
#include <QVBoxLayout>

#include <algorithm>
#include <utility>

namespace ohmwright::ui {

namespace {

constexpr int kOneColumnBelow = 760; // pixels of the sheet's width
constexpr int kOffers = 360;         // widest: about fifty letters a line
constexpr int kQuestions = 560;

QLabel *words(const QString &text)
{
    auto *label = new QLabel(text);
    label->setTextFormat(Qt::PlainText);
    label->setWordWrap(true);
    label->setForegroundRole(QPalette::PlaceholderText);
    return label;
}

// What hangs on the question, and on the answer picked.
QString hintOf(const StarterQuestion &question, int answer)
{
    QStringList sentences;
    if (answer >= 0 && answer < static_cast<int>(question.answers.size()))
        sentences << question.answers[static_cast<std::size_t>(answer)].means;
    sentences << question.why;
    sentences.removeAll({});
    return sentences.value(0);
}

} // namespace

StartSheet::StartSheet(const Theme &theme, QWidget *parent)
    : QWidget(parent), m_theme(theme), m_offers(nullptr), m_questions(new QStackedWidget),
      m_currency(new QLineEdit), m_problem(new ProblemLine(theme))
{
    for (Starter &starter : starters())
        m_offered.push_back({std::move(starter), nullptr, {}});
    Starter none;
    none.title = tr("An empty book");
    none.summary = tr("Nothing in it: for a build that is under way, or unlike any of these.");
    none.suits = tr("Parts can be logged and tasks added at once. There is nothing to answer.");
    m_offered.push_back({std::move(none), nullptr, {}});

    auto *outer = new QVBoxLayout(this);
    outer->setContentsMargins(28, 18, 28, 18);
    outer->setSpacing(14);
    outer->addWidget(new SectionTitle(theme, tr("New book"), TitleLevel::Page));
    m_halves = new QHBoxLayout;
    m_halves->setSpacing(36);
    m_offers = makeOffers();
    m_halves->addWidget(m_offers, 0, Qt::AlignTop);
    m_questions->setMaximumWidth(kQuestions);
    m_halves->addWidget(m_questions, 0, Qt::AlignTop);
    m_halves->addStretch();
    outer->addLayout(m_halves);
    outer->addStretch(1);

    auto *make = new QPushButton(tr("&Make the book… (Enter)"));
    makePrimary(*make);
    auto *close = new QPushButton(tr("Close (Escape)"));
    auto *foot = new QHBoxLayout;
    foot->setSpacing(10);
    auto *counted = new QLabel(tr("Money is &counted in"));
    counted->setBuddy(m_currency);
    m_currency->setMaxLength(3);
    m_currency->setFixedWidth(m_currency->fontMetrics().averageCharWidth() * 9);
    m_currency->setToolTip(tr("Three letters of ISO 4217; what is paid in other currencies is "
                              "booked at the day's rate"));
    m_currency->setAccessibleDescription(m_currency->toolTip());
    foot->addWidget(counted);
    foot->addWidget(m_currency);
    foot->addWidget(m_problem, 1);
    foot->addStretch(1);
    foot->addWidget(close);
    foot->addWidget(make);
    outer->addLayout(foot);
    connect(make, &QPushButton::clicked, this, &StartSheet::wanted);
    connect(close, &QPushButton::clicked, this, &StartSheet::closed);
    begin();
}

QWidget *StartSheet::makeOffers()
{
    auto *offers = new QWidget;
    offers->setMaximumWidth(kOffers);
    auto *column = new QVBoxLayout(offers);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(3);
    column->addWidget(new SectionTitle(m_theme, tr("Begin from")));
    column->addSpacing(4);
    for (std::size_t i = 0; i < m_offered.size(); ++i) {
        Offered &offered = m_offered[i];
        offered.button = new QRadioButton(offered.starter.title);
        offered.button->setFont(m_theme.font(Lettering::Strong));
        offered.button->setAccessibleDescription(offered.starter.summary);
        column->addWidget(offered.button);
        auto *summary = words(offered.starter.summary);
        summary->setFont(m_theme.font(Lettering::Small));
        summary->setContentsMargins(26, 0, 0, 8);
        column->addWidget(summary);
        m_questions->addWidget(makeQuestions(offered));
        connect(offered.button, &QRadioButton::toggled, this, [this, i](bool on) {
            if (on)
                pick(i);
        });
    }
    return offers;
}

QWidget *StartSheet::makeQuestions(Offered &offered)
{
    auto *page = new QWidget;
    auto *column = new QVBoxLayout(page);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(9);
    const bool asks = !offered.starter.questions.empty();
    column->addWidget(new SectionTitle(m_theme, asks ? tr("Six questions") : tr("No questions")));
    column->addWidget(words(offered.starter.suits));
    for (const StarterQuestion &question : offered.starter.questions) {
        auto *choice = new QComboBox;
        for (const StarterAnswer &answer : question.answers)
            choice->addItem(answer.says, answer.key);
        auto *field =
            new Field(m_theme, QString(question.asks).replace(u'&', QLatin1String("&&")), choice);
        field->keepMessageLine(true);
        connect(choice, &QComboBox::currentIndexChanged, field,
                [field, question](int answer) { field->setHint(hintOf(question, answer)); });
        column->addWidget(field);
        offered.asked.push_back({question, choice, field});
    }
    column->addStretch(1);
    return page;
}

void StartSheet::begin()
{
    for (Offered &offered : m_offered)
        for (Asked &asked : offered.asked) {
            asked.choice->setCurrentIndex(asked.choice->findData(asked.question.usual));
            asked.field->setHint(hintOf(asked.question, asked.choice->currentIndex()));
        }
    setProblem({});
    m_currency->setText(Currency().code());
    m_offered.front().button->setChecked(true);
    pick(0);
    m_offered.front().button->setFocus(Qt::OtherFocusReason);
}

void StartSheet::pick(std::size_t index)
{
    m_questions->setCurrentIndex(static_cast<int>(index));
    setFocusProxy(m_offered[index].button);
}

const StartSheet::Offered &StartSheet::picked() const
{
    return *std::find_if(m_offered.begin(), m_offered.end(),
                         [](const Offered &offered) { return offered.button->isChecked(); });
}

QString StartSheet::starter() const
{
    return picked().starter.name;
}

StarterAnswers StartSheet::answers() const
{
    StarterAnswers answers;
    for (const Asked &asked : picked().asked)
        answers.insert(asked.question.key, asked.choice->currentData().toString());
    return answers;
}

std::optional<Currency> StartSheet::currency()
{
    const auto found = Currency::fromCode(m_currency->text().trimmed().toUpper());
    if (!found) {
        setProblem(tr("“%1” is not an ISO 4217 currency code.").arg(m_currency->text().trimmed()));
        m_currency->setFocus(Qt::TabFocusReason);
    }
    return found;
}

void StartSheet::setProblem(const QString &sentence)
{
    m_problem->setProblem(sentence);
}

void StartSheet::keyPressEvent(QKeyEvent *event)
{
    // only what the controls did not want arrives here
    switch (event->key()) {
    case Qt::Key_Return:
    case Qt::Key_Enter:
        emit wanted();
        return;
    case Qt::Key_Escape:
        emit closed();
        return;
    default:
        QWidget::keyPressEvent(event);
    }
}

void StartSheet::resizeEvent(QResizeEvent *event)
{
    QWidget::resizeEvent(event);
    const bool wide = width() >= kOneColumnBelow;
    m_halves->setDirection(wide ? QBoxLayout::LeftToRight : QBoxLayout::TopToBottom);
    for (const auto &[half, share] : {std::pair(0, 2), std::pair(1, 3), std::pair(2, 1)})
        m_halves->setStretch(half, wide ? share : 0); // widths are shared, heights are as needed
    // A layout reckons the height of wrapped words at the full width, whatever the widest allowed:
    // told outright, a narrow page scrolls instead of being squeezed.
    const int within = width() - layout()->contentsMargins().left() * 2;
    m_offers->setMinimumHeight(wide ? 0 : m_offers->heightForWidth(std::min(within, kOffers)));
    int tallest = 0;
    for (int i = 0; i < m_questions->count(); ++i)
        tallest = std::max(tallest, m_questions->widget(i)->layout()->totalHeightForWidth(
                                        std::min(within, kQuestions)));
    m_questions->setMinimumHeight(wide ? 0 : tallest);
}

} // namespace ohmwright::ui
