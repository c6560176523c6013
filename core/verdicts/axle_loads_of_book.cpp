// SPDX-License-Identifier: GPL-3.0-or-later
// Axle loads and brakes at the new mass, out of a book.
#include "core/checks/brakes.h"
#include "core/verdicts/vehicle_checks_of_book.h"
#include "core/verdicts/vehicle_of_book.h"
#include "core/verdicts/vehicle_tools.h"

#include <QCoreApplication>

namespace ohmwright {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("AxleLoadsOfBook", text);
}

// Only a vehicle that something was taken out of or put into has a new mass.
bool isChanged(const Records &records)
{
    return records.all<MassEntry>().size() > 0;
}

} // namespace

std::vector<Check> judgeAxleLoadsOfBook(const BookInputs &in)
{
    if (!isChanged(in.records()) && !vehicleHasFigures(in.records(), QLatin1String("axles.")))
        return {};
    return {judgeAxleLoads(axleLoadsInputs(in))};
}

std::vector<Check> judgeBrakesOfBook(const BookInputs &in)
{
    if (!isChanged(in.records()) && !vehicleHasFigures(in.records(), QLatin1String("brakes.")))
        return {};
    const AxleLoadsInputs axles = axleLoadsInputs(in);
    const DrivenVehicle driven = drivenVehicle(in);
    BrakesInputs brakes;
    brakes.mass = driven.mass;
    brakes.frontAxle = driven.frontAxle;
    brakes.wheelbase = axles.wheelbase;
    brakes.height = driven.height;
    brakes.approvedMass = axles.grossPlate;
    if (in.has("vehicle.load_mass") && in.has("vehicle.load_place") &&
        in.has("vehicle.load_height"))
        brakes.carried = CarriedLoad{in.figure<Mass>("vehicle.load_mass"),
                                     in.figure<Length>("vehicle.load_place"),
                                     in.figure<Length>("vehicle.load_height")};
    brakes.frontForce = in.figure<Force>("brakes.front_force");
    brakes.rearForce = in.figure<Force>("brakes.rear_force");
    brakes.pedalForce = in.figure<Force>("brakes.pedal_force");
    brakes.boost = givenChoice<BrakeBoost>(in, "brakes.boost");
    // only an engine that is told to stay makes vacuum
    brakes.engineStays = in.yesNo("brakes.engine_stays").value_or(false);
    brakes.vacuum = in.figure<Pressure>("brakes.vacuum");
    in.hold(brakes.deceleration);
    in.hold(brakes.pedal);
    in.hold(brakes.frontFirstTo);
    in.hold(brakes.leastVacuum);
    Check check = judgeBrakes(brakes);
    if (brakes.boost.value == BrakeBoost::EngineVacuum)
        tellChoice(check, in, brakes.engineStays ? tr("yes") : tr("no"),
                   tr("the engine goes unless told"), "brakes.engine_stays");
    return {check};
}

} // namespace ohmwright
