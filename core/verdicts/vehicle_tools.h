// SPDX-License-Identifier: GPL-3.0-or-later
// Small things the judges of vehicle_judges.cpp share.
#pragma once

#include "core/verdicts/judges.h"

#include <QLatin1String>

#include <algorithm>
#include <optional>
#include <string_view>
#include <vector>

namespace ohmwright {

// Names of the tables of these records, for Judge::reads.
template <class... R>
std::vector<std::string_view> tablesOf()
{
    return {RecordTraits<R>::table...};
}

// Which thing a check is about, where the pure check says only what kind of thing.
inline Check about(Check check, const QString &subject, const QString &title)
{
    check.subject = subject;
    check.title = title;
    return check;
}

// A choice where a check takes it as a Given.
template <class E, class... R>
Given<E> givenChoice(const BookInputs &inputs, const char *name, const R &...of)
{
    const Chosen<E> choice = inputs.choice<E>(name, of...);
    return {choice.value, choice.origin};
}

// Tells a choice the pure check does not ask for by name but was worked with, so that it can be
// changed in place; where the book is silent, as the assumption it is.
template <class... R>
void tellChoice(Check &check, const BookInputs &inputs, const QString &word, const QString &because,
                const char *name, const R &...of)
{
    CheckInput told;
    told.origin = inputs.originOf(name, of...);
    if (!inputs.has(name, of...))
        told.origin.source = because;
    told.shown = word;
    check.inputs.push_back(std::move(told));
}

// What a check takes from a table unless the book tells another: with the address of that other.
template <class Q, class... R>
Given<Q> toldOr(const BookInputs &inputs, Given<Q> published, const char *name, const R &...of)
{
    const Given<Q> told = inputs.figure<Q>(name, of...);
    if (told.value || inputs.has(name, of...))
        return told;
    published.origin.field = told.origin.field;
    return published;
}

// A figure that a check takes only where the book has something to say on it.
template <class Q, class... R>
std::optional<Given<Q>> figureIfAny(const BookInputs &inputs, const char *name, const R &...of)
{
    return inputs.has(name, of...) ? std::optional(inputs.figure<Q>(name, of...)) : std::nullopt;
}

// Of limits that all hold the lowest; what is not known in `others` is passed over, for it may not
// exist. An unknown `first` stays one.
template <class Q>
Given<Q> lowestOf(Given<Q> first, const std::vector<Given<Q>> &others)
{
    for (const Given<Q> &other : others)
        if (first.value && other.value && *other.value < *first.value)
            first = other;
    return first;
}

// A limit that parts of one role have in common, and whose it is.
template <class Q>
struct LimitOfPart
{
    Given<Q> limit;
    const Part *part = nullptr;
};

// Of several parts of a role the one with the lowest limit: each may be in line with the others.
// Who does not tell it where others do may have a lower one still: that is put into `missing`.
// None where nobody tells it.
template <class Q, class Read>
std::optional<LimitOfPart<Q>> lowestOfParts(const std::vector<const Part *> &parts, Read read,
                                            std::vector<Origin> &missing)
{
    std::optional<LimitOfPart<Q>> lowest;
    std::vector<Origin> silent;
    for (const Part *part : parts) {
        Given<Q> one = read(*part);
        if (!one.value)
            silent.push_back(std::move(one.origin));
        else if (!lowest || *one.value < *lowest->limit.value)
            lowest = LimitOfPart<Q>{std::move(one), part};
    }
    if (lowest)
        missing.insert(missing.end(), silent.begin(), silent.end());
    return lowest;
}

// The peak limit; where there is none the continuous one, which is lower. Not known as the peak.
template <class Q>
Given<Q> peakLimit(const BookInputs &inputs, const Part &part, RatedQuantity quantity,
                   std::optional<CurrentKind> current = {})
{
    const Given<Q> peak =
        inputs.rating<Q>(part, FigureName{quantity, RatingKind::Limit, RatingBasis::Peak, current});
    if (peak.value)
        return peak;
    const Given<Q> continuous = inputs.rating<Q>(
        part, FigureName{quantity, RatingKind::Limit, RatingBasis::Continuous, current});
    return continuous.value ? continuous : peak;
}

// Parts of the build for which a figure of that group is recorded, with them or their type; in key
// order. "flange." is a group.
std::vector<const Part *> partsWithFigures(const Records &records, QLatin1String group);
// Whether one of that group is recorded for the vehicle.
bool vehicleHasFigures(const Records &records, QLatin1String group);

} // namespace ohmwright
