// SPDX-License-Identifier: GPL-3.0-or-later
// Sources: discharge of a capacitor through a resistor (any text on circuits: 36.8 % left after one
// time constant, 0.7 % after five); ISO 6469-3 (60 V DC, 30 V AC); ISO 6469-4:2015, 5.2.2 (less
// than 0.2 J); FMVSS 305 (1 s for connectors opened without tools).
#include "core/checks/discharge.h"
#include "core/checks/worksheet.h"
#include "tests/published/checks/reading.h"
#include "tests/support/chance.h"

#include <gtest/gtest.h>

#include <cmath>

namespace ohmwright {

namespace {

DischargeInputs link(double v, double farads, double bleed, double rating = 100)
{
    DischargeInputs in;
    in.start = given(volts(v), QStringLiteral("highest voltage"));
    in.capacitance = given(Capacitance::fromSi(farads), QStringLiteral("capacitance of the link"));
    in.bleed = given(ohms(bleed), QStringLiteral("bleed resistor"));
    in.bleedRating = given(watts(rating), QStringLiteral("power the bleed takes"));
    return in;
}

ActiveDischarge active(double r, double delay, double pulse)
{
    return {given(ohms(r), QStringLiteral("discharge resistor")),
            given(seconds(delay), QStringLiteral("delay")),
            given(joules(pulse), QStringLiteral("pulse energy"))};
}

Verdict yVerdict(double v, double farads)
{
    DischargeInputs in = link(v, 1e-6, 1e5, 1000);
    in.yCapacitance = given(Capacitance::fromSi(farads), QStringLiteral("Y-capacitors"));
    const Check check = judgeDischarge(in);
    const Comparison *y =
        reading::comparison(check, QStringLiteral("energy in the Y-capacitors, to be below"));
    return y ? y->verdict : Verdict::Unknown;
}

} // namespace

// One time constant leaves 36.8 %, five 0.7 %. Tolerance: last digit.
TEST(Discharge, TakesATimeConstantToWhatTheTextbooksPrint)
{
    const Resistance r = ohms(10e3);
    const Capacitance c = Capacitance::fromSi(1e-3); // 10 s
    EXPECT_NEAR(dischargeTime(r, c, volts(100), volts(36.8)).si(), 10, 0.01);
    EXPECT_NEAR(dischargeTime(r, c, volts(100), volts(0.674)).si(), 50, 0.01);
    EXPECT_EQ(dischargeTime(r, c, volts(50), volts(60)).si(), 0);
}

// ½·C·U² at 400 V: 1.0 / 2.5 / 3.0 µF store 0.080 / 0.200 / 0.240 J, of which only the first is
// less than 0.2 J; at 800 V the capacitance has to be below 0.625 µF. Tolerance 1e-9.
TEST(Discharge, YCapacitorsAreHeldStrictlyBelowAFifthOfAJoule)
{
    EXPECT_NEAR(storedEnergy(Capacitance::fromSi(1e-6), volts(400)).si(), 0.080, 1e-10);
    EXPECT_NEAR(storedEnergy(Capacitance::fromSi(2.5e-6), volts(400)).si(), 0.200, 1e-10);
    EXPECT_NEAR(storedEnergy(Capacitance::fromSi(3e-6), volts(400)).si(), 0.240, 1e-10);
    EXPECT_EQ(yVerdict(400, 1.0e-6), Verdict::Holds);
    EXPECT_EQ(yVerdict(400, 2.5e-6), Verdict::Fails);
    EXPECT_EQ(yVerdict(400, 3.0e-6), Verdict::Fails);
    EXPECT_EQ(yVerdict(800, 0.6249e-6), Verdict::Tight);
    EXPECT_EQ(yVerdict(800, 0.625e-6), Verdict::Fails);
}

// 400 V, 1 mF, 20 kΩ: 20 s · ln(400/60) = 37.94 s, 8 W. Worked from the formula.
TEST(Discharge, GivesTheBleedsTimeAndItsLoss)
{
    const Check check = judgeDischarge(link(400, 1e-3, 20e3, 10));
    EXPECT_NEAR(reading::step(check, QStringLiteral("time by the bleed alone")), 37.94, 0.005);
    EXPECT_NEAR(reading::step(check, QStringLiteral("loss in the bleed while live")), 8, 1e-9);
    EXPECT_EQ(check.verdict, Verdict::Holds);
    EXPECT_EQ(judgeDischarge(link(400, 1e-3, 20e3, 7)).verdict, Verdict::Fails);
    EXPECT_EQ(judgeDischarge(link(400, 1e-3, 40e3, 10)).verdict, Verdict::Fails);
    EXPECT_TRUE(check.afterwards.startsWith(QStringLiteral("Then measure")));
}

TEST(Discharge, NamesItsTimesAsDesignChoices)
{
    const Check check = judgeDischarge(link(400, 1e-3, 20e3));
    ASSERT_FALSE(check.comparisons.empty());
    EXPECT_EQ(check.comparisons.front().limitFrom,
              QStringLiteral("design choice, no published source"));
}

TEST(Discharge, AnActiveDischargeWorksAfterItsDelayAndBesideTheBleed)
{
    DischargeInputs in = link(400, 1e-3, 20e3);
    in.active = active(1e3, 0.5, 100);
    const Check check = judgeDischarge(in);
    const double left = 400 * std::exp(-0.5 / 20);
    const double both = 1 / (1 / 1e3 + 1 / 20e3);
    EXPECT_NEAR(reading::step(check, QStringLiteral("time by active discharge")),
                0.5 + both * 1e-3 * std::log(left / 60), 5e-4);
    EXPECT_EQ(check.verdict, Verdict::Holds);
    in.active = active(1e3, 0.5, 50);
    EXPECT_EQ(judgeDischarge(in).verdict, Verdict::Fails);
}

TEST(Discharge, AConnectorOpenedByHandHasOneSecond)
{
    DischargeInputs in = link(400, 1e-3, 20e3);
    in.active = active(300, 0.1, 100);
    EXPECT_EQ(judgeDischarge(in).verdict, Verdict::Holds);
    in.opensWithoutTools = true;
    EXPECT_EQ(judgeDischarge(in).verdict, Verdict::Holds); // 0.1 s + 0.3 s · ln(6.67) = 0.66 s
    in.active = active(600, 0.1, 100);
    EXPECT_EQ(judgeDischarge(in).verdict, Verdict::Fails);
}

TEST(Discharge, WithoutAnyPathItStaysCharged)
{
    DischargeInputs in = link(400, 1e-3, 20e3);
    in.bleed.reset();
    EXPECT_EQ(judgeDischarge(in).verdict, Verdict::Fails);
    in.start.value = volts(48);
    EXPECT_EQ(judgeDischarge(in).verdict, Verdict::Holds);
}

TEST(Discharge, AlternatingCircuitsMayBeLeftAtTheirPeakAndAreHeldToThirtyVolts)
{
    DischargeInputs in = link(230, 10e-6, 1e5);
    in.current = CurrentKind::Ac;
    const Check check = judgeDischarge(in);
    EXPECT_NEAR(reading::step(check, QStringLiteral("left at its peak")), 325, 0.5);
    EXPECT_NEAR(reading::step(check, QStringLiteral("time by the bleed alone")),
                std::log(325.27 / 30), 5e-4);
}

TEST(Discharge, ALoosenedTimeOrVoltageStandsBesideThePublished)
{
    DischargeInputs in = link(400, 1e-3, 20e3);
    in.touchDc.own = volts(120);
    in.touchDc.reason = QStringLiteral("behind a lid with four bolts");
    Check check = judgeDischarge(in);
    ASSERT_EQ(check.loosened.size(), 1U);
    EXPECT_EQ(check.publishedVerdict, Verdict::Holds);
    in.bleed->value = ohms(40e3);
    check = judgeDischarge(in);
    EXPECT_EQ(check.verdict, Verdict::Holds);
    EXPECT_EQ(check.publishedVerdict, Verdict::Fails);
}

TEST(Discharge, IsUnknownWithoutTheCapacitanceAndRefusesNonsense)
{
    DischargeInputs in = link(400, 1e-3, 20e3);
    in.capacitance = notKnown<Capacitance>(QStringLiteral("capacitance of the link"));
    EXPECT_EQ(judgeDischarge(in).verdict, Verdict::Unknown);
    EXPECT_EQ(judgeDischarge(link(400, 1e-3, -20e3)).refusals.size(), 1);
}

// Worse: higher voltage, more capacitance, a slower bleed, a weaker one, a later or weaker active
// discharge.
TEST(Discharge, NoVerdictIsBetterWhenAnInputIsWorse)
{
    Chance chance(60);
    for (int i = 0; i < 400; ++i) {
        DischargeInputs in = link(chance.between(70, 800), chance.between(1, 3000) * 1e-6,
                                  chance.between(5, 80) * 1e3, chance.between(1, 60));
        if (chance.oneIn(2))
            in.active = active(chance.between(50, 2000), chance.between(0, 20) / 10.0,
                               chance.between(10, 300));
        const Verdict before = judgeDischarge(in).verdict;
        switch (chance.below(5)) {
        case 0:
            in.start.value = *in.start.value * 1.4;
            break;
        case 1:
            in.capacitance.value = *in.capacitance.value * 1.4;
            break;
        case 2:
            in.bleedRating.value = *in.bleedRating.value * 0.5;
            break;
        case 3:
            if (in.active)
                in.active->delay.value = *in.active->delay.value + seconds(1);
            break;
        default:
            if (in.active)
                in.active->pulseEnergy.value = *in.active->pulseEnergy.value * 0.5;
        }
        EXPECT_GE(judgeDischarge(in).verdict, before);
    }
}

} // namespace ohmwright
