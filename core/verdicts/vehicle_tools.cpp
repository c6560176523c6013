// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/verdicts/vehicle_tools.h"

#include "core/verdicts/build_parts.h"

#include <set>

namespace ohmwright {

std::vector<const Part *> partsWithFigures(const Records &records, QLatin1String group)
{
    std::set<Id<Part>> parts;
    std::set<Id<PartType>> types;
    for (const CheckFigure &figure : records.all<CheckFigure>()) {
        if (!figure.figure.startsWith(group))
            continue;
        if (figure.part)
            parts.insert(*figure.part);
        if (figure.type)
            types.insert(*figure.type);
    }
    std::vector<const Part *> found;
    if (parts.empty() && types.empty())
        return found;
    for (const Part &part : records.all<Part>())
        if (isOfTheBuild(records, part) &&
            (parts.contains(part.id) || (part.type && types.contains(*part.type))))
            found.push_back(&part);
    return found;
}

bool vehicleHasFigures(const Records &records, QLatin1String group)
{
    const auto &figures = records.all<CheckFigure>();
    return std::any_of(figures.begin(), figures.end(), [&](const CheckFigure &figure) {
        return figure.figure.startsWith(group) && !figure.part && !figure.type && !figure.circuit &&
               !figure.branch && !figure.test;
    });
}

} // namespace ohmwright
