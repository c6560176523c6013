// SPDX-License-Identifier: GPL-3.0-or-later
// Sources: teaching text on series/parallel packs (13s4p of 3.7 V and 2.6 Ah cells: 48.1 V, 10.4
// Ah, "about 500 Wh"; three cells of 60 mΩ in series: 180 mΩ); the 96s2p pack worked from the
// formulas. The integral is held to scipy's quadrature and root finder.
#include "core/checks/pack.h"
#include "core/checks/worksheet.h"
#include "tests/published/checks/reading.h"
#include "tests/support/chance.h"

#include <QProcess>
#include <QStringList>

#include <gtest/gtest.h>

#include <cmath>

namespace ohmwright {

namespace {

constexpr double kAmpereHour = 3600;

Curve<double, Voltage> level(double v)
{
    return Curve<double, Voltage>({{0.0, volts(v)}, {1.0, volts(v)}});
}

// A lithium cell's usual shape, invented.
Curve<double, Voltage> sloping()
{
    return Curve<double, Voltage>({{0.0, volts(3.0)},
                                   {0.05, volts(3.4)},
                                   {0.5, volts(3.7)},
                                   {0.9, volts(4.05)},
                                   {1.0, volts(4.2)}});
}

PackInputs packOf(double series, double parallel, Curve<double, Voltage> curve, double capacity,
                  double inner, double load)
{
    PackInputs in;
    in.modulesInSeries = given(series, QStringLiteral("modules in series"));
    in.modulesInParallel = given(parallel, QStringLiteral("modules in parallel"));
    in.cellsInSeriesPerModule = given(1.0, QStringLiteral("cells in a module"));
    in.openCircuit = std::move(curve);
    in.openCircuitFrom.evidence = Evidence::Measured;
    in.moduleCapacity = given(Charge::fromSi(capacity * kAmpereHour), QStringLiteral("capacity"));
    in.moduleResistance = given(ohms(inner), QStringLiteral("resistance of a module"));
    in.highestCharge = given(1.0, QStringLiteral("highest state of charge"));
    in.lowestCharge = given(0.0, QStringLiteral("lowest state of charge"));
    in.cellFloor = given(volts(2.5), QStringLiteral("lowest voltage of a cell"));
    in.load = given(watts(load), QStringLiteral("load"));
    in.moduleCurrentLimit = given(amperes(150), QStringLiteral("current limit of a module"));
    return in;
}

VoltageWindow window(const QString &name, double least, double most, bool charger = false)
{
    return {name, given(volts(least), QString(name + QStringLiteral(" least"))),
            given(volts(most), QString(name + QStringLiteral(" most"))), charger};
}

} // namespace

// 48.1 V, 10.4 Ah, 500.2 Wh; tolerance 0.1 %. The load is so small that it costs nothing.
TEST(Pack, ThirteenBySeriesFourByParallelOfTheTeachingText)
{
    const Check check = judgePack(packOf(13, 4, level(3.7), 2.6, 0, 1));
    EXPECT_NEAR(reading::step(check, QStringLiteral("voltage at full charge")), 48.1, 0.0481);
    EXPECT_NEAR(reading::step(check, QStringLiteral("capacity")) / kAmpereHour, 10.4, 0.0104);
    EXPECT_NEAR(reading::step(check, QStringLiteral("usable energy")) / kAmpereHour, 500.2, 0.5);
}

TEST(Pack, ThreeCellsInSeriesAddTheirResistance)
{
    const Check check = judgePack(packOf(3, 1, level(3.7), 2.6, 0.060, 1));
    EXPECT_NEAR(reading::step(check, QStringLiteral("inner resistance")), 0.180, 1e-6);
}

// 96s2p of 3.7 V, 65 Ah, 1.2 mΩ at 200 A (68.736 kW): sag 11.52 V, 343.68 V, 2304 W, efficiency
// 0.96757. Tolerance 1e-4 or the four digits shown.
TEST(Pack, NinetySixByTwoAtTwoHundredAmperes)
{
    const Check check = judgePack(packOf(96, 2, level(3.7), 65, 1.2e-3, 343.68 * 200));
    EXPECT_NEAR(reading::step(check, QStringLiteral("inner resistance")), 57.6e-3, 1e-7);
    EXPECT_NEAR(reading::step(check, QStringLiteral("current at the end")), 200, 0.02);
    EXPECT_NEAR(reading::step(check, QStringLiteral("sag at the end")), 11.52, 0.0012);
    EXPECT_NEAR(reading::step(check, QStringLiteral("voltage under load at the end")), 343.68,
                0.05);
    EXPECT_NEAR(reading::step(check, QStringLiteral("heat at the end")), 2304, 0.5);
    const UsableEnergy usable = usableEnergy(level(355.2), Charge::fromSi(130 * kAmpereHour),
                                             ohms(57.6e-3), watts(343.68 * 200), volts(0), 1, 0);
    EXPECT_NEAR(usable.atTerminals.si() / (46.176e3 * kAmpereHour), 0.96757, 1e-5);
}

TEST(Pack, MostPowerIsAQuarterOfTheShortCircuits)
{
    EXPECT_TRUE(currentAtPower(volts(100), ohms(0.1), watts(24999)).has_value());
    EXPECT_FALSE(currentAtPower(volts(100), ohms(0.1), watts(25001)).has_value());
    EXPECT_NEAR(currentAtPower(volts(100), ohms(0.1), watts(25000))->si(), 500, 1e-9);
    EXPECT_EQ(judgePack(packOf(10, 1, level(3.7), 50, 0.1, 1e6)).verdict, Verdict::Fails);
}

// 100 V and 0.1 Ω, worked by hand: matched load 50 V · 500 A = 25 kW; down to 80 V only, 200 A and
// 16 kW; no more than 100 A, 90 V and 9 kW. A least voltage below half of it limits nothing.
TEST(Pack, MostPowerIsThatOfWhateverComesFirst)
{
    const auto most = [](double least, std::optional<Current> current) {
        return *mostPower(volts(100), ohms(0.1), volts(least), current);
    };
    EXPECT_NEAR(most(0, std::nullopt).power.si(), 25e3, 1e-6);
    EXPECT_EQ(most(40, std::nullopt).by, MostPower::Limit::MatchedLoad);
    EXPECT_NEAR(most(80, std::nullopt).power.si(), 16e3, 1e-6);
    EXPECT_EQ(most(80, std::nullopt).by, MostPower::Limit::LeastVoltage);
    EXPECT_NEAR(most(80, amperes(100)).power.si(), 9e3, 1e-6);
    EXPECT_EQ(most(80, amperes(100)).by, MostPower::Limit::ModuleCurrent);
    EXPECT_EQ(most(80, amperes(300)).by, MostPower::Limit::LeastVoltage);
    EXPECT_EQ(most(120, std::nullopt).power.si(), 0);
    EXPECT_FALSE(mostPower(volts(100), ohms(0), volts(0), std::nullopt));
    EXPECT_NEAR(mostPower(volts(100), ohms(0), volts(0), amperes(10))->power.si(), 1000, 1e-9);
}

// Brute force, labelled so: every current up to the limits in small steps.
TEST(Pack, MostPowerIsTheGreatestOfAllCurrentsAllowed)
{
    Chance chance(71);
    for (int i = 0; i < 200; ++i) {
        const double v = chance.between(50, 400), r = chance.between(1, 300) / 1e3;
        const double least = chance.between(0, 100) / 100.0 * v, limit = chance.between(1, 1000);
        double best = 0;
        constexpr int kSteps = 20000;
        for (int k = 0; k <= kSteps; ++k) {
            const double amps = limit * k / kSteps, u = v - amps * r;
            if (u >= least)
                best = std::max(best, u * amps);
        }
        const double ours = mostPower(volts(v), ohms(r), volts(least), amperes(limit))->power.si();
        EXPECT_NEAR(ours, best, v * limit / kSteps) << v << ' ' << r << ' ' << least;
    }
}

// 96 · 3.7 V = 355.2 V and 57.6 mΩ at 68.736 kW: 200 A, 100 A a module, 343.68 V (the pack of the
// table above).
TEST(Pack, HoldsThePeakOfTheDriveToModulesAndWindows)
{
    PackInputs in = packOf(96, 2, level(3.7), 65, 1.2e-3, 20e3);
    in.peak = PackPeak{given(watts(343.68 * 200), QStringLiteral("peak power")), std::nullopt,
                       given(amperes(120), QStringLiteral("peak limit of a module"))};
    Check check = judgePack(in);
    EXPECT_NEAR(reading::step(check, QStringLiteral("current at peak power")), 200, 0.05);
    EXPECT_NEAR(reading::step(check, QStringLiteral("voltage under load at peak power")), 343.68,
                0.05);
    const QString row = QStringLiteral("current of a module at peak power");
    ASSERT_NE(reading::comparison(check, row), nullptr);
    EXPECT_EQ(reading::comparison(check, row)->verdict, Verdict::Holds);
    in.peak->moduleLimit.value = amperes(99);
    EXPECT_EQ(judgePack(in).verdict, Verdict::Fails);
    in.peak->moduleLimit.value = amperes(120);
    in.windows = {window(QStringLiteral("inverter"), 345, 420)}; // 343.68 V under the peak
    EXPECT_EQ(judgePack(in).verdict, Verdict::Fails);
    in.windows.clear();
    in.peak->atMost = given(amperes(50), QStringLiteral("the inverter's limit"));
    check = judgePack(in);
    EXPECT_NEAR(reading::step(check, QStringLiteral("current at peak power")), 50, 1e-9);
    in.peak->power = notKnown<Power>(QStringLiteral("peak power"));
    EXPECT_EQ(judgePack(in).unknowns, QStringList(QStringLiteral("peak power")));
}

TEST(Pack, SaysWhatDecidesItsMostPower)
{
    PackInputs in = packOf(96, 2, level(3.7), 65, 1.2e-3, 20e3);
    EXPECT_TRUE(judgePack(in).result.contains(QStringLiteral("by current limit of a module")))
        << judgePack(in).result.toStdString();
    in.windows = {window(QStringLiteral("inverter"), 345, 420)};
    const Check check = judgePack(in);
    EXPECT_TRUE(check.result.contains(QStringLiteral("by inverter least")))
        << check.result.toStdString();
    // (355.2 − 345)/57.6 mΩ · 345 V
    EXPECT_NEAR(reading::step(check, QStringLiteral("most power at the end")),
                (355.2 - 345) / 57.6e-3 * 345, 20);
}

TEST(Pack, HoldsUnitsToTheirWindows)
{
    PackInputs in = packOf(96, 2, sloping(), 65, 1.2e-3, 20e3);
    in.lowestCharge.value = 0.1;
    in.windows = {window(QStringLiteral("inverter"), 260, 420),
                  window(QStringLiteral("charger"), 250, 420, true)};
    EXPECT_EQ(judgePack(in).verdict, Verdict::Tight);
    in.windows[0].most.value = volts(400); // 403.2 V at full charge
    EXPECT_EQ(judgePack(in).verdict, Verdict::Fails);
    in.windows[0].most.value = volts(450);
    in.windows[1].most.value = volts(400); // the charger never fills it
    const Check check = judgePack(in);
    EXPECT_EQ(check.verdict, Verdict::Fails);
    const Comparison *charger =
        reading::comparison(check, QStringLiteral("charger, pack at its highest"));
    ASSERT_NE(charger, nullptr);
    EXPECT_EQ(charger->verdict, Verdict::Fails);
}

TEST(Pack, AChargerHasToReachTheChargeADriveStartsWith)
{
    PackInputs in = packOf(96, 2, sloping(), 65, 1.2e-3, 20e3);
    in.lowestCharge.value = 0.1;
    in.highestCharge.value = 0.9;
    const double start = 96 * sloping().at(0.9).si();
    in.windows = {window(QStringLiteral("charger"), 250, start + 1, true)};
    EXPECT_NE(judgePack(in).verdict, Verdict::Fails);
    // it is reached or not: a charger that just reaches it is no reason for worry
    EXPECT_EQ(reading::comparison(judgePack(in), QStringLiteral("charger, pack at its highest")),
              nullptr);
    in.windows[0].most.value = volts(start - 1);
    EXPECT_EQ(judgePack(in).verdict, Verdict::Fails);
}

TEST(Pack, DrawsTheVoltageOverTheDischarge)
{
    const Check check = judgePack(packOf(96, 2, sloping(), 65, 1.2e-3, 20e3));
    ASSERT_EQ(check.plots.size(), 1U);
    const Plot &plot = check.plots.front();
    ASSERT_EQ(plot.series.size(), 2U);
    for (std::size_t i = 0; i + 1 < plot.series[1].points.size(); ++i) {
        EXPECT_LE(plot.series[1].points[i + 1].second, plot.series[1].points[i].second);
        EXPECT_LT(plot.series[1].points[i].second, plot.series[0].points[i].second);
        EXPECT_LT(plot.series[1].points[i].first, plot.series[1].points[i + 1].first);
    }
}

TEST(Pack, IsUnknownWithoutTheCurveOrWithHalfOfIt)
{
    EXPECT_EQ(judgePack(packOf(96, 2, {}, 65, 1.2e-3, 20e3)).sentence,
              QStringLiteral("Unknown for want of open-circuit voltage against state of charge."));
    const Curve<double, Voltage> half({{0.2, volts(3.5)}, {0.8, volts(3.9)}});
    EXPECT_EQ(judgePack(packOf(96, 2, half, 65, 1.2e-3, 20e3)).verdict, Verdict::Unknown);
}

TEST(Pack, RefusesAVoltageThatFallsWithTheCharge)
{
    const Curve<double, Voltage> falling({{0.0, volts(4)}, {1.0, volts(3)}});
    EXPECT_EQ(judgePack(packOf(96, 2, falling, 65, 1.2e-3, 20e3)).refusals.size(), 1);
}

TEST(Pack, TwiceTheModulesInParallelGiveTwiceTheEnergyAtTwiceTheLoad)
{
    const Curve<double, Voltage> curve = sloping();
    const UsableEnergy one =
        usableEnergy(curve, Charge::fromSi(1e4), ohms(0.002), watts(60), volts(3.2), 0.95, 0.05);
    const UsableEnergy two =
        usableEnergy(curve, Charge::fromSi(2e4), ohms(0.001), watts(120), volts(3.2), 0.95, 0.05);
    EXPECT_NEAR(two.atTerminals / one.atTerminals, 2, 1e-9);
}

// Worse: more load, more resistance, less capacity, a tighter window, more energy needed.
TEST(Pack, NoVerdictIsBetterWhenAnInputIsWorse)
{
    Chance chance(96);
    for (int i = 0; i < 300; ++i) {
        PackInputs in =
            packOf(chance.between(60, 110), chance.between(1, 3), sloping(), chance.between(20, 90),
                   chance.between(5, 40) / 1e4, chance.between(5, 80) * 1e3);
        in.lowestCharge.value = 0.1;
        in.neededEnergy = given(joules(chance.between(5, 40) * 3.6e6), QStringLiteral("needed"));
        in.windows = {
            window(QStringLiteral("inverter"), chance.between(150, 300), chance.between(300, 480))};
        const Verdict before = judgePack(in).verdict;
        switch (chance.below(5)) {
        case 0:
            in.moduleCapacity.value = *in.moduleCapacity.value * 0.7;
            break;
        case 1:
            in.windows[0].least.value = *in.windows[0].least.value * 1.3;
            break;
        case 2:
            in.windows[0].most.value = *in.windows[0].most.value * 0.8;
            break;
        case 3:
            in.neededEnergy->value = *in.neededEnergy->value * 1.5;
            break;
        default:
            in.moduleCurrentLimit.value = *in.moduleCurrentLimit.value * 0.6;
        }
        EXPECT_GE(judgePack(in).verdict, before);
    }
}

TEST(Pack, MoreLoadOrResistanceNeverGivesMoreEnergy)
{
    Chance chance(97);
    for (int i = 0; i < 500; ++i) {
        const double r = chance.between(1, 200) / 1e3;
        const double p = chance.between(1, 60);
        const auto energy = [](double inner, double power) {
            return usableEnergy(sloping(), Charge::fromSi(1e4), ohms(inner), watts(power),
                                volts(2.8), 1, 0)
                .atTerminals.si();
        };
        EXPECT_LE(energy(r * 1.1, p), energy(r, p) * (1 + 1e-9));
        EXPECT_LE(energy(r, p * 1.1), energy(r, p) * (1 + 1e-9));
    }
}

TEST(Pack, UsableEnergyIsWhatScipyIntegrates)
{
    const QString python = QStringLiteral("/usr/bin/python3");
    QProcess probe;
    probe.start(python, {QStringLiteral("-c"), QStringLiteral("import scipy.integrate")});
    if (!probe.waitForFinished(60000) || probe.exitCode() != 0)
        GTEST_SKIP() << "python3 with scipy is not installed, so there is nothing to compare with";

    Chance chance(2718);
    QByteArray input;
    std::vector<UsableEnergy> ours;
    for (int i = 0; i < 200; ++i) {
        std::vector<std::pair<double, Voltage>> points;
        double v = chance.between(250, 300);
        QStringList told;
        for (int k = 0; k <= 10; ++k) {
            points.emplace_back(k / 10.0, volts(v));
            told.append(QStringLiteral("[%1,%2]").arg(k / 10.0).arg(v));
            v += chance.oneIn(4) ? 0 : chance.between(1, 15);
        }
        const double inner = chance.between(0, 300) / 1e3;
        const double power = chance.between(1, 90) * 1e3;
        const double floor = chance.between(100, 280);
        const double highest = chance.between(80, 100) / 100.0;
        const double lowest = chance.between(0, 20) / 100.0;
        ours.push_back(usableEnergy(Curve<double, Voltage>(std::move(points)), Charge::fromSi(2e5),
                                    ohms(inner), watts(power), volts(floor), highest, lowest));
        input += QStringLiteral("{\"curve\":[%1],\"charge\":2e5,\"inner\":%2,\"power\":%3,"
                                "\"floor\":%4,\"highest\":%5,\"lowest\":%6}\n")
                     .arg(told.join(QLatin1Char(',')))
                     .arg(inner)
                     .arg(power)
                     .arg(floor)
                     .arg(highest)
                     .arg(lowest)
                     .toLatin1();
    }
    QProcess process;
    process.start(python, {QStringLiteral(OHMWRIGHT_SOURCE_DIR) +
                           QStringLiteral("/tests/published/checks/pack_check.py")});
    ASSERT_TRUE(process.waitForStarted());
    process.write(input);
    process.closeWriteChannel();
    ASSERT_TRUE(process.waitForFinished(60000));
    ASSERT_EQ(process.exitCode(), 0) << process.readAllStandardError().toStdString();
    const QStringList lines = QString::fromLatin1(process.readAllStandardOutput())
                                  .split(QLatin1Char('\n'), Qt::SkipEmptyParts);
    ASSERT_EQ(static_cast<std::size_t>(lines.size()), ours.size());
    int cutOff = 0;
    for (std::size_t i = 0; i < ours.size(); ++i) {
        const QStringList theirs = lines[static_cast<qsizetype>(i)].split(QLatin1Char(' '));
        EXPECT_NEAR(ours[i].atTerminals.si(), theirs[0].toDouble(),
                    1e-6 * std::max(1.0, theirs[0].toDouble()))
            << i;
        EXPECT_NEAR(ours[i].endsAtCharge, theirs[1].toDouble(), 1e-9) << i;
        cutOff += ours[i].cutOff ? 1 : 0;
    }
    EXPECT_GT(cutOff, 20);
    EXPECT_LT(cutOff, 180);
}

} // namespace ohmwright
