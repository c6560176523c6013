// SPDX-License-Identifier: GPL-3.0-or-later
// Precharge out of a book: of each circuit that has a resistor for it, as computed and as measured.
//
// The resistor's pulse is its energy limit if one is known, else the figure read off the maker's
// pulse curve. A test belongs to the circuit it names, else to that of the part it names, else to
// the only circuit with such a resistor.
#include "core/checks/precharge.h"
#include "core/checks/precharge_measured.h"
#include "core/verdicts/electrical_checks_of_book.h"
#include "core/verdicts/link_facts.h"
#include "core/verdicts/recorded_test_of_book.h"

#include <algorithm>

namespace ohmwright {

namespace {

const FigureName kResistance{RatedQuantity::InternalResistance, RatingKind::Actual,
                             RatingBasis::Nominal, std::nullopt};
const FigureName kPulse{RatedQuantity::Energy, RatingKind::Limit, RatingBasis::Continuous,
                        std::nullopt};

struct Precharged
{
    const Circuit *circuit;
    const Part *resistor;
};

std::vector<Precharged> prechargedCircuits(const Records &records, const Wiring &wiring)
{
    std::vector<Precharged> found;
    for (const Circuit &circuit : records.all<Circuit>())
        for (const Part *resistor : wiring.on(circuit, PartRole::PrechargeResistor))
            found.push_back({&circuit, resistor});
    return found;
}

const Precharged *belongingTo(const TestRecord &test, const std::vector<Precharged> &all,
                              const Records &records, const Wiring &wiring)
{
    const auto wherever = [&](auto &&fits) {
        const auto found = std::ranges::find_if(all, fits);
        return found == all.end() ? nullptr : &*found;
    };
    if (test.circuit)
        return wherever([&](const Precharged &one) { return one.circuit->id == *test.circuit; });
    if (const Part *part = records.find(test.part))
        if (const Precharged *found =
                wherever([&](const Precharged &one) { return wiring.isOn(*part, *one.circuit); }))
            return found;
    return all.size() == 1 ? &all.front() : nullptr;
}

} // namespace

std::vector<Check> judgePrechargeOfBook(const BookInputs &in)
{
    const Wiring &wiring = wiringOf(in);
    const PackFacts &pack = packFacts(in);
    std::vector<Check> checks;
    for (const auto &[circuit, resistor] : prechargedCircuits(in.records(), wiring)) {
        PrechargeInputs inputs;
        inputs.circuit = circuit->key;
        inputs.packVoltage = highestVoltage(in, *circuit, pack);
        inputs.linkCapacitance = linkCapacitance(in, wiring, *circuit);
        inputs.notCounted = notCounted(in, wiring, *circuit);
        inputs.resistance = in.rating<Resistance>(*resistor, kResistance);
        inputs.pulseEnergy = in.rating<Energy>(*resistor, kPulse);
        if (!inputs.pulseEnergy.value)
            inputs.pulseEnergy = in.figure<Energy>("precharge.pulse_energy", *resistor);
        inputs.timeBeforeClosing = in.figure<Duration>("precharge.time", *circuit);
        in.hold(inputs.reached);
        Check check = judgePrecharge(inputs);
        addToTitle(check, circuit->name);
        checks.push_back(std::move(check));
    }
    return checks;
}

std::vector<Check> judgePrechargeMeasuredOfBook(const BookInputs &in)
{
    const Wiring &wiring = wiringOf(in);
    const std::vector<Precharged> all = prechargedCircuits(in.records(), wiring);
    std::vector<Check> checks;
    for (const TestRecord &test : in.records().all<TestRecord>()) {
        if (test.kind != TestKind::Precharge)
            continue;
        const Precharged *of = belongingTo(test, all, in.records(), wiring);
        PrechargeMeasuredInputs inputs;
        inputs.circuit = test.key;
        inputs.record = recordedTest(test);
        inputs.packVoltage = in.figure<Voltage>("precharge_test.supply", test);
        inputs.linkVoltage = in.figure<Voltage>("precharge_test.link", test);
        inputs.timeToThere = in.figure<Duration>("precharge_test.time", test);
        inputs.resistance = of ? in.rating<Resistance>(*of->resistor, kResistance)
                               : missingCircuit<Resistance>(test);
        inputs.linkCapacitance =
            of ? linkCapacitance(in, wiring, *of->circuit) : missingCircuit<Capacitance>(test);
        in.hold(inputs.reached);
        in.hold(inputs.deviation);
        Check check = judgePrechargeMeasured(inputs);
        addToTitle(check, test.name);
        checks.push_back(std::move(check));
    }
    return checks;
}

} // namespace ohmwright
