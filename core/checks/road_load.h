// SPDX-License-Identifier: GPL-3.0-or-later
// RoadLoad: what holds a vehicle back.
//
//     F = f0 + f1·v + f2·v² + m·g·sin θ           (as a coast-down gives it; UN R154, annex B4)
//     f0 = µ·m·g·cos θ, f1 = 0, f2 = ½·ρ·Cd·A     (from figures; any text on vehicle dynamics)
//     F + λ·m·a                                   (to change speed; λ stands for what turns)
#pragma once

#include "core/checks/dimensions.h"

namespace ohmwright {

// 3rd CGPM (1901).
inline constexpr Acceleration kStandardGravity = Acceleration::fromSi(9.80665);
// Dry air at 20 °C and 1013 hPa, rounded.
inline constexpr Density kAirDensity = Density::fromSi(1.2);

struct RoadLoad
{
    Mass mass;
    Force rolling;             // f0, in motion
    ForcePerSpeed linear;      // f1
    ForcePerSpeedSquared drag; // f2
    double rotating = 1.0;     // λ, 1 or more
    double grade = 0.0;        // rise over run: 0.12 is 12 %
    Acceleration gravity = kStandardGravity;

    [[nodiscard]] Force climbing() const;          // m·g·sin θ
    [[nodiscard]] Force steady(Speed speed) const; // rolling counts only in motion
    [[nodiscard]] Force during(Speed speed, Acceleration change) const
    {
        return steady(speed) + mass * rotating * change;
    }
    // The same vehicle on another grade; a coast-down's f0 is taken with cos θ too.
    [[nodiscard]] RoadLoad onGrade(double other) const;
};

struct RoadLoadFigures
{
    Mass mass;
    double rollingCoefficient = 0; // µ
    double dragCoefficient = 0;    // Cd
    Area frontalArea;
    Density air = kAirDensity;
    double rotating = 1.0;
    Acceleration gravity = kStandardGravity;
};
RoadLoad roadLoadOf(const RoadLoadFigures &figures); // on the level

} // namespace ohmwright
