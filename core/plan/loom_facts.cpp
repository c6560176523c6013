// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/plan/loom_facts.h"

#include "core/quantity/dates.h"

namespace ohmwright::plan {

LoomFacts loomFactsOf(const Network &network, std::optional<std::size_t> milestone)
{
    const bool known = milestone && findLoop(network).empty();
    return loomFactsOf(network, known ? holdUps(network, *milestone) : HoldUps());
}

LoomFacts loomFactsOf(const Network &network, const HoldUps &holdUps)
{
    LoomFacts facts;
    facts.driving = holdUps.driving;
    facts.dates.resize(network.tasks.size());
    for (std::size_t task = 0; task < network.tasks.size(); ++task) {
        const Task &own = network.tasks[task];
        if (own.milestone && own.date)
            facts.dates[task] =
                own.done ? showDate(*own.date) : QStringLiteral("by %1").arg(showDate(*own.date));
    }
    return facts;
}

} // namespace ohmwright::plan
