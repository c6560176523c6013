// SPDX-License-Identifier: GPL-3.0-or-later
// What drives a milestone, as it is told to a person: what is most often on the chain that sets its
// day, and a failed test, with all that is then done again, as one.
#pragma once

#include "core/forecast/forecast.h"

namespace ohmwright::forecast {

struct Drives
{
    std::size_t activity = 0; // of a failed test: the test
    double share = 0;         // of the samples that are followed back
    bool isAgain = false;     // the test fails, and what is done again drives the day
    bool isLinked = true;     // false: the milestone does not wait on it; hands, a bay or a tool do
    QString name;             // as shown
};

inline constexpr std::size_t kDriversShown = 12;

// `milestone`: its place among the plan's. Most often first; no milestones; at most so many, each
// with at least that share.
std::vector<Drives> whatDrives(const WorkPlan &plan, const Forecast &forecast,
                               std::size_t milestone, std::size_t most, double leastShare = 0.05);

} // namespace ohmwright::forecast
