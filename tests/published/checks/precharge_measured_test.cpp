// SPDX-License-Identifier: GPL-3.0-or-later
// Source: first-order response (any text on circuits): 63.2 % after one time constant, 99.3 % after
// five; 360 V, 1000 µF, 47 Ω take 140.8 ms to 95 % and 216.4 ms to 99 %.
#include "core/checks/precharge_measured.h"
#include "tests/published/checks/reading.h"
#include "tests/support/chance.h"

#include <gtest/gtest.h>

namespace ohmwright {

namespace {

PrechargeMeasuredInputs measured(double link, double time)
{
    PrechargeMeasuredInputs in;
    in.record = {QStringLiteral("first tester"), QDate(2026, 5, 1), QStringLiteral("oscilloscope")};
    in.packVoltage = given(volts(360), QStringLiteral("pack voltage"));
    in.linkVoltage = given(volts(link), QStringLiteral("link voltage"));
    in.timeToThere = given(seconds(time), QStringLiteral("time"));
    in.resistance = given(ohms(47), QStringLiteral("precharge resistor"));
    in.linkCapacitance =
        given(Capacitance::fromSi(1e-3), QStringLiteral("capacitance of the link"));
    return in;
}

double computed(double link)
{
    return reading::step(judgePrechargeMeasured(measured(link, 0.14)),
                         QStringLiteral("time computed"));
}

} // namespace

// Tolerance 1e-3 for the times, last digit for the shares.
TEST(PrechargeMeasured, ComputesTheTextbookTimes)
{
    EXPECT_NEAR(computed(0.95 * 360), 0.1408, 1e-4);
    EXPECT_NEAR(computed(0.99 * 360), 0.2164, 1e-4);
    EXPECT_NEAR(computed(0.632 * 360), 0.047, 1e-4);
    EXPECT_NEAR(computed(0.993 * 360), 0.235, 2.5e-3); // 0.1 point of the share
}

TEST(PrechargeMeasured, HoldsTheReadingAndItsTime)
{
    EXPECT_EQ(judgePrechargeMeasured(measured(0.97 * 360, 0.165)).verdict, Verdict::Holds);
    EXPECT_EQ(judgePrechargeMeasured(measured(0.952 * 360, 0.143)).verdict, Verdict::Tight);
    EXPECT_EQ(judgePrechargeMeasured(measured(0.90 * 360, 0.108)).verdict, Verdict::Fails);
    EXPECT_EQ(judgePrechargeMeasured(measured(0.97 * 360, 0.30)).verdict, Verdict::Fails);
    EXPECT_EQ(judgePrechargeMeasured(measured(0.97 * 360, 0.08)).verdict, Verdict::Fails);
}

TEST(PrechargeMeasured, IsUnknownWhereTheTimeTellsNothingOrNobodySigned)
{
    EXPECT_EQ(judgePrechargeMeasured(measured(360, 1)).verdict, Verdict::Unknown);
    PrechargeMeasuredInputs in = measured(0.97 * 360, 0.165);
    in.record.on = QDate();
    EXPECT_EQ(judgePrechargeMeasured(in).verdict, Verdict::Unknown);
    in = measured(0.5 * 360, 0.165);
    in.resistance.value.reset();
    EXPECT_EQ(judgePrechargeMeasured(in).verdict, Verdict::Fails);
    EXPECT_EQ(judgePrechargeMeasured(measured(370, 0.1)).refusals.size(), 1);
}

// Worse: a lower link at the same deviation of the time.
TEST(PrechargeMeasured, NoVerdictIsBetterWhenTheLinkIsLower)
{
    Chance chance(95);
    for (int i = 0; i < 300; ++i) {
        const double share = chance.between(900, 999) / 1e3;
        const double lower = share - chance.between(1, 100) / 1e3;
        const double off = chance.between(80, 120) / 1e2;
        EXPECT_GE(
            judgePrechargeMeasured(measured(lower * 360, off * computed(lower * 360))).verdict,
            judgePrechargeMeasured(measured(share * 360, off * computed(share * 360))).verdict);
    }
}

} // namespace ohmwright
