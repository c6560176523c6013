// SPDX-License-Identifier: GPL-3.0-or-later
// From a forecast to what the loom shows of it.
#pragma once

#include "core/forecast/order_by.h"
#include "core/plan/loom_forecast.h"

namespace ohmwright::forecast {

// `plan` must be made of the same book as `network`. Empty (no today) for a cancelled forecast.
// `orders`: orderByDays(), of which those are told that something needs.
plan::LoomForecast loomForecastOf(const WorkPlan &plan, const Forecast &forecast,
                                  const plan::Network &network,
                                  const std::vector<OrderBy> &orders = {});

} // namespace ohmwright::forecast
