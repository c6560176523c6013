// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/interchange/text_forms.h"

#include "core/quantity/dates.h"

#include <QCoreApplication>
#include <QRegularExpression>
#include <QStringList>

#include <map>

using namespace Qt::StringLiterals;

namespace ohmwright::forms {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("Interchange", text);
}

// "-0" is not written: a zero has one form.
QString signPattern()
{
    return u"(?:-(?=[0-9.]*[1-9]))?"_s;
}

// 0 to 10^15, as far as amounts go; 400 places take the smallest number there is.
QString numberPattern()
{
    return u"(?:(?:0|[1-9][0-9]{0,14})(?:\\.[0-9]{1,400})?|10{15}(?:\\.0{1,400})?)"_s;
}

QString gaugePattern()
{
    return u"(?:[1-4]/0|[0-9]|[1-4][0-9]|5[0-6]) AWG"_s;
}

QString oneOf(const QStringList &words)
{
    QStringList escaped;
    for (const QString &word : words) {
        QString safe;
        for (const QChar c : word) {
            // only what is special: ECMA-262 refuses to escape what is not
            if (QStringView(u"\\^$.|?*+()[]{}/").contains(c))
                safe += u'\\';
            safe += c;
        }
        escaped << safe;
    }
    return u"(?:"_s + escaped.join(u'|') + u')';
}

// `symbols` of one or more measures, the plain count's empty one left out.
QString withUnit(const QStringList &symbols, bool plain)
{
    QString pattern = signPattern() + numberPattern();
    if (symbols.isEmpty())
        return pattern;
    const QString unit = u"(?: "_s + oneOf(symbols) + u')';
    return pattern + unit + (plain ? u"?"_s : QString());
}

QString pattern(const std::vector<Unit> &units)
{
    QStringList symbols;
    bool plain = false;
    bool gauge = false;
    for (const Unit &unit : units) {
        const QString symbol = unit.symbol();
        if (symbol.isEmpty())
            plain = true;
        else if (symbol == u"AWG")
            gauge = true;
        else
            symbols << symbol;
    }
    const QString numbered = withUnit(symbols, plain);
    return gauge ? u"(?:"_s + numbered + u'|' + gaugePattern() + u')' : numbered;
}

QRegularExpression whole(const QString &pattern)
{
    QRegularExpression expression(QRegularExpression::anchoredPattern(pattern),
                                  QRegularExpression::DontCaptureOption);
    expression.optimize();
    return expression;
}

bool matches(const QRegularExpression &expression, const QString &text)
{
    return expression.match(text).hasMatch();
}

Problem badInput(QString sentence, QString whatToDo)
{
    return {ProblemCode::BadInput, std::move(sentence), std::move(whatToDo), {}};
}

QString writeIt(const QString &printed)
{
    return tr("Write “%1”.").arg(printed);
}

} // namespace

QString amountPattern(Measure measure)
{
    return pattern(Unit::ofMeasure(measure));
}

QString anyAmountPattern()
{
    std::vector<Unit> units;
    for (const UnitInfo &info : Unit::all())
        units.push_back(*Unit::fromSymbol(info.symbol));
    return pattern(units);
}

QString moneyPattern()
{
    constexpr int kDigits = 15; // of the greatest sum but its leading 1
    std::map<int, QStringList> codes;
    for (const Currency &currency : Currency::all())
        codes[currency.digits()] << currency.code();
    QStringList forms;
    for (const auto &[digits, list] : codes) {
        const QString decimals = digits == 0 ? QString() : u"(?:\\.[0-9]{1,%1})?"_s.arg(digits);
        const QString zeros = digits == 0 ? QString() : u"(?:\\.0{1,%1})?"_s.arg(digits);
        forms << u"(?:(?:0|[1-9][0-9]{0,%1})%2|10{%3}%4) %5"_s.arg(kDigits - digits - 1)
                     .arg(decimals)
                     .arg(kDigits - digits)
                     .arg(zeros, oneOf(list));
    }
    return signPattern() + u"(?:"_s + forms.join(u'|') + u')';
}

QString ratePattern()
{
    return u"(?=[0-9.]*[1-9])(?:0|(?!(?:[0-9]\\.?){16})[1-9][0-9]*)(?:\\.[0-9]{1,12})?"_s;
}

QString datePattern()
{
    return u"(?:19|2[01])[0-9]{2}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12][0-9]|3[01])"_s;
}

QString keyPattern()
{
    return u"[a-z0-9][a-z0-9./_-]{0,79}"_s;
}

QString sha256Pattern()
{
    return u"[0-9a-f]{64}"_s;
}

QString timeOfDayPattern()
{
    return u"(?:[01][0-9]|2[0-3]):[0-5][0-9]"_s;
}

QString inkPattern()
{
    // the spaces of Unicode, told one by one because the dialects' \s differ
    return u"[^\\u0009-\\u000d\\u0020\\u0085\\u00a0\\u1680\\u2000-\\u200a\\u2028\\u2029\\u202f"
           "\\u205f\\u3000]"_s;
}

Result<Amount> readAmount(const QString &text)
{
    static const QRegularExpression kForm = whole(anyAmountPattern());
    Result<Amount> amount = parseAmount(text, NumberStyle::pointDecimal());
    if (!amount || matches(kForm, text))
        return amount;
    return fail(badInput(tr("%1 is not written as an amount is here.").arg(quoted(text)),
                         writeIt(printAmount(*amount))));
}

Result<Money> readMoney(const QString &text)
{
    static const QRegularExpression kForm = whole(moneyPattern());
    Result<Money> money = parseMoney(text, NumberStyle::pointDecimal());
    if (!money || matches(kForm, text))
        return money;
    return fail(badInput(tr("%1 is not written as money is here.").arg(quoted(text)),
                         writeIt(printMoney(*money))));
}

Result<Rate> readRate(const QString &text)
{
    static const QRegularExpression kForm = whole(ratePattern());
    Result<Rate> rate = Rate::parse(text, NumberStyle::pointDecimal());
    if (!rate || matches(kForm, text))
        return rate;
    return fail(badInput(tr("%1 is not written as an exchange rate is here.").arg(quoted(text)),
                         writeIt(rate->print())));
}

Result<QDate> readDate(const QString &text)
{
    return parseIsoDate(text);
}

Result<Currency> readCurrency(const QString &text)
{
    if (const auto currency = Currency::fromCode(text))
        return *currency;
    return fail(badInput(tr("%1 is not a currency.").arg(quoted(text)),
                         tr("Write its ISO 4217 code, such as EUR or SEK.")));
}

QString quoted(QStringView text)
{
    constexpr qsizetype kLongest = 60;
    QString shown = text.left(kLongest).toString();
    for (QChar &c : shown) {
        if (!c.isPrint() && !c.isSurrogate())
            c = u' ';
    }
    if (text.size() > kLongest) {
        if (shown.back().isHighSurrogate())
            shown.chop(1);
        shown += u'…';
    }
    return u'“' + shown + u'”';
}

} // namespace ohmwright::forms
