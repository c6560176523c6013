// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/forecast/search_order.h"

#include "core/forecast/spread.h"
#include "core/plan/level_search.h"

#include <algorithm>
#include <cstdint>
#include <tuple>
#include <utility>

namespace ohmwright::forecast {

namespace {

using Order = std::vector<std::size_t>;
using Cost = std::tuple<std::int64_t, std::int64_t, std::int64_t>; // late, goals, end

class OrderSearch
{
public:
    OrderSearch(const plan::Workload &workload, const std::vector<Goal> &goals)
        : m_levelling(workload), m_goals(goals)
    {
        const auto first = m_levelling.order();
        m_latestFinish.assign(first.begin(), first.end());
    }

    [[nodiscard]] const Order &latestFinish() const { return m_latestFinish; }

    Cost costOf(const Order &order)
    {
        m_levelling.setOrder(order);
        const plan::Levelled &plan = m_levelling.pass();
        Cost cost{0, 0, plan.endDay};
        for (const Goal &goal : m_goals) {
            const int ready = plan.readyDay[goal.activity];
            std::get<0>(cost) += std::max(0, ready - goal.dueDay.value_or(ready));
            std::get<1>(cost) += ready;
        }
        return cost;
    }

    // All that the first goal waits on, then what the second does besides, and so on.
    [[nodiscard]] Order byGoal(const plan::Workload &workload) const
    {
        std::vector<std::size_t> rank(workload.activities.size(), m_goals.size());
        for (std::size_t m = 0; m < m_goals.size(); ++m) {
            Order open{m_goals[m].activity};
            while (!open.empty()) {
                const std::size_t at = open.back();
                open.pop_back();
                if (rank[at] <= m)
                    continue;
                rank[at] = m;
                for (const std::size_t before : workload.activities[at].after)
                    open.push_back(before);
            }
        }
        Order order = m_latestFinish;
        std::stable_sort(order.begin(), order.end(),
                         [&](std::size_t a, std::size_t b) { return rank[a] < rank[b]; });
        return order;
    }

private:
    plan::Levelling m_levelling;
    const std::vector<Goal> &m_goals;
    Order m_latestFinish;
};

} // namespace

std::vector<std::size_t> searchOrder(const plan::Workload &workload, const std::vector<Goal> &goals,
                                     int passes, std::uint64_t seed)
{
    OrderSearch search(workload, goals);
    Order best = search.latestFinish();
    if (passes <= 0 || best.size() < 2)
        return best;
    Cost cost = search.costOf(best);
    const auto keepIfNoWorse = [&](Order order) {
        const Cost its = search.costOf(order);
        if (its <= cost) {
            cost = its;
            best = std::move(order);
        }
    };
    keepIfNoWorse(search.byGoal(workload));
    plan::LevelSearch population;
    population.schedules = passes / 4;
    population.seed = seed;
    for (const Goal &goal : goals)
        population.goals.push_back(goal.activity);
    keepIfNoWorse(plan::searchOrder(workload, population).order);
    const auto pick = [&](std::uint64_t pass, std::uint64_t which) {
        return static_cast<std::size_t>(luck(seed, pass, which) * static_cast<double>(best.size()));
    };
    for (int pass = population.schedules + 2; pass < passes; ++pass) {
        const std::size_t from = pick(static_cast<std::uint64_t>(pass), 1);
        const std::size_t to = pick(static_cast<std::uint64_t>(pass), 2);
        if (from == to)
            continue;
        Order order = best;
        const std::size_t moved = order[from];
        order.erase(order.begin() + static_cast<std::ptrdiff_t>(from));
        order.insert(order.begin() + static_cast<std::ptrdiff_t>(to), moved);
        keepIfNoWorse(std::move(order));
    }
    return best;
}

} // namespace ohmwright::forecast
