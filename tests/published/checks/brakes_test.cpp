// SPDX-License-Identifier: GPL-3.0-or-later
// Sources: D. Halliday, R. Resnick, J. Walker, Fundamentals of Physics, 8th ed., the car whose four
// wheels lock: weight 11 kN, L 4.2 m, centre 1.8 m behind the front axle and 0.75 m high, friction
// 0.40; answers 2.0 and 3.5 kN on each rear and front wheel, 0.79 and 1.4 kN of braking (inputs
// read, answers from memory, agreeing with arithmetic). Directive 70/311/EEC, annex II, the brakes
// of M1 (read): 50 daN at the pedal. UN Regulation 13, annex 4, 1.1.2 (read in GRRF-56-3): the mean
// fully developed deceleration, dm = (vb² − ve²)/(25.92·(se − sb)); with the part 0.0060·V² of the
// stopping distance of UN R13-H, from memory, that is the 6.43 m/s² of brakes.h.
#include "core/checks/brakes.h"
#include "core/checks/worksheet.h"
#include "tests/published/checks/reading.h"
#include "tests/support/chance.h"

#include <gtest/gtest.h>

namespace ohmwright {

namespace {

constexpr double kGravity = 9.80665;

BrakesInputs van()
{
    BrakesInputs in;
    in.mass = given(kilograms(1400), QStringLiteral("mass"));
    in.frontAxle = given(kilograms(728), QStringLiteral("front axle"));
    in.wheelbase = given(metres(2.4), QStringLiteral("wheelbase"));
    in.height = given(metres(0.55), QStringLiteral("height of the centre"));
    in.approvedMass = given(kilograms(1560), QStringLiteral("plate"));
    in.frontForce = given(Force::fromSi(8200), QStringLiteral("front brakes"));
    in.rearForce = given(Force::fromSi(2900), QStringLiteral("rear brakes"));
    in.pedalForce = given(Force::fromSi(380), QStringLiteral("pedal"));
    in.boost = given(BrakeBoost::VacuumPump, QStringLiteral("boost"));
    in.vacuum = given(Pressure::fromSi(75e3), QStringLiteral("vacuum"));
    return in;
}

} // namespace

// Tolerance: the printed digit.
TEST(Brakes, LoadTheAxlesAsThePhysicsBookHasIt)
{
    BrakesInputs in = van();
    in.mass.value = kilograms(11000 / kGravity);
    in.frontAxle.value = *in.mass.value * (2.4 / 4.2);
    in.wheelbase.value = metres(4.2);
    in.height.value = metres(0.75);
    in.frontForce.value = Force::fromSi(2 * 1414.3); // locked: in proportion to the loads
    in.rearForce.value = Force::fromSi(2 * 785.7);
    const Check check = judgeBrakes(in);
    const double front =
        reading::step(check, QStringLiteral("load of the front axle while braking so"));
    EXPECT_NEAR(front / 2, 3.5e3, 50);
    EXPECT_NEAR((11000 - front) / 2, 2.0e3, 50);
    EXPECT_NEAR(0.4 * front / 2, 1.4e3, 50);
    EXPECT_NEAR(0.4 * (11000 - front) / 2, 0.79e3, 5);
    // both axles use the friction there is
    EXPECT_NEAR(reading::step(check, QStringLiteral("adhesion used by the front axle")), 0.4, 1e-3);
    EXPECT_NEAR(reading::step(check, QStringLiteral("adhesion used by the rear axle")), 0.4, 1e-3);
    EXPECT_EQ(check.verdict, Verdict::Fails); // 3.9 m/s²
}

// z ≥ 0.1 + 0.7·(k − 0.2): k 0.8 at 0.52 g, k 0.2 at 0.1 g.
// 1/(25.92·0.0060) = 6.430 m/s²; 50 daN. Tolerance: last digit.
TEST(Brakes, AreHeldToTheRegulationsDecelerationAndPedal)
{
    const BrakesInputs in;
    EXPECT_NEAR(in.deceleration.published.si(), 1 / (25.92 * 0.0060), 0.005);
    EXPECT_EQ(in.pedal.published.si(), 50 * 10);
}

TEST(Brakes, KeepTheRegulationsAdhesion)
{
    EXPECT_NEAR(mostAdhesionUsed(0.52), 0.8, 1e-12);
    EXPECT_NEAR(mostAdhesionUsed(0.1), 0.2, 1e-12);
    EXPECT_NEAR(frontShareBraking(0.5, metres(0.5), metres(2.5), 0.8), 0.66, 1e-12);
}

// 11.1 kN/1400 kg = 7.929 m/s²; share 73.87 %; together at (0.7387 − 0.52)·2.4/0.55 = 0.9545 g.
TEST(Brakes, DecelerateAndBalance)
{
    const Check check = judgeBrakes(van());
    EXPECT_NEAR(reading::step(check, QStringLiteral("deceleration, as driven")), 7.929, 5e-4);
    EXPECT_NEAR(
        reading::step(check,
                      QStringLiteral("braking at which both axles lock together (times gravity)")),
        0.9545, 2e-4);
    EXPECT_EQ(check.verdict, Verdict::Holds);
    EXPECT_EQ(check.caution, QStringLiteral("brakes"));
}

TEST(Brakes, FailWithoutVacuumAndAreUnknownWithoutKnowingTheBoost)
{
    BrakesInputs in = van();
    in.boost.value = BrakeBoost::EngineVacuum;
    EXPECT_EQ(judgeBrakes(in).verdict, Verdict::Fails);
    in.engineStays = true;
    EXPECT_EQ(judgeBrakes(in).verdict, Verdict::Holds);
    in.boost = notKnown<BrakeBoost>(QStringLiteral("boost"));
    EXPECT_EQ(judgeBrakes(in).sentence, QStringLiteral("Unknown for want of boost."));
    in.boost = given(BrakeBoost::VacuumPump, QStringLiteral("boost"));
    in.vacuum = notKnown<Pressure>(QStringLiteral("vacuum"));
    EXPECT_EQ(judgeBrakes(in).verdict, Verdict::Unknown);
    in.boost.value = BrakeBoost::Unassisted;
    EXPECT_EQ(judgeBrakes(in).verdict, Verdict::Holds);
}

TEST(Brakes, FailOnceOverThePlateWhateverElseIsNotKnown)
{
    BrakesInputs in = van();
    in.height = notKnown<Length>(QStringLiteral("height of the centre"));
    EXPECT_EQ(judgeBrakes(in).verdict, Verdict::Unknown);
    in.approvedMass.value = kilograms(1350);
    EXPECT_EQ(judgeBrakes(in).verdict, Verdict::Fails);
    in = van();
    in.pedalForce.value = Force::fromSi(620);
    EXPECT_EQ(judgeBrakes(in).verdict, Verdict::Fails);
    in = van();
    in.frontAxle.value = kilograms(1500);
    EXPECT_EQ(judgeBrakes(in).refusals.size(), 1);
    in = van();
    in.frontForce.value = in.rearForce.value = Force();
    EXPECT_EQ(judgeBrakes(in).refusals.size(), 1);
}

// 11.1 kN/1400 kg = 7.929 m/s²; /1700 kg = 6.529 m/s² (1.5 % over 6.43); /1750 kg = 6.343 m/s².
TEST(Brakes, AreJudgedAtThePlatedMassAsWell)
{
    BrakesInputs in = van();
    in.approvedMass.value = kilograms(1700);
    Check check = judgeBrakes(in);
    const QString laden = QStringLiteral("deceleration, at the plated gross mass");
    EXPECT_NEAR(reading::step(check, laden), 6.529, 5e-4);
    EXPECT_EQ(check.verdict, Verdict::Tight);
    EXPECT_TRUE(check.result.contains(QStringLiteral("plated gross mass")));
    in.approvedMass.value = kilograms(1750);
    check = judgeBrakes(in);
    EXPECT_EQ(check.verdict, Verdict::Fails);
    EXPECT_EQ(reading::comparison(check, QStringLiteral("deceleration, as driven"))->verdict,
              Verdict::Holds);
    // above the plate the mass as driven is the worse
    in = van();
    in.approvedMass.value = kilograms(1350);
    EXPECT_TRUE(judgeBrakes(in).result.contains(QStringLiteral("as driven with")));
}

TEST(Brakes, RearFirstFails)
{
    BrakesInputs in = van();
    in.frontForce.value = Force::fromSi(6600);
    in.rearForce.value = Force::fromSi(4500);
    EXPECT_EQ(judgeBrakes(in).verdict, Verdict::Fails);
}

// Worse: more mass on both axles alike, less brake force on both alike, a higher centre while the
// balance is what decides, a smaller plate, less vacuum.
TEST(Brakes, ScaleAndNeverJudgeWorseInputsBetter)
{
    Chance chance(22);
    for (int round = 0; round < 300; ++round) {
        BrakesInputs in = van();
        in.frontForce.value = Force::fromSi(chance.between(5000, 9500));
        in.rearForce.value = Force::fromSi(chance.between(1500, 5000));
        in.vacuum.value = Pressure::fromSi(chance.between(40, 90) * 1e3);
        const Check check = judgeBrakes(in);
        BrakesInputs twice = in;
        twice.mass.value = *in.mass.value * 2.0;
        twice.frontAxle.value = *in.frontAxle.value * 2.0;
        const QString a = QStringLiteral("deceleration, as driven");
        EXPECT_NEAR(reading::step(judgeBrakes(twice), a) * 2, reading::step(check, a), 0.01);
        EXPECT_GE(judgeBrakes(twice).verdict, check.verdict);
        BrakesInputs worse = in;
        worse.approvedMass.value = *in.approvedMass.value * (chance.between(50, 99) / 100.0);
        // a smaller plate is less to stop, but no better than the mass it is driven with
        const QString plate = QStringLiteral("mass the brakes were approved for");
        EXPECT_GE(reading::comparison(judgeBrakes(worse), plate)->verdict,
                  reading::comparison(check, plate)->verdict);
        worse = in;
        worse.vacuum.value = *in.vacuum.value * 0.8;
        EXPECT_GE(judgeBrakes(worse).verdict, check.verdict);
        worse = in;
        worse.height.value = *in.height.value * 1.2;
        const QString first = QStringLiteral("front axle locks first up to (times gravity)");
        EXPECT_GE(reading::comparison(judgeBrakes(worse), first)->verdict,
                  reading::comparison(check, first)->verdict);
    }
}

} // namespace ohmwright
