// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/plan/links.h"
#include "core/plan/network.h"

#include <QtGlobal>

#include <algorithm>
#include <cstddef>
#include <optional>
#include <vector>

namespace ohmwright::plan {

// The forward and backward pass as in any textbook, e.g. Hillier and Lieberman, Introduction to
// Operations Research, "PERT/CPM": an early start is the greatest early finish of the tasks before
// it, a late finish the least late start of the tasks after it.
Pass criticalPath(const Network &network, std::optional<int> deadline)
{
    const std::vector<Task> &tasks = network.tasks;
    Pass pass;
    pass.earlyStart.assign(tasks.size(), 0);
    pass.earlyFinish.assign(tasks.size(), 0);
    pass.lateStart.assign(tasks.size(), 0);
    pass.lateFinish.assign(tasks.size(), 0);

    std::vector<char> open(tasks.size(), 0);
    for (std::size_t task = 0; task < tasks.size(); ++task)
        open[task] = tasks[task].done ? 0 : 1;
    const Links waits = Links::waits(network, Links::Which::Open);
    const Links next = waits.turned();
    const std::optional<std::vector<std::size_t>> order = anyOrder(waits, next, open);
    if (!order) {
        Q_ASSERT_X(false, "plan::criticalPath", "the network has a loop");
        return pass;
    }

    for (const std::size_t task : *order) {
        for (const std::size_t before : waits[task])
            pass.earlyStart[task] = std::max(pass.earlyStart[task], pass.earlyFinish[before]);
        pass.earlyFinish[task] =
            addDays(pass.earlyStart[task], boundedDays(tasks[task].elapsedDays));
        pass.length = std::max(pass.length, pass.earlyFinish[task]);
    }
    const int end = std::clamp(deadline.value_or(pass.length), -kLongestDays, kLongestDays);
    for (std::size_t i = order->size(); i-- > 0;) {
        const std::size_t task = (*order)[i];
        pass.lateFinish[task] = end;
        for (const std::size_t after : next[task])
            pass.lateFinish[task] = std::min(pass.lateFinish[task], pass.lateStart[after]);
        pass.lateStart[task] =
            addDays(pass.lateFinish[task], -boundedDays(tasks[task].elapsedDays));
    }
    return pass;
}

} // namespace ohmwright::plan
