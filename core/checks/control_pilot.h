// SPDX-License-Identifier: GPL-3.0-or-later
// What a charging point lets a vehicle draw, told by the duty cycle of the control pilot's square
// wave. Source: IEC 61851-1, annex A, as printed in a maker's manual of a test adapter; in
// agreement with SAE J1772.
#pragma once

#include "core/checks/given.h"

#include <optional>

namespace ohmwright {

// `duty` from 0 to 1. None where nothing may be drawn, or where 5 % asks for digital
// communication.
constexpr std::optional<Current> pilotCurrent(double duty)
{
    const double percent = duty * 100;
    if (!(percent >= 8) || percent > 97)
        return std::nullopt;
    if (percent < 10)
        return amperes(6);
    if (percent <= 85)
        return amperes(0.6 * percent);
    if (percent <= 96)
        return amperes(2.5 * (percent - 64));
    return amperes(80);
}

} // namespace ohmwright
