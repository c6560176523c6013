// SPDX-License-Identifier: GPL-3.0-or-later
// Sources: control pilot, IEC 61851-1, as printed in the manual of a maker's test adapter, table of
// charging current by duty cycle (page 11); continuous load, US National Electrical Code: a load
// of 48 A asks for a device of 60 A; power of alternating current, any text on circuits (worked).
#include "core/checks/charging.h"
#include "core/checks/control_pilot.h"
#include "core/checks/worksheet.h"
#include "tests/published/checks/reading.h"
#include "tests/support/chance.h"

#include <gtest/gtest.h>

namespace ohmwright {

namespace {

constexpr double kHour = 3600;

// 6.6 kW at 230 V, 25 kWh from 20 % to 100 %.
ChargingInputs home()
{
    ChargingInputs in;
    in.mainsVoltage = given(volts(230), QStringLiteral("mains voltage"));
    in.phases = given(1.0, QStringLiteral("mains lines"));
    in.outputPower = given(watts(6600), QStringLiteral("charger's power"));
    in.efficiency = given(0.94, QStringLiteral("charger's efficiency"));
    in.powerFactor = given(0.99, QStringLiteral("power factor"));
    in.breaker = given(amperes(40), QStringLiteral("breaker"));
    in.weakestLink = given(amperes(40), QStringLiteral("rating of the inlet"));
    in.packEmpty = given(volts(300), QStringLiteral("empty pack"));
    in.packFull = given(volts(403.2), QStringLiteral("full pack"));
    in.packCurrent = given(amperes(60), QStringLiteral("charging current of the pack"));
    in.chargerLeast = given(volts(200), QStringLiteral("charger's least voltage"));
    in.chargerMost = given(volts(420), QStringLiteral("charger's most voltage"));
    in.endOfCharge = given(volts(403.2), QStringLiteral("end of charge"));
    in.chargerCurrent = given(amperes(20), QStringLiteral("charger's current"));
    in.packEnergy = given(joules(25e3 * kHour), QStringLiteral("usable energy"));
    in.from = given(0.2, QStringLiteral("charged before"));
    in.to = given(1.0, QStringLiteral("charged after"));
    return in;
}

} // namespace

// Printed: 10 % 6.0, 16 % 9.6, 50 % 30.0, 85 % 51.0, 86 % 55.0, 90 % 65.0, 96 % and 97 % 80.0 A;
// 8 % 6.0; nothing below 8 % (5 % asks for digital communication) and above 97 %. Exact.
TEST(ControlPilot, OffersThePrintedCurrents)
{
    const std::pair<double, double> printed[] = {{8, 6.0},   {10, 6.0},  {16, 9.6},
                                                 {50, 30.0}, {85, 51.0}, {86, 55.0},
                                                 {90, 65.0}, {96, 80.0}, {97, 80.0}};
    for (const auto &[percent, current] : printed) {
        const auto offered = pilotCurrent(percent / 100);
        ASSERT_TRUE(offered) << percent;
        EXPECT_NEAR(offered->si(), current, 1e-9) << percent;
    }
    for (const double percent : {0.0, 5.0, 7.5, 98.0, 100.0})
        EXPECT_FALSE(pilotCurrent(percent / 100)) << percent;
}

// 48 A continuous on 60 A is just allowed, on 50 A it is not.
TEST(Charging, HoldsAContinuousLoadToEightyPercentOfTheDevice)
{
    ChargingInputs in = home();
    in.outputPower.value = watts(48 * 240);
    in.mainsVoltage.value = volts(240);
    in.efficiency.value = in.powerFactor.value = 1.0;
    in.weakestLink.value = amperes(60);
    in.packCurrent.value = amperes(60);
    in.breaker.value = amperes(60);
    const QString what = QStringLiteral("continuous load on the protective device");
    Check check = judgeCharging(in);
    EXPECT_NEAR(reading::step(check, QStringLiteral("mains current at full power")), 48, 1e-9);
    ASSERT_NE(reading::comparison(check, what), nullptr);
    EXPECT_EQ(reading::comparison(check, what)->verdict, Verdict::Tight);
    in.breaker.value = amperes(50);
    check = judgeCharging(in);
    EXPECT_EQ(reading::comparison(check, what)->verdict, Verdict::Fails);
    EXPECT_EQ(check.verdict, Verdict::Fails);
    EXPECT_EQ(check.caution, QStringLiteral("mains"));
}

// 6600/(0.94·0.99·230) = 30.84 A; 65 % of 25 kWh at 6.6 kW 2.462 h, 15 % at half 1.136 h.
TEST(Charging, GivesCurrentAndTime)
{
    const Check check = judgeCharging(home());
    EXPECT_NEAR(reading::step(check, QStringLiteral("mains current at full power")), 30.84, 0.005);
    EXPECT_NEAR(reading::step(check, QStringLiteral("time of the charge")), 3.598 * kHour, 4);
    EXPECT_NEAR(reading::step(check, QStringLiteral("greatest charging current")), 20, 1e-9);
    EXPECT_EQ(check.verdict, Verdict::Tight); // 77 % of the breaker
    EXPECT_FALSE(check.weakest && isWeak(*check.weakest));
}

TEST(Charging, RestsOnTheAssumedEndOnlyWhenTimeIsJudged)
{
    ChargingInputs in = home();
    const QString rests =
        QStringLiteral("resting on an assumption for where the charging current falls");
    in.timeAtHand = given(Duration::fromSi(8 * kHour), QStringLiteral("night"));
    EXPECT_FALSE(isWeak(*judgeCharging(in).weakest)); // the breaker decides
    EXPECT_TRUE(
        judgeCharging(in).sentence.contains(QString(QStringLiteral("; elsewhere ") + rests)));
    in.timeAtHand->value = Duration::fromSi(3.7 * kHour); // 3.598 h: 2.8 % to spare
    EXPECT_TRUE(judgeCharging(in).sentence.contains(QString(QStringLiteral(", ") + rests)));
    in.timeAtHand->value = Duration::fromSi(3 * kHour);
    EXPECT_EQ(judgeCharging(in).verdict, Verdict::Fails);
}

TEST(Charging, HeldToLessItDrawsLessAndTakesLonger)
{
    ChargingInputs in = home();
    in.heldTo = given(amperes(10), QStringLiteral("current setting"));
    in.pilotDuty = given(0.16, QStringLiteral("duty cycle"));
    const Check check = judgeCharging(in); // the point offers 9.6 A
    EXPECT_EQ(check.verdict, Verdict::Fails);
    EXPECT_NEAR(reading::step(check, QStringLiteral("power that leaves")), 10 * 230 * 0.94 * 0.99,
                0.5);
    in.pilotDuty->value = 0.05;
    EXPECT_EQ(judgeCharging(in).verdict, Verdict::Unknown);
    EXPECT_EQ(judgeCharging(in).doubts.size(), 1);
}

TEST(Charging, FailsWhenTheChargeEndsAboveTheFullPackWhateverElseIsNotKnown)
{
    ChargingInputs in = home();
    in.endOfCharge.value = volts(410);
    in.mainsVoltage = notKnown<Voltage>(QStringLiteral("mains voltage"));
    const Check check = judgeCharging(in);
    EXPECT_EQ(check.verdict, Verdict::Fails);
    EXPECT_EQ(check.unknowns, QStringList(QStringLiteral("mains voltage")));
    in.endOfCharge.value = volts(403.2);
    EXPECT_EQ(judgeCharging(in).verdict, Verdict::Unknown);
    in.packEmpty.value = volts(190); // below the window
    EXPECT_EQ(judgeCharging(in).verdict, Verdict::Fails);
}

TEST(Charging, RefusesWhatCannotBe)
{
    ChargingInputs in = home();
    in.efficiency.value = 1.2;
    EXPECT_EQ(judgeCharging(in).refusals.size(), 1);
    in = home();
    in.phases.value = 2;
    EXPECT_EQ(judgeCharging(in).refusals.size(), 1);
    in = home();
    in.to.value = 0.1;
    EXPECT_EQ(judgeCharging(in).refusals.size(), 1);
}

// Scaling: twice the power draws twice the current and takes half the time; three lines carry a
// third each. Worse: lower efficiency, smaller breaker, wire, window; never a better verdict.
TEST(Charging, ScalesAndNeverJudgesWorseInputsBetter)
{
    Chance chance(10);
    const QString current = QStringLiteral("mains current at full power");
    for (int round = 0; round < 300; ++round) {
        ChargingInputs in = home();
        in.outputPower.value = watts(chance.between(1000, 9000));
        in.breaker.value = amperes(chance.between(10, 63));
        in.weakestLink.value = amperes(chance.between(10, 63));
        in.packCurrent.value = amperes(chance.between(10, 60));
        const Check check = judgeCharging(in);
        ChargingInputs three = in;
        three.phases.value = 3;
        EXPECT_NEAR(reading::step(judgeCharging(three), current) * 3, reading::step(check, current),
                    0.02);
        for (int which = 0; which < 6; ++which) {
            ChargingInputs worse = in;
            const double factor = chance.between(40, 99) / 100.0;
            switch (which) {
            case 0:
                worse.efficiency.value = *in.efficiency.value * factor;
                break;
            case 1:
                worse.breaker.value = *in.breaker.value * factor;
                break;
            case 2:
                worse.weakestLink.value = *in.weakestLink.value * factor;
                break;
            case 3:
                worse.chargerMost.value = *in.chargerMost.value * factor;
                break;
            case 4:
                worse.packCurrent.value = *in.packCurrent.value * factor;
                break;
            default:
                worse.packFull.value = volts(300 + 103.2 * factor);
                break;
            }
            EXPECT_GE(judgeCharging(worse).verdict, check.verdict) << which;
        }
    }
}

} // namespace ohmwright
