// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/forecast/order_by.h"

#include <algorithm>

namespace ohmwright::forecast {

namespace {

std::vector<std::vector<std::size_t>> successorsOf(const WorkPlan &plan)
{
    std::vector<std::vector<std::size_t>> next(plan.activities.size());
    for (std::size_t i = 0; i < plan.activities.size(); ++i)
        for (const std::size_t before : plan.activities[i].after)
            next[before].push_back(i);
    return next;
}

std::vector<char> reachedFrom(std::size_t start, const std::vector<std::vector<std::size_t>> &next)
{
    std::vector<char> reached(next.size(), 0);
    std::vector<std::size_t> open{start};
    while (!open.empty()) {
        const std::size_t at = open.back();
        open.pop_back();
        for (const std::size_t after : next[at])
            if (!reached[after]) {
                reached[after] = 1;
                open.push_back(after);
            }
    }
    return reached;
}

// Without a milestone, whatever is ready last in each sample.
std::vector<int> daysAt(Samples samples, int percent)
{
    std::vector<int> days;
    for (std::vector<int> &ready : samples.ready)
        days.push_back(dayAt(ready, percent));
    return days;
}

} // namespace

std::vector<OrderBy> orderByDays(const WorkPlan &plan, const Simulation &simulation,
                                 int confidencePercent, const Watch &watch)
{
    const auto next = successorsOf(plan);
    std::vector<std::size_t> goals = plan.milestones;
    if (goals.empty())
        for (std::size_t i = 0; i < plan.activities.size(); ++i)
            if (next[i].empty())
                goals.push_back(i);
    Samples first = simulation.sample(goals, {}, watch);
    if (first.cancelled)
        return {};
    const std::vector<int> kept = daysAt(std::move(first), confidencePercent);

    std::vector<int> released;
    for (const Activity &a : plan.activities)
        released.push_back(a.releaseDay);
    std::vector<OrderBy> list;
    for (std::size_t i = 0; i < plan.activities.size(); ++i) {
        if (!plan.activities[i].toOrder)
            continue;
        OrderBy order;
        order.activity = i;
        const std::vector<char> reached = reachedFrom(i, next);
        std::vector<std::size_t> waiting; // places in goals
        std::vector<std::size_t> asked;
        for (std::size_t g = 0; g < goals.size(); ++g)
            if (reached[goals[g]] && kept[g] != plan::kNever) {
                waiting.push_back(g);
                asked.push_back(goals[g]);
            }
        order.needed = !waiting.empty();
        if (order.needed) {
            int good = plan.activities[i].releaseDay;
            int bad = good + 1; // one day later than the first milestone is surely too late
            for (const std::size_t g : waiting)
                bad = std::max(bad, kept[g] + 2);
            while (bad - good > 1) {
                const int day = good + (bad - good) / 2;
                released[i] = day;
                Samples samples = simulation.sample(asked, released, watch);
                if (samples.cancelled)
                    return {};
                const std::vector<int> days = daysAt(std::move(samples), confidencePercent);
                bool keeps = true;
                for (std::size_t w = 0; w < waiting.size(); ++w)
                    keeps = keeps && days[w] <= kept[waiting[w]];
                (keeps ? good : bad) = day;
            }
            released[i] = plan.activities[i].releaseDay;
            order.latestDay = good;
        }
        list.push_back(order);
    }
    std::stable_sort(list.begin(), list.end(), [&](const OrderBy &a, const OrderBy &b) {
        if (a.needed != b.needed)
            return a.needed;
        if (a.latestDay != b.latestDay)
            return a.latestDay < b.latestDay;
        return plan.activities[a.activity].key < plan.activities[b.activity].key;
    });
    return list;
}

} // namespace ohmwright::forecast
