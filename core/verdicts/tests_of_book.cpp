// SPDX-License-Identifier: GPL-3.0-or-later
// Isolation, bonding and torque out of a book: of each test record of that kind. Readings are
// figures of the record (test_readings.h).
//
// Isolation is judged where it is measured with the live pack as the source: where readings of that
// method are recorded, or the test is of the pack or of its circuit. An insulation tester's reading
// on a unit taken out is another method. A circuit with an inverter on it counts as joined with its
// alternating side.
// Assumed unless told otherwise, each said so: a torque's tolerance of a tenth, the scatter that
// ISO 6789 allows a wrench.
#include "core/checks/bonding.h"
#include "core/checks/isolation.h"
#include "core/checks/torque_measured.h"
#include "core/verdicts/build_parts.h"
#include "core/verdicts/electrical_checks_of_book.h"
#include "core/verdicts/link_facts.h"
#include "core/verdicts/recorded_test_of_book.h"
#include "core/verdicts/test_readings.h"

#include <QCoreApplication>

#include <algorithm>

namespace ohmwright {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("TestsOfBook", text);
}

bool sitsIn(const Records &records, const Part &part, const Part &outer)
{
    const Part *at = &part;
    for (int depth = 0; at && depth < 32; ++depth) {
        if (at->id == outer.id)
            return true;
        at = records.find(at->partOf);
    }
    return false;
}

// The circuit that is measured with its pack live; null where another method was used.
const Circuit *livePackCircuit(const BookInputs &in, const TestRecord &test, const PackFacts &pack)
{
    const auto readings = readingsAskedBy(TestKind::Isolation);
    const bool anyReading = std::ranges::any_of(
        readings, [&](const std::string &name) { return in.has(name.c_str(), test); });
    const Circuit *told = in.records().find(test.circuit);
    if (told && (anyReading || told == pack.circuit))
        return told;
    if (!pack.circuit)
        return nullptr;
    const Part *part = in.records().find(test.part);
    const bool ofPack = part && std::ranges::any_of(pack.modules, [&](const Part *module) {
                            return sitsIn(in.records(), *module, *part);
                        });
    return anyReading || ofPack ? pack.circuit : nullptr;
}

Protects protectedBy(const Part *part)
{
    if (!part)
        return Protects::Pack;
    if (part->role == PartRole::Motor || part->role == PartRole::Gearbox ||
        part->role == PartRole::Coupling)
        return Protects::Driveline;
    return Protects::Pack;
}

std::vector<Given<Torque>> torqueReadings(const BookInputs &in, const TestRecord &test)
{
    std::vector<Given<Torque>> readings;
    for (const std::string &name : readingsAskedBy(TestKind::Torque))
        if (name.starts_with("torque.reading_") && in.has(name.c_str(), test))
            readings.push_back(in.figure<Torque>(name.c_str(), test));
    if (readings.empty())
        readings.push_back(readingOrValue<Torque>(in, test, "torque.reading_01", Measure::Torque));
    return readings;
}

TorqueMeasuredInputs torqueInputs(const BookInputs &in, const TestRecord &test)
{
    TorqueMeasuredInputs inputs;
    inputs.part = test.key;
    inputs.joint = test.name;
    inputs.record = recordedTest(test);
    inputs.specified = in.figure<Torque>("torque.specified", test);
    if (!in.has("torque.specified", test) && test.limit && test.limit->measure() == Measure::Torque)
        inputs.specified =
            in.field<Torque>(test, &TestRecord::limit, "limit_value", inputs.specified.origin.name,
                             Evidence::Assumed, test.limitText);
    inputs.tolerance =
        in.figureOr(0.10, tr("common practice, no published source"), "torque.tolerance", test);
    inputs.scatter = in.figure<double>("torque.scatter", test);
    if (inputs.specified.value)
        inputs.scatter =
            in.figureOr(allowedScatter(*inputs.specified.value),
                        tr("ISO 6789: what a setting wrench may have"), "torque.scatter", test);
    inputs.readings = torqueReadings(in, test);
    return inputs;
}

template <class Judge>
std::vector<Check> ofEachTest(const BookInputs &in, TestKind kind, Judge judge)
{
    std::vector<Check> checks;
    for (const TestRecord &test : in.records().all<TestRecord>())
        if (test.kind == kind)
            if (std::optional<Check> check = judge(test))
                checks.push_back(std::move(*check));
    return checks;
}

} // namespace

std::vector<Check> judgeIsolationOfBook(const BookInputs &in)
{
    const PackFacts &pack = packFacts(in);
    const Wiring &wiring = wiringOf(in);
    return ofEachTest(in, TestKind::Isolation, [&](const TestRecord &test) {
        const Circuit *circuit = livePackCircuit(in, test, pack);
        if (!circuit)
            return std::optional<Check>();
        IsolationInputs inputs;
        inputs.circuit = test.key;
        inputs.record = recordedTest(test);
        inputs.current = circuit->current;
        inputs.joinedWithAc = !wiring.on(*circuit, PartRole::Inverter).empty();
        inputs.acProtected = in.yesNo("isolation.ac_protected", *circuit).value_or(false);
        WorstVoltage worst = worstVoltage(in, *circuit);
        inputs.workingVoltage = worst.known;
        inputs.missing = std::move(worst.missing);
        inputs.nominalVoltage = circuit == pack.circuit && pack.nominal.value
                                    ? pack.nominal
                                    : nominalVoltageEntered(in, *circuit);
        inputs.packVoltage = in.figure<Voltage>("isolation.pack_voltage", test);
        inputs.negativeToChassis = in.figure<Voltage>("isolation.negative_to_chassis", test);
        inputs.positiveToChassis = in.figure<Voltage>("isolation.positive_to_chassis", test);
        inputs.knownResistor = in.figure<Resistance>("isolation.known_resistor", test);
        inputs.withResistor = in.figure<Voltage>("isolation.with_resistor", test);
        inputs.voltmeter = in.figure<Resistance>("isolation.voltmeter", test);
        if (test.limit && test.limit->measure() == Measure::Resistance)
            inputs.ownLimit = in.field<Resistance>(test, &TestRecord::limit, "limit_value",
                                                   tr("limit of %1").arg(test.name),
                                                   Evidence::Assumed, test.limitText);
        in.hold(inputs.leastDc);
        in.hold(inputs.leastAc);
        Check check = judgeIsolation(inputs);
        addToTitle(check, test.name);
        return std::optional(std::move(check));
    });
}

std::vector<Check> judgeBondingOfBook(const BookInputs &in)
{
    return ofEachTest(in, TestKind::Bonding, [&](const TestRecord &test) {
        BondingInputs inputs;
        inputs.part = test.key;
        inputs.isWelded = in.yesNo("bonding.welded", test).value_or(false);
        inputs.record = recordedTest(test);
        inputs.measured =
            readingOrValue<Resistance>(in, test, "bonding.resistance", Measure::Resistance);
        inputs.testCurrent = in.figure<Current>("bonding.current", test);
        in.hold(inputs.most);
        in.hold(inputs.leastCurrent);
        Check check = judgeBonding(inputs);
        addToTitle(check, test.name);
        return std::optional(std::move(check));
    });
}

std::vector<Check> judgeTorqueMeasuredOfBook(const BookInputs &in)
{
    return ofEachTest(in, TestKind::Torque, [&](const TestRecord &test) {
        return std::optional(
            judgeTorqueMeasured(torqueInputs(in, test), protectedBy(in.records().find(test.part))));
    });
}

} // namespace ohmwright
