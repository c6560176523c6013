// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/records/ledger.h"

namespace ohmwright {

Measure measureOf(RatedQuantity quantity)
{
    switch (quantity) {
    case RatedQuantity::Voltage:
        return Measure::Voltage;
    case RatedQuantity::Current:
        return Measure::Current;
    case RatedQuantity::Power:
        return Measure::Power;
    case RatedQuantity::Energy:
        return Measure::Energy;
    case RatedQuantity::Capacity:
        return Measure::Charge;
    case RatedQuantity::InternalResistance:
        return Measure::Resistance;
    case RatedQuantity::Capacitance:
        return Measure::Capacitance;
    case RatedQuantity::IsolationResistance:
        return Measure::Resistance;
    case RatedQuantity::BreakingCapacity:
        return Measure::Current;
    case RatedQuantity::CrossSection:
        return Measure::Area;
    case RatedQuantity::Torque:
        return Measure::Torque;
    case RatedQuantity::RotationSpeed:
        return Measure::RotationSpeed;
    case RatedQuantity::Temperature:
        return Measure::Temperature;
    case RatedQuantity::Pressure:
        return Measure::Pressure;
    case RatedQuantity::Flow:
        return Measure::FlowRate;
    case RatedQuantity::Mass:
        return Measure::Mass;
    case RatedQuantity::Length:
    case RatedQuantity::Width:
    case RatedQuantity::Height:
        return Measure::Length;
    case RatedQuantity::CellsInSeries:
        return Measure::Count;
    case RatedQuantity::Ratio:
        return Measure::Ratio;
    case RatedQuantity::Frequency:
        return Measure::Frequency;
    }
    return Measure::Count;
}

} // namespace ohmwright
