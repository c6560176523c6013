// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/cards/field_text.h"

#include "core/quantity/dates.h"

#include <QCoreApplication>

#include <cmath>

namespace ohmwright::fieldtext {

namespace {

const NumberStyle kStyle = NumberStyle::pointDecimal();
// More than any whole-number field takes; its own range is the record's rule.
constexpr double kLargest = 1000000000;

QString tr(const char *text)
{
    return QCoreApplication::translate("Cards", text);
}

template <class T>
Outcome take(Result<T> result, T &into)
{
    if (!result)
        return fail(result.error());
    into = std::move(*result);
    return {};
}

} // namespace

QString print(const QString &value)
{
    return value;
}

QString print(bool value)
{
    return value ? QStringLiteral("yes") : QStringLiteral("no");
}

QString print(int value)
{
    return QString::number(value);
}

QString print(QDate value)
{
    return value.isValid() ? showDate(value) : QString();
}

QString print(const Amount &value)
{
    return printAmount(value);
}

QString print(Money value)
{
    return printMoney(value);
}

QString print(const Rate &value)
{
    return value.print();
}

QString print(Currency value)
{
    return value.code();
}

Outcome read(const QString &text, const Reading &, QString &into)
{
    into = text;
    return {};
}

Outcome read(const QString &text, const Reading &, bool &into)
{
    into = text == QLatin1String("yes");
    return {};
}

Outcome read(const QString &text, const Reading &, int &into)
{
    const Result<double> number = parseNumber(text, kStyle);
    if (!number)
        return fail(number.error());
    if (*number != std::floor(*number) || std::abs(*number) > kLargest)
        return fail(ProblemCode::BadInput, tr("This is a whole number."));
    into = static_cast<int>(*number);
    return {};
}

Outcome read(const QString &text, const Reading &with, QDate &into)
{
    return take(parseDate(text, with.today), into);
}

Outcome read(const QString &text, const Reading &with, Amount &into)
{
    return take(parseAmount(text, kStyle, with.measure), into);
}

Outcome read(const QString &text, const Reading &with, Money &into)
{
    return take(parseMoney(text, kStyle, with.currency), into);
}

Outcome read(const QString &text, const Reading &, Rate &into)
{
    return take(Rate::parse(text, kStyle), into);
}

Outcome read(const QString &text, const Reading &, Currency &into)
{
    if (const auto currency = Currency::fromCode(text.toUpper())) {
        into = *currency;
        return {};
    }
    return fail(ProblemCode::BadInput, tr("“%1” is not a currency.").arg(text),
                tr("Write its ISO 4217 code, such as EUR or SEK."));
}

Outcome noSuchWord(const QString &text)
{
    return fail(ProblemCode::BadInput, tr("“%1” is none of the choices here.").arg(text));
}

} // namespace ohmwright::fieldtext
