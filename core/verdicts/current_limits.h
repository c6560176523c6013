// SPDX-License-Identifier: GPL-3.0-or-later
// The currents a part takes, each for as long as it takes it: what a continuous limit alone or the
// one peak in force would hide.
#pragma once

// first: g++ 12 takes its enumerators for shadows of the quantities' types
#include "core/checks/branch_ratings.h"
#include "core/verdicts/book_inputs.h"

#include <vector>

namespace ohmwright {

// Whether the rating is one of a current the part takes.
bool tellsCurrentLimit(const Rating &rating);

// Peaks stand apart by their duration, each as figuresOf() has it in force. One of the other kind
// of current does not answer; of one whose duration is not told `lasts` has no value.
std::vector<CurrentLimit> peakCurrentLimits(const BookInputs &in, const Part &part,
                                            CurrentKind current);

// Held to a current for some time.
struct HeldForTime
{
    Given<Current> limit; // the highest of those that hold as long, the continuous one with them
    // The lowest of those that end before, or of which that is not known; and what would have to be
    // known to allow a current between the two.
    std::optional<Given<Current>> shorter;
    Given<Current> longer;
    bool isByTime = false; // whether it matters how long
};
// Of several parts alike the least; not known, and named, where one of them tells none. Without
// `lasts` only the continuous limits hold as long.
HeldForTime heldFor(const BookInputs &in, const std::vector<const Part *> &parts,
                    CurrentKind current, const std::optional<Duration> &lasts,
                    const QString &whatFor);

} // namespace ohmwright
