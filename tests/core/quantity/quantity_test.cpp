// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/quantity/as_quantity.h"
#include "core/quantity/money.h"
#include "core/quantity/quantity.h"
#include "tests/core/quantity/printers.h"

#include <gtest/gtest.h>

#include <concepts>

namespace ohmwright {

namespace {

template <class A, class B>
concept Adds = requires(A a, B b)
{
    a + b;
};
template <class A, class B>
concept Compares = requires(A a, B b)
{
    a < b;
};
template <class A, class B>
concept Multiplies = requires(A a, B b)
{
    a *b;
};

// Volt and ampere do not add, whatever the order; a bare number is no quantity.
static_assert(Adds<Voltage, Voltage>);
static_assert(!Adds<Voltage, Current>);
static_assert(!Adds<Current, Voltage>);
static_assert(!Adds<Voltage, double>);
static_assert(!Adds<double, Voltage>);
static_assert(!Compares<Voltage, Current>);
static_assert(!std::convertible_to<double, Voltage>);
static_assert(!std::convertible_to<Voltage, double>);
static_assert(!std::constructible_from<Voltage, double>);

// Money takes no floating-point number in any way, and no money times money.
static_assert(Adds<Money, Money>);
static_assert(!Adds<Money, double>);
static_assert(!Adds<Money, int>);
static_assert(!Adds<double, Money>);
static_assert(!Multiplies<Money, Money>);
static_assert(!std::convertible_to<double, Money>);
static_assert(!std::convertible_to<Money, double>);
static_assert(!Adds<Money, Voltage>);

// Dimensions come out of the arithmetic.
static_assert(std::same_as<decltype(volts(1) * amperes(1)), Power>);
static_assert(std::same_as<decltype(watts(1) * seconds(1)), Energy>);
static_assert(std::same_as<decltype(volts(1) / amperes(1)), Resistance>);
static_assert(std::same_as<decltype(amperes(1) * seconds(1)), Charge>);
static_assert(std::same_as<decltype(amperes(1) * seconds(1) / volts(1)), Capacitance>);
static_assert(std::same_as<decltype(volts(1) / volts(1)), double>);
static_assert(std::same_as<decltype(1.0 / seconds(2)), Frequency>);
static_assert(std::same_as<decltype(volts(1) * seconds(1) / amperes(1)), Inductance>);
static_assert(std::same_as<decltype(2.0 * volts(1)), Voltage>);
static_assert((volts(4.0) * 100).si() == 400.0);
static_assert(volts(12) * amperes(40) == watts(480));

Unit unit(QStringView symbol)
{
    return Unit::fromSymbol(symbol).value();
}

} // namespace

TEST(Quantity, GivesItsNumberInAnyUnitOfItsKind)
{
    EXPECT_DOUBLE_EQ((volts(355.2) * amperes(130) * seconds(3600)).in(joules(3.6e6)), 46.176);
    Voltage sum = volts(3);
    sum += volts(0.5);
    sum -= volts(1);
    EXPECT_EQ(sum, volts(2.5));
}

TEST(AsQuantity, IsTheQuantityOfAnAmountOfThatMeasure)
{
    EXPECT_EQ(as<Voltage>(Amount(0.4, unit(u"kV"))), volts(400));
    EXPECT_EQ(as<Measure::Voltage>(Amount(403, unit(u"V"))), volts(403));
    EXPECT_DOUBLE_EQ(as<Duration>(Amount(2, unit(u"h")))->si(), 7200);
}

TEST(AsQuantity, IsNothingForAnotherMeasure)
{
    EXPECT_FALSE(as<Voltage>(Amount(40, unit(u"A"))));
    EXPECT_FALSE(as<Mass>(Amount()));
}

TEST(AsQuantity, KeepsTorqueAndEnergyApart)
{
    const Amount torque(200, unit(u"N·m"));
    EXPECT_FALSE(as<Energy>(torque));
    EXPECT_EQ(as<Measure::Torque>(torque)->si(), 200);
    EXPECT_FALSE(as<Measure::Torque>(Amount(200, unit(u"J"))));
    EXPECT_FALSE(as<Frequency>(Amount(3000, unit(u"rpm"))));
    EXPECT_TRUE(as<Measure::RotationSpeed>(Amount(3000, unit(u"rpm"))));
}

TEST(AmountOf, PutsAQuantityIntoAUnit)
{
    EXPECT_EQ(amountOf(volts(403), unit(u"kV")), Amount(0.403, unit(u"kV")));
    EXPECT_EQ(amountOf<Measure::Torque>(joules(5), unit(u"N·m")), Amount(5, unit(u"N·m")));
}

TEST(AmountOfDeathTest, RefusesAUnitOfAnotherMeasure)
{
    EXPECT_DEATH(static_cast<void>(amountOf(volts(1), unit(u"A"))), "own measure");
}

} // namespace ohmwright
