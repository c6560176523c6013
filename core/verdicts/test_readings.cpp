// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/verdicts/test_readings.h"

#include "core/records/check_figures.h"

namespace ohmwright {

namespace {

// How the names of a kind's readings begin; empty for none.
std::string_view startOf(TestKind kind)
{
    switch (kind) {
    case TestKind::Isolation:
        return "isolation.";
    case TestKind::Bonding:
        return "bonding.";
    case TestKind::Torque:
        return "torque.";
    case TestKind::Precharge:
        return "precharge_test.";
    case TestKind::Brakes:
        return "brakes";
    case TestKind::Charging:
    case TestKind::Coolant:
    case TestKind::Other:
    case TestKind::FirstPowerUp:
    case TestKind::Acceptance:
        return {};
    }
    return {};
}

} // namespace

std::vector<std::string> readingsAskedBy(TestKind kind)
{
    std::vector<std::string> names;
    const std::string_view start = startOf(kind);
    if (start.empty())
        return names;
    // the list has them in the order in which they are taken
    for (const FigureInfo &figure : checkFigures())
        if (figure.of == FigureOf::Test && figure.name.starts_with(start))
            names.emplace_back(figure.name);
    return names;
}

} // namespace ohmwright
