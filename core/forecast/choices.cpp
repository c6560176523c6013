// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/forecast/choices.h"

#include "core/forecast/order_by.h"
#include "core/forecast/part_price.h"

#include <algorithm>

namespace ohmwright::forecast {

namespace {

// Tasks and deliveries that are there for this option alone.
std::vector<std::size_t> activitiesOf(const Records &records, const WorkPlan &plan,
                                      const ChoiceOption &option)
{
    std::vector<std::size_t> found;
    for (std::size_t i = 0; i < plan.activities.size(); ++i) {
        const Activity &a = plan.activities[i];
        const auto *task =
            a.kind == ActivityKind::Task ? records.byKey<ohmwright::Task>(a.key) : nullptr;
        const Part *part = a.kind == ActivityKind::Delivery ? records.byKey<Part>(a.part) : nullptr;
        if ((task && task->option == option.id) || (part && part->option == option.id))
            found.push_back(i);
    }
    return found;
}

void addCost(const Records &records, QDate today, OptionOutlook &outlook)
{
    outlook.cost = Money(0, records.build().currency);
    for (const Part &part : records.all<Part>()) {
        if (part.option != outlook.option || part.state != PartState::Wanted ||
            part.countedTo == CountedTo::Shop)
            continue;
        if (const std::optional<Money> price = priceOf(records, part, today))
            outlook.cost += *price;
        else
            ++outlook.unpriced;
    }
}

OptionOutlook outlookOf(const Records &records, const ChoiceOption &option, QDate today,
                        const Settings &settings, int confidencePercent, const Watch &watch)
{
    OptionOutlook outlook;
    outlook.option = option.id;
    outlook.name = option.name;
    addCost(records, today, outlook);
    for (const ohmwright::Task &task : records.all<ohmwright::Task>())
        if (task.option == option.id && task.state != TaskState::Done) {
            ++outlook.openTasks;
            outlook.openMinutes += task.workMinutes;
        }
    const Records taken = withOption(records, option);
    const WorkPlan plan = workPlanOf(taken, today);
    if (plan.activities.empty())
        return outlook;
    const Simulation simulation(plan, settings, {}, watch);
    const Forecast forecast = simulation.run(watch);
    if (forecast.cancelled)
        return outlook;
    std::size_t last = plan.milestones.empty() ? 0 : plan.milestones.back();
    if (plan.milestones.empty())
        for (std::size_t i = 0; i < forecast.activities.size(); ++i)
            if (forecast.activities[i].ready[1] > forecast.activities[last].ready[1])
                last = i;
    outlook.ready50 = forecast.activities[last].ready[0];
    outlook.ready80 = forecast.activities[last].ready[1];
    const std::vector<std::size_t> own = activitiesOf(taken, plan, option);
    if (!own.empty())
        outlook.startBy = latestRelease(plan, simulation, own, confidencePercent, watch);
    return outlook;
}

} // namespace

Records withOption(const Records &records, const ChoiceOption &option)
{
    Records taken = records;
    std::vector<Choice> choices = taken.all<Choice>().rows();
    for (Choice &choice : choices)
        if (choice.id == option.choice)
            choice.taken = option.id;
    taken.all<Choice>().assign(std::move(choices));
    return taken;
}

std::vector<ChoiceOutlook> openChoices(const Records &records, QDate today,
                                       const Settings &settings, int confidencePercent,
                                       const Watch &watch)
{
    std::vector<ChoiceOutlook> outlooks;
    for (const Choice &choice : records.all<Choice>()) {
        if (choice.taken || watch.isCancelled())
            continue;
        ChoiceOutlook outlook;
        outlook.choice = choice.id;
        outlook.key = choice.key;
        outlook.question = choice.question;
        for (const ChoiceOption &option : records.of<ChoiceOption>(choice.id)) {
            outlook.options.push_back(
                outlookOf(records, option, today, settings, confidencePercent, watch));
            if (const std::optional<int> by = outlook.options.back().startBy;
                by && (!outlook.decideBy || *by < *outlook.decideBy))
                outlook.decideBy = by;
        }
        outlooks.push_back(std::move(outlook));
    }
    return outlooks;
}

} // namespace ohmwright::forecast
