// SPDX-License-Identifier: GPL-3.0-or-later
// The vehicle on the road, taken onto a worksheet: what driving and range both ask of it.
#pragma once

#include "core/checks/road_load.h"
#include "core/checks/taken.h"

#include <optional>

namespace ohmwright {

// Of inputs with mass, rollingCoefficient, dragCoefficient, frontalArea, airDensity and rotating.
// Nothing when one of them is not known or was refused; the sheet says which.
template <class Inputs>
std::optional<RoadLoad> takeRoadLoad(Worksheet &sheet, const Inputs &inputs)
{
    const auto mass = taken(sheet, inputs.mass, u"m", u"kg", 1, 1e5);
    const auto rolling = taken(sheet, inputs.rollingCoefficient, u"µ", u"", 0, 1);
    const auto drag = taken(sheet, inputs.dragCoefficient, u"Cd", u"", 0, 3);
    const auto area = taken(sheet, inputs.frontalArea, u"A", u"m²", 0, 50);
    const auto air = taken(sheet, inputs.airDensity, u"ρ", u"kg/m³", 0, 5);
    const auto rotating = taken(sheet, inputs.rotating, u"λ", u"", 1, 3);
    if (!mass || !rolling || !drag || !area || !air || !rotating)
        return std::nullopt;
    return roadLoadOf({*mass, *rolling, *drag, *area, *air, *rotating});
}

} // namespace ohmwright
