// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/quantity/invariant.h"
#include "core/quantity/money.h"
#include "core/quantity/number_text.h"
#include "core/quantity/wide.h"

#include <limits>

using namespace Qt::StringLiterals;

namespace ohmwright {

namespace {

using detail::quoted;
using detail::Wide;

constexpr int kMostDigits = 15;
constexpr int kMostDecimals = 12;
constexpr std::int64_t kLargestInput = 1'000'000'000'000'000; // minor units, as parseMoney

Wide powerOfTen(int exponent)
{
    Wide power = 1;
    for (int i = 0; i < exponent; ++i)
        power *= 10;
    return power;
}

// |foreign| * units * 10^to / (10^scale * 10^from), half upwards. The dividend stays below
// 2^63 * 10^15 * 10^4 * 2 < 2^128.
Wide convertedMagnitude(Money foreign, std::int64_t units, int scale, Currency to)
{
    const Wide dividend =
        Wide(detail::magnitude(foreign.minor())) * Wide(units) * powerOfTen(to.digits());
    const Wide divisor = powerOfTen(scale) * powerOfTen(foreign.currency().digits());
    return (dividend * 2 + divisor) / (divisor * 2);
}

Problem notARate(QStringView text, QString whatToDo)
{
    return {ProblemCode::BadInput,
            quoted(text) + u" is not an exchange rate."_s,
            std::move(whatToDo),
            {}};
}

} // namespace

Result<Rate> Rate::parse(QStringView text, NumberStyle style)
{
    const QStringView trimmed = text.trimmed();
    const Result<detail::NumberText> read = detail::readNumber(trimmed, style);
    if (!read)
        return fail(read.error());
    const detail::NumberText &number = *read;
    if (number.exponent)
        return fail(notARate(trimmed, u"Write it like "_s % detail::sampleNumber(style) % u"."_s));
    if (number.onlyStyleTells) {
        return fail(ProblemCode::BadInput,
                    quoted(trimmed) + u" could be meant in thousands or in thousandths."_s,
                    u"Write all its digits without a grouping sign, decimals after “"_s %
                        style.decimal % u"”."_s);
    }
    QByteArray digits = number.whole + number.fraction;
    while (digits.startsWith('0'))
        digits.remove(0, 1);
    if (number.negative || digits.isEmpty())
        return fail(notARate(trimmed, u"A rate is greater than zero."_s));
    if (digits.size() > kMostDigits || number.fraction.size() > kMostDecimals) {
        return fail(
            notARate(trimmed, u"A rate has at most 15 digits that count, and 12 decimals."_s));
    }
    Rate rate;
    rate.m_units = digits.toLongLong(); // at most 15 digits: always fits
    rate.m_scale = static_cast<int>(number.fraction.size());
    return rate;
}

QString Rate::print() const
{
    QString digits = QString::number(m_units).rightJustified(m_scale + 1, u'0');
    if (m_scale > 0)
        digits.insert(digits.size() - m_scale, u'.');
    return digits;
}

Money Rate::convert(Money foreign, Currency to) const
{
    const Wide converted = convertedMagnitude(foreign, m_units, m_scale, to);
    require(converted <= static_cast<Wide>(std::numeric_limits<std::int64_t>::max()),
            "converted money fits 64 bits");
    return {detail::signedMinor(converted, foreign.minor() < 0), to};
}

std::optional<Money> Rate::convertIfFits(Money foreign, Currency to) const
{
    const Wide converted = convertedMagnitude(foreign, m_units, m_scale, to);
    if (converted > static_cast<Wide>(kLargestInput))
        return std::nullopt;
    return Money(detail::signedMinor(converted, foreign.minor() < 0), to);
}

} // namespace ohmwright
