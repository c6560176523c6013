// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sheet/plain_text.h"

#include <gtest/gtest.h>

namespace ohmwright::sheet {

namespace {

DecimalHalves halves(const char *text)
{
    return splitAtDecimal(QString::fromUtf8(text)).value_or(DecimalHalves{"none", "none"});
}

DecimalHalves expected(const char *whole, const char *fraction)
{
    return {QString::fromUtf8(whole), QString::fromUtf8(fraction)};
}

} // namespace

TEST(PlainText, FiguresSplitAtTheirDecimalSign)
{
    EXPECT_EQ(halves("403.2 V"), expected("403", ".2 V"));
    EXPECT_EQ(halves("2,5 kW"), expected("2", ",5 kW"));
    EXPECT_EQ(halves("≤ 12.5 kW"), expected("≤ 12", ".5 kW"));
    EXPECT_EQ(halves("−0.25"), expected("−0", ".25"));
    EXPECT_EQ(halves("1 250.00 EUR"), expected("1 250", ".00 EUR"));
    EXPECT_EQ(halves("1\u202f250,5 kg"), expected("1\u202f250", ",5 kg"));
    EXPECT_EQ(halves("1.250,5"), expected("1.250", ",5"));
    EXPECT_EQ(halves("1,250.5"), expected("1,250", ".5"));
    EXPECT_EQ(halves("1'250.5"), expected("1'250", ".5"));
}

TEST(PlainText, FiguresWithoutDecimalsSplitBehindTheLastDigit)
{
    EXPECT_EQ(halves("35 mm²"), expected("35", " mm²"));
    EXPECT_EQ(halves("1 212 kg"), expected("1 212", " kg"));
    EXPECT_EQ(halves("1.250.000 m"), expected("1.250.000", " m"));
    EXPECT_EQ(halves("300–410 V"), expected("300", "–410 V"));
    EXPECT_EQ(halves("2 x 35 mm²"), expected("2", " x 35 mm²"));
    EXPECT_EQ(halves("12."), expected("12", "."));
    EXPECT_EQ(halves("7"), expected("7", ""));
}

TEST(PlainText, TextWithoutAFigureIsNotSplit)
{
    EXPECT_FALSE(splitAtDecimal(QStringLiteral("unknown")).has_value());
    EXPECT_FALSE(splitAtDecimal(QString()).has_value());
    EXPECT_FALSE(splitAtDecimal(QStringLiteral("1.5 V\n2.5 V")).has_value());
}

TEST(PlainText, NothingIsLostInSplitting)
{
    for (const char *text : {"403.2 V", "1 250.00 EUR", "..5", "1,2,3.4.5,6", "12 345 678", "0"}) {
        const DecimalHalves both = halves(text);
        EXPECT_EQ(both.whole + both.fraction, QString::fromUtf8(text)) << text;
    }
}

// W3C, Extensible Markup Language 1.0 (Fifth Edition), production 2, Char.
TEST(PlainText, CharactersXmlCannotCarryAreReplaced)
{
    const QChar replaced(0xfffd);
    EXPECT_EQ(cleaned(QStringView(u"a\u0001b")), QString("a") + replaced + "b");
    EXPECT_EQ(cleaned(QString(QChar(0))), QString(replaced));
    EXPECT_EQ(cleaned(QString(QChar(0xd800)).append("x")), QString(replaced) + "x");
    EXPECT_EQ(cleaned(QString(QChar(0xdc00))), QString(replaced));
    EXPECT_EQ(cleaned(QString(QChar(0xffff))), QString(replaced));
    EXPECT_EQ(cleaned(QStringView(u"\U0001F690")), QString::fromUtf8("\U0001F690"));
    EXPECT_EQ(cleaned(QStringView(u"tab\tstays")), QStringLiteral("tab\tstays"));
}

TEST(PlainText, LineEndsOfAnyKindBecomeLineFeeds)
{
    EXPECT_EQ(cleaned(QStringView(u"a\r\nb\rc\u2028d\u2029e\n")),
              QStringLiteral("a\nb\nc\nd\ne\n"));
}

} // namespace ohmwright::sheet
