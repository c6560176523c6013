// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/quantity/money.h"
#include "tests/core/quantity/printers.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cstdlib>
#include <limits>
#include <numeric>
#include <random>

namespace ohmwright {

namespace {

constexpr std::int64_t kMost = std::numeric_limits<std::int64_t>::max();
constexpr std::int64_t kLeast = std::numeric_limits<std::int64_t>::min();

Currency currency(QStringView code)
{
    return Currency::fromCode(code).value();
}

Money euro(std::int64_t cents)
{
    return {cents, currency(u"EUR")};
}

std::vector<std::int64_t> minors(const std::vector<Money> &shares)
{
    std::vector<std::int64_t> minor;
    minor.reserve(shares.size());
    for (const Money share : shares)
        minor.push_back(share.minor());
    return minor;
}

std::vector<Money> share(std::int64_t total, std::vector<std::int64_t> weights)
{
    return shareOut(euro(total), weights);
}

using Minors = std::vector<std::int64_t>;

} // namespace

TEST(Currency, IsFoundByItsCodeOnly)
{
    EXPECT_EQ(currency(u"USD").code(), QStringLiteral("USD"));
    EXPECT_EQ(Currency().code(), QStringLiteral("EUR"));
    EXPECT_EQ(Currency(), currency(u"EUR"));
    for (const QStringView code : {u"", u"EU", u"EURO", u"eur", u"XXX", u"XAU", u"XTS", u"DEM",
                                   u"AAA", u"ZZZ", u"€", u"ÉUR"})
        EXPECT_FALSE(Currency::fromCode(code)) << code.toString().toStdString();
}

TEST(Currency, AllAreInOrderOfTheirCodesAndFoundAgain)
{
    const std::vector<Currency> all = Currency::all();
    for (const Currency &one : all)
        EXPECT_EQ(Currency::fromCode(one.code()), one);
    EXPECT_TRUE(std::is_sorted(all.begin(), all.end(), [](const Currency &a, const Currency &b) {
        return a.code() < b.code();
    }));
}

TEST(Money, AddsAndSubtractsWithinItsCurrency)
{
    EXPECT_EQ(euro(250) + euro(-300), euro(-50));
    EXPECT_EQ(euro(250) - euro(300), euro(-50));
    EXPECT_EQ(-euro(250), euro(-250));
    EXPECT_EQ(euro(250) * 3, euro(750));
    Money sum = Money::zero(currency(u"EUR"));
    EXPECT_TRUE(sum.isZero());
    sum += euro(5);
    sum -= euro(2);
    EXPECT_EQ(sum, euro(3));
    EXPECT_LT(euro(1), euro(2));
    EXPECT_GE(euro(2), euro(2));
    EXPECT_NE(euro(1), Money(1, currency(u"USD")));
}

TEST(MoneyDeathTest, CurrenciesNeverMixAndSumsNeverWrap)
{
    const Money dollar(1, currency(u"USD"));
    EXPECT_DEATH(static_cast<void>(euro(1) + dollar), "two currencies");
    EXPECT_DEATH(static_cast<void>(euro(1) - dollar), "two currencies");
    EXPECT_DEATH(static_cast<void>(euro(1) < dollar), "two currencies");
    EXPECT_DEATH(static_cast<void>(euro(kMost) + euro(1)), "64 bits");
    EXPECT_DEATH(static_cast<void>(euro(kLeast) - euro(1)), "64 bits");
    EXPECT_DEATH(static_cast<void>(euro(kMost) * 2), "64 bits");
    EXPECT_DEATH(static_cast<void>(-euro(kLeast)), "64 bits");
    EXPECT_DEATH(static_cast<void>(share(100, {1, -1})), "negative");
}

TEST(ShareOut, GivesTiesToTheEarlier)
{
    EXPECT_EQ(minors(share(1000, {1, 1, 1})), Minors({334, 333, 333}));
    EXPECT_EQ(minors(share(2, {1, 1, 1})), Minors({1, 1, 0}));
    EXPECT_EQ(minors(share(-2, {1, 1, 1})), Minors({-1, -1, 0}));
}

TEST(ShareOut, SharesEquallyWhenNothingHasWeight)
{
    EXPECT_EQ(minors(share(5, {0, 0})), Minors({3, 2}));
    EXPECT_EQ(minors(share(0, {0, 0})), Minors({0, 0}));
    EXPECT_TRUE(share(5, {}).empty());
}

TEST(ShareOut, GivesNothingToAWeightOfZero)
{
    EXPECT_EQ(minors(share(7, {0, 1, 0, 2})), Minors({0, 2, 0, 5}));
}

TEST(ShareOut, IsExactAtTheEndsOfItsRange)
{
    EXPECT_EQ(minors(share(kMost, {kMost, kMost})), Minors({kMost / 2 + 1, kMost / 2}));
    EXPECT_EQ(minors(share(kLeast, {5})), Minors({kLeast}));
    EXPECT_EQ(minors(share(kLeast, {kMost, kMost})), Minors({kLeast / 2, kLeast / 2}));
}

// With small numbers the quota is exact in plain integers: share * sum against total * weight.
TEST(ShareOut, AddsUpAndStaysWithinOneMinorUnitOfTheQuota)
{
    std::mt19937_64 random(99);
    for (int round = 0; round < 20000; ++round) {
        Minors weights(1 + random() % 12);
        for (std::int64_t &weight : weights)
            weight = random() % 5 == 0 ? 0 : static_cast<std::int64_t>(random() % 100000);
        if (std::all_of(weights.begin(), weights.end(), [](auto w) { return w == 0; }))
            weights[0] = 1;
        const std::int64_t sum = std::accumulate(weights.begin(), weights.end(), std::int64_t(0));
        const std::int64_t total = static_cast<std::int64_t>(random() % 2000001) - 1000000;

        const Minors shares = minors(share(total, weights));
        ASSERT_EQ(shares.size(), weights.size());
        ASSERT_EQ(std::accumulate(shares.begin(), shares.end(), std::int64_t(0)), total);
        for (std::size_t i = 0; i < shares.size(); ++i) {
            ASSERT_LT(std::abs(shares[i] * sum - total * weights[i]), sum);
            // equal weights: the earlier has no less, by at most one minor unit
            for (std::size_t j = i + 1; j < shares.size(); ++j) {
                if (weights[i] == weights[j]) {
                    ASSERT_GE(std::abs(shares[i]), std::abs(shares[j]));
                    ASSERT_LE(std::abs(shares[i] - shares[j]), 1);
                }
            }
        }
    }
}

} // namespace ohmwright
