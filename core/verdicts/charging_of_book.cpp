// SPDX-License-Identifier: GPL-3.0-or-later
// Charging out of a book: of each charger of the build.
//
// Assumed unless told otherwise, each said so: one line of the mains, 90 % of it arriving, a power
// factor of 0.95, and how the current falls at the end. The mains' voltage is that of the charge
// inlet's circuit; the weakest of outlet, inlet and cable needs all of them told.
#include "core/checks/charging.h"
#include "core/verdicts/build_parts.h"
#include "core/verdicts/cell_facts.h"
#include "core/verdicts/derived.h"
#include "core/verdicts/electrical_checks_of_book.h"
#include "core/verdicts/link_facts.h"

#include <QCoreApplication>

#include <algorithm>

namespace ohmwright {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("ChargingOfBook", text);
}

FigureName limit(RatedQuantity quantity, RatingBasis basis, std::optional<CurrentKind> kind)
{
    return {quantity, RatingKind::Limit, basis, kind};
}

class ChargingReader
{
public:
    explicit ChargingReader(const BookInputs &in)
        : m_in(in), m_wiring(wiringOf(in)), m_pack(packFacts(in)), m_cells(cellFacts(in))
    {}

    [[nodiscard]] ChargingInputs read(const Part &charger) const
    {
        ChargingInputs inputs;
        inputs.charger = charger.key;
        readMains(inputs, charger);
        readBattery(inputs, charger);
        readTime(inputs, charger);
        m_in.hold(inputs.continuousShare);
        return inputs;
    }

private:
    void readMains(ChargingInputs &inputs, const Part &charger) const
    {
        const QString custom = tr("common practice, no published source");
        inputs.mainsVoltage = m_in.figure<Voltage>("charging.mains_voltage", charger);
        if (!m_in.has("charging.mains_voltage", charger))
            for (const Circuit &circuit : m_in.records().all<Circuit>())
                if (circuit.kind == CircuitKind::ChargeInlet && m_wiring.isOn(charger, circuit) &&
                    circuit.nominalVoltage)
                    inputs.mainsVoltage = nominalVoltageEntered(m_in, circuit);
        inputs.phases =
            m_in.figureOr(1.0, tr("one line, unless it is told"), "charging.phases", charger);
        inputs.outputPower = m_in.rating<Power>(charger, {RatedQuantity::Power, RatingKind::Actual,
                                                          RatingBasis::Nominal, std::nullopt});
        const Given<Power> most = m_in.rating<Power>(
            charger, limit(RatedQuantity::Power, RatingBasis::Continuous, std::nullopt));
        if (!inputs.outputPower.value && most.value)
            inputs.outputPower = most;
        inputs.efficiency = m_in.figureOr(0.90, custom, "charging.efficiency", charger);
        inputs.powerFactor = m_in.figureOr(0.95, custom, "charging.power_factor", charger);
        inputs.breaker = m_in.figure<Current>("charging.breaker", charger);
        inputs.weakestLink = weakestLink(charger);
        if (m_in.has("charging.held_to", charger))
            inputs.heldTo = m_in.figure<Current>("charging.held_to", charger);
        if (m_in.has("charging.pilot_duty", charger))
            inputs.pilotDuty = m_in.figure<double>("charging.pilot_duty", charger);
    }

    [[nodiscard]] Given<Current> weakestLink(const Part &charger) const
    {
        Given<Current> weakest = m_in.figure<Current>("charging.outlet_current", charger);
        for (const Part *inlet : partsOfRole(m_in.records(), PartRole::ChargeInlet)) {
            const Given<Current> one = m_in.rating<Current>(
                *inlet, limit(RatedQuantity::Current, RatingBasis::Continuous, CurrentKind::Ac));
            weakest = derived(
                called(tr("weakest of outlet, cable and inlet"), {}, weakest.origin.field),
                [](Current a, Current b) { return std::min(a, b); }, weakest, one);
        }
        return weakest;
    }

