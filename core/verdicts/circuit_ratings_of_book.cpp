// SPDX-License-Identifier: GPL-3.0-or-later
// Circuit ratings out of a book.
//
// A circuit with the pack on it, or joined to such a one by an inverter, is driven by the pack when
// full, the charger, the inverter when the pack drops out, and the motor turned from outside; any
// other by what is entered as its worst voltage. A sub-part is held to the circuit if it, or what
// it sits in, is connected to it; plain hardware that tells no voltage only holds others.
#include "core/verdicts/build_parts.h"
#include "core/verdicts/cell_facts.h"
#include "core/verdicts/electrical_checks_of_book.h"
#include "core/verdicts/link_facts.h"

#include <QCoreApplication>

#include <algorithm>

namespace ohmwright {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("CircuitRatingsOfBook", text);
}

bool tellsVoltageLimit(const Records &records, const Part &part)
{
    const auto isOne = [](const Rating &rating) {
        return rating.quantity == RatedQuantity::Voltage && rating.kind == RatingKind::Limit &&
               rating.basis == RatingBasis::Continuous;
    };
    return std::ranges::any_of(records.of<Rating>(part.id), isOne) ||
           (part.type && std::ranges::any_of(records.of<Rating>(*part.type), isOne));
}

class CircuitReader
{
public:
    explicit CircuitReader(const BookInputs &in)
        : m_in(in), m_wiring(wiringOf(in)), m_pack(packFacts(in))
    {}

    [[nodiscard]] bool hasParts(const Circuit &circuit) const
    {
        return !m_wiring.on(circuit).empty();
    }

    // What drives it, without the parts.
    [[nodiscard]] CircuitRatingsInputs sources(const Circuit &circuit) const
    {
        CircuitRatingsInputs inputs;
        inputs.circuit = circuit.key;
        inputs.name = circuit.name;
        inputs.current = circuit.current;
        readDrivers(inputs, circuit);
        return inputs;
    }

    [[nodiscard]] CircuitRatingsInputs read(const Circuit &circuit) const
    {
        CircuitRatingsInputs inputs = sources(circuit);
        inputs.parts = m_wiring.assemblies<VoltageLimit>(
            circuit, [this](const Part &part) { return m_in.pathOf(part); },
            [&](const Part &part, Assembly<VoltageLimit> &made) {
                made.isLive = isLive(part);
                if (made.isLive)
                    made.limits =
                        isLowSide(part, circuit)
                            ? std::vector<VoltageLimit>{{m_in.figure<Voltage>(
                                                             "part.low_side_voltage", part),
                                                         circuit.current}}
                            : limitsOf(part, circuit.current);
            });
        return inputs;
    }

private:
    [[nodiscard]] bool isLowSide(const Part &part, const Circuit &circuit) const
    {
        return circuit.kind == CircuitKind::LowVoltage && m_wiring.hasLowSide(part);
    }

    [[nodiscard]] bool isLive(const Part &part) const
    {
        if (const std::optional<bool> told = m_in.yesNo("part.is_live", part))
            return *told;
        return part.kind != PartKind::Hardware || m_wiring.isConnectedItself(part) ||
               tellsVoltageLimit(m_in.records(), part);
    }

    // The figure in force of the circuit's kind, known or not, and what else is told: a limit of
    // another kind never answers, but the check says that it is there.
    [[nodiscard]] std::vector<VoltageLimit> limitsOf(const Part &part, CurrentKind current) const
    {
        std::vector<VoltageLimit> limits;
        const CurrentKind other = current == CurrentKind::Dc ? CurrentKind::Ac : CurrentKind::Dc;
        const std::array<std::optional<CurrentKind>, 3> kinds{current, other, std::nullopt};
        for (const std::optional<CurrentKind> kind : kinds) {
            Given<Voltage> limit = m_in.rating<Voltage>(
                part, {RatedQuantity::Voltage, RatingKind::Limit, RatingBasis::Continuous, kind});
            if (kind == current || limit.value)
                limits.push_back({std::move(limit), kind});
        }
        return limits;
    }

