// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/forecast/loom_facts.h"

#include <algorithm>

namespace ohmwright::forecast {

namespace {

std::optional<int> dayOrNever(int day)
{
    return day == plan::kNever ? std::nullopt : std::optional(day);
}

constexpr std::size_t kLikelyEnough = 1; // of kConfidences: 80 %
static_assert(kConfidences[kLikelyEnough] == 80);

} // namespace

plan::LoomForecast loomForecastOf(const WorkPlan &plan, const Forecast &forecast,
                                  const plan::Network &network, const std::vector<OrderBy> &orders)
{
    plan::LoomForecast result;
    if (forecast.cancelled)
        return result;
    result.today = forecast.today;
    result.tasks.resize(network.tasks.size());
    const std::size_t count = std::min(plan.activities.size(), forecast.activities.size());
    const auto sendBy = [&](std::size_t activity) -> std::optional<int> {
        const auto order = std::ranges::find(orders, activity, &OrderBy::activity);
        return order == orders.end() || !order->needed ? std::nullopt
                                                       : std::optional(order->latestDay);
    };
    for (std::size_t at = 0; at < count; ++at) {
        const Activity &activity = plan.activities[at];
        const ActivityForecast &known = forecast.activities[at];
        switch (activity.kind) {
        case ActivityKind::Task:
        case ActivityKind::Milestone: {
            if (!activity.task || *activity.task >= result.tasks.size())
                break;
            plan::LoomDays &days = result.tasks[*activity.task];
            days.start = dayOrNever(known.plannedStart);
            days.finish = dayOrNever(known.plannedFinish);
            days.floatDays = dayOrNever(known.floatDays);
            std::transform(known.ready.begin(), known.ready.end(), days.ready.begin(), dayOrNever);
            days.driving = known.driving;
            break;
        }
        case ActivityKind::Delivery:
        case ActivityKind::Answer:
            // Named as the needs name what they are about.
            result.arrivals.push_back(
                {activity.key, dayOrNever(known.ready[kLikelyEnough]), sendBy(at), activity.toAsk});
            break;
        case ActivityKind::Redo:
            break; // of a task that has its own days
        }
    }
    return result;
}

} // namespace ohmwright::forecast
