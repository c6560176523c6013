// SPDX-License-Identifier: GPL-3.0-or-later
// On the card of a figure: shows what the chosen figure takes, and nothing else. A number or one of
// its words; the circuit, branch, part or test it is a figure of, or none for the vehicle.
#pragma once

#include <QString>

namespace ohmwright::ui {

class EntryForm;
class PickOrNew;

class FigureFields
{
public:
    // The fields of `form` are those of a figure's card; `word` is its editor for a choice.
    FigureFields(EntryForm &form, PickOrNew &word) : m_form(form), m_word(word) {}

    // To the figure of that name; one that is not known takes a number and may be of anything.
    void suit(const QString &figure);
    // Whether that field belongs to the figure. What is left in another counts as empty.
    [[nodiscard]] bool takes(const QString &field) const;

private:
    EntryForm &m_form;
    PickOrNew &m_word;
    QString m_figure;
};

} // namespace ohmwright::ui
