// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/parts/ratings_editor.h"

#include "core/parts/rating_edits.h"
#include "ui/parts/detail_section.h"
#include "ui/parts/rating_line.h"
#include "ui/widgets/field.h"
#include "ui/widgets/icons.h"
#include "ui/widgets/state_mark.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QVBoxLayout>

#include <algorithm>

namespace ohmwright::ui {

RatingsEditor::RatingsEditor(Book &book, const Theme &theme, QWidget *parent)
    : QWidget(parent), m_book(book), m_theme(theme)
{
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(8);
    auto *holder = new QWidget;
    m_list = new QVBoxLayout(holder);
    m_list->setContentsMargins(0, 0, 0, 0);
    m_list->setSpacing(12);
    column->addWidget(holder);

    m_settleForm = new QWidget;
    auto *settleColumn = new QVBoxLayout(m_settleForm);
    settleColumn->setContentsMargins(0, 0, 0, 0);
    m_settleWords = makeWords(theme, {}, Lettering::Strong);
    m_reason = new QLineEdit;
    m_reasonField = new Field(theme, tr("Why this one stands"), m_reason);
    auto *settleButton = new QPushButton(tr("Settle"));
    auto *row = new QHBoxLayout;
    row->addWidget(m_reasonField, 1, Qt::AlignTop);
    row->addWidget(settleButton, 0, Qt::AlignBottom);
    settleColumn->addWidget(m_settleWords);
    settleColumn->addLayout(row);
    m_settleForm->hide();
    column->addWidget(m_settleForm);
    connect(m_reason, &QLineEdit::returnPressed, this, &RatingsEditor::settle);
    connect(settleButton, &QPushButton::clicked, this, &RatingsEditor::settle);

    m_heading = makeWords(theme, tr("Add a rating"), Lettering::Strong);
    column->addWidget(m_heading);
    m_line = new RatingLine(theme);
    column->addWidget(m_line);
    m_source = new QLineEdit;
    auto *source = new Field(theme, tr("Source"), m_source);
    source->setHint(tr("document and page, instrument, who said so"));
    m_keep = new QPushButton(tr("Add rating"));
    m_leave = new QPushButton(tr("Leave it"));
    m_leave->hide();
    auto *last = new QHBoxLayout;
    last->setSpacing(12);
    last->addWidget(source, 1, Qt::AlignTop);
    auto *beside = new QVBoxLayout;
    beside->setContentsMargins(0, source->fontMetrics().height() + 2, 0, 0);
    auto *buttons = new QHBoxLayout;
    buttons->setSpacing(8);
    buttons->addWidget(m_keep);
    buttons->addWidget(m_leave);
    beside->addLayout(buttons);
    beside->addStretch(1);
    last->addLayout(beside);
    column->addLayout(last);
    connect(m_keep, &QPushButton::clicked, this, &RatingsEditor::keep);
    connect(m_leave, &QPushButton::clicked, this, &RatingsEditor::endChange);
    connect(m_source, &QLineEdit::returnPressed, this, &RatingsEditor::keep);
    for (QLineEdit *edit : m_line->findChildren<QLineEdit *>())
        connect(edit, &QLineEdit::returnPressed, this, &RatingsEditor::keep);
}

void RatingsEditor::showPart(Id<Part> part)
{
    const bool another = part != m_part;
    m_part = part;
    m_type = {};
    fill(another);
}

void RatingsEditor::showType(Id<PartType> type)
{
    const bool another = type != m_type;
    m_type = type;
    m_part = {};
    fill(another);
}

void RatingsEditor::tell(const Outcome &outcome)
{
    if (!outcome)
        emit said(sentenceOf(outcome.error()), Tone::Problem);
}

void RatingsEditor::fill(bool another)
{
    if (another || (m_changing.isSet() && !m_book.records().find(m_changing)))
        endChange();
    m_settling = {};
    m_settleForm->hide();
    emptyLayout(*m_list);
    const Records &records = m_book.records();
    std::vector<Figure> figures;
    if (const Part *part = records.find(m_part))
        figures = figuresOf(records, *part);
    else if (const PartType *type = records.find(m_type))
        figures = figuresOf(records, *type);
    for (const Figure &figure : figures)
        showFigure(figure);
    if (figures.empty())
        m_list->addWidget(
            makeWords(m_theme, tr("Nothing is recorded yet."), Lettering::Small, true));
    // rows are shown only once the event in hand is over; whoever measures before that, measures
    // them as nothing and keeps it
    for (QWidget *row : m_list->parentWidget()->findChildren<QWidget *>(Qt::FindDirectChildrenOnly))
        if (m_list->parentWidget()->isVisibleTo(this) && row->testAttribute(Qt::WA_WState_Hidden) &&
            !row->testAttribute(Qt::WA_WState_ExplicitShowHide))
            row->show();
    m_list->invalidate();
    m_list->activate();
    updateGeometry();
}

void RatingsEditor::showFigure(const Figure &figure)
{
    auto *block = new QVBoxLayout;
    block->setSpacing(2);
    auto *head = new QHBoxLayout;
    head->setSpacing(12);
    head->addWidget(makeWords(m_theme, describe(figure.name)), 1);
    if (figure.clash || figure.stale) {
        auto *mark = new StateMark(m_theme, Mark::Tight);
        mark->setWords(figure.clash ? tr("clash") : tr("stale"));
        head->addWidget(mark);
    }
    auto *value = makeWords(m_theme, shown(figure.value()), Lettering::Strong);
    value->setWordWrap(false);
    head->addWidget(value, 0, Qt::AlignRight);
    block->addLayout(head);
    block->addWidget(makeWords(m_theme, whyInForce(figure), Lettering::Small, true));
    const bool several =
        std::count_if(figure.all.begin(), figure.all.end(),
                      [](const Rating *rating) { return rating->value.has_value(); }) > 1;
    for (const Rating *rating : figure.all)
        block->addWidget(ratingRow(*rating, rating == figure.inForce, several));
    m_list->addLayout(block);
}

QWidget *RatingsEditor::ratingRow(const Rating &rating, bool inForce, bool several)
{
    auto *widget = new QWidget;
    auto *row = new QHBoxLayout(widget);
    row->setContentsMargins(14, 0, 0, 0);
    row->setSpacing(8);
    QStringList words{shown(rating.value), wordOf(rating.evidence)};
    if (!rating.source.isEmpty())
        words << rating.source;
    if (rating.duration)
        words << tr("for %1").arg(shown(rating.duration));
    if (rating.on)
        words << showDate(*rating.on);
    if (!rating.note.isEmpty())
        words << rating.note;
    const bool own = m_part.isSet() ? rating.part.isSet() : rating.type.isSet();
    if (!own)
        words << tr("from its type");
    QString line = words.join(tr(", "));
    if (inForce && several)
        line += tr(" (in force)");
    row->addWidget(makeWords(m_theme, line, Lettering::Small), 1);
    const Id<Rating> id = rating.id;
    const QString what = describe(figureOf(rating)) + u' ' + shown(rating.value);
    if (rating.value && rating.settled) {
        auto *button = new QPushButton(tr("Unsettle"));
        button->setAccessibleName(tr("Unsettle %1").arg(what));
        connect(button, &QPushButton::clicked, this,
                [this, id] { tell(unsettleRating(m_book, id)); });
        row->addWidget(button);
    } else if (rating.value && several) {
        auto *button = new QPushButton(tr("Settle"));
        button->setAccessibleName(tr("Settle on %1").arg(what));
        connect(button, &QPushButton::clicked, this, [this, id] { beginSettling(id); });
        row->addWidget(button);
    }
    if (own) {
        auto *change = new QPushButton(tr("Change"));
        change->setAccessibleName(tr("Change %1").arg(what));
        connect(change, &QPushButton::clicked, this, [this, id] { beginChange(id); });
        row->addWidget(change);
        auto *button = new QPushButton(themedIcon(m_theme, QStringLiteral("remove")), {});
        button->setAccessibleName(tr("Remove %1").arg(what));
        button->setToolTip(tr("Remove"));
        connect(button, &QPushButton::clicked, this,
                [this, id] { tell(removeRating(m_book, id)); });
        row->addWidget(button);
    }
    return widget;
}

void RatingsEditor::beginSettling(Id<Rating> id)
{
    const Rating *rating = m_book.records().find(id);
    if (!rating)
        return;
    m_settling = id;
    m_settleWords->setText(
        tr("Settle %1 on %2, %3")
            .arg(describe(figureOf(*rating)), shown(rating->value), wordOf(rating->evidence)));
    m_reason->clear();
    m_reasonField->setProblem({});
    m_settleForm->show();
    m_reason->setFocus(Qt::OtherFocusReason);
}

void RatingsEditor::settle()
{
    const Outcome done = settleRating(m_book, m_settling, m_reason->text(), m_part);
    m_reasonField->setProblem(done ? QString() : sentenceOf(done.error()));
    if (!done)
        m_reason->setFocus();
}

void RatingsEditor::beginChange(Id<Rating> id)
{
    const Rating *rating = m_book.records().find(id);
    if (!rating)
        return;
    m_changing = id;
    m_line->clear();
    m_line->showRating(*rating);
    m_source->setText(rating->source);
    m_heading->setText(tr("Change the rating"));
    m_keep->setText(tr("Keep the change"));
    m_leave->show();
    m_line->valueField().editor()->setFocus(Qt::OtherFocusReason);
}

void RatingsEditor::endChange()
{
    m_changing = {};
    m_line->clear();
    m_source->clear();
    m_heading->setText(tr("Add a rating"));
    m_keep->setText(tr("Add rating"));
    m_leave->hide();
}

void RatingsEditor::keep()
{
    const Rating *before = m_book.records().find(m_changing);
    Rating rating = before ? *before : Rating();
    if (!before) {
        rating.part = m_part;
        rating.type = m_type;
    }
    if (const Outcome read = m_line->read(rating, m_book.clock().today()); !read) {
        if (m_line->valueField().hasProblem())
            m_line->valueField().editor()->setFocus();
        return;
    }
    // an unknown that was recorded as one may stay so
    const bool wasUnknown = before && !before->value;
    if (!rating.value && !m_line->isUnknown() && !wasUnknown) {
        m_line->valueField().setProblem(tr("The value is missing."));
        m_line->valueField().editor()->setFocus();
        return;
    }
    rating.source = m_source->text().trimmed();
    const auto done = saveRating(m_book, rating);
    if (!done) {
        m_line->valueField().setProblem(sentenceOf(done.error()));
        return;
    }
    endChange();
    m_line->valueField().editor()->setFocus();
}

} // namespace ohmwright::ui
