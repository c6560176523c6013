// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/checks/check_sheet.h"

#include "core/parts/cautions.h"
#include "ui/checks/check_words.h"
#include "ui/checks/checks_model.h"
#include "ui/checks/given_table.h"
#include "ui/checks/plot_view.h"
#include "ui/checks/turning_lines.h"
#include "ui/checks/worked_tables.h"
#include "ui/shell/theme.h"
#include "ui/widgets/caution_card.h"
#include "ui/widgets/problem_line.h"
#include "ui/widgets/section_title.h"
#include "ui/widgets/spoken_role.h"
#include "ui/widgets/state_mark.h"

#include <QApplication>
#include <QBoxLayout>
#include <QFontMetrics>
#include <QKeyEvent>
#include <QLabel>
#include <QPointer>
#include <QPushButton>
#include <QScrollBar>
#include <QTimer>

#include <utility>

namespace ohmwright::ui {

namespace {

// In characters, so that larger letters ask for more room.
constexpr int kAsideFrom = 92; // below it caution and source stand above the working
constexpr int kAsideWidth = 30;

QVBoxLayout *columnOf(QWidget &widget, int spacing)
{
    auto *column = new QVBoxLayout(&widget);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(spacing);
    return column;
}

QWidget *section(const Theme &theme, const QString &title, QWidget *content)
{
    auto *box = new QWidget;
    QVBoxLayout *column = columnOf(*box, 8);
    column->addWidget(new SectionTitle(theme, title));
    column->addWidget(content);
    return box;
}

QWidget *sentences(const Theme &theme, const QStringList &told)
{
    auto *box = new QWidget;
    QVBoxLayout *column = columnOf(*box, 6);
    for (const QString &sentence : told)
        column->addWidget(selectableWords(theme, sentence));
    return box;
}

} // namespace

CheckSheet::CheckSheet(const Theme &theme, Outside &outside, ValueCell::Save save, QWidget *parent)
    : QScrollArea(parent), m_theme(theme), m_outside(outside), m_save(std::move(save))
{
    setWidgetResizable(true);
    setFocusPolicy(Qt::StrongFocus);
    speakAs(*this, QAccessible::Document);
    build();
}

void CheckSheet::showCheck(std::optional<CheckView> view)
{
    if (view == m_view)
        return;
    const bool same = view && m_view && view->entry.key == m_view->entry.key;
    const Place was = same ? place() : Place();
    const int scrolled = same ? verticalScrollBar()->value() : 0;
    m_view = std::move(view);
    build();
    restore(was);
    // the new page has no height before it is laid out
    if (QLayout *layout = widget()->layout())
        layout->activate();
    verticalScrollBar()->setValue(scrolled);
}

void CheckSheet::searchTurning(std::optional<TurningSearch> search)
{
    if (m_turning)
        m_turning->search(std::move(search));
}

CheckSheet::Place CheckSheet::place() const
{
    Place place;
    const QWidget *focused = QApplication::focusWidget();
    place.hadFocus = focused && widget() && widget()->isAncestorOf(focused);
    if (!m_given)
        return place;
    for (const ValueCell *cell : m_given->cells()) {
        if (focused && (cell == focused || cell->isAncestorOf(focused)))
            place.focusedField = cell->field();
        if (cell->isEditing() && !cell->isTaking()) {
            place.editedField = cell->field();
            place.typed = cell->typed();
            place.problem = cell->problem();
        }
    }
    if (focused)
        place.focusedUnknown = focused->property("unknownName").toString();
    return place;
}

void CheckSheet::restore(const Place &place)
{
    if (!m_given)
        return;
    if (ValueCell *edited = m_given->cell(place.editedField)) {
        edited->startEditing(place.typed);
        edited->showProblem(place.problem);
    }
    if (!place.hadFocus)
        return;
    if (ValueCell *cell = m_given->cell(place.focusedField)) {
        if (!cell->isEditing())
            cell->setFocus(Qt::OtherFocusReason);
    } else if (QPushButton *button = m_given->findOutButton(place.focusedUnknown)) {
        button->setFocus(Qt::OtherFocusReason);
    } else {
        setFocus(Qt::OtherFocusReason);
    }
}

void CheckSheet::build()
{
    if (m_given)
        for (ValueCell *cell : m_given->cells())
            cell->letGo();
    if (m_turning) // until the old page is gone, what it searches may be gone before it
        m_turning->search(std::nullopt);
    // a cell of the old page may be in the middle of saving
    if (QWidget *old = takeWidget())
        old->deleteLater();
    m_given = nullptr;
    m_turning = nullptr;
    m_aside = nullptr;
    m_body = nullptr;
    auto *content = new QWidget;
    auto *column = new QVBoxLayout(content);
    column->setContentsMargins(20, 14, 18, 24);
    column->setSpacing(18);
    if (!m_view) {
        setAccessibleName(tr("Working of the check"));
        auto *none = selectableWords(m_theme, tr("Choose a check in the list to see it worked."),
                                     Lettering::Body, true);
        none->setAlignment(Qt::AlignHCenter | Qt::AlignTop);
        none->setContentsMargins(0, 60, 0, 0);
        column->addWidget(none);
    } else {
        setAccessibleName(tr("Working of the check: %1").arg(m_view->entry.check.title));
        setAccessibleDescription(spokenCheck(m_view->entry));
        column->addWidget(makeHead(*m_view));
        m_body = new QBoxLayout(QBoxLayout::TopToBottom);
        m_body->setSpacing(18);
        m_aside = makeAside(m_view->entry.check);
        m_body->addWidget(m_aside, 0, Qt::AlignTop);
        m_body->addWidget(makeWorking(*m_view), 1);
        column->addLayout(m_body);
    }
    column->addStretch(1);
    arrangeAside();
    setWidget(content);
}

QWidget *CheckSheet::makeHead(const CheckView &view)
{
    const Check &check = view.entry.check;
    auto *head = new QWidget;
    QVBoxLayout *column = columnOf(*head, 6);
    column->addWidget(selectableWords(m_theme, check.title, Lettering::Title));
    if (!view.entry.subject.isEmpty() && !check.title.contains(view.entry.subject))
        column->addWidget(selectableWords(m_theme, view.entry.subject, Lettering::Body, true));
    auto *verdict = new StateMark(m_theme, markOf(check.verdict));
    verdict->setFont(m_theme.font(Lettering::Heading));
    verdict->setWords(turnedWords(view.entry));
    column->addSpacing(2);
    column->addWidget(verdict);
    column->addWidget(selectableWords(m_theme, check.sentence));
    if (!check.result.isEmpty())
        column->addWidget(selectableWords(m_theme, check.result, Lettering::Strong));
    for (const QString &refusal : check.refusals) {
        auto *line = new ProblemLine(m_theme);
        line->setProblem(refusal);
        column->addWidget(line);
    }
    return head;
}

QWidget *CheckSheet::makeAside(const Check &check)
{
    auto *aside = new QWidget;
    QVBoxLayout *column = columnOf(*aside, 12);
    if (const auto card = cautionById(check.caution)) {
        auto *shown = new CautionCard(m_theme, card->title, card->lines);
        shown->setHighVoltage(card->highVoltage);
        column->addWidget(shown);
    }
    if (!check.source.isEmpty()) {
        auto *source = new QWidget;
        QVBoxLayout *lines = columnOf(*source, 2);
        lines->addWidget(selectableWords(m_theme, tr("Source"), Lettering::Small, true));
        lines->addWidget(selectableWords(m_theme, check.source));
        column->addWidget(source);
    }
    return aside;
}

QWidget *CheckSheet::makeWorking(const CheckView &view)
{
    const Check &check = view.entry.check;
    auto *working = new QWidget;
    QVBoxLayout *column = columnOf(*working, 20);
    if (check.publishedVerdict || !check.loosened.empty())
        column->addWidget(
            section(m_theme, tr("Looser than published"), makeLoosened(m_theme, check)));
    if (!check.doubts.isEmpty())
        column->addWidget(
            section(m_theme, tr("What computing cannot decide"), sentences(m_theme, check.doubts)));
    // the picture first: the figures below are what it is drawn from
    for (const Plot &plot : check.plots) {
        auto *drawn = new PlotView(plot, m_theme, m_outside);
        connect(drawn, &PlotView::said, this, &CheckSheet::said);
        column->addWidget(drawn);
    }
    if (!check.inputs.empty() || !check.unknowns.isEmpty()) {
        m_given = new GivenTable(m_theme, view, m_save);
        connect(m_given, &GivenTable::findOutWanted, this, &CheckSheet::findOutWanted);
        for (ValueCell *cell : m_given->cells()) {
            const auto reveal = [this, cell = QPointer<ValueCell>(cell)] {
                // once the line and what is wrong with it have their place
                QTimer::singleShot(0, this, [this, cell] {
                    constexpr int kAround = 90;
                    if (cell && widget()->isAncestorOf(cell))
                        ensureWidgetVisible(cell, 0, kAround);
                });
            };
            connect(cell, &ValueCell::problemChanged, this, reveal);
            connect(cell, &ValueCell::editingStarted, this, reveal);
        }
        column->addWidget(section(m_theme, tr("Given"), m_given));
    }
    if (!check.steps.empty())
        column->addWidget(section(m_theme, tr("Worked"), makeWorked(m_theme, check.steps)));
    if (!check.comparisons.empty())
        column->addWidget(
            section(m_theme, tr("Held against"), makeHeldAgainst(m_theme, check.comparisons)));
    m_turning = new TurningLines(m_theme, check);
    column->addWidget(m_turning);
    if (!check.afterwards.isEmpty())
        column->addWidget(
            section(m_theme, tr("Afterwards"), sentences(m_theme, {check.afterwards})));
    column->addStretch(1);
    return working;
}

// Beside the working where there is room; else above it, so that the caution is read first.
void CheckSheet::arrangeAside()
{
    if (!m_body)
        return;
    const int letter = QFontMetrics(m_theme.font(Lettering::Body)).averageCharWidth();
    const bool beside = viewport()->width() >= letter * kAsideFrom;
    m_body->setDirection(beside ? QBoxLayout::RightToLeft : QBoxLayout::TopToBottom);
    m_body->setSpacing(beside ? 28 : 18);
    m_aside->setMinimumWidth(beside ? letter * kAsideWidth : 0);
    m_aside->setMaximumWidth(beside ? letter * kAsideWidth : QWIDGETSIZE_MAX);
}

void CheckSheet::enter()
{
    if (m_given && !m_given->cells().empty())
        m_given->cells().front()->setFocus(Qt::TabFocusReason);
    else
        setFocus(Qt::TabFocusReason);
}

void CheckSheet::resizeEvent(QResizeEvent *event)
{
    arrangeAside();
    QScrollArea::resizeEvent(event);
}

void CheckSheet::keyPressEvent(QKeyEvent *event)
{
    QScrollBar *bar = verticalScrollBar();
    if (event->key() == Qt::Key_Home)
        bar->setValue(bar->minimum());
    else if (event->key() == Qt::Key_End)
        bar->setValue(bar->maximum());
    else
        QScrollArea::keyPressEvent(event);
}

} // namespace ohmwright::ui
