// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/plan/loom_condense.h"

#include <QString>

#include <algorithm>
#include <cstddef>
#include <map>
#include <utility>
#include <vector>

namespace ohmwright::plan {

namespace {

bool folds(const Task &task)
{
    return task.done && !task.aside && !task.milestone;
}

} // namespace

LoomCondensed condenseDone(const Network &network, const LoomFacts &facts)
{
    std::map<QString, std::vector<std::size_t>> doneOf;
    for (std::size_t task = 0; task < network.tasks.size(); ++task) {
        if (folds(network.tasks[task]))
            doneOf[network.tasks[task].area].push_back(task);
    }
    std::erase_if(doneOf, [](const auto &area) { return area.second.size() < 2; });
    LoomCondensed result;
    std::vector<std::size_t> now(network.tasks.size());
    std::vector<std::size_t> from; // of each task that remains: one it was before
    std::map<QString, std::size_t> shortOf;
    for (std::size_t at = 0; at < network.tasks.size(); ++at) {
        const Task &task = network.tasks[at];
        const auto area = folds(task) ? doneOf.find(task.area) : doneOf.end();
        if (area == doneOf.end()) {
            now[at] = result.network.tasks.size();
            result.network.tasks.push_back(task);
            from.push_back(at);
            continue;
        }
        ++result.folded;
        const auto [known, isNew] = shortOf.try_emplace(task.area, result.network.tasks.size());
        now[at] = known->second;
        if (!isNew)
            continue;
        const std::vector<std::size_t> &all = area->second;
        Task made;
        made.key = QStringLiteral("done/") + task.area;
        made.title = QStringLiteral("%1 done").arg(all.size());
        made.area = task.area;
        made.done = true;
        const auto hot = std::count_if(all.begin(), all.end(), [&](std::size_t own) {
            return network.tasks[own].highVoltage;
        });
        made.highVoltage = 2 * hot >= static_cast<std::ptrdiff_t>(all.size());
        result.network.tasks.push_back(std::move(made));
        from.push_back(at);
    }
    for (Task &task : result.network.tasks) {
        for (std::size_t &before : task.after) {
            if (before < now.size())
                before = now[before];
        }
    }
    const auto moved = [&](const std::vector<std::size_t> &tasks) {
        std::vector<std::size_t> all;
        for (const std::size_t task : tasks) {
            if (task < now.size() && (all.empty() || all.back() != now[task]))
                all.push_back(now[task]);
        }
        return all;
    };
    const auto kept = [&](const auto &values) {
        auto all = values;
        all.clear();
        for (std::size_t at = 0; !values.empty() && at < from.size(); ++at)
            all.push_back(from[at] < values.size() ? values[from[at]]
                                                   : std::decay_t<decltype(values[0])>());
        return all;
    };
    result.facts.driving = moved(facts.driving);
    result.facts.drives = kept(facts.drives);
    result.facts.dates = kept(facts.dates);
    result.facts.forecast = facts.forecast;
    if (facts.forecast)
        result.facts.forecast->tasks = kept(facts.forecast->tasks);
    return result;
}

} // namespace ohmwright::plan
