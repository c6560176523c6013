// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/plan/level_search.h"

#include "core/plan/level_planner.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace ohmwright::plan {

namespace {

using level::Instant;
using level::Lot;
using level::Planner;
using Order = std::vector<std::int32_t>;

// One in so many neighbours changes places after a crossing. This and the size of the population
// were tried out on PSPLIB's instances.
constexpr std::uint32_t kMutation = 7;
constexpr int kMarginDays = 30;    // twice the best plan, and these, for pushing back
constexpr double kPopulation = 60; // times the root of the budget, by the number of activities
constexpr std::size_t kLeastPopulation = 8;
constexpr std::size_t kMostPopulation = 400;

struct Individual
{
    Order order; // by finish in its plan
    Instant end = level::kNeverInstant;
    std::uint64_t mark = 0; // of its starts, to tell twins
};

class Search
{
public:
    Search(const Workload &workload, const LevelSearch &wanted);
    LevelFound run();

private:
    [[nodiscard]] bool over();
    Instant forward(const Order &order);
    // From an order to its plan and the order that has.
    void planTwice(Individual &individual);
    void planBack(Individual &individual);
    void settle(const Order &used, Individual &individual);
    void firstGeneration(std::size_t size);
    void nextGeneration(std::size_t size);
    [[nodiscard]] std::size_t populationSize() const;
    [[nodiscard]] bool hasTwin(const Individual &individual) const;
    void cross(const Order &father, const Order &mother, Order &child);
    void mutate(Order &order);
    void sortBy(const std::vector<int> &key, const Order &ties, bool descending, Order &sorted);
    [[nodiscard]] bool comesAfter(std::int32_t a, std::int32_t b) const;

