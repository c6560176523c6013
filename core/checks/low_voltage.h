// SPDX-License-Identifier: GPL-3.0-or-later
// The 12 V side: the converter against all its loads at their highest at once, the battery's
// reserve when the converter is off with their duty, and each fuse against its loads, its cable and
// the battery's short circuit.
//
//     Î = ΣP̂/U      t = s·H·(Q/(I·H))^k, I = Σ(d·P)/U      I/(F·Iₙ) ≤ 0.75, Î/(F·Iₙ) ≤ 1
//     I_k = U_b/R
//
// Sources: Ohm's law; W. Peukert, Elektrotechnische Zeitschrift 20 (1897), for a
// lead-acid battery's capacity Q at the H-hour rate and another current; fuse makers' guides for
// the share of a fuse that a lasting load may take (70 to 80 %) and the ambient's factor F.
#pragma once

#include "core/checks/given.h"

#include <optional>
#include <vector>

namespace ohmwright {

struct LowVoltageLoad
{
    QString name;
    Given<Power> power;     // while on; 0 or more
    Given<double> duty;     // share of the time it is on while driving, 0 to 1
    bool inReserve = false; // must work on with the converter off: hazard lights, brake booster, …
    std::optional<Given<Power>> peak = {}; // for moments, starting; none: it has none
};

struct LowVoltageFuse
{
    QString name;
    // Indices of what it feeds; all may be on at once. None: it is of the supply, held to its
    // cable alone.
    std::vector<std::size_t> loads;
    Given<Current> rating;        // > 0
    Given<Current> cable;         // what the thinnest cable behind it carries for good; > 0
    Given<Current> breaking = {}; // the most it breaks at this voltage, > 0
    // Of battery and all the wire up to the fuse and back, > 0; none: the battery's short circuit
    // is taken to reach it whole.
    std::optional<Given<Resistance>> loop = {};
};

struct LowVoltageInputs
{
    QString circuit; // key
    std::vector<LowVoltageLoad> loads;
    std::vector<LowVoltageFuse> fuses; // every load stands behind one
    Given<Voltage> systemVoltage;      // as the converter holds it, 13.8 V; > 0
    Given<Current> converterCurrent;   // continuous, at the temperature of its place; > 0
    Given<Voltage> batteryVoltage;     // resting, 12 V; > 0
    Given<Charge> batteryCapacity;     // at the rate below; > 0
    Given<double> usableShare;         // of it that may be drawn, > 0 to 1
    // Peukert's exponent, 1 to 2; 1 for what gives its capacity at any current, as lithium nearly
    // does. With it the time the capacity is rated at, 20 h; not needed for 1.
    Given<double> peukert =
        given(1.2, QStringLiteral("Peukert's exponent of the battery"), Evidence::Assumed,
              QStringLiteral("flooded lead-acid, 1.1 to 1.3: common practice, "
                             "no published source"));
    Given<Duration> ratedTime; // > 0
    // The battery's short circuit, told or from its inner resistance. Neither: what the fuses break
    // is not judged, nor asked for, but where the loop to one of them is told.
    std::optional<Given<Current>> shortCircuit;       // > 0
    std::optional<Given<Resistance>> innerResistance; // > 0
    // By which a fuse's rating shrinks where it is warm; only where it is. > 0 to 1.2.
    std::optional<Given<double>> fuseTemperatureFactor;

    Threshold<double> fuseShare{
        QStringLiteral("low_voltage.fuse_share"),
        0.75,
        QStringLiteral("common practice, no published source; fuse makers' guides have 70 to 80 %"),
        Tighter::Lower,
        std::nullopt,
        {}};
    Threshold<Duration> reserve{QStringLiteral("low_voltage.reserve"),
                                seconds(1800),
                                QStringLiteral("common practice, no published source"),
                                Tighter::Higher,
                                std::nullopt,
                                {}};
};

// Time to draw `usable` at `current`: without Peukert's exponent at any current alike; with it, of
// a battery whose whole capacity is rated over `ratedTime`.
Duration reserveTime(Charge capacity, double usable, Current current, double peukert,
                     Duration ratedTime);

Check judgeLowVoltage(const LowVoltageInputs &inputs);

} // namespace ohmwright
