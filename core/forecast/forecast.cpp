// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/forecast/forecast.h"

#include "core/forecast/milestone_order.h"

#include <algorithm>
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
    const std::size_t rank =
        (ready.size() * static_cast<std::size_t>(percent) + 99) / 100; // from 1
    const std::size_t at = std::clamp<std::size_t>(rank, 1, ready.size()) - 1;
    std::nth_element(ready.begin(), ready.begin() + static_cast<std::ptrdiff_t>(at), ready.end());
    return ready[at];
}

// Draws and levels; each thread has one.
class Simulation::Player
{
public:
    Player(const Simulation &of, const std::vector<int> &released)
        : m_of(of), m_levelling(of.m_workload), m_released(released)
    {
        m_levelling.setOrder(of.m_order);
    }

    const plan::Levelled &play(int sample)
    {
        m_of.m_draws.draw(static_cast<std::uint64_t>(sample), m_drawn);
        return m_levelling.pass({m_drawn.work, m_drawn.waitDays, m_released});
    }
    [[nodiscard]] const std::vector<int> &waits() const { return m_drawn.waitDays; }

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

bool Simulation::inThreads(const Watch &watch, const Play &play,
                           const std::vector<int> &released) const
{
    const int samples = m_settings.samples;
    const auto cores = static_cast<int>(std::thread::hardware_concurrency());
    const int threads = std::clamp(m_settings.threads > 0 ? m_settings.threads : cores, 1,
                                   std::max(1, samples / kBlock));
    std::atomic<int> next = 0;
    const auto take = [&] {
        Player player(*this, released);
        for (int from = next.fetch_add(kBlock); from < samples && !watch.isCancelled();
             from = next.fetch_add(kBlock)) {
            const int to = std::min(samples, from + kBlock);
            for (int sample = from; sample < to; ++sample)
                play(player, sample);
            if (watch.samplesDone)
                watch.samplesDone->fetch_add(to - from);
        }
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

    std::vector<std::vector<int>> ready(count, std::vector<int>(samples));
    std::vector<std::size_t> targets = m_plan.milestones;
    if (targets.empty())
        targets.push_back(count); // whatever is ready last
    std::vector<std::vector<std::atomic<int>>> driving(targets.size());
    for (auto &counts : driving)
        counts = std::vector<std::atomic<int>>(count);
    const bool done =
        inThreads(watch,
                  [&](Player &player, int sample) {
                      const plan::Levelled &plan = player.play(sample);
                      for (std::size_t i = 0; i < count; ++i)
                          ready[i][static_cast<std::size_t>(sample)] = plan.readyDay[i];
                      for (std::size_t t = 0; t < targets.size(); ++t) {
                          std::size_t target = targets[t];
                          if (target == count && count > 0)
                              target = static_cast<std::size_t>(
                                  std::max_element(plan.readyDay.begin(), plan.readyDay.end()) -
                                  plan.readyDay.begin());
                          if (target < count)
                              traceBack(plan, target, count, [&](std::size_t i) {
                                  driving[t][i].fetch_add(1, std::memory_order_relaxed);
                              });
                      }
                  },
                  {});
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
        double sum = 0;
        int counted = 0;
        for (const int day : ready[i])
            if (day != plan::kNever) {
                sum += day;
                ++counted;
            }
        a.meanReady = counted > 0 ? sum / counted : 0;
        for (std::size_t c = 0; c < kConfidences.size(); ++c)
            a.ready[c] = dayAt(ready[i], kConfidences[c]);
    }
    for (std::size_t t = 0; t < targets.size(); ++t) {
        std::vector<double> shares(count);
        for (std::size_t i = 0; i < count; ++i)
            shares[i] = driving[t][i].load() / static_cast<double>(samples);
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
    result.cancelled = !inThreads(
        watch,
        [&](Player &player, int sample) {
            const plan::Levelled &plan = player.play(sample);
            for (std::size_t w = 0; w < wanted.size(); ++w)
                result.ready[w][static_cast<std::size_t>(sample)] = plan.readyDay[wanted[w]];
        },
        released);
    return result;
}

void Simulation::forEachSample(int samples, const Visit &visit) const
{
    const std::vector<int> asPlanned;
    Player player(*this, asPlanned);
    for (int sample = 0; sample < samples; ++sample)
        visit(player.play(sample), player.waits());
}

Forecast forecastOf(const WorkPlan &plan, const Settings &settings, const Watch &watch)
{
    return Simulation(plan, settings).run(watch);
}

} // namespace ohmwright::forecast
