// SPDX-License-Identifier: GPL-3.0-or-later
// How many checks come out how: what two ways of building a thing are compared by.
#pragma once

#include "core/checks/check.h"

#include <vector>

namespace ohmwright {

struct VerdictCounts
{
    int holds = 0, tight = 0, fails = 0, unknown = 0;
    bool operator==(const VerdictCounts &) const = default;
};

VerdictCounts countVerdicts(const std::vector<Check> &checks);

} // namespace ohmwright
