// SPDX-License-Identifier: GPL-3.0-or-later
// Parts in parts: the tree of assemblies, walked without recursion to any depth.
#pragma once

#include "core/records/records.h"

#include <QStringList>

#include <unordered_map>
#include <vector>

namespace ohmwright {

class AssemblyTree
{
public:
    explicit AssemblyTree(const Records &records);

    [[nodiscard]] const std::vector<Id<Part>> &within(Id<Part> part) const; // direct, in key order
    [[nodiscard]] std::vector<Id<Part>> allWithin(Id<Part> part) const;     // any depth, top first
    [[nodiscard]] Id<Part> outermost(Id<Part> part) const;
    // Names from the outermost assembly down to the part: {"Cabin heater", "Relay board", "Relay"}.
    [[nodiscard]] QStringList path(Id<Part> part) const;

private:
    const Records &m_records;
    std::unordered_map<Id<Part>, std::vector<Id<Part>>> m_within;
};

} // namespace ohmwright
