// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/forecast/milestone_dates.h"

#include <algorithm>

namespace ohmwright::forecast {

namespace {

std::vector<std::size_t> keepersOf(const WorkPlan &plan, const Records &records,
                                   const Activity &milestone)
{
    std::vector<std::size_t> tasks;
    for (const std::size_t before : milestone.after)
        if (plan.activities[before].kind == ActivityKind::Task &&
            std::find(tasks.begin(), tasks.end(), before) == tasks.end())
            tasks.push_back(before);
    if (tasks.size() > 1)
        std::erase_if(tasks, [&](std::size_t i) {
            const auto *task = records.byKey<ohmwright::Task>(plan.activities[i].key);
            return !task || task->failPercent.value_or(0) == 0;
        });
    return tasks;
}

} // namespace

void sortMilestones(WorkPlan &plan, const plan::Network &network)
{
    const auto dateOf = [&](std::size_t activity) {
        return network.tasks[*plan.activities[activity].task].date;
    };
    std::stable_sort(plan.milestones.begin(), plan.milestones.end(),
                     [&](std::size_t a, std::size_t b) {
                         const QDate last(9999, 12, 31);
                         return dateOf(a).value_or(last) < dateOf(b).value_or(last);
                     });
    for (const std::size_t m : plan.milestones) {
        const std::optional<QDate> date = dateOf(m);
        plan.due.push_back(date ? std::optional(static_cast<int>(plan.today.daysTo(*date)))
                                : std::nullopt);
    }
}

std::optional<QDate> appointmentOf(const Records &records, const Activity &milestone)
{
    const auto *task = milestone.kind == ActivityKind::Milestone
                           ? records.byKey<ohmwright::Task>(milestone.key)
                           : nullptr;
    return task ? task->fixedOn : std::nullopt;
}

void keepAppointments(WorkPlan &plan, const Records &records)
{
    for (const std::size_t m : plan.milestones) {
        Activity &milestone = plan.activities[m];
        const std::optional<QDate> fixed = appointmentOf(records, milestone);
        const int day = fixed ? static_cast<int>(plan.today.daysTo(*fixed)) : 0;
        if (day <= 0)
            continue;
        milestone.releaseDay = std::max(milestone.releaseDay, day);
        for (const std::size_t i : keepersOf(plan, records, milestone))
            plan.activities[i].releaseDay = std::max(plan.activities[i].releaseDay, day);
    }
}

} // namespace ohmwright::forecast
