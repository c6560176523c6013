// SPDX-License-Identifier: GPL-3.0-or-later
// A good order of priority for a builder's plan: the milestones early, in their order, and the
// whole done as soon as it can be.
#pragma once

#include "core/plan/levelling.h"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <vector>

namespace ohmwright::forecast {

struct Goal
{
    std::size_t activity = 0;  // a milestone
    std::optional<int> dueDay; // its date, days from today
};

// What is made small: the days by which the goals (first to last) are later than their dates, then
// the sum of their ready days, then the end of everything. The hands leave the end of a home build
// almost where it is whatever the order, but the order decides which milestone comes when.
//
// Starts from latest finish first, from goal by goal, and from what the planning engine's own
// search finds for the goals' end with a quarter of the passes; then moves one activity at a time,
// keeping what is no worse. `passes` bounds the work; the same seed gives the same order.
std::vector<std::size_t> searchOrder(const plan::Workload &workload, const std::vector<Goal> &goals,
                                     int passes, std::uint64_t seed);

} // namespace ohmwright::forecast
