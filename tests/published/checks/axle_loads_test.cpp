// SPDX-License-Identifier: GPL-3.0-or-later
// Sources: Jazar, Vehicle Dynamics: Theory and Application, example 40; Gillespie (a car's axle
// weights); Peterbilt, body builder's manual, appendix B (a load between the axles); lifting
// worked from the formula, which two derivations give alike.
#include "core/checks/axle_loads.h"
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

MovedMass moved(MassMove move, const char *what, double mass, double place)
{
    return {name(what), move, given(kilograms(mass), name(what)),
            given(metres(place), QString(name("place of ") + name(what))), std::nullopt};
}

AxleLoadsInputs van()
{
    AxleLoadsInputs in;
    in.wheelbase = given(metres(2.4), name("wheelbase"));
    in.frontBefore = given(kilograms(600), name("front before"), Evidence::Measured);
    in.rearBefore = given(kilograms(520), name("rear before"), Evidence::Measured);
    in.moved = {moved(MassMove::Out, "engine", 150, -0.1), moved(MassMove::Out, "tank", 40, 2.2),
                moved(MassMove::In, "motor", 60, 0.1), moved(MassMove::In, "battery", 240, 1.6),
                moved(MassMove::Load, "people", 150, 1.2)};
    in.frontPlate = given(kilograms(750), name("front plate"), Evidence::Nameplate);
    in.rearPlate = given(kilograms(900), name("rear plate"), Evidence::Nameplate);
    in.grossPlate = given(kilograms(1600), name("gross plate"), Evidence::Nameplate);
    in.frontTyres.load = given(kilograms(475), name("load index of the front tyres"));
    in.rearTyres.load = given(kilograms(475), name("load index of the rear tyres"));
    return in;
}

} // namespace

// Jazar, example 40: L 2.34 m, per wheel 2000 N in front, 1800 N at the rear: 1.1084 m; 1e-4.
TEST(AxleLoads, PutsTheCentreOfGravityWhereJazarDoes)
{
    const Length a1 = centreOfGravity({kilograms(4000), kilograms(3600)}, metres(2.34));
    EXPECT_NEAR(a1.si(), 1.1084, 1.1e-4);
}

// Gillespie: 2313 lb and 1322 lb on 109 in: 39.64 in behind the front axle; 1e-3.
TEST(AxleLoads, PutsTheCentreOfGravityWhereGillespieDoes)
{
    const Length a1 = centreOfGravity({kilograms(2313), kilograms(1322)}, metres(109));
    EXPECT_NEAR(a1.si(), 39.64, 0.04);
}

// Peterbilt, figure B-2: 100 lb 133 in behind the front axle of 214 in: 62.14 lb on the rear
// (0.5 %; the front is printed with a slip and not used).
TEST(AxleLoads, SharesALoadBetweenTheAxles)
{
    const AxleMasses load = withMass({}, kilograms(100), metres(133), metres(214));
    EXPECT_NEAR(load.rear.si(), 62.14, 0.31);
    EXPECT_DOUBLE_EQ(load.total().si(), 100);
}

// 1200 kg, L 2.50 m, 60 kg shifted at 20°, radius 0.30 m: 0.6434 m above the ground; 1e-4.
TEST(AxleLoads, FindsTheHeightByLifting)
{
    const Length height = heightByLifting(kilograms(60), kilograms(1200), metres(2.5),
                                          20 * std::numbers::pi / 180, metres(0.3));
    EXPECT_NEAR(height.si(), 0.6434, 6.5e-5);
}

// By hand: rear 520 + (−150·−0.1 − 40·2.2 + 60·0.1 + 240·1.6)/2.4 = 652.08 kg of 1230 kg.
TEST(AxleLoads, SumsWhatCameOutAndWentIn)
{
    const Check check = judgeAxleLoads(van());
    EXPECT_NEAR(reading::step(check, name("rear axle, after")), 652.1, 0.05);
    EXPECT_NEAR(reading::step(check, name("front axle, after")), 577.9, 0.05);
    EXPECT_NEAR(reading::step(check, name("rear axle, laden")), 727.1, 0.05);
    EXPECT_EQ(check.verdict, Verdict::Holds) << check.sentence.toStdString();
    ASSERT_EQ(check.plots.size(), 1U);
    EXPECT_EQ(check.plots.front().series.size(), 3U);
    EXPECT_TRUE(check.plots.front().series.front().bars);
}

TEST(AxleLoads, LetsTheScalesLead)
{
    AxleLoadsInputs in = van();
    in.frontWeighed = given(kilograms(560), name("front weighed"), Evidence::Measured);
    in.rearWeighed = given(kilograms(850), name("rear weighed"), Evidence::Measured);
    in.moved[3].mass = notKnown<Mass>(name("battery")); // on the scales already
    const Check check = judgeAxleLoads(in);
    EXPECT_TRUE(check.unknowns.isEmpty());
    EXPECT_NEAR(reading::step(check, name("rear axle, laden")), 925, 0.5);
    EXPECT_EQ(check.verdict, Verdict::Fails);
    in.frontWeighed.reset();
    EXPECT_EQ(judgeAxleLoads(in).unknowns,
              QStringList({name("weighed mass of the other axle"), name("battery")}));
}

