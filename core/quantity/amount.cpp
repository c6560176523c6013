// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/quantity/amount.h"

#include "core/quantity/invariant.h"
#include "core/quantity/number_text.h"
#include "core/quantity/wire_gauge.h"

#include <algorithm>

using namespace Qt::StringLiterals;

namespace ohmwright {

namespace {

using detail::quoted;

Problem badInput(QString sentence, QString whatToDo = {})
{
    return {ProblemCode::BadInput, std::move(sentence), std::move(whatToDo), {}};
}

QString unitsOf(Measure measure)
{
    QStringList symbols;
    for (const Unit &unit : Unit::ofMeasure(measure))
        symbols.append(unit.symbol());
    return symbols.join(u", "_s);
}

// "voltage is given in V, mV, kV, µV."
QString givenIn(Measure measure)
{
    return measureName(measure) + u" is given in "_s + unitsOf(measure) + u"."_s;
}

QString howToGive(Measure measure)
{
    if (measure == Measure::Count)
        return u"A count has no unit."_s;
    QString sentence = givenIn(measure);
    sentence[0] = sentence[0].toUpper();
    return sentence;
}

// "Write a number and its unit: voltage is given in V, mV, kV, µV."
QString howToWrite(std::optional<Measure> expected)
{
    if (!expected)
        return u"Write a number and its unit, such as 403 V."_s;
    if (*expected == Measure::Count)
        return u"Write a number."_s;
    return u"Write a number and its unit: "_s + givenIn(*expected);
}

Problem unknownUnit(QStringView unitText, std::optional<Measure> expected)
{
    const QStringList similar = Unit::similarSymbols(unitText);
    QString whatToDo;
    if (!similar.isEmpty())
        whatToDo = u"Capitals matter here: do you mean "_s + similar.join(u" or "_s) + u"?"_s;
    else if (expected)
        whatToDo = howToGive(*expected);
    else
        whatToDo = u"Write the unit's symbol, such as V, kW or mm²."_s;
    return badInput(quoted(unitText) + u" is not a unit we know."_s, whatToDo);
}

QString withArticle(Measure measure)
{
    const QString name = measureName(measure);
    return (u"aeiou"_s.contains(name[0]) ? u"an "_s : u"a "_s) + name;
}

Problem otherMeasure(QStringView text, Measure got, Measure wanted)
{
    return badInput(quoted(text) + u" is "_s % withArticle(got) % u", but "_s %
                                       withArticle(wanted) % u" is wanted here."_s,
                    howToGive(wanted));
}

// `text` is the whole amount, for sentences.
Result<Unit> readUnit(QStringView unitText, QStringView text, NumberStyle style,
                      std::optional<Measure> expected)
{
    if (const auto known = Unit::fromSymbol(unitText, expected))
        return *known;
    // "1 25 V": not the unit is wrong but the number
    if (detail::numberLength(unitText) > 0) {
        return fail(badInput(quoted(text) + u" is not a number and a unit."_s,
                             u"Write the number like "_s % detail::sampleNumber(style) % u"."_s));
    }
    return fail(unknownUnit(unitText, expected));
}

Result<Unit> unitOfBareNumber(QStringView text, std::optional<Measure> expected,
                              std::optional<Unit> defaultUnit)
{
    if (defaultUnit)
        return *defaultUnit;
    if (!expected || *expected == Measure::Count)
        return Unit();
    return fail(badInput(quoted(text) + u" has no unit."_s, howToGive(*expected)));
}

// A wire gauge, when the text is meant as one: it says AWG, or AWG is understood.
std::optional<Result<double>> readAsGauge(QStringView text, std::optional<Unit> defaultUnit)
{
    const QStringView gauge = detail::textOfGauge(text);
    const bool bare = std::none_of(text.begin(), text.end(), [](QChar c) { return c.isLetter(); });
    const bool understood = bare && defaultUnit && *defaultUnit == detail::awg();
    if (gauge.isNull() && !understood)
        return std::nullopt;
    return detail::readGauge(gauge.isNull() ? text : gauge, text);
}

Result<Amount> readNumberAndUnit(QStringView text, NumberStyle style,
                                 std::optional<Measure> expected, std::optional<Unit> defaultUnit)
{
    const qsizetype length = detail::numberLength(text);
    if (length == 0) {
        return fail(
            badInput(quoted(text) + u" does not start with a number."_s, howToWrite(expected)));
    }
    const QStringView unitText = text.mid(length).trimmed();
    const Result<Unit> unit = unitText.isEmpty() ? unitOfBareNumber(text, expected, defaultUnit)
                                                 : readUnit(unitText, text, style, expected);
    if (!unit)
        return fail(unit.error());
    if (*unit == detail::awg()) { // "10 A.W.G."
        const Result<double> gauge = detail::readGauge(text.left(length), text);
        return gauge ? Result<Amount>(Amount(*gauge, *unit)) : fail(gauge.error());
    }
    const Result<detail::NumberText> number = detail::readNumber(text.left(length), style);
    if (!number)
        return fail(number.error());
    const Result<double> value = detail::toDouble(*number, text.left(length));
    if (!value)
        return fail(value.error());
    return Amount(*value, *unit);
}

} // namespace

Amount Amount::fromSi(double si, Unit unit)
{
    if (unit == detail::awg())
        return {detail::nearestGauge(si), unit};
    const UnitInfo &info = unit.info();
    return {(si - info.offset) / info.toSi, unit};
}

double Amount::si() const
{
    if (m_unit == detail::awg())
        return detail::areaOfGauge(m_number);
    const UnitInfo &info = m_unit.info();
    return m_number * info.toSi + info.offset;
}

Amount Amount::to(Unit unit) const
{
    require(unit.measure() == measure(), "an amount converts within its measure");
    return unit == m_unit ? *this : fromSi(si(), unit);
}

Result<Amount> parseAmount(QStringView text, NumberStyle style, std::optional<Measure> expected,
                           std::optional<Unit> defaultUnit)
{
    require(!expected || !defaultUnit || defaultUnit->measure() == *expected,
            "the default unit measures what is expected");
    const QStringView trimmed = text.trimmed();
    if (trimmed.isEmpty()) {
        return fail(badInput(u"An amount is missing."_s, howToWrite(expected)));
    }
    Result<Amount> amount = Amount();
    if (const auto gauge = readAsGauge(trimmed, defaultUnit)) {
        if (!*gauge)
            return fail(gauge->error());
        amount = Amount(**gauge, detail::awg());
    } else {
        amount = readNumberAndUnit(trimmed, style, expected, defaultUnit);
        if (!amount)
            return amount;
    }
    if (expected && amount->measure() != *expected)
        return fail(otherMeasure(trimmed, amount->measure(), *expected));
    if (amount->measure() == Measure::Temperature && amount->si() < 0.0)
        return fail(badInput(quoted(trimmed) + u" is colder than anything can be."_s));
    return amount;
}

QString printAmount(const Amount &amount)
{
    if (amount.unit() == detail::awg()) {
        if (const QString gauge = detail::printGauge(amount.number()); !gauge.isEmpty())
            return gauge;
        return printAmount(Amount::fromSi(amount.si(), detail::squareMillimetre()));
    }
    const QString symbol = amount.unit().symbol();
    const QString number = detail::printNumber(amount.number());
    return symbol.isEmpty() ? number : number + u' ' + symbol;
}

QString showAmount(const Amount &amount, NumberStyle style, int significantDigits)
{
    if (amount.unit() == detail::awg()) {
        if (QString gauge = detail::printGauge(amount.number()); !gauge.isEmpty())
            return gauge.replace(u' ', detail::kNoBreakSpace);
        return showAmount(Amount::fromSi(amount.si(), detail::squareMillimetre()), style,
                          significantDigits);
    }
    const QString number = showNumber(amount.number(), style, significantDigits);
    QString symbol = amount.unit().symbol();
    symbol.replace(u' ', detail::kNoBreakSpace);
    return symbol.isEmpty() ? number : number + detail::kNoBreakSpace + symbol;
}

} // namespace ohmwright
