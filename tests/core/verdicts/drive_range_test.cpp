// SPDX-License-Identifier: GPL-3.0-or-later
// Drive and range, read out of a book: the same as worked by hand from its figures.
#include "core/checks/drive.h"
#include "core/checks/tyre.h"
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

Id<Part> putDrive(VehicleBook &van)
{
    putMasses(van);
    const Id<Part> motor = van.part("Motor", PartRole::Motor);
    const auto limit = [&](RatedQuantity quantity, RatingBasis basis, const char *value) {
        van.rating(motor, quantity, RatingKind::Limit, basis, value);
    };
    limit(RatedQuantity::Torque, RatingBasis::Peak, "250 N·m");
    limit(RatedQuantity::Power, RatingBasis::Peak, "80 kW");
    limit(RatedQuantity::Power, RatingBasis::Continuous, "40 kW");
    limit(RatedQuantity::RotationSpeed, RatingBasis::Continuous, "10000 rpm");
    van.figure("vehicle.drag_coefficient", "0.35");
    van.figure("vehicle.frontal_area", "2.5 m²");
    van.figure("vehicle.rolling_coefficient", "0.012");
    van.figure("vehicle.rotating_allowance", "1.06");
    van.figure("drive.ratio_2", "1.9 :1");
    van.figure("drive.ratio_3", "1.3 :1");
    van.figure("drive.final_drive", "4 :1");
    van.figure("drive.efficiency", "92 %");
    van.figure("drive.gear_change", "1 s");
    van.figure("drive.wanted_speed", "90 km/h");
    return motor;
}

DriveInputs driveByHand()
{
    DriveInputs in;
    in.peakTorque = of<Torque>("250 N·m");
    in.peakPower = of<Power>("80 kW");
    in.continuousPower = of<Power>("40 kW");
    in.motorLimit = of<RotationSpeed>("10000 rpm");
    in.mass = of<Mass>("1420 kg");
    in.dragCoefficient = given(0.35, name("drag"));
    in.frontalArea = of<Area>("2.5 m²");
    in.rollingCoefficient = given(0.012, name("rolling"));
    in.rotating = given(1.06, name("turning"));
    in.gears = {{name("gear 2"), given(1.9, name("2"))}, {name("gear 3"), given(1.3, name("3"))}};
    in.finalDrive = given(4.0, name("final"));
    in.efficiency = given(0.92, name("efficiency"));
    in.gearChange = of<Duration>("1 s");
    in.rollingRadius = given(parseTyre(u"165/70 R14C 89/87R")->rollingRadius(), name("radius"));
    in.wantedSpeed = of<Speed>("90 km/h");
    return in;
}

TEST(DriveOfBook, IsThatOfMotorGearsTyresAndMasses)
{
    VehicleBook van;
    putMasses(van);
    EXPECT_TRUE(van.judged("drive").empty());
    VehicleBook with;
    const Id<Part> motor = putDrive(with);
    const Check check = with.only("drive");
    expectSame(check, judgeDrive(driveByHand()));
    EXPECT_EQ(check.subject, with.book.records().find(motor)->key);
    EXPECT_TRUE(check.title.contains(name("Motor")));
}

TEST(DriveOfBook, IsHeldToTheLowestOfMotorInverterAndGearbox)
{
    VehicleBook van;
    const Id<Part> motor = putDrive(van);
    van.rating(motor, RatedQuantity::Current, RatingKind::Limit, RatingBasis::Peak, "400 A",
               CurrentKind::Ac);
    const Id<Part> inverter = van.part("Inverter", PartRole::Inverter);
    van.rating(inverter, RatedQuantity::Power, RatingKind::Limit, RatingBasis::Peak, "60 kW");
    van.rating(inverter, RatedQuantity::Current, RatingKind::Limit, RatingBasis::Peak, "320 A",
               CurrentKind::Ac);
    const Id<Part> gearbox = van.part("Gearbox", PartRole::Gearbox);
    van.rating(gearbox, RatedQuantity::Torque, RatingKind::Limit, RatingBasis::Peak, "180 N·m");
    van.rating(gearbox, RatedQuantity::RotationSpeed, RatingKind::Limit, RatingBasis::Continuous,
               "7000 rpm");
    DriveInputs in = driveByHand();
    in.peakPower = of<Power>("60 kW");
    in.motorLimit = of<RotationSpeed>("7000 rpm");
    in.torqueSet = of<Torque>("200 N·m"); // 250 · 320/400
    in.gearboxTorque = of<Torque>("180 N·m");
    const Check check = van.only("drive");
    expectSame(check, judgeDrive(in));
    EXPECT_EQ(check.verdict, Verdict::Fails);
    van.figure("drive.torque_set", "150 N·m");
    in.torqueSet = of<Torque>("150 N·m");
    expectSame(van.only("drive"), judgeDrive(in));
}

