// SPDX-License-Identifier: GPL-3.0-or-later
// Sources: charging from 0 °C to 45 °C and discharging from −20 °C to 60 °C are the limits that
// makers' sheets and teaching texts on lithium cells agree on (no standard prints them); 403.2 V is
// 96 cells at 4.2 V. The lowest limit over a range is held to a brute force, labelled so.
#include "core/checks/cell_limits.h"
#include "core/checks/worksheet.h"
#include "tests/published/checks/reading.h"
#include "tests/support/chance.h"

#include <gtest/gtest.h>

namespace ohmwright {

namespace {

using LimitCurve = Curve<Temperature, Current>;

LimitByTemperature limit(std::vector<std::pair<double, double>> points)
{
    std::vector<LimitCurve::Point> told;
    for (const auto &[t, a] : points)
        told.emplace_back(celsius(t), amperes(a));
    LimitByTemperature limit;
    limit.curve = LimitCurve(std::move(told));
    limit.origin.evidence = Evidence::Datasheet;
    return limit;
}

CellLimitsInputs usual()
{
    CellLimitsInputs in;
    in.cellsInSeries = given(96.0, QStringLiteral("cells in series"));
    in.cellsInParallel = given(2.0, QStringLiteral("cells in parallel"));
    in.cellMost = given(volts(4.2), QStringLiteral("highest voltage of a cell"));
    in.cellLeast = given(volts(2.8), QStringLiteral("lowest voltage of a cell"));
    in.chargeEnd = given(volts(400), QStringLiteral("end of charging"));
    in.dischargeEnd = given(volts(310), QStringLiteral("end of driving"));
    in.chargeLimit = limit({{0, 0}, {5, 10}, {15, 40}, {45, 40}});
    in.dischargeLimit = limit({{-20, 60}, {0, 150}, {60, 150}});
    in.chargeCurrent = given(amperes(16), QStringLiteral("charging current"));
    in.dischargeCurrent = given(amperes(100), QStringLiteral("driving current"));
    in.coldestCharging = given(celsius(5), QStringLiteral("coldest charging"));
    in.hottestCharging = given(celsius(40), QStringLiteral("hottest charging"));
    in.coldestDriving = given(celsius(-10), QStringLiteral("coldest driving"));
    in.hottestDriving = given(celsius(45), QStringLiteral("hottest driving"));
    in.channels = given(96.0, QStringLiteral("management channels"));
    return in;
}

Regeneration braking(double amps, double open)
{
    return {given(amperes(amps), QStringLiteral("braking current")),
            given(volts(open), QStringLiteral("fullest cell at braking")),
            given(ohms(0.002), QStringLiteral("resistance of a cell")), std::nullopt};
}

Verdict judged(const CellLimitsInputs &in)
{
    return judgeCellLimits(in).verdict;
}

} // namespace

// 96 · 4.2 V = 403.2 V: a charger that ends there just meets it, one that ends at 405 V does not.
TEST(CellLimits, HoldsTheEndOfChargingToTheCell)
{
    CellLimitsInputs in = usual();
    in.chargeEnd.value = volts(403.2 - 1e-9);
    EXPECT_EQ(judged(in), Verdict::Tight);
    in.chargeEnd.value = volts(405);
    EXPECT_EQ(judged(in), Verdict::Fails);
    in = usual();
    in.dischargeEnd.value = volts(260); // 2.71 V
    EXPECT_EQ(judged(in), Verdict::Fails);
}

// Charging 0 °C to 45 °C, discharging −20 °C to 60 °C: on either side of what the texts print.
TEST(CellLimits, KeepsToTheTemperaturesTheTextsPrint)
{
    CellLimitsInputs in = usual();
    in.chargeLimit = limit({{0, 40}, {45, 40}});
    in.coldestCharging.value = celsius(0);
    in.hottestCharging.value = celsius(45);
    EXPECT_LE(judged(in), Verdict::Tight);
    in.coldestCharging.value = celsius(-1); // the curve ends, and it freezes
    EXPECT_EQ(judged(in), Verdict::Fails);
    in = usual();
    in.hottestCharging.value = celsius(46);
    EXPECT_EQ(judged(in), Verdict::Unknown);
    in = usual();
    in.coldestDriving.value = celsius(-20);
    EXPECT_LE(judged(in), Verdict::Tight);
    in.coldestDriving.value = celsius(-21);
    EXPECT_EQ(judged(in), Verdict::Unknown);
    in = usual();
    in.hottestDriving.value = celsius(61);
    EXPECT_EQ(judged(in), Verdict::Unknown);
}

TEST(CellLimits, FailsChargingInFrostUnlessTheMakersCurveReachesThere)
{
    CellLimitsInputs in = usual();
    in.coldestCharging.value = celsius(-5);
    EXPECT_EQ(judged(in), Verdict::Fails);
    in.chargeLimit = limit({{-10, 9}, {5, 12}, {45, 40}}); // made for it
    EXPECT_LE(judged(in), Verdict::Tight);
    in.chargeFloor.own = celsius(2); // but the builder will not
    EXPECT_EQ(judged(in), Verdict::Fails);
    in = usual();
    in.coldestCharging.value = celsius(2); // 4 A there, 8 A asked
    EXPECT_EQ(judged(in), Verdict::Fails);
    in.chargeLimit = {};
    EXPECT_EQ(judged(in), Verdict::Unknown);
}

TEST(CellLimits, HoldsBrakingWithAFullOrColdPack)
{
    CellLimitsInputs in = usual();
    in.coldestDriving.value = celsius(15);
    in.regeneration = braking(60, 4.1);
    EXPECT_LE(judged(in), Verdict::Tight); // 4.16 V
    in.regeneration = braking(60, 4.15);   // 4.21 V
    EXPECT_EQ(judged(in), Verdict::Fails);
    in = usual(); // −10 °C
    in.regeneration = braking(60, 3.9);
    EXPECT_EQ(judged(in), Verdict::Fails);
    in.regeneration->limit = limit({{-20, 35}, {60, 100}});
    EXPECT_LE(judged(in), Verdict::Tight);
}

TEST(CellLimits, WantsAChannelForEachCell)
{
    CellLimitsInputs in = usual();
    in.channels.value = 95;
    EXPECT_EQ(judged(in), Verdict::Fails);
    in.channels.value = 96;
    EXPECT_LE(judged(in), Verdict::Tight);
    in.channels.value.reset();
    EXPECT_EQ(judgeCellLimits(in).sentence,
              QStringLiteral("Unknown: not known is management channels."));
}

TEST(CellLimits, RefusesWhatPhysicsDoesNotAllow)
{
    CellLimitsInputs in = usual();
    in.cellLeast.value = volts(5);
    EXPECT_EQ(judgeCellLimits(in).refusals.size(), 1);
    in = usual();
    in.hottestCharging.value = celsius(-3);
    EXPECT_EQ(judgeCellLimits(in).refusals.size(), 1);
    in = usual();
    in.chargeLimit = limit({{0, -1}, {40, 3}});
    EXPECT_EQ(judgeCellLimits(in).refusals.size(), 1);
}

// Brute force, labelled so: the curve read at every hundredth of a degree.
TEST(CellLimits, FindsTheLowestLimitOfARange)
{
    Chance chance(45);
    for (int i = 0; i < 100; ++i) {
        std::vector<std::pair<double, double>> points;
        for (int t = -20; t <= 60; t += 10)
            points.emplace_back(t, chance.between(0, 100));
        const LimitByTemperature random = limit(points);
        const int low = chance.between(-30, 50);
        const int high = low + chance.between(0, 40);
        double lowest = 1e9;
        for (int k = low * 100; k <= high * 100; ++k)
            lowest = std::min(lowest, random.curve.at(celsius(k / 100.0)).si());
        EXPECT_NEAR(lowestBetween(random.curve, celsius(low), celsius(high)).si(), lowest, 1e-6);
    }
}

// Worse: more current, a wider range of temperatures, a later end, fewer channels.
TEST(CellLimits, NoVerdictIsBetterWhenAnInputIsWorse)
{
    Chance chance(4100);
    for (int i = 0; i < 400; ++i) {
        CellLimitsInputs in = usual();
        in.coldestCharging.value = celsius(chance.between(-10, 20));
        in.chargeCurrent.value = amperes(chance.between(0, 90));
        in.dischargeCurrent.value = amperes(chance.between(0, 350));
        in.chargeEnd.value = volts(chance.between(380, 410));
        in.regeneration = braking(chance.between(0, 80), 4.1);
        in.coldestDriving.value = celsius(chance.between(0, 25));
        const Verdict before = judged(in);
        switch (chance.below(6)) {
        case 0:
            in.chargeCurrent.value = *in.chargeCurrent.value * 1.5;
            break;
        case 1:
            in.dischargeCurrent.value = *in.dischargeCurrent.value * 1.5;
            break;
        case 2:
            in.coldestCharging.value = *in.coldestCharging.value - Temperature::fromSi(8);
            break;
        case 3:
            in.chargeEnd.value = *in.chargeEnd.value + volts(5);
            break;
        case 4:
            in.coldestDriving.value = *in.coldestDriving.value - Temperature::fromSi(30);
            break;
        default:
            in.channels.value = 90;
        }
        EXPECT_GE(judged(in), before);
    }
}

} // namespace ohmwright
