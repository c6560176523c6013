// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/plan/loom_open.h"

#include <algorithm>
#include <cstddef>
#include <limits>
#include <type_traits>

namespace ohmwright::plan {

LoomOpen leaveOutDone(const Network &network, const LoomFacts &facts)
{
    constexpr std::size_t kLeftOut = std::numeric_limits<std::size_t>::max();
    LoomOpen result;
    std::vector<std::size_t> now(network.tasks.size(), kLeftOut);
    std::vector<std::size_t> from; // of each task that stays
    for (std::size_t at = 0; at < network.tasks.size(); ++at) {
        const Task &task = network.tasks[at];
        if (!task.done || task.aside) {
            now[at] = from.size();
            from.push_back(at);
            continue;
        }
        ++result.leftOut;
        auto area = std::find_if(result.areas.begin(), result.areas.end(),
                                 [&](const auto &known) { return known.first == task.area; });
        if (area == result.areas.end())
            area = result.areas.insert(area, {task.area, 0});
        ++area->second;
    }
    for (const std::size_t at : from) {
        Task task = network.tasks[at];
        std::vector<std::size_t> after;
        for (const std::size_t before : task.after) {
            if (before >= now.size())
                continue;
            if (now[before] != kLeftOut) {
                after.push_back(now[before]);
                continue;
            }
            LeafNeed met;
            met.key = QStringLiteral("after/%1/%2").arg(task.key, network.tasks[before].key);
            met.met = true;
            met.subjectName = network.tasks[before].title;
            task.needs.push_back(std::move(met));
        }
        task.after = std::move(after);
        result.network.tasks.push_back(std::move(task));
    }
    for (const std::size_t task : facts.driving) {
        if (task < now.size() && now[task] != kLeftOut)
            result.facts.driving.push_back(now[task]);
    }
    const auto kept = [&](const auto &values) {
        std::decay_t<decltype(values)> all;
        for (std::size_t at = 0; !values.empty() && at < from.size(); ++at) {
            all.emplace_back();
            if (from[at] < values.size())
                all.back() = values[from[at]];
        }
        return all;
    };
    result.facts.drives = kept(facts.drives);
    result.facts.dates = kept(facts.dates);
    result.facts.forecast = facts.forecast;
    if (facts.forecast)
        result.facts.forecast->tasks = kept(facts.forecast->tasks);
    return result;
}

} // namespace ohmwright::plan
