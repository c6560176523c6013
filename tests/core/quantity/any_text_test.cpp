// SPDX-License-Identifier: GPL-3.0-or-later
// Whatever the text, reading it gives a value or one plain sentence.
#include "core/quantity/amount.h"
#include "core/quantity/dates.h"
#include "core/quantity/money.h"
#include "tests/core/quantity/printers.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

namespace ohmwright {

namespace {

const QDate kToday(2026, 3, 1);

// Pieces that come near to what is meant, and some that do not; the last is half a surrogate pair.
const QStringList kPieces{
    QStringLiteral("1"),      QStringLiteral("250"),    QStringLiteral("0"),
    QStringLiteral("."),      QStringLiteral(","),      QStringLiteral(" "),
    QStringLiteral("'"),      QStringLiteral("-"),      QStringLiteral("−"),
    QStringLiteral("+"),      QStringLiteral("e"),      QStringLiteral("E9"),
    QStringLiteral("/0"),     QStringLiteral("AWG"),    QStringLiteral("V"),
    QStringLiteral("kW"),     QStringLiteral("mm²"),    QStringLiteral("µ"),
    QStringLiteral("Ω"),      QStringLiteral("°"),      QStringLiteral("C"),
    QStringLiteral("DC"),     QStringLiteral("~"),      QStringLiteral("€"),
    QStringLiteral("EUR"),    QStringLiteral("kr"),     QStringLiteral("$"),
    QStringLiteral("Mar"),    QStringLiteral("2026"),   QStringLiteral("d"),
    QStringLiteral("\u202F"), QStringLiteral("\u0300"), QStringLiteral("ﷺ"),
    QStringLiteral("\n"),     QString(QChar(u'\0')),    QString(QChar(0xD83D)),
};

QString randomText(std::mt19937_64 &random)
{
    QString text;
    const std::uint64_t count = random() % 8;
    for (std::uint64_t i = 0; i < count; ++i) {
        if (random() % 10 == 0)
            text += QChar(static_cast<char16_t>(random() % 0x10000));
        else
            text += kPieces[static_cast<qsizetype>(random() % std::uint64_t(kPieces.size()))];
    }
    return text;
}

template <class T>
testing::AssertionResult valueOrSentence(const Result<T> &result)
{
    if (result)
        return testing::AssertionSuccess();
    const Problem &problem = result.error();
    if (problem.code != ProblemCode::BadInput)
        return testing::AssertionFailure() << "another code";
    if (problem.sentence.isEmpty() || !problem.sentence.endsWith(u'.') ||
        problem.sentence.contains(u'\n') || problem.sentence.size() > 150)
        return testing::AssertionFailure() << problem.sentence.toStdString();
    return testing::AssertionSuccess();
}

} // namespace

TEST(AnyText, GivesAValueOrOnePlainSentence)
{
    std::mt19937_64 random(1);
    const Currency krona = Currency::fromCode(u"SEK").value();
    const Unit awg = Unit::fromSymbol(u"AWG").value();
    int amounts = 0;
    for (int i = 0; i < 100000; ++i) {
        const QString text = randomText(random);
        for (const NumberStyle style : {NumberStyle::pointDecimal(), NumberStyle::commaDecimal()}) {
            ASSERT_TRUE(valueOrSentence(parseNumber(text, style))) << text.toStdString();
            ASSERT_TRUE(valueOrSentence(parseAmount(text, style, Measure::Area, awg)));
            ASSERT_TRUE(valueOrSentence(parseMoney(text, style))) << text.toStdString();
            ASSERT_TRUE(valueOrSentence(parseMoney(text, style, krona)));
            ASSERT_TRUE(valueOrSentence(Rate::parse(text, style))) << text.toStdString();
            const Result<Amount> amount = parseAmount(text, style);
            ASSERT_TRUE(valueOrSentence(amount)) << text.toStdString();
            if (amount) {
                ++amounts;
                ASSERT_TRUE(std::isfinite(amount->si()));
                ASSERT_EQ(*parseAmount(printAmount(*amount), NumberStyle::pointDecimal()), *amount);
            }
        }
        ASSERT_TRUE(valueOrSentence(parseDate(text, kToday))) << text.toStdString();
        ASSERT_TRUE(valueOrSentence(parseIsoDate(text))) << text.toStdString();
        static_cast<void>(splitCurrentKind(text));
    }
    EXPECT_GT(amounts, 1000); // the pieces do come near
}

} // namespace ohmwright
