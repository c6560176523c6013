// SPDX-License-Identifier: GPL-3.0-or-later
// Where the axis of a plot begins and ends and where its marks stand: on 1, 2 or 5 times a power of
// ten, so that values between them can be read off.
#pragma once

#include <QString>

namespace ohmwright::ui {

struct AxisMarks
{
    double least = 0;
    double most = 1;
    double step = 0.5;
    int decimals = 1;                // that tell the marks apart
    [[nodiscard]] int count() const; // marks, both ends included
    bool operator==(const AxisMarks &) const = default;
};

// For values from `least` to `most`, with about `wanted` intervals. Begins at zero where that
// wastes less than half of the axis, or `fromZero` asks for it, as bars do. Values that are not
// finite, or the wrong way round, give 0 to 1.
[[nodiscard]] AxisMarks axisMarks(double least, double most, int wanted = 5, bool fromZero = false);

// "force in N", "capacity in Ah"; the name alone for a plain number.
[[nodiscard]] QString axisTitle(const QString &name, const QString &unit);

} // namespace ohmwright::ui
