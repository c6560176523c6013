// SPDX-License-Identifier: GPL-3.0-or-later
// One pass of levelling over a build of 200 activities: two evenings and a Saturday with a helper,
// in quarters of an hour; a bay, six tools, deliveries, things that cure. Work is drawn anew for
// each pass, as a forecast does.
#include "core/plan/levelling.h"
#include "tests/support/chance.h"

#include <benchmark/benchmark.h>

#include <array>
#include <cstddef>
#include <vector>

namespace ohmwright::plan {
namespace {

constexpr int kActivities = 200;
constexpr int kSamples = 64;

Timeline evenings(int helpers)
{
    constexpr int kTools = 6;
    Timeline timeline;
    for (const int hands : {1, 1 + helpers}) {
        std::vector<int> capacity(2 + kTools, 1);
        capacity[0] = hands;
        timeline.profiles.push_back(capacity);
    }
    for (const auto &[day, slots, profile] :
         {std::array{1, 10, 0}, std::array{3, 10, 0}, std::array{5, 20, 1}}) {
        for (int i = 0; i < slots; ++i)
            timeline.line.push_back({day, profile});
    }
    return timeline;
}

Workload build(int helpers)
{
    Chance chance(3);
    Workload workload{evenings(helpers), {0, 1}, {}};
    for (int i = 0; i < kActivities; ++i) {
        Activity made;
        made.work = chance.oneIn(8) ? 0 : chance.between(2, 22);
        made.demand.assign(8, 0);
        made.demand[0] = helpers > 0 && chance.oneIn(12) ? 2 : 1;
        made.demand[1] = chance.oneIn(5) ? 1 : 0;
        if (chance.oneIn(2))
            made.demand[static_cast<std::size_t>(chance.between(2, 7))] = 1;
        made.waitDays = chance.oneIn(6) ? chance.between(1, 21) : 0;
        made.releaseDay = chance.oneIn(5) ? chance.between(7, 200) : 0;
        made.manner = chance.oneIn(10) ? Manner::OneSitting : Manner::Split;
        for (int links = i == 0 ? 0 : chance.between(0, 3); links > 0; --links)
            made.after.push_back(
                static_cast<std::size_t>(chance.between(std::max(0, i - 25), i - 1)));
        workload.activities.push_back(made);
    }
    return workload;
}

void onePass(benchmark::State &state)
{
    const Workload workload = build(static_cast<int>(state.range(0)));
    Levelling levelling(workload);
    Chance chance(5);
    std::vector<std::vector<int>> samples(kSamples);
    for (std::vector<int> &work : samples) {
        for (const Activity &activity : workload.activities)
            work.push_back(activity.work * chance.between(7, 18) / 10);
    }
    std::size_t next = 0;
    for (auto _ : state) {
        benchmark::DoNotOptimize(levelling.pass({samples[next], {}, {}}).endDay);
        next = (next + 1) % kSamples;
    }
    state.counters["end slot"] = levelling.plan().end;
    state.counters["end day"] = levelling.plan().endDay;
}
BENCHMARK(onePass)->Arg(0)->Arg(1)->Unit(benchmark::kMicrosecond);

} // namespace
} // namespace ohmwright::plan

BENCHMARK_MAIN();
