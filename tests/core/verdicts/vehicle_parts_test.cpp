// SPDX-License-Identifier: GPL-3.0-or-later
// Checks of single parts of the vehicle, read out of a book: couplings, joints, boxes, bays, loops.
#include "core/checks/bolted_flange.h"
#include "core/checks/cooling.h"
#include "core/checks/fit.h"
#include "core/checks/restraint.h"
#include "core/checks/rotating_part.h"
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

Id<Part> putCoupling(VehicleBook &van)
{
    const Id<Part> hub = van.part("Hub", PartRole::Coupling);
    van.actual(hub, RatedQuantity::Mass, "3 kg");
    van.figure("rotating.shape", "disc with a bore", hub);
    van.figure("rotating.outer_radius", "60 mm", hub);
    van.figure("rotating.bore_radius", "15 mm", hub);
    van.figure("rotating.density", "7850 kg/m³", hub);
    van.figure("rotating.poisson", "0.29", hub);
    van.figure("rotating.yield_strength", "400 MPa", hub);
    van.figure("rotating.certified", "yes", hub);
    van.figure("rotating.unbalance", "10 g·mm", hub);
    return hub;
}

RotatingPartInputs couplingByHand()
{
    RotatingPartInputs in;
    in.shape = chosen(RotatingShape::AnnularDisc, name("shape"));
    in.outerRadius = of<Length>("60 mm");
    in.innerRadius = of<Length>("15 mm");
    in.mass = of<Mass>("3 kg");
    in.density = of<Density>("7850 kg/m³");
    in.poisson = given(0.29, name("poisson"));
    in.yieldStrength = of<Pressure>("400 MPa");
    in.certified = true;
    in.highestSpeed = of<RotationSpeed>("9000 rpm");
    in.residualUnbalance = of<Unbalance>("10 g·mm");
    return in;
}

TEST(RotatingPartsOfBook, AreTurnedByTheFastestOfSeveralMotors)
{
    VehicleBook van;
    putCoupling(van);
    const auto motor = [&](const char *name, const char *speed) {
        const Id<Part> made = van.part(name, PartRole::Motor);
        if (*speed)
            van.rating(made, RatedQuantity::RotationSpeed, RatingKind::Limit,
                       RatingBasis::Continuous, speed);
    };
    motor("Motor 1", "9000 rpm");
    motor("Motor 2", "8000 rpm");
    expectSame(van.only("rotating_part"), judgeRotatingPart(couplingByHand()));
    motor("Motor 3", "");
    expectUnknown(van.only("rotating_part"), "rotation speed limit of Motor 3");
    // downhill it may be turned faster than its maker allows
    VehicleBook downhill;
    putCoupling(downhill);
    const Id<Part> turned = downhill.part("Motor", PartRole::Motor);
    downhill.rating(turned, RatedQuantity::RotationSpeed, RatingKind::Limit,
                    RatingBasis::Continuous, "9000 rpm");
    downhill.figure("motor.overspeed", "11000 rpm", turned);
    RotatingPartInputs in = couplingByHand();
    in.highestSpeed = of<RotationSpeed>("11000 rpm");
    expectSame(downhill.only("rotating_part"), judgeRotatingPart(in));
}

TEST(RotatingPartsOfBook, AreCouplingsTurnedAsFastAsTheMotorMay)
{
    VehicleBook van;
    EXPECT_TRUE(van.judged("rotating_part").empty());
    const Id<Part> hub = putCoupling(van);
    expectUnknown(van.only("rotating_part"), "Hub: highest speed it is ever turned at");
    const Id<Part> motor = van.part("Motor", PartRole::Motor);
    van.rating(motor, RatedQuantity::RotationSpeed, RatingKind::Limit, RatingBasis::Continuous,
               "9000 rpm");
    const Check check = van.only("rotating_part");
    expectSame(check, judgeRotatingPart(couplingByHand()));
    EXPECT_EQ(check.subject, van.book.records().find(hub)->key);
    RotatingPartInputs in = couplingByHand();
    in.highestSpeed = of<RotationSpeed>("12000 rpm");
    in.overspeed = given(1.1, name("overspeed"));
    in.concentration = given(2.5, name("notch"));
    van.figure("rotating.highest_speed", "12000 rpm", hub);
    van.figure("rotating.overspeed", "1.1", hub);
    van.figure("rotating.concentration", "2.5", hub);
    expectSame(van.only("rotating_part"), judgeRotatingPart(in));
    van.threshold("rotating.overspeed", "1.1");
    EXPECT_EQ(van.only("rotating_part").publishedVerdict, Verdict::Fails);
}

