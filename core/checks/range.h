// SPDX-License-Identifier: GPL-3.0-or-later
// Range: what a kilometre takes from the pack, over published cycles and at steady speeds, and how
// far the usable energy goes.
//
// Formulas in cycle_energy.h (the form of UN R154, annex B7), steps of 0.1 s. A coast-down, wind,
// cold, heating beyond the auxiliaries named and an ageing pack are not in it.
#pragma once

#include "core/checks/given.h"
#include "core/checks/regeneration_settings.h"
#include "core/checks/road_load.h"

#include <optional>
#include <vector>

namespace ohmwright {

struct RangeInputs
{
    QString subject; // key of the pack or the vehicle

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

    Given<double> efficiency;   // pack to tyre: inverter, motor and gears; above 0 to 1
    Given<Power> auxiliaries;   // 12 V side, pumps, heating, all the time
    Given<Energy> usableEnergy; // between the states of charge below
    Given<Power> packLimit;     // the most the pack may give for some seconds

    struct Regeneration
    {
        Given<Power> set;          // into the pack, as set in the controller
        Given<Power> packLimit;    // what the pack may take, when not full and not cold
        Given<double> efficiency;  // tyre to pack; above 0 to 1
        Given<double> drivenShare; // of the braking, on the driven axle; 0 to 1
        Given<Speed> fadesBelow;   // full above, falling to nothing at rest; zero: no fading
        Given<double> fullAbove;   // state of charge above which nothing is taken; 0 to 1
        // Where it is told as a current as well, for the cells.
        std::optional<RegenerationSettings> toldTwice = {};
    };
    std::optional<Regeneration> regeneration; // absent: none
    double startCharge = 1.0;                 // states of charge the usable energy lies between;
    double endCharge = 0.1;                   // needed to know how long regeneration waits

    std::optional<Given<Speed>> topSpeed;      // cycles are capped at it, as WLTP does
    QString cycle = QStringLiteral("wltc-3b"); // of publishedDriveCycles(): the one judged
    std::optional<Given<Length>> wantedRange;  // over that cycle; absent: only told
    std::vector<Speed> steadySpeeds{Speed::fromSi(50 / 3.6), Speed::fromSi(80 / 3.6),
                                    Speed::fromSi(100 / 3.6), Speed::fromSi(120 / 3.6)};
};

Check judgeRange(const RangeInputs &inputs);

} // namespace ohmwright
