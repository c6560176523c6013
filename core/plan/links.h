// SPDX-License-Identifier: GPL-3.0-or-later
// The links of a network packed for walking, and sums of days; shared by the algorithms of this
// layer and of no use outside it. What a network is stands in network.h.
#pragma once

#include "core/plan/network.h"

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

namespace ohmwright::plan {

// For each task the tasks at the other end of its links, ascending, each once.
class Links
{
public:
    enum class Which {
        All,
        Open, // only those between two tasks not done: the others hold nothing up
    };

    // What each task waits on. Links to tasks that do not exist are asserted and left out.
    static Links waits(const Network &network, Which which);
    // The same links from the other end: what waits on each task.
    [[nodiscard]] Links turned() const;

    [[nodiscard]] std::size_t taskCount() const { return m_first.size() - 1; }
    [[nodiscard]] std::span<const std::size_t> operator[](std::size_t task) const
    {
        return std::span(m_ends).subspan(m_first[task], m_first[task + 1] - m_first[task]);
    }

private:
    Links() = default;

    std::vector<std::size_t> m_first; // where each task's ends begin; one more than tasks
    std::vector<std::size_t> m_ends;
};

// The tasks with a nonzero `among`, each after all it waits on among them; nothing if they loop.
// Linear, in no particular order besides.
std::optional<std::vector<std::size_t>> anyOrder(const Links &waits, const Links &next,
                                                 const std::vector<char> &among);

// A duration as given, brought into 0 … kLongestDays.
int boundedDays(int days);
// Within kLongestDays either way, so that the difference of two sums fits an int as well.
int addDays(int days, int more);

} // namespace ohmwright::plan
