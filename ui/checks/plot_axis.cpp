// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/checks/plot_axis.h"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>

namespace ohmwright::ui {

namespace {

constexpr double kZeroWorthwhile = 0.5; // of the axis

// The one that gives a number of intervals nearest to what is wished.
double niceStep(double span, int wanted)
{
    const double power = std::pow(10.0, std::floor(std::log10(span / wanted)));
    double best = power;
    for (const double factor : {1.0, 2.0, 5.0, 10.0}) {
        const auto off = [&](double step) {
            return std::abs(std::log(span / step / wanted));
        };
        if (off(factor * power) < off(best))
            best = factor * power;
    }
    return best;
}

} // namespace

int AxisMarks::count() const
{
    return static_cast<int>(std::lround((most - least) / step)) + 1;
}

AxisMarks axisMarks(double least, double most, int wanted, bool fromZero)
{
    if (!std::isfinite(least) || !std::isfinite(most) || least > most || wanted < 1)
        return {};
    const bool zeroIsNear = least > 0 && (most - least) >= kZeroWorthwhile * most;
    const bool zeroIsNearBelow = most < 0 && (most - least) >= kZeroWorthwhile * -least;
    if (fromZero || zeroIsNear || zeroIsNearBelow) {
        least = std::min(least, 0.0);
        most = std::max(most, 0.0);
    }
    if (most == least) { // one value: it stands in the middle
        const double around = least == 0 ? 1 : std::abs(least) * 0.1;
        least -= least == 0 ? 0 : around;
        most += around;
    }
    AxisMarks marks;
    marks.step = niceStep(most - least, wanted);
    // a value a hair beyond a mark, from binary arithmetic, does not ask for another
    constexpr double kHair = 1e-6;
    marks.least = std::floor(least / marks.step + kHair) * marks.step;
    marks.most = std::ceil(most / marks.step - kHair) * marks.step;
    marks.decimals = std::clamp(static_cast<int>(std::ceil(-std::log10(marks.step) - 1e-9)), 0, 9);
    return marks;
}

QString axisTitle(const QString &name, const QString &unit)
{
    if (unit.isEmpty())
        return name;
    return name.isEmpty()
               ? unit
               : QCoreApplication::translate("ohmwright::ui::PlotAxis", "%1 in %2").arg(name, unit);
}

} // namespace ohmwright::ui
