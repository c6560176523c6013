// SPDX-License-Identifier: GPL-3.0-or-later
// Pack and limits of the cells out of a book: of the circuit with the modules on it.
//
// Assumed unless told otherwise: all modules in one string, a drive from a full pack down to a
// tenth (pack_facts.cpp).
#include "core/checks/cell_limits.h"
#include "core/checks/pack.h"
#include "core/verdicts/branch_conductor.h"
#include "core/verdicts/build_parts.h"
#include "core/verdicts/cell_facts.h"
#include "core/verdicts/current_limits.h"
#include "core/verdicts/derived.h"
#include "core/verdicts/drive_demand.h"
#include "core/verdicts/electrical_checks_of_book.h"
#include "core/verdicts/link_facts.h"

#include <QCoreApplication>

namespace ohmwright {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("PackOfBook", text);
}

FigureName dcVoltage(RatingKind kind, RatingBasis basis)
{
    return {RatedQuantity::Voltage, kind, basis, CurrentKind::Dc};
}

void addWindows(PackInputs &inputs, const BookInputs &in, const Circuit &circuit)
{
    const Wiring &wiring = wiringOf(in);
    const auto add = [&](PartRole role, bool isCharger) {
        for (const Part *part : wiring.on(circuit, role))
            inputs.windows.push_back(
                {part->name,
                 in.rating<Voltage>(*part, dcVoltage(RatingKind::Limit, RatingBasis::Least)),
                 in.rating<Voltage>(
                     *part, isCharger ? dcVoltage(RatingKind::Actual, RatingBasis::Nominal)
                                      : dcVoltage(RatingKind::Limit, RatingBasis::Continuous)),
                 isCharger});
    };
    add(PartRole::Inverter, false);
    add(PartRole::Converter, false);
    add(PartRole::Charger, true);
}

LimitByTemperature limitOf(const BookInputs &in, const Part &module, CurveKind kind,
                           const QString &name)
{
    LimitByTemperature limit;
    limit.origin = in.curveOrigin(module, kind, name);
    if (const RatedCurve *curve = in.curve(module, kind))
        limit.curve = in.pointsOf<Temperature, Current>(*curve);
    return limit;
}

// What the chargers on the circuit put out together.
Given<Current> chargeCurrent(const BookInputs &in, const Wiring &wiring, const Circuit &circuit)
{
    const Given<Current> told = in.figure<Current>("pack.charge_current", circuit);
    const auto chargers = wiring.on(circuit, PartRole::Charger);
    if (in.has("pack.charge_current", circuit) || chargers.empty())
        return told;
    Given<Current> sum;
    for (const Part *charger : chargers) {
        const Given<Current> one =
            in.rating<Current>(*charger, {RatedQuantity::Current, RatingKind::Limit,
                                          RatingBasis::Continuous, CurrentKind::Dc});
        if (!one.value)
            return one;
        sum = sum.value ? derived(told.origin, std::plus<>(), sum, one) : one;
    }
    return sum;
}

// As entered for the branch the modules, or what they sit in, are connected to: what driving takes
// for minutes is judged by its power.
Given<Current> drivingCurrent(const BookInputs &in, const Circuit &circuit, const PackFacts &pack)
{
    const Given<Current> told = in.figure<Current>("pack.discharge_current", circuit);
    if (in.has("pack.discharge_current", circuit))
        return told;
    const Part *at = pack.modules.front();
    for (int depth = 0; at && depth < 32; ++depth) {
        for (const Connection &connection : in.records().of<Connection>(at->id)) {
            const Branch *branch = in.records().find(connection.branch);
            if (branch && connection.circuit == circuit.id && branch->continuousCurrent)
                return continuousCurrentEntered(in, *branch);
        }
        at = in.records().find(at->partOf);
    }
    return told;
}

