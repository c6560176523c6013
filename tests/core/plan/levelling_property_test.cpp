// SPDX-License-Identifier: GPL-3.0-or-later
// What must hold for every plan, on workloads made by chance. Each plan goes through LevelCheck.
//
// Not asserted, for it is not so: that more hands, less work or an earlier delivery make no plan of
// the same order longer. Serial schedule generation is list scheduling and has its anomalies
// (R. L. Graham, SIAM Journal on Applied Mathematics 17 (1969) 416-429).
#include "core/plan/levelling.h"
#include "tests/core/plan/random_workload.h"
#include "tests/support/chance.h"
#include "tests/support/level_check.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cstddef>
#include <numeric>
#include <string>
#include <utility>
#include <vector>

namespace ohmwright::plan {
namespace {

using testing::LevelCheck;
using testing::randomWorkload;

constexpr int kWorkloads = 3000;

std::vector<std::size_t> shuffled(Chance &chance, std::size_t count)
{
    std::vector<std::size_t> order(count);
    std::iota(order.begin(), order.end(), std::size_t{0});
    for (std::size_t i = count; i > 1; --i)
        std::swap(order[i - 1], order[static_cast<std::size_t>(chance.below(static_cast<int>(i)))]);
    return order;
}

struct Durations
{
    std::vector<int> work, waitDays, releaseDay;
    [[nodiscard]] Sample sample() const { return {work, waitDays, releaseDay}; }
};

Durations drawn(Chance &chance, const Workload &workload)
{
    Durations made;
    for (const Activity &activity : workload.activities) {
        made.work.push_back(activity.work + chance.between(-3, 6));
        made.waitDays.push_back(activity.waitDays + chance.between(-2, 4));
        made.releaseDay.push_back(activity.releaseDay + chance.between(-5, 20));
    }
    return made;
}

TEST(LevellingProperties, EveryPlanIsSoundInWhateverOrderAndWithWhateverDurations)
{
    Chance chance(11);
    for (int i = 0; i < kWorkloads; ++i) {
        SCOPED_TRACE(i);
        const Workload workload = randomWorkload(chance);
        Levelling levelling(workload);
        for (int run = 0; run < 4; ++run) {
            if (run > 0)
                levelling.setOrder(shuffled(chance, workload.activities.size()));
            const Durations durations = drawn(chance, workload);
            const Sample sample = run < 2 ? Sample{} : durations.sample();
            const Levelled &plan = levelling.pass(sample);
            ASSERT_EQ(LevelCheck(workload, sample).faults(plan, levelling.workedSlots()), "");
        }
    }
}

} // namespace
} // namespace ohmwright::plan
