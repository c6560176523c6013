// SPDX-License-Identifier: GPL-3.0-or-later
// Sources beside each figure. Wheel energies: worked by an independent script from the formula in
// cycle_energy.h in 1 s steps, tolerance 1e-4.
#include "core/checks/cycle_energy.h"
#include "core/checks/range.h"
#include "core/checks/worksheet.h"
#include "tests/published/checks/reading.h"
#include "tests/support/chance.h"

#include <gtest/gtest.h>

#include <cmath>

namespace ohmwright {

namespace {

constexpr double kKmh = 1 / 3.6;
constexpr double kWhPerKm = 3.6;

QString name(const char *text)
{
    return QString::fromLatin1(text);
}

RoadLoad tableLoad()
{
    RoadLoadFigures figures{kilograms(1400), 0.011, 1, Area::fromSi(0.65)};
    figures.gravity = Acceleration::fromSi(9.81);
    return roadLoadOf(figures);
}

RangeInputs van()
{
    RangeInputs in;
    in.mass = given(kilograms(1400), name("mass"));
    in.rollingCoefficient = given(0.011, name("rolling coefficient"));
    in.dragCoefficient = given(0.36, name("drag coefficient"));
    in.frontalArea = given(Area::fromSi(2.0), name("frontal area"));
    in.efficiency = given(0.85, name("efficiency"));
    in.auxiliaries = given(watts(300), name("auxiliaries"));
    in.usableEnergy = given(joules(22 * 3.6e6), name("usable energy"));
    in.packLimit = given(watts(90e3), name("most power of the pack"));
    RangeInputs::Regeneration back;
    back.set = given(watts(20e3), name("regeneration set"));
    back.packLimit = given(watts(30e3), name("charge limit of the pack"));
    back.efficiency = given(0.75, name("efficiency of regeneration"));
    back.drivenShare = given(0.7, name("share of the driven axle"));
    back.fadesBelow = given(Speed::fromSi(15 * kKmh), name("speed below which it fades"));
    back.fullAbove = given(0.95, name("charge above which none is taken"));
    in.regeneration = back;
    return in;
}

} // namespace

struct CycleRow
{
    const char *key;
    double seconds, metres, tolerance, highest; // km/h
    double drive, net;                          // Wh/km; none: 0
};

// Durations, distances and highest speeds as the regulations and EPA state them (UDDS 7.45 mi,
// HWFET 10.26 mi, FTP-75 17.77 km, WLTC 23.266 km, NEDC 11.007 km printed, allow 1 %).
TEST(DriveCycle, HasTheStatedLengthAndAsksTheStatedEnergy)
{
    const CycleRow rows[] = {
        {"udds", 1369, 11990, 0.5, 56.7 * 1.609344, 113.01, 65.71},
        {"ftp-75", 1874, 17769, 0.5, 56.7 * 1.609344, 0, 0},
        {"hwfet", 765, 16507, 0.5, 59.9 * 1.609344, 107.93, 98.01},
        {"wltc-3b", 1800, 23266, 0.5, 131.3, 131.76, 97.72},
        {"nedc", 1180, 11028.2, 0.05, 120, 113.18, 81.18},
    };
    for (const CycleRow &row : rows) {
        const DriveCycle &cycle = publishedDriveCycle(name(row.key));
        EXPECT_EQ(cycle.duration(), seconds(row.seconds)) << row.key;
        EXPECT_NEAR(cycle.distance().si(), row.metres, row.tolerance) << row.key;
        EXPECT_NEAR(cycle.highest().si(), row.highest * kKmh, 1e-6) << row.key;
        if (row.drive == 0)
            continue;
        const CycleEnergy energy = energyOver(cycle, tableLoad(), PackSide(), seconds(1));
        const double drive = (energy.drive / energy.distance).si() / kWhPerKm;
        const double net = (energy.net / energy.distance).si() / kWhPerKm;
        EXPECT_NEAR(drive, row.drive, row.drive * 1e-4) << row.key;
        EXPECT_NEAR(net, row.net, row.net * 1e-4) << row.key;
        EXPECT_NEAR(energy.distance.si(), cycle.distance().si(), 1e-6);
        // at 10 Hz the corners are kept and only the steps' means are finer
        const CycleEnergy fine = energyOver(cycle, tableLoad(), PackSide(), seconds(0.1));
        EXPECT_NEAR(fine.drive / energy.drive, 1, 2e-3) << row.key;
    }
    EXPECT_NEAR(publishedDriveCycle(name("nedc")).distance().si(), 11007, 110.07);
}

// WLTC 3b by phases, metres from the trace; WLTP energy with TM 1470 kg, f0 130 N, f1 0.6 N/(km/h),
// f2 0.032 N/(km/h)², 1.03: 12.1305 MJ, phases 1.28660, 2.23020, 3.38013, 5.23359 MJ, 1e-4.
TEST(DriveCycle, AsksTheWltpEnergyPhaseByPhase)
{
    RoadLoad load;
    load.mass = kilograms(1470);
    load.rotating = 1.03;
    load.rolling = Force::fromSi(130);
    load.linear = ForcePerSpeed::fromSi(0.6 * 3.6);
    load.drag = ForcePerSpeedSquared::fromSi(0.032 * 3.6 * 3.6);
    const DriveCycle &whole = publishedDriveCycle(name("wltc-3b"));
    const double ends[] = {0, 589, 1022, 1477, 1800};
    const double lengths[] = {3094.5, 4755.9, 7161.7, 8254.1};
    const double energies[] = {1.28660e6, 2.23020e6, 3.38013e6, 5.23359e6};
    for (std::size_t i = 0; i < 4; ++i) {
        const DriveCycle phase = whole.part(seconds(ends[i]), seconds(ends[i + 1]));
        EXPECT_NEAR(phase.distance().si(), lengths[i], 0.6) << i;
        const CycleEnergy energy = energyOver(phase, load, PackSide(), seconds(1));
        EXPECT_NEAR(energy.drive.si(), energies[i], energies[i] * 1e-4) << i;
    }
    EXPECT_NEAR(energyOver(whole, load, PackSide(), seconds(1)).drive.si(), 12.1305e6, 1.3e3);
}

// The first 505 s of UDDS: 5.78 km, 41.2 km/h as printed.
TEST(DriveCycle, GivesAPart)
{
    const DriveCycle hot = publishedDriveCycle(name("udds")).part(seconds(0), seconds(505));
    EXPECT_NEAR(hot.distance().si(), 5780, 5);
    EXPECT_NEAR((hot.distance() / hot.duration()).si(), 41.2 * kKmh, 0.05 * kKmh);
}

TEST(DriveCycle, ReadsATableAndNamesTheLineThatIsWrong)
{
    const auto read = readDriveCycle("time_s,speed_ms\r\n0,0\r\n2,10\r\n\r\n4,0\r\n");
    ASSERT_TRUE(read.has_value());
    EXPECT_EQ(read->points.size(), 3U);
    EXPECT_DOUBLE_EQ(read->distance().si(), 20);
    for (const char *wrong : {"", "a,b\n1,2\n", "time_s,speed_kmh\n0,0\n",
                              "time_s,speed_kmh\n0,0\n0,5\n", "time_s,speed_kmh\n0,0\n1,-5\n",
                              "time_s,speed_kmh\n0,0\n1,x\n", "time_s,speed_kmh\n0,0\n1\n",
                              "time_s,speed_kmh\n0,0\n1,nan\n", "time_s,speed_kmh\n0,0\n1,900\n"}) {
        const auto refused = readDriveCycle(wrong);
        ASSERT_FALSE(refused.has_value()) << wrong;
        EXPECT_TRUE(refused.error().sentence.endsWith(QLatin1Char('.'))) << wrong;
    }
    EXPECT_EQ(readDriveCycle("time_s,speed_kmh\n0,0\n1,-5\n").error().where, name("line 3"));
}

// Over a cycle that begins and ends at rest, net at the wheels is drag and rolling alone; rolling
// is 41.96 Wh/km on every cycle (same script).
TEST(CycleEnergy, LeavesOnlyRollingWithoutDrag)
{
    RoadLoad load = tableLoad();
    load.drag = {};
    for (const DriveCycle &cycle : publishedDriveCycles()) {
        const CycleEnergy energy = energyOver(cycle, load, PackSide(), seconds(0.1));
        EXPECT_NEAR((energy.net / energy.distance).si() / kWhPerKm, 41.96, 0.005);
    }
}

TEST(CycleEnergy, GivesBackNoMoreThanTheLimit)
{
    PackSide pack;
    pack.regeneration = {true, watts(5e3), Speed(), 0.8, 0.6};
    const CycleEnergy low =
        energyOver(publishedDriveCycle(name("udds")), tableLoad(), pack, seconds(0.1));
    EXPECT_EQ(low.mostIntoPack, watts(5e3));
    pack.regeneration.limit = watts(1e6);
    const CycleEnergy free =
        energyOver(publishedDriveCycle(name("udds")), tableLoad(), pack, seconds(0.1));
    EXPECT_GT(free.intoPack, low.intoPack);
    EXPECT_NEAR(free.intoPack / (free.drive - free.net), 0.8 * 0.6, 1e-9);
}

TEST(Range, GoesAsFarAsTheEnergyLasts)
{
    RangeInputs in = van();
    in.wantedRange = given(metres(100e3), name("wanted range"));
    const Check check = judgeRange(in);
    EXPECT_EQ(check.verdict, Verdict::Holds) << check.sentence.toStdString();
    const double each = reading::step(check, name("consumption, WLTC class 3b"));
    const double range = reading::step(check, name("range, WLTC class 3b"));
    EXPECT_NEAR(each * range, 22 * 3.6e6, 22 * 3.6e6 * 1e-3);
    // steady 80 km/h by hand: (0.011·1400·9.80665 + ½·1.2·0.72·v²)/0.85 + 300 W/v
    const double v = 80 * kKmh;
    const double steady = (0.011 * 1400 * 9.80665 + 0.5 * 1.2 * 0.72 * v * v) / 0.85 + 300 / v;
    EXPECT_NEAR(reading::step(check, QString(name("consumption at a steady ") +
                                             show(Speed::fromSi(v), u"km/h"))),
                steady, steady * 5e-4);
}

TEST(Range, IsUnknownWithoutTheEnergyButFailsOnRegenerationAllTheSame)
{
    RangeInputs in = van();
    in.usableEnergy = notKnown<Energy>(name("usable energy"));
    EXPECT_EQ(judgeRange(in).verdict, Verdict::Unknown);
    in.regeneration->set.value = watts(60e3);
    in.mass = notKnown<Mass>(name("mass"));
    EXPECT_EQ(judgeRange(in).verdict, Verdict::Fails);
}

// 20 kW are 50 A at 400 V: told as 50 A as well they agree, told as 16 A they do not.
TEST(Range, DoubtsARegenerationThatIsToldTwiceAndDiffers)
{
    RangeInputs in = van();
    in.regeneration->toldTwice = RegenerationSettings{
        in.regeneration->set, given(amperes(50), name("braking current of the inverter")),
        given(volts(340), name("empty")), given(volts(410), name("full"))};
    EXPECT_TRUE(judgeRange(in).doubts.isEmpty());
    in.regeneration->toldTwice->current.value = amperes(16);
    const Check check = judgeRange(in);
    EXPECT_EQ(check.verdict, Verdict::Unknown);
    ASSERT_EQ(check.doubts.size(), 1);
    EXPECT_TRUE(check.doubts.front().contains(name("braking current of the inverter")));
    EXPECT_TRUE(check.doubts.front().contains(name("regeneration set")));
}

TEST(Range, CapsTheCycleAtTheTopSpeed)
{
    RangeInputs in = van();
    in.topSpeed = given(Speed::fromSi(90 * kKmh), name("top speed"));
    EXPECT_GT(reading::step(judgeRange(in), name("range, WLTC class 3b")),
              reading::step(judgeRange(van()), name("range, WLTC class 3b")));
}

TEST(Range, WaitsWithRegenerationUntilThePackTakesIt)
{
    RangeInputs in = van();
    in.regeneration->fullAbove.value = 0.0; // never
    RangeInputs without = van();
    without.regeneration.reset();
    EXPECT_EQ(reading::step(judgeRange(in), name("range, UDDS")),
              reading::step(judgeRange(without), name("range, UDDS")));
    EXPECT_LT(reading::step(judgeRange(without), name("range, UDDS")),
              reading::step(judgeRange(van()), name("range, UDDS")));
}

// Worse: heavier, less slippery, less efficient, more on besides, less energy, a weaker pack.
TEST(Range, NeverGetsBetterWhenAnInputGetsWorse)
{
    Chance chance(7);
    for (int round = 0; round < 24; ++round) {
        RangeInputs in = van();
        in.mass.value = kilograms(chance.between(900, 2400));
        in.usableEnergy.value = joules(chance.between(8, 40) * 3.6e6);
        in.wantedRange = given(metres(1e3 * chance.between(60, 160)), name("wanted range"));
        RangeInputs worse = in;
        const double factor = 1 + 0.05 * chance.between(1, 6);
        switch (round % 6) {
        case 0:
            worse.mass.value = *in.mass.value * factor;
            break;
        case 1:
            worse.dragCoefficient.value = 0.36 * factor;
            break;
        case 2:
            worse.efficiency.value = 0.85 / factor;
            break;
        case 3:
            worse.auxiliaries.value = watts(300 * factor);
            break;
        case 4:
            worse.usableEnergy.value = *in.usableEnergy.value / factor;
            break;
        default:
            worse.packLimit.value = watts(90e3 / factor);
            break;
        }
        const Check was = judgeRange(in), is = judgeRange(worse);
        EXPECT_GE(is.verdict, was.verdict) << round;
        EXPECT_LE(*is.margin, *was.margin + 1e-9) << round;
    }
}

} // namespace ohmwright
