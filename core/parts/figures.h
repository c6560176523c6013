// SPDX-License-Identifier: GPL-3.0-or-later
// Which of a part's ratings is in force, and why.
//
// All ratings are kept. For a limit the safest value known is used until one is settled: the lowest
// of the upper limits, the highest of the lower ones; papers and plate lead, and nothing measured,
// sold with or heard of raises them. For an actual value what was measured leads, newest first. A
// rating dated before the part was reworked is stale: used only when nothing newer is there, and
// said to be so. Stale papers still hold a limit down until fresh ones are there.
#pragma once

#include "core/records/records.h"

#include <algorithm>
#include <optional>
#include <vector>

namespace ohmwright {

// What exactly is asked for.
struct FigureName
{
    RatedQuantity quantity = RatedQuantity::Voltage;
    RatingKind kind = RatingKind::Limit;
    RatingBasis basis = RatingBasis::Continuous;
    std::optional<CurrentKind> current;
    std::optional<double> seconds = {}; // of a peak; asked for without, any duration answers
    bool operator==(const FigureName &) const = default;
    auto operator<=>(const FigureName &) const = default;
};

FigureName figureOf(const Rating &rating);
// "DC voltage limit", "peak current limit for 10 s", "mass", "lowest voltage".
QString describe(const FigureName &figure);

struct Figure
{
    FigureName name;
    const Rating *inForce = nullptr; // null: not known
    std::vector<const Rating *> all; // every rating for it, the part's own before its type's
    bool clash = false;              // values differ and none is settled
    bool stale = false;              // the one in force is older than the rework
    bool saidUnknown = false;        // someone looked and it is not known
    bool overruled = false;          // one was settled that would raise what the papers limit
    [[nodiscard]] std::optional<Amount> value() const
    {
        return inForce ? inForce->value : std::nullopt;
    }
};

// One sentence: why the one in force is, or that none is. Told apart from choosing it, for the
// checks choose thousands and tell none.
QString whyInForce(const Figure &figure);

// Papers and plate.
bool isPaper(Evidence evidence);

// The figure of a part, from its own ratings and its type's. A limit asked for in DC is never
// answered by one given in AC, nor by one that does not say.
Figure figureFor(const Records &records, const Part &part, const FigureName &name);
Figure figureFor(const Records &records, const PartType &type, const FigureName &name);
// Whether any rating of the part, its own or its type's, is like that: dearer questions need not be
// asked of a part that says nothing.
template <class IsLike>
bool anyRating(const Records &records, const Part &part, IsLike isLike)
{
    return std::ranges::any_of(records.of<Rating>(part.id), isLike) ||
           (part.type && std::ranges::any_of(records.of<Rating>(*part.type), isLike));
}
// Every figure anything is recorded for, in order of the enum.
std::vector<Figure> figuresOf(const Records &records, const Part &part);
std::vector<Figure> figuresOf(const Records &records, const PartType &type);

// The current kind that all circuits the part is connected to share; nothing when they differ or
// there are none.
std::optional<CurrentKind> currentKindOf(const Records &records, const Part &part);
// Whether the figure that a task needs of the part is known. A need says quantity and, if it
// matters, basis; a limit or an actual value answers it. On a part of DC circuits alone no AC
// voltage or current does, nor a limit that does not say which it is; likewise the other way.
bool answersNeed(const Records &records, const Part &part, const TaskNeed &need);

} // namespace ohmwright
