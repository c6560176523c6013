// SPDX-License-Identifier: GPL-3.0-or-later
// What a bolt carries at its end: in tension, in shear, in both, and what sheet holds it.
//
//     F_v = a_v·f_ub·A_s/γ      F_t = 0.9·f_ub·A_s/γ      γ = 1.25
//     F_v,Ed/F_v + F_t,Ed/(1.4·F_t) ≤ 1      B_p = 0.6·π·d_m·t·f_u/γ      F_b = 2.5·d·t·f_u/γ
//
// Sources: EN 1993-1-8, table 3.4 (the shear plane in the thread; a_v 0.6 for class 8.8, 0.5 for
// 10.9, taken for 12.9 too, which the standard leaves out); ISO 898-1 for classes and stress areas.
#pragma once

#include "core/checks/given.h"

#include <array>
#include <numbers>

namespace ohmwright {

enum class BoltSize { M6, M8, M10, M12, M14, M16, M18, M20 };
template <>
struct EnumWords<BoltSize>
{
    static constexpr std::array words{"M6", "M8", "M10", "M12", "M14", "M16", "M18", "M20"};
};
enum class BoltClass { Class88, Class109, Class129 };
template <>
struct EnumWords<BoltClass>
{
    static constexpr std::array words{"8.8", "10.9", "12.9"};
};

inline constexpr double kBoltFactor = 1.25; // γ_M2

// Nominal, of the thread.
constexpr Length diameterOf(BoltSize size)
{
    constexpr std::array<double, 8> kDiameter{6e-3, 8e-3, 10e-3, 12e-3, 14e-3, 16e-3, 18e-3, 20e-3};
    return metres(kDiameter[static_cast<std::size_t>(size)]);
}

// Of the coarse thread, ISO 261.
constexpr Length pitchOf(BoltSize size)
{
    constexpr std::array<double, 8> kPitch{1e-3, 1.25e-3, 1.5e-3, 1.75e-3,
                                           2e-3, 2e-3,    2.5e-3, 2.5e-3};
    return metres(kPitch[static_cast<std::size_t>(size)]);
}

// A_s = π/4·(d − 0.9382·P)².
constexpr Area stressArea(Length diameter, Length pitch)
{
    const Length across = diameter - pitch * 0.9382;
    return across * across * (std::numbers::pi / 4);
}

constexpr Area stressAreaOf(BoltSize size)
{
    return stressArea(diameterOf(size), pitchOf(size));
}

// Nominal tensile strength.
constexpr Pressure tensileStrengthOf(BoltClass grade)
{
    switch (grade) {
    case BoltClass::Class88:
        return Pressure::fromSi(800e6);
    case BoltClass::Class109:
        return Pressure::fromSi(1000e6);
    case BoltClass::Class129:
        return Pressure::fromSi(1200e6);
    }
    return {};
}

// a_v where the thread stands in the joint: of the tensile strength, what it bears in shear.
constexpr double shearShareOf(BoltClass grade)
{
    return grade == BoltClass::Class88 ? 0.6 : 0.5;
}

constexpr Force shearResistanceOf(BoltSize size, BoltClass grade)
{
    return tensileStrengthOf(grade) * stressAreaOf(size) * (shearShareOf(grade) / kBoltFactor);
}

constexpr Force tensionResistanceOf(BoltSize size, BoltClass grade)
{
    return tensileStrengthOf(grade) * stressAreaOf(size) * (0.9 / kBoltFactor);
}

// Of sheet under a head, washer or spreader of this diameter.
constexpr Force punchingResistanceOf(Length diameter, Length sheet, Pressure strength)
{
    return diameter * sheet * strength * (0.6 * std::numbers::pi / kBoltFactor);
}

// Of sheet at a bolt's hole, at best: at least three diameters from edges and neighbours.
constexpr Force bearingResistanceOf(BoltSize size, Length sheet, Pressure strength)
{
    return diameterOf(size) * sheet * strength * (2.5 / kBoltFactor);
}

} // namespace ohmwright
