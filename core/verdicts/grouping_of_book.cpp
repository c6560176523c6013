// SPDX-License-Identifier: GPL-3.0-or-later
// Grouping out of a book: of the pack's circuit, where modules stand in parallel or the rest
// between two readings is recorded. All modules of the pack's type that are at hand may be used,
// whether they sit in the pack yet or not.
#include "core/checks/grouping.h"
#include "core/verdicts/build_parts.h"
#include "core/verdicts/cell_facts.h"
#include "core/verdicts/electrical_checks_of_book.h"

namespace ohmwright {

namespace {

// Bought and here: one that is still to come was never measured.
bool isAtHand(const Records &records, const Part &part)
{
    return isOfTheBuild(records, part) && part.state >= PartState::InHand;
}

FigureName actual(RatedQuantity quantity)
{
    return {quantity, RatingKind::Actual, RatingBasis::Nominal, std::nullopt};
}

} // namespace

std::vector<Check> judgeGroupingOfBook(const BookInputs &in)
{
    const PackFacts &pack = packFacts(in);
    if (!pack.circuit)
        return {};
    const Circuit &circuit = *pack.circuit;
    const bool inParallel = pack.modulesInParallel.value && *pack.modulesInParallel.value > 1;
    if (!inParallel && !in.has("grouping.rest", circuit))
        return {};
    const Part &first = *pack.modules.front();
    GroupingInputs inputs;
    inputs.pack = circuit.key;
    for (const Part &part : in.records().all<Part>()) {
        const bool sameType =
            first.type ? part.type == first.type : part.kind == PartKind::Module && !part.type;
        if (sameType && part.kind == PartKind::Module && isAtHand(in.records(), part))
            inputs.modules.push_back(
                {part.name, in.rating<Charge>(part, actual(RatedQuantity::Capacity)),
                 in.rating<Resistance>(part, actual(RatedQuantity::InternalResistance)),
                 in.figure<Voltage>("module.lost_voltage", part)});
    }
    inputs.groupsInSeries = pack.modulesInSeries;
    inputs.modulesInGroup = pack.modulesInParallel;
    inputs.cellsInModule = in.rating<double>(first, actual(RatedQuantity::CellsInSeries));
    inputs.rest = in.figure<Duration>("grouping.rest", circuit);
    if (in.has("grouping.difference", circuit))
        inputs.differenceBeforeJoining = in.figure<Voltage>("grouping.difference", circuit);
    inputs.weightOfCapacity =
        in.figureOr(*inputs.weightOfCapacity.value, inputs.weightOfCapacity.origin.source,
                    "grouping.capacity_weight", circuit);
    in.hold(inputs.standsOut);
    in.hold(inputs.offMedian);
    in.hold(inputs.lostInWeek);
    in.hold(inputs.leastRest);
    in.hold(inputs.capacitySpread);
    in.hold(inputs.resistanceSpread);
    return {judgeGrouping(inputs)};
}

} // namespace ohmwright
