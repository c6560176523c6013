// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/quantity/amount.h"
#include "tests/core/quantity/printers.h"

#include <gtest/gtest.h>

#include <cmath>
#include <initializer_list>
#include <limits>

namespace ohmwright {

namespace {

const NumberStyle kPoint = NumberStyle::pointDecimal();
const NumberStyle kComma = NumberStyle::commaDecimal();

void expectBoth(QStringView text, double value)
{
    for (const NumberStyle style : {kPoint, kComma}) {
        const Result<double> number = parseNumber(text, style);
        ASSERT_TRUE(number) << text.toString().toStdString() << ": "
                            << number.error().sentence.toStdString();
        EXPECT_EQ(*number, value) << text.toString().toStdString();
    }
}

} // namespace

TEST(ParseNumber, TakesPlainNumbersInAnyStyle)
{
    expectBoth(u"1250", 1250);
    expectBoth(u" 7 ", 7);
    expectBoth(u"-40", -40);
    expectBoth(u"+5", 5);
    expectBoth(u"−40", -40); // minus sign
    expectBoth(u"007", 7);
    expectBoth(u".5", 0.5);
    expectBoth(u",5", 0.5);
    expectBoth(u"5.", 5);
    expectBoth(u"-0", 0);
    expectBoth(u"0", 0);
    expectBoth(u"1e-6", 1e-6);
    expectBoth(u"2.5E3", 2500);
    expectBoth(u"1.2e-06", 1.2e-6);
}

TEST(ParseNumber, ReadsNoMinusZero)
{
    EXPECT_FALSE(std::signbit(*parseNumber(u"-0", kPoint)));
    EXPECT_FALSE(std::signbit(*parseNumber(u"-0,00", kComma)));
}

TEST(ParseNumber, TakesTheWaysOfWritingOfSeveralCountries)
{
    expectBoth(u"1,250.5", 1250.5);      // English
    expectBoth(u"1.250,5", 1250.5);      // German
    expectBoth(u"1 250,5", 1250.5);      // French, plain space
    expectBoth(u"1\u00A0250,5", 1250.5); // French, no-break space
    expectBoth(u"1\u202F250,5", 1250.5); // French, narrow no-break space
    expectBoth(u"1\u2009250.5", 1250.5); // SI, thin space
    expectBoth(u"1'250.5", 1250.5);      // Swiss
    expectBoth(u"1’250.50", 1250.5);     // Swiss, typographic
    expectBoth(u"12,345,678.9", 12345678.9);
    expectBoth(u"12.345.678,9", 12345678.9);
    expectBoth(u"12 345 678", 12345678);
    expectBoth(u"12.345.678", 12345678);
    expectBoth(u"1'250'000", 1250000);
    expectBoth(u"1 250,500", 1250.5);
}

TEST(ParseNumber, ReadsALoneSeparatorWithThreeDigitsBehindItByStyle)
{
    EXPECT_EQ(*parseNumber(u"1.250", kPoint), 1.25);
    EXPECT_EQ(*parseNumber(u"1.250", kComma), 1250);
    EXPECT_EQ(*parseNumber(u"1,250", kPoint), 1250);
    EXPECT_EQ(*parseNumber(u"1,250", kComma), 1.25);
    EXPECT_EQ(*parseNumber(u"-123.456", kComma), -123456);
}

TEST(ParseNumber, ReadsALoneSeparatorThatCannotGroupAsDecimal)
{
    expectBoth(u"12.5", 12.5);
    expectBoth(u"12,5", 12.5);
    expectBoth(u"1.2505", 1.2505);
    expectBoth(u"1,2505", 1.2505);
    expectBoth(u"0.125", 0.125); // no group starts with a nought
    expectBoth(u"0,125", 0.125);
    expectBoth(u"1250.125", 1250.125); // the first group has at most three digits
    expectBoth(u"1250,125", 1250.125);
}

TEST(ParseNumber, RefusesWhatIsNoNumberWithASentence)
{
    for (const QStringView text :
         {u"abc",     u"1..5",        u"1,,5",      u"1.2.3", u"1,25,000",  u"1 25", u"12 3456",
          u"1.250.5", u"1,250.500,5", u"1'250 000", u"1'25",  u"0,125,000", u"--5",  u"5-",
          u"- 5",     u".",           u",",         u"-",     u"+",         u"1e",   u"1e+",
          u"1e1234",  u"e5",          u"0x10",      u"½",     u"٣",         u"５",   u"1_000",
          u"5 V",     u"1.5.",        u"' 5",       u"1\n000"}) {
        const Result<double> number = parseNumber(text, kPoint);
        ASSERT_FALSE(number) << text.toString().toStdString();
        EXPECT_EQ(number.error().code, ProblemCode::BadInput);
        EXPECT_EQ(number.error().whatToDo, QStringLiteral("Write it like 1250.5."));
        EXPECT_TRUE(number.error().sentence.endsWith(QStringLiteral("is not a number.")));
    }
    EXPECT_EQ(sentenceOf(parseNumber(u"abc", kComma)), QStringLiteral("“abc” is not a number."));
    EXPECT_EQ(parseNumber(u"abc", kComma).error().whatToDo,
              QStringLiteral("Write it like 1250,5."));
}

TEST(ParseNumber, RefusesInfinityAndNotANumber)
{
    for (const QStringView text : {u"inf", u"-inf", u"infinity", u"nan", u"NaN", u"∞"})
        EXPECT_TRUE(
            sentenceOf(parseNumber(text, kPoint)).endsWith(QStringLiteral("is not a number.")));
}

TEST(ParseNumber, SaysThatNothingIsThere)
{
    EXPECT_EQ(sentenceOf(parseNumber(u"", kPoint)), QStringLiteral("A number is missing."));
    EXPECT_EQ(sentenceOf(parseNumber(u" \t ", kPoint)), QStringLiteral("A number is missing."));
    EXPECT_EQ(sentenceOf(parseNumber({}, kPoint)), QStringLiteral("A number is missing."));
}

TEST(ParseNumber, KeepsToWhatADoubleCountsExactly)
{
    expectBoth(u"1000000000000000", 1e15);
    expectBoth(u"999999999999999", 999999999999999);
    for (const QStringView text : {u"1000000000000001", u"1e16", u"-1e999", u"1e-999"}) {
        EXPECT_EQ(sentenceOf(parseNumber(text, kPoint)),
                  u"“" + text.toString() + u"” is too large or too near zero to keep.");
    }
}

TEST(ParseNumber, QuotesOnlyTheStartOfALongText)
{
    const QString sentence = sentenceOf(parseNumber(QString(5000, u'x'), kPoint));
    EXPECT_EQ(sentence, u"“" + QString(40, u'x') + u"…” is not a number.");
}

TEST(ShowNumber, GroupsFromFiveDigitsOnWithTheStylesDecimalSign)
{
    EXPECT_EQ(showNumber(1250.5, kPoint), QStringLiteral("1250.5"));
    EXPECT_EQ(showNumber(1250.5, kComma), QStringLiteral("1250,5"));
    EXPECT_EQ(showNumber(12500, kPoint), QStringLiteral("12\u202F500"));
    EXPECT_EQ(showNumber(1234567.25, kComma), QStringLiteral("1\u202F234\u202F567,25"));
    EXPECT_EQ(showNumber(-40, kPoint), QStringLiteral("−40"));
    EXPECT_EQ(showNumber(-0.0, kPoint), QStringLiteral("0"));
}

TEST(ShowNumber, HidesBinaryNoiseButNothingThatWasTyped)
{
    EXPECT_EQ(showNumber(0.1 + 0.2, kPoint), QStringLiteral("0.3"));
    EXPECT_EQ(showNumber(123.456789012345, kPoint), QStringLiteral("123.456789012345"));
    EXPECT_EQ(showNumber(0.000001, kPoint), QStringLiteral("0.000001"));
}

TEST(ShowNumber, RoundsToTheDigitsAskedFor)
{
    EXPECT_EQ(showNumber(30476.19, kPoint, 3), QStringLiteral("30\u202F500"));
    EXPECT_EQ(showNumber(0.0463217, kPoint, 3), QStringLiteral("0.0463"));
    EXPECT_EQ(showNumber(9.996, kPoint, 3), QStringLiteral("10"));
    EXPECT_EQ(showNumber(-0.5, kComma, 1), QStringLiteral("−0,5"));
}

TEST(ShowNumber, IsReadBackByTheSameStyle)
{
    for (const NumberStyle style : {kPoint, kComma}) {
        for (const double number : {12500.25, -1234567.125, 0.001, 3.3, 1e15, -0.25})
            EXPECT_EQ(*parseNumber(showNumber(number, style), style), number);
    }
}

TEST(ShowNumberDeathTest, TakesFiniteNumbersAndOneToFifteenDigits)
{
    EXPECT_DEATH(static_cast<void>(showNumber(std::numeric_limits<double>::infinity(), kPoint)),
                 "finite");
    EXPECT_DEATH(static_cast<void>(showNumber(1.0, kPoint, 0)), "significant");
    EXPECT_DEATH(static_cast<void>(showNumber(1.0, kPoint, 16)), "significant");
}

} // namespace ohmwright
