// SPDX-License-Identifier: GPL-3.0-or-later
// Fuse: does it carry the load, open before the cable burns, and break what the pack can drive?
//
// Load and cable: I_b ≤ I_n ≤ I_z and I₂ ≤ 1.45·I_z (IEC 60364-4-43, 433.1), with I₂ the current at
// which the fuse opens within its conventional time, held to it where it is told. A partial-range
// fuse opens on short circuits alone, so that something else has to keep an overload off the cable,
// or nothing can cause one (433.3). Short circuit: S ≥ √(I²t)/k up to 5 s
// (434.5.2; k by 5-54, annex A). Prospective current: pack voltage over the resistance of the loop,
// without the inductance, which only delays it. Clearing times are read off the maker's curve at
// that current and come in as inputs. That a load should use only part of the rating is common
// practice (70 % to 80 %), no published source, so it is an input marked as an assumption.
#pragma once

#include "core/checks/chosen.h"
#include "core/checks/circuit_ratings.h"
#include "core/checks/conductor_data.h"

namespace ohmwright {

// A short circuit somewhere on the branch. The strongest is a full, warm pack and a fault at the
// fuse; the weakest an empty, cold pack and a fault at the far end: it may take the fuse longest.
struct FaultCase
{
    QString name;
    Given<Voltage> voltage;   // V, above 0, open circuit
    Given<Resistance> loop;   // Ω, above 0: pack, cable, joints, all of it
    Given<Duration> clearing; // s, above 0, of the fuse at the current these give
};

// A load above the continuous one, and the maker's least melting time at it.
struct FusePeak
{
    QString name;
    Given<Current> current;  // A, above 0; only told
    Given<Duration> lasts;   // s, 0 or more
    Given<Duration> melting; // s, above 0, at that current
};

struct FuseInputs
{
    QString branch; // key
    CurrentKind current = CurrentKind::Dc;
    Given<Current> rating;                       // A, above 0
    std::vector<VoltageLimit> voltage;           // rated; an AC rating never answers for DC
    Given<Current> breaking;                     // A, above 0, at that kind of voltage
    std::optional<Given<Current>> leastBreaking; // A; of partial-range fuses; none: full range
    bool isPartialRange = false;                 // told to be
    bool cannotBeOverloaded = false;             // by what the branch feeds, as told
    std::optional<Given<Current>> conventional;  // A, above 0; I₂, none: not told
    Given<double> temperatureFactor;             // above 0, of the rating left at the fuse's place
    Given<double> loadShare =
        given(0.75, QStringLiteral("share of the rating for a steady load"), Evidence::Assumed,
              QStringLiteral("common practice (70 % to 80 %), no published "
                             "source"));
    Given<Voltage> worstVoltage; // V, above 0, of the circuit
    // What may drive it higher and nobody knows: unknown inputs.
    std::vector<Origin> missing;
    Given<Current> continuous; // A, 0 or more
    std::vector<FusePeak> peaks;
    std::vector<FaultCase> faults; // at least one; the strongest and the weakest

    // The cable behind it, the thinnest piece of the branch.
    Given<Current> cableCapacity; // A, above 0, corrected for its place
    Chosen<ConductorMaterial> material;
    Given<Area> area;              // m², above 0
    Given<Temperature> insulation; // K, continuously
    Given<Temperature> shortTime;  // K, for a few seconds

    Threshold<Duration> clearing{QStringLiteral("fuse.clearing"),
                                 kAdiabaticUpTo,
                                 QStringLiteral("IEC 60364-4-43, 434.5.2"),
                                 Tighter::Lower,
                                 std::nullopt,
                                 {}};
};

// Id "fuse".
Check judgeFuse(const FuseInputs &inputs);

// The rating that a steady load needs: I/(share · temperature factor).
Current leastRating(Current load, double share, double temperatureFactor);

} // namespace ohmwright
