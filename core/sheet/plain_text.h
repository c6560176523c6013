// SPDX-License-Identifier: GPL-3.0-or-later
// Small readings of plain text that every writer needs alike.
#pragma once

#include <QString>
#include <QStringView>

#include <optional>

namespace ohmwright::sheet {

// The text without characters that neither XML nor a page can carry (control characters other than
// tab and line feed, halves of surrogate pairs, non-characters): each becomes U+FFFD. Line ends of
// any kind become line feeds.
QString cleaned(QStringView text);

// A figure in two halves, to be lined up between them: "≤ 12.5 kW" is "≤ 12" and ".5 kW".
struct DecimalHalves
{
    QString whole;
    QString fraction; // begins with the decimal sign if there is one, else with what follows
    bool operator==(const DecimalHalves &) const = default;
};

// By the first number in the text. Takes a point or a comma as the decimal sign, spaces (of any
// width) and apostrophes before groups of three as grouping; of point and comma together the last
// is the decimal sign. Nothing for a text without a digit and for one of several lines.
std::optional<DecimalHalves> splitAtDecimal(const QString &text);

} // namespace ohmwright::sheet
