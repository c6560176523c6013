// SPDX-License-Identifier: GPL-3.0-or-later
// From a motor's torque to the road: effort in each gear, top speed, times, steepest start.
//
//     F = T·i·η/r      v = ω·r/i      t = ∫ λ·m dv / (F − R)      (any text on vehicle dynamics)
#pragma once

#include "core/checks/curve.h"
#include "core/checks/road_load.h"

#include <QString>

#include <limits>
#include <optional>
#include <vector>

namespace ohmwright {

// Torque at the shaft over its speed; none above the highest.
class MotorTorque
{
public:
    MotorTorque() = default;
    // Level at the peak torque, then along the peak power, up to the highest speed.
    MotorTorque(Torque peak, Power power, RotationSpeed highest)
        : m_peak(peak), m_power(power), m_highest(highest)
    {}
    // As entered: straight lines between the points, level below the first and above the last.
    MotorTorque(Curve<RotationSpeed, Torque> curve, RotationSpeed highest)
        : m_curve(std::move(curve)), m_highest(highest)
    {}

    [[nodiscard]] Torque at(RotationSpeed speed) const;
    [[nodiscard]] Torque most() const;
    [[nodiscard]] RotationSpeed highest() const { return m_highest; }
    // Never above this, as set in the controller.
    void limitTo(Torque torque) { m_limit = torque; }
    // Never above this at the shaft: what it is good for without end.
    void limitTo(Power power) { m_mostPower = power; }

private:
    Curve<RotationSpeed, Torque> m_curve;
    Torque m_peak;
    Power m_power;
    RotationSpeed m_highest;
    std::optional<Torque> m_limit;
    std::optional<Power> m_mostPower;
};

struct Driveline
{
    MotorTorque motor;
    std::vector<double> ratios; // motor turns for one of the wheel, all in one, from high to low
    double efficiency = 1;      // motor shaft to tyre
    Length radius;              // rolling
    Duration gearChange;        // without effort; nothing for a single speed
    // What the driven tyres hold on the level: friction times the weight on them, without the shift
    // of weight while accelerating; none: not limited by grip.
    std::optional<Force> grip;
    // Friction times height of the centre of gravity over wheelbase: what the driven axle gains of
    // it when the vehicle leans back; negative where the front wheels drive, zero if left out.
    double gripShift = 0;

    [[nodiscard]] Force effort(std::size_t gear, Speed speed) const;
    [[nodiscard]] Force mostEffort(Speed speed) const; // of all gears
    [[nodiscard]] RotationSpeed motorSpeed(std::size_t gear, Speed speed) const;
    [[nodiscard]] Speed highestSpeed(std::size_t gear) const; // at the motor's highest
};

// The speed at which effort and load first balance from standstill, or the motor's highest in the
// fastest gear; zero if it does not start. Within 1 mm/s.
Speed topSpeed(const Driveline &driveline, const RoadLoad &load);

struct Sprint
{
    Duration time;
    Length distance;
};
// From standstill to a speed, each gear held until the next pulls better; nothing if it is never
// reached. Midpoint rule, 2000 steps of speed.
std::optional<Sprint> sprint(const Driveline &driveline, const RoadLoad &load, Speed to);

// The grade (rise over run) at which the effort at standstill just balances: sin θ + µ·cos θ =
// F/(m·g), and with grip tan θ = (grip/(m·g) − µ)/(1 − shift), for the climb takes weight off the
// front axle (Gillespie, Fundamentals of Vehicle Dynamics, ch. 2); at most 1, at least 0.
double steepestStart(const Driveline &driveline, const RoadLoad &level);

} // namespace ohmwright
