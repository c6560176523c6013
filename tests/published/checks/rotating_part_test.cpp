// SPDX-License-Identifier: GPL-3.0-or-later
// Sources: Singer and Pytel, Strength of Materials, problems 139 and 140 (rings); Shigley and
// Mischke, Carvill (formulas, worked); ISO 21940-11 (balance, worked from e = G/ω). The overspeed
// of IEC 60034-1 is from memory.
#include "core/checks/rotating_part.h"
#include "core/checks/worksheet.h"
#include "tests/published/checks/reading.h"
#include "tests/support/chance.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace ohmwright {

namespace {

QString name(const char *text)
{
    return QString::fromLatin1(text);
}

RotationSpeed rpm(double n)
{
    return RotationSpeed::fromSi(n * 2 * std::numbers::pi / 60);
}

constexpr Density kSteel = Density::fromSi(7850);

// The disc of the published figures, at 5000 rpm and 1.2 overspeed: 6000 rpm.
RotatingPartInputs coupler()
{
    RotatingPartInputs in;
    in.shape = chosen(RotatingShape::AnnularDisc, name("shape"));
    in.outerRadius = given(metres(0.14), name("outer radius"));
    in.innerRadius = given(metres(0.05), name("bore radius"));
    in.mass = given(kilograms(12), name("mass"));
    in.density = given(kSteel, name("density"));
    in.poisson = given(0.3, name("Poisson's ratio"));
    in.yieldStrength = given(Pressure::fromSi(350e6), name("yield strength"));
    in.certified = true;
    in.highestSpeed = given(rpm(5000), name("highest speed"));
    in.residualUnbalance = given(Unbalance::fromSi(100e-6), name("residual unbalance"));
    return in;
}

} // namespace

// Problem 139: 20 ksi, 490 lb/ft³, g 32.2 ft/s²: rim speed 435.04 ft/s. Problem 140: 150 MPa,
// 0.220 m, 7850 kg/m³: 628.33 rad/s. Tolerance 1e-4.
TEST(RotatingPart, RingHasTheStressOfTheProblems)
{
    const auto ring = [](double density, double radius, double speed) {
        return rotatingStress(RotatingShape::ThinRing, Density::fromSi(density), 0.3,
                              metres(radius), {}, RotationSpeed::fromSi(speed))
            .si();
    };
    // in pounds-force, slugs and feet: 20 ksi is 20 000 · 144 lbf/ft²
    EXPECT_NEAR(ring(490 / 32.2, 1, 435.04), 20e3 * 144, 20e3 * 144 * 2e-4);
    EXPECT_NEAR(ring(7850, 0.220, 628.33), 150e6, 150e6 * 2e-4);
}

// ν 0.3, 7850 kg/m³, ro 0.14, ri 0.05 m, 6000 rpm: ring 60.74, solid 25.06, bore 51.47, outer edge
// 17.02, radial 10.35 MPa. Tolerance 1e-3.
TEST(RotatingPart, DiscsHaveThePublishedStresses)
{
    const Length ro = metres(0.14), ri = metres(0.05);
    const auto stress = [&](RotatingShape shape) {
        return rotatingStress(shape, kSteel, 0.3, ro, ri, rpm(6000)).si() * 1e-6;
    };
    EXPECT_NEAR(stress(RotatingShape::ThinRing), 60.74, 0.06);
    EXPECT_NEAR(stress(RotatingShape::SolidDisc), 25.06, 0.025);
    EXPECT_NEAR(stress(RotatingShape::AnnularDisc), 51.47, 0.05);
    EXPECT_NEAR(annularEdgeStress(kSteel, 0.3, ro, ri, rpm(6000)).si() * 1e-6, 17.02, 0.017);
    EXPECT_NEAR(annularRadialStress(kSteel, 0.3, ro, ri, rpm(6000)).si() * 1e-6, 10.35, 0.0104);
}

// "A tiny central hole doubles the centre stress" (Shigley and Mischke).
TEST(RotatingPart, TinyHoleDoublesTheCentreStress)
{
    const auto stress = [](RotatingShape shape) {
        return rotatingStress(shape, kSteel, 0.3, metres(0.14), metres(1e-7), rpm(6000));
    };
    EXPECT_NEAR(stress(RotatingShape::AnnularDisc) / stress(RotatingShape::SolidDisc), 2, 1e-9);
}

// G 6.3 at 3000 and 6000 rpm on 12 kg: 240.6 and 120.3 g·mm; G 2.5: 7.96 and 3.98 µm.
TEST(RotatingPart, BalancesToTheGradeOfTheStandard)
{
    const auto permitted = [](double grade, double mass, double speed) {
        return permissibleUnbalance(Speed::fromSi(grade * 1e-3), kilograms(mass), rpm(speed)).si();
    };
    EXPECT_NEAR(permitted(6.3, 12, 3000) * 1e6, 240.6, 0.24);
    EXPECT_NEAR(permitted(6.3, 12, 6000) * 1e6, 120.3, 0.12);
    EXPECT_NEAR(permitted(2.5, 1, 3000) * 1e6, 7.96, 0.016);
    EXPECT_NEAR(permitted(2.5, 1, 6000) * 1e6, 3.98, 0.008);
}

