// SPDX-License-Identifier: GPL-3.0-or-later
// Sources: TA-I Technology, thin film chip fuse, document TCP-XXOS006H, page 10 of 17 (1.5 A at
// 0.7 and 0.95 asks for 2.255 A; read); Peukert's law as two teaching texts print it, both read:
// 100 Ah and exponent 1.2 give 5 A for 14.5 h (electrotechnik.net; I^k·t = C, which is the rate of
// 1 A), and 220 Ah at the 100 h rate, exponent 1.2, 5 A for "a bit over 31 hours", 10 A for 13.5 h
// (sailnet.com).
#include "core/checks/low_voltage.h"
#include "core/checks/worksheet.h"
#include "tests/published/checks/reading.h"
#include "tests/support/chance.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

namespace ohmwright {

namespace {

LowVoltageLoad load(const QString &name, double power, double duty, bool inReserve = false)
{
    return {name, given(watts(power), QString(QStringLiteral("power of ") + name)),
            given(duty, QString(QStringLiteral("duty of ") + name)), inReserve};
}

LowVoltageInputs van()
{
    LowVoltageInputs in;
    in.loads = {load(QStringLiteral("headlights"), 110, 0.5, true),
                load(QStringLiteral("vacuum pump"), 180, 0.1, true),
                load(QStringLiteral("blower"), 200, 0.4)};
    in.fuses = {{QStringLiteral("F1"),
                 {0, 1},
                 given(amperes(40), QStringLiteral("fuse F1")),
                 given(amperes(50), QStringLiteral("cable behind F1"))},
                {QStringLiteral("F2"),
                 {2},
                 given(amperes(25), QStringLiteral("fuse F2")),
                 given(amperes(30), QStringLiteral("cable behind F2"))}};
    in.systemVoltage = given(volts(13.8), QStringLiteral("voltage of the 12 V side"));
    in.converterCurrent = given(amperes(60), QStringLiteral("converter's current"));
    in.batteryVoltage = given(volts(12), QStringLiteral("battery's voltage"));
    in.batteryCapacity = given(Charge::fromSi(44 * 3600), QStringLiteral("battery's capacity"));
    in.usableShare = given(0.5, QStringLiteral("usable share"));
    in.peukert = given(1.0, QStringLiteral("Peukert's exponent")); // lithium
    return in;
}

} // namespace

// Printed 2.255 A, tolerance 0.001.
TEST(LowVoltage, AsksForThePrintedFuse)
{
    LowVoltageInputs in = van();
    in.loads = {load(QStringLiteral("lamp"), 1.5 * 13.8, 1, true)};
    in.fuses = {{QStringLiteral("F1"),
                 {0},
                 given(amperes(2.5), QStringLiteral("fuse F1")),
                 given(amperes(5), QStringLiteral("cable"))}};
    in.fuseTemperatureFactor = given(0.95, QStringLiteral("temperature factor"));
    in.fuseShare.own = 0.7;
    const Check check = judgeLowVoltage(in);
    EXPECT_NEAR(reading::step(check, QStringLiteral("F1: rating its loads ask for")), 2.255, 1e-3);
    EXPECT_NE(check.verdict, Verdict::Fails);
    in.fuses[0].rating.value = amperes(2);
    EXPECT_EQ(judgeLowVoltage(in).verdict, Verdict::Fails);
}

// Worked: 20 h · (100/(10·20))^1.2 = 8.706 h; at the rated current the rated time, whatever the
// exponent.
TEST(LowVoltage, DischargesAsPeukertHasIt)
{
    const Charge capacity = Charge::fromSi(100 * 3600);
    const Duration rated = seconds(20 * 3600);
    // 100 Ah taken as I^k·t in A and h: the current is 1 A over 100 h. Printed 14.5 h.
    const Duration hundred = seconds(100 * 3600);
    EXPECT_NEAR(reserveTime(capacity, 1, amperes(5), 1.2, hundred).si() / 3600, 14.5, 0.05);
    // 220 Ah likewise: printed "a bit over 31" and 13.5 h, the powers rounded to 7 and 16 there
    const Charge larger = Charge::fromSi(220 * 3600);
    const Duration asOneAmpere = seconds(220 * 3600);
    EXPECT_NEAR(reserveTime(larger, 1, amperes(5), 1.2, asOneAmpere).si() / 3600, 31.5, 0.5);
    EXPECT_NEAR(reserveTime(larger, 1, amperes(10), 1.2, asOneAmpere).si() / 3600, 13.75, 0.25);
    EXPECT_NEAR(reserveTime(capacity, 1, amperes(10), 1.2, rated).si() / 3600, 8.7055, 1e-4);
    EXPECT_NEAR(reserveTime(capacity, 1, amperes(5), 1.3, rated).si(), rated.si(), 1e-6);
    EXPECT_NEAR(reserveTime(capacity, 0.5, amperes(10), 1, seconds(1)).si(), 5 * 3600, 1e-6);
}

// (55 + 18 + 80)/13.8 = 11.09 A; 490/13.8 = 35.51 A; 44 Ah · 50 % · 12 V/73 W = 3.616 h.
TEST(LowVoltage, AddsLoadsAndReserve)
{
    const Check check = judgeLowVoltage(van());
    EXPECT_NEAR(reading::step(check, QStringLiteral("mean current of all loads")), 11.09, 5e-3);
    EXPECT_NEAR(reading::step(check, QStringLiteral("everything on at once, at its highest")),
                35.51, 5e-3);
    EXPECT_NEAR(reading::step(check, QStringLiteral("reserve")), 3.616 * 3600, 4);
    EXPECT_EQ(check.verdict, Verdict::Holds);
}

// Peaks of 400 W and 60 W (below its 110 W, so that these count) beside 200 W: 710 W/13.8 V = 51.45
// A for the converter; F1 sees (110 + 400)/13.8 = 36.96 A of its 40 A. The reserve goes by the
// means.
TEST(LowVoltage, HoldsConverterAndFusesToTheHighestOfAllAtOnce)
{
    LowVoltageInputs in = van();
    in.loads[0].peak = given(watts(60), QStringLiteral("peak of the headlights"));
    in.loads[1].peak = given(watts(400), QStringLiteral("peak of the vacuum pump"));
    const Check check = judgeLowVoltage(in);
    const QString all = QStringLiteral("everything on at once, of the converter");
    ASSERT_NE(reading::comparison(check, all), nullptr);
    EXPECT_NEAR(reading::si(reading::comparison(check, all)->value), 51.45, 5e-3);
    const QString fuse = QStringLiteral("F1: loads at their highest");
    ASSERT_NE(reading::comparison(check, fuse), nullptr);
    EXPECT_NEAR(reading::si(reading::comparison(check, fuse)->value), 36.96, 5e-3);
    EXPECT_EQ(reading::comparison(check, QStringLiteral("F2: loads at their highest")), nullptr);
    EXPECT_NEAR(reading::step(check, QStringLiteral("reserve")), 3.616 * 3600, 4);
    in.converterCurrent.value = amperes(50); // 11 A on average
    EXPECT_EQ(judgeLowVoltage(in).verdict, Verdict::Fails);
    in.converterCurrent.value = amperes(60);
    in.loads[1].peak->value = watts(450); // 40.6 A
    EXPECT_EQ(judgeLowVoltage(in).verdict, Verdict::Fails);
    in.loads[1].peak = notKnown<Power>(QStringLiteral("peak of the vacuum pump"));
    EXPECT_EQ(judgeLowVoltage(in).verdict, Verdict::Unknown);
}

// 20 h · ½ · (44/(6.083·20))^1.2 = 2.952 h, by hand; the exponent is told as the assumption it is.
TEST(LowVoltage, SaysThatPeukertsExponentIsAssumed)
{
    LowVoltageInputs in = van();
    in.peukert = LowVoltageInputs().peukert;
    EXPECT_EQ(judgeLowVoltage(in).unknowns.size(), 1); // the time the capacity is rated at
    in.ratedTime = given(seconds(20 * 3600), QStringLiteral("rated time"));
    const Check check = judgeLowVoltage(in);
    EXPECT_NEAR(reading::step(check, QStringLiteral("reserve")),
                20 * 3600 * 0.5 * std::pow(44 / (73.0 / 12 * 20), 1.2), 5);
    const auto told = std::ranges::find_if(
        check.inputs, [](const CheckInput &input) { return input.symbol == QStringLiteral("k"); });
    ASSERT_NE(told, check.inputs.end());
    EXPECT_EQ(told->origin.evidence, Evidence::Assumed);
    EXPECT_TRUE(told->shown.startsWith(QStringLiteral("1.2")));
    EXPECT_FALSE(told->origin.source.isEmpty());
}

// 12 V/8 mΩ = 1.5 kA.
TEST(LowVoltage, HoldsFusesToTheBatterysShortCircuitOnceBothAreTold)
{
    LowVoltageInputs in = van();
    const QString row = QStringLiteral("F1: short circuit to break");
    in.fuses[0].breaking = given(amperes(1000), QStringLiteral("breaking capacity of F1"));
    in.fuses[1].breaking = given(amperes(3000), QStringLiteral("breaking capacity of F2"));
    EXPECT_EQ(reading::comparison(judgeLowVoltage(in), row), nullptr); // nobody asked
    EXPECT_EQ(judgeLowVoltage(in).verdict, Verdict::Holds);
    in.innerResistance = given(ohms(0.008), QStringLiteral("resistance of the battery"));
    const Check check = judgeLowVoltage(in);
    ASSERT_NE(reading::comparison(check, row), nullptr);
    EXPECT_NEAR(reading::si(reading::comparison(check, row)->value), 1500, 0.5);
    EXPECT_EQ(check.verdict, Verdict::Fails);
    in.fuses[0].breaking.value = amperes(2000);
    EXPECT_EQ(judgeLowVoltage(in).verdict, Verdict::Holds);
    in.shortCircuit = given(amperes(2500), QStringLiteral("short circuit, by the battery's sheet"));
    EXPECT_EQ(judgeLowVoltage(in).verdict, Verdict::Fails);
    in.shortCircuit = notKnown<Current>(QStringLiteral("short circuit, by the battery's sheet"));
    EXPECT_EQ(judgeLowVoltage(in).unknowns,
              QStringList(QStringLiteral("short circuit, by the battery's sheet")));
}

// A blade fuse breaks 1 kA (makers' sheets print it; ISO 8820-3, from memory): 12 V/8 mΩ = 1.5 kA
// at the battery is too much for it, 12 V/16 mΩ = 750 A behind its leads is not.
TEST(LowVoltage, AFuseThatNobodyKnowsToBreakTheShortCircuitIsNotPassed)
{
    LowVoltageInputs in = van();
    in.innerResistance = given(ohms(0.008), QStringLiteral("resistance of the battery"));
    in.fuses[0].breaking = given(amperes(2000), QStringLiteral("breaking capacity of F1"));
    EXPECT_EQ(judgeLowVoltage(in).verdict, Verdict::Unknown);
    EXPECT_EQ(judgeLowVoltage(in).unknowns, QStringList(QStringLiteral("breaking capacity of F2")));
    in.fuses[1].breaking = given(amperes(1000), QStringLiteral("breaking capacity of F2"));
    EXPECT_EQ(judgeLowVoltage(in).verdict, Verdict::Fails);
    in.fuses[1].loop = given(ohms(0.016), QStringLiteral("loop of F2"));
    const Check check = judgeLowVoltage(in);
    EXPECT_EQ(check.verdict, Verdict::Holds) << check.sentence.toStdString();
    const auto *row = reading::comparison(check, QStringLiteral("F2: short circuit to break"));
    ASSERT_NE(row, nullptr);
    EXPECT_NEAR(reading::si(row->value), 750, 0.5);
    in.fuses[1].loop = notKnown<Resistance>(QStringLiteral("loop of F2"));
    EXPECT_EQ(judgeLowVoltage(in).verdict, Verdict::Unknown);
}

TEST(LowVoltage, AFuseAboveItsCableFailsWhateverElseIsNotKnown)
{
    LowVoltageInputs in = van();
    in.batteryCapacity = notKnown<Charge>(QStringLiteral("battery's capacity"));
    EXPECT_EQ(judgeLowVoltage(in).verdict, Verdict::Unknown);
    in.fuses[1].cable.value = amperes(16);
    const Check check = judgeLowVoltage(in);
    EXPECT_EQ(check.verdict, Verdict::Fails);
    EXPECT_EQ(check.unknowns, QStringList(QStringLiteral("battery's capacity")));
}

TEST(LowVoltage, AFuseOfTheSupplyIsHeldToItsCableAlone)
{
    LowVoltageInputs in = van();
    const Verdict before = judgeLowVoltage(in).verdict;
    in.fuses.push_back({QStringLiteral("F3"),
                        {},
                        given(amperes(100), QStringLiteral("fuse F3")),
                        given(amperes(150), QStringLiteral("cable behind F3"))});
    const Check check = judgeLowVoltage(in);
    EXPECT_EQ(check.verdict, before);
    EXPECT_EQ(reading::comparison(check, QStringLiteral("F3: load of the rating")), nullptr);
    in.fuses.back().cable.value = amperes(80);
    EXPECT_EQ(judgeLowVoltage(in).verdict, Verdict::Fails);
}

TEST(LowVoltage, ALoadWithoutAFuseAndNoneForTheReserveAreDoubts)
{
    LowVoltageInputs in = van();
    in.fuses.pop_back();
    EXPECT_EQ(judgeLowVoltage(in).sentence, QStringLiteral("Unknown: No fuse is told for blower."));
    in = van();
    for (LowVoltageLoad &l : in.loads)
        l.inReserve = false;
    EXPECT_EQ(judgeLowVoltage(in).verdict, Verdict::Unknown);
    in = van();
    in.usableShare.value = 1.5;
    EXPECT_EQ(judgeLowVoltage(in).refusals.size(), 1);
}

// Worse: more power, more duty, a smaller converter, battery, cable.
TEST(LowVoltage, ScalesAndNeverJudgesWorseInputsBetter)
{
    Chance chance(11);
    for (int round = 0; round < 200; ++round) {
        LowVoltageInputs in = van();
        in.converterCurrent.value = amperes(chance.between(8, 80));
        in.batteryCapacity.value = Charge::fromSi(chance.between(4, 60) * 3600.0);
        in.fuses[0].cable.value = amperes(chance.between(25, 60));
        const Check check = judgeLowVoltage(in);
        LowVoltageInputs twice = in;
        for (LowVoltageLoad &l : twice.loads)
            l.power.value = *l.power.value * 2.0;
        const QString mean = QStringLiteral("mean current of all loads");
        EXPECT_NEAR(reading::step(judgeLowVoltage(twice), mean), 2 * reading::step(check, mean),
                    0.02);
        EXPECT_GE(judgeLowVoltage(twice).verdict, check.verdict);
        const double less = chance.between(30, 99) / 100.0;
        LowVoltageInputs worse = in;
        worse.converterCurrent.value = *in.converterCurrent.value * less;
        EXPECT_GE(judgeLowVoltage(worse).verdict, check.verdict);
        worse = in;
        worse.batteryCapacity.value = *in.batteryCapacity.value * less;
        EXPECT_GE(judgeLowVoltage(worse).verdict, check.verdict);
        worse = in;
        worse.fuses[0].cable.value = *in.fuses[0].cable.value * less;
        EXPECT_GE(judgeLowVoltage(worse).verdict, check.verdict);
        worse = in;
        worse.loads[2].duty.value = 1;
        EXPECT_GE(judgeLowVoltage(worse).verdict, check.verdict);
    }
}

} // namespace ohmwright