    // The circuit whose pack drives this one: itself, or that on the other side of an inverter.
    [[nodiscard]] const Circuit *packSideOf(const Circuit &circuit) const
    {
        if (!m_pack.circuit || m_pack.circuit == &circuit)
            return m_pack.circuit;
        for (const Part *inverter : m_wiring.on(circuit, PartRole::Inverter))
            if (m_wiring.isOn(*inverter, *m_pack.circuit))
                return m_pack.circuit;
        return nullptr;
    }

    void readDrivers(CircuitRatingsInputs &inputs, const Circuit &circuit) const
    {
        const Circuit *link = packSideOf(circuit);
        if (link) {
            inputs.pack.cellsInSeries = m_pack.cellsInSeries;
            inputs.pack.cellFull =
                m_in.figure<Voltage>("cell.full_voltage", *m_pack.modules.front());
            if (m_pack.nominal.value && m_pack.cellsInSeries.value)
                inputs.pack.cellNominal = *m_pack.nominal.value / *m_pack.cellsInSeries.value;
            addChargers(inputs, *link);
            addInverters(inputs, *link);
            addMotors(inputs, *link);
            if (link != &circuit)
                inputs.modulation = modulationOf(circuit);
        } else {
            addOtherPack(inputs, circuit);
            inputs.motor.applies = false;
            inputs.motor.whyNot = tr("no inverter joins it to a pack");
        }
        const Given<Voltage> entered = worstVoltageEntered(m_in, circuit);
        if (!link || entered.value)
            inputs.others.push_back({true,
                                     {},
                                     tr("worst voltage as entered"),
                                     entered,
                                     circuit.current,
                                     link != nullptr});
    }

    // One pack is worked: that of the first traction circuit with modules on it.
    void addOtherPack(CircuitRatingsInputs &inputs, const Circuit &circuit) const
    {
        if (m_wiring.modulesOn(circuit).empty()) {
            inputs.pack.applies = false;
            inputs.pack.whyNot = tr("no battery module is connected to it");
            return;
        }
        inputs.pack.cellsInSeries =
            notKnown<double>(m_pack.circuit ? tr("cells in series of a second pack: only that of "
                                                 "“%1” is worked")
                                                  .arg(m_pack.circuit->name)
                                            : tr("cells in series of modules on no traction "
                                                 "circuit"));
        inputs.pack.cellFull =
            m_in.figure<Voltage>("cell.full_voltage", *m_wiring.modulesOn(circuit).front());
    }

    // Of the inverter between the circuit and the pack.
    [[nodiscard]] Chosen<Modulation> modulationOf(const Circuit &circuit) const
    {
        for (const Part *inverter : m_wiring.on(circuit, PartRole::Inverter)) {
            if (!m_wiring.isOn(*inverter, *m_pack.circuit))
                continue;
            auto told = m_in.choice<Modulation>("inverter.modulation", *inverter);
            if (!told.value && !m_in.has("inverter.modulation", *inverter)) {
                told.value = Modulation::SixStep;
                told.origin.evidence = Evidence::Assumed;
                told.origin.source = tr("many go there at speed, unless it is told: common "
                                        "practice, no published source");
            }
            return told;
        }
        return {};
    }

    void addChargers(CircuitRatingsInputs &inputs, const Circuit &link) const
    {
        const auto chargers = m_wiring.on(link, PartRole::Charger);
        for (const Part *charger : chargers)
            inputs.others.push_back(
                {true,
                 {},
                 tr("maximum output of %1").arg(charger->name),
                 m_in.rating<Voltage>(*charger, {RatedQuantity::Voltage, RatingKind::Actual,
                                                 RatingBasis::Nominal, CurrentKind::Dc}),
                 CurrentKind::Dc});
        if (chargers.empty())
            inputs.others.push_back(
                doesNotApply(tr("charger's maximum output"), tr("no charger is connected to it")));
    }

    void addInverters(CircuitRatingsInputs &inputs, const Circuit &link) const
    {
        const QString name = tr("regeneration with the pack disconnected");
        const auto inverters = m_wiring.on(link, PartRole::Inverter);
        for (const Part *inverter : inverters)
            inputs.others.push_back(
                {true,
                 {},
                 name,
                 m_in.figure<Voltage>("inverter.regeneration_voltage", *inverter),
                 CurrentKind::Dc});
        if (inverters.empty())
            inputs.others.push_back(doesNotApply(name, tr("no inverter is connected to it")));
        addBoost(inputs, link, inverters);
    }

