// SPDX-License-Identifier: GPL-3.0-or-later
// What a drive cycle asks of the wheels and of the pack.
//
// Each step of time: v̄ the step's mean speed, a = Δv/Δt, F = R(v̄) + λ·m·a, P = F·v̄ (the form of
// UN R154, annex B7). From the pack P/η and what is on besides; while braking P·η_r comes back, as
// far as the driven axle brakes, the limits allow and the speed is high enough.
#pragma once

#include "core/checks/drive_cycle.h"
#include "core/checks/road_load.h"

namespace ohmwright {

struct Regeneration
{
    bool fitted = false;
    Power limit;           // into the pack, the lowest of what sets it
    Speed fadesBelow;      // full above, in a straight line to nothing at rest; zero: no fading
    double efficiency = 1; // tyre to pack
    double share = 1;      // of the braking that the driven axle may do
};

struct PackSide
{
    double efficiency = 1; // pack to tyre
    Power auxiliaries;     // all the time
    Regeneration regeneration;
};

struct CycleEnergy
{
    Length distance;
    Energy drive;       // at the wheels, steps that pull
    Energy net;         // at the wheels, all steps
    Energy fromPack;    // without anything coming back
    Energy intoPack;    // by regeneration
    Power mostFromPack; // of a step
    Power mostIntoPack; // of a step
};

// `step` is clipped to what is left to each point; 0.1 s and 1 s are usual.
CycleEnergy energyOver(const DriveCycle &cycle, const RoadLoad &load, const PackSide &pack,
                       Duration step);

// From the pack at a steady speed above zero.
Power powerAtSteady(Speed speed, const RoadLoad &load, const PackSide &pack);

} // namespace ohmwright