Given<double> channels(const BookInputs &in, const Circuit &circuit)
{
    const Given<double> told = in.figure<double>("pack.channels", circuit);
    const auto monitors = partsOfRole(in.records(), PartRole::BatteryMonitor);
    if (in.has("pack.channels", circuit) || monitors.empty())
        return told;
    Given<double> sum;
    for (const Part *monitor : monitors) {
        const Given<double> one =
            in.rating<double>(*monitor, {RatedQuantity::CellsInSeries, RatingKind::Limit,
                                         RatingBasis::Continuous, std::nullopt});
        if (!one.value)
            return one;
        sum = sum.value ? derived(told.origin, std::plus<>(), sum, one) : one;
    }
    return sum;
}

std::optional<ColdDrive> coldDrive(const BookInputs &in, const Wiring &wiring,
                                   const PackFacts &pack, const CellFacts &cells)
{
    const auto demand = driveDemand(in, wiring, pack);
    if (!demand)
        return std::nullopt;
    const Circuit &circuit = *pack.circuit;
    const Part &module = *pack.modules.front();
    ColdDrive drive;
    drive.openCircuit = restingWhenLow(pack, cells);
    drive.inner = cells.coldPack;
    drive.peak = {demand->peak, demand->peakCurrent};
    if (demand->continuous)
        drive.continuous = DrawnPower{*demand->continuous, demand->continuousCurrent};
    if (in.has("pack.cold_power", circuit)) {
        drive.heldTo = in.figure<Power>("pack.cold_power", circuit);
        drive.heldBelow = in.figure<Temperature>("pack.cold_power_below", circuit);
    }
    if (in.has("cell.cold_peak_current", module))
        drive.cellPeak = in.figure<Current>("cell.cold_peak_current", module);
    if (in.has("cell.warm_peak_current", module))
        drive.warmCellPeak = in.figure<Current>("cell.warm_peak_current", module);
    return drive;
}

// As told; else what the power set in the controller is with the pack low, where it is most:
// U·I + R·I² = P.
Given<Current> brakingCurrent(const BookInputs &in, const PackFacts &pack, const CellFacts &cells)
{
    const Given<Current> told = in.figure<Current>("pack.regeneration_current", *pack.circuit);
    if (in.has("pack.regeneration_current", *pack.circuit) || !in.has("range.regeneration"))
        return told;
    Origin origin = told.origin;
    origin.source = tr("the power set in the controller, with the pack low");
    return derived(
        origin,
        [](Power p, Voltage u, Resistance r) {
            return amperes(2 * p.si() /
                           (u.si() + std::sqrt(u.si() * u.si() + 4 * r.si() * p.si())));
        },
        in.figure<Power>("range.regeneration"), restingWhenLow(pack, cells), cells.coldPack);
}

std::optional<Regeneration> regeneration(const BookInputs &in, const Wiring &wiring,
                                         const Circuit &circuit, const PackFacts &pack,
                                         const CellFacts &cells)
{
    if (wiring.on(circuit, PartRole::Inverter).empty() ||
        in.yesNo("pack.regenerates", circuit) == false)
        return std::nullopt;
    const Part &module = *pack.modules.front();
    Regeneration braking;
    braking.current = brakingCurrent(in, pack, cells);
    braking.toldTwice = regenerationToldTwice(in, pack);
    braking.cellVoltage = in.figure<Voltage>("cells.regeneration_voltage", circuit);
    braking.cellResistance = derived(
        called(tr("resistance of a cell"), tr("of a module, by its cells")),
        [](Resistance one, double parallel, double series) { return one * parallel / series; },
        cells.worstModule, in.figure<double>("module.cells_in_parallel", module),
        cells.inSeriesPerModule);
    if (in.curve(module, CurveKind::BrakingLimit))
        braking.limit =
            limitOf(in, module, CurveKind::BrakingLimit, tr("limit for braking, of a cell"));
    return braking;
}

} // namespace