TEST(RotatingPartsOfBook, AreUnknownWithoutACertificate)
{
    VehicleBook van;
    const Id<Part> wheel = van.part("Flywheel");
    EXPECT_TRUE(van.judged("rotating_part").empty());
    van.figure("rotating.outer_radius", "150 mm", wheel); // told, so it is one
    const Check check = van.only("rotating_part");
    expectUnknown(check, "Flywheel: shape");
    expectUnknown(check, "mass of Flywheel");
    // what stands in for what nobody told can be changed in place
    EXPECT_EQ(check.inputs.back().origin.field, QString(name("figure|rotating.certified|part|") +
                                                        van.book.records().find(wheel)->key));
    EXPECT_EQ(check.inputs.back().shown, name("no"));
    EXPECT_FALSE(check.doubts.isEmpty());
}

TEST(BoltedFlangesOfBook, AreThePartsThatAreToldAsOne)
{
    VehicleBook van;
    const Id<Part> motor = van.part("Motor", PartRole::Motor);
    van.rating(motor, RatedQuantity::Torque, RatingKind::Limit, RatingBasis::Peak, "250 N·m");
    const Id<Part> plate = van.part("Plate");
    EXPECT_TRUE(van.judged("bolted_flange").empty());
    van.figure("flange.bolts", "6", plate);
    expectUnknown(van.only("bolted_flange"), "Plate: thread of the bolts");
    expectUnknown(van.only("bolted_flange"), "Plate: class of the bolts");
    van.figure("flange.thread", "M10", plate);
    van.figure("flange.class", "8.8", plate);
    van.figure("flange.circle_radius", "60 mm", plate);
    van.figure("flange.tightening", "45 N·m", plate);
    BoltedFlangeInputs in;
    in.bolts = given(6.0, name("bolts"));
    in.diameter = of<Length>("10 mm");
    in.pitch = of<Length>("1.5 mm");
    in.strength = chosen(BoltClass::Class88, name("class"));
    in.circleRadius = of<Length>("60 mm");
    in.tightening = of<Torque>("45 N·m");
    in.nutFactor = given(0.2, name("nut"));
    in.friction = given(0.15, name("friction"));
    in.carried = of<Torque>("250 N·m");
    const Check assumed = van.only("bolted_flange");
    expectSame(assumed, judgeBoltedFlange(in));
    EXPECT_EQ(assumed.weakest, Evidence::Assumed);
    van.figure("flange.carried", "500 N·m", plate);
    van.figure("flange.nut_factor", "0.15", plate);
    van.figure("flange.friction", "0.12", plate);
    van.figure("flange.scatter", "1.4", plate);
    van.figure("flange.pitch", "1.25 mm", plate);
    van.figure("flange.shear_plane", "shank", plate);
    in.carried = of<Torque>("500 N·m");
    in.nutFactor = given(0.15, name("nut"));
    in.friction = given(0.12, name("friction"));
    in.scatter = given(1.4, name("scatter"));
    in.pitch = of<Length>("1.25 mm");
    in.threadInShear = false;
    const Check told = van.only("bolted_flange");
    expectSame(told, judgeBoltedFlange(in));
    EXPECT_NE(told.weakest, Evidence::Assumed);
    van.threshold("flange.slip", "1.1");
    EXPECT_TRUE(van.only("bolted_flange").publishedVerdict);
}

void putRestraint(VehicleBook &van, Id<Part> box)
{
    van.figure("restraint.height", "120 mm", box);
    van.figure("restraint.bolts", "8", box);
    van.figure("restraint.lengthwise", "900 mm", box);
    van.figure("restraint.crosswise", "600 mm", box);
    van.figure("restraint.bolt_size", "M10", box);
    van.figure("restraint.bolt_class", "8.8", box);
    van.figure("restraint.sheet", "2 mm", box);
    van.figure("restraint.sheet_strength", "300 MPa", box);
    van.figure("restraint.spreader", "50 mm", box);
}

RestraintInputs restraintByHand(double mass)
{
    RestraintInputs in;
    in.mass = given(kilograms(mass), name("mass"));
    in.height = of<Length>("120 mm");
    in.bolts = given(8.0, name("bolts"));
    in.lengthwise = of<Length>("900 mm");
    in.crosswise = of<Length>("600 mm");
    in.size = given(BoltSize::M10, name("size"));
    in.grade = given(BoltClass::Class88, name("class"));
    in.sheet = of<Length>("2 mm");
    in.sheetStrength = of<Pressure>("300 MPa");
    in.spreader = of<Length>("50 mm");
    return in;
}

