// SPDX-License-Identifier: GPL-3.0-or-later
// Numbers as text: the one reader and the one printer behind amounts, money and rates.
// Used inside core/quantity only.
#pragma once

#include "core/quantity/amount.h"
#include "core/quantity/result.h"

#include <QByteArray>
#include <QString>
#include <QStringView>

#include <optional>

namespace ohmwright::detail {

// A number taken apart exactly, so that money and rates never pass through a double.
struct NumberText
{
    bool negative = false;
    QByteArray whole;    // digits without leading zeros; empty for zero
    QByteArray fraction; // digits as typed, trailing zeros kept
    std::optional<int> exponent;
    bool onlyStyleTells = false; // "1.250": the style made the separator a grouping one
};

bool isSign(QChar c);  // plus, hyphen, minus
bool isDigit(QChar c); // 0 to 9 only

// How many characters from the start can belong to a number; 0 if none is there.
qsizetype numberLength(QStringView text);

// The whole text as a number; BadInput if it is none.
Result<NumberText> readNumber(QStringView text, NumberStyle style);
// BadInput beyond 10^15 or too near zero for a double.
Result<double> toDouble(const NumberText &number, QStringView asTyped);

// “text”, shortened if long, control characters shown as spaces: for sentences.
QString quoted(QStringView text);
// How a number is written in this style, for sentences about what to do.
QString sampleNumber(NumberStyle style);

// Shortest digits that read back the same, point decimal, no exponent. `number` is finite.
QString printNumber(double number);
// "1234567" -> "1 234 567" with narrow no-break spaces when it has at least `from` digits.
QString grouped(const QString &digits, int from);

inline constexpr QChar kMinus = QChar(0x2212);
inline constexpr QChar kNoBreakSpace = QChar(0x00A0);
inline constexpr QChar kThinSpace = QChar(0x202F);

} // namespace ohmwright::detail
