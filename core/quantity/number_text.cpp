// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/quantity/number_text.h"

#include "core/quantity/invariant.h"

#include <array>
#include <charconv>
#include <cmath>
#include <system_error>
#include <vector>

using namespace Qt::StringLiterals;

namespace ohmwright::detail {

namespace {

enum class Separator { None, Point, Comma, Space, Apostrophe };

Separator separatorOf(QChar c)
{
    switch (c.unicode()) {
    case u'.':
        return Separator::Point;
    case u',':
        return Separator::Comma;
    case u' ':
    case 0x00A0: // no-break
    case 0x2009: // thin
    case 0x202F: // narrow no-break
        return Separator::Space;
    case u'\'':
    case 0x2019:
        return Separator::Apostrophe;
    default:
        return Separator::None;
    }
}

bool threeDigitsFollow(QStringView text, qsizetype at)
{
    if (at + 3 >= text.size())
        return false;
    for (qsizetype i = at + 1; i <= at + 3; ++i) {
        if (!isDigit(text[i]))
            return false;
    }
    return at + 4 >= text.size() || !isDigit(text[at + 4]);
}

// Length of "e-6" at `at`; 0 if there is none.
qsizetype exponentLength(QStringView text, qsizetype at)
{
    if (at >= text.size() || text[at].toLower() != u'e')
        return 0;
    qsizetype i = at + 1;
    if (i < text.size() && isSign(text[i]))
        ++i;
    const qsizetype firstDigit = i;
    while (i < text.size() && isDigit(text[i]))
        ++i;
    const qsizetype digits = i - firstDigit;
    return digits >= 1 && digits <= 3 ? i - at : 0;
}

// "1.250,5" as the runs 1, 250, 5 and the separators between them.
struct Runs
{
    std::vector<QByteArray> digits;
    std::vector<Separator> separators;
};

std::optional<Runs> splitRuns(QStringView mantissa)
{
    Runs runs;
    runs.digits.emplace_back();
    for (const QChar c : mantissa) {
        if (isDigit(c)) {
            runs.digits.back().append(c.toLatin1());
        } else {
            const Separator separator = separatorOf(c);
            if (separator == Separator::None)
                return std::nullopt;
            runs.separators.push_back(separator);
            runs.digits.emplace_back();
        }
    }
    return runs;
}

bool canLeadGroups(const QByteArray &digits)
{
    return !digits.isEmpty() && digits.size() <= 3 && digits[0] != '0';
}

// Which separator is the decimal one; none if all of them group. Does not judge the groups.
std::optional<std::size_t> decimalSeparator(const Runs &runs, NumberStyle style,
                                            bool &onlyStyleTells)
{
    const std::vector<Separator> &all = runs.separators;
    if (all.empty() || (all.back() != Separator::Point && all.back() != Separator::Comma))
        return std::nullopt;
    const std::size_t last = all.size() - 1;
    if (last > 0)
        return all[last - 1] == all[last] ? std::nullopt : std::optional(last);
    if (!canLeadGroups(runs.digits[0]) || runs.digits[1].size() != 3)
        return last;
    const Separator styles = style.decimal == u',' ? Separator::Comma : Separator::Point;
    if (all[0] == styles)
        return last;
    onlyStyleTells = true;
    return std::nullopt;
}

bool groupsAreRegular(const Runs &runs, std::size_t groupSeparators)
{
    if (groupSeparators == 0)
        return true;
    if (!canLeadGroups(runs.digits[0]))
        return false;
    for (std::size_t i = 0; i < groupSeparators; ++i) {
        if (runs.separators[i] != runs.separators[0] || runs.digits[i + 1].size() != 3)
            return false;
    }
    return true;
}

QByteArray withoutLeadingZeros(const QByteArray &digits)
{
    qsizetype zeros = 0;
    while (zeros < digits.size() && digits[zeros] == '0')
        ++zeros;
    return digits.mid(zeros);
}

Problem notANumber(QStringView text, NumberStyle style)
{
    return {ProblemCode::BadInput,
            quoted(text) + u" is not a number."_s,
            u"Write it like "_s + sampleNumber(style) + u"."_s,
            {}};
}

} // namespace

bool isSign(QChar c)
{
    return c == u'+' || c == u'-' || c == kMinus;
}

bool isDigit(QChar c)
{
    return c >= u'0' && c <= u'9';
}

qsizetype numberLength(QStringView text)
{
    qsizetype i = 0;
    if (!text.isEmpty() && isSign(text[0]))
        ++i;
    bool sawDigit = false;
    for (; i < text.size(); ++i) {
        if (isDigit(text[i])) {
            sawDigit = true;
            continue;
        }
        const Separator separator = separatorOf(text[i]);
        if (separator == Separator::Point || separator == Separator::Comma)
            continue;
        // "6000 1/min", "5' ": a space or apostrophe belongs to the number only if it groups
        if (separator == Separator::None || !sawDigit || !threeDigitsFollow(text, i))
            break;
    }
    if (!sawDigit)
        return 0;
    return i + (isDigit(text[i - 1]) ? exponentLength(text, i) : 0);
}

Result<NumberText> readNumber(QStringView text, NumberStyle style)
{
    const QStringView trimmed = text.trimmed();
    if (trimmed.isEmpty())
        return fail(ProblemCode::BadInput, u"A number is missing."_s);
    if (numberLength(trimmed) != trimmed.size())
        return fail(notANumber(trimmed, style));

    NumberText number;
    QStringView mantissa = trimmed;
    if (isSign(mantissa[0])) {
        number.negative = mantissa[0] != u'+';
        mantissa = mantissa.mid(1);
    }
    const qsizetype e = mantissa.indexOf(u'e', 0, Qt::CaseInsensitive);
    if (e >= 0) {
        QString exponent = mantissa.mid(e + 1).toString();
        exponent.replace(kMinus, u'-');
        number.exponent = exponent.toInt(); // one sign and at most three digits: always fits
        mantissa = mantissa.left(e);
    }

    const std::optional<Runs> runs = splitRuns(mantissa);
    if (!runs)
        return fail(notANumber(trimmed, style));
    const auto decimal = decimalSeparator(*runs, style, number.onlyStyleTells);
    const std::size_t groups = decimal.value_or(runs->separators.size());
    if (!groupsAreRegular(*runs, groups))
        return fail(notANumber(trimmed, style));
    QByteArray whole;
    for (std::size_t i = 0; i <= groups; ++i)
        whole += runs->digits[i];
    if (decimal)
        number.fraction = runs->digits.back();
    number.whole = withoutLeadingZeros(whole);
    return number;
}

Result<double> toDouble(const NumberText &number, QStringView asTyped)
{
    constexpr double kLargest = 1e15;
    QByteArray plain = number.negative ? "-" : "";
    plain += number.whole.isEmpty() ? QByteArray("0") : number.whole;
    if (!number.fraction.isEmpty())
        plain += '.' + number.fraction;
    if (number.exponent)
        plain += 'e' + QByteArray::number(*number.exponent);

    double value = 0.0;
    const auto read = std::from_chars(plain.constData(), plain.constData() + plain.size(), value);
    if (read.ec != std::errc() || std::abs(value) > kLargest) {
        return fail(ProblemCode::BadInput,
                    quoted(asTyped) + u" is too large or too near zero to keep."_s,
                    u"Choose a unit that makes the number handier."_s);
    }
    return value == 0.0 ? 0.0 : value; // no minus zero
}

QString quoted(QStringView text)
{
    constexpr qsizetype kLongest = 40;
    QString shown = text.left(kLongest).toString();
    for (QChar &c : shown) {
        if (!c.isPrint())
            c = u' ';
    }
    if (text.size() > kLongest)
        shown += u'…';
    return u"“"_s + shown + u"”"_s;
}

QString sampleNumber(NumberStyle style)
{
    return style.decimal == u',' ? u"1250,5"_s : u"1250.5"_s;
}

QString printNumber(double number)
{
    require(std::isfinite(number), "only finite numbers are printed");
    // 309 digits before the point, or 324 places behind it, with 17 that count
    std::array<char, 400> buffer{};
    const double plain = number == 0.0 ? 0.0 : number;
    const auto written = std::to_chars(buffer.data(), buffer.data() + buffer.size(), plain,
                                       std::chars_format::fixed);
    return QString::fromLatin1(buffer.data(), written.ptr - buffer.data());
}

QString grouped(const QString &digits, int from)
{
    if (digits.size() < from)
        return digits;
    QString result = digits;
    for (qsizetype at = digits.size() - 3; at > 0; at -= 3)
        result.insert(at, kThinSpace);
    return result;
}

} // namespace ohmwright::detail

