// SPDX-License-Identifier: GPL-3.0-or-later
// Sources: stress areas, ISO 898-1 (0.5 %); design resistance of bolts in shear to EN 1993-1-8, as
// a steel maker's tables print it (M16 60.3, M20 94.1 kN in class 8.8; 62.8, 98.0 kN in 10.9);
// least tensile loads, ISO 898-1 (M8 29 200, M10 46 400, M12 67 400 N in 8.8). Overturning:
// equilibrium, independently by brute force here. The accelerations of UN R100 are from
// memory; 20 times the battery's weight is what a summary of the Australian NCOP14 prints, which
// was read (zeva.com.au, Safety Considerations: "designed to withstand 20Gs"); it names no axis.
#include "core/checks/restraint.h"
#include "core/checks/worksheet.h"
#include "tests/published/checks/reading.h"
#include "tests/support/chance.h"

#include <gtest/gtest.h>

namespace ohmwright {

namespace {

RestraintInputs box()
{
    RestraintInputs in;
    in.mass = given(kilograms(120), QStringLiteral("mass of the box"));
    in.height = given(metres(0.15), QStringLiteral("height of its centre"));
    in.bolts = given(8.0, QStringLiteral("bolts"));
    in.lengthwise = given(metres(0.9), QStringLiteral("length of a row"));
    in.crosswise = given(metres(0.5), QStringLiteral("distance of the rows"));
    in.size = given(BoltSize::M10, QStringLiteral("size of the bolts"));
    in.grade = given(BoltClass::Class88, QStringLiteral("class of the bolts"));
    in.sheet = given(metres(0.003), QStringLiteral("thickness of the sheet"));
    in.sheetStrength = given(Pressure::fromSi(340e6), QStringLiteral("strength of the sheet"));
    in.spreader = given(metres(0.030), QStringLiteral("washers"));
    return in;
}

} // namespace

TEST(Bolts, HaveTheStandardsAreasAndLoads)
{
    const double areas[] = {20.1, 36.6, 58.0, 84.3, 115, 157, 192, 245};
    for (std::size_t i = 0; i < 8; ++i)
        EXPECT_NEAR(stressAreaOf(static_cast<BoltSize>(i)).si() * 1e6, areas[i], 0.005 * areas[i]);
    const std::pair<BoltSize, double> least[] = {
        {BoltSize::M8, 29200}, {BoltSize::M10, 46400}, {BoltSize::M12, 67400}};
    for (const auto &[size, load] : least)
        EXPECT_NEAR((tensileStrengthOf(BoltClass::Class88) * stressAreaOf(size)).si(), load,
                    0.005 * load);
}

// Tolerance 0.5 %.
TEST(Bolts, HaveThePrintedShearResistance)
{
    const auto kilonewtons = [](BoltSize size, BoltClass grade) {
        return shearResistanceOf(size, grade).si() / 1e3;
    };
    EXPECT_NEAR(kilonewtons(BoltSize::M16, BoltClass::Class88), 60.3, 0.3);
    EXPECT_NEAR(kilonewtons(BoltSize::M20, BoltClass::Class88), 94.1, 0.47);
    EXPECT_NEAR(kilonewtons(BoltSize::M16, BoltClass::Class109), 62.8, 0.31);
    EXPECT_NEAR(kilonewtons(BoltSize::M20, BoltClass::Class109), 98.0, 0.49);
}

// Brute force: pulls in proportion to the distance from the edge, scaled until they hold the
// moment.
TEST(Restraint, PullsAsEquilibriumAsks)
{
    Chance chance(20);
    for (int round = 0; round < 50; ++round) {
        const int count = chance.between(2, 9);
        const double length = chance.between(100, 2000) / 1000.0;
        const double moment = chance.between(100, 9000);
        const double rows = chance.between(1, 6);
        double held = 0; // with one newton for each metre
        for (int i = 0; i < count; ++i) {
            const double x = length * i / (count - 1);
            held += rows * x * x;
        }
        EXPECT_NEAR(greatestPull(joules(moment), rows, count, metres(length)).si(),
                    moment / held * length, 1e-6 * moment);
    }
}

// 120 kg · 20 · 9.80665 = 23.54 kN; M = 3.530 kN·m over two rows at 0.3, 0.6, 0.9 m:
// 3530.4·0.9/(2·1.26) = 1260.9 N; 8 g sideways: 9.414 kN·0.15/(0.5·4) = 706.1 N.
TEST(Restraint, GivesForcesAndPulls)
{
    const Check check = judgeRestraint(box());
    EXPECT_NEAR(reading::step(check, QStringLiteral("force forward or rearward")), 23540, 5);
    EXPECT_NEAR(
        reading::step(check, QStringLiteral("tension of the far bolts, forward or rearward")),
        1260.9, 0.6);
    EXPECT_NEAR(reading::step(check, QStringLiteral("tension of the far bolts, sideways")), 706.1,
                0.6);
    EXPECT_EQ(check.verdict, Verdict::Holds);
    EXPECT_EQ(check.caution, QStringLiteral("restraint"));
}

// 20 times the battery's weight, as the summary of NCOP14 prints it. Exact.
TEST(Restraint, AsksForTwentyTimesTheWeight)
{
    EXPECT_EQ(RestraintInputs().forward.published, 20);
    const Check check = judgeRestraint(box());
    const double weight = box().mass.value->si() * 9.80665;
    EXPECT_NEAR(reading::step(check, QStringLiteral("force forward or rearward")) / weight, 20,
                0.1);
}

TEST(Restraint, FailsInThinSheetWhateverElseIsNotKnown)
{
    RestraintInputs in = box();
    in.sheet.value = metres(0.0007);
    in.spreader.value = metres(0.012);
    in.grade = notKnown<BoltClass>(QStringLiteral("class of the bolts"));
    in.mass.value = kilograms(400);
    const Check check = judgeRestraint(in);
    EXPECT_EQ(check.verdict, Verdict::Fails);
    EXPECT_EQ(check.unknowns, QStringList(QStringLiteral("class of the bolts")));
    in = box();
    in.sheetStrength = notKnown<Pressure>(QStringLiteral("strength of the sheet"));
    EXPECT_EQ(judgeRestraint(in).verdict, Verdict::Unknown);
}

TEST(Restraint, RefusesAnOddNumberOfBoltsAndShowsALoosenedThreshold)
{
    RestraintInputs in = box();
    in.bolts.value = 7;
    EXPECT_EQ(judgeRestraint(in).refusals.size(), 1);
    in = box();
    in.mass.value = kilograms(3000);
    EXPECT_EQ(judgeRestraint(in).verdict, Verdict::Fails);
    in.forward.own = 3;
    in.sideways.own = in.upward.own = 1;
    in.forward.reason = QStringLiteral("trailer");
    const Check loosened = judgeRestraint(in);
    EXPECT_NE(loosened.verdict, Verdict::Fails);
    EXPECT_EQ(loosened.publishedVerdict, Verdict::Fails);
    EXPECT_EQ(RestraintInputs::ofClass(VehicleClass::M3N3, true).published, 6.6);
}

// Worse: more mass, a higher centre, fewer bolts, rows nearer, thinner sheet.
TEST(Restraint, ScalesAndNeverJudgesWorseInputsBetter)
{
    Chance chance(21);
    for (int round = 0; round < 200; ++round) {
        RestraintInputs in = box();
        in.mass.value = kilograms(chance.between(40, 900));
        in.height.value = metres(chance.between(0, 500) / 1000.0);
        in.sheet.value = metres(chance.between(7, 60) / 10000.0);
        in.bolts.value = 2 * chance.between(3, 8);
        const Check check = judgeRestraint(in);
        const QString force = QStringLiteral("force forward or rearward");
        RestraintInputs worse = in;
        worse.mass.value = *in.mass.value * 2.0;
        EXPECT_NEAR(reading::step(judgeRestraint(worse), force) / reading::step(check, force), 2,
                    2e-3);
        EXPECT_GE(judgeRestraint(worse).verdict, check.verdict);
        worse = in;
        worse.height.value = *in.height.value * 1.5;
        EXPECT_GE(judgeRestraint(worse).verdict, check.verdict);
        worse = in;
        worse.bolts.value = *in.bolts.value - 2;
        EXPECT_GE(judgeRestraint(worse).verdict, check.verdict);
        worse = in;
        worse.crosswise.value = *in.crosswise.value * 0.7;
        EXPECT_GE(judgeRestraint(worse).verdict, check.verdict);
        worse = in;
        worse.sheet.value = *in.sheet.value * 0.8;
        EXPECT_GE(judgeRestraint(worse).verdict, check.verdict);
    }
}

} // namespace ohmwright
