// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/forecast/forecast.h"

#include "core/forecast/milestone_order.h"

#include <algorithm>
#include <functional>
#include <mutex>
#include <thread>

namespace ohmwright::forecast {

namespace {

constexpr int kBlock = 64; // samples a thread takes at a time
// The order of priority is judged on samples of its own, behind all that a forecast can have.
constexpr std::uint64_t kOrderSamples = 24;
constexpr std::uint64_t kFirstOrderSample = 1'000'000;
// Activities placed in all its passes: so a plan of thousands does not take minutes.
constexpr std::size_t kOrderPlacements = 10'000'000;

// The activities that set when `target` is ready, from it back; each once.
template <class Mark>
void traceBack(const plan::Levelled &plan, std::size_t target, std::size_t count, Mark mark)
{
    std::size_t at = target;
    for (std::size_t steps = 0; steps <= count; ++steps) {
        mark(at);
        // what interrupted it last set its finish, whatever its start waited for
        if (plan.interrupter[at] >= 0) {
            at = static_cast<std::size_t>(plan.interrupter[at]);
            continue;
        }
        const plan::Driver &driver = plan.driver[at];
        if (driver.by != plan::DrivenBy::Link && driver.by != plan::DrivenBy::Resource)
            return;
        at = static_cast<std::size_t>(driver.activity);
    }
}

// Of so many in order the one at which the share is reached, counted from 0.
std::size_t rankAt(std::size_t of, int percent)
{
    const std::size_t rank = (of * static_cast<std::size_t>(percent) + 99) / 100; // from 1
    return std::clamp<std::size_t>(rank, 1, of) - 1;
}

} // namespace

plan::Workload workloadOf(const WorkPlan &plan)
{
    plan::Workload load;
    load.timeline = plan.timeline;
    load.held = plan.held;
    load.activities.reserve(plan.activities.size());
    for (const Activity &a : plan.activities) {
        plan::Activity one;
        const bool again = a.risk.has_value(); // happens in some samples only
        one.work = again ? 0 : slotsOf(a.work.likely);
        one.waitDays = again ? 0 : a.wait.likely;
        one.demand = a.demand;
        one.releaseDay = a.releaseDay;
        one.manner = a.manner;
        one.after = a.after;
        load.activities.push_back(std::move(one));
    }
    return load;
}

int dayAt(std::vector<int> &ready, int percent)
{
    const std::size_t at = rankAt(ready.size(), percent);
    std::nth_element(ready.begin(), ready.begin() + static_cast<std::ptrdiff_t>(at), ready.end());
    return ready[at];
}

namespace {

// Mean and quantiles of one activity's days. A plan spans some thousands of days at most, so that
// they are counted; sorting them is seen in the time of a forecast.
void tellReady(std::vector<int> &days, std::vector<int> &counts, ActivityForecast &into)
{
    constexpr int kMostCounted = 1 << 14;
    int first = plan::kNever;
    int last = 0;
    double sum = 0;
    int counted = 0;
    for (const int day : days)
        if (day != plan::kNever) {
            first = counted == 0 ? day : std::min(first, day);
            last = counted == 0 ? day : std::max(last, day);
            sum += day;
            ++counted;
        }
    into.meanReady = counted > 0 ? sum / counted : 0;
    if (counted == 0 || last - first >= kMostCounted) {
        for (std::size_t c = 0; c < kConfidences.size(); ++c)
            into.ready[c] = dayAt(days, kConfidences[c]);
        return;
    }
    counts.assign(static_cast<std::size_t>(last - first) + 1, 0);
    for (const int day : days)
        if (day != plan::kNever)
            ++counts[static_cast<std::size_t>(day - first)];
    for (std::size_t c = 0; c < kConfidences.size(); ++c) {
        const int rank = static_cast<int>(rankAt(days.size(), kConfidences[c]));
        int passed = 0;
        into.ready[c] = plan::kNever;
        for (std::size_t day = 0; day < counts.size(); ++day) {
            passed += counts[day];
            if (passed > rank) {
                into.ready[c] = first + static_cast<int>(day);
                break;
            }
        }
    }
}

// `ready` has a sample after the other: some activities at a time are brought together, so that
// each line of memory is read once.
void tellReady(const std::vector<int> &ready, std::size_t count,
               std::vector<ActivityForecast> &into)
{
    constexpr std::size_t kTogether = 16;
    const std::size_t samples = count > 0 ? ready.size() / count : 0;
    std::vector<std::vector<int>> days(kTogether, std::vector<int>(samples));
    std::vector<int> counts;
    for (std::size_t from = 0; from < count; from += kTogether) {
        const std::size_t several = std::min(kTogether, count - from);
        for (std::size_t sample = 0; sample < samples; ++sample)
            for (std::size_t i = 0; i < several; ++i)
                days[i][sample] = ready[sample * count + from + i];
        for (std::size_t i = 0; i < several; ++i)
            tellReady(days[i], counts, into[from + i]);
    }
}

} // namespace

// Draws and levels; each thread has one.
class Simulation::Player
{
public:
    Player(const Simulation &of, const std::vector<int> &released)
        : m_of(of), m_levelling(of.m_workload), m_released(released)
    {
        m_levelling.setOrder(of.m_order);
    }

