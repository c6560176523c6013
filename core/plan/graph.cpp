// SPDX-License-Identifier: GPL-3.0-or-later
// Loops and orders: the network as a graph, whatever the tasks need besides one another.
#include "core/plan/links.h"
#include "core/plan/network.h"

#include <QString>
#include <QtGlobal>
#include <queue>

#include <algorithm>
#include <cstddef>
#include <functional>
#include <limits>
#include <optional>
#include <ranges>
#include <span>
#include <vector>

namespace ohmwright::plan {

namespace {

constexpr std::size_t kNone = std::numeric_limits<std::size_t>::max();
constexpr std::size_t kMostNamed = 10; // a longer loop is not named whole
constexpr std::size_t kNamedOfMore = 8;

// The lowest task that waits on itself, directly or through others. Tarjan's strongly connected
// components with the call stack kept by hand: a task is on a loop if its component has more than
// one task, or it has a link to itself.
std::optional<std::size_t> lowestOnALoop(const Links &waits)
{
    const std::size_t count = waits.taskCount();
    std::vector<std::size_t> met(count, kNone); // when the task was first met
    std::vector<std::size_t> low(count, 0);     // the earliest met task that it reaches
    std::vector<std::size_t> at(count, 0);      // the next of its links to follow
    std::vector<char> pending(count, 0);        // its component is not settled yet
    std::vector<std::size_t> path, unsettled;
    std::size_t clock = 0;
    std::size_t lowest = kNone;

    for (std::size_t root = 0; root < count; ++root) {
        if (met[root] != kNone)
            continue;
        path.push_back(root);
        while (!path.empty()) {
            const std::size_t task = path.back();
            if (met[task] == kNone) {
                met[task] = low[task] = clock++;
                pending[task] = 1;
                unsettled.push_back(task);
            }
            if (at[task] < waits[task].size()) {
                const std::size_t before = waits[task][at[task]++];
                if (before == task)
                    lowest = std::min(lowest, task);
                else if (met[before] == kNone)
                    path.push_back(before);
                else if (pending[before])
                    low[task] = std::min(low[task], met[before]);
                continue;
            }
            path.pop_back();
            if (!path.empty())
                low[path.back()] = std::min(low[path.back()], low[task]);
            if (low[task] != met[task])
                continue;
            const bool alone = unsettled.back() == task;
            std::size_t member = kNone;
            do {
                member = unsettled.back();
                unsettled.pop_back();
                pending[member] = 0;
                if (!alone)
                    lowest = std::min(lowest, member);
            } while (member != task);
        }
    }
    if (lowest == kNone)
        return std::nullopt;
    return lowest;
}

// The shortest loop that begins with `task` and ends with one of `lasts` (ascending), which `task`
// waits on or would have to; empty if none of them waits on it.
// A breadth-first walk over ascending links meets tasks in the order of their paths, so the first
// way found to a task is the shortest, and of those the lowest.
std::vector<std::size_t> closeLoop(const Links &waits, std::size_t task,
                                   std::span<const std::size_t> lasts)
{
    std::vector<std::size_t> from(waits.taskCount(), kNone);
    std::vector<std::size_t> met;
    const auto meet = [&](std::span<const std::size_t> ends, std::size_t waiting) {
        for (const std::size_t end : ends) {
            if (from[end] == kNone) {
                from[end] = waiting;
                met.push_back(end);
            }
        }
    };
    meet(lasts, task);
    for (std::size_t i = 0; i < met.size() && from[task] == kNone; ++i)
        meet(waits[met[i]], met[i]);

    if (from[task] == kNone)
        return {};
    std::vector<std::size_t> loop{task};
    while (from[loop.back()] != task)
        loop.push_back(from[loop.back()]);
    return loop;
}

} // namespace

std::optional<std::size_t> Network::find(const QString &key) const
{
    const auto found = std::find_if(tasks.begin(), tasks.end(),
                                    [&key](const Task &task) { return task.key == key; });
    if (found == tasks.end())
        return std::nullopt;
    return static_cast<std::size_t>(found - tasks.begin());
}

std::vector<std::size_t> findLoop(const Network &network)
{
    const Links waits = Links::waits(network, Links::Which::All);
    const std::optional<std::size_t> first = lowestOnALoop(waits);
    if (!first)
        return {};
    return closeLoop(waits, *first, waits[*first]);
}

std::vector<std::size_t> loopIfLinked(const Network &network, std::size_t before, std::size_t task)
{
    if (before >= network.tasks.size() || task >= network.tasks.size()) {
        Q_ASSERT_X(false, "plan::loopIfLinked", "no such task");
        return {};
    }
    return closeLoop(Links::waits(network, Links::Which::All), task, std::span(&before, 1));
}

QString describeLoop(const Network &network, const std::vector<std::size_t> &loop)
{
    if (loop.empty())
        return {};
    const auto name = [&network](std::size_t task) {
        const Task &named = network.tasks.at(task);
        return named.title.isEmpty() ? named.key : named.title;
    };
    if (loop.size() == 1)
        return name(loop.front()) + QStringLiteral(" waits on itself.");

    const std::size_t named = loop.size() > kMostNamed ? kNamedOfMore : loop.size();
    QString sentence = name(loop.front());
    // Each task waits on the one before it in the loop, so the telling goes backwards from the end.
    for (std::size_t i = 1; i < named; ++i) {
        sentence += i == 1 ? QStringLiteral(" waits on ") : QStringLiteral(", which waits on ");
        sentence += name(loop[loop.size() - i]);
    }
    if (named < loop.size()) {
        sentence += QStringLiteral(", and so on through ") + QString::number(loop.size() - named) +
                    QStringLiteral(" more back to ");
    } else {
        sentence += QStringLiteral(", which waits on ");
    }
    return sentence + name(loop.front()) + QLatin1Char('.');
}

std::vector<std::size_t> topologicalOrder(const Network &network)
{
    const Links waits = Links::waits(network, Links::Which::All);
    const Links next = waits.turned();
    std::vector<std::size_t> waitingOn(waits.taskCount());
    std::priority_queue<std::size_t, std::vector<std::size_t>, std::greater<>> free;
    for (std::size_t task = 0; task < waits.taskCount(); ++task) {
        waitingOn[task] = waits[task].size();
        if (waitingOn[task] == 0)
            free.push(task);
    }
    std::vector<std::size_t> order;
    order.reserve(waits.taskCount());
    while (!free.empty()) {
        order.push_back(free.top());
        free.pop();
        for (const std::size_t after : next[order.back()]) {
            if (--waitingOn[after] == 0)
                free.push(after);
        }
    }
    if (order.size() != waits.taskCount()) {
        Q_ASSERT_X(false, "plan::topologicalOrder", "the network has a loop");
        return {};
    }
    return order;
}

std::vector<std::size_t> tasksBetween(const Network &network, std::size_t first, std::size_t last,
                                      const std::vector<std::size_t> &order)
{
    std::vector<char> from(network.tasks.size(), 0);
    std::vector<char> to(network.tasks.size(), 0);
    from[first] = to[last] = 1;
    for (const std::size_t task : order)
        for (const std::size_t before : network.tasks[task].after)
            from[task] = char(from[task] | from[before]);
    for (const std::size_t task : order | std::views::reverse)
        if (to[task])
            for (const std::size_t before : network.tasks[task].after)
                to[before] = 1;
    std::vector<std::size_t> found;
    for (const std::size_t task : order)
        if (from[task] && to[task])
            found.push_back(task);
    return found;
}

bool canStart(const Network &network, std::size_t task)
{
    if (task >= network.tasks.size()) {
        Q_ASSERT_X(false, "plan::canStart", "no such task");
        return false;
    }
    const Task &asked = network.tasks[task];
    return !asked.done &&
           std::all_of(asked.after.begin(), asked.after.end(),
                       [&network](std::size_t before) {
                           return before >= network.tasks.size() || network.tasks[before].done;
                       }) &&
           std::all_of(asked.needs.begin(), asked.needs.end(),
                       [](const LeafNeed &need) { return need.met; });
}

} // namespace ohmwright::plan
