// SPDX-License-Identifier: GPL-3.0-or-later
// Brakes, measured: braking on a roller bench or the road against the limits of a roadworthiness
// test. What the place's own test asks decides; the thresholds here are data.
//
// Efficiency = sum of the braking forces/(m·g), or deceleration/g; imbalance of an axle =
// difference of its two wheels/the greater. Sources: Directive 2014/45/EU, annex I, 1.2 and 1.4
// (cars 58 %, 50 % if first used before 2010 or 2012; imbalance 30 %; parking brake 16 %); UN
// R13-H (road: 6.43 m/s², pedal force at most 500 N).
#pragma once

#include "core/checks/given.h"
#include "core/checks/recorded_test.h"

#include <optional>
#include <vector>

namespace ohmwright {

struct AxleBraking
{
    QString name;       // "front axle"
    Given<Force> left;  // N, 0 or more, at the greatest effort
    Given<Force> right; // N, 0 or more
};

struct BrakesMeasuredInputs
{
    RecordedTest record;
    Given<Mass> mass;               // kg, above 0, as tested; asked for with forces
    std::vector<AxleBraking> axles; // from a roller bench; may be empty if measured on the road
    std::optional<Given<double>> roadDeceleration; // mean fully developed, as a share of g; 0 to 2
    std::optional<Given<Force>> pedalForce;        // N, 0 or more, in the road test
    std::optional<Given<Force>> parkingForce;      // N, 0 or more, both wheels together

    Threshold<double> efficiency{QStringLiteral("brakes.efficiency"),
                                 0.58,
                                 QStringLiteral("Directive 2014/45/EU, annex I, 1.2.2"),
                                 Tighter::Higher,
                                 std::nullopt,
                                 {}};
    Threshold<double> imbalance{QStringLiteral("brakes.imbalance"),
                                0.30,
                                QStringLiteral("Directive 2014/45/EU, annex I, 1.2.1"),
                                Tighter::Lower,
                                std::nullopt,
                                {}};
    Threshold<double> parking{QStringLiteral("brakes.parking"),
                              0.16,
                              QStringLiteral("Directive 2014/45/EU, annex I, 1.4.2"),
                              Tighter::Higher,
                              std::nullopt,
                              {}};
    Threshold<double> road{QStringLiteral("brakes.road"),
                           6.43 / 9.80665,
                           QStringLiteral("UN R13-H: 6.43 m/s²"),
                           Tighter::Higher,
                           std::nullopt,
                           {}};
    Threshold<Force> pedal{QStringLiteral("brakes.pedal"),
                           Force::fromSi(500),
                           QStringLiteral("UN R13-H: at most 500 N"),
                           Tighter::Lower,
                           std::nullopt,
                           {}};
};

// Id "brakes_measured".
Check judgeBrakesMeasured(const BrakesMeasuredInputs &inputs);

} // namespace ohmwright
