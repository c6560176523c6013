// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/plan/links.h"

#include <QtGlobal>

#include <algorithm>
#include <cstddef>
#include <optional>
#include <vector>

namespace ohmwright::plan {

Links Links::waits(const Network &network, Which which)
{
    const std::vector<Task> &tasks = network.tasks;
    std::size_t total = 0;
    for (const Task &task : tasks)
        total += task.after.size();

    Links links;
    links.m_first.reserve(tasks.size() + 1);
    links.m_ends.reserve(total);
    for (const Task &task : tasks) {
        const std::size_t first = links.m_ends.size();
        links.m_first.push_back(first);
        if (which == Which::Open && task.done)
            continue;
        for (const std::size_t before : task.after) {
            if (before >= tasks.size()) {
                Q_ASSERT_X(false, "plan::Links::waits", "a link to a task that does not exist");
                continue;
            }
            if (which == Which::All || !tasks[before].done)
                links.m_ends.push_back(before);
        }
        const auto begin = links.m_ends.begin() + static_cast<std::ptrdiff_t>(first);
        std::sort(begin, links.m_ends.end());
        links.m_ends.erase(std::unique(begin, links.m_ends.end()), links.m_ends.end());
    }
    links.m_first.push_back(links.m_ends.size());
    return links;
}

Links Links::turned() const
{
    Links turned;
    turned.m_first.assign(m_first.size(), 0);
    turned.m_ends.resize(m_ends.size());
    for (const std::size_t end : m_ends)
        ++turned.m_first[end + 1];
    for (std::size_t task = 0; task < taskCount(); ++task)
        turned.m_first[task + 1] += turned.m_first[task];

    // Filled by ascending task, so each task's ends come out ascending too.
    std::vector<std::size_t> at(turned.m_first.begin(), turned.m_first.end() - 1);
    for (std::size_t task = 0; task < taskCount(); ++task) {
        for (const std::size_t end : (*this)[task])
            turned.m_ends[at[end]++] = task;
    }
    return turned;
}

std::optional<std::vector<std::size_t>> anyOrder(const Links &waits, const Links &next,
                                                 const std::vector<char> &among)
{
    std::vector<std::size_t> waitingOn(waits.taskCount(), 0);
    std::vector<std::size_t> order;
    std::size_t wanted = 0;
    for (std::size_t task = 0; task < waits.taskCount(); ++task) {
        if (!among[task])
            continue;
        ++wanted;
        for (const std::size_t before : waits[task])
            waitingOn[task] += among[before] ? 1 : 0;
        if (waitingOn[task] == 0)
            order.push_back(task);
    }
    order.reserve(wanted);
    for (std::size_t i = 0; i < order.size(); ++i) {
        for (const std::size_t after : next[order[i]]) {
            if (among[after] && --waitingOn[after] == 0)
                order.push_back(after);
        }
    }
    if (order.size() != wanted)
        return std::nullopt;
    return order;
}

int boundedDays(int days)
{
    return std::clamp(days, 0, kLongestDays);
}

int addDays(int days, int more)
{
    const qint64 sum = qint64{days} + more;
    return static_cast<int>(std::clamp(sum, qint64{-kLongestDays}, qint64{kLongestDays}));
}

} // namespace ohmwright::plan
