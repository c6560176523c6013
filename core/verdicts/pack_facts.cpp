// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/verdicts/pack_facts.h"

#include "core/verdicts/build_parts.h"

namespace ohmwright {

PackFacts packFacts(const BookInputs &inputs)
{
    PackFacts facts;
    for (const Circuit &circuit : inputs.records().all<Circuit>()) {
        if (circuit.kind != CircuitKind::Traction)
            continue;
        facts.modules = modulesOn(inputs.records(), circuit);
        if (!facts.modules.empty()) {
            facts.circuit = &circuit;
            break;
        }
    }
    return facts;
}

} // namespace ohmwright
