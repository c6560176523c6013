// SPDX-License-Identifier: GPL-3.0-or-later
// Words and small readings the pieces of the Parts page share.
#pragma once

#include "core/quantity/amount.h"
#include "core/quantity/dates.h"
#include "core/quantity/money.h"
#include "core/records/records.h"
#include "ui/widgets/marks.h"
#include "ui/widgets/pick_or_new.h"

#include <QComboBox>
#include <QString>

#include <vector>

namespace ohmwright::ui {

// What a person types and reads here; the readers forgive the other way of writing.
inline NumberStyle pageStyle()
{
    return NumberStyle::pointDecimal();
}

Mark markOf(PartState state);
QString donorName(const Donor &donor); // "Sample Hatch 2018"
// "Make Model Year": the first word is the make, a last word of four digits the year.
Donor donorFromText(const QString &text);
QString sentenceOf(const Problem &problem);         // with what to do about it
QString shown(const std::optional<Amount> &amount); // "403 V", "unknown"
QString shown(const std::optional<QDate> &date);    // ISO, empty for none: to edit

// "Any evidence", in the enum's order; the item's data is the enum's value.
template <WordedEnum E>
void addWords(QComboBox &combo)
{
    for (std::size_t i = 0; i < EnumWords<E>::words.size(); ++i)
        combo.addItem(wordOf(static_cast<E>(i)), static_cast<int>(i));
}
template <WordedEnum E>
E chosenWord(const QComboBox &combo)
{
    return static_cast<E>(combo.currentData().toInt());
}

std::vector<KnownName> knownDonors(const Records &records);
std::vector<KnownName> knownParts(const Records &records);
std::vector<KnownName> knownLines(const Records &records);
std::vector<KnownName> knownCircuits(const Records &records);
std::vector<KnownName> knownSellers(const Records &records);   // last bought from first
std::vector<KnownName> knownPurchases(const Records &records); // newest first

} // namespace ohmwright::ui