TEST(AxleLoads, FailsByTheGrossPlateThoughAPlaceIsUnknown)
{
    AxleLoadsInputs in = van();
    in.moved[3].place = notKnown<Length>(name("place of the battery"));
    EXPECT_EQ(judgeAxleLoads(in).verdict, Verdict::Unknown);
    in.moved[3].mass.value = kilograms(700);
    EXPECT_EQ(judgeAxleLoads(in).verdict, Verdict::Fails);
    in.moved[0].mass = notKnown<Mass>(name("engine")); // it may have been heavy enough
    EXPECT_EQ(judgeAxleLoads(in).verdict, Verdict::Unknown);
}

TEST(AxleLoads, CarriesTheHeightOnWhenEveryHeightIsKnown)
{
    AxleLoadsInputs in = van();
    in.heightBefore = given(metres(0.6), name("height before"), Evidence::Measured);
    EXPECT_TRUE(std::isnan(
        reading::step(judgeAxleLoads(in), name("height of the centre of gravity, unladen"))));
    for (MovedMass &mass : in.moved)
        mass.height = given(metres(0.5), name("height"));
    // (1120·0.6 + 110·0.5)/1230
    EXPECT_NEAR(reading::step(judgeAxleLoads(in), name("height of the centre of gravity, unladen")),
                0.5911, 5e-5);
}

TEST(AxleLoads, RefusesAnAxleOffTheGround)
{
    AxleLoadsInputs in = van();
    in.moved.push_back(moved(MassMove::In, "ballast", 900, 4.5));
    const Check check = judgeAxleLoads(in);
    EXPECT_EQ(check.verdict, Verdict::Unknown);
    EXPECT_EQ(check.refusals.size(), 1);
}

// Worse: more put in between the axles, less permitted. Both axles only get heavier by that.
TEST(AxleLoads, NeverGetsBetterWhenAnInputGetsWorse)
{
    Chance chance(10);
    for (int round = 0; round < 300; ++round) {
        AxleLoadsInputs in = van();
        in.moved[3].mass.value = kilograms(chance.between(100, 500));
        in.moved[3].place.value = metres(0.1 * chance.between(2, 22));
        AxleLoadsInputs worse = in;
        const double factor = 1 + 0.05 * chance.between(1, 6);
        switch (chance.below(4)) {
        case 0:
            worse.moved[3].mass.value = *in.moved[3].mass.value * factor;
            break;
        case 1:
            worse.rearPlate.value = *in.rearPlate.value / factor;
            break;
        case 2:
            worse.frontTyres.load.value = *in.frontTyres.load.value / factor;
            break;
        default:
            worse.grossPlate.value = *in.grossPlate.value / factor;
            break;
        }
        const Check was = judgeAxleLoads(in), is = judgeAxleLoads(worse);
        EXPECT_GE(is.verdict, was.verdict) << round;
        EXPECT_LE(*is.margin, *was.margin + 1e-9) << round;
    }
}

// Twice every mass, plate and tyre gives the same margins.
TEST(AxleLoads, ScalesWithEveryMass)
{
    AxleLoadsInputs in = van();
    const auto twice = [](Given<Mass> &mass) {
        mass.value = *mass.value * 2;
    };
    const Check once = judgeAxleLoads(in);
    for (Given<Mass> *mass : {&in.frontBefore, &in.rearBefore, &in.frontPlate, &in.rearPlate,
                              &in.grossPlate, &in.frontTyres.load, &in.rearTyres.load})
        twice(*mass);
    for (MovedMass &mass : in.moved)
        twice(mass.mass);
    EXPECT_NEAR(*judgeAxleLoads(in).margin, *once.margin, 1e-12);
}

// Four tyres carry what two of the same do not.
TEST(AxleLoads, SharesAnAxleAmongItsTyres)
{
    AxleLoadsInputs in = van();
    const auto onEach = [](const Check &check) {
        return reading::comparison(check, QStringLiteral("each tyre of the rear axle, laden"))
            ->margin;
    };
    const double two = onEach(judgeAxleLoads(in));
    in.rearTyres.count = given(4.0, name("tyres of the rear axle"));
    EXPECT_NEAR(1 - onEach(judgeAxleLoads(in)), (1 - two) / 2, 1e-9);
    in.rearTyres.count->value = 3;
    EXPECT_EQ(judgeAxleLoads(in).refusals.size(), 1);
    in.rearTyres.count->value.reset();
    EXPECT_EQ(judgeAxleLoads(in).unknowns, QStringList(name("tyres of the rear axle")));
}

} // namespace ohmwright
