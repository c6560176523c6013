// SPDX-License-Identifier: GPL-3.0-or-later
// Source: first-order response of a resistor and a capacitor, and half the supplied energy lost in
// the resistor whatever its resistance (Nilsson and Riedel, Electric Circuits). Figures worked from
// those formulas.
#include "core/checks/precharge.h"
#include "core/checks/worksheet.h"
#include "tests/published/checks/reading.h"
#include "tests/support/chance.h"

#include <gtest/gtest.h>

#include <cmath>

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
    EXPECT_EQ(judgePrecharge(textbook(seconds(0.235))).verdict, Verdict::Holds);
}

// Of the 5 % that may be left, 3.3 time constants leave 3.7 %, ten 0.0045 %: held to what is left,
// a link that is up is not within a few percent of its limit for ever.
TEST(Precharge, HoldsWhatIsLeftToRise)
{
    const QString row = QStringLiteral("left to rise when the contactor closes");
    const Check some = judgePrecharge(textbook(seconds(3.3 * 0.047)));
    ASSERT_NE(reading::comparison(some, row), nullptr);
    EXPECT_NEAR(reading::comparison(some, row)->margin, 1 - std::exp(-3.3) / 0.05, 1e-9);
    const Check up = judgePrecharge(textbook(seconds(0.47)));
    EXPECT_GT(reading::comparison(up, row)->margin, 0.99);
    EXPECT_EQ(up.verdict, Verdict::Holds);
}

// Worse: more resistance, capacitance or voltage, less time, a resistor for less.
TEST(Precharge, NoVerdictIsBetterWhenAnInputIsWorse)
{
    Chance chance(47);
    for (int i = 0; i < 500; ++i) {
        PrechargeInputs in = textbook(seconds(chance.between(50, 400) / 1e3));
        in.resistance.value = ohms(chance.between(10, 150));
        in.linkCapacitance.value = Capacitance::fromSi(chance.between(200, 2000) * 1e-6);
        in.pulseEnergy.value = joules(chance.between(20, 200));
        const Verdict before = judgePrecharge(in).verdict;
        const double worse = 1 + chance.between(1, 100) / 100.0;
        switch (chance.below(6)) {
        case 0:
            in.resistance.value = *in.resistance.value * worse;
            break;
        case 1:
            in.linkCapacitance.value = *in.linkCapacitance.value * worse;
            break;
        case 2:
            in.packVoltage.value = *in.packVoltage.value * worse;
            break;
        case 3:
            in.timeBeforeClosing.value = *in.timeBeforeClosing.value / worse;
            break;
        case 4:
            in.pulseEnergy.value = *in.pulseEnergy.value / worse;
            break;
        default:
            in.pulseEnergy.value.reset();
            if (before == Verdict::Fails)
                continue; // it may have failed by the pulse alone
        }
        EXPECT_GE(judgePrecharge(in).verdict, before);
    }
}

TEST(Precharge, IsUnknownWithoutTheCapacitanceAndNamesIt)
{
    PrechargeInputs in = textbook(seconds(0.2));
    in.linkCapacitance = notKnown<Capacitance>(QStringLiteral("capacitance of the link"));
    const Check check = judgePrecharge(in);
    EXPECT_EQ(check.verdict, Verdict::Unknown);
    EXPECT_EQ(check.sentence, QStringLiteral("Unknown for want of capacitance of the link."));
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
    EXPECT_EQ(check.loosened.front().published, showSi(0.05, u"%"));
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
