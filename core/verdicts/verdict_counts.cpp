// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/verdicts/verdict_counts.h"

namespace ohmwright {

VerdictCounts countVerdicts(const std::vector<Check> &checks)
{
    VerdictCounts counts{};
    for (const Check &check : checks)
        ++countOf(check.verdict, counts);
    return counts;
}

} // namespace ohmwright
