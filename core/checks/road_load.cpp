// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/road_load.h"

#include <cmath>

namespace ohmwright {

namespace {

double cosineOf(double grade)
{
    return 1 / std::hypot(1.0, grade);
}

} // namespace

Force RoadLoad::climbing() const
{
    return grade == 0 ? Force() : mass * gravity * (grade * cosineOf(grade));
}

Force RoadLoad::steady(Speed speed) const
{
    const Force turning = speed.si() > 0 ? rolling : Force();
    return turning + linear * speed + drag * speed * speed + climbing();
}

RoadLoad RoadLoad::onGrade(double other) const
{
    RoadLoad there = *this;
    there.rolling = rolling * (cosineOf(other) / cosineOf(grade));
    there.grade = other;
    return there;
}

RoadLoad roadLoadOf(const RoadLoadFigures &figures)
{
    RoadLoad load;
    load.mass = figures.mass;
    load.rolling = figures.mass * figures.gravity * figures.rollingCoefficient;
    load.drag = figures.air * figures.frontalArea * (0.5 * figures.dragCoefficient);
    load.rotating = figures.rotating;
    load.gravity = figures.gravity;
    return load;
}

} // namespace ohmwright
