// SPDX-License-Identifier: GPL-3.0-or-later
// Sources: ISO 898-1 (stress areas, proof loads), Shigley (T = K·F·d, 75 % of proof), a
// strength-of-materials text (ten 20 mm bolts; also its example of two rows). The factor 1.25 of EN
// 1993-1-8 is from memory.
#include "core/checks/bolted_flange.h"
#include "core/checks/worksheet.h"
#include "tests/published/checks/reading.h"
#include "tests/support/chance.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <numbers>

namespace ohmwright {

namespace {

QString name(const char *text)
{
    return QString::fromLatin1(text);
}

Length mm(double length)
{
    return metres(length * 1e-3);
}

// Six M10 of 8.8 on a 60 mm radius, dry.
BoltedFlangeInputs flange()
{
    BoltedFlangeInputs in;
    in.bolts = given(6.0, name("bolts"));
    in.diameter = given(mm(10), name("thread"));
    in.pitch = given(mm(1.5), name("pitch"));
    in.strength = chosen(BoltClass::Class88, name("class"), Evidence::Nameplate);
    in.circleRadius = given(mm(60), name("circle radius"));
    in.tightening = given(Torque::fromSi(45), name("tightening"));
    in.nutFactor = given(0.2, name("nut factor"));
    in.friction = given(0.15, name("friction"));
    in.carried = given(Torque::fromSi(400), name("torque carried"));
    return in;
}

} // namespace

// As and proof loads of ISO 898-1, coarse threads. Tolerance 0.5 %; for loads at least the 100 N
// they are printed to (M6, 8.8: 11600 N printed, 20.12 mm² at 580 MPa is 11672 N).
TEST(BoltedFlange, HasTheStressAreasAndProofLoadsOfTheStandard)
{
    struct Row
    {
        double d, area, proof88, proof109, proof129;
    };
    const Row rows[] = {{6, 20.1, 11600, 16700, 19500},
                        {8, 36.6, 21200, 30400, 35500},
                        {10, 58.0, 33700, 48100, 56300},
                        {12, 84.3, 48900, 70000, 81800},
                        {14, 115, 66700, 95500, 0},
                        {16, 157, 91000, 130000, 0},
                        {18, 192, 0, 0, 0},
                        {20, 245, 0, 0, 0}};
    for (const Row &row : rows) {
        const auto pitch = coarsePitch(mm(row.d));
        ASSERT_TRUE(pitch) << row.d;
        const Area area = stressArea(mm(row.d), *pitch);
        EXPECT_NEAR(area.si() * 1e6, row.area, row.area * 0.005) << row.d;
        const auto proof = [&](BoltClass strength) {
            return (proofStress(strength, mm(row.d)) * area).si();
        };
        if (row.proof88 > 0) {
            EXPECT_NEAR(proof(BoltClass::Class88), row.proof88,
                        std::max(100.0, row.proof88 * 0.005))
                << row.d;
        }
        if (row.proof109 > 0) {
            EXPECT_NEAR(proof(BoltClass::Class109), row.proof109,
                        std::max(100.0, row.proof109 * 0.005))
                << row.d;
        }
        if (row.proof129 > 0) {
            EXPECT_NEAR(proof(BoltClass::Class129), row.proof129,
                        std::max(100.0, row.proof129 * 0.005))
                << row.d;
        }
    }
}

// M10, 50 N·m, K 0.2: 25.0 kN, exact. 75 % of proof on M10 8.8 then wants 50.5 N·m (25.23 kN).
TEST(BoltedFlange, TurnsTighteningIntoClampForce)
{
    BoltedFlangeInputs in = flange();
    in.tightening.value = Torque::fromSi(50);
    const Check check = judgeBoltedFlange(in);
    EXPECT_NEAR(reading::step(check, name("clamp force of a bolt")), 25.0e3, 1);
    EXPECT_NEAR(reading::step(check, name("tightening to 75 % of the proof load")), 50.5, 0.26);
}

// M12 8.8 at 70 % of proof, K 0.2: about 34 kN and 82 N·m. Tolerance 1 %.
TEST(BoltedFlange, GivesThePrintedTighteningOfAnM12)
{
    const Force proof = proofStress(BoltClass::Class88, mm(12)) * stressArea(mm(12), mm(1.75));
    EXPECT_NEAR((proof * 0.7).si(), 34.2e3, 342);
    EXPECT_NEAR((proof * 0.7 * mm(12) * 0.2).si(), 82.1, 0.82);
}

// Six M10 at 75 % of proof, r 60 mm, µ 0.15, safety 1.5: 908.3 N·m in 8.8, 1299.8 in 10.9; 1e-3.
TEST(BoltedFlange, CarriesByFriction)
{
    const auto carries = [](BoltClass strength) {
        const Force clamp = proofStress(strength, mm(10)) * stressArea(mm(10), mm(1.5)) * 0.75;
        return (torqueByFriction(6, clamp, 0.15, mm(60)) / 1.5).si();
    };
    EXPECT_NEAR(carries(BoltClass::Class88), 908.3, 0.91);
    EXPECT_NEAR(carries(BoltClass::Class109), 1299.8, 1.3);
}

// Ten 20 mm bolts on a 400 mm circle at 40 MPa: 25.13 kN·m, 1e-3.
TEST(BoltedFlange, CarriesByShear)
{
    const Area bolt = mm(20) * mm(20) * (std::numbers::pi / 4);
    EXPECT_NEAR(torqueByShear(10, bolt, Pressure::fromSi(40e6), mm(200)).si(), 25.13e3, 25);
}

// 22.5 kN, least 2/2.6 of it: 17.31 kN · 6 · 0.15 · 60 mm = 934.6 N·m; greatest 27.69 kN of 33.6.
TEST(BoltedFlange, CountsWithTheScatterOfTightening)
{
    const Check check = judgeBoltedFlange(flange());
    EXPECT_NEAR(reading::step(check, name("torque by friction")), 934.6, 0.05);
    EXPECT_EQ(check.verdict, Verdict::Holds) << check.sentence.toStdString();
    BoltedFlangeInputs in = flange();
    in.tightening.value = Torque::fromSi(60);
    const Comparison *most = nullptr;
    const Check tooTight = judgeBoltedFlange(in);
    most = reading::comparison(tooTight, name("greatest clamp force"));
    ASSERT_NE(most, nullptr);
    EXPECT_EQ(most->verdict, Verdict::Fails);
}

TEST(BoltedFlange, FailsBySlippingThoughTheClassIsUnknown)
{
    BoltedFlangeInputs in = flange();
    in.strength.value.reset();
    EXPECT_EQ(judgeBoltedFlange(in).verdict, Verdict::Unknown);
    in.carried.value = Torque::fromSi(900);
    EXPECT_EQ(judgeBoltedFlange(in).verdict, Verdict::Fails);
    in.bolts.value = 0;
    EXPECT_EQ(judgeBoltedFlange(in).refusals.size(), 1);
    in.bolts.value = 6.5;
    EXPECT_EQ(judgeBoltedFlange(in).refusals.size(), 1);
    in = flange();
    in.bolts.value.reset();
    EXPECT_EQ(judgeBoltedFlange(in).unknowns, QStringList(name("bolts")));
}

// Worse: fewer bolts, a narrower circle, slippery faces, more scatter, more torque to carry.
TEST(BoltedFlange, NeverGetsBetterWhenAnInputGetsWorse)
{
    Chance chance(9);
    for (int round = 0; round < 300; ++round) {
        BoltedFlangeInputs in = flange();
        in.bolts.value = chance.between(3, 12);
        in.tightening.value = Torque::fromSi(chance.between(20, 60));
        in.carried.value = Torque::fromSi(chance.between(150, 1000));
        BoltedFlangeInputs worse = in;
        const double factor = 1 + 0.05 * chance.between(1, 6);
        switch (chance.below(5)) {
        case 0:
            worse.bolts.value = *in.bolts.value - 1;
            break;
        case 1:
            worse.circleRadius.value = mm(60 / factor);
            break;
        case 2:
            worse.friction.value = 0.15 / factor;
            break;
        case 3:
            worse.scatter.value = 1.6 * factor;
            break;
        default:
            worse.carried.value = *in.carried.value * factor;
            break;
        }
        const Check was = judgeBoltedFlange(in), is = judgeBoltedFlange(worse);
        EXPECT_GE(is.verdict, was.verdict) << round;
        EXPECT_LE(*is.margin, *was.margin + 1e-9) << round;
    }
}

} // namespace ohmwright
