// SPDX-License-Identifier: GPL-3.0-or-later
// One field's value as text and back, for every type a field can have. References are done where
// the records are known (record_kind_of.h).
#pragma once

#include "core/quantity/amount.h"
#include "core/quantity/money.h"
#include "core/quantity/result.h"
#include "core/records/field.h"

#include <QDate>
#include <QString>

#include <optional>

namespace ohmwright::fieldtext {

// What reading a text may need beside it.
struct Reading
{
    QDate today;
    std::optional<Measure> measure; // of an amount; any when empty
    Currency currency;              // of a bare sum
};

QString print(const QString &value);
QString print(bool value);
QString print(int value);
QString print(QDate value);
QString print(const Amount &value);
QString print(Money value);
QString print(const Rate &value);
QString print(Currency value);
template <WordedEnum E>
QString print(E value)
{
    return wordOf(value);
}

// `text` is not empty, but for texts and yes or no.
Outcome read(const QString &text, const Reading &with, QString &into);
Outcome read(const QString &text, const Reading &with, bool &into);
Outcome read(const QString &text, const Reading &with, int &into);
Outcome read(const QString &text, const Reading &with, QDate &into);
Outcome read(const QString &text, const Reading &with, Amount &into);
Outcome read(const QString &text, const Reading &with, Money &into);
Outcome read(const QString &text, const Reading &with, Rate &into);
Outcome read(const QString &text, const Reading &with, Currency &into);
Outcome noSuchWord(const QString &text);
template <WordedEnum E>
Outcome read(const QString &text, const Reading &, E &into)
{
    const std::optional<E> value = fromWord<E>(text);
    if (!value)
        return noSuchWord(text);
    into = *value;
    return {};
}

} // namespace ohmwright::fieldtext
