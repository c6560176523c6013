// SPDX-License-Identifier: GPL-3.0-or-later
// Sources: ASHRAE Handbook, Fundamentals, density of ethylene glycol by volume, as a maker's design
// manual prints it (lb/ft³), and its specific heat; F-Chart, heat transfer library, cross flow with
// both sides unmixed (U·A 75, C 50 and 30 W/K: ε 0.7632; solved by Nellis and Klein); Incropera and
// DeWitt for the formula; IAPWS for water, from memory. The rest is heat balance, worked here.
#include "core/checks/cooling.h"
#include "core/checks/worksheet.h"
#include "tests/published/checks/reading.h"
#include "tests/support/chance.h"

#include <gtest/gtest.h>

namespace ohmwright {

namespace {

constexpr double kZero = 273.15;

Temperature celsius(double t)
{
    return Temperature::fromSi(kZero + t);
}

CoolingInputs loop()
{
    CoolingInputs in;
    in.parts = {{QStringLiteral("inverter"), given(watts(1500), QStringLiteral("inverter's heat")),
                 given(celsius(65), QStringLiteral("coolant limit of the inverter"))},
                {QStringLiteral("motor"), given(watts(3500), QStringLiteral("motor's heat")),
                 given(celsius(75), QStringLiteral("coolant limit of the motor"))}};
    in.coolant = given(Coolant::EthyleneGlycol, QStringLiteral("coolant"));
    in.glycol = given(0.5, QStringLiteral("share of glycol"));
    in.ambient = given(celsius(40), QStringLiteral("ambient"));
    in.coldest = given(celsius(-25), QStringLiteral("coldest night"));
    in.flow = given(FlowRate::fromSi(10e-3 / 60), QStringLiteral("coolant flow"));
    in.radiator = given(ThermalConductance::fromSi(300), QStringLiteral("radiator"));
    return in;
}

} // namespace

// 50 %, 60 °C: 65.75 lb/ft³ (1053.2 kg/m³ printed, 1052.04 in the SI table: 0.2 %) and 3435
// J/(kg·K); 30 %, 80 °F: 65.17 lb/ft³; water, 20 °C: 998.2 kg/m³, 4184 J/(kg·K).
TEST(Coolant, HasTheHandbooksProperties)
{
    constexpr double kPoundPerCubicFoot = 16.01846;
    EXPECT_NEAR(heatCapacityOf(Coolant::EthyleneGlycol, 0.5, celsius(60))->si(),
                65.75 * kPoundPerCubicFoot * 3435, 0.005 * 3.6e6);
    EXPECT_NEAR(heatCapacityOf(Coolant::EthyleneGlycol, 0.3, celsius(26.67))->si(),
                65.17 * kPoundPerCubicFoot * 3665, 0.005 * 3.8e6);
    EXPECT_NEAR(heatCapacityOf(Coolant::PropyleneGlycol, 0.4, celsius(40))->si(), 1025.3 * 3768,
                1.0);
    EXPECT_NEAR(heatCapacityOf(Coolant::Water, 0, celsius(20))->si(), 998.2 * 4184, 1.0);
    EXPECT_NEAR(freezingPointOf(Coolant::EthyleneGlycol, 0.496)->si() - kZero, -36.4, 0.05);
    EXPECT_NEAR(freezingPointOf(Coolant::EthyleneGlycol, 0.335)->si() - kZero, -18.6, 0.15);
    EXPECT_NEAR(freezingPointOf(Coolant::PropyleneGlycol, 0.499)->si() - kZero, -33.5, 0.15);
    EXPECT_FALSE(heatCapacityOf(Coolant::EthyleneGlycol, 0.7, celsius(20)));
    EXPECT_FALSE(heatCapacityOf(Coolant::Water, 0, celsius(101)));
}

// 0.7632 is by the closed formula; its difference from the exact series is 1 % there. To the series
// itself second_opinion_balance_test.cpp holds an integration.
TEST(Cooling, HasThePublishedEffectiveness)
{
    EXPECT_NEAR(crossFlowEffectiveness(75.0 / 30, 30.0 / 50), 0.7632, 0.0105 * 0.7632);
    EXPECT_NEAR(crossFlowEffectiveness(300, 0.5), 1, 1e-3);
    EXPECT_NEAR(crossFlowEffectiveness(1, 0), 0.632, 5e-4); // 1 − e^(−N) for every exchanger
}

// C = 10 L/min of 1.052·3.435 → 602.3 W/K at 60 °C; 5 kW/300 W/K = 16.67 K into the radiator, 8.30
// K less behind it: 8.36 K above 40 °C into the inverter, 2.49 K more into the motor.
TEST(Cooling, BalancesTheHeat)
{
    const Check check = judgeCooling(loop());
    EXPECT_NEAR(reading::step(check, QStringLiteral("heat the coolant takes for each kelvin")),
                602.3, 0.1);
    EXPECT_NEAR(reading::step(check, QStringLiteral("coolant into the radiator, above the air")),
                16.67, 5e-3);
    EXPECT_NEAR(reading::step(check, QStringLiteral("coolant behind the radiator")), kZero + 48.36,
                0.01);
    const Comparison *motor =
        reading::comparison(check, QStringLiteral("coolant into motor, above the air"));
    ASSERT_NE(motor, nullptr);
    EXPECT_NEAR(reading::si(motor->value), 8.365 + 2.490, 5e-3);
    // 25 K/8.365 K = 2.989 and 35/10.855 = 3.224: the inverter first
    EXPECT_NEAR(reading::step(check, QStringLiteral("heat carried at the first limit")), 14943, 10);
    EXPECT_EQ(check.verdict, Verdict::Holds);
}

// Where both parabolas meet both give the same pressure.
TEST(Cooling, FindsTheFlowOfPumpAndLoop)
{
    CoolingInputs in = loop();
    const auto flow = [](double litres) {
        return FlowRate::fromSi(litres * 1e-3 / 60);
    };
    in.pump = PumpAndLoop{given(Pressure::fromSi(40e3), QStringLiteral("pressure at no flow")),
                          given(flow(30), QStringLiteral("free flow")),
                          given(Pressure::fromSi(30e3), QStringLiteral("drop of the loop")),
                          given(flow(15), QStringLiteral("flow of that drop"))};
    const double met =
        reading::step(judgeCooling(in), QStringLiteral("flow where pump and loop meet")) * 6e4;
    EXPECT_NEAR(met, 15, 2e-3 + 0.0); // 40·(1 − 1/4) = 30
    in.pump->loopDrop.value = Pressure::fromSi(60e3);
    const double less =
        reading::step(judgeCooling(in), QStringLiteral("flow where pump and loop meet")) * 6e4;
    EXPECT_NEAR(40 * (1 - less * less / 900), 60 * less * less / 225, 0.02);
}

TEST(Cooling, TellsARadiatorByItsAirSide)
{
    CoolingInputs in = loop();
    in.airSide = AirSide{given(ThermalConductance::fromSi(600), QStringLiteral("exchange")),
                         given(FlowRate::fromSi(0.5), QStringLiteral("air flow"))};
    const Check check = judgeCooling(in);
    const double share = reading::step(check, QStringLiteral("effectiveness of the radiator"));
    EXPECT_NEAR(share, crossFlowEffectiveness(600 / 577.0, 577.0 / 602.3), 1e-3);
    EXPECT_NEAR(reading::step(check, QStringLiteral("heat of the radiator for each kelvin")),
                share * 577, 0.5);
}

TEST(Cooling, FailsTooHotOrFrozenWhateverElseIsNotKnown)
{
    CoolingInputs in = loop();
    in.glycol.value = 0.2;
    in.radiator = notKnown<ThermalConductance>(QStringLiteral("radiator"));
    EXPECT_EQ(judgeCooling(in).verdict, Verdict::Fails); // ice from −9 °C on
    in.glycol.value = 0.5;
    EXPECT_EQ(judgeCooling(in).verdict, Verdict::Unknown);
    in = loop();
    in.ambient.value = celsius(70); // hotter than the inverter's coolant may be
    EXPECT_EQ(judgeCooling(in).verdict, Verdict::Fails);
    in = loop();
    in.radiator.value = ThermalConductance::fromSi(900);
    EXPECT_EQ(judgeCooling(in).refusals.size(), 1);
    in = loop();
    in.glycol.value = 0.9;
    EXPECT_EQ(judgeCooling(in).refusals.size(), 1);
}

// Worse: more heat, hotter air, lower limit, less flow at the same radiator.
TEST(Cooling, ScalesAndNeverJudgesWorseInputsBetter)
{
    Chance chance(19);
    const QString into = QStringLiteral("coolant into the radiator, above the air");
    for (int round = 0; round < 200; ++round) {
        CoolingInputs in = loop();
        in.parts[0].heat.value = watts(chance.between(200, 6000));
        in.parts[1].heat.value = watts(chance.between(200, 6000));
        in.ambient.value = celsius(chance.between(0, 50));
        const Check check = judgeCooling(in);
        CoolingInputs twice = in;
        for (CooledPart &part : twice.parts)
            part.heat.value = *part.heat.value * 2.0;
        EXPECT_NEAR(reading::step(judgeCooling(twice), into), 2 * reading::step(check, into), 0.05);
        EXPECT_GE(judgeCooling(twice).verdict, check.verdict);
        CoolingInputs worse = in;
        worse.ambient.value = *in.ambient.value + Temperature::fromSi(chance.between(1, 20));
        EXPECT_GE(judgeCooling(worse).verdict, check.verdict);
        worse = in;
        worse.parts[0].hottest.value = *in.parts[0].hottest.value - Temperature::fromSi(15);
        EXPECT_GE(judgeCooling(worse).verdict, check.verdict);
        worse = in;
        worse.radiator.value = *in.radiator.value * 0.6;
        EXPECT_GE(judgeCooling(worse).verdict, check.verdict);
    }
}

} // namespace ohmwright
