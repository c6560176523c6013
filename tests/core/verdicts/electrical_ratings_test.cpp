// SPDX-License-Identifier: GPL-3.0-or-later
// Ratings of circuits and branches, pack, cells and grouping, read out of a book: the same as with
// the values by hand. That the checks themselves are right is tested in tests/published/checks.
#include "core/checks/branch_ratings.h"
#include "core/checks/cell_limits.h"
#include "core/checks/grouping.h"
#include "core/checks/pack.h"
#include "core/checks/worksheet.h"
#include "core/verdicts/edit_input.h"
#include "core/verdicts/electrical_checks_of_book.h"
#include "core/verdicts/pack_facts.h"
#include "tests/core/verdicts/electrical_book.h"
#include "tests/core/verdicts/electrical_expect.h"

namespace ohmwright {
namespace {

class ElectricalRatings : public ElectricalBook
{
protected:
    Id<Circuit> traction = circuit("traction", CircuitKind::Traction, CurrentKind::Dc, "");

    const Circuit &tractionCircuit() const { return *records().find(traction); }
    Id<Branch> branch(const char *name, const char *continuous, const char *peak)
    {
        Branch made;
        made.name = QString::fromLatin1(name);
        made.circuit = traction;
        if (*continuous)
            made.continuousCurrent = amount(continuous);
        if (*peak)
            made.peakCurrent = amount(peak);
        return book.add(made);
    }
};

TEST_F(ElectricalRatings, AnEmptyBookHasNoChecks)
{
    const TestBook empty;
    const BookInputs in(empty.records(), QDate(2026, 11, 20));
    EXPECT_TRUE(judgeCircuitRatingsOfBook(in).empty());
    EXPECT_TRUE(judgeBranchRatingsOfBook(in).empty());
    EXPECT_TRUE(judgePackOfBook(in).empty());
    EXPECT_TRUE(judgeCellLimitsOfBook(in).empty());
    EXPECT_TRUE(judgeGroupingOfBook(in).empty());
    EXPECT_TRUE(judgeCircuitRatingsOfBook(inputs()).empty()); // a circuit, but nothing on it
}

TEST_F(ElectricalRatings, ACircuitIsAsByHand)
{
    addPack(traction);
    const Id<Part> heater = part("Heater", PartRole::Heater, traction);
    rate(heater, kDcLimit, "480 V");
    const Id<Part> relay = part("Relay", {}, {}, {}, heater);
    rate(relay, kDcLimit, "420 V");
    part("Plate", {}, {}, {}, heater, PartKind::Hardware); // only holds

    CircuitRatingsInputs byHand;
    byHand.pack.cellsInSeries = given(96.0, QStringLiteral("n"));
    byHand.pack.cellFull = given(volts(4.2), QStringLiteral("u"));
    byHand.motor.applies = false;
    const VoltageLimit limit{given(volts(420), QStringLiteral("limit")), CurrentKind::Dc};
    byHand.parts = {{QStringLiteral("Relay"), {limit}, true, {}}};
    const auto checks = judgeCircuitRatingsOfBook(inputs());
    expectSame(checks, judgeCircuitRatings(byHand));
    EXPECT_EQ(checks.front().comparisons.front().what, QStringLiteral("Heater › Relay"));
    const MostCells most = mostCellsInSeries(inputs(), tractionCircuit());
    EXPECT_EQ(most.cells, 100);
    EXPECT_EQ(most.decidedBy, QStringLiteral("Heater › Relay"));
}

TEST_F(ElectricalRatings, ASubPartIsWhereItSaysElseWhereItSits)
{
    addPack(traction);
    const Id<Circuit> low = circuit("low", CircuitKind::LowVoltage, CurrentKind::Dc, "15 V");
    const Id<Part> heater = part("Heater", PartRole::Heater, traction);
    rate(heater, kDcLimit, "480 V");
    const Id<Part> head = part("Head", {}, low, {}, heater);
    rate(head, kDcLimit, "16 V"); // on the 12 V side alone: not held to the traction circuit
    const Id<Part> relay = part("Relay", {}, traction, {}, head);
    rate(relay, kDcLimit, "400 V");
    const auto checks = judgeCircuitRatingsOfBook(inputs());
    ASSERT_EQ(checks.size(), 2U);
    EXPECT_EQ(checks[1].verdict, Verdict::Fails);
    EXPECT_EQ(checks[1].comparisons.front().what, QStringLiteral("Heater › Head › Relay"));
    EXPECT_EQ(
        std::ranges::count_if(checks[1].comparisons,
                              [](const Comparison &c) { return c.verdict == Verdict::Fails; }),
        1);
    EXPECT_EQ(checks[0].comparisons.front().what, QStringLiteral("Heater › Head"));
}

TEST_F(ElectricalRatings, WhatDrivesACircuitIsAskedFor)
{
    addPack(traction);
    const Id<Part> inverter = part("Inverter", PartRole::Inverter, traction);
    rate(inverter, kDcLimit, "500 V");
    expectAsks(judgeCircuitRatingsOfBook(inputs()), "highest voltage it makes");
    figure("inverter.regeneration_voltage", inverter, "430 V");
    // that it does not boost has to be said
    expectAsks(judgeCircuitRatingsOfBook(inputs()), "boosts its link above the pack's voltage");
    word("inverter.boosts", inverter, "yes");
    expectAsks(judgeCircuitRatingsOfBook(inputs()), "highest voltage it is boosted to");
    forget("inverter.boosts");
    word("inverter.boosts", inverter, "no");
    EXPECT_EQ(judgeCircuitRatingsOfBook(inputs()).front().unknowns, QStringList());
    const Id<Part> motor = part("Motor", PartRole::Motor);
    expectAsks(judgeCircuitRatingsOfBook(inputs()), "no-load voltage of Motor");
    word("motor.magnets", motor, "no");
    EXPECT_EQ(judgeCircuitRatingsOfBook(inputs()).front().unknowns, QStringList());
    part("Charger", PartRole::Charger, traction);
    expectAsks(judgeCircuitRatingsOfBook(inputs()), "DC voltage of Charger");
}

TEST_F(ElectricalRatings, TheInvertersModulationBringsThePackToThePhases)
{
    addPack(traction);
    const Id<Circuit> phases = circuit("phases", CircuitKind::Phases, CurrentKind::Ac, "");
    const Id<Part> inverter = part("Inverter", PartRole::Inverter, traction);
    Connection connection;
    connection.part = inverter;
    connection.circuit = phases;
    book.add(connection);
    rate(inverter, kDcLimit, "500 V");
    rate(inverter,
         {RatedQuantity::Voltage, RatingKind::Limit, RatingBasis::Continuous, CurrentKind::Ac},
         "360 V");
    figure("inverter.regeneration_voltage", inverter, "400 V");
    const auto ofPhases = [&] {
        return judgeCircuitRatings(circuitRatingsInputs(inputs(), *records().find(phases)));
    };
    // 403.2 V · √(2/3) is 329.2 V, assumed until it is told; 403.2 V/√2 is 285.1 V
    EXPECT_EQ(ofPhases().comparisons.front().value, show(volts(329.2), u"V"));
    EXPECT_TRUE(std::ranges::any_of(ofPhases().inputs, [](const CheckInput &input) {
        return input.shown == QStringLiteral("six-step") &&
               input.origin.evidence == Evidence::Assumed;
    }));
    word("inverter.modulation", inverter, "space vector");
    EXPECT_EQ(ofPhases().comparisons.front().value, show(volts(285.1), u"V"));
    EXPECT_EQ(mostCellsInSeries(inputs(), *records().find(phases)).cells, 121); // √2 · 360/4.2
}

TEST_F(ElectricalRatings, ALimitOfTheOtherKindDoesNotAnswer)
{
    addPack(traction);
    const Id<Part> fuse = part("Old fuse", PartRole::Fuse, traction);
    rate(fuse,
         {RatedQuantity::Voltage, RatingKind::Limit, RatingBasis::Continuous, CurrentKind::Ac},
         "500 V");
    expectAsks(judgeCircuitRatingsOfBook(inputs()), "only a limit for AC is known");
}

TEST_F(ElectricalRatings, ABranchIsAsByHand)
{
    const Id<Branch> main = branch("Main", "100 A", "300 A");
    figure("branch.peak_duration", main, "10 s");
    const Id<Part> contactor = part("Contactor", PartRole::Contactor, traction, main);
    rate(contactor, kDcCurrent, "200 A");
    rate(contactor, {RatedQuantity::Current, RatingKind::Limit, RatingBasis::Peak, CurrentKind::Dc},
         "320 A", amount("60 s"));

    BranchRatingsInputs byHand;
    byHand.demands = {{QStringLiteral("c"), given(amperes(100), QStringLiteral("c")), std::nullopt},
                      {QStringLiteral("p"), given(amperes(300), QStringLiteral("p")),
                       given(seconds(10), QStringLiteral("t"))}};
    byHand.parts = {{QStringLiteral("Contactor"),
                     {{given(amperes(200), QStringLiteral("l")), CurrentKind::Dc, std::nullopt},
                      {given(amperes(320), QStringLiteral("l")), CurrentKind::Dc,
                       given(seconds(60), QStringLiteral("t"))}},
                     true,
                     {}}};
    expectSame(judgeBranchRatingsOfBook(inputs()), judgeBranchRatings(byHand));
    forget("branch.peak_duration");
    expectAsks(judgeBranchRatingsOfBook(inputs()), "how long its peak");
}

// 47.3 kW at the pack's terminals, 41.6 kW at the shaft; from 96 · 3.3 V at 10 % and 8 · 6 mΩ that
// is (316.8 − √(316.8² − 4 · 0.048 · 47300))/0.096 = 152.8 A.
TEST_F(ElectricalRatings, ABranchCarriesWhatDrivingTakesWhereLessIsEntered)
{
    addPack(traction);
    curve(CurveKind::OpenCircuit, modules.front(), {{"0 %", "3.2 V"}, {"100 %", "4.2 V"}});
    const Id<Branch> main = branch("Main", "100 A", "140 A");
    figure("branch.peak_duration", main, "10 s");
    const Id<Part> inverter = part("Inverter", PartRole::Inverter, traction, main);
    rate(inverter, kDcCurrent, "200 A");
    rate(inverter, {RatedQuantity::Current, RatingKind::Limit, RatingBasis::Peak, CurrentKind::Dc},
         "320 A", amount("60 s"));
    const double v = 316.8, r = 0.048;
    const auto amps = [&](double p) {
        return amperes((v - std::sqrt(v * v - 4 * r * p)) / (2 * r));
    };
    const auto asked = [&](const char *symbol) {
        const Check check = judgeBranchRatingsOfBook(inputs()).front();
        for (const CheckInput &input : check.inputs)
            if (input.symbol == QString::fromUtf8(symbol))
                return input;
        return CheckInput();
    };
    EXPECT_EQ(asked("I").shown, show(amperes(100), u"A"));
    figure("pack.continuous_power", traction, "47.3 kW");
    figure("pack.peak_power", traction, "70 kW");
    EXPECT_EQ(asked("I").shown, show(amps(47.3e3), u"A"));
    EXPECT_EQ(asked("Î").shown, show(amps(70e3), u"A"));
    EXPECT_TRUE(asked("I").origin.source.contains(show(amperes(100), u"A")));
    EXPECT_TRUE(parseInputAddress(asked("I").origin.field));
    // the inverter takes no more than it is good for
    forget("pack.continuous_power");
    figure("pack.continuous_power", traction, "90 kW");
    EXPECT_EQ(asked("I").shown, show(amperes(200), u"A"));
    // more than that was entered: it stands
    Branch greater = *records().find(main);
    greater.continuousCurrent = amount("210 A");
    OHMWRIGHT_ASSERT_OK(book->edit(QStringLiteral("say"), [&] { return book->update(greater); }));
    EXPECT_EQ(asked("I").shown, show(amperes(210), u"A"));
    EXPECT_EQ(judgeBranchRatingsOfBook(inputs()).front().verdict, Verdict::Fails);
}

TEST_F(ElectricalRatings, ThePeakOfThePackIsHeldToALimitThatLastsAsLong)
{
    addPack(traction);
    figure("pack.steady_load", traction, "15 kW");
    curve(CurveKind::OpenCircuit, modules.front(), {{"0 %", "3.2 V"}, {"100 %", "4.2 V"}});
    for (const Id<Part> module : modules)
        rate(module,
             {RatedQuantity::Current, RatingKind::Limit, RatingBasis::Peak, CurrentKind::Dc},
             "300 A", amount("10 s"));
    figure("pack.peak_power", traction, "60 kW"); // 195 A, over the 150 A for hours
    expectAsks(judgePackOfBook(inputs()), "how long driving asks for its most power");
    figure("pack.peak_duration", traction, "10 s");
    const auto row = [&] {
        const std::vector<Check> checks = judgePackOfBook(inputs());
        for (const Comparison &c : checks.front().comparisons)
            if (c.what == QStringLiteral("current of a module at peak power"))
                return c;
        return Comparison();
    };
    EXPECT_EQ(row().limit, show(amperes(300), u"A"));
    EXPECT_EQ(row().verdict, Verdict::Holds);
    forget("pack.peak_duration");
    figure("pack.peak_duration", traction, "30 s");
    expectAsks(judgePackOfBook(inputs()), "for at least 30");
    EXPECT_EQ(row().limit, QString());
    // too much for ten seconds is too much for thirty
    forget("pack.peak_power");
    figure("pack.peak_power", traction, "100 kW");
    EXPECT_EQ(judgePackOfBook(inputs()).front().verdict, Verdict::Fails);
    EXPECT_EQ(row().limit, show(amperes(300), u"A"));
    // and what it takes for hours it takes for thirty seconds
    forget("pack.peak_power");
    figure("pack.peak_power", traction, "40 kW");
    EXPECT_EQ(row().limit, show(amperes(150), u"A"));
}

TEST_F(ElectricalRatings, ABranchAsksForLimitsAndCurrents)
{
    const Id<Branch> main = branch("Main", "", "300 A");
    figure("branch.peak_duration", main, "10 s");
    const Id<Part> contactor = part("Contactor", PartRole::Contactor, traction, main);
    expectAsks(judgeBranchRatingsOfBook(inputs()), "continuous current of Main");
    expectAsks(judgeBranchRatingsOfBook(inputs()), "peak current limit of Contactor");
    rate(contactor, kDcCurrent, "200 A");
    expectAsks(judgeBranchRatingsOfBook(inputs()), "peak current limit of Contactor");
    // beyond a peak it outlasts it fails, whatever is not known for hours
    rate(contactor, {RatedQuantity::Current, RatingKind::Limit, RatingBasis::Peak, CurrentKind::Dc},
         "280 A", amount("60 s"));
    EXPECT_EQ(judgeBranchRatingsOfBook(inputs()).front().verdict, Verdict::Fails);
}

TEST_F(ElectricalRatings, ThePackIsAsByHand)
{
    addPack(traction);
    figure("pack.steady_load", traction, "15 kW");
    curve(CurveKind::OpenCircuit, modules.front(), {{"0 %", "3.2 V"}, {"100 %", "4.2 V"}});
    const Id<Part> inverter = part("Inverter", PartRole::Inverter, traction);
    rate(inverter, kDcLimit, "450 V");
    rate(inverter, {RatedQuantity::Voltage, RatingKind::Limit, RatingBasis::Least, CurrentKind::Dc},
         "250 V");

    PackInputs byHand;
    byHand.modulesInSeries = given(8.0, QStringLiteral("s"));
    byHand.modulesInParallel = given(1.0, QStringLiteral("p"));
    byHand.cellsInSeriesPerModule = given(12.0, QStringLiteral("c"));
    byHand.openCircuit = Curve<double, Voltage>({{0.0, volts(3.2)}, {1.0, volts(4.2)}});
    byHand.moduleCapacity = given(Charge::fromSi(90 * 3600.0), QStringLiteral("Q"));
    byHand.moduleResistance = given(ohms(0.006), QStringLiteral("R"));
    byHand.highestCharge = given(1.0, QStringLiteral("h"));
    byHand.lowestCharge = given(0.1, QStringLiteral("l"));
    byHand.cellFloor = given(volts(3), QStringLiteral("f"));
    byHand.load = given(Power::fromSi(15000), QStringLiteral("P"));
    byHand.moduleCurrentLimit = given(amperes(150), QStringLiteral("I"));
    // nobody says how much it draws until motor or inverter is told
    expectAsks(judgePackOfBook(inputs()), "peak power limit of Inverter");
    rate(inverter, {RatedQuantity::Power, RatingKind::Limit, RatingBasis::Peak, std::nullopt},
         "44 kW", amount("30 s"));
    byHand.peak = PackPeak{given(watts(44e3 / 0.88), QStringLiteral("P")), std::nullopt,
                           given(amperes(150), QStringLiteral("I"))};
    byHand.windows = {{QStringLiteral("Inverter"), given(volts(250), QStringLiteral("a")),
                       given(volts(450), QStringLiteral("b")), false}};
    expectSame(judgePackOfBook(inputs()), judgePack(byHand));
    forget("pack.steady_load");
    expectAsks(judgePackOfBook(inputs()), "steady load");
}

TEST_F(ElectricalRatings, ThePacksFactsFollowFromItsModules)
{
    addPack(traction);
    PackFacts facts = packFacts(inputs());
    EXPECT_EQ(facts.circuit, &tractionCircuit());
    EXPECT_EQ(facts.modules.size(), 8U);
    EXPECT_EQ(facts.cellsInSeries.value, 96.0);
    EXPECT_NEAR(facts.nominal.value->si(), 345.6, 1e-9);
    EXPECT_NEAR(facts.full.value->si(), 403.2, 1e-9);
    // no curve: 345.6 V · 90 Ah · (100 % − 10 %)
    EXPECT_NEAR(facts.usableEnergy.value->si(), 345.6 * 90 * 3600 * 0.9, 1);
    EXPECT_FALSE(facts.greatestPower.value); // no peak current is known
    figure("pack.modules_in_parallel", traction, "2");
    facts = packFacts(inputs());
    EXPECT_EQ(facts.modulesInSeries.value, 4.0);
    EXPECT_EQ(facts.cellsInSeries.value, 48.0);
    figure("pack.usable_energy", traction, "20 kWh");
    EXPECT_NEAR(packFacts(inputs()).usableEnergy.value->si(), 20 * 3.6e6, 1);
    forget("cell.full_voltage");
    EXPECT_FALSE(packFacts(inputs()).full.value);
    EXPECT_TRUE(parseInputAddress(packFacts(inputs()).full.origin.field).has_value());
    const TestBook empty;
    EXPECT_EQ(packFacts({empty.records(), QDate(2026, 11, 20)}).circuit, nullptr);
}

TEST_F(ElectricalRatings, ThePowerOfThePackIsThatOfItsWeakestModule)
{
    addPack(traction);
    for (const Id<Part> module : modules)
        rate(module,
             {RatedQuantity::Current, RatingKind::Limit, RatingBasis::Peak, CurrentKind::Dc},
             module == modules.back() ? "200 A" : "300 A", amount("10 s"));
    // 200 A · (345.6 V − 200 A · (7 · 5 mΩ + 6 mΩ))
    EXPECT_NEAR(packFacts(inputs()).greatestPower.value->si(), 200 * (345.6 - 200 * 0.041), 1e-6);
    curve(CurveKind::ChargeLimit, modules.front(), {{"0 °C", "5 A"}, {"25 °C", "50 A"}});
    // 50 A a cell, two cells in parallel
    EXPECT_NEAR(packFacts(inputs()).greatestChargePower.value->si(), 345.6 * 100, 1e-6);
}

TEST_F(ElectricalRatings, TheCellsLimitsAreAsByHand)
{
    addPack(traction);
    figure("pack.charge_end", traction, "400 V");
    figure("pack.discharge_end", traction, "320 V");
    figure("pack.charge_current", traction, "16 A");
    figure("pack.discharge_current", traction, "80 A");
    figure("pack.channels", traction, "96");
    figure("cells.coldest_charging", traction, "-5 °C");
    figure("cells.hottest_charging", traction, "40 °C");
    figure("cells.coldest_driving", traction, "-10 °C");
    figure("cells.hottest_driving", traction, "45 °C");
    curve(CurveKind::ChargeLimit, modules.front(), {{"0 °C", "10 A"}, {"60 °C", "40 A"}});
    curve(CurveKind::DischargeLimit, modules.front(), {{"-20 °C", "100 A"}, {"60 °C", "100 A"}});

    CellLimitsInputs byHand;
    byHand.cellsInSeries = given(96.0, QStringLiteral("n"));
    byHand.cellsInParallel = given(2.0, QStringLiteral("p"));
    byHand.cellMost = given(volts(4.2), QStringLiteral("m"));
    byHand.cellLeast = given(volts(3), QStringLiteral("l"));
    byHand.chargeEnd = given(volts(400), QStringLiteral("c"));
    byHand.dischargeEnd = given(volts(320), QStringLiteral("d"));
    byHand.chargeLimit.curve =
        Curve<Temperature, Current>({{celsius(0), amperes(10)}, {celsius(60), amperes(40)}});
    byHand.dischargeLimit.curve =
        Curve<Temperature, Current>({{celsius(-20), amperes(100)}, {celsius(60), amperes(100)}});
    byHand.chargeCurrent = given(amperes(16), QStringLiteral("i"));
    byHand.dischargeCurrent = given(amperes(80), QStringLiteral("i"));
    byHand.coldestCharging = given(celsius(-5), QStringLiteral("a"));
    byHand.hottestCharging = given(celsius(40), QStringLiteral("b"));
    byHand.coldestDriving = given(celsius(-10), QStringLiteral("c"));
    byHand.hottestDriving = given(celsius(45), QStringLiteral("d"));
    byHand.channels = given(96.0, QStringLiteral("k"));
    expectSame(judgeCellLimitsOfBook(inputs()), judgeCellLimits(byHand)); // charged in frost: fails
    loosen("cells.charge_floor", "-10 °C");
    const auto loosened = judgeCellLimitsOfBook(inputs());
    EXPECT_EQ(loosened.front().publishedVerdict, Verdict::Fails);
    forget("pack.charge_end");
    const auto asking = judgeCellLimitsOfBook(inputs());
    expectAsks(asking, "at which charging ends");
}

// 44 kW at the shaft and 0.88 on the way: 50 kW from 96 · 3.3 V = 316.8 V at 10 % and 8 · 6 mΩ.
TEST_F(ElectricalRatings, TheDrivesPeakIsHeldToTheColdCells)
{
    addPack(traction);
    curve(CurveKind::OpenCircuit, modules.front(), {{"0 %", "3.2 V"}, {"100 %", "4.2 V"}});
    curve(CurveKind::DischargeLimit, modules.front(), {{"-10 °C", "40 A"}, {"0 °C", "80 A"}});
    figure("cells.coldest_driving", traction, "-5 °C");
    figure("cells.hottest_driving", traction, "0 °C");
    const Id<Part> inverter = part("Inverter", PartRole::Inverter, traction);
    rate(inverter, {RatedQuantity::Power, RatingKind::Limit, RatingBasis::Peak, std::nullopt},
         "44 kW", amount("30 s"));
    const auto peakRow = [&] {
        const std::vector<Check> checks = judgeCellLimitsOfBook(inputs());
        const auto &rows = checks.front().comparisons;
        const auto row = std::ranges::find_if(rows, [](const Comparison &c) {
            return c.what == QStringLiteral("current of a cell at peak power, coldest");
        });
        EXPECT_NE(row, rows.end());
        return row == rows.end() ? Comparison() : *row;
    };
    const double v = 316.8, r = 0.048;
    const auto amps = [&](double p) {
        return (v - std::sqrt(v * v - 4 * r * p)) / (2 * r) / 2;
    };
    EXPECT_EQ(peakRow().value, show(amperes(amps(50e3)), u"A"));
    EXPECT_EQ(peakRow().limit, show(amperes(60), u"A"));
    EXPECT_EQ(peakRow().verdict, Verdict::Fails);
    // the lower of motor and inverter counts
    const Id<Part> motor = part("Motor", PartRole::Motor);
    rate(motor, {RatedQuantity::Power, RatingKind::Limit, RatingBasis::Peak, std::nullopt},
         "35.2 kW", amount("30 s"));
    EXPECT_EQ(peakRow().value, show(amperes(amps(40e3)), u"A"));
    // as told, which leads; and what the controller asks of a cold pack
    figure("pack.peak_power", traction, "45 kW");
    EXPECT_EQ(peakRow().value, show(amperes(amps(45e3)), u"A"));
    figure("pack.cold_power", traction, "30 kW");
    EXPECT_EQ(peakRow().value, show(amperes(amps(30e3)), u"A"));
    EXPECT_NE(peakRow().verdict, Verdict::Fails);
    figure("cell.cold_peak_current", modules.front(), "50 A");
    EXPECT_EQ(peakRow().limit, show(amperes(50), u"A"));
    // up to where it holds has to be said: from there on the whole power is asked
    expectAsks(judgeCellLimitsOfBook(inputs()), "temperature of the cells below which",
               judgeCellLimitsOfBook(inputs()).front().verdict);
    figure("pack.cold_power_below", traction, "-2 °C");
    const auto warmRow = [&](const char *where) {
        const std::vector<Check> checks = judgeCellLimitsOfBook(inputs());
        for (const Comparison &c : checks.front().comparisons)
            if (c.what ==
                QStringLiteral("current of a cell at peak power, ") + QString::fromLatin1(where))
                return c;
        return Comparison();
    };
    EXPECT_EQ(warmRow("held no more").value, show(amperes(amps(45e3)), u"A"));
    EXPECT_EQ(warmRow("held no more").limit, show(amperes(72), u"A")); // 40 A + 8/10 of 40 A
    EXPECT_EQ(warmRow("hottest").limit, show(amperes(80), u"A"));
    figure("cell.warm_peak_current", modules.front(), "90 A");
    EXPECT_EQ(warmRow("held no more").limit, show(amperes(90), u"A"));
    EXPECT_EQ(warmRow("hottest").limit, show(amperes(90), u"A"));
}

TEST_F(ElectricalRatings, BrakingToldTwiceIsComparedWithinThePacksVoltages)
{
    addPack(traction);
    part("Inverter", PartRole::Inverter, traction);
    CheckFigure power;
    power.figure = QStringLiteral("range.regeneration");
    power.value = amount("6 kW");
    power.evidence = Evidence::Assumed;
    book.add(power);
    const auto doubts = [&] {
        return judgeCellLimitsOfBook(inputs()).front().doubts.filter(QStringLiteral("told twice"));
    };
    EXPECT_TRUE(doubts().isEmpty());
    figure("pack.regeneration_current", traction, "16 A"); // 4.6 kW to 6.5 kW
    EXPECT_TRUE(doubts().isEmpty());
    forget("pack.regeneration_current");
    figure("pack.regeneration_current", traction, "30 A");
    ASSERT_EQ(doubts().size(), 1);
    EXPECT_TRUE(doubts().front().contains(QStringLiteral("regeneration set in the controller")));
    EXPECT_TRUE(doubts().front().contains(QStringLiteral("highest current of braking")));
}

TEST_F(ElectricalRatings, AMissingCurveCanBeFilledIn)
{
    addPack(traction);
    figure("pack.steady_load", traction, "15 kW");
    expectAsks(judgePackOfBook(inputs()), "open-circuit voltage");
    const auto missing = [&] {
        const std::vector<Check> checks = judgePackOfBook(inputs());
        for (const CheckInput &input : checks.front().inputs)
            if (input.origin.name.contains(QStringLiteral("open-circuit voltage")))
                return input.origin.field;
        return QString();
    };
    const QString address = missing();
    EXPECT_FALSE(editInput(*book, address, QStringLiteral("0 %: 3.2 V")));
    EXPECT_FALSE(editInput(*book, address, QStringLiteral("0 %: 3.2 V; full")));
    EXPECT_FALSE(editInput(*book, address, QStringLiteral("0 %: 3.2 A; 100 %: 4.2 V")));
    EXPECT_TRUE(records().all<RatedCurve>().rows().empty());
    OHMWRIGHT_ASSERT_OK(
        editInput(*book, address, QStringLiteral("0 %: 3.2 V; 100 %: 4.2 V, datasheet, page 2")));
    ASSERT_EQ(records().all<RatedCurve>().size(), 1U);
    const RatedCurve &made = records().all<RatedCurve>().rows().front();
    EXPECT_EQ(made.part, modules.front());
    EXPECT_EQ(made.evidence, Evidence::Datasheet);
    EXPECT_EQ(made.source, QStringLiteral("page 2"));
    EXPECT_EQ(records().of<CurvePoint>(made.id).size(), 2U);
    EXPECT_TRUE(missing().isEmpty()); // what is there is changed on its card
    // again, as a scratch that is kept may do: the points are replaced
    OHMWRIGHT_ASSERT_OK(
        editInput(*book, address, QStringLiteral("0 %: 3 V; 50 %: 3.7 V; 100 %: 4.2 V")));
    ASSERT_EQ(records().all<RatedCurve>().size(), 1U);
    EXPECT_EQ(records().of<CurvePoint>(records().all<RatedCurve>().rows().front().id).size(), 3U);
}

TEST_F(ElectricalRatings, GroupingIsAsByHandAndOnlyWhereThereAreGroups)
{
    addPack(traction);
    EXPECT_TRUE(judgeGroupingOfBook(inputs()).empty()); // one string
    figure("pack.modules_in_parallel", traction, "2");
    expectAsks(judgeGroupingOfBook(inputs()), "rest between");
    figure("grouping.rest", traction, "10 d");
    for (const Id<Part> module : modules)
        figure("module.lost_voltage", module, "6 mV");

    GroupingInputs byHand;
    for (int i = 1; i <= 8; ++i)
        byHand.modules.push_back(
            {QString::number(i),
             given(Charge::fromSi((i == 3 ? 90 : 100) * 3600.0), QStringLiteral("Q")),
             given(ohms(i == 5 ? 0.006 : 0.005), QStringLiteral("R")),
             given(volts(0.006), QStringLiteral("U"))});
    byHand.groupsInSeries = given(4.0, QStringLiteral("m"));
    byHand.modulesInGroup = given(2.0, QStringLiteral("k"));
    byHand.cellsInModule = given(12.0, QStringLiteral("n"));
    byHand.rest = given(seconds(10 * 86400), QStringLiteral("t"));
    expectSame(judgeGroupingOfBook(inputs()), judgeGrouping(byHand));
}

} // namespace
} // namespace ohmwright
