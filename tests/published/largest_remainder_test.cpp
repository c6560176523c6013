// SPDX-License-Identifier: GPL-3.0-or-later
// Sharing a sum by largest remainder (Hamilton's method).
#include "core/quantity/money.h"
#include "tests/core/quantity/printers.h"

#include <gtest/gtest.h>

namespace ohmwright {

namespace {

std::vector<std::int64_t> share(std::int64_t total, const std::vector<std::int64_t> &weights)
{
    std::vector<std::int64_t> minors;
    for (const Money share : shareOut(Money(total, Currency()), weights))
        minors.push_back(share.minor());
    return minors;
}

using Minors = std::vector<std::int64_t>;

} // namespace

// Source: the textbook case of weights 50, 30, 20; quotas for 7 are 3.5, 2.1 and 1.4 by arithmetic.
TEST(LargestRemainder, SevenByFiftyThirtyTwenty)
{
    EXPECT_EQ(share(7, {50, 30, 20}), Minors({4, 2, 1}));
}

// By arithmetic: quotas 333.33 each, the tie goes to the first.
TEST(LargestRemainder, FreightOverThreeEqualItems)
{
    EXPECT_EQ(share(1000, {1, 1, 1}), Minors({334, 333, 333}));
}

// By arithmetic: quotas 321.01, 1100.61 and 73.37.
TEST(LargestRemainder, FreightByPrice)
{
    EXPECT_EQ(share(1495, {35000, 120000, 8000}), Minors({321, 1101, 73}));
}

} // namespace ohmwright
