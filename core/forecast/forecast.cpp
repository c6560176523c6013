// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/forecast/forecast.h"

#include "core/forecast/hours.h"
#include "core/forecast/search_order.h"

#include <algorithm>
#include <cmath>
#include <thread>

namespace ohmwright::forecast {

namespace {

constexpr int kMostRepeats = 20; // a test that fails more often than that in one sample
constexpr int kBlock = 64;       // samples a thread takes at a time

int slotsOf(double minutes)
{
    return minutes <= 0 ? 0 : std::max(1, static_cast<int>(std::lround(minutes / kSlotMinutes)));
}

// FNV-1a over the key: the same luck for the same thing in every plan.
std::uint64_t thingOf(const QString &key)
{
    std::uint64_t hash = 0xcbf29ce484222325ULL;
    for (const QChar c : key)
        hash = (hash ^ c.unicode()) * 0x100000001b3ULL;
    return hash;
}

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
        : m_of(of), m_levelling(of.m_workload), m_work(of.m_plan.activities.size()),
          m_wait(m_work.size()), m_released(released), m_repeats(of.m_plan.risks.size())
    {
        m_levelling.setOrder(of.m_order);
    }

    const plan::Levelled &play(int sample)
    {
        const auto number = static_cast<std::uint64_t>(sample);
        const std::uint64_t seed = m_of.m_settings.seed;
        for (std::size_t r = 0; r < m_repeats.size(); ++r) {
            // failures in a row: geometric
            const double chance = m_of.m_plan.risks[r].chance;
            const double u = luck(seed, number, m_of.m_riskThings[r]);
            m_repeats[r] = chance <= 0 ? 0
                                       : std::min(kMostRepeats,
                                                  static_cast<int>(std::log(u) / std::log(chance)));
        }
        for (std::size_t i = 0; i < m_work.size(); ++i) {
            const Quantiles &work = m_of.m_work[i];
            const Quantiles &wait = m_of.m_wait[i];
            const std::uint64_t thing = m_of.m_things[i];
            m_work[i] = slotsOf(work.at(work.isFixed() ? 0 : luck(seed, number, thing)));
            m_wait[i] =
                static_cast<int>(wait.at(wait.isFixed() ? 0 : luck(seed, number, thing + 1)) + 0.5);
            if (const auto &risk = m_of.m_plan.activities[i].risk) {
                m_work[i] *= m_repeats[*risk];
                m_wait[i] *= m_repeats[*risk];
            }
        }
        return m_levelling.pass({m_work, m_wait, m_released});
    }
    [[nodiscard]] const std::vector<int> &waits() const { return m_wait; }

private:
    const Simulation &m_of;
    plan::Levelling m_levelling;
    std::vector<int> m_work, m_wait;
    const std::vector<int> &m_released;
    std::vector<int> m_repeats;
};

Simulation::Simulation(const WorkPlan &plan, const Settings &settings,
                       std::vector<std::size_t> order)
    : m_plan(plan), m_settings(settings), m_order(std::move(order)), m_workload(workloadOf(plan))
{
    m_settings.samples = std::clamp(settings.samples, 1, 1'000'000);
    for (const Activity &a : plan.activities) {
        m_things.push_back(thingOf(a.key));
        m_work.emplace_back(a.work);
        m_wait.emplace_back(a.wait);
    }
    for (const Risk &risk : plan.risks)
        m_riskThings.push_back(
            thingOf(QStringLiteral("fails:") + plan.activities[risk.activity].key));
    if (m_order.size() != plan.activities.size())
        findOrder();
}

void Simulation::findOrder()
{
    std::vector<Goal> goals;
    for (std::size_t m = 0; m < m_plan.milestones.size(); ++m)
        goals.push_back(
            {m_plan.milestones[m], m < m_plan.due.size() ? m_plan.due[m] : std::nullopt});
    m_order = searchOrder(m_workload, goals, m_settings.orderPasses, m_settings.seed);
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
