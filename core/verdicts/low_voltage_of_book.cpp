// SPDX-License-Identifier: GPL-3.0-or-later
// The 12 V side out of a book: of each low-voltage circuit with branches or a converter.
//
// Each branch is a load behind its fuse, drawing its continuous current while it is on and its peak
// for moments; the branch
// of converter or battery is the supply, of which only the fuse is held to its cable. Assumed
// unless told otherwise, each said so: a branch is on all the time, 13.8 V, half of the battery may
// be drawn, and less of it the faster, as of lead-acid.
#include "core/checks/low_voltage.h"
#include "core/verdicts/branch_conductor.h"
#include "core/verdicts/derived.h"
#include "core/verdicts/electrical_checks_of_book.h"
#include "core/verdicts/link_facts.h"

#include <QCoreApplication>

#include <algorithm>

namespace ohmwright {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("LowVoltageOfBook", text);
}

FigureName dc(RatedQuantity quantity, RatingKind kind, RatingBasis basis)
{
    return {quantity, kind, basis, CurrentKind::Dc};
}

class LowVoltageReader
{
public:
    explicit LowVoltageReader(const BookInputs &in) : m_in(in), m_wiring(wiringOf(in))
    {
        for (const Branch &branch : in.records().all<Branch>())
            m_branches[branch.circuit].push_back(&branch);
    }

    [[nodiscard]] bool isAbout(const Circuit &circuit) const
    {
        return circuit.kind == CircuitKind::LowVoltage &&
               (m_branches.contains(circuit.id) ||
                !m_wiring.on(circuit, PartRole::Converter).empty());
    }

    [[nodiscard]] LowVoltageInputs read(const Circuit &circuit) const
    {
        LowVoltageInputs inputs;
        inputs.circuit = circuit.key;
        readSupply(inputs, circuit);
        readBattery(inputs, circuit);
        const auto found = m_branches.find(circuit.id);
        if (found != m_branches.end())
            for (const Branch *branch : found->second)
                addBranch(inputs, *branch);
        if (m_in.has("low_voltage.fuse_factor", circuit))
            inputs.fuseTemperatureFactor = m_in.figure<double>("low_voltage.fuse_factor", circuit);
        m_in.hold(inputs.fuseShare);
        m_in.hold(inputs.reserve);
        return inputs;
    }

private:
    // A figure of the circuit, if told; else the rating of the part that does it; else asked for.
    template <class Q>
    [[nodiscard]] Given<Q> toldOrRated(const char *name, const Circuit &circuit, PartRole role,
                                       const FigureName &rating) const
    {
        const auto parts = m_wiring.on(circuit, role);
        if (m_in.has(name, circuit) || parts.empty())
            return m_in.figure<Q>(name, circuit);
        return m_in.rating<Q>(*parts.front(), rating);
    }

    void readSupply(LowVoltageInputs &inputs, const Circuit &circuit) const
    {
        inputs.systemVoltage = toldOrRated<Voltage>(
            "low_voltage.system_voltage", circuit, PartRole::Converter,
            dc(RatedQuantity::Voltage, RatingKind::Actual, RatingBasis::Nominal));
        // a converter's plate may tell its other side
        if (!inputs.systemVoltage.value || *inputs.systemVoltage.value > volts(60))
            inputs.systemVoltage =
                m_in.figureOr(volts(13.8), tr("common practice, no published source"),
                              "low_voltage.system_voltage", circuit);
        inputs.converterCurrent = toldOrRated<Current>(
            "low_voltage.converter_current", circuit, PartRole::Converter,
            dc(RatedQuantity::Current, RatingKind::Limit, RatingBasis::Continuous));
        // its ratings are of the side that feeds it
        for (const Part *converter : m_wiring.on(circuit, PartRole::Converter))
            if (m_wiring.hasLowSide(*converter) &&
                !m_in.has("low_voltage.converter_current", circuit))
                inputs.converterCurrent = m_in.figure<Current>("part.low_side_current", *converter);
    }

    void readBattery(LowVoltageInputs &inputs, const Circuit &circuit) const
    {
        inputs.batteryVoltage = toldOrRated<Voltage>(
            "low_voltage.battery_voltage", circuit, PartRole::AuxiliaryBattery,
            dc(RatedQuantity::Voltage, RatingKind::Actual, RatingBasis::Nominal));
        inputs.batteryCapacity = toldOrRated<Charge>(
            "low_voltage.battery_capacity", circuit, PartRole::AuxiliaryBattery,
            {RatedQuantity::Capacity, RatingKind::Actual, RatingBasis::Nominal, std::nullopt});
        inputs.usableShare = m_in.figureOr(
            0.5, tr("half of a lead-acid battery: common practice, no published source"),
            "low_voltage.usable_share", circuit);
        inputs.peukert = m_in.figureOr(*inputs.peukert.value, inputs.peukert.origin.source,
                                       "low_voltage.peukert", circuit);
        readShortCircuit(inputs, circuit);
        inputs.ratedTime = m_in.figureOr(seconds(20 * 3600.0), tr("as starter batteries are rated"),
                                         "low_voltage.rated_time", circuit);
    }

