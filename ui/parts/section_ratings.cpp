// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/parts/part_sections.h"
#include "ui/parts/rating_line.h"
#include "ui/widgets/field.h"
#include "ui/widgets/section_title.h"
#include "ui/widgets/state_mark.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QVBoxLayout>

namespace ohmwright::ui {

RatingsSection::RatingsSection(const DetailGround &given) : DetailSection(given, tr("Ratings"))
{
    m_list = addList(12);

    m_settleForm = new QWidget;
    auto *settleColumn = new QVBoxLayout(m_settleForm);
    settleColumn->setContentsMargins(0, 0, 0, 0);
    m_settleWords = makeWords(theme(), {}, Lettering::Strong);
    m_reason = new QLineEdit;
    m_reasonField = new Field(theme(), tr("Why this one stands"), m_reason);
    auto *settleButton = new QPushButton(tr("Settle"));
    auto *row = new QHBoxLayout;
    row->addWidget(m_reasonField, 1, Qt::AlignTop);
    row->addWidget(settleButton, 0, Qt::AlignBottom);
    settleColumn->addWidget(m_settleWords);
    settleColumn->addLayout(row);
    m_settleForm->hide();
    column().addWidget(m_settleForm);
    connect(m_reason, &QLineEdit::returnPressed, this, &RatingsSection::settle);
    connect(settleButton, &QPushButton::clicked, this, &RatingsSection::settle);

    column().addWidget(makeWords(theme(), tr("Add a rating"), Lettering::Strong));
    m_new = new RatingLine(theme());
    column().addWidget(m_new);
    auto *last = new QHBoxLayout;
    m_source = new QLineEdit;
    auto *source = new Field(theme(), tr("Source"), m_source);
    source->setHint(tr("document and page, instrument, who said so"));
    auto *addButton = new QPushButton(tr("Add rating"));
    last->setSpacing(12);
    last->addWidget(source, 1, Qt::AlignTop);
    auto *beside = new QVBoxLayout;
    beside->setContentsMargins(0, source->fontMetrics().height() + 2, 0, 0);
    beside->addWidget(addButton);
    beside->addStretch(1);
    last->addLayout(beside);
    column().addLayout(last);
    connect(addButton, &QPushButton::clicked, this, &RatingsSection::add);
    connect(m_source, &QLineEdit::returnPressed, this, &RatingsSection::add);
    for (QLineEdit *edit : m_new->findChildren<QLineEdit *>())
        connect(edit, &QLineEdit::returnPressed, this, &RatingsSection::add);
}

void RatingsSection::fill(const Part &part, bool another)
{
    if (another) {
        m_new->clear();
        m_source->clear();
    }
    m_settling = {};
    m_settleForm->hide();
    emptyLayout(*m_list);
    const std::vector<Figure> figures = figuresOf(records(), part);
    for (const Figure &figure : figures)
        showFigure(figure);
    if (figures.empty())
        m_list->addWidget(
            makeWords(theme(), tr("Nothing is recorded yet."), Lettering::Small, true));
}

void RatingsSection::showFigure(const Figure &figure)
{
    auto *block = new QVBoxLayout;
    block->setSpacing(2);
    auto *head = new QHBoxLayout;
    head->setSpacing(12);
    head->addWidget(makeWords(theme(), describe(figure.name)), 1);
    if (figure.clash || figure.stale) {
        auto *mark = new StateMark(theme(), Mark::Tight);
        mark->setWords(figure.clash ? tr("clash") : tr("stale"));
        head->addWidget(mark);
    }
    auto *value = makeWords(theme(), shown(figure.value()), Lettering::Strong);
    value->setWordWrap(false);
    head->addWidget(value, 0, Qt::AlignRight);
    block->addLayout(head);
    block->addWidget(makeWords(theme(), figure.why, Lettering::Small, true));
    const bool several =
        std::count_if(figure.all.begin(), figure.all.end(),
                      [](const Rating *rating) { return rating->value.has_value(); }) > 1;
    for (const Rating *rating : figure.all)
        block->addWidget(ratingRow(*rating, rating == figure.inForce, several));
    m_list->addLayout(block);
}

QWidget *RatingsSection::ratingRow(const Rating &rating, bool inForce, bool several)
{
    auto *widget = new QWidget;
    auto *row = new QHBoxLayout(widget);
    row->setContentsMargins(14, 0, 0, 0);
    row->setSpacing(8);
    QStringList words{shown(rating.value), wordOf(rating.evidence)};
    if (!rating.source.isEmpty())
        words << rating.source;
    if (rating.on)
        words << showDate(*rating.on);
    if (!rating.note.isEmpty())
        words << rating.note;
    if (rating.type.isSet())
        words << tr("from its type");
    QString line = words.join(tr(", "));
    if (inForce && several)
        line += tr(" (in force)");
    row->addWidget(makeWords(theme(), line, Lettering::Small), 1);
    const Id<Rating> id = rating.id;
    const QString what = describe(figureOf(rating)) + u' ' + shown(rating.value);
    if (rating.value && rating.settled) {
        auto *button = new QPushButton(tr("Unsettle"));
        button->setAccessibleName(tr("Unsettle %1").arg(what));
        connect(button, &QPushButton::clicked, this, [this, id] { unsettle(id); });
        row->addWidget(button);
    } else if (rating.value && several) {
        auto *button = new QPushButton(tr("Settle on this"));
        button->setAccessibleName(tr("Settle on %1").arg(what));
        connect(button, &QPushButton::clicked, this, [this, id] { beginSettling(id); });
        row->addWidget(button);
    }
    if (rating.part.isSet()) {
        auto *button = new QPushButton(tr("Remove"));
        button->setAccessibleName(tr("Remove %1").arg(what));
        connect(button, &QPushButton::clicked, this, [this, id] { removeRating(id); });
        row->addWidget(button);
    }
    return widget;
}

void RatingsSection::beginSettling(Id<Rating> id)
{
    const Rating *rating = records().find(id);
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

void RatingsSection::settle()
{
    const QString reason = m_reason->text().trimmed();
    if (reason.isEmpty()) {
        m_reasonField->setProblem(tr("Say why this one stands and the others do not."));
        m_reason->setFocus();
        return;
    }
    const Rating *found = records().find(m_settling);
    const Part *now = partNow();
    if (!found || !now)
        return;
    Rating chosen = *found;
    chosen.settled = true;
    chosen.note = reason;
    std::vector<Rating> others;
    for (const Rating *rating : figureFor(records(), *now, figureOf(chosen)).all)
        if (rating->settled && rating->id != chosen.id)
            others.push_back(*rating);
    const QString what = tr("Settle %1 of %2").arg(describe(figureOf(chosen)), now->name);
    tell(book().edit(what,
                     [&]() -> Outcome {
                         for (Rating &other : others) {
                             other.settled = false;
                             if (Outcome updated = book().update(other); !updated)
                                 return updated;
                         }
                         return book().update(chosen);
                     }),
         m_reasonField);
}

void RatingsSection::unsettle(Id<Rating> id)
{
    const Rating *found = records().find(id);
    if (!found)
        return;
    Rating rating = *found;
    rating.settled = false;
    tell(book().edit(tr("Unsettle %1").arg(describe(figureOf(rating))),
                     [&]() -> Outcome { return book().update(rating); }));
}

void RatingsSection::removeRating(Id<Rating> id)
{
    const Rating *rating = records().find(id);
    if (!rating)
        return;
    const QString what = tr("Remove %1 %2").arg(describe(figureOf(*rating)), shown(rating->value));
    tell(book().edit(what, [&]() -> Outcome { return book().remove(id); }));
}

void RatingsSection::add()
{
    const Result<std::optional<Amount>> value = m_new->value();
    if (!value) {
        m_new->valueField().editor()->setFocus();
        return;
    }
    if (!*value) {
        m_new->valueField().setProblem(tr("The value is missing."));
        m_new->valueField().editor()->setFocus();
        return;
    }
    const Part *now = partNow();
    if (!now)
        return;
    const FigureName figure = m_new->figure();
    Rating rating;
    rating.part = part();
    rating.quantity = figure.quantity;
    rating.kind = figure.kind;
    rating.basis = figure.basis;
    rating.current = figure.current;
    rating.value = *value;
    rating.evidence = m_new->evidence();
    rating.source = m_source->text().trimmed();
    rating.on = book().clock().today();
    const auto own = records().of<Rating>(part());
    rating.position = own.empty() ? 0 : own.back().position + 1;
    const QString what = tr("Rate %1: %2 %3").arg(now->name, describe(figure), shown(rating.value));
    const Outcome done = book().edit(what, [&]() -> Outcome {
        const auto made = book().insert(rating);
        return made ? Outcome() : Outcome(fail(made.error()));
    });
    if (!tell(done, &m_new->valueField()))
        return;
    m_new->clear();
    m_source->clear();
    m_new->valueField().editor()->setFocus();
}

} // namespace ohmwright::ui
