// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/quantity/money.h"
#include "tests/core/quantity/printers.h"

#include <gtest/gtest.h>

#include <limits>
#include <random>

namespace ohmwright {

namespace {

const NumberStyle kPoint = NumberStyle::pointDecimal();
const NumberStyle kComma = NumberStyle::commaDecimal();

Currency currency(QStringView code)
{
    return Currency::fromCode(code).value();
}

void expectMoney(QStringView text, const QString &printed, NumberStyle style = kPoint,
                 std::optional<Currency> fallback = std::nullopt)
{
    const Result<Money> money = parseMoney(text, style, fallback);
    ASSERT_TRUE(money) << text.toString().toStdString() << ": "
                       << money.error().sentence.toStdString();
    EXPECT_EQ(printMoney(*money), printed) << text.toString().toStdString();
}

void expectRefused(QStringView text, const QString &sentence,
                   std::optional<Currency> fallback = std::nullopt)
{
    const Result<Money> money = parseMoney(text, kPoint, fallback);
    ASSERT_FALSE(money) << text.toString().toStdString() << " was "
                        << printMoney(*money).toStdString();
    EXPECT_EQ(money.error().code, ProblemCode::BadInput);
    EXPECT_EQ(money.error().sentence, sentence);
}

} // namespace

TEST(ParseMoney, TakesWhatSellersWrite)
{
    expectMoney(u"€ 1.250,00", QStringLiteral("1250.00 EUR"));
    expectMoney(u"1250 EUR", QStringLiteral("1250.00 EUR"));
    expectMoney(u"1250,- €", QStringLiteral("1250.00 EUR"));
    expectMoney(u"CHF 5.–", QStringLiteral("5.00 CHF"));
    expectMoney(u"CHF 1’250.50", QStringLiteral("1250.50 CHF"));
    expectMoney(u"USD 12.50", QStringLiteral("12.50 USD"));
    expectMoney(u"usd 12.5", QStringLiteral("12.50 USD"));
    expectMoney(u"£3", QStringLiteral("3.00 GBP"));
    expectMoney(u"US$ 1,250.50", QStringLiteral("1250.50 USD"));
    expectMoney(u"$12.50 CAD", QStringLiteral("12.50 CAD"));
    expectMoney(u"1 250,00 Kč", QStringLiteral("1250.00 CZK"));
    expectMoney(u"12 zł", QStringLiteral("12.00 PLN"));
    expectMoney(u"JPY 12000", QStringLiteral("12000 JPY"));
    expectMoney(u"1.5 KWD", QStringLiteral("1.500 KWD"));
    expectMoney(u"-€5", QStringLiteral("-5.00 EUR"));
    expectMoney(u"€ -5", QStringLiteral("-5.00 EUR"));
    expectMoney(u"−5.20 CHF", QStringLiteral("-5.20 CHF"));
    expectMoney(u".50 €", QStringLiteral("0.50 EUR"));
    expectMoney(u"Rs.500", QStringLiteral("500.00 INR"), kPoint, currency(u"INR"));
    expectMoney(u"-0.00 EUR", QStringLiteral("0.00 EUR"));
}

TEST(ParseMoney, ReadsALoneSeparatorByStyle)
{
    expectMoney(u"1.250 EUR", QStringLiteral("1250.00 EUR"), kComma);
    expectMoney(u"1,250 EUR", QStringLiteral("1250.00 EUR"), kPoint);
    expectMoney(u"12,5 EUR", QStringLiteral("12.50 EUR"), kPoint);
}

TEST(ParseMoney, GivesABareNumberAndASharedSignTheFallback)
{
    expectMoney(u"12.50", QStringLiteral("12.50 SEK"), kPoint, currency(u"SEK"));
    expectMoney(u"kr 200", QStringLiteral("200.00 SEK"), kPoint, currency(u"SEK"));
    expectMoney(u"200 kr.", QStringLiteral("200.00 DKK"), kPoint, currency(u"DKK"));
    expectMoney(u"$12", QStringLiteral("12.00 AUD"), kPoint, currency(u"AUD"));
    expectMoney(u"Fr. 20", QStringLiteral("20.00 CHF"), kPoint, currency(u"CHF"));
    expectMoney(u"Fr.20", QStringLiteral("20.00 CHF"), kPoint, currency(u"CHF"));
    expectMoney(u"£3", QStringLiteral("3.00 GIP"), kPoint, currency(u"GIP"));
    expectMoney(u"£3", QStringLiteral("3.00 GBP"), kPoint, currency(u"EUR"));
    expectMoney(u"12 EUR", QStringLiteral("12.00 EUR"), kPoint, currency(u"SEK"));
}

TEST(ParseMoney, RefusesWithOnePlainSentence)
{
    expectRefused(u"", QStringLiteral("An amount of money is missing."));
    expectRefused(u"EUR", QStringLiteral("“EUR” is not an amount of money."));
    expectRefused(u"12", QStringLiteral("“12” does not say which currency."));
    expectRefused(u"kr 200", QStringLiteral("“kr 200” does not say which currency."));
    expectRefused(u"kr 200", QStringLiteral("“kr 200” does not say which currency."),
                  currency(u"EUR"));
    expectRefused(u"$5", QStringLiteral("“$5” does not say which currency."));
    expectRefused(u"¥5", QStringLiteral("“¥5” does not say which currency."));
    expectRefused(u"5 XYZ", QStringLiteral("“XYZ” is not a currency we know."));
    expectRefused(u"5 furlongs", QStringLiteral("“furlongs” is not a currency we know."));
    expectRefused(u"€5 USD", QStringLiteral("“€5 USD” names two currencies."));
    expectRefused(u"12.505 EUR", QStringLiteral("EUR has 2 decimals, but “12.505” has more."));
    expectRefused(u"12.5 JPY", QStringLiteral("JPY has no decimals, but “12.5” has more."));
    expectRefused(u"1.250 EUR", QStringLiteral("EUR has 2 decimals, but “1.250” has more."));
    expectRefused(u"1.2.3 EUR", QStringLiteral("“1.2.3” is not a number."));
    expectRefused(u"1e3 EUR", QStringLiteral("“1e3 EUR” is not an amount of money."));
    expectRefused(u"5 - 7 EUR", QStringLiteral("“- 7 EUR” is not a currency we know."));
    expectRefused(u"10000000000000.01 EUR",
                  QStringLiteral("“10000000000000.01 EUR” is more money than can be kept."));
    expectRefused(QString(QString(5000, u'9') + QStringLiteral(" EUR")),
                  u"“" + QString(40, u'9') + u"…” is more money than can be kept.");
}

TEST(ParseMoney, TakesUpToTenToTheFifteenMinorUnits)
{
    expectMoney(u"10000000000000.00 EUR", QStringLiteral("10000000000000.00 EUR"));
    expectMoney(u"-1000000000000000 JPY", QStringLiteral("-1000000000000000 JPY"));
}

TEST(PrintMoney, ReadsBackAsTheSameMoneyInEveryCurrency)
{
    std::mt19937_64 random(4217);
    std::uniform_int_distribution<std::int64_t> minor(-1'000'000'000'000'000,
                                                      1'000'000'000'000'000);
    for (const Currency &one : Currency::all()) {
        for (int i = 0; i < 200; ++i) {
            const std::int64_t small = static_cast<std::int64_t>(random() % 2001) - 1000;
            const Money money(i % 2 == 0 ? minor(random) : small, one);
            ASSERT_EQ(*parseMoney(printMoney(money), kPoint), money)
                << printMoney(money).toStdString();
            ASSERT_EQ(*parseMoney(printMoneyNumber(money), kPoint, one), money);
            ASSERT_EQ(*parseMoney(showMoney(money, kPoint), kPoint), money)
                << showMoney(money, kPoint).toStdString();
            ASSERT_EQ(*parseMoney(showMoney(money, kComma), kComma), money);
        }
    }
}

TEST(PrintMoney, PrintsEveryMinorUnit)
{
    EXPECT_EQ(printMoney({125000, currency(u"EUR")}), QStringLiteral("1250.00 EUR"));
    EXPECT_EQ(printMoney({-5, currency(u"EUR")}), QStringLiteral("-0.05 EUR"));
    EXPECT_EQ(printMoney({5, currency(u"JPY")}), QStringLiteral("5 JPY"));
    EXPECT_EQ(printMoney({5, currency(u"KWD")}), QStringLiteral("0.005 KWD"));
    EXPECT_EQ(printMoney({5, currency(u"CLF")}), QStringLiteral("0.0005 CLF"));
    EXPECT_EQ(printMoneyNumber({125000, currency(u"EUR")}), QStringLiteral("1250.00"));
    EXPECT_EQ(printMoney({std::numeric_limits<std::int64_t>::min(), currency(u"EUR")}),
              QStringLiteral("-92233720368547758.08 EUR"));
}

TEST(ShowMoney, IsGroupedInTheStyleAsked)
{
    EXPECT_EQ(showMoney({125000, currency(u"EUR")}, kComma),
              QStringLiteral("1\u202F250,00\u00A0EUR"));
    EXPECT_EQ(showMoney({-125000050, currency(u"USD")}, kPoint),
              QStringLiteral("−1\u202F250\u202F000.50\u00A0USD"));
    EXPECT_EQ(showMoney({12000, currency(u"JPY")}, kPoint), QStringLiteral("12\u202F000\u00A0JPY"));
}

} // namespace ohmwright
