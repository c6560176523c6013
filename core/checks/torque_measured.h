// SPDX-License-Identifier: GPL-3.0-or-later
// Torque, measured: the readings on a joint's fasteners against what is specified, with the
// scatter of the tool.
//
// A reading outside the specified band fails. The margin of one inside is that of the worst torque
// it may stand for, with the tool's scatter; where the scatter reaches over the band's end it is
// tight, and a tool no finer than the band leaves it unknown. Source of the scatter: ISO 6789
// allows a setting wrench ±4 % above 10 N·m and ±6 % up to it; what the wrench's certificate says
// leads.
#pragma once

#include "core/checks/given.h"
#include "core/checks/recorded_test.h"

#include <vector>

namespace ohmwright {

struct TorqueMeasuredInputs
{
    QString part;  // key
    QString joint; // "busbars of module 3"
    RecordedTest record;
    Given<Torque> specified;             // N·m, above 0
    Given<double> tolerance;             // 0 to 1, each way, of the specified
    Given<double> scatter;               // 0 to 1, each way, of the tool's reading
    std::vector<Given<Torque>> readings; // N·m, one a fastener
};

// Id "torque". Protects the pack unless the joint is said to be of the chassis or driveline.
Check judgeTorqueMeasured(const TorqueMeasuredInputs &inputs, Protects protects = Protects::Pack);

// What ISO 6789 allows a setting wrench at this torque.
double allowedScatter(Torque torque);

} // namespace ohmwright
