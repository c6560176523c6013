// SPDX-License-Identifier: GPL-3.0-or-later
// Money: whole minor units of an ISO 4217 currency. Nothing rounds away.
//
// Two currencies never add; a Rate turns one into the other, once, with a stated rounding, and
// shareOut splits a sum so that the shares add up to it again.
//
//     shareOut(Money(1000, eur), {1, 1, 1})      // 3.34, 3.33, 3.33
#pragma once

#include "core/quantity/amount.h"
#include "core/quantity/result.h"

#include <QString>
#include <QStringView>

#include <cstdint>
#include <optional>
#include <span>
#include <vector>

namespace ohmwright {

// An ISO 4217 alphabetic code that is in the list of 2024-06-25. Metals, bond units, test codes and
// funds are left out, but for the indexed units in which prices are quoted (CLF, UYI, UYW).
class Currency
{
public:
    Currency() = default; // EUR; a book names its own at creation
    [[nodiscard]] static std::optional<Currency> fromCode(QStringView code); // capitals
    [[nodiscard]] static std::vector<Currency> all();                        // by code
    [[nodiscard]] QString code() const;
    [[nodiscard]] int digits() const; // of the minor unit: 0, 2, 3 or 4
    bool operator==(const Currency &) const = default;

private:
    std::uint16_t m_row = kEuroRow;
    static const std::uint16_t kEuroRow;
};

class Money
{
public:
    Money() = default;
    Money(std::int64_t minor, Currency currency) : m_minor(minor), m_currency(currency) {}
    [[nodiscard]] static Money zero(Currency currency) { return {0, currency}; }

    [[nodiscard]] std::int64_t minor() const { return m_minor; }
    [[nodiscard]] Currency currency() const { return m_currency; }
    [[nodiscard]] bool isZero() const { return m_minor == 0; }

    // Both sides must have the same currency and the sum must fit: anything else is our own
    // mistake, asserted. Input is range-checked where it is parsed (|amount| <= 10^15 minor units).
    Money operator+(Money other) const;
    Money operator-(Money other) const;
    Money operator-() const;
    Money &operator+=(Money other) { return *this = *this + other; }
    Money &operator-=(Money other) { return *this = *this - other; }
    Money operator*(std::int64_t count) const;
    bool operator==(const Money &) const = default;
    // Order within one currency; asserted.
    [[nodiscard]] bool operator<(Money other) const;
    [[nodiscard]] bool operator>(Money other) const { return other < *this; }
    [[nodiscard]] bool operator<=(Money other) const { return !(other < *this); }
    [[nodiscard]] bool operator>=(Money other) const { return !(*this < other); }

private:
    std::int64_t m_minor = 0;
    Currency m_currency;
};

// An exact decimal exchange rate: one unit of the foreign currency is `units * 10^-scale` units of
// the book's. "1.0842" is {10842, 4}. Positive; at most 15 significant digits, scale 0 to 12.
class Rate
{
public:
    Rate() = default; // 1
    // BadInput also for "1.084" when the style would read it as a thousand and something: a rate
    // wrong by a thousand must not slip through.
    [[nodiscard]] static Result<Rate> parse(QStringView text, NumberStyle style);
    [[nodiscard]] QString print() const; // "1.0842": no trailing zeros beyond those given
    // Half away from zero, in the minor unit of `to`. Exact 128-bit arithmetic. The result must fit
    // (asserted); straight from input, ask convertIfFits.
    [[nodiscard]] Money convert(Money foreign, Currency to) const;
    // Nothing when the result is beyond the 10^15 minor units that parseMoney takes.
    [[nodiscard]] std::optional<Money> convertIfFits(Money foreign, Currency to) const;
    bool operator==(const Rate &) const = default;

private:
    std::int64_t m_units = 1;
    int m_scale = 0;
};

// Largest remainder: shares in proportion to the weights (none negative), adding up to `total`
// exactly. Ties go to the earlier. All weights zero: shared equally. No weights: empty.
std::vector<Money> shareOut(Money total, std::span<const std::int64_t> weights);

// "€ 1.250,00", "1250 EUR", "USD 12.50", "£3", "-5.20 CHF", "200,- €". A sign that several
// currencies share ("$", "kr", "¥", "Fr.") is `fallback` when that uses it, otherwise refused as
// ambiguous; only "£" and "₩" are taken for GBP and KRW. A sign and a code must agree ("$5 CAD").
// A bare number takes `fallback` if given. More decimals than the currency has is BadInput.
Result<Money> parseMoney(QStringView text, NumberStyle style,
                         std::optional<Currency> fallback = std::nullopt);
QString printMoney(Money money);                   // "1250.00 EUR", the interchange form
QString printMoneyNumber(Money money);             // "1250.00"
QString showMoney(Money money, NumberStyle style); // for people: "1 250.00 EUR", thin grouping

} // namespace ohmwright
