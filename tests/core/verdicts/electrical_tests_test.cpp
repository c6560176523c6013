// SPDX-License-Identifier: GPL-3.0-or-later
// Test records (isolation, bonding, torque, precharge) read out of a book: the same as with the
// readings by hand.
#include "core/checks/bonding.h"
#include "core/checks/isolation.h"
#include "core/checks/precharge_measured.h"
#include "core/checks/torque_measured.h"
#include "core/verdicts/electrical_checks_of_book.h"
#include "core/verdicts/judges.h"
#include "core/verdicts/test_readings.h"
#include "tests/core/verdicts/electrical_book.h"
#include "tests/core/verdicts/electrical_expect.h"

namespace ohmwright {
namespace {

const QString kAny = QStringLiteral("any");
const RecordedTest kRecord{QStringLiteral("builder"), QDate(2026, 10, 3),
                           QStringLiteral("meter 1")};

class ElectricalTests : public ElectricalBook
{
protected:
    Id<Circuit> traction = circuit("traction", CircuitKind::Traction, CurrentKind::Dc, "");

    TestRecord done(const char *name, TestKind kind)
    {
        TestRecord test;
        test.name = QString::fromLatin1(name);
        test.kind = kind;
        test.doneBy = kRecord.by;
        test.doneOn = kRecord.on;
        test.instrument = kRecord.instrument;
        return test;
    }
};

TEST_F(ElectricalTests, ABookWithoutTestsHasNoChecks)
{
    book.add(done("Other", TestKind::Other));
    for (const auto judge : {judgeIsolationOfBook, judgeBondingOfBook, judgeTorqueMeasuredOfBook,
                             judgePrechargeMeasuredOfBook})
        EXPECT_TRUE(judge(inputs()).empty());
}

TEST_F(ElectricalTests, IsolationIsAsByHand)
{
    addPack(traction);
    const Id<Part> inverter = part("Inverter", PartRole::Inverter, traction);
    figure("inverter.regeneration_voltage", inverter, "390 V");
    word("inverter.boosts", inverter, "no");
    TestRecord test = done("Pack", TestKind::Isolation);
    test.part = tray;
    const Id<TestRecord> id = book.add(test);
    figure("isolation.voltmeter", id, "10 MΩ");
    figure("isolation.pack_voltage", id, "380 V");
    figure("isolation.negative_to_chassis", id, "200 V");
    figure("isolation.positive_to_chassis", id, "178 V");
    figure("isolation.known_resistor", id, "200 kΩ");
    expectAsks(judgeIsolationOfBook(inputs()), "with the resistor across");
    figure("isolation.with_resistor", id, "110 V");

    IsolationInputs byHand;
    byHand.record = kRecord;
    byHand.joinedWithAc = true;
    byHand.workingVoltage = given(volts(403.2), kAny);
    byHand.nominalVoltage = given(volts(345.6), kAny);
    byHand.packVoltage = given(volts(380), kAny);
    byHand.negativeToChassis = given(volts(200), kAny);
    byHand.positiveToChassis = given(volts(178), kAny);
    byHand.knownResistor = given(ohms(200e3), kAny);
    byHand.withResistor = given(volts(110), kAny);
    byHand.voltmeter = given(ohms(10e6), kAny);
    expectSame(judgeIsolationOfBook(inputs()), judgeIsolation(byHand));
    // it is held to the worst that reaches the circuit, and asks for what is not known of it
    forget("inverter.regeneration_voltage");
    figure("inverter.regeneration_voltage", inverter, "430 V");
    byHand.workingVoltage = given(volts(430), kAny);
    expectSame(judgeIsolationOfBook(inputs()), judgeIsolation(byHand));
    forget("inverter.regeneration_voltage");
    expectAsks(judgeIsolationOfBook(inputs()), "highest voltage it makes",
               std::max(Verdict::Unknown, judgeIsolation(byHand).verdict));
    figure("inverter.regeneration_voltage", inverter, "390 V");
    byHand.workingVoltage = given(volts(403.2), kAny);
    loosen("isolation.ac", "100");
    const auto loosened = judgeIsolationOfBook(inputs());
    EXPECT_TRUE(loosened.front().publishedVerdict.has_value());
    EXPECT_EQ(loosened.front().publishedVerdict, judgeIsolation(byHand).verdict);
}

TEST_F(ElectricalTests, AnInsulationTesterOnALooseUnitIsAnotherMethod)
{
    addPack(traction);
    TestRecord test = done("Motor", TestKind::Isolation);
    test.part = part("Motor", PartRole::Motor);
    test.value = amount("500 MΩ");
    book.add(test);
    EXPECT_TRUE(judgeIsolationOfBook(inputs()).empty());
}

TEST_F(ElectricalTests, BondingIsAsByHand)
{
    TestRecord test = done("Cover", TestKind::Bonding);
    test.value = amount("120 mΩ"); // the record's own value is the reading
    const Id<TestRecord> id = book.add(test);
    expectAsks(judgeBondingOfBook(inputs()), "current it is measured with", Verdict::Fails);
    figure("bonding.current", id, "1 A");
    BondingInputs byHand;
    byHand.record = kRecord;
    byHand.measured = given(ohms(0.12), kAny);
    byHand.testCurrent = given(amperes(1), kAny);
    expectSame(judgeBondingOfBook(inputs()), judgeBonding(byHand));
    EXPECT_EQ(judgeBondingOfBook(inputs()).front().subject, records().find(id)->key);
    loosen("bonding.resistance", "0.2 Ω");
    expectBothVerdicts(judgeBondingOfBook(inputs()));
}

TEST_F(ElectricalTests, WhoMeasuredIsAskedForWhereItIsKept)
{
    TestRecord test;
    test.name = QStringLiteral("Cover");
    test.kind = TestKind::Bonding;
    book.add(test);
    expectAsks(judgeBondingOfBook(inputs()), "who measured");
}

TEST_F(ElectricalTests, TorqueIsAsByHand)
{
    TestRecord test = done("Studs", TestKind::Torque);
    test.limit = amount("20 N·m"); // specified, unless a figure says so
    const Id<TestRecord> id = book.add(test);
    expectAsks(judgeTorqueMeasuredOfBook(inputs()), "fastener 1");
    figure("torque.reading_01", id, "19.5 N·m");
    figure("torque.reading_02", id, "20.4 N·m");
    TorqueMeasuredInputs byHand;
    byHand.record = kRecord;
    byHand.specified = given(Torque::fromSi(20), kAny);
    byHand.tolerance = given(0.10, kAny);
    byHand.scatter = given(0.04, kAny);
    byHand.readings = {given(Torque::fromSi(19.5), kAny), given(Torque::fromSi(20.4), kAny)};
    expectSame(judgeTorqueMeasuredOfBook(inputs()), judgeTorqueMeasured(byHand));
}

TEST_F(ElectricalTests, PrechargeMeasuredIsAsByHand)
{
    const Id<TestRecord> id = book.add(done("Bench", TestKind::Precharge));
    expectAsks(judgePrechargeMeasuredOfBook(inputs()), "circuit of Bench");
    addPack(traction);
    const Id<Part> resistor = part("Resistor", PartRole::PrechargeResistor, traction);
    rate(resistor, actualOf(RatedQuantity::InternalResistance), "50 Ω");
    const Id<Part> inverter = part("Inverter", PartRole::Inverter, traction);
    rate(inverter, actualOf(RatedQuantity::Capacitance), "500 µF");
    figure("precharge_test.supply", id, "120 V");
    figure("precharge_test.link", id, "105 V");
    expectAsks(judgePrechargeMeasuredOfBook(inputs()), "to that reading", Verdict::Fails);
    figure("precharge_test.time", id, "52 ms");
    PrechargeMeasuredInputs byHand;
    byHand.record = kRecord;
    byHand.packVoltage = given(volts(120), kAny);
    byHand.linkVoltage = given(volts(105), kAny);
    byHand.timeToThere = given(seconds(0.052), kAny);
    byHand.resistance = given(ohms(50), kAny);
    byHand.linkCapacitance = given(Capacitance::fromSi(500e-6), kAny);
    expectSame(judgePrechargeMeasuredOfBook(inputs()), judgePrechargeMeasured(byHand));
    loosen("precharge.reached", "80 %");
    expectBothVerdicts(judgePrechargeMeasuredOfBook(inputs()));
}

TEST(TestReadings, AreFiguresOfATestInTheOrderTheyAreTaken)
{
    EXPECT_EQ(
        readingsAskedBy(TestKind::Bonding),
        (std::vector<std::string>{"bonding.welded", "bonding.current", "bonding.resistance"}));
    EXPECT_EQ(readingsAskedBy(TestKind::Precharge).front(), "precharge_test.supply");
    EXPECT_EQ(readingsAskedBy(TestKind::Isolation).size(), 6U); // not the figure of the circuit
    EXPECT_EQ(readingsAskedBy(TestKind::Torque).size(), 15U);
    EXPECT_TRUE(readingsAskedBy(TestKind::Other).empty());
}

TEST(ElectricalJudges, AreThoseOfTheTableAndOnce)
{
    std::vector<std::string_view> ids;
    for (const Judge &judge : electricalJudges())
        ids.push_back(judge.check);
    EXPECT_EQ(ids.size(), 15U);
    std::ranges::sort(ids);
    EXPECT_EQ(std::ranges::adjacent_find(ids), ids.end());
}

} // namespace
} // namespace ohmwright
