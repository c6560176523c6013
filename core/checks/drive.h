// SPDX-License-Identifier: GPL-3.0-or-later
// Drive: does the motor, through these gears and tyres, move this vehicle as wanted, and do motor
// and gearbox stand it?
//
// Formulas in tractive_effort.h and road_load.h; any text on vehicle dynamics (Gillespie; Larminie
// and Lowry). Tyre slip, weight shift and the inverter's cut-back at standstill are left out.
#pragma once

#include "core/checks/dimensions.h"
#include "core/checks/given.h"
#include "core/checks/road_load.h"

#include <optional>
#include <utility>
#include <vector>

namespace ohmwright {

struct DriveGear
{
    QString name;        // "2nd gear"
    Given<double> ratio; // gearbox input turns for one of its output; 0.05 to 100
};

struct DriveInputs
{
    QString subject; // key of the motor or the vehicle

    // The motor: its curve, or, when the curve is empty, peak torque and peak power.
    std::vector<std::pair<RotationSpeed, Torque>> curve;
    Origin curveOrigin;
    Given<Torque> peakTorque;                 // not needed with a curve
    std::optional<Given<Torque>> torqueLimit; // the motor's own, beside a curve; absent: not told
    Given<Power> peakPower;                   // at the shaft; not needed with a curve
    Given<RotationSpeed> motorLimit;          // the highest speed makers of motor and gearbox allow
    // The highest the wheels can turn it to, downhill or in the wrong gear; absent: not judged.
    std::optional<Given<RotationSpeed>> overspeed;
    std::optional<Given<Torque>> torqueSet; // the controller's setting, when it is lower
    // How far the torque may be off what is set, each way: a controller reckons it from currents, a
    // temperature and a table. 0 to 1. Taken only where the set torque decides.
    Given<double> torqueTolerance =
        given(0.05, QStringLiteral("tolerance of the controller's torque"), Evidence::Assumed,
              QStringLiteral("common practice, no published source"));
    std::optional<Given<Power>> continuousPower; // at the shaft; absent: not judged
    // Limits in line with these that nobody tells, of a second inverter or gearbox: unknown inputs.
    std::vector<Origin> missing;

    std::vector<DriveGear> gears; // those that are driven in; empty: no gearbox, 1:1
    Given<double> finalDrive;     // 0.05 to 100
    Given<double> efficiency;     // motor shaft to tyre, above 0 to 1
    Given<Length> rollingRadius;  // of the driven tyres: measured, or Tyre::rollingRadius()
    std::optional<Given<Duration>> gearChange;  // without effort, each; absent: one gear is kept
    std::optional<Given<Torque>> gearboxTorque; // at its input; absent: no gearbox
    // The most of each other motor that drives into the same gearbox.
    std::vector<Given<Torque>> otherTorques;
    std::optional<Given<Torque>> axleTorque; // of both drive shafts together; absent: not judged

    Given<Mass> mass;                 // as driven, with people and load
    Given<double> rollingCoefficient; // µ: 0.007 to 0.02 for car tyres
    Given<double> dragCoefficient;    // Cd: 0.2 to 1
    Given<Area> frontalArea;
    Given<Density> airDensity = given(kAirDensity, QStringLiteral("air density"),
                                      Evidence::Datasheet, QStringLiteral("dry air at 20 °C"));
    // λ: mass with what turns counted in, over mass; 1 to 3.
    Given<double> rotating =
        given(1.05, QStringLiteral("allowance for what turns"), Evidence::Assumed,
              QStringLiteral("common practice, no published source"));
    // Grip limits effort where both are given; absent: not considered.
    struct Grip
    {
        Given<double> drivenShare; // of the weight, on the driven wheels; 0 to 1
        Given<double> friction;    // tyre on road: 0.8 dry, 0.5 wet
        // Height of the centre of gravity over the wheelbase, negative where the front wheels
        // drive; -0.9 to 0.9. Absent: the shift of weight on a climb is left out.
        std::optional<Given<double>> shift;
    };
    std::optional<Grip> grip;

    // What is wanted. The speed is required: the motor is held to it.
    Given<Speed> wantedSpeed; // to be reached and held on the level
    std::optional<Given<Duration>> wantedTo50, wantedTo80, wantedTo100; // km/h, from standstill
    Threshold<double> startGrade{QStringLiteral("drive.start_grade"),
                                 0.25,
                                 QStringLiteral("common practice, no published source"),
                                 Tighter::Higher,
                                 std::nullopt,
                                 {}};
    std::vector<double> gradesDrawn{0.0, 0.1, 0.2}; // road load in the plot, rise over run
};

Check judgeDrive(const DriveInputs &inputs);

} // namespace ohmwright
