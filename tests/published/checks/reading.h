// SPDX-License-Identifier: GPL-3.0-or-later
// Reads figures off a Check the way a person would: by the name of the step or comparison.
#pragma once

#include "core/checks/check.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace ohmwright::reading {

inline const Comparison *comparison(const Check &check, const QString &what)
{
    const auto found = std::find_if(check.comparisons.begin(), check.comparisons.end(),
                                    [&](const Comparison &c) { return c.what == what; });
    return found == check.comparisons.end() ? nullptr : &*found;
}

// SI value of a shown figure ("140.8 ms"), to its four digits; not-a-number if there is none.
inline double si(const QString &shown)
{
    const Result<Amount> amount = parseAmount(shown, NumberStyle::pointDecimal());
    return amount ? amount->si() : std::numeric_limits<double>::quiet_NaN();
}

inline double step(const Check &check, const QString &what)
{
    const auto found = std::find_if(check.steps.begin(), check.steps.end(),
                                    [&](const CheckStep &s) { return s.what == what; });
    return found == check.steps.end() ? std::numeric_limits<double>::quiet_NaN()
                                      : si(found->result);
}

} // namespace ohmwright::reading
