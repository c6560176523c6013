// SPDX-License-Identifier: GPL-3.0-or-later
// Restraint: do the bolts of a battery box, and the sheet under their heads, hold it at the
// accelerations of a crash?
//
//     F = n·g·m      shear a bolt F/N      tension of the far bolts F·h·x/(2·Σx²)
//
// The box stands on two rows of bolts. It turns about its outermost bolts, so that the others pull
// in proportion to their distance x; its own weight helps nothing here. Sources: equilibrium, any
// text on mechanics; resistances, bolts.h; accelerations beside each threshold.
#pragma once

#include "core/checks/bolts.h"
#include "core/checks/given.h"

namespace ohmwright {

// Categories of UN vehicle regulations.
enum class VehicleClass { M1N1, M2N2, M3N3 };
template <>
struct EnumWords<VehicleClass>
{
    static constexpr std::array words{"M1 or N1", "M2 or N2", "M3 or N3"};
};

using Accelerations = Threshold<double>; // as multiples of standard gravity

struct RestraintInputs
{
    QString box;                   // key
    Given<Mass> mass;              // with everything in and on it; > 0
    Given<Length> height;          // of its centre of gravity over the bolted plane; 0 or more
    Given<double> bolts;           // even, 4 or more: two rows along the vehicle
    Given<Length> lengthwise;      // from the first to the last bolt of a row; > 0
    Given<Length> crosswise;       // from row to row; > 0
    Given<BoltSize> size;          //
    Given<BoltClass> grade;        //
    Given<Length> sheet;           // thickness of the metal the bolts pull on; > 0
    Given<Pressure> sheetStrength; // its tensile strength; > 0
    Given<Length> spreader;        // diameter of head, washer or plate on it; > 0

    // What must be held.
    Accelerations forward = ofClass(VehicleClass::M1N1, true);
    Accelerations sideways = ofClass(VehicleClass::M1N1, false);
    Accelerations upward{QStringLiteral("restraint.upward"),
                         10,
                         QStringLiteral("Australian code of practice for electric drives, NCOP14; "
                                        "UN R100 names none"),
                         Tighter::Higher,
                         std::nullopt,
                         {}};

    // Along (forward and rearward) or across, by category.
    static Accelerations ofClass(VehicleClass vehicle, bool along);
};

// The most a bolt of a row pulls when the box turns about the row's outermost one, for a moment
// that `rows` rows share; `count` bolts evenly over `length`.
Force greatestPull(Torque moment, double rows, int count, Length length);

Check judgeRestraint(const RestraintInputs &inputs);

} // namespace ohmwright
