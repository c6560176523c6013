// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/forecast/order_by.h"

#include <algorithm>
#include <atomic>
#include <cmath>
#include <functional>
#include <numeric>
#include <utility>

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

// What orderByDays and latestRelease share: the goals of a plan, where they are kept, and how late
// what is asked for may be allowed to start.
//
// All samples are played once with everything today. In each, an activity may be let go so late
// that nothing at all changes: a delivery until it is there just when the first one in need of it
// starts, any other work until it starts itself. Only the samples in which a day tried is later
// than that are played anew, those first whose goals are nearest to being late, and no more once
// too many are. Which days are worth trying is found out on some of the samples.
class ReleaseSearch
{
public:
    using Group = std::vector<std::size_t>; // activities let go together

    // On the first `samples` of the simulation's.
    ReleaseSearch(const WorkPlan &plan, const Simulation &simulation, std::vector<Group> groups,
                  int percent, int samples, const Watch &watch)
        : m_plan(plan), m_simulation(simulation), m_groups(std::move(groups)), m_watch(watch),
          m_next(successorsOf(plan)), m_goals(plan.milestones)
    {
        if (m_goals.empty()) // then whatever nothing comes after
            for (std::size_t i = 0; i < plan.activities.size(); ++i)
                if (m_next[i].empty())
                    m_goals.push_back(i);
        for (const Activity &a : plan.activities)
            m_released.push_back(a.releaseDay);
        playAll(percent, static_cast<std::size_t>(samples));
    }

    [[nodiscard]] bool cancelled() const { return m_cancelled; }

    // Of the group at that place. None if no goal is behind it.
    std::optional<int> latest(std::size_t group)
    {
        Question ask;
        ask.group = group;
        const std::vector<char> reached = reachedFrom(m_groups[group], m_next);
        for (std::size_t g = 0; g < m_goals.size(); ++g)
            if (reached[m_goals[g]] && m_kept[g] != plan::kNever)
                ask.goals.push_back(g);
        if (ask.goals.empty() || m_cancelled)
            return std::nullopt;
        int good = 0;
        for (const std::size_t i : m_groups[group])
            good = std::max(good, m_plan.activities[i].releaseDay);
        int bad = good + 1; // beyond the last goal's day it is surely too late
        for (const std::size_t g : ask.goals)
            bad = std::max(bad, m_kept[g] + 2);
        ask.samples = std::min<std::size_t>(kFewSamples, m_ready.front().size());
        setLateAtMost(ask);
        const int guess = halve(ask, good, bad);
        ask.samples = m_ready.front().size();
        setLateAtMost(ask);
        closeIn(ask, guess, good, bad);
        good = halve(ask, good, bad);
        return m_cancelled ? std::nullopt : std::optional(good);
    }

private:
    static constexpr std::size_t kFewSamples = 1000;

    struct Question
    {
        std::size_t group = 0;
        std::vector<std::size_t> goals;      // that wait on it; places in m_goals
        std::size_t samples = 0;             // the first so many
        std::vector<std::size_t> lateAtMost; // of them, for each goal
    };

    // The last good day, where `good` is one and `bad` is none.
    int halve(const Question &ask, int good, int bad)
    {
        while (bad - good > 1 && !m_cancelled) {
            const int day = good + (bad - good) / 2;
            (keeps(ask, day) ? good : bad) = day;
        }
        return good;
    }

    // Brings both nearer, in steps that grow from `guess`.
    void closeIn(const Question &ask, int guess, int &good, int &bad)
    {
        if (guess <= good || guess >= bad)
            guess = good;
        const bool up = guess == good || keeps(ask, guess);
        (up ? good : bad) = guess;
        for (int step = 1; bad - good > 1 && !m_cancelled; step *= 2) {
            const int day = up ? good + step : bad - step;
            if (day <= good || day >= bad)
                return;
            const bool kept = keeps(ask, day);
            (kept ? good : bad) = day;
            if (kept != up)
                return;
        }
    }

    void playAll(int percent, std::size_t count)
    {
        m_ready.assign(m_goals.size(), std::vector<int>(count));
        m_free.assign(m_groups.size(), std::vector<int>(count));
        std::vector<int> all(count);
        std::iota(all.begin(), all.end(), 0);
        const auto note = [&](int sample, const plan::Levelled &plan, const Drawn &drawn) {
            const auto s = static_cast<std::size_t>(sample);
            for (std::size_t g = 0; g < m_goals.size(); ++g)
                m_ready[g][s] = plan.readyDay[m_goals[g]];
            for (std::size_t group = 0; group < m_groups.size(); ++group)
                m_free[group][s] = freeUntil(m_groups[group], plan, drawn);
            return true;
        };
        m_cancelled = !m_simulation.forEachOf(all, {}, note, m_watch);
        if (m_cancelled)
            return;
        for (const std::vector<int> &ready : m_ready) {
            std::vector<int> days = ready;
            m_kept.push_back(dayAt(days, percent));
        }
        m_lateAtMost = mayBeLate(count, percent);
    }

    [[nodiscard]] int freeUntil(const Group &group, const plan::Levelled &plan,
                                const Drawn &drawn) const
    {
        int free = plan::Timeline::kMostDays; // beyond it nothing that waits is planned at all
        for (const std::size_t i : group) {
            const ActivityKind kind = m_plan.activities[i].kind;
            const bool isWait = kind == ActivityKind::Delivery || kind == ActivityKind::Answer;
            if (!isWait || m_next[i].empty()) {
                free = std::min(free, plan.startDay[i]);
                continue;
            }
            for (const std::size_t next : m_next[i])
                free = std::min(free, std::min(plan.startDay[next], plan::Timeline::kMostDays) -
                                          drawn.waitDays[i]);
        }
        return free;
    }

