// SPDX-License-Identifier: GPL-3.0-or-later
// What conductors are: resistance as IEC 60228 allows it, its rise with temperature, and how much
// heat a short circuit may put into one (IEC 60364-5-54, annex A). Used by conductor and fuse.
#pragma once

#include "core/checks/given.h"

#include <QString>

#include <optional>

namespace ohmwright {

enum class ConductorMaterial { Copper, Aluminium };
template <>
struct EnumWords<ConductorMaterial>
{
    static constexpr std::array words{"copper", "aluminium"};
};

// IEC 60228: class 2 is stranded for fixed laying, class 5 flexible.
enum class ConductorClass { Stranded, Flexible };
template <>
struct EnumWords<ConductorClass>
{
    static constexpr std::array words{"class 2", "class 5"};
};

struct ConductorResistance
{
    Resistance at20;
    bool fromTable = false; // false: from the neighbouring sizes of the table
};

// Of `length` at 20 °C, the most that IEC 60228 (tables 2 and 3, plain wires) allows. A size that
// is not in the table (AWG) takes the greater product of resistance and area of its two neighbours,
// which errs to the high side by up to a tenth. None: beyond the table, or not in it (aluminium of
// class 5). Areas in m².
std::optional<ConductorResistance>
conductorResistance(ConductorMaterial material, ConductorClass strands, Area area, Length length);

// R(θ) = R₂₀·(1 + α₂₀·(θ − 20 °C)); α₂₀ of copper 0.00393 /K (IEC 60028), of aluminium 0.00403 /K
// (IEC 60889).
Resistance atTemperature(Resistance at20, ConductorMaterial material, Temperature temperature);

// k of √(I²t) = k·S, in A·√s/mm² (a unit without a symbol here, so a bare number), for a conductor
// that warms from `start` to `end` without losing heat; IEC 60364-5-54, annex A:
// k = √(Qc·(β + 20 °C)/ρ₂₀ · ln(1 + (θf − θi)/(β + θi))). Zero unless start < end.
double adiabaticK(ConductorMaterial material, Temperature start, Temperature end);

// The formula holds up to 5 s (IEC 60364-4-43, 434.5.2).
inline constexpr Duration kAdiabaticUpTo = seconds(5);

// Least area that stays below `end`: S = √(I²t)/k.
Area leastArea(Current current, Duration time, double k);

constexpr Temperature celsius(double degrees)
{
    return Temperature::fromSi(degrees + 273.15);
}

} // namespace ohmwright
