// SPDX-License-Identifier: GPL-3.0-or-later
// Brakes as measured, out of a book: the tests of brakes with what was read in them.
#include "core/checks/brakes_measured.h"
#include "core/checks/dimensions.h"
#include "core/checks/road_load.h"
#include "core/verdicts/recorded_test_of_book.h"
#include "core/verdicts/vehicle_checks_of_book.h"
#include "core/verdicts/vehicle_tools.h"

#include <QCoreApplication>

namespace ohmwright {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("BrakesMeasuredOfBook", text);
}

constexpr std::array kBench{"brakes_test.front_left", "brakes_test.front_right",
                            "brakes_test.rear_left", "brakes_test.rear_right"};

// As a share of gravity.
std::optional<Given<double>> decelerationOf(const BookInputs &in, const TestRecord &test)
{
    const auto measured = figureIfAny<Acceleration>(in, "brakes_test.deceleration", test);
    if (!measured)
        return std::nullopt;
    Given<double> share;
    share.origin = measured->origin;
    if (measured->value)
        share.value = *measured->value / kStandardGravity;
    return share;
}

Check judgeTest(const BookInputs &in, const TestRecord &test)
{
    BrakesMeasuredInputs brakes;
    brakes.record = recordedTest(test);
    brakes.roadDeceleration = decelerationOf(in, test);
    brakes.pedalForce = figureIfAny<Force>(in, "brakes_test.pedal", test);
    brakes.parkingForce = figureIfAny<Force>(in, "brakes_test.parking", test);
    brakes.mass = in.figure<Mass>("brakes_test.mass", test);
    const bool onBench = std::any_of(kBench.begin(), kBench.end(),
                                     [&](const char *name) { return in.has(name, test); });
    // with nothing read yet the bench is what is asked for: every road has one near
    if (onBench || !brakes.roadDeceleration) {
        const auto force = [&](std::size_t wheel) {
            return in.figure<Force>(kBench[wheel], test);
        };
        brakes.axles = {{tr("front axle"), force(0), force(1)},
                        {tr("rear axle"), force(2), force(3)}};
    }
    in.hold(brakes.efficiency);
    in.hold(brakes.imbalance);
    in.hold(brakes.parking);
    in.hold(brakes.road);
    in.hold(brakes.pedal);
    return about(judgeBrakesMeasured(brakes), test.key, tr("Measured: %1").arg(test.name));
}

bool hasReadings(const BookInputs &in, const TestRecord &test)
{
    return in.has("brakes_test.deceleration", test) || in.has("brakes_test.parking", test) ||
           std::any_of(kBench.begin(), kBench.end(),
                       [&](const char *name) { return in.has(name, test); });
}

} // namespace

std::vector<Check> judgeBrakesMeasuredOfBook(const BookInputs &in)
{
    std::vector<Check> checks;
    // a test of one part, the vacuum pump, is none of how the vehicle brakes
    for (const TestRecord &test : in.records().all<TestRecord>())
        if (test.kind == TestKind::Brakes && (!test.part || hasReadings(in, test)))
            checks.push_back(judgeTest(in, test));
    return checks;
}

} // namespace ohmwright
