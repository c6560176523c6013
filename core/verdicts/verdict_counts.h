// SPDX-License-Identifier: GPL-3.0-or-later
// How many checks come out how: what two ways of building a thing are compared by.
#pragma once

#include "core/checks/check.h"

#include <array>
#include <vector>

namespace ohmwright {

using VerdictCounts = std::array<int, EnumWords<Verdict>::words.size()>; // by enumerator

inline int &countOf(Verdict verdict, VerdictCounts &counts)
{
    return counts[static_cast<std::size_t>(verdict)];
}
inline int countOf(Verdict verdict, const VerdictCounts &counts)
{
    return counts[static_cast<std::size_t>(verdict)];
}

VerdictCounts countVerdicts(const std::vector<Check> &checks);

} // namespace ohmwright
