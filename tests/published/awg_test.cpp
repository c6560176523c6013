// SPDX-License-Identifier: GPL-3.0-or-later
// Source: ASTM B258, d = 0.127 mm * 92^((36 - n) / 39), and its printed table of solid round wire
// (read in reprints). Tolerance: half the last printed digit; 1/0 is printed 8.251 mm where the
// formula gives 8.2515, so 0.001 mm there.
#include "core/quantity/amount.h"
#include "tests/core/quantity/printers.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace ohmwright {

namespace {

struct PrintedWire
{
    const char16_t *gauge;
    double diameter;  // mm
    double tolerance; // mm
    double area;      // mm²
    double areaTolerance;
};

constexpr PrintedWire kPrinted[] = {
    {u"4/0 AWG", 11.684, 0.0005, 107, 0.5},    {u"2/0 AWG", 9.266, 0.0005, 67.4, 0.05},
    {u"1/0 AWG", 8.251, 0.001, 53.5, 0.05},    {u"2 AWG", 6.544, 0.0005, 33.6, 0.05},
    {u"4 AWG", 5.189, 0.0005, 21.2, 0.05},     {u"6 AWG", 4.115, 0.0005, 13.3, 0.05},
    {u"8 AWG", 3.264, 0.0005, 8.37, 0.005},    {u"10 AWG", 2.588, 0.0005, 5.26, 0.005},
    {u"12 AWG", 2.053, 0.0005, 3.31, 0.005},   {u"14 AWG", 1.628, 0.0005, 2.08, 0.005},
    {u"18 AWG", 1.024, 0.0005, 0.823, 0.0005},
};

double area(QStringView gauge) // mm²
{
    const Unit squareMillimetre = Unit::fromSymbol(u"mm²").value();
    return parseAmount(gauge, NumberStyle::pointDecimal())->to(squareMillimetre).number();
}

double diameter(QStringView gauge) // mm
{
    return std::sqrt(area(gauge) * 4 / std::numbers::pi);
}

} // namespace

TEST(Awg, AgreesWithThePrintedTable)
{
    for (const PrintedWire &wire : kPrinted) {
        const std::string name = QString::fromUtf16(wire.gauge).toStdString();
        EXPECT_NEAR(diameter(wire.gauge), wire.diameter, wire.tolerance) << name;
        EXPECT_NEAR(area(wire.gauge), wire.area, wire.areaTolerance) << name;
    }
}

TEST(Awg, HasItsTwoFixedPoints)
{
    EXPECT_NEAR(diameter(u"36 AWG"), 0.005 * 25.4, 1e-12);
    EXPECT_NEAR(diameter(u"4/0 AWG"), 0.46 * 25.4, 1e-12);
}

} // namespace ohmwright
