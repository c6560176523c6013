// SPDX-License-Identifier: GPL-3.0-or-later
// Quantity: an SI value whose dimension is part of its type.
//
// For computing. What a person typed, with its unit kept, is an Amount (amount.h).
// A volt plus an ampere does not compile; a volt times an ampere is a watt.
//
//     const Voltage full = volts(4.2) * 108;
//     const Power heat = volts(12) * amperes(40);
//     heat.in(watts(1));   // 480.0
#pragma once

#include <compare>

namespace ohmwright {

// Exponents of kilogram, metre, second, ampere, kelvin.
template <int M, int L, int T, int I, int K>
class Quantity
{
public:
    constexpr Quantity() = default;

    [[nodiscard]] static constexpr Quantity fromSi(double si) { return Quantity(si); }
    [[nodiscard]] constexpr double si() const { return m_si; }
    // The number of `unit`s in this quantity.
    [[nodiscard]] constexpr double in(Quantity unit) const { return m_si / unit.m_si; }

    constexpr auto operator<=>(const Quantity &) const = default;

    constexpr Quantity operator+(Quantity o) const { return Quantity(m_si + o.m_si); }
    constexpr Quantity operator-(Quantity o) const { return Quantity(m_si - o.m_si); }
    constexpr Quantity operator-() const { return Quantity(-m_si); }
    constexpr Quantity operator*(double factor) const { return Quantity(m_si * factor); }
    constexpr Quantity operator/(double divisor) const { return Quantity(m_si / divisor); }
    constexpr double operator/(Quantity o) const { return m_si / o.m_si; }

    constexpr Quantity &operator+=(Quantity o) { return *this = *this + o; }
    constexpr Quantity &operator-=(Quantity o) { return *this = *this - o; }
    friend constexpr Quantity operator*(double factor, Quantity q) { return q * factor; }
    friend constexpr auto operator/(double dividend, Quantity q)
    {
        return Quantity<-M, -L, -T, -I, -K>::fromSi(dividend / q.si());
    }

    template <int M2, int L2, int T2, int I2, int K2>
    constexpr auto operator*(Quantity<M2, L2, T2, I2, K2> o) const
    {
        return Quantity<M + M2, L + L2, T + T2, I + I2, K + K2>::fromSi(m_si * o.si());
    }
    template <int M2, int L2, int T2, int I2, int K2>
    constexpr auto operator/(Quantity<M2, L2, T2, I2, K2> o) const
    {
        return Quantity<M - M2, L - L2, T - T2, I - I2, K - K2>::fromSi(m_si / o.si());
    }

private:
    explicit constexpr Quantity(double si) : m_si(si) {}
    double m_si = 0.0;
};

using Mass = Quantity<1, 0, 0, 0, 0>;
using Unbalance = Quantity<1, 1, 0, 0, 0>; // mass times its distance from the axis
using Length = Quantity<0, 1, 0, 0, 0>;
using Area = Quantity<0, 2, 0, 0, 0>;
using Volume = Quantity<0, 3, 0, 0, 0>;
using Density = Quantity<1, -3, 0, 0, 0>;
using Duration = Quantity<0, 0, 1, 0, 0>;
using Frequency = Quantity<0, 0, -1, 0, 0>;
using RotationSpeed = Frequency; // in rad/s; the radian has no dimension
using Speed = Quantity<0, 1, -1, 0, 0>;
using Current = Quantity<0, 0, 0, 1, 0>;
using Temperature = Quantity<0, 0, 0, 0, 1>;
using Charge = Quantity<0, 0, 1, 1, 0>;
using Force = Quantity<1, 1, -2, 0, 0>;
using Pressure = Quantity<1, -1, -2, 0, 0>;
using FlowRate = Quantity<0, 3, -1, 0, 0>;
using Acceleration = Quantity<0, 1, -2, 0, 0>;
using ThermalConductance = Quantity<1, 2, -3, 0, -1>;
using Energy = Quantity<1, 2, -2, 0, 0>;
using Torque = Energy;           // newton metre and joule share a dimension
using EnergyPerDistance = Force; // joule per metre and newton share a dimension
using Power = Quantity<1, 2, -3, 0, 0>;
using Voltage = Quantity<1, 2, -3, -1, 0>;
using Resistance = Quantity<1, 2, -3, -2, 0>;
using Capacitance = Quantity<-1, -2, 4, 2, 0>;
using Inductance = Quantity<1, 2, -2, -2, 0>;

constexpr Voltage volts(double v)
{
    return Voltage::fromSi(v);
}
constexpr Current amperes(double a)
{
    return Current::fromSi(a);
}
constexpr Resistance ohms(double r)
{
    return Resistance::fromSi(r);
}
constexpr Power watts(double w)
{
    return Power::fromSi(w);
}
constexpr Energy joules(double j)
{
    return Energy::fromSi(j);
}
constexpr Mass kilograms(double m)
{
    return Mass::fromSi(m);
}
constexpr Length metres(double l)
{
    return Length::fromSi(l);
}
constexpr Duration seconds(double s)
{
    return Duration::fromSi(s);
}

} // namespace ohmwright
