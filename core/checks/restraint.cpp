// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/restraint.h"

#include "core/checks/taken.h"

#include <QCoreApplication>

#include <algorithm>

namespace ohmwright {

namespace {

constexpr Acceleration kGravity = Acceleration::fromSi(9.80665);
constexpr double kMostBolts = 200;

QString tr(const char *text)
{
    return QCoreApplication::translate("Restraint", text);
}

struct Joint
{
    double bolts = 0;
    int inRow = 0;
    Length lengthwise, crosswise, height;
    Mass mass;
};

struct Load
{
    QString direction;
    Force force, shear, pull; // whole, and of the hardest loaded bolt
};

std::optional<Joint> takeJoint(Worksheet &sheet, const RestraintInputs &in)
{
    const auto mass = taken(sheet, in.mass, u"m", u"kg", kAboveNothing);
    const auto height = taken(sheet, in.height, u"h", u"mm", 0);
    const auto bolts = taken(sheet, in.bolts, u"N", u"", 4, kMostBolts);
    const auto along = taken(sheet, in.lengthwise, u"l", u"mm", kAboveNothing);
    const auto across = taken(sheet, in.crosswise, u"b", u"mm", kAboveNothing);
    if (bolts && (*bolts / 2 != std::floor(*bolts / 2))) {
        sheet.refuse(tr("Two rows have an even number of bolts."));
        return std::nullopt;
    }
    if (!mass || !height || !bolts || !along || !across)
        return std::nullopt;
    return Joint{*bolts, static_cast<int>(*bolts / 2), *along, *across, *height, *mass};
}

Load loadOf(Worksheet &sheet, const Joint &joint, const QString &direction, double gravities,
            Force pull)
{
    const Force force = joint.mass * kGravity * gravities;
    const Load load{direction, force, force / joint.bolts, pull};
    sheet.step(tr("force %1").arg(direction), QStringLiteral("F = n·g·m"),
               QString(show(gravities, u"") + QStringLiteral(" · 9.807 m/s² · ") +
                       show(joint.mass, u"kg")),
               force, u"kN");
    return load;
}

// Both together, as a share of what the bolt carries.
void judgeBolt(Worksheet &sheet, const RestraintInputs &in, const Load &load, bool sheared,
               const Threshold<double> &threshold)
{
    const Force tension = tensionResistanceOf(*in.size.value, *in.grade.value);
    const Force shear = shearResistanceOf(*in.size.value, *in.grade.value);
    const double used = load.pull / tension;
    const double both = sheared ? load.shear / shear + used / 1.4 : used;
    const double most = std::max(both, used);
    sheet.step(tr("share of the hardest loaded bolt, %1").arg(load.direction),
               sheared ? QStringLiteral("F_v/F_v,R + F_t/(1.4·F_t,R), F_t/F_t,R")
                       : QStringLiteral("F_t/F_t,R"),
               tr("shear %1 of %2, tension %3 of %4")
                   .arg(show(sheared ? load.shear : Force(), u"kN"), show(shear, u"kN"),
                        show(load.pull, u"kN"), show(tension, u"kN")),
               most, u"%");
    // held to the acceleration: the one at which the bolt is used up, for all goes with it
    if (most > 0) {
        sheet.restsOn(in.mass, in.bolts, in.size, in.grade, in.height, in.lengthwise, in.crosswise);
        sheet.within(tr("held by the bolts, %1 (times gravity)").arg(load.direction),
                     threshold.inForce() / most, threshold, u"");
        sheet.mendedBy(tr("More or larger bolts, wider apart, or a lower box."));
    }
}

void judgeSheet(Worksheet &sheet, const RestraintInputs &in, const Load &load, Force punching,
                const Threshold<double> &threshold)
{
    const double used = load.pull / punching;
    if (used > 0) {
        sheet.restsOn(in.mass, in.sheet, in.sheetStrength, in.spreader, in.bolts, in.height,
                      in.lengthwise, in.crosswise);
        sheet.within(
            tr("held by the sheet under the heads, %1 (times gravity)").arg(load.direction),
            threshold.inForce() / used, threshold, u"");
        sheet.mendedBy(tr("Larger spreader plates, or bolts through a member instead of a floor."));
    }
}

void judgeHole(Worksheet &sheet, const RestraintInputs &in, const Load &load, Force bearing,
               const Threshold<double> &threshold)
{
    const double used = load.shear / bearing;
    if (used > 0) {
        sheet.restsOn(in.mass, in.sheet, in.sheetStrength, in.bolts, in.size);
        sheet.within(tr("held by the sheet at the holes, %1 (times gravity)").arg(load.direction),
                     threshold.inForce() / used, threshold, u"");
        sheet.mendedBy(
            tr("More bolts, a thicker sheet, or bolts through a member instead of a floor."));
    }
}

} // namespace

Accelerations RestraintInputs::ofClass(VehicleClass vehicle, bool along)
{
    Accelerations held;
    held.name = along ? QStringLiteral("restraint.forward") : QStringLiteral("restraint.sideways");
    held.tighter = Tighter::Higher;
    held.source =
        along && vehicle == VehicleClass::M1N1
            ? QStringLiteral("UN R100, mechanical shock; the Australian code of practice NCOP14 "
                             "has 20 as well")
            : QStringLiteral("UN R100, mechanical shock; codes of conversion may ask for more");
    switch (vehicle) {
    case VehicleClass::M1N1:
        held.published = along ? 20 : 8;
        break;
    case VehicleClass::M2N2:
        held.published = along ? 10 : 5;
        break;
    case VehicleClass::M3N3:
        held.published = along ? 6.6 : 5;
        break;
    }
    return held;
}

Force greatestPull(Torque moment, double rows, int count, Length length)
{
    if (count < 2)
        return {};
    const Length apart = length / (count - 1);
    double squares = 0; // of the distances, in steps
    for (int i = 1; i < count; ++i)
        squares += static_cast<double>(i) * i;
    return moment / (apart * apart) * (apart * (count - 1)) / (rows * squares);
}

Check judgeRestraint(const RestraintInputs &in)
{
    Worksheet sheet(QStringLiteral("restraint"), tr("Restraint of the battery box"),
                    Protects::People);
    sheet.about(in.box);
    sheet.caution(QStringLiteral("restraint"));
    sheet.afterwards(tr("Then show the drawing to whoever approves the vehicle. Not computed here: "
                        "the box itself, its brackets, the body beyond the sheet under the heads, "
                        "welds, and bolts loosened by movement."));
    const QString source = tr("Equilibrium; EN 1993-1-8; ISO 898-1");
    const std::optional<Joint> joint = takeJoint(sheet, in);
    sheet.takeChoice(in.size.origin, in.size.value ? wordOf(*in.size.value) : QString());
    sheet.takeChoice(in.grade.origin, in.grade.value ? wordOf(*in.grade.value) : QString());
    const auto thickness = taken(sheet, in.sheet, u"t", u"mm", kAboveNothing);
    const auto strength = taken(sheet, in.sheetStrength, u"f_u", u"MPa", kAboveNothing);
    const auto spreader = taken(sheet, in.spreader, u"d_m", u"mm", kAboveNothing);
    if (!joint)
        return sheet.finish(source);

    // gravity's share of the turning is left out: a crash may come upside down
    const Torque along = joint->mass * kGravity * in.forward.inForce() * joint->height;
    const Torque across = joint->mass * kGravity * in.sideways.inForce() * joint->height;
    const Load forward = loadOf(sheet, *joint, tr("forward or rearward"), in.forward.inForce(),
                                greatestPull(along, 2, joint->inRow, joint->lengthwise));
    const Load sideways = loadOf(sheet, *joint, tr("sideways"), in.sideways.inForce(),
                                 greatestPull(across, joint->inRow, 2, joint->crosswise));
    const Force lift = joint->mass * kGravity * in.upward.inForce();
    const Load upward =
        loadOf(sheet, *joint, tr("upward"), in.upward.inForce(), lift / joint->bolts);
    sheet.step(tr("tension of the far bolts, forward or rearward"), QStringLiteral("F·h·l/(2·Σx²)"),
               tr("%1 bolts in each of two rows").arg(joint->inRow), forward.pull, u"kN");
    sheet.step(tr("tension of the far bolts, sideways"), QStringLiteral("F·h/(b·N/2)"),
               tr("%1 bolts in the far row").arg(joint->inRow), sideways.pull, u"kN");
    if (in.size.value && in.grade.value) {
        judgeBolt(sheet, in, forward, true, in.forward);
        judgeBolt(sheet, in, sideways, true, in.sideways);
        judgeBolt(sheet, in, upward, false, in.upward);
    }
    if (thickness && strength && spreader) {
        const Force punching = punchingResistanceOf(*spreader, *thickness, *strength);
        sheet.step(tr("what the sheet holds under a head"), QStringLiteral("0.6·π·d_m·t·f_u/1.25"),
                   QString(show(*spreader, u"mm") + QStringLiteral(" · ") +
                           show(*thickness, u"mm") + QStringLiteral(" · ") +
                           show(*strength, u"MPa")),
                   punching, u"kN");
        judgeSheet(sheet, in, forward, punching, in.forward);
        judgeSheet(sheet, in, sideways, punching, in.sideways);
        judgeSheet(sheet, in, upward, punching, in.upward);
    }
    if (thickness && strength && in.size.value) {
        const Force bearing = bearingResistanceOf(*in.size.value, *thickness, *strength);
        sheet.step(tr("what the sheet holds at a hole, three diameters from its edge"),
                   QStringLiteral("2.5·d·t·f_u/1.25"),
                   QString(wordOf(*in.size.value) + QStringLiteral(" · ") +
                           show(*thickness, u"mm") + QStringLiteral(" · ") +
                           show(*strength, u"MPa")),
                   bearing, u"kN");
        judgeHole(sheet, in, forward, bearing, in.forward);
        judgeHole(sheet, in, sideways, bearing, in.sideways);
    }
    sheet.result(tr("%1 forward, %2 sideways, %3 upward on %4 bolts")
                     .arg(show(forward.force, u"kN"), show(sideways.force, u"kN"),
                          show(upward.force, u"kN"), show(joint->bolts, u"")));
    return sheet.finish(source);
}

} // namespace ohmwright
