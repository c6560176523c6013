// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/verdicts/link_facts.h"

#include "core/verdicts/cell_facts.h"
#include "core/verdicts/derived.h"

#include <QCoreApplication>

namespace ohmwright {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("LinkFacts", text);
}

const FigureName kCapacitance{RatedQuantity::Capacitance, RatingKind::Actual, RatingBasis::Nominal,
                              std::nullopt};

bool isCapacitance(const Rating &rating)
{
    return rating.quantity == RatedQuantity::Capacitance;
}

// Of values that differ and are not settled the greatest: it holds more, and for longer.
Given<Capacitance> greatestCapacitance(const BookInputs &in, const Part &part)
{
    Given<Capacitance> greatest = in.rating<Capacitance>(part, kCapacitance);
    if (!greatest.origin.clash || !greatest.value)
        return greatest;
    const Figure figure = figureFor(in.records(), part, kCapacitance);
    for (const Rating *one : figure.all) {
        if (!one->value || Capacitance::fromSi(one->value->si()) <= *greatest.value)
            continue;
        const QString field = greatest.origin.field;
        greatest = in.rating<Capacitance>(part, *one);
        greatest.origin.field = field;
    }
    greatest.origin.clash = greatest.origin.safest = true;
    return greatest;
}

// Those that have a capacitor across their direct-current side, whether it is told or not.
bool surelyHasCapacitor(const Part &part)
{
    return part.role == PartRole::Charger || part.role == PartRole::Converter ||
           part.role == PartRole::Compressor;
}

} // namespace

Given<Voltage> worstVoltageEntered(const BookInputs &in, const Circuit &circuit)
{
    return in.field<Voltage>(circuit, &Circuit::worstVoltage, "worst_voltage",
                             tr("worst voltage of %1").arg(circuit.name), Evidence::Assumed,
                             circuit.worstVoltageFrom.isEmpty() ? tr("entered with the circuit")
                                                                : circuit.worstVoltageFrom);
}

Given<Voltage> nominalVoltageEntered(const BookInputs &in, const Circuit &circuit)
{
    return in.field<Voltage>(circuit, &Circuit::nominalVoltage, "nominal_voltage",
                             tr("nominal voltage of %1").arg(circuit.name), Evidence::Assumed,
                             tr("entered with the circuit"));
}

Given<Voltage> highestVoltage(const BookInputs &in, const Circuit &circuit, const PackFacts &pack)
{
    const Given<Voltage> entered = worstVoltageEntered(in, circuit);
    if (pack.circuit != &circuit)
        return entered;
    if (pack.full.value && (!entered.value || *entered.value <= *pack.full.value))
        return pack.full;
    return entered.value ? entered : pack.full;
}

Given<Voltage> lowestVoltage(const BookInputs &in, const Circuit &circuit, const PackFacts &pack)
{
    if (pack.circuit != &circuit)
        return nominalVoltageEntered(in, circuit);
    if (in.has("pack.discharge_end", circuit))
        return in.figure<Voltage>("pack.discharge_end", circuit);
    return ofAllCells(pack.cellsInSeries,
                      in.figure<Voltage>("cell.lowest_voltage", *pack.modules.front()),
                      tr("voltage of the empty pack"));
}

std::optional<RegenerationSettings> regenerationToldTwice(const BookInputs &in,
                                                          const PackFacts &pack)
{
    const Circuit &circuit = *pack.circuit;
    if (!in.has("range.regeneration") || !in.has("pack.regeneration_current", circuit))
        return std::nullopt;
    return RegenerationSettings{in.figure<Power>("range.regeneration"),
                                in.figure<Current>("pack.regeneration_current", circuit),
                                lowestVoltage(in, circuit, pack), pack.full};
}

bool hasLink(const BookInputs &in, const Wiring &wiring, const Circuit &circuit)
{
    if (circuit.kind == CircuitKind::LowVoltage || circuit.current != CurrentKind::Dc)
        return false;
    return in.has("link.capacitance", circuit) || !wiring.on(circuit, PartRole::Inverter).empty() ||
           !wiring.on(circuit, PartRole::DischargeResistor).empty();
}

Given<Capacitance> linkCapacitance(const BookInputs &in, const Wiring &wiring,
                                   const Circuit &circuit)
{
    const Given<Capacitance> told = in.figure<Capacitance>("link.capacitance", circuit);
    if (in.has("link.capacitance", circuit))
        return told;
    Given<Capacitance> sum = told;
    QStringList counted;
    for (const Part *part : wiring.on(circuit)) {
        const bool isNeeded = part->role == PartRole::Inverter;
        if (!isNeeded && !anyRating(in.records(), *part, isCapacitance))
            continue;
        const Given<Capacitance> one = greatestCapacitance(in, *part);
        if (!one.value) {
            if (isNeeded)
                return one;
            continue;
        }
        counted << part->name;
        sum = sum.value ? derived(told.origin, std::plus<>(), sum, one)
                        : derived(
                              told.origin, [](Capacitance c) { return c; }, one);
    }
    sum.origin.source = tr("of %1").arg(counted.join(tr(", ")));
    if (const QStringList leftOut = notCounted(in, wiring, circuit); !leftOut.isEmpty())
        sum.origin.source +=
            tr("; without %1, of which none is recorded").arg(leftOut.join(tr(", ")));
    if (counted.isEmpty())
        sum.origin.source.clear();
    return sum;
}

QStringList notCounted(const BookInputs &in, const Wiring &wiring, const Circuit &circuit)
{
    QStringList leftOut;
    if (in.has("link.capacitance", circuit))
        return leftOut;
    for (const Part *part : wiring.on(circuit))
        if (surelyHasCapacitor(*part) && !in.rating<Capacitance>(*part, kCapacitance).value)
            leftOut << part->name;
    return leftOut;
}

void addToTitle(Check &check, const QString &name)
{
    check.title = QString(check.title + QStringLiteral(": ") + name);
}

} // namespace ohmwright
