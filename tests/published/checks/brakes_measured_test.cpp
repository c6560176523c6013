// SPDX-License-Identifier: GPL-3.0-or-later
// Sources: notice on the 2013 change of the British brake test (cars first used from September
// 2010: 58 %; imbalance above 30 % fails), which carries Directive 2014/45/EU's figures; the
// parking brake's 16 % and UN R13-H's 6.43 m/s² at 500 N are from memory. A deceleration of 6.43
// m/s² is 65.6 % of standard gravity.
#include "core/checks/brakes_measured.h"
#include "tests/published/checks/reading.h"
#include "tests/support/chance.h"

#include <gtest/gtest.h>

namespace ohmwright {

namespace {

AxleBraking axle(const QString &name, double left, double right)
{
    return {name, given(Force::fromSi(left), QString(name + QStringLiteral(", left"))),
            given(Force::fromSi(right), QString(name + QStringLiteral(", right")))};
}

BrakesMeasuredInputs bench(double fl, double fr, double rl, double rr, double mass = 1000)
{
    BrakesMeasuredInputs in;
    in.record = {QStringLiteral("test station"), QDate(2026, 5, 1), QStringLiteral("rollers")};
    in.mass = given(kilograms(mass), QStringLiteral("mass"));
    in.axles = {axle(QStringLiteral("front axle"), fl, fr),
                axle(QStringLiteral("rear axle"), rl, rr)};
    return in;
}

} // namespace

// 58 % of 1000 kg · g is 5687.9 N in all.
TEST(BrakesMeasured, HoldsTheEfficiencyToFiftyEightPerCent)
{
    EXPECT_EQ(judgeBrakesMeasured(bench(1800, 1800, 1044, 1044)).verdict, Verdict::Tight);
    EXPECT_EQ(judgeBrakesMeasured(bench(1800, 1800, 1043, 1043)).verdict, Verdict::Fails);
    EXPECT_EQ(judgeBrakesMeasured(bench(2200, 2200, 1200, 1200)).verdict, Verdict::Holds);
}

TEST(BrakesMeasured, FailsAnImbalanceAboveThirtyPerCent)
{
    EXPECT_EQ(judgeBrakesMeasured(bench(2400, 1700, 1500, 1500)).verdict, Verdict::Tight); // 29.2 %
    EXPECT_EQ(judgeBrakesMeasured(bench(2400, 1650, 1500, 1500)).verdict, Verdict::Fails); // 31.3 %
    EXPECT_EQ(judgeBrakesMeasured(bench(4000, 4000, 0, 0)).verdict, Verdict::Fails);
}

TEST(BrakesMeasured, HoldsARoadTestToSixPointFourThree)
{
    BrakesMeasuredInputs in;
    in.record = {QStringLiteral("first tester"), QDate(2026, 5, 1),
                 QStringLiteral("decelerometer")};
    in.roadDeceleration = given(0.70, QStringLiteral("deceleration"));
    EXPECT_EQ(judgeBrakesMeasured(in).verdict, Verdict::Tight);
    in.roadDeceleration->value = 0.655;
    EXPECT_EQ(judgeBrakesMeasured(in).verdict, Verdict::Fails);
    in.roadDeceleration->value = 0.75;
    in.pedalForce = given(Force::fromSi(520), QStringLiteral("pedal force"));
    EXPECT_EQ(judgeBrakesMeasured(in).verdict, Verdict::Fails);
}

TEST(BrakesMeasured, HoldsTheParkingBrakeToSixteenPerCent)
{
    BrakesMeasuredInputs in = bench(2200, 2200, 1200, 1200);
    in.parkingForce = given(Force::fromSi(1560), QStringLiteral("parking brake"));
    EXPECT_EQ(judgeBrakesMeasured(in).verdict, Verdict::Fails);
    in.parkingForce->value = Force::fromSi(1800);
    EXPECT_EQ(judgeBrakesMeasured(in).verdict, Verdict::Holds);
}

TEST(BrakesMeasured, IsUnknownWithoutAMeasurementOrAWheel)
{
    BrakesMeasuredInputs in;
    in.record = {QStringLiteral("first tester"), QDate(2026, 5, 1), QStringLiteral("rollers")};
    EXPECT_EQ(judgeBrakesMeasured(in).verdict, Verdict::Unknown);
    in = bench(2200, 2200, 1200, 1200);
    in.axles[1].left.value.reset();
    EXPECT_EQ(judgeBrakesMeasured(in).unknowns, QStringList(QStringLiteral("rear axle, left")));
    EXPECT_EQ(judgeBrakesMeasured(bench(-5, 2200, 1200, 1200)).refusals.size(), 1);
}

// Worse: a heavier vehicle, a weaker wheel of the weaker side, a stronger of the stronger.
TEST(BrakesMeasured, NoVerdictIsBetterWhenAnInputIsWorse)
{
    Chance chance(45);
    for (int i = 0; i < 300; ++i) {
        const double strong = chance.between(1500, 3500);
        const double weak = strong * chance.between(60, 100) / 100;
        const double rear = chance.between(500, 2000);
        const double mass = chance.between(800, 1800);
        const Verdict before = judgeBrakesMeasured(bench(strong, weak, rear, rear, mass)).verdict;
        EXPECT_GE(judgeBrakesMeasured(bench(strong, weak, rear, rear, mass * 1.2)).verdict, before);
        EXPECT_GE(judgeBrakesMeasured(bench(strong, weak * 0.8, rear, rear, mass)).verdict, before);
    }
}

} // namespace ohmwright
