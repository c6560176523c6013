// SPDX-License-Identifier: GPL-3.0-or-later
// The vehicle as a book has it: what several checks ask of it.
#pragma once

#include "core/checks/axle_loads.h"
#include "core/checks/tyre.h"
#include "core/verdicts/book_inputs.h"

#include <QCoreApplication>

#include <optional>

namespace ohmwright {

// As on its sidewall; none if the vehicle's tyre size is empty or no tyre size.
std::optional<Tyre> tyreOf(const Vehicle &vehicle);

// The vehicle's plates, weights and tyres, and the book's masses.
AxleLoadsInputs axleLoadsInputs(const BookInputs &inputs);

// With people and load: as recorded, else worked out from the masses; not known while one of these
// is missing.
struct DrivenVehicle
{
    Given<Mass> mass, frontAxle;
    Given<Length> height; // of the centre of gravity above the ground
};
DrivenVehicle drivenVehicle(const BookInputs &inputs);

// Into the fields of these names of the inputs of driving and range.
template <class Inputs>
void putRoadLoad(const BookInputs &in, Inputs &into)
{
    const auto because = [](const char *text) {
        return QCoreApplication::translate("VehicleOfBook", text);
    };
    constexpr double kRolling = 0.013;
    into.mass = drivenVehicle(in).mass;
    into.rollingCoefficient = in.figureOr<double>(
        kRolling,
        because("car tyres on asphalt, 0.010 to 0.015: common practice, no published source"),
        "vehicle.rolling_coefficient");
    into.dragCoefficient = in.figure<double>("vehicle.drag_coefficient");
    into.frontalArea = in.figure<Area>("vehicle.frontal_area");
    into.airDensity = toldOr(in, into.airDensity, "vehicle.air_density");
    into.rotating = in.figureOr<double>(*into.rotating.value, into.rotating.origin.source,
                                        "vehicle.rotating_allowance");
}

} // namespace ohmwright
