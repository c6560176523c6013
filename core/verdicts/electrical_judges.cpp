// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/verdicts/electrical_checks_of_book.h"
#include "core/verdicts/vehicle_tools.h"

namespace ohmwright {

namespace {

// What parts are, where they hang and what they withstand; thresholds may be anybody's.
#define OF_WIRING Part, PartType, Connection, Circuit, Rating, CheckFigure, OwnThreshold
// What the pack's facts rest on.
#define OF_CURVES RatedCurve, CurvePoint

} // namespace

std::span<const Judge> electricalJudges()
{
    static const std::vector<Judge> kJudges{
        {"circuit_ratings", judgeCircuitRatingsOfBook, tablesOf<OF_WIRING, OF_CURVES>()},
        {"branch_ratings", judgeBranchRatingsOfBook, tablesOf<OF_WIRING, OF_CURVES, Branch>()},
        {"pack", judgePackOfBook, tablesOf<OF_WIRING, OF_CURVES>()},
        {"cell_limits", judgeCellLimitsOfBook, tablesOf<OF_WIRING, OF_CURVES, Branch>()},
        {"grouping", judgeGroupingOfBook, tablesOf<OF_WIRING, OF_CURVES>()},
        {"precharge", judgePrechargeOfBook, tablesOf<OF_WIRING, OF_CURVES>()},
        {"precharge_measured", judgePrechargeMeasuredOfBook, tablesOf<OF_WIRING, TestRecord>()},
        {"discharge", judgeDischargeOfBook, tablesOf<OF_WIRING, OF_CURVES>()},
        {"conductor", judgeConductorOfBook, tablesOf<OF_WIRING, OF_CURVES, Branch>()},
        {"fuse", judgeFuseOfBook, tablesOf<OF_WIRING, OF_CURVES, Branch>()},
        {"charging", judgeChargingOfBook, tablesOf<OF_WIRING, OF_CURVES>()},
        {"low_voltage", judgeLowVoltageOfBook, tablesOf<OF_WIRING, Branch>()},
        {"isolation", judgeIsolationOfBook, tablesOf<OF_WIRING, OF_CURVES, TestRecord>()},
        {"bonding", judgeBondingOfBook, tablesOf<OF_WIRING, TestRecord>()},
        {"torque", judgeTorqueMeasuredOfBook, tablesOf<OF_WIRING, TestRecord>()},
    };
    return kJudges;
}

#undef OF_WIRING
#undef OF_CURVES

} // namespace ohmwright
