// SPDX-License-Identifier: GPL-3.0-or-later
// Pack: modules of one type in series and parallel; its voltages, sag, heat and usable energy at a
// load, against what it must feed and be fed by.
//
// V = ns·V₁, Q = np·Q₁, R = ns/np·R₁ + R of the connections. At constant power P the current is
// I = (V − √(V² − 4·R·P))/(2·R), the most power V²/(4·R), less where a least voltage or a current
// limit comes before; heat I²·R. Source: a voltage source with an inner resistance, Nilsson and
// Riedel, Electric Circuits. The usable energy is the integral of the voltage under load over the
// charge, closed form between the points of the open-circuit curve.
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

// What motor and inverter draw for seconds, with the pack as empty as it is driven.
struct PackPeak
{
    Given<Power> power;                   // W, 0 or more, at the pack's terminals
    std::optional<Given<Current>> atMost; // A, 0 or more; the inverter takes no more
    Given<Current> moduleLimit;           // A, above 0; of one module, for as long as this lasts
    // s, 0 or more; none: the limit holds for any time.
    std::optional<Given<Duration>> lasts = {};
    // A module's limit for less time than this, which only proves too much; and what is asked for
    // when the current lies between the two.
    std::optional<Given<Current>> shorter = {};
    Given<Current> longer = {};
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
    std::optional<PackPeak> peak;      // none: nothing is known to drive from it
    std::optional<Given<Energy>> neededEnergy; // J; what a drive needs; none: nothing asked
    std::optional<Given<Mass>> moduleMass;     // kg; only told
    std::vector<VoltageWindow> windows;
};

// Id "pack".
Check judgePack(const PackInputs &inputs);

// A source with an inner resistance: what flows, or none when it cannot give that power.
std::optional<Current> currentAtPower(Voltage openCircuit, Resistance inner, Power power);

// The most a pack gives, and what sets it: beyond half its voltage nothing more comes out
// (V²/(4·R), the matched load); a unit's least voltage or the cells' floor comes before, P = U·(V −
// U)/R, and what the modules may carry, P = I·(V − I·R).
struct MostPower
{
    enum class Limit { MatchedLoad, LeastVoltage, ModuleCurrent };

    Power power;
    Current current;
    Limit by = Limit::MatchedLoad;
};
// Without a resistance only a current limits it: none if there is none of that either. Zero where
// the pack's voltage is below `least` at no load.
std::optional<MostPower> mostPower(Voltage openCircuit, Resistance inner, Voltage least,
                                   const std::optional<Current> &atMost);

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