    [[nodiscard]] bool isLate(std::size_t goal, int ready) const { return ready > m_kept[goal]; }

    // Of some of the samples as large a share more than are late already as of all.
    void setLateAtMost(Question &ask) const
    {
        ask.lateAtMost.clear();
        for (const std::size_t g : ask.goals) {
            const std::vector<int> &ready = m_ready[g];
            const auto isLateHere = [&](int day) {
                return isLate(g, day);
            };
            const auto some = ready.begin() + static_cast<std::ptrdiff_t>(ask.samples);
            const auto lateOfAll =
                static_cast<std::size_t>(std::ranges::count_if(ready, isLateHere));
            const auto late =
                static_cast<std::size_t>(std::count_if(ready.begin(), some, isLateHere));
            ask.lateAtMost.push_back(late +
                                     (m_lateAtMost - lateOfAll) * ask.samples / ready.size());
        }
    }

    // Whether the goals stay where they are if the group is let go on that day.
    bool keeps(const Question &ask, int day)
    {
        std::vector<std::atomic<std::size_t>> late(ask.goals.size());
        std::vector<std::pair<int, int>> anew; // days until a goal is late, sample
        for (std::size_t s = 0; s < ask.samples; ++s) {
            int left = plan::kNever;
            for (std::size_t w = 0; w < ask.goals.size(); ++w) {
                const std::size_t goal = ask.goals[w];
                left = std::min(left, m_kept[goal] - m_ready[goal][s]);
                if (m_free[ask.group][s] >= day && isLate(goal, m_ready[goal][s]))
                    ++late[w];
            }
            if (m_free[ask.group][s] < day)
                anew.emplace_back(left, static_cast<int>(s));
        }
        std::ranges::sort(anew);
        std::vector<int> samples;
        for (const auto &[left, sample] : anew)
            samples.push_back(sample);
        std::vector<int> released = m_released;
        for (const std::size_t i : m_groups[ask.group])
            released[i] = std::max(released[i], day);
        const auto count = [&](int, const plan::Levelled &plan, const Drawn &) {
            bool go = true;
            for (std::size_t w = 0; w < ask.goals.size(); ++w)
                if (isLate(ask.goals[w], plan.readyDay[m_goals[ask.goals[w]]]))
                    go = ++late[w] <= ask.lateAtMost[w] && go;
            return go;
        };
        m_cancelled = !m_simulation.forEachOf(samples, released, count, m_watch);
        return !m_cancelled && std::ranges::equal(late, ask.lateAtMost, std::less_equal<>());
    }

    const WorkPlan &m_plan;
    const Simulation &m_simulation;
    std::vector<Group> m_groups;
    const Watch &m_watch;
    std::vector<std::vector<std::size_t>> m_next;
    std::vector<std::size_t> m_goals;
    std::vector<std::vector<int>> m_ready; // per goal, per sample
    std::vector<std::vector<int>> m_free;  // per group, per sample
    std::vector<int> m_kept;               // day of each goal
    std::vector<int> m_released;
    std::size_t m_lateAtMost = 0; // of all samples
    bool m_cancelled = false;
};

} // namespace

std::size_t mayBeLate(std::size_t samples, int percent)
{
    constexpr double kRounding = 1e-6; // 40 is not to be 39.999…
    const std::size_t atLeast = (samples * static_cast<std::size_t>(percent) + 99) / 100;
    const double share = percent / 100.0;
    const double error = std::sqrt(static_cast<double>(samples) * share * (1 - share));
    const std::size_t late =
        samples - atLeast + static_cast<std::size_t>(kErrorsUnseen * error + kRounding);
    return std::min(late, samples - 1); // a plan without spread is late in all of them at once
}

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
    return ReleaseSearch(plan, simulation, {activities}, confidencePercent, simulation.samples(),
                         watch)
        .latest(0);
}

int orderBySamples(const WorkPlan &plan, int samples)
{
    constexpr std::size_t kWork = 20'000'000; // orders x activities x samples: some seconds
    constexpr std::size_t kFewest = 1000;
    const auto orders = static_cast<std::size_t>(std::ranges::count_if(
        plan.activities, [](const Activity &a) { return a.toOrder || a.toAsk; }));
    const std::size_t each = std::max<std::size_t>(1, orders * plan.activities.size());
    return std::min(samples, static_cast<int>(std::max(kFewest, kWork / each)));
}

std::vector<OrderBy> orderByDays(const WorkPlan &plan, const Simulation &simulation,
                                 int confidencePercent, const Watch &watch,
                                 const std::vector<std::size_t> &wanted)
{
    std::vector<std::vector<std::size_t>> each;
    for (std::size_t i = 0; i < plan.activities.size(); ++i)
        if ((plan.activities[i].toOrder || plan.activities[i].toAsk) &&
            (wanted.empty() || std::ranges::count(wanted, i) > 0))
            each.push_back({i});
    ReleaseSearch search(plan, simulation, each, confidencePercent,
                         orderBySamples(plan, simulation.samples()), watch);
    std::vector<OrderBy> list;
    for (std::size_t at = 0; at < each.size() && !search.cancelled(); ++at) {
        const std::optional<int> day = search.latest(at);
        list.push_back({each[at].front(), day.value_or(0), day.has_value()});
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
