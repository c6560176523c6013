// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/starters/starter_links.h"

#include "core/plan/network.h"

#include <algorithm>
#include <optional>
#include <unordered_map>
#include <vector>

namespace ohmwright {

namespace {

using Indices = std::unordered_map<std::string, std::size_t>;

std::optional<std::size_t> taskBefore(const StarterJson &need, const Indices &places)
{
    const auto after = need.find("after");
    if (after == need.end() || !after->is_string())
        return std::nullopt;
    const auto place = places.find(after->get_ref<const std::string &>());
    return place == places.end() ? std::nullopt : std::optional(place->second);
}

} // namespace

void leaveOutLinksSaidByOthers(StarterJson &tasks)
{
    Indices places;
    for (const StarterJson &task : tasks)
        places.emplace(task.value("key", std::string()), places.size());
    if (places.size() != tasks.size())
        return; // a key given twice: the interchange tells
    plan::Network network;
    network.tasks.resize(tasks.size());
    for (std::size_t i = 0; i < tasks.size(); ++i)
        for (const StarterJson &need : tasks[i]["needs"])
            if (const auto before = taskBefore(need, places))
                network.tasks[i].after.push_back(*before);
    if (!plan::findLoop(network).empty())
        return;

    // all tasks before each, near and far
    std::vector<std::vector<bool>> before(tasks.size(), std::vector<bool>(tasks.size()));
    for (const std::size_t task : plan::topologicalOrder(network))
        for (const std::size_t near : network.tasks[task].after) {
            before[task][near] = true;
            for (std::size_t far = 0; far < tasks.size(); ++far)
                if (before[near][far])
                    before[task][far] = true;
        }

    for (std::size_t i = 0; i < tasks.size(); ++i) {
        const std::vector<std::size_t> &near = network.tasks[i].after;
        std::vector<std::size_t> told;
        StarterJson kept = StarterJson::array();
        for (StarterJson &need : tasks[i]["needs"]) {
            if (const auto link = taskBefore(need, places)) {
                const bool byAnother =
                    std::any_of(near.begin(), near.end(),
                                [&](std::size_t other) { return before[other][*link]; });
                if (byAnother || std::find(told.begin(), told.end(), *link) != told.end())
                    continue;
                told.push_back(*link);
            }
            kept.push_back(std::move(need));
        }
        tasks[i]["needs"] = std::move(kept);
    }
}

} // namespace ohmwright