TEST(RotatingPart, IsJudgedAtOverspeed)
{
    const Check check = judgeRotatingPart(coupler());
    EXPECT_NEAR(reading::step(check, name("stress at overspeed, disc with a bore")), 51.47e6, 5e4);
    // ½ · ½·12·(0.14² + 0.05²) · 628.32²
    EXPECT_NEAR(reading::step(check, name("stored energy at overspeed")), 26.17e3, 10);
    EXPECT_EQ(check.verdict, Verdict::Holds) << check.sentence.toStdString();
}

TEST(RotatingPart, IsNeverBetterThanUnknownWithoutACertificate)
{
    RotatingPartInputs in = coupler();
    in.certified = false;
    EXPECT_EQ(judgeRotatingPart(in).verdict, Verdict::Unknown);
    EXPECT_TRUE(judgeRotatingPart(in).sentence.contains(name("competent engineer")));
    in.yieldStrength.value = Pressure::fromSi(50e6);
    EXPECT_EQ(judgeRotatingPart(in).verdict, Verdict::Fails);
    in = coupler();
    in.certified = false;
    in.spinTestedTo = given(rpm(6100), name("spin test"), Evidence::Measured);
    EXPECT_EQ(judgeRotatingPart(in).verdict, Verdict::Holds);
    in.spinTestedTo->origin.evidence = Evidence::Seller;
    EXPECT_EQ(judgeRotatingPart(in).verdict, Verdict::Unknown);
    in.certified = true;
    in.spinTestedTo = given(rpm(5900), name("spin test"), Evidence::Measured);
    EXPECT_EQ(judgeRotatingPart(in).verdict, Verdict::Unknown);
}

TEST(RotatingPart, AsksForTheBalanceAndHoldsIt)
{
    RotatingPartInputs in = coupler();
    in.residualUnbalance = notKnown<Unbalance>(name("residual unbalance"));
    EXPECT_EQ(judgeRotatingPart(in).unknowns, QStringList(name("residual unbalance")));
    in.residualUnbalance = given(Unbalance::fromSi(200e-6), name("residual unbalance"));
    EXPECT_EQ(judgeRotatingPart(in).verdict, Verdict::Fails);
    in.balanceGrade.own = Speed::fromSi(16e-3);
    in.balanceGrade.reason = name("as the old flywheel");
    EXPECT_EQ(judgeRotatingPart(in).verdict, Verdict::Holds);
    EXPECT_EQ(judgeRotatingPart(in).publishedVerdict, Verdict::Fails);
}

TEST(RotatingPart, ShowsAStatedFactorBelowThePublishedOne)
{
    RotatingPartInputs in = coupler();
    in.overspeed.value = 1.1;
    EXPECT_EQ(judgeRotatingPart(in).verdict, Verdict::Fails);
    in.leastOverspeed.own = 1.0;
    EXPECT_EQ(judgeRotatingPart(in).publishedVerdict, Verdict::Fails);
    in.innerRadius.value = metres(0.2);
    EXPECT_EQ(judgeRotatingPart(in).refusals.size(), 1);
}

TEST(RotatingPart, NeverGetsBetterWhenAnInputGetsWorse)
{
    Chance chance(8);
    for (int round = 0; round < 300; ++round) {
        RotatingPartInputs in = coupler();
        in.outerRadius.value = metres(0.08 + 0.001 * chance.below(150));
        in.yieldStrength.value = Pressure::fromSi(1e6 * chance.between(60, 500));
        in.residualUnbalance.value = Unbalance::fromSi(1e-6 * chance.between(20, 200));
        in.certified = !chance.oneIn(4);
        RotatingPartInputs worse = in;
        const double factor = 1 + 0.05 * chance.between(1, 6);
        switch (chance.below(7)) {
        case 0:
            worse.outerRadius.value = *in.outerRadius.value * factor;
            break;
        case 1:
            worse.density.value = kSteel * factor;
            break;
        case 2:
            worse.yieldStrength.value = *in.yieldStrength.value / factor;
            break;
        case 3:
            worse.highestSpeed.value = *in.highestSpeed.value * factor;
            break;
        case 4:
            worse.residualUnbalance.value = *in.residualUnbalance.value * factor;
            break;
        case 5:
            worse.concentration = given(factor, name("notch factor"));
            break;
        default:
            worse.certified = false;
            break;
        }
        const Check was = judgeRotatingPart(in), is = judgeRotatingPart(worse);
        EXPECT_GE(is.verdict, was.verdict) << round;
        EXPECT_LE(*is.margin, *was.margin + 1e-9) << round;
    }
}

// Nothing is said of the stress of a part whose shape nobody told.
TEST(RotatingPart, IsUnknownWithoutAShape)
{
    RotatingPartInputs in = coupler();
    in.shape.value.reset();
    const Check check = judgeRotatingPart(in);
    EXPECT_EQ(check.verdict, Verdict::Unknown);
    EXPECT_EQ(check.unknowns, QStringList(name("shape")));
}

} // namespace ohmwright
