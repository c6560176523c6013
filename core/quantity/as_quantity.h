// SPDX-License-Identifier: GPL-3.0-or-later
// From what a person gave (Amount) to what is computed with (Quantity), and back.
//
//     as<Voltage>(amount)                 // nothing if the amount is not a voltage
//     as<Measure::Torque>(amount)         // where two measures share a dimension, name the measure
//     amountOf(volts(403), kilovolt)      // 0.403 kV
#pragma once

#include "core/quantity/amount.h"
#include "core/quantity/invariant.h"
#include "core/quantity/quantity.h"

#include <optional>
#include <type_traits>

namespace ohmwright {

template <Measure M>
struct QuantityOf;

// clang-format off
template <> struct QuantityOf<Measure::Voltage> { using Type = Voltage; };
template <> struct QuantityOf<Measure::Current> { using Type = Current; };
template <> struct QuantityOf<Measure::Resistance> { using Type = Resistance; };
template <> struct QuantityOf<Measure::Power> { using Type = Power; };
template <> struct QuantityOf<Measure::Energy> { using Type = Energy; };
template <> struct QuantityOf<Measure::EnergyPerDistance> { using Type = EnergyPerDistance; };
template <> struct QuantityOf<Measure::Charge> { using Type = Charge; };
template <> struct QuantityOf<Measure::Capacitance> { using Type = Capacitance; };
template <> struct QuantityOf<Measure::Inductance> { using Type = Inductance; };
template <> struct QuantityOf<Measure::Mass> { using Type = Mass; };
template <> struct QuantityOf<Measure::Unbalance> { using Type = Unbalance; };
template <> struct QuantityOf<Measure::Length> { using Type = Length; };
template <> struct QuantityOf<Measure::Area> { using Type = Area; };
template <> struct QuantityOf<Measure::Volume> { using Type = Volume; };
template <> struct QuantityOf<Measure::Density> { using Type = Density; };
template <> struct QuantityOf<Measure::Duration> { using Type = Duration; };
template <> struct QuantityOf<Measure::Temperature> { using Type = Temperature; };
template <> struct QuantityOf<Measure::Frequency> { using Type = Frequency; };
template <> struct QuantityOf<Measure::Speed> { using Type = Speed; };
template <> struct QuantityOf<Measure::RotationSpeed> { using Type = RotationSpeed; };
template <> struct QuantityOf<Measure::Torque> { using Type = Torque; };
template <> struct QuantityOf<Measure::Force> { using Type = Force; };
template <> struct QuantityOf<Measure::Pressure> { using Type = Pressure; };
template <> struct QuantityOf<Measure::FlowRate> { using Type = FlowRate; };
template <> struct QuantityOf<Measure::Acceleration> { using Type = Acceleration; };
template <> struct QuantityOf<Measure::ThermalConductance> { using Type = ThermalConductance; };

// The measure a type stands for when none is named.
template <Measure M> using MeasureIs = std::integral_constant<Measure, M>;
template <class Q> struct MeasureOf;
template <> struct MeasureOf<Voltage> : MeasureIs<Measure::Voltage> {};
template <> struct MeasureOf<Current> : MeasureIs<Measure::Current> {};
template <> struct MeasureOf<Resistance> : MeasureIs<Measure::Resistance> {};
template <> struct MeasureOf<Power> : MeasureIs<Measure::Power> {};
template <> struct MeasureOf<Energy> : MeasureIs<Measure::Energy> {};
template <> struct MeasureOf<Charge> : MeasureIs<Measure::Charge> {};
template <> struct MeasureOf<Capacitance> : MeasureIs<Measure::Capacitance> {};
template <> struct MeasureOf<Inductance> : MeasureIs<Measure::Inductance> {};
template <> struct MeasureOf<Mass> : MeasureIs<Measure::Mass> {};
template <> struct MeasureOf<Unbalance> : MeasureIs<Measure::Unbalance> {};
template <> struct MeasureOf<Length> : MeasureIs<Measure::Length> {};
template <> struct MeasureOf<Area> : MeasureIs<Measure::Area> {};
template <> struct MeasureOf<Volume> : MeasureIs<Measure::Volume> {};
template <> struct MeasureOf<Density> : MeasureIs<Measure::Density> {};
template <> struct MeasureOf<Duration> : MeasureIs<Measure::Duration> {};
template <> struct MeasureOf<Temperature> : MeasureIs<Measure::Temperature> {};
template <> struct MeasureOf<Frequency> : MeasureIs<Measure::Frequency> {};
template <> struct MeasureOf<Speed> : MeasureIs<Measure::Speed> {};
template <> struct MeasureOf<Force> : MeasureIs<Measure::Force> {};
template <> struct MeasureOf<Pressure> : MeasureIs<Measure::Pressure> {};
template <> struct MeasureOf<FlowRate> : MeasureIs<Measure::FlowRate> {};
template <> struct MeasureOf<Acceleration> : MeasureIs<Measure::Acceleration> {};
template <> struct MeasureOf<ThermalConductance> : MeasureIs<Measure::ThermalConductance> {};
// clang-format on

// Ratios and counts have no Quantity: their si() is the plain number.
template <Measure M>
[[nodiscard]] std::optional<typename QuantityOf<M>::Type> as(const Amount &amount)
{
    if (amount.measure() != M)
        return std::nullopt;
    return QuantityOf<M>::Type::fromSi(amount.si());
}

template <class Q>
[[nodiscard]] std::optional<Q> as(const Amount &amount)
{
    return as<MeasureOf<Q>::value>(amount);
}

// The unit must be one of the measure's (asserted).
template <Measure M>
[[nodiscard]] Amount amountOf(typename QuantityOf<M>::Type quantity, Unit unit)
{
    require(unit.measure() == M, "a quantity goes into a unit of its own measure");
    return Amount::fromSi(quantity.si(), unit);
}

template <class Q>
[[nodiscard]] Amount amountOf(Q quantity, Unit unit)
{
    return amountOf<MeasureOf<Q>::value>(quantity, unit);
}

} // namespace ohmwright
