// SPDX-License-Identifier: GPL-3.0-or-later
// How quantities look in a failed test's message.
#pragma once

#include "core/quantity/amount.h"
#include "core/quantity/money.h"
#include "core/quantity/result.h"

#include <QDate>
#include <QString>

#include <ostream>

inline void PrintTo(const QString &text, std::ostream *out)
{
    *out << '"' << text.toStdString() << '"';
}

inline void PrintTo(QDate date, std::ostream *out)
{
    *out << date.toString(Qt::ISODate).toStdString();
}

namespace ohmwright {

inline void PrintTo(const Amount &amount, std::ostream *out)
{
    *out << printAmount(amount).toStdString();
}

inline void PrintTo(const Money &money, std::ostream *out)
{
    *out << printMoney(money).toStdString();
}

inline void PrintTo(const Unit &unit, std::ostream *out)
{
    *out << "unit \"" << unit.symbol().toStdString() << '"';
}

// The sentence of a failed result, empty for a value.
template <class T>
QString sentenceOf(const Result<T> &result)
{
    return result ? QString() : result.error().sentence;
}

} // namespace ohmwright
