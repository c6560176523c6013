// SPDX-License-Identifier: GPL-3.0-or-later
// Conductors out of a book: of each branch of which a cable is told. The short circuit is judged
// with the fuse.
#include "core/verdicts/branch_conductor.h"
#include "core/verdicts/electrical_checks_of_book.h"
#include "core/verdicts/link_facts.h"

namespace ohmwright {

std::vector<Check> judgeConductorOfBook(const BookInputs &in)
{
    const PackFacts &pack = packFacts(in);
    std::vector<Check> checks;
    for (const Branch &branch : in.records().all<Branch>()) {
        const Circuit *circuit = in.records().find(branch.circuit);
        if (!circuit || !hasConductor(in, branch))
            continue;
        // said to carry nothing for long: there is no load to hold it to
        if (branch.continuousCurrent && branch.continuousCurrent->si() == 0)
            continue;
        ConductorInputs inputs;
        inputs.branch = branch.key;
        inputs.conditions = ampacityConditions(in, branch);
        inputs.table = tableFor(in, branch, inputs.conditions);
        inputs.strands = strandsOf(in, branch);
        inputs.length = runOf(in, branch);
        inputs.continuous = continuousCurrentOf(in, branch);
        inputs.voltage = lowestVoltage(in, *circuit, pack);
        in.hold(inputs.drop);
        Check check = judgeConductor(inputs);
        addToTitle(check, branch.name);
        checks.push_back(std::move(check));
    }
    return checks;
}

} // namespace ohmwright