    // That none boosts has to be said: those of hybrids do.
    void addBoost(CircuitRatingsInputs &inputs, const Circuit &link,
                  const std::vector<const Part *> &inverters) const
    {
        const QString name = tr("boosted link");
        bool isBoosted = m_in.has("circuit.boosted_voltage", link);
        for (const Part *inverter : inverters) {
            const std::optional<bool> boosts = m_in.yesNo("inverter.boosts", *inverter);
            isBoosted = isBoosted || boosts.value_or(false);
            if (boosts || isBoosted)
                continue;
            const Given<Voltage> asked{std::nullopt, m_in.originOf("inverter.boosts", *inverter)};
            inputs.others.push_back({true, {}, name, asked, CurrentKind::Dc});
        }
        if (isBoosted)
            inputs.others.push_back({true,
                                     {},
                                     name,
                                     m_in.figure<Voltage>("circuit.boosted_voltage", link),
                                     CurrentKind::Dc});
        else if (inverters.empty())
            inputs.others.push_back(doesNotApply(name, tr("no inverter is connected to it")));
        else if (std::ranges::all_of(inverters, [this](const Part *inverter) {
                     return m_in.yesNo("inverter.boosts", *inverter).has_value();
                 }))
            inputs.others.push_back(doesNotApply(name, tr("its inverter does not boost it")));
    }

    // Each with magnets, for each is turned by the wheels; whoever does not say is asked.
    void addMotors(CircuitRatingsInputs &inputs, const Circuit &link) const
    {
        const std::vector<const Part *> motors = m_wiring.on(link, PartRole::Inverter).empty()
                                                     ? std::vector<const Part *>()
                                                     : partsOfRole(m_in.records(), PartRole::Motor);
        std::vector<MotorAtOverspeed> turned;
        for (const Part *motor : motors)
            if (m_in.yesNo("motor.magnets", *motor).value_or(true))
                turned.push_back(atOverspeed(*motor, motors.size() > 1));
        if (turned.empty()) {
            inputs.motor.applies = false;
            inputs.motor.whyNot = motors.empty() ? tr("no motor hangs on its inverter")
                                                 : tr("no magnets: it makes nothing by itself");
            return;
        }
        inputs.motor = std::move(turned.front());
        turned.erase(turned.begin());
        inputs.otherMotors = std::move(turned);
    }

    [[nodiscard]] MotorAtOverspeed atOverspeed(const Part &motor, bool isOneOfSeveral) const
    {
        MotorAtOverspeed turned;
        if (isOneOfSeveral)
            turned.of = motor.name;
        turned.noLoad = m_in.rating<Voltage>(motor, {RatedQuantity::Voltage, RatingKind::Actual,
                                                     RatingBasis::Nominal, CurrentKind::Ac});
        turned.noLoad.origin.name = tr("no-load voltage of %1").arg(motor.name);
        turned.noLoadSpeed = m_in.figure<RotationSpeed>("motor.no_load_speed", motor);
        turned.highestSpeed = m_in.figure<RotationSpeed>("motor.overspeed", motor);
        return turned;
    }

    static VoltageSource doesNotApply(const QString &name, const QString &whyNot)
    {
        VoltageSource source;
        source.applies = false;
        source.whyNot = whyNot;
        source.name = name;
        return source;
    }

    const BookInputs &m_in;
    const Wiring &m_wiring;
    PackFacts m_pack;
};

} // namespace

CircuitRatingsInputs circuitRatingsInputs(const BookInputs &in, const Circuit &circuit)
{
    return CircuitReader(in).read(circuit);
}

WorstVoltage worstVoltage(const BookInputs &in, const Circuit &circuit)
{
    return worstVoltage(CircuitReader(in).sources(circuit));
}

MostCells mostCellsInSeries(const BookInputs &in, const Circuit &circuit)
{
    return mostCellsInSeries(circuitRatingsInputs(in, circuit));
}

std::vector<Check> judgeCircuitRatingsOfBook(const BookInputs &in)
{
    std::vector<Check> checks;
    const CircuitReader reader(in);
    for (const Circuit &circuit : in.records().all<Circuit>())
        if (in.isAsked(circuit.key) && reader.hasParts(circuit))
            checks.push_back(judgeCircuitRatings(reader.read(circuit)));
    return checks;
}

} // namespace ohmwright
