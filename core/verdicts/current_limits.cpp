// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/verdicts/current_limits.h"

#include "core/checks/worksheet.h"
#include "core/verdicts/derived.h"

#include <QCoreApplication>

#include <algorithm>

namespace ohmwright {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("CurrentLimits", text);
}

HeldForTime heldForOf(const BookInputs &in, const Part &part, CurrentKind current,
                      const std::optional<Duration> &lasts)
{
    HeldForTime held;
    const auto nameOf = [current](RatingBasis basis) {
        return FigureName{RatedQuantity::Current, RatingKind::Limit, basis, current};
    };
    const FigureName peakName = nameOf(RatingBasis::Peak);
    held.limit = in.rating<Current>(part, nameOf(RatingBasis::Continuous));
    for (const CurrentLimit &peak : peakCurrentLimits(in, part, current)) {
        if (!peak.current.value)
            continue;
        held.isByTime = true;
        if (lasts && peak.lasts && peak.lasts->value && *lasts <= *peak.lasts->value) {
            if (!held.limit.value || *held.limit.value < *peak.current.value)
                held.limit = peak.current;
        } else if (!held.shorter || *peak.current.value < *held.shorter->value) {
            held.shorter = peak.current;
        }
    }
    if (lasts)
        held.longer.origin = called(
            tr("%1 of %2 for at least %3").arg(describe(peakName), part.name, show(*lasts, u"s")),
            {},
            print(RatingAddress{part.key, peakName,
                                Amount::fromSi(lasts->si(), *Unit::fromSymbol(u"s"))}));
    if (!held.limit.value && !held.isByTime)
        held.limit.origin = in.rating<Current>(part, peakName).origin;
    else if (!held.limit.value && lasts)
        held.limit.origin = held.longer.origin;
    return held;
}

} // namespace

bool tellsCurrentLimit(const Rating &rating)
{
    return rating.quantity == RatedQuantity::Current && rating.kind == RatingKind::Limit;
}

std::vector<CurrentLimit> peakCurrentLimits(const BookInputs &in, const Part &part,
                                            CurrentKind current)
{
    std::vector<CurrentLimit> limits;
    if (!anyRating(in.records(), part, [](const Rating &rating) {
            return tellsCurrentLimit(rating) && rating.basis == RatingBasis::Peak;
        }))
        return limits;
    for (const Figure &figure : figuresOf(in.records(), part)) {
        const FigureName &name = figure.name;
        if (!figure.inForce || !tellsCurrentLimit(*figure.inForce) ||
            name.basis != RatingBasis::Peak || name.current.value_or(current) != current)
            continue;
        const Rating &rating = *figure.inForce;
        Given<Current> limit = in.rating<Current>(part, rating);
        limit.origin.stale = figure.stale;
        limit.origin.clash = figure.clash;
        const Given<Duration> lasts = in.durationOf(
            part, rating, tr("duration of the peak current limit of %1").arg(part.name));
        limits.push_back({limit, rating.current, lasts});
    }
    return limits;
}

HeldForTime heldFor(const BookInputs &in, const std::vector<const Part *> &parts,
                    CurrentKind current, const std::optional<Duration> &lasts,
                    const QString &whatFor)
{
    HeldForTime least;
    least.limit = notKnown<Current>(whatFor);
    for (const Part *part : parts) {
        HeldForTime one = heldForOf(in, *part, current, lasts);
        const bool isLess =
            part == parts.front() || !one.limit.value || *one.limit.value < *least.limit.value;
        if (one.shorter && (!least.shorter || *one.shorter->value < *least.shorter->value)) {
            least.shorter = one.shorter;
            least.longer = one.longer;
        }
        least.isByTime = least.isByTime || one.isByTime;
        if (isLess)
            least.limit = std::move(one.limit);
        if (!least.limit.value)
            break;
    }
    return least;
}

} // namespace ohmwright
