// SPDX-License-Identifier: GPL-3.0-or-later
// The 12 V side: the converter against its loads with their duty, the battery's reserve when the
// converter is off, and each fuse against its loads and its cable.
//
//     Ī = Σ(d·P)/U      t = (Q·s/I)·(Q·s/(I·H))^(k − 1)      I/(F·Iₙ) ≤ 0.75
//
// Sources: any text on circuits; W. Peukert, Elektrotechnische Zeitschrift 20 (1897), for a
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
};

struct LowVoltageFuse
{
    QString name;
    // Indices of what it feeds; all may be on at once. None: it is of the supply, held to its
    // cable alone.
    std::vector<std::size_t> loads;
    Given<Current> rating; // > 0
    Given<Current> cable;  // what the thinnest cable behind it carries for good; > 0
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
    // Only for lead-acid: exponent 1 to 2 and the time the capacity is rated at, 20 h.
    std::optional<Given<double>> peukert;
    Given<Duration> ratedTime; // needed with `peukert` only; > 0
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
