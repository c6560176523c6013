// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/forecast/learning.h"

#include <QCoreApplication>

#include <algorithm>
#include <array>
#include <cmath>
#include <unordered_map>

namespace ohmwright::forecast {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("Forecast", text);
}

constexpr int kLeastTasks = 3;
constexpr double kWorthTelling = 0.1;

Trade tradeOf(const Task &task)
{
    return task.trade.value_or(Trade::Other);
}

bool canScale(const Task &task, Trade trade)
{
    return task.state == TaskState::Open && task.workMinutes > 0 && tradeOf(task) == trade;
}

} // namespace

bool Learned::isOffered() const
{
    return tasks >= kLeastTasks && std::abs(factor() - 1) >= kWorthTelling && openTasks > 0;
}

std::vector<Learned> learnedFrom(const Records &records)
{
    std::unordered_map<Id<Task>, int> logged;
    for (const WorkEntry &entry : records.all<WorkEntry>())
        if (entry.task && entry.minutes)
            logged[*entry.task] += *entry.minutes * entry.hands;
    std::array<Learned, EnumWords<Trade>::words.size()> all;
    for (const Task &task : records.all<Task>()) {
        Learned &one = all[static_cast<std::size_t>(tradeOf(task))];
        one.trade = tradeOf(task);
        one.openTasks += int{canScale(task, one.trade)};
        const auto found = logged.find(task.id);
        if (task.state != TaskState::Done || task.workMinutes == 0 || found == logged.end() ||
            found->second == 0)
            continue;
        ++one.tasks;
        one.estimatedMinutes += task.workMinutes;
        one.loggedMinutes += found->second;
    }
    std::vector<Learned> learned;
    for (const Learned &one : all)
        if (one.tasks > 0)
            learned.push_back(one);
    return learned;
}

Outcome scaleEstimates(Book &book, Trade trade, double factor)
{
    const bool sensible = factor >= 0.1 && factor <= 10;
    if (!sensible) // no number neither
        return fail(ProblemCode::NotAllowed, tr("Estimates are changed by 0.1 to 10 times."));
    const auto times = [&](int minutes) {
        return std::clamp(static_cast<int>(std::lround(minutes * factor)), 1, 600000);
    };
    std::vector<Task> tasks;
    for (Task task : book.records().all<Task>()) {
        if (!canScale(task, trade))
            continue;
        task.workMinutes = times(task.workMinutes);
        if (task.leastWorkMinutes)
            task.leastWorkMinutes = std::min(times(*task.leastWorkMinutes), task.workMinutes);
        if (task.mostWorkMinutes)
            task.mostWorkMinutes = std::max(times(*task.mostWorkMinutes), task.workMinutes);
        tasks.push_back(std::move(task));
    }
    if (tasks.empty())
        return fail(ProblemCode::NotAllowed,
                    tr("There is no open task of this kind with an estimate."));
    return book.edit(tr("Estimates of %1 work, %2 times").arg(wordOf(trade)).arg(factor, 0, 'f', 2),
                     [&]() -> Outcome {
                         for (const Task &task : tasks)
                             if (Outcome updated = book.update(task); !updated)
                                 return updated;
                         return {};
                     });
}

} // namespace ohmwright::forecast
