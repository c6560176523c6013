// SPDX-License-Identifier: GPL-3.0-or-later
// How values stand as text in the interchange: one pattern for each form, used by the reader to
// accept and by the JSON Schema to describe, so that the two cannot drift apart.
//
// Narrower than what a person may type: point decimal, no grouping, no exponent, no plus sign, no
// minus before a zero, one space, the unit's own symbol. "403 V", "35 mm²", "2/0 AWG", "12.50 EUR".
//
// The patterns are ECMA-262 as JSON Schema asks, without anchors; lookaheads and non-capturing
// groups are all they use beyond the plain.
#pragma once

#include "core/quantity/amount.h"
#include "core/quantity/money.h"
#include "core/quantity/result.h"

#include <QDate>
#include <QString>

namespace ohmwright::forms {

QString amountPattern(Measure measure);
QString anyAmountPattern(); // of whatever measure
// At most the currency's decimals; at most 10^15 minor units.
QString moneyPattern();
// More than 0, at most 15 digits that count, at most 12 decimals.
QString ratePattern();
// 1900 to 2199; whether the month has that day is left to the format "date".
QString datePattern();
QString keyPattern();
QString sha256Pattern();
QString timeOfDayPattern(); // 00:00 to 23:59
// A character that is not a space of any kind; a text that must say something has one.
QString inkPattern();

// BadInput with a sentence and, if it can be guessed, how to write it.
Result<Amount> readAmount(const QString &text);
Result<Money> readMoney(const QString &text);
Result<Rate> readRate(const QString &text);
Result<QDate> readDate(const QString &text);
Result<Currency> readCurrency(const QString &text);

// “text”, shortened, its control characters shown as spaces: for sentences.
QString quoted(QStringView text);

} // namespace ohmwright::forms
