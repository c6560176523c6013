// SPDX-License-Identifier: GPL-3.0-or-later
// The form of a record's card: an editor for each labelled field, by its form; what was typed
// stands beside what the book says, so that only what differs is written and nothing typed is lost
// when the book changes underneath.
#pragma once

#include "core/cards/record_kind.h"
#include "ui/cards/card_labels.h"
#include "ui/cards/figure_fields.h"

#include <QWidget>

#include <optional>

namespace ohmwright::ui {

class EntryForm;
class PickOrNew;
class Theme;

class CardForm : public QWidget
{
    Q_OBJECT

public:
    CardForm(const Theme &theme, const RecordKind &kind, const CardLabels &labels,
             QWidget *parent = nullptr);

    // Another record: whatever was typed goes.
    void begin(const Records &records, const FieldTexts &texts);
    // The same record as the book has it now: what was typed stays.
    void refresh(const Records &records, const FieldTexts &texts);
    // What differs from the book.
    [[nodiscard]] FieldTexts changed() const;
    [[nodiscard]] bool isChanged() const { return !changed().empty(); }
    // What a field shows now, typed or from the book; empty for one without an editor.
    [[nodiscard]] QString shown(const QString &field) const;

    [[nodiscard]] EntryForm &entries() { return *m_form; }
    // In the labels' words rather than the field list's.
    [[nodiscard]] Problem inWords(Problem problem) const;

signals:
    void edited();

private:
    void add(const FieldFacts &facts, const FieldLabel &label);
    [[nodiscard]] QString hintFor(const FieldFacts &facts, const FieldLabel &label) const;
    [[nodiscard]] QString textOf(const FieldFacts &facts) const;
    void show(const FieldFacts &facts, const QString &text);
    void setKnown(const Records &records);
    [[nodiscard]] PickOrNew *pickOf(const FieldFacts &facts) const; // null for another editor
    void suitFigure();

    const Theme &m_theme;
    const RecordKind &m_kind;
    const CardLabels &m_labels;
    EntryForm *m_form;
    std::vector<const FieldFacts *> m_shown; // those with an editor, in the labels' order
    std::vector<std::pair<PickOrNew *, const FieldFacts *>> m_picks;
    std::optional<FigureFields> m_figure; // on the card of a figure
    FieldTexts m_inBook;
};

} // namespace ohmwright::ui
