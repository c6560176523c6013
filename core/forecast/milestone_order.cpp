// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/forecast/milestone_order.h"

#include "core/forecast/spread.h"
#include "core/plan/level_search.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <utility>

namespace ohmwright::forecast {

namespace {

using Order = std::vector<std::size_t>;

constexpr double kEndWeight = 0.05; // of a goal's; tells apart what the goals do not
// Days of mean goal days for each place that activities stand off the usual order, on average.
constexpr double kStrayWeight = 0.5;
// Days of mean goal days; the first is about what an evening's delay of one chain costs.
constexpr double kFirstHeat = 4;
constexpr double kLastHeat = 0.02;
// Samples that already tell most bad moves.
constexpr std::size_t kQuickLook = 4;
// So much worse than what would just be accepted in the quick look, and it is not looked at on.
constexpr double kQuickMargin = 2;

class Annealing
{
public:
    Annealing(const plan::Workload &workload, const OrderSearch &search)
        : m_workload(workload), m_search(search), m_levelling(workload),
          m_behind(workload.activities.size())
    {
        for (std::size_t i = 0; i < workload.activities.size(); ++i)
            for (const std::size_t before : workload.activities[i].after)
                if (before < m_behind.size())
                    m_behind[before].push_back(i);
        const auto first = m_levelling.order();
        m_latestFinish.assign(first.begin(), first.end());
        m_byGoal = orderByGoal();
        m_usualPlace.resize(m_byGoal.size());
        for (std::size_t at = 0; at < m_byGoal.size(); ++at)
            m_usualPlace[m_byGoal[at]] = static_cast<int>(at);
    }

    // Kept if it is better than the best so far.
    void start(const Order &order)
    {
        Order candidate = feasible(order);
        const Look cost = look(candidate, HUGE_VAL);
        if (m_best.empty() || cost.mean < m_bestCost.mean) {
            m_best = m_now = std::move(candidate);
            m_bestCost = m_cost = cost;
        }
    }

    void run(int tries)
    {
        for (int at = 0; at < tries; ++at) {
            if (at % 16 == 0 && m_search.cancelled && m_search.cancelled())
                return;
            const double part = static_cast<double>(at) / tries;
            const double heat = kFirstHeat * std::pow(kLastHeat / kFirstHeat, part);
            m_try = static_cast<std::uint64_t>(at);
            Order order = m_now;
            if (!move(order))
                continue;
            const double allowed = m_cost.mean - heat * std::log(chance(9));
            const Look cost = look(order, allowed);
            if (cost.mean > allowed)
                continue;
            m_now = std::move(order);
            m_cost = cost;
            if (cost.mean < m_bestCost.mean) {
                m_best = m_now;
                m_bestCost = cost;
            }
        }
    }

    [[nodiscard]] const Order &best() const { return m_best; }
    [[nodiscard]] const Order &latestFinish() const { return m_latestFinish; }
    [[nodiscard]] const Order &byGoal() const { return m_byGoal; }

private:
    struct Look
    {
        double mean = 0;
        double quick = 0; // of the first few samples
    };

    // All that the first goal waits on, then what the second does besides, and so on.
    [[nodiscard]] Order orderByGoal() const
    {
        Order rank(m_workload.activities.size(), m_search.goals.size());
        for (std::size_t m = 0; m < m_search.goals.size(); ++m) {
            Order open{m_search.goals[m].activity};
            while (!open.empty()) {
                const std::size_t at = open.back();
                open.pop_back();
                if (rank[at] <= m)
                    continue;
                rank[at] = m;
                for (const std::size_t before : m_workload.activities[at].after)
                    open.push_back(before);
            }
        }
        Order order;
        for (std::size_t m = 0; m <= m_search.goals.size(); ++m)
            for (const std::size_t a : m_latestFinish)
                if (rank[a] == m)
                    order.push_back(a);
        return order;
    }

    double chance(std::uint64_t which) const { return luck(m_search.seed, m_try, which); }
    std::size_t pick(std::uint64_t which, std::size_t from, std::size_t to) const // to: included
    {
        return from + static_cast<std::size_t>(chance(which) * static_cast<double>(to - from + 1));
    }

    Order feasible(const Order &order)
    {
        m_levelling.setOrder(order);
        const auto now = m_levelling.order();
        return {now.begin(), now.end()};
    }

    double costOf(const plan::Levelled &plan) const
    {
        double cost = kEndWeight * plan.endDay;
        for (const Goal &goal : m_search.goals) {
            const int ready = plan.readyDay[goal.activity];
            cost += ready;
            if (goal.dueDay)
                cost += kLateWeight * std::max(0, ready - *goal.dueDay);
        }
        return cost;
    }

    double strayOf(const Order &order) const
    {
        int places = 0;
        for (std::size_t at = 0; at < order.size(); ++at)
            places += std::abs(static_cast<int>(at) - m_usualPlace[order[at]]);
        return kStrayWeight * places / static_cast<double>(order.size());
    }

