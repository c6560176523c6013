// SPDX-License-Identifier: GPL-3.0-or-later
// Axle loads and brakes, read out of a book: the same as worked by hand from its figures.
#include "core/checks/axle_loads.h"
#include "core/checks/brakes.h"
#include "core/checks/brakes_measured.h"
#include "core/checks/worksheet.h"
#include "tests/core/verdicts/vehicle_book.h"

namespace ohmwright {
namespace {

QString name(const char *text)
{
    return QString::fromUtf8(text);
}

template <class Q>
Given<Q> of(const char *value)
{
    return given(Q::fromSi(amount(value).si()), name("input"), Evidence::Measured);
}

AxleLoadsInputs axlesByHand()
{
    AxleLoadsInputs in;
    in.wheelbase = of<Length>("2.5 m");
    in.frontBefore = of<Mass>("650 kg");
    in.rearBefore = of<Mass>("490 kg");
    in.moved = {{name("battery"), MassMove::In, of<Mass>("280 kg"), of<Length>("1.4 m"), {}},
                {name("engine"), MassMove::Out, of<Mass>("150 kg"), of<Length>("-0.2 m"), {}},
                {name("people"), MassMove::Load, of<Mass>("150 kg"), of<Length>("1.2 m"), {}}};
    in.frontPlate = of<Mass>("800 kg");
    in.rearPlate = of<Mass>("900 kg");
    in.grossPlate = of<Mass>("1650 kg");
    in.frontTyres.load = of<Mass>("580 kg"); // index 89
    in.rearTyres.load = of<Mass>("580 kg");
    return in;
}

TEST(AxleLoadsOfBook, AreThoseOfItsMassesPlatesAndTyres)
{
    VehicleBook van;
    putMasses(van);
    const Check check = van.only("axle_loads");
    expectSame(check, judgeAxleLoads(axlesByHand()));
    // marked for twins, so that two tyres are an assumption which can be replaced; it enters the
    // row of the rear tyres only, and the front axle's decides
    const auto twinsAssumed = std::ranges::find_if(check.inputs, [](const CheckInput &input) {
        return input.origin.name == name("tyres on the rear axle");
    });
    ASSERT_NE(twinsAssumed, check.inputs.end());
    EXPECT_EQ(twinsAssumed->origin.evidence, Evidence::Assumed);
    EXPECT_FALSE(isWeak(*check.weakest)) << check.sentence.toStdString();
    van.figure("axles.rear_tyres", "4");
    AxleLoadsInputs twins = axlesByHand();
    twins.rearTyres.load = of<Mass>("545 kg"); // index 87
    twins.rearTyres.count = given(4.0, name("tyres"));
    expectSame(van.only("axle_loads"), judgeAxleLoads(twins));
}

TEST(AxleLoadsOfBook, AreHeldToTheScalesOnceWeighedAfter)
{
    VehicleBook van;
    putMasses(van);
    van.figure("axles.front_after", "640 kg");
    van.figure("axles.rear_after", "640 kg");
    AxleLoadsInputs in = axlesByHand();
    in.frontWeighed = of<Mass>("640 kg");
    in.rearWeighed = of<Mass>("640 kg");
    expectSame(van.only("axle_loads"), judgeAxleLoads(in));
}

TEST(AxleLoadsOfBook, NameWhatIsMissing)
{
    VehicleBook none;
    EXPECT_TRUE(none.judged("axle_loads").empty());

    VehicleBook van;
    putVan(van);
    van.mass("battery", MassDirection::In, "100 kg", "1.4 m");
    expectUnknown(van.only("axle_loads"), "people and load carried");
    van.figure("vehicle.load_mass", "150 kg");
    van.figure("vehicle.load_place", "1.2 m");
    EXPECT_NE(van.only("axle_loads").verdict, Verdict::Unknown);
    van.vehicle([](Vehicle &v) { v.rearRight.reset(); });
    expectUnknown(van.only("axle_loads"), "rear axle as it came");
    van.vehicle([](Vehicle &v) {
        v.rearRight = amount("250 kg");
        v.tyreSize.clear();
    });
    expectUnknown(van.only("axle_loads"), "load index of the front tyres");
}

// A part weighed on its own answers for a mass entry that is not.
TEST(AxleLoadsOfBook, TakeThePartsMassWhereTheEntryHasNone)
{
    VehicleBook van;
    putMasses(van);
    const Id<Part> motor = van.part("Motor", PartRole::Motor);
    van.actual(motor, RatedQuantity::Mass, "50 kg");
    MassEntry entry;
    entry.name = name("motor");
    entry.part = motor;
    entry.behindFrontAxle = amount("0.1 m");
    van.book.add(entry);
    AxleLoadsInputs in = axlesByHand();
    in.moved.push_back({name("motor"), MassMove::In, of<Mass>("50 kg"), of<Length>("0.1 m"), {}});
    expectSame(van.only("axle_loads"), judgeAxleLoads(in));
}

void putBrakes(VehicleBook &van)
{
    putMasses(van);
    van.vehicle([](Vehicle &v) { v.grossMassPlate = amount("1585 kg"); });
    van.figure("axles.height_before", "0.6 m");
    van.figure("brakes.front_force", "7.6 kN");
    van.figure("brakes.rear_force", "2.6 kN");
    van.figure("brakes.pedal_force", "400 N");
    van.figure("brakes.boost", "vacuum pump");
    van.figure("brakes.vacuum", "70 kPa");
}

TEST(BrakesOfBook, AreJudgedAtTheMassAndCentreOfGravityOfItsMasses)
{
    VehicleBook van;
    EXPECT_TRUE(van.judged("brakes").empty());
    putBrakes(van);
    BrakesInputs in;
    // 1140 − 150 + 280 + 150; moments about the rear axle: 650·2.5 − 150·2.7 + 280·1.1 + 150·1.3
    in.mass = of<Mass>("1420 kg");
    in.frontAxle =
        given(kilograms((650 * 2.5 - 150 * 2.7 + 280 * 1.1 + 150 * 1.3) / 2.5), name("front axle"));
    in.height =
        given(metres((1140 * 0.6 - 150 * 0.5 + 280 * 0.35 + 150 * 0.8) / 1420), name("height"));
    in.wheelbase = of<Length>("2.5 m");
    in.approvedMass = of<Mass>("1585 kg");
    in.frontForce = of<Force>("7.6 kN");
    in.rearForce = of<Force>("2.6 kN");
    in.pedalForce = of<Force>("400 N");
    in.boost = given(BrakeBoost::VacuumPump, name("boost"));
    in.vacuum = of<Pressure>("70 kPa");
    expectSame(van.only("brakes"), judgeBrakes(in));

    van.figure("vehicle.driven_height", "0.55 m");
    in.height = of<Length>("0.55 m");
    expectSame(van.only("brakes"), judgeBrakes(in));
}

TEST(BrakesOfBook, NameWhatIsMissingAndTellBothThresholds)
{
    VehicleBook van;
    putBrakes(van);
    van.mass("seat", MassDirection::In, "10 kg", "1 m"); // without a height
    expectUnknown(van.only("brakes"), "height of the centre of gravity as driven");
    van.figure("vehicle.driven_height", "0.55 m");
    const Id<CheckFigure> lighter = van.figure("vehicle.driven_mass", "1580 kg");
    // of a mass told apart the share in front is not worked out
    expectUnknown(van.only("brakes"), "mass on the front axle as driven");
    van.figure("vehicle.driven_front_axle", "760 kg");
    van.remove(lighter);
    van.vehicle([](Vehicle &v) { v.grossMassPlate = amount("1650 kg"); });
    van.figure("vehicle.driven_mass", "1600 kg");
    EXPECT_EQ(van.only("brakes").verdict, Verdict::Fails); // 10.2 kN for 1600 and for 1650 kg
    van.threshold("brakes.deceleration", "5.5 m/s²");
    expectLoosened(van.only("brakes"), Verdict::Tight, Verdict::Fails);
}

Id<TestRecord> rollers(VehicleBook &van)
{
    TestRecord test;
    test.name = name("Rollers");
    test.kind = TestKind::Brakes;
    test.doneBy = name("inspector");
    test.doneOn = QDate(2026, 3, 1);
    test.instrument = name("bench");
    return van.book.add(test);
}

TEST(BrakesMeasuredOfBook, AreReadOffTheTest)
{
    VehicleBook van;
    EXPECT_TRUE(van.judged("brakes_measured").empty());
    const Id<TestRecord> test = rollers(van);
    expectUnknown(van.only("brakes_measured"), "braking force, front left");
    van.figure("brakes_test.mass", "1400 kg", test);
    van.figure("brakes_test.front_left", "3.1 kN", test);
    van.figure("brakes_test.front_right", "3.0 kN", test);
    van.figure("brakes_test.rear_left", "1.6 kN", test);
    van.figure("brakes_test.rear_right", "1.5 kN", test);
    van.figure("brakes_test.parking", "2.6 kN", test);
    BrakesMeasuredInputs in;
    in.record = {name("inspector"), QDate(2026, 3, 1), name("bench")};
    in.mass = of<Mass>("1400 kg");
    in.axles = {{name("front axle"), of<Force>("3.1 kN"), of<Force>("3.0 kN")},
                {name("rear axle"), of<Force>("1.6 kN"), of<Force>("1.5 kN")}};
    in.parkingForce = of<Force>("2.6 kN");
    const Check check = van.only("brakes_measured");
    expectSame(check, judgeBrakesMeasured(in));
    EXPECT_EQ(check.subject, van.book.records().find(test)->key);

    van.threshold("brakes.efficiency", "50 %");
    const Id<TestRecord> again = rollers(van);
    van.figure("brakes_test.deceleration", "6 m/s²", again);
    const std::vector<Check> both = van.judged("brakes_measured");
    ASSERT_EQ(both.size(), 2U);
    EXPECT_EQ(both[1].verdict, Verdict::Fails); // on the road alone: nothing of a bench is asked
    EXPECT_TRUE(both[1].unknowns.isEmpty());
}

TEST(BrakesMeasuredOfBook, TellBothThresholdsAndPassOverTestsOfOnePart)
{
    VehicleBook van;
    TestRecord pump;
    pump.name = name("Pump");
    pump.kind = TestKind::Brakes;
    pump.part = van.part("Vacuum pump");
    van.book.add(pump);
    EXPECT_TRUE(van.judged("brakes_measured").empty());
    const Id<TestRecord> test = rollers(van);
    van.figure("brakes_test.deceleration", "6 m/s²", test);
    van.threshold("brakes.road", "50 %");
    expectLoosened(van.only("brakes_measured"), Verdict::Holds, Verdict::Fails);
}

} // namespace
} // namespace ohmwright
