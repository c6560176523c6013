// SPDX-License-Identifier: GPL-3.0-or-later
// Source: first-order response of a resistor and a capacitor, and half the supplied energy lost in
// the resistor whatever its resistance (any text on circuits). Figures worked from those formulas.
#include "core/checks/precharge.h"
#include "core/checks/worksheet.h"
#include "tests/published/checks/reading.h"

#include <gtest/gtest.h>

namespace ohmwright {

namespace {

PrechargeInputs textbook(Duration wait)
{
    PrechargeInputs in;
    in.packVoltage = given(volts(360), QStringLiteral("pack voltage"));
    in.linkCapacitance =
        given(Capacitance::fromSi(1e-3), QStringLiteral("capacitance of the link"));
    in.resistance = given(ohms(47), QStringLiteral("precharge resistor"));
    in.pulseEnergy = given(joules(100), QStringLiteral("pulse energy of the resistor"));
    in.timeBeforeClosing = given(wait, QStringLiteral("time before closing"));
    return in;
}

} // namespace

// 360 V, 1000 µF, 47 Ω: τ 47 ms, t95 140.8 ms, peak 7.660 A, 64.8 J. Tolerance: last digit.
TEST(Precharge, GivesTheTextbookFigures)
{
    const Check check = judgePrecharge(textbook(seconds(0.2)));
    EXPECT_NEAR(reading::step(check, QStringLiteral("time constant")), 47e-3, 5e-6);
    EXPECT_NEAR(reading::step(check, QStringLiteral("time the threshold takes")), 140.8e-3, 5e-5);
    EXPECT_NEAR(reading::step(check, QStringLiteral("peak current")), 7.660, 5e-4);
    EXPECT_NEAR(reading::step(check, QStringLiteral("heat in the resistor")), 64.8, 0.05);
}

// 63.2 % after one time constant, 99.3 % after five.
TEST(Precharge, ReachesWhatTheTextbooksPrintAfterOneAndFiveTimeConstants)
{
    const QString reached = QStringLiteral("reached when the contactor closes");
    EXPECT_NEAR(reading::step(judgePrecharge(textbook(seconds(0.047))), reached), 0.632, 1e-3);
    EXPECT_NEAR(reading::step(judgePrecharge(textbook(seconds(0.235))), reached), 0.993, 1e-3);
    EXPECT_EQ(judgePrecharge(textbook(seconds(0.047))).verdict, Verdict::Fails);
    EXPECT_EQ(judgePrecharge(textbook(seconds(0.235))).verdict, Verdict::Tight);
}

TEST(Precharge, IsUnknownWithoutTheCapacitanceAndNamesIt)
{
    PrechargeInputs in = textbook(seconds(0.2));
    in.linkCapacitance = notKnown<Capacitance>(QStringLiteral("capacitance of the link"));
    const Check check = judgePrecharge(in);
    EXPECT_EQ(check.verdict, Verdict::Unknown);
    EXPECT_EQ(check.sentence, QStringLiteral("Unknown: not known is capacitance of the link."));
}

TEST(Precharge, SaysOnWhoseWordItRests)
{
    PrechargeInputs in = textbook(seconds(0.235));
    in.linkCapacitance.origin.evidence = Evidence::Seller;
    EXPECT_TRUE(judgePrecharge(in).sentence.endsWith(
        QStringLiteral("resting on a seller's word for capacitance of the link.")));
}

TEST(Precharge, ShowsThePublishedVerdictBesideALoosenedOne)
{
    PrechargeInputs in = textbook(seconds(0.1)); // 88.1 % reached
    in.reached.own = 0.80;
    in.reached.reason = QStringLiteral("the inverter's maker allows it");
    const Check check = judgePrecharge(in);
    EXPECT_EQ(check.verdict, Verdict::Holds);
    EXPECT_EQ(check.publishedVerdict, Verdict::Fails);
    ASSERT_EQ(check.loosened.size(), 1U);
    EXPECT_EQ(check.loosened.front().published, showSi(0.95, u"%"));
}

TEST(Precharge, RefusesWhatPhysicsDoesNotAllow)
{
    PrechargeInputs in = textbook(seconds(0.2));
    in.linkCapacitance.value = Capacitance::fromSi(-1e-3);
    const Check check = judgePrecharge(in);
    EXPECT_EQ(check.verdict, Verdict::Unknown);
    ASSERT_EQ(check.refusals.size(), 1);
    EXPECT_TRUE(
        check.refusals.front().startsWith(QStringLiteral("capacitance of the link cannot")));
}

} // namespace ohmwright
