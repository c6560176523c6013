// SPDX-License-Identifier: GPL-3.0-or-later
// Pack: modules of one type in series and parallel; its voltages, sag, heat and usable energy at a
// load, against what it must feed and be fed by.
//
// V = ns·V₁, Q = np·Q₁, R = ns/np·R₁ + R of the connections. At constant power P the current is
// I = (V − √(V² − 4·R·P))/(2·R), the most power V²/(4·R); heat I²·R. Source: a voltage source with
// an inner resistance, any text on circuits. The usable energy is the integral of the voltage under
// load over the charge, closed form between the points of the open-circuit curve.
#pragma once

#include "core/checks/curve.h"
#include "core/checks/given.h"

#include <optional>
#include <vector>

namespace ohmwright {

// What a unit on the pack takes (a load: inverter, converter) or reaches (a charger).
struct VoltageWindow
{
    QString name;         // "inverter"
    Given<Voltage> least; // V, 0 or more
    Given<Voltage> most;  // V, 0 or more
    bool isCharger = false;
};

struct PackInputs
{
    QString pack;                         // key
    Given<double> modulesInSeries;        // 1 or more
    Given<double> modulesInParallel;      // 1 or more
    Given<double> cellsInSeriesPerModule; // 1 or more
    // Of one cell, V against state of charge from 0 to 1; not falling. Empty: not known.
    Curve<double, Voltage> openCircuit;
    Origin openCircuitFrom;
    Given<Charge> moduleCapacity;       // C, above 0; of the weakest module
    Given<Resistance> moduleResistance; // Ω, 0 or more; of the worst, at the coldest that counts
    // Ω, 0 or more, of all busbars, joints and switches in line; none: left out, and it is said.
    std::optional<Given<Resistance>> connections;
    Given<double> highestCharge;       // state of charge, 0 to 1, where a drive starts
    Given<double> lowestCharge;        // state of charge, 0 to 1, where it must end
    Given<Voltage> cellFloor;          // V a cell under load below which the load is cut off
    Given<Power> load;                 // W, above 0; steady, at the pack's terminals
    Given<Current> moduleCurrentLimit; // A, above 0; of one module, for a load as long as this
    std::optional<Given<Energy>> neededEnergy; // J; what a drive needs; none: nothing asked
    std::optional<Given<Mass>> moduleMass;     // kg; only told
    std::vector<VoltageWindow> windows;
};

// Id "pack".
Check judgePack(const PackInputs &inputs);

// A source with an inner resistance: what flows, or none when it cannot give that power.
std::optional<Current> currentAtPower(Voltage openCircuit, Resistance inner, Power power);

struct UsableEnergy
{
    Energy atTerminals;      // what the load gets
    double endsAtCharge = 1; // state of charge where it ends
    bool cutOff = false;     // by the floor or the power, before the lowest state of charge
};

// From `highest` down to `lowest` at constant power, ending early where the voltage under load
// would fall below `floor` or the power cannot be given. `openCircuit` is the pack's, `charge` from
// full to empty.
UsableEnergy usableEnergy(const Curve<double, Voltage> &openCircuit, Charge charge,
                          Resistance inner, Power power, Voltage floor, double highest,
                          double lowest);

} // namespace ohmwright
