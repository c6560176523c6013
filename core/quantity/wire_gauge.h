// SPDX-License-Identifier: GPL-3.0-or-later
// American wire gauge (ASTM B258): the one unit whose number is not a multiple of anything.
// Gauges n/0 are kept as 1 - n: "2/0 AWG" is -1. Used inside core/quantity only.
#pragma once

#include "core/quantity/amount.h"
#include "core/quantity/result.h"

#include <QString>
#include <QStringView>

namespace ohmwright::detail {

[[nodiscard]] Unit awg();
[[nodiscard]] Unit squareMillimetre();

// The gauge in "2/0 AWG" or "AWG 10"; null when the text does not say AWG at either end.
QStringView textOfGauge(QStringView text);
// "2/0", "00" or "10" as a number from -3 to 56; `whole` is quoted when it is none.
Result<double> readGauge(QStringView gauge, QStringView whole);
// "2/0 AWG"; empty if the number is no gauge.
QString printGauge(double number);

// m² of a solid wire, d = 0.127 mm * 92^((36 - n) / 39).
double areaOfGauge(double number);
// From -3 to 56, nearest in diameter's logarithm; an area that is none counts as the thinnest.
double nearestGauge(double area);

} // namespace ohmwright::detail
