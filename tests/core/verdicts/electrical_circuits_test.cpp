// SPDX-License-Identifier: GPL-3.0-or-later
// Precharge, discharge, conductors, fuses, charging and the 12 V side, read out of a book: the same
// as with the values by hand.
#include "core/checks/charging.h"
#include "core/checks/discharge.h"
#include "core/checks/fuse.h"
#include "core/checks/low_voltage.h"
#include "core/checks/precharge.h"
#include "core/checks/worksheet.h"
#include "core/verdicts/branch_conductor.h"
#include "core/verdicts/edit_input.h"
#include "core/verdicts/electrical_checks_of_book.h"
#include "tests/core/verdicts/electrical_book.h"
#include "tests/core/verdicts/electrical_expect.h"

namespace ohmwright {
namespace {

const QString kAny = QStringLiteral("any");

class ElectricalCircuits : public ElectricalBook
{
protected:
    Id<Circuit> traction = circuit("traction", CircuitKind::Traction, CurrentKind::Dc, "");
    Id<Circuit> low = circuit("low", CircuitKind::LowVoltage, CurrentKind::Dc, "14.8 V");

    void addInverter()
    {
        inverter = part("Inverter", PartRole::Inverter, traction);
        rate(inverter, actualOf(RatedQuantity::Capacitance), "500 µF");
        figure("inverter.regeneration_voltage", inverter, "390 V");
        word("inverter.boosts", inverter, "no");
    }
    Branch cable(const char *name, Id<Circuit> of)
    {
        Branch made;
        made.name = QString::fromLatin1(name);
        made.circuit = of;
        made.continuousCurrent = amount("100 A");
        made.conductorSize = amount("50 mm²");
        made.conductorLength = amount("3 m");
        made.conductor = QStringLiteral("copper, class 5, cross-linked, 125 °C");
        return made;
    }

