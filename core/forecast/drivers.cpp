// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/forecast/drivers.h"

#include <QCoreApplication>

#include <algorithm>
#include <functional>
#include <utility>

namespace ohmwright::forecast {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("Forecast", text);
}

} // namespace

std::vector<Drives> whatDrives(const WorkPlan &plan, const Forecast &forecast,
                               std::size_t milestone, std::size_t most, double leastShare)
{
    const std::vector<double> &driving = forecast.drivingMilestone[milestone];
    const std::vector<char> linked = waitedOn(plan, plan.milestones[milestone]);
    std::vector<Drives> all;
    std::vector<double> again(plan.risks.size(), 0); // of what is done again the most
    for (std::size_t i = 0; i < driving.size(); ++i) {
        const Activity &a = plan.activities[i];
        if (a.risk)
            again[*a.risk] = std::max(again[*a.risk], driving[i]);
        else if (a.kind != ActivityKind::Milestone)
            all.push_back({i, driving[i], false, linked[i] != 0, a.name});
    }
    for (std::size_t risk = 0; risk < again.size(); ++risk) {
        const std::size_t test = plan.risks[risk].activity;
        all.push_back({test, again[risk], true, linked[test] != 0,
                       tr("%1 fails: what is then done again").arg(plan.activities[test].name)});
    }
    std::erase_if(all, [&](const Drives &one) { return one.share < leastShare; });
    std::ranges::stable_sort(all, std::greater<>(), &Drives::share);
    all.resize(std::min(most, all.size()));
    return all;
}

} // namespace ohmwright::forecast
