// SPDX-License-Identifier: GPL-3.0-or-later
// Source: UN R100 rev. 2, 5.1.2.2 (less than 0.1 Ω at a current of at least 0.2 A; met where the
// connection is welded). Values on either side of the printed limits.
#include "core/checks/bonding.h"
#include "tests/published/checks/reading.h"
#include "tests/support/chance.h"

#include <gtest/gtest.h>

namespace ohmwright {

namespace {

Check bonding(double r, double i, bool signedFor = true)
{
    BondingInputs in;
    if (signedFor)
        in.record = {QStringLiteral("first tester"), QDate(2026, 5, 1), QStringLiteral("ohmmeter")};
    in.measured = given(ohms(r), QStringLiteral("resistance"));
    in.testCurrent = given(amperes(i), QStringLiteral("test current"));
    return judgeBonding(in);
}

} // namespace

TEST(Bonding, IsHeldStrictlyBelowATenthOfAnOhm)
{
    EXPECT_EQ(bonding(0.05, 1).verdict, Verdict::Holds);
    EXPECT_EQ(bonding(0.099, 0.2).verdict, Verdict::Tight);
    EXPECT_EQ(bonding(0.1, 0.2).verdict, Verdict::Fails);
    EXPECT_EQ(bonding(0.11, 0.2).verdict, Verdict::Fails);
}

TEST(Bonding, NeedsAFifthOfAnAmpere)
{
    EXPECT_EQ(bonding(0.05, 0.2).verdict, Verdict::Holds);
    EXPECT_EQ(bonding(0.05, 0.19).verdict, Verdict::Unknown);
    EXPECT_EQ(bonding(0.2, 0.001).verdict, Verdict::Fails);
}

TEST(Bonding, AWeldedJointMeetsItByConstruction)
{
    BondingInputs in;
    in.isWelded = true;
    EXPECT_EQ(judgeBonding(in).verdict, Verdict::Holds);
}

TEST(Bonding, IsUnknownWhenNobodySignedForItAndRefusesNonsense)
{
    EXPECT_EQ(bonding(0.05, 1, false).verdict, Verdict::Unknown);
    EXPECT_EQ(bonding(-0.05, 1).refusals.size(), 1);
}

// Worse: more resistance, less current.
TEST(Bonding, NoVerdictIsBetterWhenAnInputIsWorse)
{
    Chance chance(512);
    for (int i = 0; i < 300; ++i) {
        const double r = chance.between(0, 150) / 1e3;
        const double a = chance.between(1, 60) / 1e2;
        EXPECT_GE(bonding(r * 1.2, a).verdict, bonding(r, a).verdict);
        EXPECT_GE(bonding(r, a * 0.8).verdict, bonding(r, a).verdict);
    }
}

} // namespace ohmwright