std::vector<Check> judgePackOfBook(const BookInputs &in)
{
    const PackFacts &pack = packFacts(in);
    if (!pack.circuit)
        return {};
    const Circuit &circuit = *pack.circuit;
    const CellFacts &cells = cellFacts(in);
    PackInputs inputs;
    inputs.pack = circuit.key;
    inputs.modulesInSeries = pack.modulesInSeries;
    inputs.modulesInParallel = pack.modulesInParallel;
    inputs.cellsInSeriesPerModule = cells.inSeriesPerModule;
    inputs.openCircuit = cells.openCircuit;
    inputs.openCircuitFrom = cells.openCircuitFrom;
    inputs.moduleCapacity = cells.moduleCapacity;
    inputs.moduleResistance = cells.worstModule;
    inputs.connections = cells.joints;
    inputs.highestCharge = pack.highestCharge;
    inputs.lowestCharge = pack.lowestCharge;
    inputs.cellFloor = cells.lowest;
    inputs.load = in.figure<Power>("pack.steady_load", circuit);
    inputs.moduleCurrentLimit = cells.moduleCurrent;
    if (const auto demand = driveDemand(in, wiringOf(in), pack)) {
        const HeldForTime held = heldFor(in, pack.modules, CurrentKind::Dc, demand->peakLasts.value,
                                         tr("current limit of a module"));
        inputs.peak = PackPeak{demand->peak, demand->peakCurrent, held.limit};
        if (held.isByTime) {
            inputs.peak->lasts = demand->peakLasts;
            inputs.peak->shorter = held.shorter;
            inputs.peak->longer = held.longer;
        }
    }
    if (in.has("pack.needed_energy", circuit))
        inputs.neededEnergy = in.figure<Energy>("pack.needed_energy", circuit);
    const Given<Mass> mass =
        in.rating<Mass>(*pack.modules.front(), {RatedQuantity::Mass, RatingKind::Actual,
                                                RatingBasis::Nominal, std::nullopt});
    if (mass.value)
        inputs.moduleMass = mass;
    addWindows(inputs, in, circuit);
    return {judgePack(inputs)};
}

std::vector<Check> judgeCellLimitsOfBook(const BookInputs &in)
{
    const PackFacts &pack = packFacts(in);
    if (!pack.circuit)
        return {};
    const Circuit &circuit = *pack.circuit;
    const Part &module = *pack.modules.front();
    const Wiring &wiring = wiringOf(in);
    const CellFacts &cells = cellFacts(in);
    CellLimitsInputs inputs;
    inputs.pack = circuit.key;
    inputs.cellsInSeries = pack.cellsInSeries;
    inputs.cellsInParallel = cells.inParallel;
    inputs.cellMost = cells.full;
    inputs.cellLeast = cells.lowest;
    inputs.chargeEnd = in.figure<Voltage>("pack.charge_end", circuit);
    inputs.dischargeEnd = in.figure<Voltage>("pack.discharge_end", circuit);
    inputs.chargeLimit =
        limitOf(in, module, CurveKind::ChargeLimit, tr("limit for charging, of a cell"));
    inputs.dischargeLimit =
        limitOf(in, module, CurveKind::DischargeLimit, tr("limit for driving, of a cell"));
    inputs.chargeCurrent = chargeCurrent(in, wiring, circuit);
    inputs.dischargeCurrent = drivingCurrent(in, circuit, pack);
    inputs.coldestCharging = in.figure<Temperature>("cells.coldest_charging", circuit);
    inputs.hottestCharging = in.figure<Temperature>("cells.hottest_charging", circuit);
    inputs.coldestDriving = in.figure<Temperature>("cells.coldest_driving", circuit);
    inputs.hottestDriving = in.figure<Temperature>("cells.hottest_driving", circuit);
    inputs.drive = coldDrive(in, wiring, pack, cells);
    inputs.regeneration = regeneration(in, wiring, circuit, pack, cells);
    inputs.channels = channels(in, circuit);
    in.hold(inputs.chargeFloor);
    return {judgeCellLimits(inputs)};
}

} // namespace ohmwright
