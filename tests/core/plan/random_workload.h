// SPDX-License-Identifier: GPL-3.0-or-later
// Workloads made by chance, for the tests of levelling.
#pragma once

#include "core/plan/levelling.h"
#include "tests/support/chance.h"

#include <algorithm>
#include <cstddef>
#include <numeric>
#include <utility>
#include <vector>

namespace ohmwright::plan::testing {

// A week or so of sittings, some with helpers, now and then one without hands, sometimes ones
// before that do not come again, and seldom none that do.
inline Timeline randomTimeline(Chance &chance, int resources)
{
    Timeline timeline;
    const int profiles = chance.between(1, 4);
    for (int p = 0; p < profiles; ++p) {
        std::vector<int> capacity(static_cast<std::size_t>(resources));
        for (int &amount : capacity)
            amount = chance.oneIn(6) ? 0 : chance.between(1, 3);
        timeline.profiles.push_back(capacity);
    }
    // Everything is there at least once a week, so that plans mostly end.
    timeline.profiles.emplace_back(resources, 3);
    const auto sitting = [&](int day, int profile) {
        const int slots = chance.between(1, 12);
        for (int i = 0; i < slots; ++i)
            timeline.line.push_back({day, profile, chance.oneIn(10)});
    };
    int day = 0;
    for (int i = chance.oneIn(3) ? chance.between(1, 4) : 0; i > 0;
         --i, day += chance.between(0, 9))
        sitting(day, chance.below(profiles));
    day += timeline.line.empty() ? 0 : 1;
    timeline.repeatFrom = timeline.line.size();
    const int first = day;
    for (int i = chance.between(1, 4); i > 0; --i) {
        sitting(day, chance.below(profiles));
        day += chance.between(0, 3);
    }
    sitting(day, profiles);
    timeline.repeatDays = day - first + chance.between(1, 4);
    if (chance.oneIn(20))
        timeline.repeatDays = 0;
    return timeline;
}

inline Workload randomWorkload(Chance &chance)
{
    const int resources = chance.oneIn(5) ? chance.between(20, 60) : chance.between(1, 6);
    Workload workload;
    workload.timeline = randomTimeline(chance, resources);
    for (int r = 0; r < resources; ++r)
        workload.held.push_back(chance.oneIn(3));
    const int count = chance.between(1, 30);
    std::vector<std::size_t> place(static_cast<std::size_t>(count));
    std::iota(place.begin(), place.end(), std::size_t{0});
    for (std::size_t i = place.size(); i > 1; --i)
        std::swap(place[i - 1], place[static_cast<std::size_t>(chance.below(static_cast<int>(i)))]);
    workload.activities.resize(place.size());
    for (std::size_t i = 0; i < place.size(); ++i) {
        Activity &made = workload.activities[place[i]];
        made.work = chance.oneIn(5) ? 0 : chance.between(1, 15);
        made.demand.assign(static_cast<std::size_t>(chance.between(0, resources)), 0);
        for (int &amount : made.demand)
            amount = chance.oneIn(3) ? chance.between(1, 3) : 0;
        made.waitDays = chance.oneIn(3) ? chance.between(0, 20) : 0;
        made.releaseDay = chance.oneIn(4) ? chance.between(0, 60) : 0;
        made.manner = chance.oneIn(3) ? Manner::OneSitting
                                      : (chance.oneIn(4) ? Manner::Unbroken : Manner::Split);
        for (int links = i == 0 ? 0 : chance.below(4); links > 0; --links)
            made.after.push_back(
                place[static_cast<std::size_t>(chance.below(static_cast<int>(i)))]);
    }
    return workload;
}

} // namespace ohmwright::plan::testing
