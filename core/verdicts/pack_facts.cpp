// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/verdicts/pack_facts.h"

#include "core/checks/pack.h"
#include "core/verdicts/cell_facts.h"
#include "core/verdicts/derived.h"
#include "core/verdicts/wiring.h"

#include <QCoreApplication>

#include <algorithm>
#include <map>

namespace ohmwright {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("PackFacts", text);
}

// Modules of the type most of them are of.
std::vector<const Part *> ofOneType(const std::vector<const Part *> &modules)
{
    std::map<std::optional<Id<PartType>>, int> counts;
    for (const Part *module : modules)
        ++counts[module->type];
    const auto most = std::ranges::max_element(
        counts, [](const auto &a, const auto &b) { return a.second < b.second; });
    std::vector<const Part *> kept;
    std::ranges::copy_if(modules, std::back_inserter(kept),
                         [&](const Part *module) { return module->type == most->first; });
    return kept;
}

void readLayout(PackFacts &facts, const BookInputs &in)
{
    const Circuit &circuit = *facts.circuit;
    const auto count = static_cast<double>(facts.modules.size());
    facts.modulesInSeries = in.figure<double>("pack.modules_in_series", circuit);
    facts.modulesInParallel = in.figure<double>("pack.modules_in_parallel", circuit);
    const auto rest = [&](Given<double> &one, const Given<double> &other, const char *name) {
        if (in.has(name, circuit) || !other.value || *other.value <= 0)
            return;
        const double left = count / *other.value;
        if (left != std::floor(left))
            return; // the modules do not divide up: it has to be said
        one.value = left;
        one.origin.evidence = other.origin.evidence;
        one.origin.source = tr("%1 modules are recorded").arg(facts.modules.size());
    };
    if (!in.has("pack.modules_in_series", circuit) &&
        !in.has("pack.modules_in_parallel", circuit)) {
        facts.modulesInParallel.value = 1;
        facts.modulesInParallel.origin.evidence = Evidence::Assumed;
        facts.modulesInParallel.origin.source = tr("one string, unless it is told otherwise");
    }
    rest(facts.modulesInSeries, facts.modulesInParallel, "pack.modules_in_series");
    rest(facts.modulesInParallel, facts.modulesInSeries, "pack.modules_in_parallel");
}

template <class Q, class Compute, class... From>
Given<Q> toldOr(const BookInputs &in, const Circuit *circuit, const char *name, const QString &how,
                Compute compute, const Given<From> &...from)
{
    if (!circuit)
        return notKnown<Q>(labelOf(*checkFigure(QString::fromLatin1(name))));
    Given<Q> told = in.figure<Q>(name, *circuit);
    if (in.has(name, *circuit))
        return told;
    told.origin.source = how;
    return derived(told.origin, compute, from...);
}

// The most a cell takes for moments, at whatever temperature it takes most.
Given<Current> mostIntoCell(const BookInputs &in, const Part *module)
{
    Given<Current> most = notKnown<Current>(tr("limit for braking, of a cell"));
    if (!module)
        return most;
    most.origin = in.curveOrigin(*module, CurveKind::BrakingLimit, most.origin.name);
    for (const CurveKind kind : {CurveKind::BrakingLimit, CurveKind::ChargeLimit}) {
        const RatedCurve *curve = in.curve(*module, kind);
        if (!curve)
            continue;
        most.origin = in.curveOrigin(*module, kind, tr("current limit into a cell"));
        const Curve<Temperature, Current> points = in.pointsOf<Temperature, Current>(*curve);
        for (const auto &[temperature, current] : points.points())
            most.value = std::max(most.value.value_or(current), current);
        break;
    }
    return most;
}

// The highest voltage that an inverter on the circuit, or the cells, must not be pulled below; zero
// where none is known, which limits nothing.
Given<Voltage> leastVoltage(const PackFacts &facts, const BookInputs &in, const CellFacts &cells)
{
    Given<Voltage> least =
        ofAllCells(facts.cellsInSeries, cells.lowest, tr("lowest voltage of the cells"));
    if (!least.value)
        least = given(Voltage(), tr("no least voltage is known"), Evidence::Datasheet);
    if (!facts.circuit)
        return least;
    for (const Part *inverter : wiringOf(in).on(*facts.circuit, PartRole::Inverter)) {
        const Given<Voltage> own =
            in.rating<Voltage>(*inverter, {RatedQuantity::Voltage, RatingKind::Limit,
                                           RatingBasis::Least, CurrentKind::Dc});
        if (own.value && *least.value < *own.value)
            least = own;
    }
    return least;
}

QString decides(MostPower::Limit limit, const QString &current, const QString &least)
{
    switch (limit) {
    case MostPower::Limit::ModuleCurrent:
        return current;
    case MostPower::Limit::LeastVoltage:
        return least;
    case MostPower::Limit::MatchedLoad:
        break;
    }
    return tr("half the voltage; no load draws more");
}

