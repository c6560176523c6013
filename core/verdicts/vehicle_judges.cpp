// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/verdicts/judges.h"
#include "core/verdicts/vehicle_checks_of_book.h"
#include "core/verdicts/vehicle_tools.h"

namespace ohmwright {

namespace {

// What every judge of parts reads: a figure may stand with the type, a part has its path.
#define OF_PARTS Part, PartType, Rating, CheckFigure, OwnThreshold
// What the vehicle as driven is worked out from.
#define OF_VEHICLE Vehicle, MassEntry, OF_PARTS
// What the pack's facts rest on.
#define OF_PACK Circuit, Branch, Connection, RatedCurve, CurvePoint, TestRecord

} // namespace

std::span<const Judge> vehicleJudges()
{
    static const std::vector<Judge> kJudges{
        {"drive", judgeDriveOfBook, tablesOf<OF_VEHICLE, OF_PACK>()},
        {"range", judgeRangeOfBook, tablesOf<OF_VEHICLE, OF_PACK>()},
        {"rotating_part", judgeRotatingPartsOfBook, tablesOf<OF_PARTS>()},
        {"bolted_flange", judgeBoltedFlangesOfBook, tablesOf<OF_PARTS>()},
        {"axle_loads", judgeAxleLoadsOfBook, tablesOf<OF_VEHICLE>()},
        {"brakes", judgeBrakesOfBook, tablesOf<OF_VEHICLE>()},
        {"brakes_measured", judgeBrakesMeasuredOfBook,
         tablesOf<TestRecord, Part, CheckFigure, OwnThreshold>()},
        {"restraint", judgeRestraintsOfBook, tablesOf<OF_PARTS>()},
        {"fit", judgeFitsOfBook, tablesOf<OF_PARTS>()},
        {"cooling", judgeCoolingOfBook, tablesOf<OF_PARTS>()},
    };
    return kJudges;
}

#undef OF_PARTS
#undef OF_VEHICLE
#undef OF_PACK

} // namespace ohmwright