TEST(DriveOfBook, IsHeldToTheLowestOfSeveralInvertersAndGearboxes)
{
    VehicleBook van;
    const Id<Part> motor = putDrive(van);
    van.rating(motor, RatedQuantity::Current, RatingKind::Limit, RatingBasis::Peak, "400 A",
               CurrentKind::Ac);
    const auto inverter = [&](const char *name, const char *power, const char *current) {
        const Id<Part> made = van.part(name, PartRole::Inverter);
        van.rating(made, RatedQuantity::Power, RatingKind::Limit, RatingBasis::Peak, power);
        van.rating(made, RatedQuantity::Current, RatingKind::Limit, RatingBasis::Peak, current,
                   CurrentKind::Ac);
    };
    const auto gearbox = [&](const char *name, const char *torque, const char *speed) {
        const Id<Part> made = van.part(name, PartRole::Gearbox);
        van.rating(made, RatedQuantity::Torque, RatingKind::Limit, RatingBasis::Peak, torque);
        if (*speed)
            van.rating(made, RatedQuantity::RotationSpeed, RatingKind::Limit,
                       RatingBasis::Continuous, speed);
    };
    inverter("Inverter 1", "60 kW", "380 A");
    inverter("Inverter 2", "70 kW", "320 A");
    gearbox("Gearbox", "180 N·m", "7000 rpm");
    gearbox("Transfer box", "190 N·m", "6800 rpm");
    DriveInputs in = driveByHand();
    in.peakPower = of<Power>("60 kW");
    in.motorLimit = of<RotationSpeed>("6800 rpm");
    in.torqueSet = of<Torque>("200 N·m"); // 250 · 320/400
    in.gearboxTorque = of<Torque>("180 N·m");
    const Check check = van.only("drive");
    expectSame(check, judgeDrive(in));
    EXPECT_EQ(check.verdict, Verdict::Fails);
    // one that does not tell what the others do may be the weakest, and a failure stays one
    gearbox("Reducer", "400 N·m", "");
    const Check open = van.only("drive");
    EXPECT_EQ(open.verdict, Verdict::Fails);
    EXPECT_TRUE(open.unknowns.contains(name("rotation speed limit of Reducer")));
    van.figure("drive.torque_set", "150 N·m");
    van.threshold("drive.start_grade", "5 %");
    van.part("Inverter 3", PartRole::Inverter);
    const Check asking = van.only("drive");
    expectUnknown(asking, "rotation speed limit of Reducer");
    expectUnknown(asking, "peak power limit of Inverter 3");
    expectUnknown(asking, "peak AC current limit of Inverter 3");
}

TEST(DriveOfBook, HoldsWhatTheWheelsTurnTheMotorToAgainstMotorAndGearbox)
{
    VehicleBook van;
    const Id<Part> motor = putDrive(van);
    van.figure("motor.overspeed", "9500 rpm", motor);
    DriveInputs in = driveByHand();
    in.overspeed = of<RotationSpeed>("9500 rpm");
    expectSame(van.only("drive"), judgeDrive(in));
    const Id<Part> gearbox = van.part("Gearbox", PartRole::Gearbox);
    van.rating(gearbox, RatedQuantity::Torque, RatingKind::Limit, RatingBasis::Peak, "400 N·m");
    van.rating(gearbox, RatedQuantity::RotationSpeed, RatingKind::Limit, RatingBasis::Continuous,
               "9000 rpm");
    const Check check = van.only("drive");
    EXPECT_EQ(check.verdict, Verdict::Fails);
    EXPECT_TRUE(std::any_of(check.comparisons.begin(), check.comparisons.end(), [](const auto &c) {
        return c.what == name("motor speed, turned by the wheels") && c.verdict == Verdict::Fails;
    }));
}

TEST(DriveOfBook, AsksForTheRatioOfSeveralGearboxes)
{
    VehicleBook van;
    van.part("Motor", PartRole::Motor);
    for (const char *box : {"Gearbox", "Transfer box"})
        van.actual(van.part(box, PartRole::Gearbox), RatedQuantity::Ratio, "2 :1");
    expectUnknown(van.only("drive"), "ratio of the 1st gear");
    expectUnknown(van.only("drive"), "peak torque limit of Gearbox");
}

