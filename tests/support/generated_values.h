// SPDX-License-Identifier: GPL-3.0-or-later
// Single values made by chance, valid and odd: texts, keys, dates, amounts in every unit, money in
// every currency.
#pragma once

#include "core/quantity/amount.h"
#include "core/quantity/money.h"
#include "core/records/field.h"
#include "tests/support/chance.h"
#include "tests/support/generated_book.h"

#include <QDate>
#include <QString>

#include <optional>

namespace ohmwright {

class ValueMaker
{
public:
    ValueMaker(Chance &chance, Texts texts);

    QString text();         // may be empty
    QString requiredText(); // says something
    QString key();          // another one each time
    QDate date();           // 1900 to 2199
    Amount amount(Measure measure, bool negativeToo = false);
    Amount anyAmount(); // each unit in turn
    Money money(Currency currency, bool negativeToo = false);
    Currency currency(); // each in turn
    // What a whole purchase may be made of, and still be counted in the book's own currency.
    Money price(Currency currency, bool negativeToo = false);
    Rate rate();
    Rate dayRate(); // below a thousand

    template <WordedEnum E>
    E word()
    {
        return static_cast<E>(m_chance.below(static_cast<int>(EnumWords<E>::words.size())));
    }
    // make() or nothing.
    template <class Make>
    auto perhaps(Make make) -> std::optional<decltype(make())>
    {
        return m_chance.oneIn(2) ? std::optional(make()) : std::nullopt;
    }
    std::optional<QDate> perhapsDate()
    {
        return perhaps([&] { return date(); });
    }
    std::optional<Amount> perhapsAmount(Measure measure)
    {
        return perhaps([&] { return amount(measure); });
    }

private:
    Amount amountIn(Unit unit, bool negativeToo);
    double number();

    Chance &m_chance;
    Texts m_texts;
    int m_keys = 0;
    std::size_t m_unit;
    std::size_t m_currency;
};

} // namespace ohmwright