    void readShortCircuit(LowVoltageInputs &inputs, const Circuit &circuit) const
    {
        if (m_in.has("low_voltage.short_circuit", circuit))
            inputs.shortCircuit = m_in.figure<Current>("low_voltage.short_circuit", circuit);
        if (m_in.has("low_voltage.battery_resistance", circuit)) {
            inputs.innerResistance =
                m_in.figure<Resistance>("low_voltage.battery_resistance", circuit);
            return;
        }
        for (const Part *battery : m_wiring.on(circuit, PartRole::AuxiliaryBattery)) {
            const Given<Resistance> inner = m_in.rating<Resistance>(
                *battery, {RatedQuantity::InternalResistance, RatingKind::Actual,
                           RatingBasis::Nominal, std::nullopt});
            if (inner.value)
                inputs.innerResistance = inner;
        }
    }

    [[nodiscard]] bool isSupply(const Branch &branch) const
    {
        return std::ranges::any_of(m_wiring.on(branch), [](const Part *part) {
            return part->role == PartRole::Converter || part->role == PartRole::AuxiliaryBattery;
        });
    }

    // Of the fuse's own papers, told for direct current or as such; else as told of the branch.
    [[nodiscard]] Given<Current> breakingOf(const Branch &branch) const
    {
        Given<Current> told = m_in.figure<Current>("fuse.breaking_capacity", branch);
        told.origin.name = tr("breaking capacity of the fuse of %1").arg(branch.name);
        const Part *part = m_in.records().find(branch.fuse);
        if (!part)
            return told;
        Given<Current> asked; // where it is asked for if nothing is told
        for (const std::optional<CurrentKind> kind :
             {std::optional(CurrentKind::Dc), std::optional<CurrentKind>()}) {
            asked = m_in.rating<Current>(*part, {RatedQuantity::BreakingCapacity, RatingKind::Limit,
                                                 RatingBasis::Continuous, kind});
            if (asked.value)
                return asked;
        }
        return told.value ? told : asked;
    }

    void addBranch(LowVoltageInputs &inputs, const Branch &branch) const
    {
        LowVoltageFuse fuse;
        fuse.name = tr("fuse of %1").arg(branch.name);
        fuse.rating = m_in.field<Current>(branch, &Branch::fuseRating, "fuse_rating", fuse.name,
                                          Evidence::Nameplate, tr("entered with the branch"));
        fuse.cable = capacityOf(m_in, branch);
        fuse.breaking = breakingOf(branch);
        if (m_in.has("fault.least_loop", branch))
            fuse.loop = m_in.figure<Resistance>("fault.least_loop", branch);
        if (!isSupply(branch)) {
            LowVoltageLoad load;
            load.name = branch.name;
            load.power = derived(
                called(tr("power of %1").arg(branch.name),
                       tr("its continuous current at the system's voltage"),
                       continuousCurrentOf(m_in, branch).origin.field),
                [](Current i, Voltage u) { return i * u; }, continuousCurrentOf(m_in, branch),
                inputs.systemVoltage);
            if (branch.peakCurrent)
                load.peak = derived(
                    called(tr("highest power of %1").arg(branch.name)),
                    [](Current i, Voltage u) { return i * u; },
                    m_in.field<Current>(branch, &Branch::peakCurrent, "peak_current",
                                        tr("peak current of %1").arg(branch.name),
                                        Evidence::Assumed, tr("entered with the branch")),
                    inputs.systemVoltage);
            load.duty =
                m_in.figureOr(1.0, tr("on all the time, unless it is told"), "branch.duty", branch);
            load.inReserve = m_in.yesNo("branch.in_reserve", branch).value_or(false);
            fuse.loads.push_back(inputs.loads.size());
            inputs.loads.push_back(std::move(load));
        }
        if (branch.fuse || branch.fuseRating || !fuse.loads.empty())
            inputs.fuses.push_back(std::move(fuse));
    }

    const BookInputs &m_in;
    const Wiring &m_wiring;
    std::map<Id<Circuit>, std::vector<const Branch *>> m_branches;
};

} // namespace

std::vector<Check> judgeLowVoltageOfBook(const BookInputs &in)
{
    std::vector<Check> checks;
    const LowVoltageReader reader(in);
    for (const Circuit &circuit : in.records().all<Circuit>())
        if (reader.isAbout(circuit)) {
            Check check = judgeLowVoltage(reader.read(circuit));
            addToTitle(check, circuit.name);
            checks.push_back(std::move(check));
        }
    return checks;
}

} // namespace ohmwright
