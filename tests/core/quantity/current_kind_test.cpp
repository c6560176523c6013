// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/quantity/amount.h"
#include "tests/core/quantity/printers.h"

#include <gtest/gtest.h>

namespace ohmwright {

namespace {

void expectSplit(QStringView text, const QString &rest, std::optional<CurrentKind> kind)
{
    const AmountWithKind split = splitCurrentKind(text);
    EXPECT_EQ(split.amountText, rest) << text.toString().toStdString();
    EXPECT_EQ(split.kind, kind) << text.toString().toStdString();
}

} // namespace

TEST(SplitCurrentKind, FindsDirectCurrent)
{
    for (const QStringView text : {u"400 V DC", u"400 VDC", u"400 V dc", u"400 V d.c.", u"400 V⎓",
                                   u"400 V ⎓", u"400 V=", u"DC 400 V"})
        expectSplit(text, QStringLiteral("400 V"), CurrentKind::Dc);
    expectSplit(u"10 ADC", QStringLiteral("10 A"), CurrentKind::Dc);
    expectSplit(u"400 DC", QStringLiteral("400"), CurrentKind::Dc);
}

TEST(SplitCurrentKind, FindsAlternatingCurrent)
{
    for (const QStringView text :
         {u"230 V AC", u"230 VAC", u"230 V ac", u"230 V~", u"230 V ~", u"230 V a.c.",
          u"230 V AC rms", u"230 V rms", u"230 Vrms", u"230 V rms AC", u"AC 230 V", u"AC 230 V~"})
        expectSplit(text, QStringLiteral("230 V"), CurrentKind::Ac);
}

TEST(SplitCurrentKind, LeavesTextWithoutAKindAlone)
{
    expectSplit(u" 403 V ", QStringLiteral("403 V"), std::nullopt);
    expectSplit(u"", QString(), std::nullopt);
    expectSplit(u"12 zodiac", QStringLiteral("12 zodiac"), std::nullopt);
    expectSplit(u"~230 V", QStringLiteral("~230 V"), std::nullopt);
}

TEST(SplitCurrentKind, LeavesAContradictionWhole)
{
    for (const QStringView text : {u"230 V AC/DC", u"AC 230 V DC", u"230 V AC DC", u"24 V DC+AC"})
        expectSplit(text, text.toString(), std::nullopt);
}

TEST(SplitCurrentKind, LeavesAnAmountThatCanBeRead)
{
    const AmountWithKind split = splitCurrentKind(u"2,5 kVAC");
    const Result<Amount> amount = parseAmount(split.amountText, NumberStyle::commaDecimal());
    ASSERT_TRUE(amount);
    EXPECT_EQ(printAmount(*amount), QStringLiteral("2.5 kV"));
}

} // namespace ohmwright
