// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/cycle_energy.h"

#include "core/quantity/invariant.h"

#include <algorithm>
#include <cmath>

namespace ohmwright {

namespace {

Power comingBack(Power braking, Speed speed, const Regeneration &regeneration)
{
    if (!regeneration.fitted)
        return {};
    const double fading =
        regeneration.fadesBelow.si() > 0 ? std::min(1.0, speed / regeneration.fadesBelow) : 1.0;
    return std::min(braking * (regeneration.share * regeneration.efficiency * fading),
                    regeneration.limit);
}

} // namespace

CycleEnergy energyOver(const DriveCycle &cycle, const RoadLoad &load, const PackSide &pack,
                       Duration step)
{
    require(step.si() > 0, "time goes on");
    CycleEnergy sum;
    for (std::size_t i = 1; i < cycle.points.size(); ++i) {
        const auto &[fromTime, fromSpeed] = cycle.points[i - 1];
        const auto &[toTime, toSpeed] = cycle.points[i];
        const Duration lasting = toTime - fromTime;
        constexpr double kRounding = 1e-9; // 1 s is ten steps of 0.1 s
        const int parts = std::max(1, static_cast<int>(std::ceil(lasting / step - kRounding)));
        const Duration dt = lasting / parts;
        const Acceleration change = (toSpeed - fromSpeed) / lasting;
        for (int part = 0; part < parts; ++part) {
            const Speed mean = fromSpeed + change * dt * (part + 0.5);
            const Power wheels = load.during(mean, change) * mean;
            sum.distance += mean * dt;
            sum.net += wheels * dt;
            Power out = pack.auxiliaries, in;
            if (wheels.si() > 0) {
                sum.drive += wheels * dt;
                out += wheels / pack.efficiency;
            } else {
                in = comingBack(-wheels, mean, pack.regeneration);
            }
            sum.fromPack += out * dt;
            sum.intoPack += in * dt;
            sum.mostFromPack = std::max(sum.mostFromPack, out);
            sum.mostIntoPack = std::max(sum.mostIntoPack, in);
        }
    }
    return sum;
}

Power powerAtSteady(Speed speed, const RoadLoad &load, const PackSide &pack)
{
    const Power wheels = load.steady(speed) * speed;
    if (wheels.si() >= 0)
        return wheels / pack.efficiency + pack.auxiliaries;
    return pack.auxiliaries - comingBack(-wheels, speed, pack.regeneration);
}

} // namespace ohmwright
