// SPDX-License-Identifier: GPL-3.0-or-later
// The days by which the moves of a milestone (plan::holdUps) are to be begun, as the planning
// engine and the forecast have them: with hands, calendar, days off and bays, where a chain of
// tasks knows elapsed days alone.
#pragma once

#include "core/forecast/order_by.h"
#include "core/forecast/work_plan.h"

namespace ohmwright::forecast {

// Gives each move the latest day to begin that keeps the milestone's date by the likely times: all
// that the milestone waits on is levelled and pushed as late as it goes. If the plan is longer than
// the time there is, the date is missed whatever one does, and the days keep the one on which the
// plan reaches it, told in HoldUps::likely. What `orders` says to order or ask earlier, at
// `confidence` percent, counts before that, with the reason added to the move's, and so for the
// task that orders or asks; so does a day of the move's own. Moves are sorted by it anew.
// Without a date of the milestone only what `orders` and the moves say counts. `holdUps` and
// `network` of the same book as the plan, which may be a little behind.
void tellLatestDays(plan::HoldUps &holdUps, const plan::Network &network, const WorkPlan &plan,
                    const std::vector<OrderBy> &orders = {}, int confidence = 80);

// The orders and letters of the plan that a move of `holdUps` is about, or a task of it sends out:
// whose order-by days tellLatestDays() needs.
std::vector<std::size_t> sentByMoves(const plan::HoldUps &holdUps, const WorkPlan &plan);

struct MoveSoon
{
    std::size_t milestone = 0; // a task of the network
    plan::Move move;
};

// Moves of other milestones than that of `shown` that have a day of their own (a return that ends,
// an answer to ask after) within so many days, earliest first; none that `shown` has.
std::vector<MoveSoon> movesSoon(const plan::Network &network, const plan::HoldUps &shown,
                                QDate today, int days);

} // namespace ohmwright::forecast
