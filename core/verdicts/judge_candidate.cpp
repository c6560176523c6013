// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/verdicts/judge_candidate.h"

#include "core/verdicts/electrical_checks_of_book.h"

namespace ohmwright {

std::optional<Check> judgeCandidate(const BookInputs &in, const Circuit &circuit,
                                    const QString &name, const std::vector<Rating> &ratings)
{
    Assembly<VoltageLimit> candidate;
    candidate.name = name;
    for (const Rating &rating : ratings) {
        if (rating.quantity != RatedQuantity::Voltage || rating.kind != RatingKind::Limit ||
            rating.basis != RatingBasis::Continuous || !rating.value)
            continue;
        VoltageLimit limit;
        limit.voltage = given(Voltage::fromSi(rating.value->si()), describe(figureOf(rating)),
                              rating.evidence, rating.source);
        limit.kind = rating.current;
        candidate.limits.push_back(limit);
    }
    if (candidate.limits.empty())
        return std::nullopt;
    CircuitRatingsInputs inputs = circuitRatingsInputs(in, circuit);
    inputs.parts = {candidate};
    const Check check = judgeCircuitRatings(inputs);
    if (check.comparisons.empty())
        return std::nullopt;
    return check;
}

} // namespace ohmwright