    using Traced = plan::Levelling::Traced;
    const plan::Levelled &play(int sample, Traced traced)
    {
        m_of.m_draws.draw(static_cast<std::uint64_t>(sample), m_drawn);
        return m_levelling.pass({m_drawn.work, m_drawn.waitDays, m_released}, traced);
    }
    [[nodiscard]] const Drawn &drawn() const { return m_drawn; }
    // How often each activity was on the chain of each target, of what this one played.
    std::vector<std::vector<int>> driving;

private:
    const Simulation &m_of;
    plan::Levelling m_levelling;
    Drawn m_drawn;
    const std::vector<int> &m_released;
};

Simulation::Simulation(const WorkPlan &plan, const Settings &settings,
                       std::vector<std::size_t> order, const Watch &watch)
    : m_plan(plan), m_settings(settings), m_order(std::move(order)), m_draws(plan, settings.seed),
      m_workload(workloadOf(plan))
{
    m_settings.samples = std::clamp(settings.samples, 1, 1'000'000);
    if (m_order.size() != plan.activities.size())
        findOrder(watch);
}

void Simulation::findOrder(const Watch &watch)
{
    OrderSearch search;
    const std::size_t count = std::max<std::size_t>(1, m_plan.activities.size());
    search.passes = std::min(m_settings.orderPasses, static_cast<int>(kOrderPlacements / count));
    search.cancelled = [&watch] {
        return watch.isCancelled();
    };
    search.seed = m_settings.seed;
    for (std::size_t m = 0; m < m_plan.milestones.size(); ++m)
        search.goals.push_back(
            {m_plan.milestones[m], m < m_plan.due.size() ? m_plan.due[m] : std::nullopt});
    search.luck.resize(kOrderSamples);
    for (std::uint64_t s = 0; s < kOrderSamples; ++s)
        m_draws.draw(kFirstOrderSample + s, search.luck[s]);
    m_order = milestoneOrder(m_workload, search);
}

bool Simulation::inThreads(int count, const std::vector<int> &released, const Watch &watch,
                           const Play &play, const Finish &finish) const
{
    const auto cores = static_cast<int>(std::thread::hardware_concurrency());
    const int threads = std::clamp(m_settings.threads > 0 ? m_settings.threads : cores, 1,
                                   std::max(1, count / kBlock));
    std::atomic<int> next = 0;
    std::atomic<bool> enough = false;
    std::mutex guard;
    const auto take = [&] {
        Player player(*this, released);
        for (int from = next.fetch_add(kBlock); from < count && !enough && !watch.isCancelled();
             from = next.fetch_add(kBlock)) {
            const int to = std::min(count, from + kBlock);
            for (int at = from; at < to && !enough; ++at)
                if (!play(player, at))
                    enough = true;
            if (watch.samplesDone)
                watch.samplesDone->fetch_add(to - from);
        }
        const std::lock_guard lock(guard);
        if (finish)
            finish(player);
    };
    std::vector<std::thread> others;
    for (int i = 1; i < threads; ++i)
        others.emplace_back(take);
    take();
    for (std::thread &other : others)
        other.join();
    return !watch.isCancelled();
}

Forecast Simulation::run(const Watch &watch) const
{
    const std::size_t count = m_plan.activities.size();
    const auto samples = static_cast<std::size_t>(m_settings.samples);
    Forecast forecast;
    forecast.today = m_plan.today;
    forecast.samples = m_settings.samples;
    forecast.traced = std::min(m_settings.samples, kMostTraced);

    std::vector<int> ready(samples * count); // a sample after the other: written in one go
    std::vector<std::size_t> targets = m_plan.milestones;
    if (targets.empty())
        targets.push_back(count); // whatever is ready last
    std::vector<std::vector<int>> driving(targets.size(), std::vector<int>(count));
    const bool done = inThreads(
        m_settings.samples, {}, watch,
        [&](Player &player, int sample) {
            const bool isTraced = sample < forecast.traced;
            const plan::Levelled &plan =
                player.play(sample, isTraced ? Player::Traced::Yes : Player::Traced::No);
            std::ranges::copy(plan.readyDay,
                              ready.begin() + static_cast<std::ptrdiff_t>(
                                                  static_cast<std::size_t>(sample) * count));
            if (!isTraced)
                return true;
            if (player.driving.empty())
                player.driving.assign(targets.size(), std::vector<int>(count));
            for (std::size_t t = 0; t < targets.size(); ++t) {
                std::size_t target = targets[t];
                if (target == count && count > 0)
                    target = static_cast<std::size_t>(
                        std::max_element(plan.readyDay.begin(), plan.readyDay.end()) -
                        plan.readyDay.begin());
                if (target < count)
                    traceBack(plan, target, count, [&](std::size_t i) { ++player.driving[t][i]; });
            }
            return true;
        },
        [&](const Player &player) {
            for (std::size_t t = 0; t < player.driving.size(); ++t)
                std::ranges::transform(player.driving[t], driving[t], driving[t].begin(),
                                       std::plus<>());
        });
    forecast.cancelled = !done;
    if (!done)
        return forecast;

    plan::Levelling levelling(m_workload);
    levelling.setOrder(m_order);
    const plan::Levelled planned = levelling.pass();
    const plan::Latest latest = levelling.latest(planned.endDay);
    forecast.order = m_order;
    forecast.activities.resize(count);
    for (std::size_t i = 0; i < count; ++i) {
        ActivityForecast &a = forecast.activities[i];
        a.plannedStart = planned.startDay[i];
        a.plannedFinish = planned.readyDay[i];
        a.floatDays = latest.floatDays[i];
    }
    tellReady(ready, count, forecast.activities);
    for (std::size_t t = 0; t < targets.size(); ++t) {
        std::vector<double> shares(count);
        for (std::size_t i = 0; i < count; ++i)
            shares[i] = driving[t][i] / static_cast<double>(forecast.traced);
        if (t + 1 == targets.size())
            for (std::size_t i = 0; i < count; ++i)
                forecast.activities[i].driving = shares[i];
        if (!m_plan.milestones.empty())
            forecast.drivingMilestone.push_back(std::move(shares));
    }
    return forecast;
}

Samples Simulation::sample(const std::vector<std::size_t> &wanted, const std::vector<int> &released,
                           const Watch &watch) const
{
    Samples result;
    result.ready.assign(wanted.size(),
                        std::vector<int>(static_cast<std::size_t>(m_settings.samples)));
    result.cancelled =
        !inThreads(m_settings.samples, released, watch, [&](Player &player, int sample) {
            const plan::Levelled &plan = player.play(sample, Player::Traced::No);
            for (std::size_t w = 0; w < wanted.size(); ++w)
                result.ready[w][static_cast<std::size_t>(sample)] = plan.readyDay[wanted[w]];
            return true;
        });
    return result;
}

bool Simulation::forEachOf(const std::vector<int> &samples, const std::vector<int> &released,
                           const VisitAny &visit, const Watch &watch) const
{
    return inThreads(static_cast<int>(samples.size()), released, watch,
                     [&](Player &player, int at) {
                         const int sample = samples[static_cast<std::size_t>(at)];
                         const plan::Levelled &plan = player.play(sample, Player::Traced::No);
                         return visit(sample, plan, player.drawn());
                     });
}

void Simulation::forEachSample(int samples, const Visit &visit) const
{
    const std::vector<int> asPlanned;
    Player player(*this, asPlanned);
    for (int sample = 0; sample < samples; ++sample)
        visit(player.play(sample, Player::Traced::No), player.drawn());
}

Forecast forecastOf(const WorkPlan &plan, const Settings &settings, const Watch &watch)
{
    return Simulation(plan, settings).run(watch);
}

} // namespace ohmwright::forecast
