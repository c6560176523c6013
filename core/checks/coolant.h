// SPDX-License-Identifier: GPL-3.0-or-later
// Density, specific heat and freezing point of water and of glycol in water.
//
// Source of the glycols: ASHRAE Handbook, Fundamentals, physical properties of secondary coolants
// (inhibited glycols), by volume, as collected in an open property library. Of water: IAPWS-95
// at 1 bar (VDI Heat Atlas agrees).
#pragma once

#include "core/checks/given.h"

#include <optional>

namespace ohmwright {

enum class Coolant { Water, EthyleneGlycol, PropyleneGlycol };
template <>
struct EnumWords<Coolant>
{
    static constexpr std::array words{"water", "ethylene glycol", "propylene glycol"};
};

using VolumetricHeatCapacity = Quantity<1, -1, -2, 0, -1>;

// What a cubic metre of it takes up for each kelvin, density times specific heat. `glycol` is the
// share by volume, 0 to 0.6; temperature from 0 to 100 °C. None outside of these.
std::optional<VolumetricHeatCapacity> heatCapacityOf(Coolant coolant, double glycol,
                                                     Temperature temperature);

// Where the first ice forms; none outside of 0 to 0.575 (ethylene) or 0.6 (propylene).
std::optional<Temperature> freezingPointOf(Coolant coolant, double glycol);

} // namespace ohmwright
