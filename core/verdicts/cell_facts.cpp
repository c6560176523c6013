// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/verdicts/cell_facts.h"

#include "core/checks/pack.h"
#include "core/verdicts/derived.h"
#include "core/verdicts/vehicle_tools.h"

#include <QCoreApplication>

#include <algorithm>

namespace ohmwright {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("CellFacts", text);
}

FigureName actual(RatedQuantity quantity)
{
    return {quantity, RatingKind::Actual, RatingBasis::Nominal, std::nullopt};
}

// Of a figure that each module has its own of: the one that decides, or the first not known.
template <class Q, class Read, class Better>
Given<Q> ofDecidingModule(const std::vector<const Part *> &modules, Read read,
                          const QString &whatFor, Better better)
{
    Given<Q> deciding = notKnown<Q>(whatFor);
    for (const Part *module : modules) {
        const Given<Q> one = read(*module);
        if (!one.value)
            return one;
        if (!deciding.value || better(*one.value, *deciding.value))
            deciding = one;
    }
    return deciding;
}

template <class Q, class Better>
Given<Q> ofDecidingModule(const BookInputs &in, const std::vector<const Part *> &modules,
                          const FigureName &name, const QString &whatFor, Better better)
{
    return ofDecidingModule<Q>(
        modules, [&](const Part &module) { return in.rating<Q>(module, name); }, whatFor, better);
}

// All modules as they are: in a group side by side, the groups in a row. The mean of the modules
// stands for each, which is exact in a plain string and near where a group's modules are alike.
Given<Resistance> ofAllModules(const BookInputs &in, const PackFacts &pack)
{
    const QString name = tr("resistance of the pack");
    Given<Resistance> sum = notKnown<Resistance>(name);
    for (const Part *module : pack.modules) {
        const Given<Resistance> one =
            in.rating<Resistance>(*module, actual(RatedQuantity::InternalResistance));
        if (!one.value)
            return one;
        sum = sum.value ? derived(called(name), std::plus<>(), sum, one) : one;
    }
    return derived(
        called(name, tr("of %1 modules as they were measured").arg(pack.modules.size())),
        [&](Resistance all, double series, double parallel) {
            return all / static_cast<double>(pack.modules.size()) * (series / parallel);
        },
        sum, pack.modulesInSeries, pack.modulesInParallel);
}

void readCell(CellFacts &cells, const BookInputs &in, const Part *module)
{
    const QString curveName = tr("open-circuit voltage against state of charge");
    if (!module) {
        cells.inSeriesPerModule = notKnown<double>(tr("cells in series in a module"));
        cells.full = notKnown<Voltage>(tr("full voltage of a cell"));
        cells.lowest = notKnown<Voltage>(tr("lowest voltage of a cell under load"));
        cells.inParallel = notKnown<double>(tr("cells in parallel"));
        cells.openCircuitFrom.name = curveName;
        return;
    }
    cells.inSeriesPerModule = in.rating<double>(*module, actual(RatedQuantity::CellsInSeries));
    cells.full = in.figure<Voltage>("cell.full_voltage", *module);
    cells.lowest = in.figure<Voltage>("cell.lowest_voltage", *module);
    cells.inParallel = in.figure<double>("module.cells_in_parallel", *module);
    cells.openCircuitFrom = in.curveOrigin(*module, CurveKind::OpenCircuit, curveName);
    if (const RatedCurve *curve = in.curve(*module, CurveKind::OpenCircuit))
        cells.openCircuit = in.pointsOf<double, Voltage>(*curve);
}

} // namespace

Given<Voltage> ofAllCells(const Given<double> &cells, const Given<Voltage> &cell,
                          const QString &name)
{
    return derived(
        called(name, cells.value && cell.value
                         ? tr("%1 cells of %2")
                               .arg(show(*cells.value, u"").trimmed(), show(*cell.value, u"V"))
                         : QString()),
        // cells of 4.2 V add up to what a person reckons, without the noise of binary arithmetic
        [](double n, Voltage u) { return volts(std::round(n * u.si() * 1e9) / 1e9); }, cells, cell);
}

