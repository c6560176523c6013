// SPDX-License-Identifier: GPL-3.0-or-later
// Serial schedule generation as core/plan/levelling.h words it, slot by slot and number by number,
// with none of the engine's code: slow, and plain enough to be read against the words.
#pragma once

#include "core/plan/levelling.h"
#include "tests/support/level_check.h"

#include <algorithm>
#include <cstddef>
#include <set>
#include <span>
#include <vector>

namespace ohmwright::plan::testing {

class PlainLevelling
{
public:
    explicit PlainLevelling(const Workload &workload) : m_workload(workload) {}

    struct Placed
    {
        std::vector<int> worked; // slots
        int start = 0, finish = 0, startDay = 0, finishDay = 0;
        bool never = false;
        // Who may be blamed for the start; empty, unless others were in the way.
        std::set<std::int32_t> inTheWay;
    };

    // How far to look; what is not found before is taken for never.
    static constexpr int kHorizon = 3000;

    std::vector<Placed> run(std::span<const std::int32_t> order)
    {
        m_used.assign(kHorizon, {});
        std::vector<Placed> placed(m_workload.activities.size());
        for (const std::int32_t a : order)
            placed[static_cast<std::size_t>(a)] = place(static_cast<std::size_t>(a), placed);
        return placed;
    }

private:
    int day(int slot) const { return slotAt(m_workload.timeline, std::size_t(slot)).day; }
    bool held(std::size_t r) const { return r < m_workload.held.size() && m_workload.held[r]; }
    // The slot has what the activity demands (only of held resources) left.
    bool room(std::size_t a, int slot, bool onlyHeld, bool nobodyElse = false) const
    {
        const Slot at = slotAt(m_workload.timeline, static_cast<std::size_t>(slot));
        if (at.day == kNever)
            return false;
        const std::vector<int> &capacity =
            m_workload.timeline.profiles[static_cast<std::size_t>(at.profile)];
        const std::vector<int> &demand = m_workload.activities[a].demand;
        for (std::size_t r = 0; r < demand.size(); ++r) {
            if (onlyHeld && !held(r))
                continue;
            int used = 0;
            for (const auto &[by, works] : m_used[static_cast<std::size_t>(slot)]) {
                if ((works || held(r)) && r < m_workload.activities[by].demand.size() &&
                    !nobodyElse)
                    used += m_workload.activities[by].demand[r];
            }
            if (demand[r] > (r < capacity.size() ? capacity[r] : 0) - used && demand[r] > 0)
                return false;
        }
        return true;
    }

    // Worked slots from exactly this start on, or none.
    std::vector<int> from(std::size_t a, int start, bool split) const
    {
        const Activity &activity = m_workload.activities[a];
        std::vector<int> worked;
        for (int slot = start; slot < kHorizon; ++slot) {
            const Slot at = slotAt(m_workload.timeline, static_cast<std::size_t>(slot));
            const bool sitting = activity.manner == Manner::OneSitting && !split;
            if (slot > start && sitting && (at.apart || at.day != day(slot - 1)))
                return {};
            if (room(a, slot, false)) {
                worked.push_back(slot);
                if (static_cast<int>(worked.size()) == activity.work)
                    return worked;
            } else if (slot == start || !split || !room(a, slot, true)) {
                return {};
            }
        }
        return {};
    }

    Placed place(std::size_t a, const std::vector<Placed> &placed)
    {
        const Activity &activity = m_workload.activities[a];
        Placed result;
        int readyDay = std::max(activity.releaseDay, 0);
        int readySlot = 0;
        for (const std::size_t before : activity.after) {
            if (placed[before].never)
                result.never = true;
            readyDay = std::max(readyDay,
                                placed[before].finishDay + m_workload.activities[before].waitDays);
            readySlot = std::max(readySlot, placed[before].finish);
        }
        while (readySlot < kHorizon && day(readySlot) < readyDay)
            ++readySlot;
        result.start = result.finish = readySlot;
        result.startDay = result.finishDay = readyDay;
        if (activity.work == 0 || result.never)
            return result;
        for (const bool split : {activity.manner == Manner::Split, true}) {
            for (int start = readySlot; start < kHorizon && result.worked.empty(); ++start) {
                if (day(start) == kNever)
                    break;
                result.worked = from(a, start, split);
            }
        }
        if (result.worked.empty()) {
            result.never = true;
            return result;
        }
        result.start = result.worked.front();
        result.finish = result.worked.back() + 1;
        result.startDay = day(result.start);
        result.finishDay = day(result.finish - 1);
        for (int slot = readySlot; slot < result.start; ++slot) {
            for (const auto &[by, works] : m_used[static_cast<std::size_t>(slot)]) {
                if (!room(a, slot, false) && room(a, slot, false, true))
                    result.inTheWay.insert(static_cast<std::int32_t>(by));
            }
        }
        std::size_t next = 0;
        for (int slot = result.start; slot < result.finish; ++slot) {
            const bool works = next < result.worked.size() && result.worked[next] == slot;
            next += works ? 1 : 0;
            m_used[static_cast<std::size_t>(slot)].push_back({a, works});
        }
        return result;
    }

    struct Use
    {
        std::size_t by;
        bool works;
    };
    const Workload &m_workload;
    std::vector<std::vector<Use>> m_used; // per slot; resting ones included
};

} // namespace ohmwright::plan::testing