    void readBattery(ChargingInputs &inputs, const Part &charger) const
    {
        inputs.packEmpty =
            ofAllCells(m_pack.cellsInSeries, m_cells.lowest, tr("voltage of the empty pack"));
        inputs.packFull = m_pack.full;
        inputs.packCurrent = packCurrent();
        inputs.chargerLeast = m_in.rating<Voltage>(
            charger, limit(RatedQuantity::Voltage, RatingBasis::Least, CurrentKind::Dc));
        inputs.chargerMost =
            m_in.rating<Voltage>(charger, {RatedQuantity::Voltage, RatingKind::Actual,
                                           RatingBasis::Nominal, CurrentKind::Dc});
        inputs.chargerMost.origin.name = tr("highest output of %1").arg(charger.name);
        inputs.endOfCharge =
            m_pack.circuit ? m_in.figure<Voltage>("pack.charge_end", *m_pack.circuit)
                           : notKnown<Voltage>(tr("voltage of the pack at which charging ends"));
        inputs.chargerCurrent = m_in.rating<Current>(
            charger, limit(RatedQuantity::Current, RatingBasis::Continuous, CurrentKind::Dc));
    }

    // By the modules' figure, else by their cells' curve in the comfort of a workshop: what frost
    // does to it is judged with the limits of the cells.
    [[nodiscard]] Given<Current> packCurrent() const
    {
        const QString name = tr("current the pack may be charged with");
        if (m_pack.modules.empty())
            return notKnown<Current>(name);
        const Part &module = *m_pack.modules.front();
        const Given<Current> told = m_in.figure<Current>("module.charge_current", module);
        const RatedCurve *curve = m_in.curve(module, CurveKind::ChargeLimit);
        if (m_in.has("module.charge_current", module) || !curve)
            return derived(
                called(name), [](Current one, double parallel) { return one * parallel; }, told,
                m_pack.modulesInParallel);
        Given<Current> cell;
        cell.origin = m_in.curveOrigin(module, CurveKind::ChargeLimit, name);
        cell.value = m_in.pointsOf<Temperature, Current>(*curve).at(Temperature::fromSi(293.15));
        return derived(
            called(name, tr("by the cells' curve at 20 °C"), told.origin.field),
            [](Current one, double parallel) { return one * parallel; }, cell, m_cells.inParallel);
    }

    void readTime(ChargingInputs &inputs, const Part &charger) const
    {
        const QString custom = tr("common practice, no published source");
        const auto share = [](double value) {
            return given(value, {});
        };
        inputs.packEnergy = energyBetween(m_cells, m_pack, share(1), share(0),
                                          tr("energy of the pack from empty to full"));
        inputs.from = m_pack.lowestCharge;
        inputs.to = m_pack.highestCharge;
        if (m_in.has("charging.time_at_hand", charger))
            inputs.timeAtHand = m_in.figure<Duration>("charging.time_at_hand", charger);
        inputs.fallsFrom =
            m_in.figureOr(*inputs.fallsFrom.value, custom, "charging.falls_from", charger);
        inputs.fallsTo = m_in.figureOr(*inputs.fallsTo.value, custom, "charging.falls_to", charger);
    }

    const BookInputs &m_in;
    const Wiring &m_wiring;
    PackFacts m_pack;
    const CellFacts &m_cells;
};

} // namespace

ChargerDraw drawOf(const BookInputs &in, const Part &charger)
{
    return chargerDraw(ChargingReader(in).read(charger));
}

std::vector<Check> judgeChargingOfBook(const BookInputs &in)
{
    std::vector<Check> checks;
    const auto chargers = partsOfRole(in.records(), PartRole::Charger);
    if (chargers.empty())
        return checks;
    const ChargingReader reader(in);
    for (const Part *charger : chargers) {
        Check check = judgeCharging(reader.read(*charger));
        addToTitle(check, charger->name);
        checks.push_back(std::move(check));
    }
    return checks;
}

} // namespace ohmwright
