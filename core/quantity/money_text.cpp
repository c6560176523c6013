// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/quantity/currency_signs.h"
#include "core/quantity/money.h"
#include "core/quantity/number_text.h"
#include "core/quantity/wide.h"

#include <algorithm>

using namespace Qt::StringLiterals;

namespace ohmwright {

namespace {

using detail::quoted;

constexpr std::int64_t kLargest = 1'000'000'000'000'000; // minor units

Problem badInput(QString sentence, QString whatToDo = {})
{
    return {ProblemCode::BadInput, std::move(sentence), std::move(whatToDo), {}};
}

QString askForCode()
{
    return u"Write its code, such as EUR, USD or SEK."_s;
}

// "- € 1.250,00" taken apart: the words before and after, and the number with its sign.
struct MoneyParts
{
    QStringView before;
    QStringView after;
    QStringView number;
    bool negative = false;
};

qsizetype firstOfNumber(QStringView text)
{
    for (qsizetype i = 0; i < text.size(); ++i) {
        if (detail::isDigit(text[i]))
            return i;
        // ".50" starts a number, but not the stop in "Rs.50"
        const bool point = text[i] == u'.' || text[i] == u',';
        const bool leads = i + 1 < text.size() && detail::isDigit(text[i + 1]);
        if (point && leads && (i == 0 || !text[i - 1].isLetter()))
            return i;
    }
    return -1;
}

// "200,-" and "5.–" say that there are no cents.
void dropNoCentsDash(MoneyParts &parts)
{
    const bool open = parts.number.endsWith(u',') || parts.number.endsWith(u'.');
    if (!open || parts.after.isEmpty())
        return;
    const QChar dash = parts.after.front();
    if (dash == u'-' || dash == QChar(0x2013) || dash == QChar(0x2014) || dash == detail::kMinus)
        parts.after = parts.after.mid(1).trimmed();
}

std::optional<MoneyParts> takeApart(QStringView text)
{
    const qsizetype start = firstOfNumber(text);
    if (start < 0)
        return std::nullopt;
    MoneyParts parts;
    parts.before = text.left(start).trimmed();
    parts.number = text.mid(start, detail::numberLength(text.mid(start)));
    parts.after = text.mid(start + parts.number.size()).trimmed();
    if (!parts.before.isEmpty()) {
        if (detail::isSign(parts.before.front())) {
            parts.negative = parts.before.front() != u'+';
            parts.before = parts.before.mid(1).trimmed();
        } else if (detail::isSign(parts.before.back())) {
            parts.negative = parts.before.back() != u'+';
            parts.before = parts.before.chopped(1).trimmed();
        }
    }
    dropNoCentsDash(parts);
    return parts;
}

// What a word beside the number names; nothing if it is neither a code nor a sign.
std::optional<detail::SignMeaning> meaningOf(QStringView word)
{
    if (const auto currency = Currency::fromCode(word.toString().toUpper()))
        return detail::SignMeaning{{*currency}, true};
    return detail::currenciesOfSign(word);
}

Result<Currency> choose(const detail::SignMeaning &meaning, QStringView text,
                        std::optional<Currency> fallback)
{
    const std::vector<Currency> &all = meaning.currencies;
    if (fallback && std::find(all.begin(), all.end(), *fallback) != all.end())
        return *fallback;
    if (meaning.firstIsMeant || all.size() == 1)
        return all.front();
    return fail(badInput(quoted(text) + u" does not say which currency."_s, askForCode()));
}

Result<Currency> currencyOf(const MoneyParts &parts, QStringView text,
                            std::optional<Currency> fallback)
{
    std::vector<detail::SignMeaning> meanings;
    for (const QStringView word : {parts.before, parts.after}) {
        if (word.isEmpty())
            continue;
        const auto meaning = meaningOf(word);
        if (!meaning) {
            return fail(badInput(quoted(word) + u" is not a currency we know."_s, askForCode()));
        }
        meanings.push_back(*meaning);
    }
    if (meanings.empty()) {
        if (fallback)
            return *fallback;
        return fail(badInput(quoted(text) + u" does not say which currency."_s, askForCode()));
    }
    if (meanings.size() == 1)
        return choose(meanings[0], text, fallback);

    // "$12.50 CAD": what both can mean
    detail::SignMeaning both;
    for (const Currency &currency : meanings[0].currencies) {
        const std::vector<Currency> &other = meanings[1].currencies;
        if (std::find(other.begin(), other.end(), currency) != other.end())
            both.currencies.push_back(currency);
    }
    if (both.currencies.empty())
        return fail(badInput(quoted(text) + u" names two currencies."_s, askForCode()));
    return choose(both, text, fallback);
}

QString tooManyDecimals(QStringView number, Currency currency)
{
    const int digits = currency.digits();
    const QString most = digits == 0 ? u" has no decimals, but "_s
                                     : u" has "_s + QString::number(digits) + u" decimals, but "_s;
    return currency.code() + most + quoted(number) + u" has more."_s;
}

Result<std::int64_t> minorUnits(const detail::NumberText &number, QStringView text,
                                Currency currency)
{
    const QByteArray digits = number.whole + number.fraction.leftJustified(currency.digits(), '0');
    bool fits = false;
    const qlonglong minor = digits.isEmpty() ? 0 : digits.toLongLong(&fits);
    if ((!fits && !digits.isEmpty()) || minor > kLargest)
        return fail(badInput(quoted(text) + u" is more money than can be kept."_s));
    return minor;
}

QString digitsOf(Money money, const QString &groupSign, QChar decimal)
{
    const int digits = money.currency().digits();
    QString whole =
        QString::number(detail::magnitude(money.minor())).rightJustified(digits + 1, u'0');
    const QString fraction = digits > 0 ? decimal + whole.right(digits) : QString();
    whole.chop(digits);
    return (groupSign.isEmpty() ? whole : detail::grouped(whole, 4)) + fraction;
}

} // namespace

Result<Money> parseMoney(QStringView text, NumberStyle style, std::optional<Currency> fallback)
{
    const QStringView trimmed = text.trimmed();
    const auto parts = takeApart(trimmed);
    if (!parts) {
        return fail(trimmed.isEmpty() ? badInput(u"An amount of money is missing."_s)
                                      : badInput(quoted(trimmed) + u" is not an amount of money."_s,
                                                 u"Write it like 1250.00 EUR."_s));
    }
    const Result<Currency> currency = currencyOf(*parts, trimmed, fallback);
    if (!currency)
        return fail(currency.error());
    const Result<detail::NumberText> number = detail::readNumber(parts->number, style);
    if (!number)
        return fail(number.error());
    if (number->exponent)
        return fail(badInput(quoted(trimmed) + u" is not an amount of money."_s,
                             u"Write all its digits."_s));
    if (number->fraction.size() > currency->digits()) {
        return fail(badInput(tooManyDecimals(parts->number, *currency),
                             u"If thousands are meant, leave the grouping sign out."_s));
    }
    const Result<std::int64_t> minor = minorUnits(*number, trimmed, *currency);
    if (!minor)
        return fail(minor.error());
    return Money(parts->negative ? -*minor : *minor, *currency);
}

QString printMoneyNumber(Money money)
{
    return (money.minor() < 0 ? u"-"_s : QString()) + digitsOf(money, {}, u'.');
}

QString printMoney(Money money)
{
    return printMoneyNumber(money) + u' ' + money.currency().code();
}

QString showMoney(Money money, NumberStyle style)
{
    const QString sign = money.minor() < 0 ? QString(detail::kMinus) : QString();
    return sign + digitsOf(money, detail::kThinSpace, style.decimal) + detail::kNoBreakSpace +
           money.currency().code();
}

} // namespace ohmwright
