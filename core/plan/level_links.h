// SPDX-License-Identifier: GPL-3.0-or-later
// Inside of levelling.h: the links of a workload packed for walking.
#pragma once

#include "core/plan/levelling.h"

#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

namespace ohmwright::plan::level {

// For each activity those at the other end of its links, ascending, each once.
class ActivityLinks
{
public:
    ActivityLinks() : m_first(1, 0) {}
    // What each comes after, as the workload says, but for links to nothing and to itself.
    explicit ActivityLinks(std::span<const Activity> activities);
    [[nodiscard]] ActivityLinks turned() const;
    // Without those of `activity` to ones with a zero in `keep`.
    [[nodiscard]] ActivityLinks without(std::size_t activity, const std::vector<char> &keep) const;

    [[nodiscard]] std::size_t count() const { return m_first.size() - 1; }
    [[nodiscard]] std::span<const std::int32_t> operator[](std::size_t activity) const
    {
        return {m_ends.data() + m_first[activity], m_ends.data() + m_first[activity + 1]};
    }

private:
    std::vector<std::int32_t> m_first; // where each one's ends begin; one more than activities
    std::vector<std::int32_t> m_ends;
};

// The activities, each after all it comes after; of those free to be next the one that stands first
// in `priority`, which names each once.
// A loop is asserted; where assertions are off, the links by which the first of its members (by
// priority) comes after others not yet in are taken out of `before`, and it is marked.
std::vector<std::int32_t> feasibleOrder(ActivityLinks &before,
                                        std::span<const std::int32_t> priority,
                                        std::vector<char> &inLoop);

} // namespace ohmwright::plan::level
