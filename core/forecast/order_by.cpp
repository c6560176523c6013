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

std::vector<char> reachedFrom(std::vector<std::size_t> open,
                              const std::vector<std::vector<std::size_t>> &next)
{
    std::vector<char> reached(next.size(), 0);
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

std::vector<int> daysAt(Samples samples, int percent)
{
    std::vector<int> days;
    days.reserve(samples.ready.size());
    for (std::vector<int> &ready : samples.ready)
        days.push_back(dayAt(ready, percent));
    return days;
}

// What orderByDays and latestRelease share: the goals of a plan and where they are kept.
class ReleaseSearch
{
public:
    ReleaseSearch(const WorkPlan &plan, const Simulation &simulation, int percent,
                  const Watch &watch)
        : m_plan(plan), m_simulation(simulation), m_percent(percent), m_watch(watch),
          m_next(successorsOf(plan)), m_goals(plan.milestones)
    {
        if (m_goals.empty()) // then whatever nothing comes after
            for (std::size_t i = 0; i < plan.activities.size(); ++i)
                if (m_next[i].empty())
                    m_goals.push_back(i);
        for (const Activity &a : plan.activities)
            m_released.push_back(a.releaseDay);
        Samples first = simulation.sample(m_goals, {}, watch);
        m_cancelled = first.cancelled;
        if (!m_cancelled)
            m_kept = daysAt(std::move(first), percent);
    }

    [[nodiscard]] bool cancelled() const { return m_cancelled; }

    // None if no goal is behind them.
    std::optional<int> latest(const std::vector<std::size_t> &activities)
    {
        std::vector<std::size_t> waiting; // places in m_goals
        std::vector<std::size_t> asked;
        const std::vector<char> reached = reachedFrom(activities, m_next);
        for (std::size_t g = 0; g < m_goals.size(); ++g)
            if (reached[m_goals[g]] && m_kept[g] != plan::kNever) {
                waiting.push_back(g);
                asked.push_back(m_goals[g]);
            }
        if (waiting.empty() || m_cancelled)
            return std::nullopt;
        int good = 0;
        for (const std::size_t i : activities)
            good = std::max(good, m_plan.activities[i].releaseDay);
        int bad = good + 1; // beyond the last goal's day it is surely too late
        for (const std::size_t g : waiting)
            bad = std::max(bad, m_kept[g] + 2);
        while (bad - good > 1) {
            const int day = good + (bad - good) / 2;
            (keeps(activities, day, asked, waiting) ? good : bad) = day;
            if (m_cancelled)
                return std::nullopt;
        }
        return good;
    }

private:
    bool keeps(const std::vector<std::size_t> &activities, int day,
               const std::vector<std::size_t> &asked, const std::vector<std::size_t> &waiting)
    {
        std::vector<int> released = m_released;
        for (const std::size_t i : activities)
            released[i] = std::max(released[i], day);
        Samples samples = m_simulation.sample(asked, released, m_watch);
        m_cancelled = samples.cancelled;
        if (m_cancelled)
            return false;
        const std::vector<int> days = daysAt(std::move(samples), m_percent);
        for (std::size_t w = 0; w < waiting.size(); ++w)
            if (days[w] > m_kept[waiting[w]])
                return false;
        return true;
    }

    const WorkPlan &m_plan;
    const Simulation &m_simulation;
    int m_percent;
    const Watch &m_watch;
    std::vector<std::vector<std::size_t>> m_next;
    std::vector<std::size_t> m_goals;
    std::vector<int> m_kept; // day of each goal
    std::vector<int> m_released;
    bool m_cancelled = false;
};

} // namespace

std::optional<std::size_t> orderedBehind(const WorkPlan &plan, const Forecast &forecast,
                                         const OrderBy &order, int confidencePercent)
{
    const auto at = std::ranges::find(kConfidences, confidencePercent);
    if (!order.needed || at == kConfidences.end() || forecast.activities.empty())
        return std::nullopt;
    const auto place = static_cast<std::size_t>(at - kConfidences.begin());
    std::optional<std::size_t> last;
    for (const std::size_t before : plan.activities[order.activity].after) {
        const int ready = forecast.activities[before].ready[place];
        if (ready > order.latestDay && (!last || ready > forecast.activities[*last].ready[place]))
            last = before;
    }
    return last;
}

std::optional<int> latestRelease(const WorkPlan &plan, const Simulation &simulation,
                                 const std::vector<std::size_t> &activities, int confidencePercent,
                                 const Watch &watch)
{
    ReleaseSearch search(plan, simulation, confidencePercent, watch);
    return search.latest(activities);
}

std::vector<OrderBy> orderByDays(const WorkPlan &plan, const Simulation &simulation,
                                 int confidencePercent, const Watch &watch)
{
    ReleaseSearch search(plan, simulation, confidencePercent, watch);
    std::vector<OrderBy> list;
    for (std::size_t i = 0; i < plan.activities.size() && !search.cancelled(); ++i) {
        if (!plan.activities[i].toOrder && !plan.activities[i].toAsk)
            continue;
        const std::optional<int> day = search.latest({i});
        list.push_back({i, day.value_or(0), day.has_value()});
    }
    if (search.cancelled())
        return {};
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
