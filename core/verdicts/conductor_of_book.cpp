// SPDX-License-Identifier: GPL-3.0-or-later
// Conductors out of a book: of each branch of which a cable is told; of 12 V ones the drop at the
// peak as well, for what starts on them is what fails first. The short circuit is judged with the
// fuse.
#include "core/verdicts/branch_conductor.h"
#include "core/verdicts/electrical_checks_of_book.h"
#include "core/verdicts/link_facts.h"

#include <QCoreApplication>

namespace ohmwright {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("ConductorOfBook", text);
}

} // namespace

std::vector<Check> judgeConductorOfBook(const BookInputs &in)
{
    const PackFacts &pack = packFacts(in);
    std::vector<Check> checks;
    for (const Branch &branch : in.records().all<Branch>()) {
        const Circuit *circuit = in.records().find(branch.circuit);
        if (!circuit || !in.isAsked(branch.key) || !hasConductor(in, branch))
            continue;
        // said to carry nothing for long: there is no load to hold it to
        if (continuousCurrentOf(in, branch).value == Current())
            continue;
        ConductorInputs inputs;
        inputs.branch = branch.key;
        inputs.conditions = ampacityConditions(in, branch);
        inputs.table = tableFor(in, branch, inputs.conditions);
        inputs.strands = strandsOf(in, branch);
        inputs.length = runOf(in, branch);
        inputs.continuous = continuousCurrentOf(in, branch);
        inputs.voltage = lowestVoltage(in, *circuit, pack);
        if (circuit->kind == CircuitKind::LowVoltage && branch.peakCurrent)
            inputs.peak = in.field<Current>(branch, &Branch::peakCurrent, "peak_current",
                                            tr("peak current of %1").arg(branch.name),
                                            Evidence::Assumed, tr("entered with the branch"));
        in.hold(inputs.drop);
        in.hold(inputs.peakDrop);
        Check check = judgeConductor(inputs);
        addToTitle(check, branch.name);
        checks.push_back(std::move(check));
    }
    return checks;
}

} // namespace ohmwright