    Planner m_planner;
    const LevelSearch &m_wanted;
    Lot m_lot;
    std::vector<Individual> m_population;
    Order m_best;
    Instant m_bestEnd = level::kNeverInstant;
    Instant m_bound = 0;
    int m_schedules = 0;
    bool m_cancelled = false;
    std::vector<char> m_in;
    std::vector<level::Word> m_links; // per activity the set of those it comes after
    std::size_t m_setWords = 0;
    std::vector<int> m_counts;
    Order m_ahead, m_back;
};

Search::Search(const Workload &workload, const LevelSearch &wanted)
    : m_planner(workload), m_wanted(wanted), m_lot(wanted.seed)
{
    const std::size_t count = m_planner.count();
    m_setWords = (count + 63) / 64;
    m_links.assign(count * m_setWords, 0);
    for (std::size_t a = 0; a < count; ++a) {
        for (const std::int32_t b : m_planner.before()[a]) {
            const auto bit = static_cast<std::size_t>(b);
            m_links[a * m_setWords + bit / 64] |= level::Word{1} << bit % 64;
        }
    }
}

bool Search::comesAfter(std::int32_t a, std::int32_t b) const
{
    const auto bit = static_cast<std::size_t>(b);
    return m_links[static_cast<std::size_t>(a) * m_setWords + bit / 64] >> bit % 64 & 1;
}

bool Search::over()
{
    if (!m_cancelled && m_wanted.cancelled && m_wanted.cancelled())
        m_cancelled = true;
    return m_cancelled || m_schedules >= m_wanted.schedules || m_bestEnd <= m_bound;
}

Instant Search::forward(const Order &order)
{
    ++m_schedules;
    const Instant end = m_planner.forward<Planner::Trace::Off>(order, {});
    if (end < m_bestEnd || m_best.empty()) {
        m_bestEnd = end;
        m_best = order;
    }
    return end;
}

// Orders by key, equal ones as in `ties` (descending: the other way round). Counts where the keys
// lie close together.
void Search::sortBy(const std::vector<int> &key, const Order &ties, bool descending, Order &sorted)
{
    const auto of = [&key](std::int32_t a) {
        return key[static_cast<std::size_t>(a)];
    };
    const int most = key.empty() ? 0 : *std::max_element(key.begin(), key.end());
    sorted.resize(ties.size());
    if (most < 0 || static_cast<std::size_t>(most) > 8 * ties.size()) {
        if (descending) {
            std::reverse_copy(ties.begin(), ties.end(), sorted.begin());
            std::stable_sort(sorted.begin(), sorted.end(),
                             [&of](std::int32_t a, std::int32_t b) { return of(a) > of(b); });
        } else {
            std::copy(ties.begin(), ties.end(), sorted.begin());
            std::stable_sort(sorted.begin(), sorted.end(),
                             [&of](std::int32_t a, std::int32_t b) { return of(a) < of(b); });
        }
        return;
    }
    m_counts.assign(static_cast<std::size_t>(most) + 2, 0);
    for (const int k : key)
        ++m_counts[static_cast<std::size_t>(k) + 1];
    for (std::size_t k = 1; k < m_counts.size(); ++k)
        m_counts[k] += m_counts[k - 1];
    const std::size_t last = ties.size() - 1;
    for (const std::int32_t a : ties) {
        const auto at = static_cast<std::size_t>(m_counts[static_cast<std::size_t>(of(a))]++);
        sorted[descending ? last - at : at] = a;
    }
}

// What the pass just made with `used` leaves behind.
void Search::settle(const Order &used, Individual &individual)
{
    const std::vector<int> &start = m_planner.plan().start;
    sortBy(m_planner.plan().finish, used, false, individual.order);
    individual.mark = 0;
    for (const int s : start)
        individual.mark = Lot(individual.mark ^ static_cast<std::uint64_t>(s)).next();
}

// Forwards, back, and forwards again.
void Search::planTwice(Individual &individual)
{
    individual.end = forward(individual.order);
    m_ahead = individual.order;
    if (!over() && m_planner.plan().endDay != kNever) {
        sortBy(m_planner.plan().finish, m_ahead, true, m_back);
        m_planner.backward(m_back, m_planner.plan().endDay, m_planner.plan().end,
                           Planner::From::Plan);
        ++m_schedules;
        if (!over()) {
            sortBy(m_planner.lateStart(), individual.order, false, m_ahead);
            individual.end = forward(m_ahead);
        }
    }
    settle(m_ahead, individual);
}

// From the far end of time, the last in the order first, then forwards. A pass less than planTwice,
// and the order has been one by finish to begin with.
void Search::planBack(Individual &individual)
{
    m_back.assign(individual.order.rbegin(), individual.order.rend());
    const int day = m_bestEnd == level::kNeverInstant ? 0 : level::dayOf(m_bestEnd);
    const int far = std::min(2 * day + kMarginDays, Timeline::kMostDays);
    m_planner.backward(m_back, far, kNever, Planner::From::Anywhere);
    ++m_schedules;
    sortBy(m_planner.lateStart(), individual.order, false, m_ahead);
    individual.end = forward(m_ahead);
    settle(m_ahead, individual);
}

std::size_t Search::populationSize() const
{
    const double size = kPopulation * std::sqrt(std::max(m_wanted.schedules, 1)) /
                        static_cast<double>(std::max(m_planner.count(), std::size_t{1}));
    return std::clamp(static_cast<std::size_t>(size), kLeastPopulation, kMostPopulation);
}

void Search::firstGeneration(std::size_t size)
{
    for (const PriorityRule rule : {PriorityRule::LatestFinish, PriorityRule::MostSuccessors,
                                    PriorityRule::LeastSlack, PriorityRule::LongestWorkload}) {
        m_population.push_back({level::byRule(m_planner, rule), level::kNeverInstant, 0});
        planTwice(m_population.back());
        if (over())
            return;
    }
    const std::vector<double> values = level::ruleValues(m_planner, PriorityRule::LatestFinish);
    while (m_population.size() < size && !over()) {
        m_population.emplace_back();
        level::drawOrder(m_planner, values, m_lot, m_population.back().order);
        planTwice(m_population.back());
    }
}

bool Search::hasTwin(const Individual &individual) const
{
    return std::any_of(m_population.begin(), m_population.end(), [&individual](const auto &other) {
        return other.mark == individual.mark && other.end == individual.end;
    });
}

// Two children of each pair; the best of all live on.
void Search::nextGeneration(std::size_t size)
{
    const std::size_t parents = m_population.size();
    for (std::size_t i = parents; i > 1; --i)
        std::swap(m_population[i - 1], m_population[m_lot.below(static_cast<std::uint32_t>(i))]);
    for (std::size_t i = 0; i + 1 < parents; i += 2) {
        for (const std::size_t father : {i, i + 1}) {
            if (over())
                return;
            const std::size_t mother = father == i ? i + 1 : i;
            Individual child;
            cross(m_population[father].order, m_population[mother].order, child.order);
            mutate(child.order);
            planBack(child);
            if (!hasTwin(child))
                m_population.push_back(std::move(child));
        }
    }
    std::stable_sort(m_population.begin(), m_population.end(),
                     [](const Individual &a, const Individual &b) { return a.end < b.end; });
    m_population.resize(std::min(m_population.size(), size));
}

// The father's first, then of the mother's what is missing, then the father's rest.
void Search::cross(const Order &father, const Order &mother, Order &child)
{
    const auto count = static_cast<std::uint32_t>(father.size());
    std::uint32_t from = m_lot.below(count + 1);
    std::uint32_t until = m_lot.below(count + 1);
    if (from > until)
        std::swap(from, until);
    std::fill(m_in.begin(), m_in.end(), 0);
    child.clear();
    const auto add = [&](std::int32_t a) {
        if (!m_in[static_cast<std::size_t>(a)]) {
            m_in[static_cast<std::size_t>(a)] = 1;
            child.push_back(a);
        }
    };
    for (std::uint32_t i = 0; i < from; ++i)
        add(father[i]);
    for (std::uint32_t i = 0; i < count && child.size() < until; ++i)
        add(mother[i]);
    for (std::uint32_t i = 0; i < count; ++i)
        add(father[i]);
}

void Search::mutate(Order &order)
{
    for (std::size_t i = 1; i < order.size(); ++i) {
        if (m_lot.below(kMutation) == 0 && !comesAfter(order[i], order[i - 1]))
            std::swap(order[i - 1], order[i]);
    }
}

LevelFound Search::run()
{
    m_in.assign(m_planner.count(), 0);
    // Of the longest chain, and of each resource's work poured into all there is of it.
    m_bound = std::max(m_planner.alone(level::byRule(m_planner, PriorityRule::LatestFinish)),
                       m_planner.poured());
    const std::size_t size = populationSize();
    firstGeneration(size);
    while (!over())
        nextGeneration(size);

    LevelFound found;
    found.order.assign(m_best.begin(), m_best.end());
    found.end = level::slotOf(m_bestEnd);
    found.endDay = level::dayOf(m_bestEnd);
    found.boundEnd = level::slotOf(m_bound);
    found.boundEndDay = level::dayOf(m_bound);
    found.schedules = m_schedules;
    found.stopped = m_cancelled            ? LevelFound::Stopped::Cancelled
                    : m_bestEnd <= m_bound ? LevelFound::Stopped::AtBound
                                           : LevelFound::Stopped::Spent;
    return found;
}

// The activities the goals come after, and the goals, ascending; all if there are no goals.
std::vector<std::size_t> neededFor(const Workload &workload, const std::vector<std::size_t> &goals)
{
    const std::size_t count = workload.activities.size();
    std::vector<char> needed(count, goals.empty());
    std::vector<std::size_t> open;
    const auto need = [&](std::size_t a) {
        if (a < count && !needed[a]) {
            needed[a] = 1;
            open.push_back(a);
        }
    };
    std::for_each(goals.begin(), goals.end(), need);
    while (!open.empty()) {
        const std::size_t a = open.back();
        open.pop_back();
        std::for_each(workload.activities[a].after.begin(), workload.activities[a].after.end(),
                      need);
    }
    std::vector<std::size_t> result;
    for (std::size_t a = 0; a < count; ++a) {
        if (needed[a])
            result.push_back(a);
    }
    return result;
}

} // namespace

// What the goals do not wait for can't delay them if it is planned after them, so it takes no part.
LevelFound searchOrder(const Workload &workload, const LevelSearch &search)
{
    const std::vector<std::size_t> needed = neededFor(workload, search.goals);
    Workload part{workload.timeline, workload.held, {}};
    std::vector<std::size_t> place(workload.activities.size(), 0);
    for (std::size_t i = 0; i < needed.size(); ++i)
        place[needed[i]] = i;
    for (const std::size_t a : needed) {
        part.activities.push_back(workload.activities[a]);
        for (std::size_t &before : part.activities.back().after)
            before = before < place.size() ? place[before] : before;
    }
    LevelFound found = Search(part, search).run();
    for (std::size_t &a : found.order)
        a = needed[a];

    std::vector<char> in(workload.activities.size(), 0);
    for (const std::size_t a : needed)
        in[a] = 1;
    level::Planner planner(workload);
    for (const std::int32_t a : level::byRule(planner, PriorityRule::LatestFinish)) {
        if (!in[static_cast<std::size_t>(a)])
            found.order.push_back(static_cast<std::size_t>(a));
    }
    return found;
}

} // namespace ohmwright::plan