Given<Energy> energyBetween(const CellFacts &cells, const PackFacts &pack,
                            const Given<double> &highest, const Given<double> &lowest,
                            const QString &name)
{
    const auto charge = derived(
        called(name), [](Charge one, double parallel) { return one * parallel; },
        cells.moduleCapacity, pack.modulesInParallel);
    if (cells.openCircuit.isEmpty())
        return derived(
            called(name, tr("nominal voltage times capacity")),
            [](Charge q, Voltage u, double high, double low) { return q * u * (high - low); },
            charge, pack.nominal, highest, lowest);
    Given<Energy> energy = derived(
        called(name, tr("open-circuit curve, at a third of the capacity an hour")),
        [&](Charge q, Voltage u, double series, Resistance inner, double high, double low) {
            std::vector<std::pair<double, Voltage>> points = cells.openCircuit.points();
            for (auto &point : points)
                point.second = point.second * series;
            return usableEnergy(Curve<double, Voltage>(std::move(points)), q, inner,
                                u * (q / seconds(3 * 3600)), Voltage(), high, low)
                .atTerminals;
        },
        charge, pack.nominal, pack.cellsInSeries, cells.pack, highest, lowest);
    energy.origin.evidence = weakerOf(energy.origin.evidence, cells.openCircuitFrom.evidence);
    return energy;
}

Given<Voltage> restingWhenLow(const PackFacts &pack, const CellFacts &cells)
{
    const QString name = tr("voltage of the pack at rest where a drive ends");
    if (cells.openCircuit.isEmpty())
        return derived(
            called(name, tr("nominal voltage; no open-circuit curve is recorded")),
            [](Voltage u) { return u; }, pack.nominal);
    Given<Voltage> resting = derived(
        called(name, tr("by the open-circuit curve")),
        [&](double n, double charge) { return cells.openCircuit.at(charge) * n; },
        pack.cellsInSeries, pack.lowestCharge);
    resting.origin.evidence = weakerOf(resting.origin.evidence, cells.openCircuitFrom.evidence);
    return resting;
}

CellFacts readCells(const BookInputs &in, const PackFacts &pack)
{
    CellFacts cells;
    const Part *module = pack.modules.empty() ? nullptr : pack.modules.front();
    readCell(cells, in, module);
    cells.inParallel = derived(called(tr("cells in parallel in the pack")), std::multiplies<>(),
                               cells.inParallel, pack.modulesInParallel);
    cells.moduleCapacity =
        ofDecidingModule<Charge>(in, pack.modules, actual(RatedQuantity::Capacity),
                                 tr("capacity of a module"), std::less<>());
    cells.moduleCurrent = ofDecidingModule<Current>(
        in, pack.modules,
        {RatedQuantity::Current, RatingKind::Limit, RatingBasis::Continuous, CurrentKind::Dc},
        tr("current limit of a module"), std::less<>());
    cells.worstModule =
        ofDecidingModule<Resistance>(in, pack.modules, actual(RatedQuantity::InternalResistance),
                                     tr("resistance of a module"), std::greater<>());
    if (module && in.has("module.cold_resistance", *module))
        cells.worstModule = in.figure<Resistance>("module.cold_resistance", *module);
    cells.pack = ofAllModules(in, pack);
    cells.coldPack = derived(
        called(tr("resistance of the pack, coldest"), tr("of the worst module for each")),
        [](Resistance one, double series, double parallel) { return one * (series / parallel); },
        cells.worstModule, pack.modulesInSeries, pack.modulesInParallel);
    if (pack.circuit && in.has("pack.connection_resistance", *pack.circuit)) {
        cells.joints = in.figure<Resistance>("pack.connection_resistance", *pack.circuit);
        cells.pack =
            derived(called(tr("resistance of the pack with its joints"), cells.pack.origin.source),
                    std::plus<>(), cells.pack, *cells.joints);
        cells.coldPack =
            derived(called(cells.coldPack.origin.name, tr("of the worst module for each, joints")),
                    std::plus<>(), cells.coldPack, *cells.joints);
    }
    return cells;
}

} // namespace ohmwright
