// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/parts/agree.h"

#include <algorithm>
#include <cmath>

namespace ohmwright {

namespace {

// Of the greater of the two.
constexpr double kActualsAgree = 0.02;
constexpr double kLimitsAgree = 1e-9;

} // namespace

bool agree(RatingKind kind, const Amount &a, const Amount &b)
{
    const double tolerance = kind == RatingKind::Limit ? kLimitsAgree : kActualsAgree;
    return std::abs(a.si() - b.si()) <= tolerance * std::max(std::abs(a.si()), std::abs(b.si()));
}

} // namespace ohmwright
