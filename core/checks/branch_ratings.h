// SPDX-License-Identifier: GPL-3.0-or-later
// Branch ratings: does every part a branch's current runs through, and every part inside it, carry
// that current for as long as it lasts?
//
// A peak limit holds for its duration and for anything shorter. A demand that lasts longer than
// every peak limit is held to the continuous one. Where no limit answers it is unknown, unless the
// demand is above a peak limit it outlasts: what a part takes never rises with the time. Source:
// common practice, no published source. How often a peak may return is not in it: its mean square
// belongs into the continuous demand.
#pragma once

#include "core/checks/assembly.h"
#include "core/checks/given.h"

#include <optional>
#include <vector>

namespace ohmwright {

struct CurrentDemand
{
    QString name;                         // "acceleration"
    Given<Current> current;               // A, 0 or more; rms
    std::optional<Given<Duration>> lasts; // s, above 0; none: continuous
};

// A part's limit. One whose kind is not stated answers for both: conductors warm by the rms.
struct CurrentLimit
{
    Given<Current> current; // A, above 0
    std::optional<CurrentKind> kind;
    std::optional<Given<Duration>> lasts; // s, above 0; none: continuous
};

struct BranchRatingsInputs
{
    QString branch; // key
    QString name;   // "motor feed"
    CurrentKind current = CurrentKind::Dc;
    std::vector<CurrentDemand> demands;
    std::vector<Assembly<CurrentLimit>> parts;
};

// Id "branch_ratings". Comparisons are per part and demand, worst first.
Check judgeBranchRatings(const BranchRatingsInputs &inputs);

} // namespace ohmwright