TEST(RestraintsOfBook, WeighABoxWithWhatIsInIt)
{
    VehicleBook van;
    EXPECT_TRUE(van.judged("restraint").empty());
    const Id<Part> box = van.part("Box", PartRole::BatteryBox);
    putRestraint(van, box);
    expectUnknown(van.only("restraint"), "mass of Box");
    van.actual(box, RatedQuantity::Mass, "30 kg");
    const Id<Part> half = van.part("Half", {}, box, PartKind::Hardware);
    std::vector<Id<Part>> modules;
    for (const char *module : {"Module 1", "Module 2", "Module 3"})
        modules.push_back(van.part(module, {}, half, PartKind::Module));
    van.actual(modules[0], RatedQuantity::Mass, "60 kg");
    van.actual(modules[1], RatedQuantity::Mass, "60 kg");
    expectUnknown(van.only("restraint"), "mass of Module 3");
    van.actual(modules[2], RatedQuantity::Mass, "61 kg");
    const Check check = van.only("restraint");
    expectSame(check, judgeRestraint(restraintByHand(211)));
    EXPECT_NE(check.weakest, Evidence::Assumed);
    // what is in it and not weighed makes the sum an assumption, and is named
    van.part("Bus bars", {}, box, PartKind::Hardware);
    EXPECT_EQ(van.only("restraint").weakest, Evidence::Assumed);
    EXPECT_TRUE(van.only("restraint").inputs.front().origin.source.contains(name("Bus bars")));
    van.figure("restraint.mass", "220 kg", box);
    expectSame(van.only("restraint"), judgeRestraint(restraintByHand(220)));
}

TEST(RestraintsOfBook, WeighABoxThatStandsBesideItsModules)
{
    VehicleBook van;
    const Id<Part> pack = van.part("Pack");
    const Id<Part> box = van.part("Box", PartRole::BatteryBox, pack);
    putRestraint(van, box);
    van.actual(box, RatedQuantity::Mass, "30 kg");
    van.actual(van.part("Module", {}, pack, PartKind::Module), RatedQuantity::Mass, "200 kg");
    expectSame(van.only("restraint"), judgeRestraint(restraintByHand(230)));
    van.figure("restraint.category", "M2 or N2");
    RestraintInputs in = restraintByHand(230);
    in.forward = RestraintInputs::ofClass(VehicleClass::M2N2, true);
    in.sideways = RestraintInputs::ofClass(VehicleClass::M2N2, false);
    expectSame(van.only("restraint"), judgeRestraint(in));
    van.threshold("restraint.upward", "5");
    EXPECT_EQ(van.only("restraint").loosened.size(), 1); // of bolts and sheet alike
}

void size(VehicleBook &van, Id<Part> part, const char *length, const char *width,
          const char *height)
{
    van.actual(part, RatedQuantity::Length, length);
    van.actual(part, RatedQuantity::Width, width);
    van.actual(part, RatedQuantity::Height, height);
}

TEST(FitsOfBook, AreBaysWithWhatSitsInThem)
{
    VehicleBook van;
    EXPECT_TRUE(van.judged("fit").empty());
    const Id<Part> bay = van.part("Bay", PartRole::Bay);
    size(van, bay, "500 mm", "420 mm", "240 mm");
    EXPECT_FALSE(van.only("fit").doubts.isEmpty()); // nothing is to go into it
    const Id<Part> inverter = van.part("Inverter", PartRole::Inverter, bay);
    van.actual(inverter, RatedQuantity::Length, "390 mm");
    van.actual(inverter, RatedQuantity::Width, "270 mm");
    expectUnknown(van.only("fit"), "height of Inverter");
    van.actual(inverter, RatedQuantity::Height, "140 mm");
    van.figure("fit.cable_left", "12 mm", inverter);
    expectUnknown(van.only("fit"), "Inverter: how far the connector stands out on the left");
    van.figure("fit.connector_left", "40 mm", inverter);
    FitInputs in;
    in.bayLength = of<Length>("500 mm");
    in.bayWidth = of<Length>("420 mm");
    in.bayHeight = of<Length>("240 mm");
    BayBox box;
    box.name = name("Inverter");
    box.length = of<Length>("390 mm");
    box.width = of<Length>("270 mm");
    box.height = of<Length>("140 mm");
    box.ports = {{name("cable"), Face::Left, of<Length>("12 mm"), of<Length>("40 mm"), {}}};
    in.boxes = {box};
    const Check check = van.only("fit");
    expectSame(check, judgeFit(in));
    EXPECT_EQ(check.subject, van.book.records().find(bay)->key);
    van.figure("fit.upright", "any", inverter);
    van.figure("fit.bend_factor", "8", inverter);
    in.boxes[0].widthUp = in.boxes[0].lengthUp = true;
    in.boxes[0].ports[0].bendFactor = given(8.0, name("bend"));
    expectSame(van.only("fit"), judgeFit(in));
    Part sold = namedPart(name("Box of before"), PartState::Sold);
    sold.partOf = bay;
    van.book.add(sold);
    EXPECT_NE(van.only("fit").verdict, Verdict::Unknown);
    van.threshold("fit.clearance", "2 mm");
    EXPECT_EQ(van.only("fit").loosened.size(), 1);
}

