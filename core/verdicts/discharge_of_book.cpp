// SPDX-License-Identifier: GPL-3.0-or-later
// Discharge out of a book: of each direct-current circuit with an inverter, a capacitance or a
// discharge resistor on it.
//
// A discharge resistor is taken to be always across unless it is said to be switched. What an
// inverter does within itself is told with the circuit, as its bleed. Where nothing is recorded
// the bleed is asked for; that there is none has to be said.
#include "core/checks/discharge.h"
#include "core/verdicts/derived.h"
#include "core/verdicts/electrical_checks_of_book.h"
#include "core/verdicts/link_facts.h"

#include <QCoreApplication>

#include <algorithm>

namespace ohmwright {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("DischargeOfBook", text);
}

Given<Resistance> resistanceOf(const BookInputs &in, const Part &resistor)
{
    return in.rating<Resistance>(resistor, {RatedQuantity::InternalResistance, RatingKind::Actual,
                                            RatingBasis::Nominal, std::nullopt});
}

Given<Power> powerOf(const BookInputs &in, const Part &resistor)
{
    return in.rating<Power>(
        resistor, {RatedQuantity::Power, RatingKind::Limit, RatingBasis::Continuous, std::nullopt});
}

// Side by side they share the loss by their resistance: together they stand what the first of them
// to reach its own rating allows.
void readBleed(DischargeInputs &inputs, const BookInputs &in, const Circuit &circuit,
               const std::vector<const Part *> &resistors)
{
    if (resistors.empty() || in.has("discharge.bleed_resistance", circuit)) {
        if (in.yesNo("discharge.bleed", circuit) == false)
            return;
        inputs.bleed = in.figure<Resistance>("discharge.bleed_resistance", circuit);
        inputs.bleedRating = in.figure<Power>("discharge.bleed_power", circuit);
        return;
    }
    inputs.bleed = resistanceOf(in, *resistors.front());
    inputs.bleedRating = powerOf(in, *resistors.front());
    for (auto next = resistors.begin() + 1; next != resistors.end(); ++next) {
        const Given<Resistance> one = resistanceOf(in, **next);
        const Given<Resistance> all = derived(
            called(tr("resistance of all bleeds side by side")),
            [](Resistance a, Resistance b) { return 1.0 / (1.0 / a + 1.0 / b); }, *inputs.bleed,
            one);
        inputs.bleedRating = derived(
            called(tr("power all bleeds stand together")),
            [](Power p, Resistance r, Power q, Resistance s, Resistance both) {
                return std::min(p * (r / both), q * (s / both));
            },
            inputs.bleedRating, *inputs.bleed, powerOf(in, **next), one, all);
        inputs.bleed = all;
    }
}

} // namespace

std::vector<Check> judgeDischargeOfBook(const BookInputs &in)
{
    const Wiring &wiring = wiringOf(in);
    std::vector<Check> checks;
    for (const Circuit &circuit : in.records().all<Circuit>()) {
        if (!hasLink(in, wiring, circuit))
            continue;
        DischargeInputs inputs;
        inputs.circuit = circuit.key;
        inputs.current = circuit.current;
        WorstVoltage worst = worstVoltage(in, circuit);
        inputs.start = worst.known;
        inputs.missing = std::move(worst.missing);
        inputs.capacitance = linkCapacitance(in, wiring, circuit);
        inputs.notCounted = notCounted(in, wiring, circuit);
        std::vector<const Part *> always;
        for (const Part *resistor : wiring.on(circuit, PartRole::DischargeResistor)) {
            if (!in.yesNo("discharge.switched", *resistor).value_or(false))
                always.push_back(resistor);
            else if (!inputs.active)
                inputs.active = ActiveDischarge{
                    resistanceOf(in, *resistor), in.figure<Duration>("discharge.delay", *resistor),
                    in.figure<Energy>("precharge.pulse_energy", *resistor)};
        }
        readBleed(inputs, in, circuit, always);
        inputs.opensWithoutTools =
            in.yesNo("discharge.opens_without_tools", circuit).value_or(false);
        if (in.has("link.y_capacitance", circuit))
            inputs.yCapacitance = in.figure<Capacitance>("link.y_capacitance", circuit);
        in.hold(inputs.touchDc);
        in.hold(inputs.touchAc);
        in.hold(inputs.passiveTime);
        in.hold(inputs.activeTime);
        in.hold(inputs.openedTime);
        in.hold(inputs.yEnergy);
        Check check = judgeDischarge(inputs);
        addToTitle(check, circuit.name);
        checks.push_back(std::move(check));
    }
    return checks;
}

} // namespace ohmwright
