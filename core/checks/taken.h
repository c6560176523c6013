// SPDX-License-Identifier: GPL-3.0-or-later
// taken(): an input put on the sheet, and its value only if it can be computed with. For checks
// whose parts are judged each on its own inputs, so that what is known to fail stays a failure
// while something else is not known.
//
//     const auto u = taken(sheet, inputs.voltage, u"U", u"V", kAboveNothing);
//     const auto i = taken(sheet, inputs.current, u"I", u"A");
//     if (u && i) …
#pragma once

#include "core/checks/worksheet.h"

#include <QCoreApplication>

#include <cmath>
#include <limits>
#include <optional>

namespace ohmwright {

// The least value of what may not be zero.
inline constexpr double kAboveNothing = std::numeric_limits<double>::min();
inline constexpr double kNoLimit = std::numeric_limits<double>::infinity();

namespace detail {

inline double plainSi(double number)
{
    return number;
}
template <class Q>
double plainSi(Q quantity)
{
    return quantity.si();
}

} // namespace detail

// None when it is not known or outside `least`..`most` (SI); the sheet says which.
template <class Q>
std::optional<Q> taken(Worksheet &sheet, const Given<Q> &input, QStringView symbol,
                       QStringView unit, double least = -kNoLimit, double most = kNoLimit)
{
    sheet.take(input, symbol, unit, least, most);
    if (!input.value)
        return std::nullopt;
    const double si = detail::plainSi(*input.value);
    return std::isfinite(si) && si >= least && si <= most ? input.value : std::nullopt;
}

// Windows are kept or left; being near their edge is no reason for worry, so that what is kept is
// told as a step and only what is left is held against its limit, resting on `from`, if any.
template <class Q, class... Input>
void keepAtMost(Worksheet &sheet, const QString &what, Q value, Q limit, QStringView unit,
                const QString &limitFrom, const Input &...from)
{
    if (detail::plainSi(value) > detail::plainSi(limit)) {
        if constexpr (sizeof...(from) > 0)
            sheet.restsOn(from...);
        sheet.atMost(what, value, limit, unit, limitFrom);
    } else {
        sheet.stepText(what, QStringLiteral("≤"),
                       QString(show(value, unit) + QStringLiteral(" ≤ ") + show(limit, unit)),
                       QCoreApplication::translate("Taken", "kept"));
    }
}
template <class Q, class... Input>
void keepAtLeast(Worksheet &sheet, const QString &what, Q value, Q limit, QStringView unit,
                 const QString &limitFrom, const Input &...from)
{
    if (detail::plainSi(value) < detail::plainSi(limit)) {
        if constexpr (sizeof...(from) > 0)
            sheet.restsOn(from...);
        sheet.atLeast(what, value, limit, unit, limitFrom);
    } else {
        sheet.stepText(what, QStringLiteral("≥"),
                       QString(show(value, unit) + QStringLiteral(" ≥ ") + show(limit, unit)),
                       QCoreApplication::translate("Taken", "kept"));
    }
}

// A whole number of things, from 1.
inline std::optional<double> takenCount(Worksheet &sheet, const Given<double> &input,
                                        QStringView symbol, double most, const QString &refusal)
{
    const std::optional<double> count = taken(sheet, input, symbol, u"", 1, most);
    if (count && *count != std::floor(*count)) {
        sheet.refuse(refusal);
        return std::nullopt;
    }
    return count;
}

} // namespace ohmwright
