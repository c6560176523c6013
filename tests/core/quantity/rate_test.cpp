// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/quantity/money.h"
#include "tests/core/quantity/printers.h"

#include <gtest/gtest.h>

#include <cstdint>
#include <random>

namespace ohmwright {

namespace {

const NumberStyle kPoint = NumberStyle::pointDecimal();
const NumberStyle kComma = NumberStyle::commaDecimal();

Money money(std::int64_t minor, QStringView code)
{
    return {minor, Currency::fromCode(code).value()};
}

Rate rate(QStringView text)
{
    return Rate::parse(text, kPoint).value();
}

QString converted(std::int64_t minor, QStringView from, QStringView by, QStringView to)
{
    return printMoney(rate(by).convert(money(minor, from), Currency::fromCode(to).value()));
}

} // namespace

TEST(Rate, PrintsTheDigitsGiven)
{
    EXPECT_EQ(rate(u"1.0842").print(), QStringLiteral("1.0842"));
    EXPECT_EQ(rate(u"1.0800").print(), QStringLiteral("1.0800"));
    EXPECT_EQ(rate(u".5").print(), QStringLiteral("0.5"));
    EXPECT_EQ(rate(u"0.000000000001").print(), QStringLiteral("0.000000000001"));
    EXPECT_EQ(rate(u"7").print(), QStringLiteral("7"));
    EXPECT_EQ(rate(u"1,234.5").print(), QStringLiteral("1234.5"));
    EXPECT_EQ(Rate().print(), QStringLiteral("1"));
    EXPECT_EQ(Rate::parse(u"1,0842", kComma)->print(), QStringLiteral("1.0842"));
    EXPECT_EQ(Rate::parse(u"1,084", kComma)->print(), QStringLiteral("1.084"));
}

TEST(Rate, ReadsBackWhatItPrints)
{
    std::mt19937_64 random(3);
    for (int i = 0; i < 5000; ++i) {
        QString text = QString::number(1 + random() % 999'999'999);
        const auto scale = static_cast<qsizetype>(random() % 10);
        if (scale > 0) {
            text = text.rightJustified(scale + 1, u'0');
            text.insert(text.size() - scale, u'.');
        }
        const Rate read = rate(text);
        ASSERT_EQ(read.print(), text);
        ASSERT_EQ(rate(read.print()), read);
    }
}

TEST(Rate, RefusesWhatIsNoRate)
{
    const auto sentence = [](QStringView text, NumberStyle style = kPoint) {
        return sentenceOf(Rate::parse(text, style));
    };
    EXPECT_EQ(sentence(u""), QStringLiteral("A number is missing."));
    EXPECT_EQ(sentence(u"abc"), QStringLiteral("“abc” is not a number."));
    EXPECT_EQ(sentence(u"0"), QStringLiteral("“0” is not an exchange rate."));
    EXPECT_EQ(sentence(u"0.000"), QStringLiteral("“0.000” is not an exchange rate."));
    EXPECT_EQ(sentence(u"-1.2"), QStringLiteral("“-1.2” is not an exchange rate."));
    EXPECT_EQ(sentence(u"1e3"), QStringLiteral("“1e3” is not an exchange rate."));
    EXPECT_EQ(sentence(u"1234567890123456"),
              QStringLiteral("“1234567890123456” is not an exchange rate."));
    EXPECT_EQ(sentence(u"1.0000000000001"),
              QStringLiteral("“1.0000000000001” is not an exchange rate."));
    EXPECT_EQ(sentence(u"1.084", kComma),
              QStringLiteral("“1.084” could be meant in thousands or in thousandths."));
    EXPECT_EQ(sentence(u"1,084", kPoint),
              QStringLiteral("“1,084” could be meant in thousands or in thousandths."));
}

TEST(RateConvert, RoundsHalfAwayFromZeroInTheMinorUnitOfTheResult)
{
    EXPECT_EQ(converted(10000, u"USD", u"0.9217", u"EUR"), QStringLiteral("92.17 EUR"));
    EXPECT_EQ(converted(1, u"USD", u"0.5", u"EUR"), QStringLiteral("0.01 EUR"));
    EXPECT_EQ(converted(1, u"USD", u"0.49", u"EUR"), QStringLiteral("0.00 EUR"));
    EXPECT_EQ(converted(-1, u"USD", u"0.5", u"EUR"), QStringLiteral("-0.01 EUR"));
    EXPECT_EQ(converted(-1, u"USD", u"0.49", u"EUR"), QStringLiteral("0.00 EUR"));
    EXPECT_EQ(converted(3, u"USD", u"1.5", u"EUR"), QStringLiteral("0.05 EUR"));
}

TEST(RateConvert, MindsTheDigitsOfBothCurrencies)
{
    EXPECT_EQ(converted(12000, u"JPY", u"0.0061", u"EUR"), QStringLiteral("73.20 EUR"));
    EXPECT_EQ(converted(100, u"EUR", u"163.5", u"JPY"), QStringLiteral("164 JPY"));
    EXPECT_EQ(converted(1500, u"KWD", u"3.01", u"EUR"), QStringLiteral("4.52 EUR"));
    EXPECT_EQ(converted(100, u"EUR", u"0.33333", u"KWD"), QStringLiteral("0.333 KWD"));
    EXPECT_EQ(converted(1, u"JPY", u"1", u"CLF"), QStringLiteral("1.0000 CLF"));
}

// Against long division by hand, digit by digit, in plain 64-bit numbers.
TEST(RateConvert, IsExact)
{
    std::mt19937_64 random(11);
    for (int i = 0; i < 20000; ++i) {
        const auto cents = static_cast<std::int64_t>(random() % 10'000'000);
        const auto units = static_cast<std::int64_t>(1 + random() % 99'999);
        QString text = QString::number(units).rightJustified(5, u'0');
        text.insert(text.size() - 4, u'.');
        const std::int64_t product = cents * units;
        const std::int64_t expected = product / 10000 + (product % 10000 >= 5000 ? 1 : 0);
        ASSERT_EQ(rate(text).convert(money(cents, u"USD"), Currency()).minor(), expected);
    }
}

TEST(RateConvert, SaysWhenTheResultDoesNotFit)
{
    const Rate large = rate(u"123456");
    EXPECT_FALSE(large.convertIfFits(money(1'000'000'000'000'000, u"USD"), Currency()));
    EXPECT_EQ(*large.convertIfFits(money(-200, u"USD"), Currency()), money(-24691200, u"EUR"));
    EXPECT_TRUE(Rate().convertIfFits(money(1'000'000'000'000'000, u"USD"), Currency()));
    EXPECT_FALSE(Rate().convertIfFits(money(1'000'000'000'000'001, u"USD"), Currency()));
}

TEST(RateDeathTest, ConvertAssertsThatTheResultFits)
{
    EXPECT_DEATH(static_cast<void>(
                     rate(u"123456").convert(money(1'000'000'000'000'000, u"USD"), Currency())),
                 "64 bits");
}

} // namespace ohmwright
