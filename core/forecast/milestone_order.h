// SPDX-License-Identifier: GPL-3.0-or-later
// A good order of priority for a builder's plan: the milestones early, in their order, whatever the
// luck.
#pragma once

#include "core/forecast/draws.h"
#include "core/plan/levelling.h"

#include <cstddef>
#include <cstdint>
#include <functional>
#include <optional>
#include <vector>

namespace ohmwright::forecast {

struct Goal
{
    std::size_t activity = 0;  // a milestone
    std::optional<int> dueDay; // its date, days from today
};

struct OrderSearch
{
    std::vector<Goal> goals;
    std::vector<Drawn> luck; // the plan is judged by its mean over these; at least one
    int passes = 0;          // bounds the work; 0: latest finish first
    std::uint64_t seed = 1;
    std::function<bool()> cancelled; // asked now and then; empty: never
};

// What is made small: the mean over the samples of the goals' ready days, each day later than a
// goal's own date counted kLateWeight times more, a little of the end of everything, and a little
// for standing off the usual order, in which all that the first goal waits on comes first, the
// latest to finish last: among orders that are as good as one another a small edit would otherwise
// lead to quite another one. Judged by
// the likely times alone an order looks good that any delay upsets. The hands leave the end of a
// home build almost where it is whatever the order, but the order decides which milestone comes
// when.
//
// Starts from latest finish first, from the usual order, which stands among equals, and from what
// the planning engine's own search finds for the goals' end. Goes on by simulated annealing (S.
// Kirkpatrick, C. D. Gelatt, M. P. Vecchi, Science 220 (1983) 671-680) over orders that keep what
// comes before before: one activity moved, or one together with those it waits on or those that
// wait on it. The same input gives the same order.
std::vector<std::size_t> milestoneOrder(const plan::Workload &workload, const OrderSearch &search);

inline constexpr double kLateWeight = 3;

} // namespace ohmwright::forecast
