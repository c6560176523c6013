// SPDX-License-Identifier: GPL-3.0-or-later
// Says what is wrong with a levelled plan, from the words of core/plan/levelling.h alone: none of
// the engine's code is used, slots are laid out and capacities counted one by one.
#pragma once

#include "core/plan/levelling.h"

#include <algorithm>
#include <cstddef>
#include <sstream>
#include <string>
#include <vector>

namespace ohmwright::plan::testing {

// Slot `index` of the timeline with its repetitions; day kNever beyond its end.
inline Slot slotAt(const Timeline &timeline, std::size_t index)
{
    const std::size_t given = timeline.line.size();
    if (index < given)
        return timeline.line[index];
    const std::size_t period = given - std::min(timeline.repeatFrom, given);
    if (timeline.repeatDays <= 0 || period == 0)
        return {kNever, 0, true};
    Slot slot = timeline.line[timeline.repeatFrom + (index - given) % period];
    slot.day += timeline.repeatDays * static_cast<int>(1 + (index - given) / period);
    return slot;
}

class LevelCheck
{
public:
    LevelCheck(const Workload &workload, const Sample &sample = {})
        : m_workload(workload), m_sample(sample)
    {}

    // One line for each fault; empty when the plan is sound. Activities that are never are only
    // asked whether all behind them are never too.
    std::string faults(const Levelled &plan, const std::vector<std::vector<int>> &worked)
    {
        m_faults.str({});
        m_used.clear();
        int end = 0;
        for (std::size_t a = 0; a < m_workload.activities.size(); ++a) {
            checkTimes(a, plan, worked[a]);
            checkOrder(a, plan);
            count(a, plan, worked[a]);
            end = plan.finishDay[a] == kNever || end == kNever
                      ? kNever
                      : std::max(end, plan.finishDay[a] + wait(a));
        }
        if (end != plan.endDay)
            m_faults << "the plan ends on day " << end << ", says " << plan.endDay << '\n';
        checkCapacity();
        return m_faults.str();
    }

private:
    int work(std::size_t a) const
    {
        return std::max(0,
                        m_sample.work.empty() ? m_workload.activities[a].work : m_sample.work[a]);
    }
    int wait(std::size_t a) const
    {
        return std::max(0, m_sample.waitDays.empty() ? m_workload.activities[a].waitDays
                                                     : m_sample.waitDays[a]);
    }
    int release(std::size_t a) const
    {
        return m_sample.releaseDay.empty() ? m_workload.activities[a].releaseDay
                                           : m_sample.releaseDay[a];
    }
    int dayAt(int slot) const
    {
        return slotAt(m_workload.timeline, static_cast<std::size_t>(slot)).day;
    }
    std::ostream &fault(std::size_t a) { return m_faults << "activity " << a << ": "; }

    void checkTimes(std::size_t a, const Levelled &plan, const std::vector<int> &worked)
    {
        if (plan.startDay[a] == kNever) {
            if (!worked.empty() || plan.finishDay[a] != kNever || plan.readyDay[a] != kNever)
                fault(a) << "is never and yet at some time\n";
            return;
        }
        if (plan.startDay[a] < release(a))
            fault(a) << "starts on day " << plan.startDay[a] << " before its release\n";
        if (plan.readyDay[a] != plan.finishDay[a] + wait(a))
            fault(a) << "is ready on another day than it says\n";
        if (static_cast<int>(worked.size()) != work(a))
            fault(a) << worked.size() << " slots worked instead of " << work(a) << '\n';
        if (worked.empty()) {
            if (plan.start[a] != plan.finish[a] || plan.startDay[a] != plan.finishDay[a])
                fault(a) << "takes time without work\n";
            return;
        }
        if (!std::is_sorted(worked.begin(), worked.end()) ||
            std::adjacent_find(worked.begin(), worked.end()) != worked.end())
            fault(a) << "works twice in a slot\n";
        if (plan.start[a] != worked.front() || plan.finish[a] != worked.back() + 1)
            fault(a) << "works outside its start and finish\n";
        if (plan.startDay[a] != dayAt(worked.front()) || plan.finishDay[a] != dayAt(worked.back()))
            fault(a) << "gives the wrong day\n";
        if (m_workload.activities[a].manner != Manner::Split && !plan.broken[a])
            checkTogether(a, worked);
    }

    void checkTogether(std::size_t a, const std::vector<int> &worked)
    {
        for (std::size_t i = 1; i < worked.size(); ++i) {
            const Slot slot = slotAt(m_workload.timeline, static_cast<std::size_t>(worked[i]));
            if (worked[i] != worked[i - 1] + 1)
                fault(a) << "is interrupted before slot " << worked[i] << '\n';
            else if (m_workload.activities[a].manner == Manner::OneSitting &&
                     (slot.apart || slot.day != dayAt(worked[i - 1])))
                fault(a) << "goes on in another sitting at slot " << worked[i] << '\n';
        }
    }

    void checkOrder(std::size_t a, const Levelled &plan)
    {
        for (const std::size_t before : m_workload.activities[a].after) {
            if (plan.finishDay[before] == kNever) {
                if (plan.startDay[a] != kNever)
                    fault(a) << "starts after one that never finishes\n";
                continue;
            }
            if (plan.startDay[a] < plan.finishDay[before] + wait(before))
                fault(a) << "does not let " << before << " wait\n";
            if (plan.start[a] < plan.finish[before])
                fault(a) << "starts before " << before << " has finished\n";
        }
    }

    void count(std::size_t a, const Levelled &plan, const std::vector<int> &worked)
    {
        const std::vector<int> &demand = m_workload.activities[a].demand;
        for (std::size_t r = 0; r < demand.size() && !worked.empty(); ++r) {
            if (demand[r] <= 0)
                continue;
            if (r < m_workload.held.size() && m_workload.held[r]) {
                for (int slot = plan.start[a]; slot < plan.finish[a]; ++slot)
                    use(slot, r, demand[r]);
            } else {
                for (const int slot : worked)
                    use(slot, r, demand[r]);
            }
        }
    }

    void use(int slot, std::size_t resource, int amount)
    {
        const auto index = static_cast<std::size_t>(slot);
        if (m_used.size() <= index)
            m_used.resize(index + 1);
        if (m_used[index].size() <= resource)
            m_used[index].resize(resource + 1, 0);
        m_used[index][resource] += amount;
    }

    void checkCapacity()
    {
        for (std::size_t slot = 0; slot < m_used.size(); ++slot) {
            const auto profile =
                static_cast<std::size_t>(slotAt(m_workload.timeline, slot).profile);
            const std::vector<int> &capacity = m_workload.timeline.profiles[profile];
            for (std::size_t r = 0; r < m_used[slot].size(); ++r) {
                const int there = r < capacity.size() ? capacity[r] : 0;
                if (m_used[slot][r] > there)
                    m_faults << "slot " << slot << " gives " << m_used[slot][r] << " of resource "
                             << r << " and has " << there << '\n';
            }
        }
    }

    const Workload &m_workload;
    Sample m_sample;
    std::ostringstream m_faults;
    std::vector<std::vector<int>> m_used; // per slot and resource
};

} // namespace ohmwright::plan::testing