void readPower(PackFacts &facts, const BookInputs &in, const CellFacts &cells)
{
    const Part *module = facts.modules.empty() ? nullptr : facts.modules.front();
    Given<Current> peak = notKnown<Current>(tr("peak current limit of a module"));
    for (const Part *one : facts.modules) {
        const Given<Current> limit = in.rating<Current>(
            *one, {RatedQuantity::Current, RatingKind::Limit, RatingBasis::Peak, CurrentKind::Dc});
        if (!peak.value || !limit.value || *limit.value < *peak.value)
            peak = limit;
        if (!limit.value)
            break;
    }
    const Given<Voltage> least = leastVoltage(facts, in, cells);
    MostPower::Limit by = MostPower::Limit::ModuleCurrent;
    facts.greatestPower = toldOr<Power>(
        in, facts.circuit, "pack.greatest_power", {},
        [&by](Current one, double parallel, Voltage u, Resistance inner, Voltage floor) {
            const MostPower most = mostPower(u, inner, floor, one * parallel).value_or(MostPower());
            by = most.by;
            return most.power;
        },
        peak, facts.modulesInParallel, facts.nominal, cells.pack, least);
    if (facts.greatestPower.value &&
        !(facts.circuit && in.has("pack.greatest_power", *facts.circuit)))
        facts.greatestPower.origin.source =
            tr("from the nominal voltage; %1 decides")
                .arg(decides(by, peak.origin.name, least.origin.name));
    facts.greatestChargePower = toldOr<Power>(
        in, facts.circuit, "pack.greatest_charge_power",
        tr("the cells' greatest current by their curve, at the nominal voltage"),
        [](Current cell, double parallel, Voltage u) { return u * (cell * parallel); },
        mostIntoCell(in, module), cells.inParallel, facts.nominal);
}

// Each needs the other: the cells the layout, the pack's voltages and powers the cells.
struct Worked
{
    PackFacts pack;
    CellFacts cells;
};

Worked workOut(const BookInputs &in)
{
    Worked worked;
    PackFacts &facts = worked.pack;
    for (const Circuit &circuit : in.records().all<Circuit>()) {
        if (circuit.kind != CircuitKind::Traction)
            continue;
        std::vector<const Part *> modules = wiringOf(in).modulesOn(circuit);
        if (!modules.empty()) {
            facts.circuit = &circuit;
            facts.modules = ofOneType(modules);
            facts.isMixed = facts.modules.size() < modules.size();
            break;
        }
    }
    facts.modulesInSeries = notKnown<double>(tr("modules in series"));
    facts.modulesInParallel = notKnown<double>(tr("modules in parallel"));
    facts.highestCharge = notKnown<double>(tr("state of charge where a drive starts"));
    facts.lowestCharge = notKnown<double>(tr("state of charge where a drive must end"));
    Given<Voltage> moduleNominal = notKnown<Voltage>(tr("nominal voltage of a module"));
    if (facts.circuit) {
        readLayout(facts, in);
        if (facts.isMixed) // a pack is of one type: what it comes to with others cannot be told
            facts.modulesInSeries.value = facts.modulesInParallel.value = std::nullopt;
        if (facts.isMixed)
            facts.modulesInSeries.origin.name = facts.modulesInParallel.origin.name =
                tr("layout of modules of more than one type on %1").arg(facts.circuit->name);
        const QString custom = tr("common practice, no published source");
        facts.highestCharge = in.figureOr(1.0, custom, "pack.highest_charge", *facts.circuit);
        facts.lowestCharge = in.figureOr(0.1, custom, "pack.lowest_charge", *facts.circuit);
        moduleNominal =
            in.rating<Voltage>(*facts.modules.front(), {RatedQuantity::Voltage, RatingKind::Actual,
                                                        RatingBasis::Nominal, CurrentKind::Dc});
    }
    facts.nominal = derived(
        called(tr("nominal voltage of the pack")),
        [](double series, Voltage one) { return one * series; }, facts.modulesInSeries,
        moduleNominal);
    worked.cells = readCells(in, facts);
    const CellFacts &cells = worked.cells;
    facts.cellsInSeries = derived(called(tr("cells in series in the pack")), std::multiplies<>(),
                                  facts.modulesInSeries, cells.inSeriesPerModule);
    facts.full = ofAllCells(facts.cellsInSeries, cells.full, tr("voltage of the full pack"));
    const QString usable = tr("usable energy of the pack at a gentle load");
    facts.usableEnergy =
        energyBetween(cells, facts, facts.highestCharge, facts.lowestCharge, usable);
    if (facts.circuit && in.has("pack.usable_energy", *facts.circuit))
        facts.usableEnergy = in.figure<Energy>("pack.usable_energy", *facts.circuit);
    else if (facts.circuit && facts.usableEnergy.value) // so that it can be told instead
        facts.usableEnergy.origin.field = in.originOf("pack.usable_energy", *facts.circuit).field;
    readPower(facts, in, cells);
    return worked;
}

} // namespace

const PackFacts &packFacts(const BookInputs &in)
{
    return in.once<Worked>(workOut).pack;
}

const CellFacts &cellFacts(const BookInputs &in)
{
    return in.once<Worked>(workOut).cells;
}

} // namespace ohmwright
