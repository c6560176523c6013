// SPDX-License-Identifier: GPL-3.0-or-later
// Isolation: a test record of the live-pack voltmeter method against what UN R100 asks.
//
// With the pack as the source: V_b across it, V₁ and V₂ from its negative and positive pole to the
// chassis, then V′ on the side that read more, with a known resistor R₀ across that side:
// R_i = R₀·V_b·(1/V′ − 1/V₁). Source: UN R100, annex "isolation resistance measurement" 1.2 (rev.
// 2: annex 4B/5A); voltmeter of at least 10 MΩ, pack at its nominal voltage or above. Least: 100 Ω
// a volt for a DC bus apart from AC, 500 Ω a volt for AC or joined buses, 100 Ω a volt for joined
// ones whose AC side is doubly insulated or mechanically protected (5.1.3.1, 5.1.3.2). FMVSS 305
// writes V₁ + V₂ for V_b; where the two disagree about the verdict, the record is doubted.
#pragma once

#include "core/checks/given.h"
#include "core/checks/recorded_test.h"

namespace ohmwright {

struct IsolationInputs
{
    QString circuit; // key
    RecordedTest record;
    CurrentKind current = CurrentKind::Dc;
    bool joinedWithAc = false;        // galvanically: through an inverter that does not isolate
    bool acProtected = false;         // double insulation, or mechanically robust protection
    Given<Voltage> workingVoltage;    // V, above 0, the highest of the circuit
    std::vector<Origin> missing;      // what may lift it higher and nobody knows: unknown inputs
    Given<Voltage> nominalVoltage;    // V, above 0, of the pack
    Given<Voltage> packVoltage;       // V_b, V, above 0
    Given<Voltage> negativeToChassis; // V, 0 or more, without its sign
    Given<Voltage> positiveToChassis; // V, 0 or more
    Given<Resistance> knownResistor;  // R₀, Ω, above 0
    // V′, V, above 0, of the side that read more. Reads the meter zero, its smallest step is meant.
    Given<Voltage> withResistor;
    Given<Resistance> voltmeter;               // Ω, inner
    std::optional<Given<Resistance>> ownLimit; // of the record, held to beside the rule's; Ω

    // A volt of the working voltage, in ohms.
    Threshold<double> leastDc{QStringLiteral("isolation.dc"),
                              100,
                              QStringLiteral("UN R100, 5.1.3.1: 100 Ω/V"),
                              Tighter::Higher,
                              std::nullopt,
                              {}};
    Threshold<double> leastAc{QStringLiteral("isolation.ac"),
                              500,
                              QStringLiteral("UN R100, 5.1.3: 500 Ω/V"),
                              Tighter::Higher,
                              std::nullopt,
                              {}};
};

// Id "isolation".
Check judgeIsolation(const IsolationInputs &inputs);

} // namespace ohmwright
