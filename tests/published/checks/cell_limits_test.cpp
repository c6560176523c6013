// SPDX-License-Identifier: GPL-3.0-or-later
// Sources, both read: the sheet of a 2.6 Ah cell of format 18650 in a 14.8 V pack (its items 3.6
// and 3.8: charged with 0.26 A up to 5 °C, 0.52 A up to 15 °C, 1.3 A up to 55 °C; discharged with
// 1.3 A up to 5 °C, 7.8 A up to 45 °C, 2.6 A up to 75 °C); that of another cell of the format
// (Battsys: charging 0 to 45 °C, discharging −20 to 60 °C, at most 1.5 A and 3.0 A). 403.2 V is 96
// cells at 4.2 V. The lowest limit over a range is held to a brute force, labelled so.
#include "core/checks/cell_limits.h"
#include "core/checks/worksheet.h"
#include "tests/published/checks/reading.h"
#include "tests/support/chance.h"

#include <gtest/gtest.h>

namespace ohmwright {

namespace {

using LimitCurve = Curve<Temperature, Current>;

LimitByTemperature limit(const std::vector<std::pair<double, double>> &points)
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
    in.chargeEnd.value = volts(403.2 - 1e-9); // a window that is kept: nearness is meant
    EXPECT_EQ(judged(in), Verdict::Holds);
    in.chargeEnd.value = volts(405);
    EXPECT_EQ(judged(in), Verdict::Fails);
    in = usual();
    in.dischargeEnd.value = volts(260); // 2.71 V
    EXPECT_EQ(judged(in), Verdict::Fails);
}

// One cell of the 2.6 Ah sheet, each step of its table a pair of points: the current printed is
// allowed within the step, a hundredth more is not. Exact.
TEST(CellLimits, KeepsToTheStepsOfACellsSheet)
{
    constexpr double kStep = 0.01; // °C between the end of a step and the start of the next
    CellLimitsInputs in = usual();
    in.cellsInParallel.value = 1.0;
    in.chargeLimit =
        limit({{0, 0.26}, {5 - kStep, 0.26}, {5, 0.52}, {15 - kStep, 0.52}, {15, 1.3}, {55, 1.3}});
    in.dischargeLimit =
        limit({{-20, 1.3}, {5 - kStep, 1.3}, {5, 7.8}, {45, 7.8}, {45 + kStep, 2.6}, {75, 2.6}});
    const auto allowed = [&](double coldCharge, double charge, double coldDrive, double hotDrive,
                             double drive) {
        in.coldestCharging.value = celsius(coldCharge);
        in.hottestCharging.value = celsius(55);
        in.chargeCurrent.value = amperes(charge);
        in.coldestDriving.value = celsius(coldDrive);
        in.hottestDriving.value = celsius(hotDrive);
        in.dischargeCurrent.value = amperes(drive);
        return judged(in) != Verdict::Fails;
    };
    EXPECT_TRUE(allowed(0, 0.26, -20, 75, 1.3));
    EXPECT_FALSE(allowed(0, 0.263, -20, 75, 1.3));
    EXPECT_FALSE(allowed(0, 0.26, -20, 75, 1.32));
    EXPECT_TRUE(allowed(5, 0.52, 5, 45, 7.8));
    EXPECT_FALSE(allowed(4, 0.52, 5, 45, 7.8));
    EXPECT_FALSE(allowed(5, 0.52, 5, 46, 7.8));
    EXPECT_TRUE(allowed(15, 1.3, 5, 75, 2.6));
    EXPECT_FALSE(allowed(15, 1.32, 5, 75, 2.6));
    EXPECT_FALSE(allowed(15, 1.3, 5, 75, 2.7));
}

// Charging 0 °C to 45 °C, discharging −20 °C to 60 °C: on either side of what the sheet prints.
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

// 360 V and 100 mΩ, worked by hand: 82 kW draw (360 − √(129600 − 32800))/0.2 = 244.37 A, 122.2 A a
// cell of two; the curve has 60 A at −5 °C.
ColdDrive drawing(double peak, double continuous)
{
    ColdDrive drive;
    drive.openCircuit = given(volts(360), QStringLiteral("voltage at rest"));
    drive.inner = given(ohms(0.1), QStringLiteral("resistance of the cold pack"));
    drive.peak = {given(watts(peak), QStringLiteral("peak power")), std::nullopt};
    drive.continuous =
        DrawnPower{given(watts(continuous), QStringLiteral("continuous power")), std::nullopt};
    return drive;
}

CellLimitsInputs inTheCold(double peak, double continuous)
{
    CellLimitsInputs in = usual();
    in.dischargeLimit = limit({{-20, 20}, {-10, 40}, {0, 80}, {60, 80}});
    in.coldestDriving.value = celsius(-5);
    in.dischargeCurrent.value = amperes(80);
    in.drive = drawing(peak, continuous);
    return in;
}

TEST(CellLimits, HoldsThePeakOfTheDriveToTheColdCell)
{
    const QString peak = QStringLiteral("current of a cell at peak power, coldest");
    const QString continuous = QStringLiteral("current of a cell at continuous power, coldest");
    Check check = judgeCellLimits(inTheCold(82e3, 30e3));
    EXPECT_EQ(check.verdict, Verdict::Fails);
    ASSERT_NE(reading::comparison(check, peak), nullptr);
    EXPECT_NEAR(reading::si(reading::comparison(check, peak)->value), 122.2, 0.05);
    EXPECT_NEAR(reading::si(reading::comparison(check, peak)->limit), 60, 1e-9);
    // (360 − √(129600 − 12000))/0.2 = 85.36 A, 42.7 A a cell
    ASSERT_NE(reading::comparison(check, continuous), nullptr);
    EXPECT_NEAR(reading::si(reading::comparison(check, continuous)->value), 42.68, 0.01);
    EXPECT_EQ(reading::comparison(check, continuous)->verdict, Verdict::Holds);

    // what the controller asks of a cold pack: (360 − √(129600 − 15200))/0.2 = 108.8 A
    CellLimitsInputs in = inTheCold(82e3, 30e3);
    in.drive->heldTo = given(watts(38e3), QStringLiteral("power when cold"));
    in.drive->heldBelow = notKnown<Temperature>(QStringLiteral("held below"));
    in.drive->warmCellPeak = given(amperes(140), QStringLiteral("for seconds when warm"));
    check = judgeCellLimits(in);
    EXPECT_NEAR(reading::si(reading::comparison(check, peak)->value), 54.42, 0.01);
    EXPECT_EQ(check.verdict, Verdict::Unknown);
    EXPECT_EQ(check.unknowns, QStringList(QStringLiteral("held below")));
    // from where it lets go the whole power is asked: 122.2 A
    const QString warmer = QStringLiteral("current of a cell at peak power, held no more");
    in.drive->heldBelow = given(celsius(0), QStringLiteral("held below"));
    check = judgeCellLimits(in);
    EXPECT_EQ(check.verdict, Verdict::Tight);
    ASSERT_NE(reading::comparison(check, warmer), nullptr);
    EXPECT_NEAR(reading::si(reading::comparison(check, warmer)->value), 122.2, 0.05);
    in.drive->warmCellPeak.reset(); // then the curve for driving, 80 A
    check = judgeCellLimits(in);
    EXPECT_NEAR(reading::si(reading::comparison(check, warmer)->limit), 80, 1e-9);
    EXPECT_EQ(check.verdict, Verdict::Fails);
    // a controller that lets go before the coldest holds nothing
    in.drive->heldBelow.value = celsius(-8);
    check = judgeCellLimits(in);
    EXPECT_NEAR(reading::si(reading::comparison(check, peak)->value), 122.2, 0.05);
    EXPECT_EQ(reading::comparison(check, warmer), nullptr);

    // an inverter that takes no more than 100 A, and a maker's limit for seconds
    in = inTheCold(82e3, 30e3);
    in.drive->peak.atMost = given(amperes(100), QStringLiteral("the inverter's limit"));
    check = judgeCellLimits(in);
    EXPECT_NEAR(reading::si(reading::comparison(check, peak)->value), 50, 1e-9);
    in = inTheCold(82e3, 30e3);
    in.drive->cellPeak = given(amperes(140), QStringLiteral("for seconds in the cold"));
    in.drive->warmCellPeak = given(amperes(140), QStringLiteral("for seconds when warm"));
    check = judgeCellLimits(in);
    EXPECT_NEAR(reading::si(reading::comparison(check, peak)->limit), 140, 1e-9);
    EXPECT_LE(check.verdict, Verdict::Tight);
}

TEST(CellLimits, MorePowerThanTheColdPackHasFailsAndAnUnknownOneIsAsked)
{
    // 360²/(4 · 0.1) = 324 kW
    EXPECT_EQ(judged(inTheCold(325e3, 30e3)), Verdict::Fails);
    CellLimitsInputs in = inTheCold(40e3, 30e3);
    in.drive->peak.power = notKnown<Power>(QStringLiteral("peak power"));
    EXPECT_EQ(judgeCellLimits(in).unknowns, QStringList(QStringLiteral("peak power")));
    in = inTheCold(40e3, 30e3);
    in.coldestDriving.value = celsius(-25); // beyond the curve
    EXPECT_EQ(judged(in), Verdict::Fails);
}

// 16 A at 310 V to 403.2 V is 4.96 kW to 6.45 kW.
TEST(CellLimits, DoubtsARegenerationThatIsToldTwiceAndDiffers)
{
    CellLimitsInputs in = usual();
    in.coldestDriving.value = celsius(15);
    in.regeneration = braking(16, 3.9);
    in.regeneration->toldTwice = RegenerationSettings{
        given(watts(6e3), QStringLiteral("power set in the controller")), in.regeneration->current,
        given(volts(310), QStringLiteral("empty")), given(volts(403.2), QStringLiteral("full"))};
    EXPECT_TRUE(judgeCellLimits(in).doubts.isEmpty());
    in.regeneration->toldTwice->power.value = watts(18e3);
    const Check check = judgeCellLimits(in);
    EXPECT_EQ(check.verdict, Verdict::Unknown);
    ASSERT_EQ(check.doubts.size(), 1);
    EXPECT_TRUE(check.doubts.front().contains(QStringLiteral("power set in the controller")));
    EXPECT_TRUE(check.doubts.front().contains(QStringLiteral("braking current")));
    in.regeneration->toldTwice->power.value = watts(4.7e3);
    EXPECT_EQ(judged(in), Verdict::Unknown);
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
              QStringLiteral("Unknown for want of management channels."));
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
