// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/plan/level_links.h"

#include <QtGlobal>
#include <queue>

#include <algorithm>
#include <functional>

namespace ohmwright::plan::level {

ActivityLinks::ActivityLinks(std::span<const Activity> activities) : m_first(1, 0)
{
    for (std::size_t a = 0; a < activities.size(); ++a) {
        const std::size_t begin = m_ends.size();
        for (const std::size_t before : activities[a].after) {
            if (before < activities.size() && before != a)
                m_ends.push_back(static_cast<std::int32_t>(before));
            else
                Q_ASSERT_X(false, "plan::ActivityLinks", "after itself, or after nothing there is");
        }
        const auto first = m_ends.begin() + static_cast<std::ptrdiff_t>(begin);
        std::sort(first, m_ends.end());
        m_ends.erase(std::unique(first, m_ends.end()), m_ends.end());
        m_first.push_back(static_cast<std::int32_t>(m_ends.size()));
    }
}

ActivityLinks ActivityLinks::turned() const
{
    ActivityLinks result;
    result.m_first.assign(m_first.size(), 0);
    for (const std::int32_t end : m_ends)
        ++result.m_first[static_cast<std::size_t>(end) + 1];
    for (std::size_t a = 1; a < result.m_first.size(); ++a)
        result.m_first[a] += result.m_first[a - 1];
    result.m_ends.resize(m_ends.size());
    std::vector<std::int32_t> at(result.m_first.begin(), result.m_first.end() - 1);
    for (std::size_t a = 0; a < count(); ++a) {
        for (const std::int32_t end : (*this)[a])
            result.m_ends[static_cast<std::size_t>(at[static_cast<std::size_t>(end)]++)] =
                static_cast<std::int32_t>(a);
    }
    return result;
}

ActivityLinks ActivityLinks::without(std::size_t activity, const std::vector<char> &keep) const
{
    ActivityLinks result;
    for (std::size_t a = 0; a < count(); ++a) {
        for (const std::int32_t end : (*this)[a]) {
            if (a != activity || keep[static_cast<std::size_t>(end)])
                result.m_ends.push_back(end);
        }
        result.m_first.push_back(static_cast<std::int32_t>(result.m_ends.size()));
    }
    return result;
}

std::vector<std::int32_t> feasibleOrder(ActivityLinks &before,
                                        std::span<const std::int32_t> priority,
                                        std::vector<char> &inLoop)
{
    const std::size_t count = before.count();
    std::vector<std::size_t> place(count, 0);
    for (std::size_t i = 0; i < count; ++i)
        place[static_cast<std::size_t>(priority[i])] = i;
    std::vector<std::size_t> waitingOn(count);
    std::priority_queue<std::size_t, std::vector<std::size_t>, std::greater<>> free; // places
    for (std::size_t a = 0; a < count; ++a) {
        waitingOn[a] = before[a].size();
        if (waitingOn[a] == 0)
            free.push(place[a]);
    }
    ActivityLinks next = before.turned();
    std::vector<char> in(count, 0);
    std::vector<std::int32_t> order;
    order.reserve(count);
    while (order.size() < count) {
        if (free.empty()) {
            Q_ASSERT_X(false, "plan::feasibleOrder", "the links loop");
            const auto first = std::find_if(priority.begin(), priority.end(), [&](std::int32_t a) {
                return !in[static_cast<std::size_t>(a)];
            });
            const auto loose = static_cast<std::size_t>(*first);
            before = before.without(loose, in);
            next = before.turned();
            inLoop[loose] = 1;
            free.push(place[loose]);
        }
        const std::int32_t a = priority[free.top()];
        free.pop();
        in[static_cast<std::size_t>(a)] = 1;
        order.push_back(a);
        for (const std::int32_t after : next[static_cast<std::size_t>(a)]) {
            if (--waitingOn[static_cast<std::size_t>(after)] == 0)
                free.push(place[static_cast<std::size_t>(after)]);
        }
    }
    return order;
}

} // namespace ohmwright::plan::level