    // Breaks off with an infinite mean once it is clear that it is above `allowed`.
    Look look(const Order &order, double allowed)
    {
        m_levelling.setOrder(order);
        Look result;
        double sum = 0;
        const double stray = strayOf(order);
        const std::size_t count = m_search.luck.size();
        for (std::size_t s = 0; s < count; ++s) {
            const Drawn &drawn = m_search.luck[s];
            sum += costOf(
                m_levelling.pass({drawn.work, drawn.waitDays, {}}, plan::Levelling::Traced::No));
            if (s + 1 != std::min(kQuickLook, count))
                continue;
            result.quick = sum / static_cast<double>(s + 1) + stray;
            if (allowed < HUGE_VAL &&
                result.quick - m_cost.quick > allowed - m_cost.mean + kQuickMargin) {
                result.mean = HUGE_VAL;
                return result;
            }
        }
        result.mean = sum / static_cast<double>(count) + stray;
        return result;
    }

    // False if there is nothing to move.
    bool move(Order &order) const
    {
        const std::size_t count = order.size();
        const std::size_t at = pick(1, 0, count - 1);
        const double kind = chance(2);
        if (kind < 0.4)
            return moveOne(order, at);
        return kind < 0.75 ? pull(order, at) : push(order, at);
    }

    // Anywhere between the last it waits on and the first that waits on it.
    bool moveOne(Order &order, std::size_t at) const
    {
        const std::size_t moved = order[at];
        const auto &after = m_workload.activities[moved].after;
        const auto &behind = m_behind[moved];
        const auto among = [](const Order &some, std::size_t what) {
            return std::find(some.begin(), some.end(), what) != some.end();
        };
        std::size_t low = at;
        while (low > 0 && !among(after, order[low - 1]))
            --low;
        std::size_t high = at;
        while (high + 1 < order.size() && !among(behind, order[high + 1]))
            ++high;
        if (low == high)
            return false;
        std::size_t to = pick(3, low, high - 1);
        if (to >= at)
            ++to;
        const auto begin = order.begin();
        if (to < at)
            std::rotate(begin + place(to), begin + place(at), begin + place(at) + 1);
        else
            std::rotate(begin + place(at), begin + place(at) + 1, begin + place(to) + 1);
        return true;
    }

    // One and all it waits on, before what stood at an earlier place.
    bool pull(Order &order, std::size_t at) const
    {
        if (at == 0)
            return false;
        const std::size_t to = pick(3, 0, at - 1);
        std::vector<char> chain(order.size(), 0);
        chain[order[at]] = 1;
        for (std::size_t i = at + 1; i-- > to;)
            if (chain[order[i]])
                for (const std::size_t before : m_workload.activities[order[i]].after)
                    chain[before] = 1;
        gather(order, to, at, chain, true);
        return true;
    }

    // One and all that waits on it, behind what stood at a later place.
    bool push(Order &order, std::size_t at) const
    {
        if (at + 1 >= order.size())
            return false;
        const std::size_t to = pick(3, at + 1, order.size() - 1);
        std::vector<char> chain(order.size(), 0);
        chain[order[at]] = 1;
        for (std::size_t i = at; i <= to; ++i)
            if (chain[order[i]])
                for (const std::size_t next : m_behind[order[i]])
                    chain[next] = 1;
        gather(order, at, to, chain, false);
        return true;
    }

    // Between two places, both included: the chain before all others or behind them, else as it
    // was.
    static void gather(Order &order, std::size_t from, std::size_t to,
                       const std::vector<char> &chain, bool chainFirst)
    {
        const Order was(order.begin() + place(from), order.begin() + place(to) + 1);
        auto into = order.begin() + place(from);
        for (const bool taken : {chainFirst, !chainFirst})
            into = std::copy_if(was.begin(), was.end(), into,
                                [&](std::size_t a) { return (chain[a] != 0) == taken; });
    }

    static std::ptrdiff_t place(std::size_t at) { return static_cast<std::ptrdiff_t>(at); }

    const plan::Workload &m_workload;
    const OrderSearch &m_search;
    plan::Levelling m_levelling;
    std::vector<Order> m_behind;
    Order m_latestFinish, m_byGoal, m_now, m_best;
    std::vector<int> m_usualPlace; // in m_byGoal
    Look m_cost, m_bestCost;
    std::uint64_t m_try = 0;
};

} // namespace

std::vector<std::size_t> milestoneOrder(const plan::Workload &workload, const OrderSearch &search)
{
    Annealing annealing(workload, search);
    if (search.passes <= 0 || workload.activities.size() < 2)
        return annealing.latestFinish();
    annealing.start(annealing.latestFinish()); // stands among equals
    annealing.start(annealing.byGoal());
    plan::LevelSearch population;
    population.schedules = std::min(search.passes / 8, 1000);
    population.seed = search.seed;
    population.cancelled = search.cancelled;
    for (const Goal &goal : search.goals)
        population.goals.push_back(goal.activity);
    annealing.start(plan::searchOrder(workload, population).order);
    annealing.run(search.passes / static_cast<int>(search.luck.size()));
    return annealing.best();
}

} // namespace ohmwright::forecast