TEST(DriveOfBook, FollowsACurveUpToWhatTheInverterGives)
{
    VehicleBook van;
    const Id<Part> motor = putDrive(van);
    RatedCurve curve;
    curve.name = name("Torque");
    curve.kind = CurveKind::MotorTorque;
    curve.part = motor;
    const Id<RatedCurve> id = van.book.add(curve);
    DriveInputs in = driveByHand();
    for (const auto &[rpm, torque] :
         {std::pair("0 rpm", "240 N·m"), std::pair("3000 rpm", "240 N·m"),
          std::pair("4500 rpm", "165 N·m"), std::pair("6000 rpm", "120 N·m"),
          std::pair("10000 rpm", "70 N·m")}) { // nowhere above the motor's own 80 kW
        CurvePoint point;
        point.curve = id;
        point.along = amount(rpm);
        point.up = amount(torque);
        van.book.add(point);
        in.curve.emplace_back(RotationSpeed::fromSi(point.along.si()),
                              Torque::fromSi(point.up.si()));
    }
    in.torqueLimit = of<Torque>("250 N·m");
    expectSame(van.only("drive"), judgeDrive(in));
    const Id<Part> inverter = van.part("Inverter", PartRole::Inverter);
    van.rating(inverter, RatedQuantity::Power, RatingKind::Limit, RatingBasis::Peak, "30 kW");
    const Check slower = van.only("drive");
    // from 30 kW on the power alone counts: 22 kW hold 90 km/h no more than they did
    EXPECT_LT(*slower.margin, *judgeDrive(in).margin + 1e-9);
    EXPECT_NE(slower.result, judgeDrive(in).result);
}

TEST(DriveOfBook, ACurveDoesNotLiftTheMotorsOwnLimits)
{
    VehicleBook van;
    const Id<Part> motor = putDrive(van); // 250 N·m, 80 kW
    RatedCurve curve;
    curve.name = name("Torque");
    curve.kind = CurveKind::MotorTorque;
    curve.part = motor;
    const Id<RatedCurve> id = van.book.add(curve);
    for (const char *rpm : {"0 rpm", "10000 rpm"}) {
        CurvePoint point;
        point.curve = id;
        point.along = amount(rpm);
        point.up = amount("300 N·m"); // 314 kW at the end
        van.book.add(point);
    }
    const Check check = van.only("drive");
    EXPECT_EQ(check.verdict, Verdict::Fails);
    const auto held = std::ranges::find_if(check.comparisons, [](const Comparison &c) {
        return c.what == name("torque of the motor");
    });
    ASSERT_NE(held, check.comparisons.end());
    EXPECT_EQ(held->verdict, Verdict::Fails);
    EXPECT_TRUE(std::ranges::any_of(check.inputs, [](const CheckInput &input) {
        return input.origin.name.contains(name("at no more than 80"));
    }));
}

TEST(DriveOfBook, NamesWhatIsMissingAndTellsBothThresholds)
{
    VehicleBook van;
    putDrive(van);
    van.threshold("drive.start_grade", "5 %");
    const Check check = van.only("drive");
    ASSERT_EQ(check.loosened.size(), 1);
    EXPECT_EQ(check.loosened.front().name, name("drive.start_grade"));
    VehicleBook bare;
    bare.part("Motor", PartRole::Motor);
    bare.part("Gearbox", PartRole::Gearbox);
    const Check unknown = bare.only("drive");
    expectUnknown(unknown, "peak torque limit of Motor");
    expectUnknown(unknown, "rotation speed limit of Motor");
    expectUnknown(unknown, "ratio of the 1st gear");
    expectUnknown(unknown, "ratio of the final drive");
    expectUnknown(unknown, "rolling radius of the driven tyres");
    expectUnknown(unknown, "mass as driven, with people and load");
    expectUnknown(unknown, "drag coefficient");
    expectUnknown(unknown, "speed to be held on the level");
    expectUnknown(unknown, "peak torque limit of Gearbox");
}

TEST(RangeOfBook, IsAskedOfATractionPackAlone)
{
    VehicleBook van;
    EXPECT_TRUE(van.judged("range").empty());
    Circuit traction;
    traction.name = name("Traction");
    traction.kind = CircuitKind::Traction;
    const Id<Circuit> circuit = van.book.add(traction);
    EXPECT_TRUE(van.judged("range").empty());
    const Id<Part> module = van.part("Module", {}, {}, PartKind::Module);
    Connection connection;
    connection.part = module;
    connection.circuit = circuit;
    van.book.add(connection);
    Check check = van.only("range");
    EXPECT_EQ(check.subject, van.book.records().find(circuit)->key);
    expectUnknown(check, "mass as driven, with people and load");
    expectUnknown(check, "frontal area");
    putMasses(van);
    van.figure("vehicle.drag_coefficient", "0.35");
    van.figure("vehicle.frontal_area", "2.5 m²");
    check = van.only("range");
    // the pack's own facts apart, all that is assumed is told with its reason
    const auto assumed = std::find_if(check.inputs.begin(), check.inputs.end(), [](const auto &i) {
        return i.origin.name == name("efficiency from pack to tyre");
    });
    ASSERT_NE(assumed, check.inputs.end());
    EXPECT_EQ(assumed->origin.evidence, Evidence::Assumed);
    EXPECT_FALSE(assumed->origin.source.isEmpty());
    EXPECT_TRUE(parseInputAddress(assumed->origin.field));
}

} // namespace
} // namespace ohmwright
