// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/verdicts/asked_by_checks.h"

#include "core/parts/life.h"
#include "core/verdicts/input_address.h"

#include <QCoreApplication>

namespace ohmwright {

std::optional<Question> questionBehind(const Records &records, const Check &check,
                                       const CheckInput &input)
{
    if (input.value || !check.unknowns.contains(input.origin.name))
        return std::nullopt;
    const std::optional<InputAddress> at = parseInputAddress(input.origin.field);
    const RatingAddress *rating = at ? std::get_if<RatingAddress>(&*at) : nullptr;
    const Part *part = rating ? records.byKey<Part>(rating->part) : nullptr;
    if (!part || isGone(part->state) || figureFor(records, *part, rating->figure).inForce)
        return std::nullopt;
    Question question;
    question.part = part->id;
    question.figure = rating->figure;
    question.askedBy << QCoreApplication::translate("Questions", "check %1").arg(check.title);
    return question;
}

std::vector<Question> askedByChecks(const Records &records, const std::vector<Check> &checks)
{
    std::vector<Question> asked;
    for (const Check &check : checks)
        for (const CheckInput &input : check.inputs)
            if (std::optional<Question> question = questionBehind(records, check, input))
                asked.push_back(std::move(*question));
    return joined(records, {}, std::move(asked)); // once each, in the order of the others
}

} // namespace ohmwright
