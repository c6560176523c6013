// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/verdicts/unit_currents.h"

#include "core/checks/worksheet.h"
#include "core/verdicts/derived.h"
#include "core/verdicts/electrical_checks_of_book.h"
#include "core/verdicts/link_facts.h"

#include <QCoreApplication>

#include <algorithm>

namespace ohmwright {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("UnitCurrents", text);
}

bool isOwnCurrent(const Rating &rating)
{
    return rating.quantity == RatedQuantity::Current && rating.kind == RatingKind::Actual;
}

// Above it a converter's plate tells its other side.
constexpr Voltage kLowSide = volts(60);

class UnitReader
{
public:
    UnitReader(const BookInputs &in, const Branch &branch)
        : m_in(in), m_parts(wiringOf(in).on(branch)), m_circuit(in.records().find(branch.circuit))
    {}

    [[nodiscard]] std::optional<Given<Current>> continuous() const
    {
        if (!m_circuit)
            return std::nullopt;
        if (m_circuit->kind == CircuitKind::Phases)
            return ofPhases(RatingBasis::Continuous);
        std::optional<Given<Current>> sum;
        for (const Part *part : m_parts) {
            const Given<Current> one = takenBy(*part);
            if (one.value)
                sum = sum ? derived(called(tr("current of the units on it"), tr("their sum")),
                                    std::plus<>(), *sum, one)
                          : one;
        }
        return sum;
    }

    [[nodiscard]] std::optional<UnitsPeak> peak() const
    {
        if (!m_circuit)
            return std::nullopt;
        if (m_circuit->kind == CircuitKind::Phases) {
            const auto current = ofPhases(RatingBasis::Peak);
            return current ? std::optional(UnitsPeak{*current, phasesLast()}) : std::nullopt;
        }
        for (const Part *part : m_parts)
            if (part->role == PartRole::PrechargeResistor) {
                const Given<Current> pulse =
                    derived(called({}, tr("the full pack across %1").arg(part->name)),
                            std::divides<>(), highestVoltage(m_in, *m_circuit, packFacts(m_in)),
                            m_in.rating<Resistance>(*part, {RatedQuantity::InternalResistance,
                                                            RatingKind::Actual,
                                                            RatingBasis::Nominal, std::nullopt}));
                if (pulse.value)
                    return UnitsPeak{pulse, std::nullopt};
            }
        return std::nullopt;
    }

private:
    [[nodiscard]] Given<Power> powerOf(const Part &part) const
    {
        const Given<Power> told = m_in.rating<Power>(
            part, {RatedQuantity::Power, RatingKind::Actual, RatingBasis::Nominal, std::nullopt});
        return told.value ? told
                          : m_in.rating<Power>(part, {RatedQuantity::Power, RatingKind::Limit,
                                                      RatingBasis::Continuous, std::nullopt});
    }

    // Held whatever the voltage is.
    [[nodiscard]] Given<Current> atLowest(const Part &part, const Given<Power> &power) const
    {
        const Given<Voltage> lowest = lowestVoltage(m_in, *m_circuit, packFacts(m_in));
        return derived(called({}, tr("the power of %1 at the lowest voltage").arg(part.name)),
                       std::divides<>(), power, lowest);
    }

    [[nodiscard]] Given<Current> ofConverter(const Part &part) const
    {
        if (m_circuit->kind != CircuitKind::LowVoltage) {
            constexpr double kEfficiency = 0.90;
            const Given<double> efficiency =
                m_in.figureOr(kEfficiency, tr("common practice, no published source"),
                              "converter.efficiency", part);
            return atLowest(part, derived(called({}), std::divides<>(), powerOf(part), efficiency));
        }
        Given<Voltage> held =
            m_in.rating<Voltage>(part, {RatedQuantity::Voltage, RatingKind::Actual,
                                        RatingBasis::Nominal, CurrentKind::Dc});
        if (!held.value || kLowSide < *held.value)
            held = m_in.figure<Voltage>("low_voltage.system_voltage", *m_circuit);
        return derived(called({}, tr("all the power of %1").arg(part.name)), std::divides<>(),
                       powerOf(part), held);
    }

    // Into the pack no more than its own limit of current.
    [[nodiscard]] Given<Current> ofCharger(const Part &part) const
    {
        const ChargerDraw draw = drawOf(m_in, part);
        Given<Current> current = draw.mains;
        if (m_circuit->kind == CircuitKind::Traction)
            current = atLowest(part, draw.output);
        const Given<Current> most =
            m_in.rating<Current>(part, {RatedQuantity::Current, RatingKind::Limit,
                                        RatingBasis::Continuous, CurrentKind::Dc});
        if (m_circuit->kind == CircuitKind::Traction && current.value && most.value)
            current.value = std::min(*current.value, *most.value);
        current.origin.source = tr("what %1 works at, by its check").arg(part.name);
        return current;
    }

    [[nodiscard]] Given<Current> takenBy(const Part &part) const
    {
        switch (part.role.value_or(PartRole::Bay)) {
        case PartRole::Charger:
            return ofCharger(part);
        case PartRole::Converter:
            return ofConverter(part);
        case PartRole::Heater:
        case PartRole::Compressor:
            if (m_circuit->kind == CircuitKind::Traction)
                return atLowest(part, powerOf(part));
            break;
        default:
            break;
        }
        if (!anyRating(m_in.records(), part, isOwnCurrent))
            return {};
        Given<Current> own = m_in.rating<Current>(part, {RatedQuantity::Current, RatingKind::Actual,
                                                         RatingBasis::Nominal, m_circuit->current});
        own.origin.source = tr("current of %1").arg(part.name);
        return own;
    }

    // The lowest that motor and inverter on the circuit allow: a controller is set for both.
    [[nodiscard]] std::optional<Given<Current>> ofPhases(RatingBasis basis) const
    {
        std::optional<Given<Current>> lowest;
        for (const PartRole role : {PartRole::Inverter, PartRole::Motor})
            for (const Part *part : wiringOf(m_in).on(*m_circuit, role)) {
                Given<Current> one = m_in.rating<Current>(
                    *part, {RatedQuantity::Current, RatingKind::Limit, basis, CurrentKind::Ac});
                one.origin.source = tr("as much as %1 allows").arg(part->name);
                if (one.value && (!lowest || *one.value < *lowest->value))
                    lowest = one;
            }
        return lowest;
    }

    [[nodiscard]] std::optional<Given<Duration>> phasesLast() const
    {
        for (const PartRole role : {PartRole::Inverter, PartRole::Motor})
            for (const Part *part : wiringOf(m_in).on(*m_circuit, role)) {
                const Rating *peak = figureFor(m_in.records(), *part,
                                               {RatedQuantity::Current, RatingKind::Limit,
                                                RatingBasis::Peak, CurrentKind::Ac})
                                         .inForce;
                if (peak && peak->duration)
                    return given(Duration::fromSi(peak->duration->si()),
                                 tr("how long %1 gives its peak").arg(part->name), peak->evidence,
                                 peak->source);
            }
        return std::nullopt;
    }

    const BookInputs &m_in;
    const std::vector<const Part *> &m_parts;
    const Circuit *m_circuit;
};

} // namespace

std::optional<Given<Current>> unitsContinuous(const BookInputs &in, const Branch &branch)
{
    return UnitReader(in, branch).continuous();
}

std::optional<UnitsPeak> unitsPeak(const BookInputs &in, const Branch &branch)
{
    return UnitReader(in, branch).peak();
}

} // namespace ohmwright
