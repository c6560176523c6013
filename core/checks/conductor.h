// SPDX-License-Identifier: GPL-3.0-or-later
// Conductor: does a cable carry its current at the place it lies, without dropping too much
// voltage, and survive a short circuit until the fuse opens?
//
// Resistance: IEC 60228; temperature: R = R₂₀·(1 + α·(θ − 20 °C)); drop U = I·R; capacity from the
// table named; short circuit S ≥ √(I²t)/k (IEC 60364-4-43, 434.5.2 and 5-54, annex A), up to 5 s.
#pragma once

#include "core/checks/ampacity.h"

namespace ohmwright {

struct ShortCircuit
{
    Given<Current> current;        // A, above 0, through this conductor
    Given<Duration> clearing;      // s, above 0, until the fuse has opened
    Given<Temperature> insulation; // K the insulation stands for a few seconds
};

struct ConductorInputs
{
    QString branch; // key
    AmpacityConditions conditions;
    AmpacityTable table;
    Chosen<ConductorClass> strands;
    Given<Length> length;                     // m, 0 or more, of conductor in all: there and back
    Given<Current> continuous;                // A, 0 or more
    Given<Voltage> voltage;                   // V, above 0, of the circuit at its lowest
    std::optional<ShortCircuit> shortCircuit; // none: judged with the fuse
    Threshold<double> drop{QStringLiteral("conductor.drop"),
                           0.03,
                           QStringLiteral("common practice, no published source"),
                           Tighter::Lower,
                           std::nullopt,
                           {}};
    // Of moments, where the load starts on it: pumps, fans, contactors. None: it has none.
    std::optional<Given<Current>> peak = {}; // A, 0 or more
    Threshold<double> peakDrop{
        QStringLiteral("conductor.peak_drop"),
        0.10,
        QStringLiteral("common practice, no published source; IEC 60364-5-52 allows more "
                       "while motors start, and names no figure"),
        Tighter::Lower,
        std::nullopt,
        {}};
};

// Id "conductor".
Check judgeConductor(const ConductorInputs &inputs);

} // namespace ohmwright