namespace ohmwright {

Result<double> parseNumber(QStringView text, NumberStyle style)
{
    const Result<detail::NumberText> number = detail::readNumber(text, style);
    if (!number)
        return fail(number.error());
    return detail::toDouble(*number, text.trimmed());
}

QString showNumber(double number, NumberStyle style, int significantDigits)
{
    require(std::isfinite(number), "only finite numbers are shown");
    require(significantDigits >= 1 && significantDigits <= 15, "1 to 15 digits are significant");
    std::array<char, 32> buffer{};
    const auto written = std::to_chars(buffer.data(), buffer.data() + buffer.size(), number,
                                       std::chars_format::scientific, significantDigits - 1);
    double rounded = number;
    std::from_chars(buffer.data(), written.ptr, rounded);
    if (!std::isfinite(rounded)) // rounding up the largest doubles
        rounded = number;

    QString digits = detail::printNumber(std::abs(rounded));
    QString fraction;
    if (const qsizetype point = digits.indexOf(u'.'); point >= 0) {
        fraction = style.decimal + digits.mid(point + 1);
        digits.truncate(point);
    }
    const QString sign = rounded < 0.0 ? QString(detail::kMinus) : QString();
    return sign + detail::grouped(digits, 5) + fraction;
}

} // namespace ohmwright
