// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/build_order/move_panel.h"

#include "core/quantity/dates.h"
#include "ui/build_order/move_acts.h"
#include "ui/build_order/moves_model.h"
#include "ui/build_order/record_forms.h"
#include "ui/shell/drafted_style.h"
#include "ui/shell/theme.h"
#include "ui/widgets/entry_form.h"
#include "ui/widgets/problem_line.h"
#include "ui/widgets/section_title.h"

#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>

namespace ohmwright::ui {

namespace {

QLabel *words(bool quiet)
{
    auto *label = new QLabel;
    label->setTextFormat(Qt::PlainText);
    label->setWordWrap(true);
    if (quiet)
        label->setForegroundRole(QPalette::PlaceholderText);
    return label;
}

QString capital(const QString &text)
{
    return text.isEmpty() ? text : text.at(0).toUpper() + text.mid(1);
}

} // namespace

MovePanel::MovePanel(Book &book, const Theme &theme, QWidget *parent)
    : QWidget(parent), m_book(book), m_heading(new SectionTitle(theme, tr("Move"))),
      m_why(words(false)), m_for(words(true)), m_letter(new LetterForm(book, theme)),
      m_test(new TestForm(book, theme)), m_problem(new ProblemLine(theme)), m_act(new QPushButton)
{
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(6);
    m_heading->setWraps(true); // else a long one makes the whole column wider than its room
    for (QWidget *widget : {static_cast<QWidget *>(m_heading), static_cast<QWidget *>(m_why),
                            static_cast<QWidget *>(m_for), static_cast<QWidget *>(m_letter),
                            static_cast<QWidget *>(m_test), static_cast<QWidget *>(m_problem)})
        column->addWidget(widget);
    column->addWidget(m_act, 0, Qt::AlignLeft);
    makePrimary(*m_act);
    connect(m_act, &QPushButton::clicked, this, &MovePanel::act);
    connect(m_letter, &LetterForm::saved, this, &MovePanel::done);
    connect(m_test, &TestForm::saved, this, &MovePanel::done);
}

void MovePanel::setMove(const plan::Network &network, const plan::Move &move)
{
    const bool same = m_move && m_move->kind == move.kind && m_move->subject == move.subject;
    if (!same)
        m_problem->setProblem({});
    m_move = move;
    const MoveSubject subject = subjectOf(m_book.records(), move);
    m_heading->setText(tr("%1: %2").arg(capital(plan::moveKindName(move.kind)), move.title));
    const QString by = move.latestStart
                           ? tr("start by %1 (%2)")
                                 .arg(showDate(*move.latestStart),
                                      daysAway(m_book.clock().today(), *move.latestStart))
                           : tr("%1 days from here to the milestone").arg(move.chainDays);
    m_why->setText(tr("%1; %2.").arg(capital(move.why), by));
    QStringList tasks;
    for (const std::size_t task : move.for_)
        tasks << network.tasks.at(task).title;
    m_for->setText(tr("For %1").arg(tasks.join(tr(", "))));
    m_for->setVisible(!move.needs.empty());
    m_letter->setVisible(subject.act == MoveAct::Letter);
    m_test->setVisible(subject.act == MoveAct::Test);
    if (subject.letter)
        m_letter->setLetter(*subject.letter);
    if (subject.test)
        m_test->setTest(*subject.test);
    const QString name = actName(m_book.records(), move);
    m_act->setText(name);
    // a task is marked done at the head of its editor, right below
    m_act->setVisible(!name.isEmpty() && subject.act != MoveAct::Finish);
}

void MovePanel::act()
{
    if (!m_move)
        return;
    const plan::Move move = *m_move;
    const MoveSubject subject = subjectOf(m_book.records(), move);
    switch (subject.act) {
    case MoveAct::Letter:
        m_letter->begin();
        return;
    case MoveAct::Test:
        m_test->begin();
        return;
    case MoveAct::Part:
        emit partWanted(subject.partKey);
        return;
    case MoveAct::Open:
        emit openingWanted(subject.partKey);
        return;
    case MoveAct::Card:
        emit recordWanted(subject.cardTable, subject.cardKey);
        return;
    case MoveAct::Accept:
    case MoveAct::Finish:
    case MoveAct::FindOut:
    case MoveAct::Meet:
    case MoveAct::None:
        break;
    }
    const Result<QString> acted = actOn(m_book, move);
    m_problem->setProblem(acted ? QString() : told(acted.error()));
    if (acted)
        emit done(*acted);
}

} // namespace ohmwright::ui
