// SPDX-License-Identifier: GPL-3.0-or-later
// The forecast: a work plan played through many times, each time with other luck.
//
// Every sample draws how long each activity takes, how long each delivery and answer waits, and how
// often each test fails, and levels the whole with the hands there are (plan::Levelling), in one
// order of priority that was searched for beforehand. What is drawn depends on the seed, the sample
// and the activity's key alone, so the result is the same whatever the number of threads, and two
// plans that differ in one thing are compared on the same luck everywhere else.
//
// Monte Carlo in project networks: R. M. Van Slyke, Operations Research 11 (1963) 839-860, who also
// names the share of samples in which an activity is critical.
#pragma once

#include "core/forecast/draws.h"
#include "core/forecast/work_plan.h"

#include <array>
#include <atomic>
#include <cstdint>
#include <functional>
#include <vector>

namespace ohmwright::forecast {

inline constexpr std::array<int, 3> kConfidences{50, 80, 95}; // percent

struct Settings
{
    int samples = 10'000; // 1 to 1,000,000
    std::uint64_t seed = 1;
    int threads = 0; // 0: as many as the machine has
    // Passes spent on a good order of priority, fewer in a plan of many hundred activities; 0:
    // latest finish first.
    int orderPasses = 60'000;
};

// Days are told of all samples, what drives them of so many: its standard error is 0.7 % at most,
// less than what is shown, and following the others back takes an eighth of the time.
inline constexpr int kMostTraced = 5000;

// For work beside the window's thread. Either may be left out.
struct Watch
{
    const std::atomic<bool> *cancelled = nullptr;
    std::atomic<int> *samplesDone = nullptr;
    [[nodiscard]] bool isCancelled() const { return cancelled && cancelled->load(); }
};

// Days are counted from today; plan::kNever for what can never be.
struct ActivityForecast
{
    int plannedStart = 0, plannedFinish = 0; // by the likely estimates
    int floatDays = 0;          // the planned start may slip so far without moving the last end
    std::array<int, 3> ready{}; // at kConfidences: done, and waited for
    double meanReady = 0;       // of the samples in which it is ever ready
    // Share of the traced samples in which it drives the last milestone (the plan's end, without
    // milestones).
    double driving = 0;
};

struct Forecast
{
    QDate today;
    std::vector<ActivityForecast> activities; // as in the work plan
    std::vector<std::size_t> order;           // of priority
    // Per milestone, in the work plan's order: share of the traced samples in which each activity
    // drives it.
    std::vector<std::vector<double>> drivingMilestone;
    int samples = 0;
    int traced = 0;         // the first of them: followed back to what drove them
    bool cancelled = false; // nothing above is filled in then
    [[nodiscard]] QDate dayOf(int days) const { return today.addDays(days); }
};

// The days of every sample of some activities: for comparing plans and for distributions.
struct Samples
{
    std::vector<std::vector<int>> ready; // per asked activity, per sample
    bool cancelled = false;
};

class Simulation
{
public:
    // `order` of priority: of an earlier forecast of the same plan; searched for when empty. A
    // search that is cancelled leaves a worse one.
    Simulation(const WorkPlan &plan, const Settings &settings, std::vector<std::size_t> order = {},
               const Watch &watch = {});

    [[nodiscard]] const std::vector<std::size_t> &order() const { return m_order; }
    Forecast run(const Watch &watch = {}) const;
    // Ready days of `wanted` activities alone, with some deliveries ordered later: `released` gives
    // a release day for each activity, or is empty.
    [[nodiscard]] Samples sample(const std::vector<std::size_t> &wanted,
                                 const std::vector<int> &released, const Watch &watch = {}) const;
    // What happens in the samples, one after the other in this thread, for sums over whole samples:
    // visit(the days of the levelled plan, what was drawn for it).
    using Visit = std::function<void(const plan::Levelled &, const Drawn &)>;
    void forEachSample(int samples, const Visit &visit) const;
    // The same in as many threads as the settings say, of these samples alone and with `released`
    // as above: visit(sample, …) comes at once for several samples, once for each, and ends it all
    // early by returning false. False if cancelled.
    using VisitAny = std::function<bool(int, const plan::Levelled &, const Drawn &)>;
    bool forEachOf(const std::vector<int> &samples, const std::vector<int> &released,
                   const VisitAny &visit, const Watch &watch = {}) const;
    [[nodiscard]] int samples() const { return m_settings.samples; }

private:
    class Player;
    using Play = std::function<bool(Player &, int)>;    // one of so many; false: that is enough
    using Finish = std::function<void(const Player &)>; // one thread's, one after the other
    void findOrder(const Watch &watch);
    [[nodiscard]] bool inThreads(int count, const std::vector<int> &released, const Watch &watch,
                                 const Play &play, const Finish &finish = {}) const;

    const WorkPlan &m_plan;
    Settings m_settings;
    std::vector<std::size_t> m_order;
    Draws m_draws;
    plan::Workload m_workload;
};

// For the planning engine, by the likely times; without what is done again if a test fails.
plan::Workload workloadOf(const WorkPlan &plan);

// The day by which `percent` of the samples are ready: the smallest with at least that share.
// plan::kNever if too many never are. `ready` is reordered; not empty.
int dayAt(std::vector<int> &ready, int percent);

Forecast forecastOf(const WorkPlan &plan, const Settings &settings = {}, const Watch &watch = {});

} // namespace ohmwright::forecast
