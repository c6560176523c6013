// SPDX-License-Identifier: GPL-3.0-or-later
// Takes an input onto a worksheet and says whether there is a figure to compute with, so that what
// can be judged is judged although something else is not known: a known failure stays one.
#pragma once

#include "core/checks/worksheet.h"

#include <cmath>
#include <optional>

namespace ohmwright {

namespace detail {

inline bool isUsable(double si, double least, double most)
{
    return std::isfinite(si) && si >= least && si <= most;
}

} // namespace detail

// Nothing when the input is not known or lies outside `least`..`most` (SI); the sheet then names
// it.
template <class Q>
std::optional<Q> takeKnown(Worksheet &sheet, const Given<Q> &input, QStringView symbol,
                           QStringView unit, double least, double most)
{
    const Q taken = sheet.take(input, symbol, unit, least, most);
    if (!input.value || !detail::isUsable(input.value->si(), least, most))
        return std::nullopt;
    return taken;
}
inline std::optional<double> takeKnown(Worksheet &sheet, const Given<double> &input,
                                       QStringView symbol, QStringView unit, double least,
                                       double most)
{
    const double taken = sheet.take(input, symbol, unit, least, most);
    if (!input.value || !detail::isUsable(*input.value, least, most))
        return std::nullopt;
    return taken;
}

} // namespace ohmwright
