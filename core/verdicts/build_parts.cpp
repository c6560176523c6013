// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/verdicts/build_parts.h"

#include "core/parts/options.h"

#include <algorithm>
#include <set>

namespace ohmwright {

namespace {

template <class Keep>
std::vector<const Part *> filtered(const Records &records, Keep keep)
{
    std::vector<const Part *> parts;
    for (const Part &part : records.all<Part>())
        if (isOfTheBuild(records, part) && keep(part))
            parts.push_back(&part);
    return parts;
}

} // namespace

bool isOfTheBuild(const Records &records, const Part &part)
{
    return isPlannedWith(records, part.option) && part.state <= PartState::Fitted &&
           part.kind != PartKind::Tool && part.kind != PartKind::Service &&
           part.kind != PartKind::Consumable;
}

std::vector<const Part *> partsOfRole(const Records &records, PartRole role)
{
    return filtered(records, [&](const Part &part) { return part.role == role; });
}

const Part *onlyPartOfRole(const Records &records, PartRole role)
{
    const std::vector<const Part *> parts = partsOfRole(records, role);
    return parts.size() == 1 ? parts.front() : nullptr;
}

std::vector<const Part *> partsOn(const Records &records, const Circuit &circuit)
{
    std::set<Id<Part>> on;
    for (const Connection &connection : records.all<Connection>())
        if (connection.circuit == circuit.id)
            on.insert(connection.part);
    return filtered(records, [&](const Part &part) { return on.contains(part.id); });
}

std::vector<const Part *> partsOn(const Records &records, const Branch &branch)
{
    std::set<Id<Part>> on;
    for (const Connection &connection : records.all<Connection>())
        if (connection.branch == branch.id)
            on.insert(connection.part);
    return filtered(records, [&](const Part &part) { return on.contains(part.id); });
}

std::vector<const Part *> inside(const Records &records, const Part &part)
{
    return filtered(records, [&](const Part &other) { return other.partOf == part.id; });
}

} // namespace ohmwright
