// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/records/engineering.h"

namespace ohmwright {

Measure measureAlong(CurveKind kind)
{
    switch (kind) {
    case CurveKind::OpenCircuit:
        return Measure::Ratio;
    case CurveKind::MotorTorque:
        return Measure::RotationSpeed;
    case CurveKind::ChargeLimit:
    case CurveKind::DischargeLimit:
    case CurveKind::BrakingLimit:
        return Measure::Temperature;
    }
    return Measure::Count;
}

Measure measureUp(CurveKind kind)
{
    switch (kind) {
    case CurveKind::OpenCircuit:
        return Measure::Voltage;
    case CurveKind::MotorTorque:
        return Measure::Torque;
    case CurveKind::ChargeLimit:
    case CurveKind::DischargeLimit:
    case CurveKind::BrakingLimit:
        return Measure::Current;
    }
    return Measure::Count;
}

} // namespace ohmwright
