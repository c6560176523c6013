// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/cards/record_card.h"

#include "ui/cards/card_cautions.h"
#include "ui/cards/card_form.h"
#include "ui/cards/listed_words.h"
#include "ui/cards/records_panel.h"
#include "ui/shell/drafted_style.h"
#include "ui/widgets/entry_form.h"
#include "ui/widgets/problem_line.h"
#include "ui/widgets/section_title.h"

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QPushButton>
#include <QVBoxLayout>

#include <algorithm>

namespace ohmwright::ui {

RecordCard::RecordCard(Book &book, const Theme &theme, const RecordKind &kind, QWidget *parent)
    : QWidget(parent), m_book(book), m_theme(theme), m_kind(kind),
      m_title(new SectionTitle(theme, {})), m_cautions(new CardCautions(theme)),
      m_lacking(new ProblemLine(theme)),
      m_form(new CardForm(theme, kind, *cardLabels(kind.table()))),
      m_save(new QPushButton(tr("Save"))), m_discard(new QPushButton(tr("Discard what was typed"))),
      m_remove(new QPushButton(tr("Remove"))), m_buttons(new QHBoxLayout),
      m_column(new QVBoxLayout(this))
{
    m_column->setContentsMargins(0, 0, 0, 0);
    m_column->setSpacing(12);
    m_title->setWraps(true);
    m_column->addWidget(m_title);
    m_column->addWidget(m_cautions);
    m_column->addWidget(m_lacking);
    m_column->addWidget(m_form);
    m_buttons->setSpacing(8);
    m_buttons->addWidget(m_save);
    m_buttons->addWidget(m_discard);
    m_buttons->addStretch(1);
    m_buttons->addWidget(m_remove);
    m_column->addLayout(m_buttons);
    m_form->entries().setSave([this] { return keep(); });
    makePrimary(*m_save);
    connect(m_save, &QPushButton::clicked, this, &RecordCard::save);
    connect(m_discard, &QPushButton::clicked, this, &RecordCard::discard);
    connect(m_remove, &QPushButton::clicked, this, &RecordCard::remove);
    connect(m_form, &CardForm::edited, this, &RecordCard::showState);
    addNested();
    showRecord(0);
}

void RecordCard::addNested()
{
    for (const CardLabels *labels : allCardLabels()) {
        const RecordKind *inner = recordKind(labels->table);
        const QString within = QString::fromLatin1(labels->within.data(),
                                                   static_cast<qsizetype>(labels->within.size()));
        const FieldFacts *link = within.isEmpty() ? nullptr : inner->field(within);
        const auto &holders = inner->holders();
        const bool owned =
            std::find(holders.begin(), holders.end(), m_kind.table()) != holders.end();
        if (!owned && !(link && link->refersTo == m_kind.table()))
            continue;
        auto *panel = new RecordsPanel(m_book, m_theme, *inner, RecordsPanel::Shape::Nested);
        connect(panel, &RecordsPanel::said, this, &RecordCard::said);
        addSection(panel, [this, panel, within](std::int64_t id) {
            panel->setHolder({m_kind.table(), id, {}}, within);
        });
    }
}

void RecordCard::addSection(QWidget *section, std::function<void(std::int64_t)> read)
{
    m_column->addWidget(section);
    follow(section, std::move(read));
}

void RecordCard::addOnTop(QWidget *section, std::function<void(std::int64_t)> read)
{
    m_column->insertWidget(m_column->indexOf(m_form), section);
    follow(section, std::move(read));
}

void RecordCard::follow(QWidget *section, std::function<void(std::int64_t)> read)
{
    m_sections.push_back({section, std::move(read)});
    section->setVisible(m_record != 0);
    if (m_record != 0)
        m_sections.back().read(m_record);
}

void RecordCard::addButton(QPushButton *button)
{
    m_buttons->insertWidget(2, button);
}

void RecordCard::showRecord(std::int64_t id)
{
    const std::optional<FieldTexts> texts = m_kind.texts(m_book.records(), id);
    m_record = texts ? id : 0;
    m_new = false;
    m_in.reset();
    m_known.clear();
    setVisible(texts.has_value());
    if (texts)
        m_form->begin(m_book.records(), *texts);
    showState();
    showSections();
}

void RecordCard::beginNew(const FieldTexts &known, const std::optional<RecordRef> &in)
{
    m_record = 0;
    m_new = true;
    m_in = in;
    m_known = known;
    FieldTexts texts = m_kind.blank(m_book.records(), m_book.clock().today());
    for (const auto &[name, text] : known)
        texts[name] = text;
    m_form->begin(m_book.records(), texts);
    show();
    showState();
    showSections();
    focusFirst();
}

void RecordCard::focusFirst()
{
    m_form->entries().focusFirst();
}

void RecordCard::showSections()
{
    for (const Section &section : m_sections) {
        section.widget->setVisible(m_record != 0);
        if (m_record != 0)
            section.read(m_record);
    }
}

void RecordCard::showState()
{
    const bool typed = m_form->isChanged();
    const auto told = listedWords(m_book.records(), m_kind, m_record); // as in the list beside it
    m_title->setText(m_new  ? tr("New %1").arg(m_kind.word())
                     : told ? told->name
                            : m_kind.name(m_book.records(), m_record));
    m_cautions->show(m_kind.table(), m_form->shown(QStringLiteral("kind")));
    QString lacking = lackingToday(m_book.records(), m_kind, m_record, m_book.clock().today());
    if (!lacking.isEmpty())
        lacking = QString(lacking.front().toUpper() + lacking.mid(1) + u'.');
    m_lacking->setProblem(lacking);
    m_title->setRemark(m_new || typed ? tr("not saved yet") : QString());
    m_discard->setText(m_new ? tr("Leave it") : tr("Discard what was typed"));
    m_discard->setVisible(m_new || typed);
    m_remove->setVisible(m_record != 0 && !m_kind.isSingle());
    if (m_record != 0) {
        const QString name = m_kind.name(m_book.records(), m_record);
        m_save->setAccessibleName(tr("Save %1").arg(name));
        m_remove->setAccessibleName(tr("Remove %1").arg(name));
    } else {
        m_save->setAccessibleName(tr("Save the new %1").arg(m_kind.word()));
    }
}

Outcome RecordCard::keep()
{
    FieldTexts changed = m_form->changed();
    if (m_new)
        changed.insert(m_known.begin(), m_known.end());
    else if (changed.empty())
        return {};
    const auto id = m_new ? std::nullopt : std::optional(m_record);
    const Result<std::int64_t> done = m_kind.save(m_book, id, changed, m_in);
    if (!done)
        return fail(m_form->inWords(done.error()));
    const bool made = m_new;
    showRecord(*done);
    emit said(made ? tr("“%1” is in the book.").arg(m_kind.name(m_book.records(), *done))
                   : tr("Saved “%1”.").arg(m_kind.name(m_book.records(), *done)),
              Tone::Told);
    emit saved(*done);
    return {};
}

bool RecordCard::save()
{
    return m_form->entries().save();
}

bool RecordCard::settle()
{
    if (isHidden() || !m_form->isChanged())
        return true;
    return save();
}

void RecordCard::discard()
{
    if (m_new) {
        showRecord(0);
        emit abandoned();
    } else {
        showRecord(m_record);
        focusFirst();
    }
}

void RecordCard::remove()
{
    if (m_record == 0 || m_kind.isSingle())
        return;
    const QString name = m_kind.name(m_book.records(), m_record);
    const Outcome gone = m_kind.remove(m_book, m_record);
    if (!gone) {
        m_form->entries().clearProblems();
        m_form->entries().showProblem(
            {gone.error().code, gone.error().sentence, gone.error().whatToDo, {}});
        return;
    }
    showRecord(0);
    emit said(tr("“%1” is removed. Undo brings it back.").arg(name), Tone::Told);
    emit removed();
}

void RecordCard::bookChanged()
{
    if (m_new) {
        FieldTexts texts = m_kind.blank(m_book.records(), m_book.clock().today());
        for (const auto &[name, text] : m_known)
            texts[name] = text;
        m_form->refresh(m_book.records(), texts);
        return;
    }
    if (m_record == 0)
        return;
    const std::optional<FieldTexts> texts = m_kind.texts(m_book.records(), m_record);
    if (!texts) {
        showRecord(0);
        return;
    }
    m_form->refresh(m_book.records(), *texts);
    showState();
    showSections();
}

void RecordCard::keyPressEvent(QKeyEvent *event)
{
    if (event->key() != Qt::Key_Escape) {
        QWidget::keyPressEvent(event);
        return;
    }
    if (m_new && !m_form->isChanged())
        discard();
    else
        emit left();
}

} // namespace ohmwright::ui