TEST(CoolingOfBook, IsALoopForEachRadiator)
{
    VehicleBook van;
    EXPECT_TRUE(van.judged("cooling").empty());
    const Id<Part> radiator = van.part("Radiator", PartRole::Radiator);
    const Id<Part> pump = van.part("Pump", PartRole::Pump);
    const Id<Part> motor = van.part("Motor", PartRole::Motor);
    const Id<Part> inverter = van.part("Inverter", PartRole::Inverter);
    van.figure("cooling.order", "2", motor);
    van.figure("cooling.order", "1", inverter);
    van.figure("cooling.heat", "3 kW", motor);
    van.figure("cooling.hottest", "70 °C", motor);
    van.figure("cooling.hottest", "65 °C", inverter);
    van.figure("cooling.coolant", "ethylene glycol", radiator);
    van.figure("cooling.glycol", "45 %", radiator);
    van.figure("cooling.coldest", "-20 °C");
    expectUnknown(van.only("cooling"), "Inverter: heat into the coolant");
    expectUnknown(van.only("cooling"), "Radiator: coolant flow, measured in the loop");
    expectUnknown(van.only("cooling"), "Radiator: heat of the radiator for each kelvin");
    van.figure("cooling.heat", "1.5 kW", inverter);
    van.figure("cooling.radiator", "0.3 kW/K", radiator);
    van.actual(pump, RatedQuantity::Flow, "10 L/min");
    CoolingInputs in;
    in.parts = {{name("Inverter"), of<Power>("1.5 kW"), of<Temperature>("65 °C")},
                {name("Motor"), of<Power>("3 kW"), of<Temperature>("70 °C")}};
    in.coolant = given(Coolant::EthyleneGlycol, name("coolant"));
    in.glycol = given(0.45, name("glycol"));
    in.ambient = of<Temperature>("40 °C");
    in.coldest = of<Temperature>("-20 °C");
    in.flow = of<FlowRate>("10 L/min");
    in.radiator = of<ThermalConductance>("0.3 kW/K");
    expectSame(van.only("cooling"), judgeCooling(in));

    van.figure("cooling.shut_off", "40 kPa", pump);
    van.figure("cooling.free_flow", "20 L/min", pump);
    van.figure("cooling.loop_drop", "25 kPa", radiator);
    van.figure("cooling.loop_drop_at", "12 L/min", radiator);
    van.figure("cooling.exchange", "0.5 kW/K", radiator);
    van.figure("cooling.air_flow", "1500 m³/h", radiator);
    van.figure("cooling.ambient", "35 °C");
    in.pump = PumpAndLoop{of<Pressure>("40 kPa"), of<FlowRate>("20 L/min"), of<Pressure>("25 kPa"),
                          of<FlowRate>("12 L/min")};
    in.airSide = AirSide{of<ThermalConductance>("0.5 kW/K"), of<FlowRate>("1500 m³/h")};
    in.ambient = of<Temperature>("35 °C");
    expectSame(van.only("cooling"), judgeCooling(in));

    // a second loop of its own, with nothing in it yet
    const Id<Part> other = van.part("Small radiator", PartRole::Radiator);
    van.figure("cooling.loop", "2", other);
    const std::vector<Check> both = van.judged("cooling");
    ASSERT_EQ(both.size(), 2U);
    for (const Check &check : both)
        EXPECT_EQ(check.doubts.isEmpty(), check.subject == van.book.records().find(radiator)->key);
}

} // namespace
} // namespace ohmwright
