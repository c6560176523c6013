// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/verdicts/electrical_checks_of_book.h"
#include "core/verdicts/judges.h"

namespace ohmwright {

namespace {

using Tables = std::vector<std::string_view>;

// What parts are, where they hang and what they withstand; thresholds may be anybody's.
Tables wiringAnd(std::initializer_list<std::string_view> more)
{
    Tables tables{"part",   "part_type",    "connection",   "circuit",
                  "rating", "check_figure", "own_threshold"};
    tables.insert(tables.end(), more);
    return tables;
}

} // namespace

std::span<const Judge> electricalJudges()
{
    static const std::vector<Judge> kJudges{
        {"circuit_ratings", judgeCircuitRatingsOfBook, wiringAnd({"rated_curve", "curve_point"})},
        {"branch_ratings", judgeBranchRatingsOfBook,
         wiringAnd({"branch", "rated_curve", "curve_point"})},
        {"pack", judgePackOfBook, wiringAnd({"rated_curve", "curve_point"})},
        {"cell_limits", judgeCellLimitsOfBook, wiringAnd({"branch", "rated_curve", "curve_point"})},
        {"grouping", judgeGroupingOfBook, wiringAnd({"rated_curve", "curve_point"})},
        {"precharge", judgePrechargeOfBook, wiringAnd({"rated_curve", "curve_point"})},
        {"precharge_measured", judgePrechargeMeasuredOfBook, wiringAnd({"test_record"})},
        {"discharge", judgeDischargeOfBook, wiringAnd({"rated_curve", "curve_point"})},
        {"conductor", judgeConductorOfBook, wiringAnd({"branch", "rated_curve", "curve_point"})},
        {"fuse", judgeFuseOfBook, wiringAnd({"branch", "rated_curve", "curve_point"})},
        {"charging", judgeChargingOfBook, wiringAnd({"rated_curve", "curve_point"})},
        {"low_voltage", judgeLowVoltageOfBook, wiringAnd({"branch"})},
        {"isolation", judgeIsolationOfBook,
         wiringAnd({"test_record", "rated_curve", "curve_point"})},
        {"bonding", judgeBondingOfBook, wiringAnd({"test_record"})},
        {"torque", judgeTorqueMeasuredOfBook, wiringAnd({"test_record"})},
    };
    return kJudges;
}

} // namespace ohmwright