    Id<Part> inverter;
};

TEST_F(ElectricalCircuits, ABookWithoutThemHasNoChecks)
{
    for (const auto judge : {judgePrechargeOfBook, judgeDischargeOfBook, judgeConductorOfBook,
                             judgeFuseOfBook, judgeChargingOfBook, judgeLowVoltageOfBook})
        EXPECT_TRUE(judge(inputs()).empty());
}

TEST_F(ElectricalCircuits, PrechargeIsAsByHand)
{
    addPack(traction);
    addInverter();
    const Id<Part> resistor = part("Resistor", PartRole::PrechargeResistor, traction);
    rate(resistor, actualOf(RatedQuantity::InternalResistance), "50 Ω");
    figure("precharge.time", traction, "60 ms");
    const Check asking = judgePrechargeOfBook(inputs()).front();
    ASSERT_EQ(asking.unknowns.size(), 1);
    EXPECT_TRUE(asking.unknowns.front().contains(QLatin1String("energy the resistor takes")));
    EXPECT_EQ(asking.verdict, Verdict::Fails) << "91 % is too little, whatever else is not known";
    figure("precharge.pulse_energy", resistor, "60 J");

    PrechargeInputs byHand;
    byHand.packVoltage = given(volts(403.2), kAny);
    byHand.linkCapacitance = given(Capacitance::fromSi(500e-6), kAny);
    byHand.resistance = given(ohms(50), kAny);
    byHand.pulseEnergy = given(joules(60), kAny);
    byHand.timeBeforeClosing = given(seconds(0.06), kAny);
    expectSame(judgePrechargeOfBook(inputs()), judgePrecharge(byHand)); // 91 %: fails
    loosen("precharge.reached", "85 %");
    expectBothVerdicts(judgePrechargeOfBook(inputs()));
    // an energy limit of the resistor leads
    rate(resistor, limitOf(RatedQuantity::Energy), "20 J");
    EXPECT_EQ(judgePrechargeOfBook(inputs()).front().verdict, Verdict::Fails);
}

TEST_F(ElectricalCircuits, TheLinkIsOfEverythingOnTheCircuit)
{
    addPack(traction);
    part("Resistor", PartRole::PrechargeResistor, traction);
    inverter = part("Inverter", PartRole::Inverter, traction);
    expectAsks(judgePrechargeOfBook(inputs()), "capacitance of Inverter");
    rate(inverter, actualOf(RatedQuantity::Capacitance), "500 µF");
    const Id<Part> heater = part("Heater", PartRole::Heater, traction);
    rate(heater, actualOf(RatedQuantity::Capacitance), "20 µF");
    part("Charger", PartRole::Charger, traction);
    const Check check = judgePrechargeOfBook(inputs()).front();
    const auto link = std::ranges::find_if(
        check.inputs, [](const CheckInput &input) { return input.symbol == QLatin1String("C"); });
    ASSERT_NE(link, check.inputs.end());
    EXPECT_NEAR(link->value->si(), 520e-6, 1e-12);
    EXPECT_TRUE(link->origin.source.contains(QLatin1String("without Charger")));
}

TEST_F(ElectricalCircuits, DischargeIsAsByHand)
{
    addPack(traction);
    addInverter();
    expectAsks(judgeDischargeOfBook(inputs()), "always bleeds");
    const Id<Part> resistor = part("Bleed", PartRole::DischargeResistor, traction);
    rate(resistor, actualOf(RatedQuantity::InternalResistance), "80 kΩ");
    expectAsks(judgeDischargeOfBook(inputs()), "power limit of Bleed", Verdict::Fails);
    rate(resistor, limitOf(RatedQuantity::Power), "10 W");

    DischargeInputs byHand;
    byHand.start = given(volts(403.2), kAny);
    byHand.capacitance = given(Capacitance::fromSi(500e-6), kAny);
    byHand.bleed = given(ohms(80e3), kAny);
    byHand.bleedRating = given(Power::fromSi(10), kAny);
    expectSame(judgeDischargeOfBook(inputs()), judgeDischarge(byHand)); // 76 s: fails
    loosen("discharge.passive_time", "120 s");
    expectBothVerdicts(judgeDischargeOfBook(inputs()));
}

TEST_F(ElectricalCircuits, DischargeStartsAtTheWorstThatReachesTheCircuit)
{
    addPack(traction);
    addInverter();
    const Id<Part> resistor = part("Bleed", PartRole::DischargeResistor, traction);
    rate(resistor, actualOf(RatedQuantity::InternalResistance), "20 kΩ");
    rate(resistor, limitOf(RatedQuantity::Power), "50 W");
    const auto start = [&] {
        const std::vector<Check> checks = judgeDischargeOfBook(inputs());
        const auto &all = checks.front().inputs;
        const auto found = std::ranges::find_if(
            all, [](const CheckInput &input) { return input.symbol == QStringLiteral("U₀"); });
        return found == all.end() ? 0.0 : found->value->si();
    };
    EXPECT_NEAR(start(), 403.2, 1e-9);
    const Verdict usual = judgeDischargeOfBook(inputs()).front().verdict;
    EXPECT_LE(usual, Verdict::Tight);
    // what nobody knows of it may be worse: it is asked for, and nothing else changes
    const Id<Part> charger = part("Charger", PartRole::Charger, traction);
    rate(charger, actualOf(RatedQuantity::Capacitance), "1 µF");
    expectAsks(judgeDischargeOfBook(inputs()), "DC voltage of Charger");
    EXPECT_NEAR(start(), 403.2, 1e-9);
    rate(charger, kDcNominal, "420 V");
    EXPECT_NEAR(start(), 420, 1e-9);
    forget("inverter.boosts");
    expectAsks(judgeDischargeOfBook(inputs()), "boosts its link above");
    figure("circuit.boosted_voltage", traction, "650 V");
    EXPECT_NEAR(start(), 650, 1e-9);
    EXPECT_NEAR(worstVoltage(inputs(), *records().find(traction)).known.value->si(), 650, 1e-9);
    // a fuse has to part it, and the pack alone drives its fault
    Branch branch = cable("Main", traction);
    branch.fuseRating = amount("150 A");
    book.add(branch);
    const Check fuse = judgeFuseOfBook(inputs()).front();
    EXPECT_TRUE(std::ranges::any_of(fuse.inputs, [](const CheckInput &input) {
        return input.symbol == QStringLiteral("U") && input.shown == show(volts(650), u"V");
    }));
    EXPECT_TRUE(std::ranges::any_of(fuse.inputs, [](const CheckInput &input) {
        return input.symbol == QStringLiteral("U_k1") && input.shown == show(volts(403.2), u"V");
    }));
}

TEST_F(ElectricalCircuits, TwoBleedsShareTheirLoss)
{
    addPack(traction);
    addInverter();
    for (const char *ohm : {"20 kΩ", "30 kΩ"}) {
        const Id<Part> resistor = part(ohm, PartRole::DischargeResistor, traction);
        rate(resistor, actualOf(RatedQuantity::InternalResistance), ohm);
        rate(resistor, limitOf(RatedQuantity::Power), "9 W");
    }
    DischargeInputs byHand;
    byHand.start = given(volts(403.2), kAny);
    byHand.capacitance = given(Capacitance::fromSi(500e-6), kAny);
    byHand.bleed = given(ohms(12e3), kAny);
    byHand.bleedRating = given(Power::fromSi(15), kAny); // 9 W in the 20 kΩ are 6 W in the other
    expectSame(judgeDischargeOfBook(inputs()), judgeDischarge(byHand));
}

TEST_F(ElectricalCircuits, AConductorIsAsByHand)
{
    addPack(traction);
    Branch branch = cable("Main", traction);
    const Id<Branch> id = book.add(branch);
    word("conductor.installation", id, "in free air");
    figure("conductor.ambient", id, "40 °C");

    ConductorInputs byHand;
    byHand.conditions = {chosen(ConductorMaterial::Copper, kAny),
                         given(Area::fromSi(50e-6), kAny),
                         given(celsius(40), kAny),
                         chosen(Installation::FreeAir, kAny),
                         given(1.0, kAny),
                         given(celsius(125), kAny)};
    byHand.table = ampacityTables().back(); // EN 50355, single core in free air
    byHand.strands = chosen(ConductorClass::Flexible, kAny);
    byHand.length = given(Length::fromSi(6), kAny); // there and back
    byHand.continuous = given(amperes(100), kAny);
    byHand.voltage = given(volts(288), kAny); // 96 cells of 3 V
    expectSame(judgeConductorOfBook(inputs()), judgeConductor(byHand));

    figure("conductor.maker_current", id, "150 A");
    byHand.table.conductor = byHand.table.hottest = celsius(125);
    byHand.table.rows = {{Area::fromSi(50e-6), amperes(150)}};
    expectSame(judgeConductorOfBook(inputs()), judgeConductor(byHand));
}

TEST_F(ElectricalCircuits, AConductorAsksForWhatItsWordsDoNotSay)
{
    addPack(traction);
    Branch branch = cable("Main", traction);
    branch.conductor = QStringLiteral("from the donor");
    const Id<Branch> id = book.add(branch);
    expectAsks(judgeConductorOfBook(inputs()), "material");
    word("conductor.material", id, "copper");
    expectAsks(judgeConductorOfBook(inputs()), "insulation");
    figure("conductor.insulation", id, "90 °C");
    expectAsks(judgeConductorOfBook(inputs()), "class", Verdict::Fails);
    word("conductor.strands", id, "class 5");
    const Check check = judgeConductorOfBook(inputs()).front();
    EXPECT_TRUE(check.unknowns.isEmpty());
    // nobody said how it lies: the worst is assumed, and told
    EXPECT_EQ(check.weakest, Evidence::Assumed);
}

TEST_F(ElectricalCircuits, ALooserDropIsToldBesideThePublished)
{
    const Id<Circuit> small = circuit("small", CircuitKind::LowVoltage, CurrentKind::Dc, "14 V");
    Circuit made = *records().find(small);
    made.nominalVoltage = amount("12 V");
    OHMWRIGHT_ASSERT_OK(book->edit(QStringLiteral("say"), [&] { return book->update(made); }));
    const Id<Branch> id = book.add(cable("Feed", small));
    word("conductor.installation", id, "in free air");
    figure("conductor.run", id, "8 m");
    loosen("conductor.drop", "6 %");
    expectBothVerdicts(judgeConductorOfBook(inputs()));
}

TEST_F(ElectricalCircuits, AFuseIsAsByHand)
{
    addPack(traction);
    const Id<Part> fuse = part("Fuse", PartRole::Fuse, traction);
    rate(fuse, kDcLimit, "500 V");
    rate(fuse, kDcCurrent, "200 A");
    rate(fuse, limitOf(RatedQuantity::BreakingCapacity), "20 kA");
    figure("fuse.temperature_factor", fuse, "0.95");
    word("fuse.range", fuse, "full range");
    Branch branch = cable("Main", traction);
    branch.fuse = fuse;
    const Id<Branch> id = book.add(branch);
    word("conductor.installation", id, "in free air");
    expectAsks(judgeFuseOfBook(inputs()), "fault at the fuse");
    figure("fault.clearing_near", id, "3 ms");
    figure("fault.clearing_far", id, "6 s");

    FuseInputs byHand;
    byHand.rating = given(amperes(200), kAny);
    byHand.voltage = {{given(volts(500), kAny), CurrentKind::Dc}};
    byHand.breaking = given(amperes(20e3), kAny);
    byHand.temperatureFactor = given(0.95, kAny);
    byHand.worstVoltage = given(volts(403.2), kAny);
    byHand.continuous = given(amperes(100), kAny);
    const BookInputs in = inputs();
    const Branch &read = *records().find(id);
    byHand.faults = {{kAny, given(volts(403.2), kAny),
                      given(ohms(0.75 * (7 * 0.005 + 0.006)), kAny), given(seconds(0.003), kAny)},
                     {kAny, given(volts(288), kAny),
                      given(ohms(8 * 0.006) + *hotResistanceOf(in, read).value, kAny),
                      given(seconds(6), kAny)}};
    byHand.cableCapacity = given(*capacityOf(in, read).value, kAny);
    byHand.material = chosen(ConductorMaterial::Copper, kAny);
    byHand.area = given(Area::fromSi(50e-6), kAny);
    byHand.insulation = given(celsius(125), kAny);
    byHand.shortTime = given(celsius(250), kAny);
    const auto checks = judgeFuseOfBook(in);
    expectSame(checks, judgeFuse(byHand)); // too slow at the far end: fails
    EXPECT_EQ(checks.front().verdict, Verdict::Fails);
    loosen("fuse.clearing", "10 s");
    EXPECT_EQ(judgeFuseOfBook(inputs()).front().publishedVerdict, Verdict::Fails);
}

TEST_F(ElectricalCircuits, AFuseIsUnknownWhileAHigherVoltageMayReachIt)
{
    addPack(traction);
    addInverter();
    const Id<Part> fuse = part("Fuse", PartRole::Fuse, traction);
    rate(fuse, kDcLimit, "500 V");
    rate(fuse, kDcCurrent, "200 A");
    Branch branch = cable("Main", traction);
    branch.fuse = fuse;
    book.add(branch);
    const auto asks = [&] {
        const QStringList unknowns = judgeFuseOfBook(inputs()).front().unknowns;
        return std::ranges::any_of(unknowns, [](const QString &name) {
            return name.contains(QStringLiteral("pack disconnected"));
        });
    };
    EXPECT_FALSE(asks());
    forget("inverter.regeneration_voltage");
    EXPECT_TRUE(asks()); // what it makes of wheels that still turn
}

TEST_F(ElectricalCircuits, AFuseNobodyRecordedIsAskedFor)
{
    addPack(traction);
    Branch branch = cable("Main", traction);
    branch.fuseRating = amount("200 A");
    book.add(branch);
    expectAsks(judgeFuseOfBook(inputs()), "voltage rating of the fuse of Main", Verdict::Fails);
}

TEST_F(ElectricalCircuits, ABranchOfThePackWithoutAFuseIsAskedForOne)
{
    addPack(traction);
    const Id<Branch> id = book.add(cable("Middle", traction));
    expectAsks(judgeFuseOfBook(inputs()), "fuse of Middle, or the one further up");
    EXPECT_TRUE(judgeFuseOfBook(inputs()).front().doubts.contains(
        QStringLiteral("No fuse is told for Middle.")));
    // told where the check shows it: the fuse further up, which then is held to this cable
    const Id<Part> fuse = part("Fuse", PartRole::Fuse, traction);
    rate(fuse, kDcCurrent, "900 A");
    const auto address = [&] {
        const std::vector<Check> checks = judgeFuseOfBook(inputs());
        for (const CheckInput &input : checks.front().inputs)
            if (input.shown.isEmpty())
                return input.origin.field;
        return QString();
    };
    OHMWRIGHT_ASSERT_OK(editInput(*book, address(), records().find(fuse)->key));
    EXPECT_EQ(records().find(id)->fuse, fuse);
    const Check held = judgeFuseOfBook(inputs()).front();
    EXPECT_EQ(held.verdict, Verdict::Fails);
    EXPECT_TRUE(std::ranges::any_of(held.comparisons, [](const Comparison &c) {
        return c.what == QStringLiteral("rating against the cable") && c.verdict == Verdict::Fails;
    }));
}

TEST_F(ElectricalCircuits, OnlyDirectCurrentNeedsAFuseOfTheVehicle)
{
    const Id<Circuit> phases = circuit("phases", CircuitKind::Phases, CurrentKind::Ac, "300 V");
    book.add(cable("Phases", phases));
    book.add(cable("Pump", low)); // judged with its loads
    EXPECT_TRUE(judgeFuseOfBook(inputs()).empty());
}

TEST_F(ElectricalCircuits, ChargingIsAsByHand)
{
    addPack(traction);
    const Id<Circuit> mains = circuit("mains", CircuitKind::ChargeInlet, CurrentKind::Ac, "253 V");
    Circuit told = *records().find(mains);
    told.nominalVoltage = amount("230 V");
    OHMWRIGHT_ASSERT_OK(book->edit(QStringLiteral("say"), [&] { return book->update(told); }));
    const Id<Part> charger = part("Charger", PartRole::Charger, mains);
    rate(charger, actualOf(RatedQuantity::Power), "3.3 kW");
    rate(charger, kDcNominal, "420 V");
    rate(charger, {RatedQuantity::Voltage, RatingKind::Limit, RatingBasis::Least, CurrentKind::Dc},
         "200 V");
    rate(charger, kDcCurrent, "12 A");
    figure("charging.efficiency", charger, "93 %");
    figure("charging.power_factor", charger, "0.98");
    figure("charging.breaker", charger, "16 A");
    figure("pack.charge_end", traction, "400 V");
    figure("module.charge_current", modules.front(), "50 A");
    expectAsks(judgeChargingOfBook(inputs()), "outlet and cable", Verdict::Fails);
    figure("charging.outlet_current", charger, "20 A");

    ChargingInputs byHand;
    byHand.mainsVoltage = given(volts(230), kAny);
    byHand.phases = given(1.0, kAny);
    byHand.outputPower = given(Power::fromSi(3300), kAny);
    byHand.efficiency = given(0.93, kAny);
    byHand.powerFactor = given(0.98, kAny);
    byHand.breaker = given(amperes(16), kAny);
    byHand.weakestLink = given(amperes(20), kAny);
    byHand.packEmpty = given(volts(288), kAny);
    byHand.packFull = given(volts(403.2), kAny);
    byHand.packCurrent = given(amperes(50), kAny);
    byHand.chargerLeast = given(volts(200), kAny);
    byHand.chargerMost = given(volts(420), kAny);
    byHand.endOfCharge = given(volts(400), kAny);
    byHand.chargerCurrent = given(amperes(12), kAny);
    byHand.packEnergy = given(joules(345.6 * 90 * 3600), kAny);
    byHand.from = given(0.1, kAny);
    byHand.to = given(1.0, kAny);
    expectSame(judgeChargingOfBook(inputs()), judgeCharging(byHand)); // 98 % of 16 A: fails
    loosen("charging.continuous_share", "120 %");
    expectBothVerdicts(judgeChargingOfBook(inputs()));
}

TEST_F(ElectricalCircuits, TheLowVoltageSideIsAsByHand)
{
    const Id<Part> converter = part("Converter", PartRole::Converter, low);
    rate(converter, kDcCurrent, "100 A");
    rate(converter, kDcNominal, "14 V");
    const Id<Part> battery = part("Battery", PartRole::AuxiliaryBattery, low);
    rate(battery, kDcNominal, "12.5 V");
    Branch branch = cable("Steering", low);
    branch.continuousCurrent = amount("30 A");
    branch.fuseRating = amount("36 A");
    const Id<Branch> id = book.add(branch);
    word("conductor.installation", id, "in free air");
    figure("branch.duty", id, "50 %");
    word("branch.in_reserve", id, "yes");
    expectAsks(judgeLowVoltageOfBook(inputs()), "capacity of Battery", Verdict::Fails);
    rate(battery, actualOf(RatedQuantity::Capacity), "50 Ah");

    LowVoltageInputs byHand;
    byHand.loads = {{kAny, given(Power::fromSi(420), kAny), given(0.5, kAny), true}};
    byHand.fuses = {{kAny,
                     {0},
                     given(amperes(36), kAny),
                     given(*capacityOf(inputs(), *records().find(id)).value, kAny)}};
    byHand.systemVoltage = given(volts(14), kAny);
    byHand.converterCurrent = given(amperes(100), kAny);
    byHand.batteryVoltage = given(volts(12.5), kAny);
    byHand.batteryCapacity = given(Charge::fromSi(50 * 3600), kAny);
    byHand.usableShare = given(0.5, kAny);
    byHand.ratedTime = given(seconds(20 * 3600), kAny);
    expectSame(judgeLowVoltageOfBook(inputs()), judgeLowVoltage(byHand)); // 83 % of a fuse: fails
    loosen("low_voltage.fuse_share", "90 %");
    expectBothVerdicts(judgeLowVoltageOfBook(inputs()));
}

TEST_F(ElectricalCircuits, AFuseOnTheLowVoltageSideIsAskedWhatItBreaks)
{
    const Id<Part> converter = part("Converter", PartRole::Converter, low);
    rate(converter, kDcCurrent, "100 A");
    const Id<Part> battery = part("Battery", PartRole::AuxiliaryBattery, low);
    rate(battery, kDcNominal, "12 V");
    rate(battery, actualOf(RatedQuantity::Capacity), "100 Ah");
    Branch branch = cable("Steering", low);
    branch.continuousCurrent = amount("30 A");
    branch.fuseRating = amount("50 A");
    const Id<Branch> id = book.add(branch);
    word("branch.in_reserve", id, "yes");
    EXPECT_EQ(judgeLowVoltageOfBook(inputs()).front().unknowns, QStringList());
    figure("low_voltage.battery_resistance", low, "8 mΩ");
    expectAsks(judgeLowVoltageOfBook(inputs()), "breaking capacity of the fuse of Steering");
    figure("fuse.breaking_capacity", id, "1 kA");
    EXPECT_EQ(judgeLowVoltageOfBook(inputs()).front().verdict, Verdict::Fails); // 1.5 kA
    figure("fault.least_loop", id, "16 mΩ");
    EXPECT_NE(judgeLowVoltageOfBook(inputs()).front().verdict, Verdict::Fails); // 750 A
}

// 65 A over 3 m of 10 mm² there and back.
TEST_F(ElectricalCircuits, APeakOnTheLowVoltageSideDropsItsVoltageToo)
{
    Circuit told = *records().find(low);
    told.nominalVoltage = amount("12 V");
    OHMWRIGHT_ASSERT_OK(book->edit(QStringLiteral("say"), [&] { return book->update(told); }));
    Branch branch = cable("Steering", low);
    branch.continuousCurrent = amount("12 A");
    branch.peakCurrent = amount("65 A");
    branch.conductorSize = amount("10 mm²");
    book.add(branch);
    const Check check = judgeConductorOfBook(inputs()).front();
    EXPECT_TRUE(std::ranges::any_of(check.comparisons, [](const Comparison &held) {
        return held.what == QStringLiteral("voltage drop at its peak");
    }));
    loosen("conductor.peak_drop", "5 %");
    EXPECT_EQ(judgeConductorOfBook(inputs()).front().verdict, Verdict::Fails);
}

TEST_F(ElectricalCircuits, APartialRangeFuseLeavesTheOverloadInDoubt)
{
    addPack(traction);
    const Id<Part> fuse = part("Fuse", PartRole::Fuse, traction);
    word("fuse.range", fuse, "partial range");
    figure("fuse.conventional_current", fuse, "300 A");
    Branch branch = cable("Main", traction);
    branch.fuse = fuse;
    const Id<Branch> id = book.add(branch);
    EXPECT_EQ(judgeFuseOfBook(inputs()).front().doubts.size(), 1);
    word("branch.cannot_overload", id, "yes");
    EXPECT_TRUE(judgeFuseOfBook(inputs()).front().doubts.isEmpty());
}

} // namespace
} // namespace ohmwright
