// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/tractive_effort.h"

#include <algorithm>
#include <cmath>

namespace ohmwright {

namespace {

constexpr double kRounding = 1 + 1e-9; // the highest speed itself is still reached

} // namespace

Torque MotorTorque::at(RotationSpeed speed) const
{
    if (speed > m_highest * kRounding)
        return {};
    Torque torque;
    if (!m_curve.isEmpty())
        torque = m_curve.at(speed);
    else
        torque = speed.si() > 0 ? std::min(m_peak, m_power / speed) : m_peak;
    if (m_mostPower && speed.si() > 0)
        torque = std::min(torque, *m_mostPower / speed);
    return m_limit ? std::min(torque, *m_limit) : torque;
}

Torque MotorTorque::most() const
{
    Torque most = m_peak;
    for (const auto &point : m_curve.points()) {
        if (point.first <= m_highest * kRounding)
            most = std::max(most, point.second);
    }
    return m_limit ? std::min(most, *m_limit) : most;
}

Force Driveline::effort(std::size_t gear, Speed speed) const
{
    const Force force = motor.at(motorSpeed(gear, speed)) * (ratios[gear] * efficiency) / radius;
    return grip ? std::min(force, *grip) : force;
}

Force Driveline::mostEffort(Speed speed) const
{
    Force most;
    for (std::size_t gear = 0; gear < ratios.size(); ++gear)
        most = std::max(most, effort(gear, speed));
    return most;
}

RotationSpeed Driveline::motorSpeed(std::size_t gear, Speed speed) const
{
    return speed / radius * ratios[gear];
}

Speed Driveline::highestSpeed(std::size_t gear) const
{
    return motor.highest() * radius / ratios[gear];
}

Speed topSpeed(const Driveline &driveline, const RoadLoad &load)
{
    Speed fastest;
    for (std::size_t gear = 0; gear < driveline.ratios.size(); ++gear)
        fastest = std::max(fastest, driveline.highestSpeed(gear));
    const auto pulls = [&](Speed speed) {
        return driveline.mostEffort(speed) >= load.steady(speed);
    };
    constexpr int kScan = 800;
    constexpr double kWithin = 1e-3; // m/s
    constexpr double kCreep = 1e-6;  // m/s: in motion, so that rolling counts
    if (!pulls(Speed::fromSi(kCreep)))
        return {};
    Speed below = Speed::fromSi(kCreep);
    for (int i = 1; i <= kScan; ++i) {
        Speed above = fastest * (double{1} * i / kScan);
        if (pulls(above)) {
            below = above;
            continue;
        }
        while ((above - below).si() > kWithin) {
            const Speed middle = (above + below) / 2;
            (pulls(middle) ? below : above) = middle;
        }
        return below;
    }
    return fastest;
}

std::optional<Sprint> sprint(const Driveline &driveline, const RoadLoad &load, Speed to)
{
    constexpr int kSteps = 2000;
    constexpr int kMostChanges = 50; // a change that costs more speed than the gear gains
    const Speed step = to / kSteps;
    const Mass moved = load.mass * load.rotating;
    const auto better = [&](Speed speed, std::size_t than) {
        std::size_t best = than;
        for (std::size_t gear = 0; gear < driveline.ratios.size(); ++gear) {
            if (driveline.ratios[gear] < driveline.ratios[than] * kRounding &&
                driveline.effort(gear, speed) > driveline.effort(best, speed))
                best = gear;
        }
        return best;
    };
    if (driveline.ratios.empty())
        return std::nullopt;
    std::size_t gear = 0;
    for (std::size_t other = 1; other < driveline.ratios.size(); ++other) {
        if (driveline.effort(other, step / 2) > driveline.effort(gear, step / 2))
            gear = other;
    }
    Sprint run;
    Speed speed;
    int changes = 0;
    while (speed < to) {
        const Speed width = std::min(step, to - speed);
        const Speed middle = speed + width / 2;
        const std::size_t next = better(middle, gear);
        if (next != gear) {
            gear = next;
            if (++changes > kMostChanges)
                return std::nullopt;
            const Speed lost = load.steady(speed) / moved * driveline.gearChange;
            run.time += driveline.gearChange;
            run.distance += (speed - lost / 2) * driveline.gearChange;
            speed = std::max(Speed(), speed - lost);
            continue;
        }
        const Force net = driveline.effort(gear, middle) - load.steady(middle);
        if (net.si() <= 0)
            return std::nullopt;
        const Duration took = moved * width / net;
        run.time += took;
        run.distance += middle * took;
        speed += width;
    }
    return run;
}

double steepestStart(const Driveline &driveline, const RoadLoad &level)
{
    const Force weight = level.mass * level.gravity;
    const double rolling = level.rolling / weight;
    const double highest = driveline.ratios.empty() ? 0.0 : driveline.ratios.front();
    const double pull = driveline.motor.at(RotationSpeed()) * (highest * driveline.efficiency) /
                        driveline.radius / weight;
    // √(1 + µ²)·sin(θ + atan µ) = F/(m·g)
    const double sine = pull / std::hypot(1.0, rolling);
    const double angle = std::asin(std::min(sine, 1.0)) - std::atan(rolling);
    double grade = std::tan(std::min(angle, std::atan(1.0)));
    if (driveline.grip)
        grade = std::min(grade, (*driveline.grip / weight - rolling) / (1 - driveline.gripShift));
    return std::max(0.0, grade);
}

} // namespace ohmwright
