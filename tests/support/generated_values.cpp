// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/generated_values.h"

#include <QStringList>

#include <cmath>

using namespace Qt::StringLiterals;

namespace ohmwright {

namespace {

// What has broken writers and readers of text before.
const QStringList &hostileBits()
{
    static const QStringList kBits{
        u"\"quoted\" 'twice'"_s,
        u"back\\slash \\u0041 \\n"_s,
        u"{\"key\": [1, null]}"_s,
        u"</script><!-- & &amp; -->"_s,
        u"'; DROP TABLE part; --"_s,
        u"=1+1"_s,
        u"%1 %2 %n %s"_s,
        u"line\nbreak\r\nand\ttab"_s,
        u"\u0001\u0008\u001b[31m\u007f\u0085"_s,
        u"\u2028\u2029\u00a0\u3000"_s,
        u"\u202eright to left\u202c \u05e9\u05dc\u05d5\u05dd \u0645\u0631\u062d\u0628\u0627"_s,
        u"e\u0301 \u00e9 \u1e9e \u0130\u0131 \ufb01"_s,
        u"\u96fb\u6c17\u81ea\u52d5\u8eca \ud55c\uad6d\uc5b4"_s,
        u"\U0001f50b\U0001f469\u200d\U0001f527\U0010ffff"_s,
        u"\ufeff\ufffe\uffff\ufffd"_s,
        u"~1/~0 a/b#c?d=e"_s,
        u"  leading and trailing  "_s,
        u"108 \u00d7 4.2 V \u2192 35 mm\u00b2, 12 m\u2126 \u00b5F"_s,
        u"null"_s,
        u"-0"_s,
    };
    return kBits;
}

const QStringList &plainWords()
{
    static const QStringList kWords{
        u"front"_s,    u"rear"_s, u"drive"_s,   u"unit"_s,   u"contactor"_s, u"with"_s,
        u"mating"_s,   u"plug"_s, u"used"_s,    u"from"_s,   u"shelf"_s,     u"two"_s,
        u"tested"_s,   u"on"_s,   u"bench"_s,   u"sealed"_s, u"cover"_s,     u"module"_s,
        u"terminal"_s, u"bolt"_s, u"coolant"_s, u"hose"_s,   u"bracket"_s,   u"copper"_s,
    };
    return kWords;
}

bool saysSomething(const QString &text)
{
    return !text.trimmed().isEmpty();
}

} // namespace

// each book starts elsewhere, so that a few small books together use all
ValueMaker::ValueMaker(Chance &chance, Texts texts)
    : m_chance(chance), m_texts(texts),
      m_unit(static_cast<std::size_t>(chance.below(static_cast<int>(Unit::all().size())))),
      m_currency(static_cast<std::size_t>(chance.below(static_cast<int>(Currency::all().size()))))
{}

QString ValueMaker::text()
{
    QString text;
    for (int bits = m_chance.below(4); bits > 0; --bits) {
        const bool hostile = m_texts == Texts::Hostile && m_chance.oneIn(2);
        text += m_chance.pick(hostile ? hostileBits() : plainWords());
        if (bits > 1)
            text += u' ';
    }
    if (m_texts == Texts::Hostile && m_chance.oneIn(500))
        text = QString(20000, u'x');
    return text;
}

QString ValueMaker::requiredText()
{
    for (;;) {
        if (QString text = this->text(); saysSomething(text))
            return text;
    }
}

QString ValueMaker::key()
{
    static const QString kFirst = u"abcdefghijklmnopqrstuvwxyz0123456789"_s;
    static const QString kRest = kFirst + u"-./_"_s;
    // the count at the end tells keys apart; chance in front puts them in another order
    const QString count = QString::number(++m_keys);
    QString key = m_chance.pick(kFirst);
    const int length = m_chance.oneIn(20) ? 80 - static_cast<int>(count.size()) - 2 : 6;
    for (int i = 0; i < length; ++i)
        key += m_chance.pick(kRest);
    return key + u'.' + count;
}

QDate ValueMaker::date()
{
    static const QDate kFirst(1900, 1, 1);
    static const QDate kLast(2199, 12, 31);
    if (m_chance.oneIn(20))
        return m_chance.oneIn(2) ? kFirst : kLast;
    return kFirst.addDays(m_chance.below(static_cast<int>(kFirst.daysTo(kLast)) + 1));
}

double ValueMaker::number()
{
    switch (m_chance.below(8)) {
    case 0:
        return 0.0;
    case 1:
        return m_chance.below(2) == 0 ? 1e15 : 999999999999999.9;
    case 2:
        return std::ldexp(static_cast<double>(1 + m_chance.belowLong(1LL << 52)),
                          -52 - m_chance.below(60));
    case 3:
        return m_chance.oneIn(8) ? 5e-324 : 1e-9 * m_chance.below(1000);
    case 4:
    case 5:
        return m_chance.below(1000);
    default:
        return m_chance.below(1'000'000) / 100.0;
    }
}

Amount ValueMaker::amountIn(Unit unit, bool negativeToo)
{
    if (unit.symbol() == u"AWG")
        return {static_cast<double>(m_chance.between(-3, 56)), unit};
    const double sign = negativeToo && m_chance.oneIn(3) ? -1.0 : 1.0;
    const Amount amount(sign * number(), unit);
    const bool tooCold = unit.measure() == Measure::Temperature && amount.si() < 0.0;
    return tooCold ? Amount(0.0, unit) : amount;
}

Amount ValueMaker::amount(Measure measure, bool negativeToo)
{
    return amountIn(m_chance.pick(Unit::ofMeasure(measure)), negativeToo);
}

Amount ValueMaker::anyAmount()
{
    const std::span<const UnitInfo> all = Unit::all();
    m_unit = (m_unit + 1) % all.size();
    return amountIn(*Unit::fromSymbol(all[m_unit].symbol), true);
}

Money ValueMaker::money(Currency currency, bool negativeToo)
{
    constexpr std::int64_t kMost = 1'000'000'000'000'000;
    std::int64_t minor = m_chance.below(1'000'000);
    if (m_chance.oneIn(10))
        minor = m_chance.oneIn(2) ? kMost : m_chance.belowLong(kMost);
    if (m_chance.oneIn(10))
        minor = 0;
    return {negativeToo && m_chance.oneIn(3) ? -minor : minor, currency};
}

Money ValueMaker::price(Currency currency, bool negativeToo)
{
    constexpr std::int64_t kMost = 10'000'000;
    const std::int64_t minor = m_chance.oneIn(10) ? kMost : m_chance.below(100'000);
    return {negativeToo && m_chance.oneIn(3) ? -minor : minor, currency};
}

Currency ValueMaker::currency()
{
    const std::vector<Currency> all = Currency::all();
    m_currency = (m_currency + 1) % all.size();
    return all[m_currency];
}

Rate ValueMaker::rate()
{
    static const QStringList kOdd{u"1"_s,
                                  u"1.00"_s,
                                  u"0.000000000001"_s,
                                  u"0.0842"_s,
                                  u"999999999999999"_s,
                                  u"123.456789012345"_s};
    const QString text = m_chance.oneIn(4) ? m_chance.pick(kOdd)
                                           : QString::number(m_chance.below(200)) + u'.' +
                                                 QString::number(m_chance.between(1, 99999));
    return Rate::parse(text, NumberStyle::pointDecimal()).value();
}

Rate ValueMaker::dayRate()
{
    const QString text =
        QString::number(m_chance.below(200)) + u'.' + QString::number(m_chance.between(1, 99999));
    return Rate::parse(text, NumberStyle::pointDecimal()).value();
}

} // namespace ohmwright
