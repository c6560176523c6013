// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/verdicts/verdict_counts.h"

namespace ohmwright {

VerdictCounts countVerdicts(const std::vector<Check> &checks)
{
    VerdictCounts counts;
    for (const Check &check : checks)
        switch (check.verdict) {
        case Verdict::Holds:
            ++counts.holds;
            break;
        case Verdict::Tight:
            ++counts.tight;
            break;
        case Verdict::Fails:
            ++counts.fails;
            break;
        case Verdict::Unknown:
            ++counts.unknown;
            break;
        }
    return counts;
}

} // namespace ohmwright
