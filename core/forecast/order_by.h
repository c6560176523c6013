// SPDX-License-Identifier: GPL-3.0-or-later
// The latest day to order each wanted part, and to ask for each letter, without moving a milestone.
#pragma once

#include "core/forecast/forecast.h"

namespace ohmwright::forecast {

// How many of so many samples may reach a milestone later than its day at that confidence before
// the day counts as moved: those that it leaves out anyway, and two standard errors of the share
// (binomial), which the samples could not tell from none. Without the errors a share of just
// over 80 % would let nothing be ordered later than today.
inline constexpr double kErrorsUnseen = 2;
// `samples`: at least 1.
std::size_t mayBeLate(std::size_t samples, int percent);

struct OrderBy
{
    std::size_t activity = 0; // a delivery still to order, or an answer still to ask for
    // Days from today; 0: today, later moves a milestone. The latest on which every milestone that
    // waits on it (the plan's end, if none does) keeps its day at the confidence asked for, on the
    // same samples and as far as they tell (mayBeLate()).
    int latestDay = 0;
    bool needed = true; // false: no task waits on it, and the day says nothing
};

// The task on which an order or a letter waits beyond its latest day, at a confidence of
// kConfidences: until that is done nothing can be ordered, and then it is at once. None where the
// day comes later.
std::optional<std::size_t> orderedBehind(const WorkPlan &plan, const Forecast &forecast,
                                         const OrderBy &order, int confidencePercent);

// The latest day before which none of `activities` is allowed to start that keeps every milestone
// behind them where it is at that confidence, on the same samples. None if no milestone is behind
// any of them, or when cancelled.
std::optional<int> latestRelease(const WorkPlan &plan, const Simulation &simulation,
                                 const std::vector<std::size_t> &activities, int confidencePercent,
                                 const Watch &watch = {});

// Days of how many of the forecast's samples, from the first, orderByDays() looks at: in a plan of
// a usual size some thousands, never less than 1,000 (or all there are), for each day tried plays
// them. It depends on the plan alone, so that everybody tells the same days.
int orderBySamples(const WorkPlan &plan, int samples);

// Beyond so many activities the days take minutes: nobody is to wait for them who asked for
// something else.
inline constexpr std::size_t kMostForOrderBy = 600;

// Each alone on its day, while all others are ordered and asked today, or when the task for it is
// done: of several that wait until their days, one may move a milestone. Soonest first, then by
// key. Between an order today and the day found, each milestone was seen to
// keep its day at the days looked at by halving; list scheduling can have exceptions between them.
// Empty when cancelled. `wanted`: of these activities alone; empty: of all.
std::vector<OrderBy> orderByDays(const WorkPlan &plan, const Simulation &simulation,
                                 int confidencePercent, const Watch &watch = {},
                                 const std::vector<std::size_t> &wanted = {});

} // namespace ohmwright::forecast
