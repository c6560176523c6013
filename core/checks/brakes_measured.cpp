// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/brakes_measured.h"

#include "core/checks/usable.h"

#include <QCoreApplication>

#include <algorithm>

namespace ohmwright {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("BrakesMeasured", text);
}

constexpr auto kGravity = Quantity<0, 1, -2, 0, 0>::fromSi(9.80665);

// The sum of the forces; none when one is missing.
std::optional<Force> judgeAxles(Worksheet &sheet, const BrakesMeasuredInputs &inputs)
{
    std::optional<Force> sum = Force();
    for (std::size_t i = 0; i < inputs.axles.size(); ++i) {
        const AxleBraking &axle = inputs.axles[i];
        const QString number = QString::number(i + 1); // counted from the front
        const Force left = sheet.take(axle.left, QString(QStringLiteral("F_l") + number), u"N", 0);
        const Force right =
            sheet.take(axle.right, QString(QStringLiteral("F_r") + number), u"N", 0);
        if (!isUsable(axle.left, left) || !isUsable(axle.right, right)) {
            sum.reset();
            continue;
        }
        if (sum)
            *sum += left + right;
        const Force greater = std::max(left, right);
        // an axle that does not brake at all is out of balance, not in it
        const double share = greater.si() > 0 ? 1 - std::min(left, right) / greater : 1;
        sheet.step(tr("imbalance, %1").arg(axle.name), QStringLiteral("1 − F_min/F_max"),
                   QString(show(left, u"N") + QStringLiteral(", ") + show(right, u"N")), share,
                   u"%");
        sheet.restsOn(axle.left, axle.right);
        sheet.within(tr("imbalance, %1").arg(axle.name), share, inputs.imbalance, u"%");
        sheet.mendedBy(tr("Both brakes of the axle overhauled, and its lines bled."));
    }
    return sum;
}

void judgeForces(Worksheet &sheet, const BrakesMeasuredInputs &inputs)
{
    const Mass mass = sheet.take(inputs.mass, u"m", u"kg", 1);
    const std::optional<Force> sum = judgeAxles(sheet, inputs);
    const Force weight = mass * kGravity;
    if (sum && mass.si() > 0 && !inputs.axles.empty()) {
        sheet.step(tr("braking efficiency"), QStringLiteral("z = ΣF/(m·g)"),
                   QString(show(*sum, u"N") + QStringLiteral(" / ") + show(weight, u"N")),
                   *sum / weight, u"%");
        sheet.within(tr("braking efficiency"), *sum / weight, inputs.efficiency, u"%");
        sheet.mendedBy(tr("Overhauled or larger brakes, bled lines, working boost, or less mass."));
        sheet.result(tr("braking efficiency %1").arg(show(*sum / weight, u"%")));
    }
    if (!inputs.parkingForce)
        return;
    const Force parking = sheet.take(*inputs.parkingForce, u"F_p", u"N", 0);
    if (mass.si() > 0 && isUsable(*inputs.parkingForce, parking)) {
        sheet.restsOn(*inputs.parkingForce, inputs.mass);
        sheet.within(tr("parking brake"), parking / weight, inputs.parking, u"%");
        sheet.mendedBy(tr("The parking brake adjusted, or overhauled."));
    }
}

} // namespace

Check judgeBrakesMeasured(const BrakesMeasuredInputs &inputs)
{
    Worksheet sheet(QStringLiteral("brakes_measured"), tr("Brakes, measured"), Protects::People);
    sheet.caution(QStringLiteral("road-test"));
    sheet.afterwards(tr("Then have it tested where the place's own roadworthiness test is done; "
                        "braking by the motor does not count."));
    const QString source = tr("Directive 2014/45/EU, annex I; UN R13-H");

    takeRecord(sheet, inputs.record);
    if (!inputs.axles.empty() || inputs.parkingForce)
        judgeForces(sheet, inputs);
    if (inputs.roadDeceleration) {
        const double share = sheet.take(*inputs.roadDeceleration, u"d/g", u"%", 0, 2);
        if (isUsable(*inputs.roadDeceleration, share)) {
            sheet.restsOn(inputs.roadDeceleration);
            sheet.within(tr("deceleration on the road, of g"), share, inputs.road, u"%");
            sheet.mendedBy(
                tr("Overhauled or larger brakes, bled lines, working boost, or less mass."));
            if (inputs.axles.empty())
                sheet.result(tr("%1 of g on the road").arg(show(share, u"%")));
        }
        if (inputs.pedalForce) {
            const Force pedal = sheet.take(*inputs.pedalForce, u"F", u"N", 0);
            sheet.restsOn(inputs.pedalForce);
            if (isUsable(*inputs.pedalForce, pedal)) {
                sheet.within(tr("pedal force"), pedal, inputs.pedal, u"N");
                sheet.mendedBy(tr("Working boost."));
            }
        }
    }
    if (inputs.axles.empty() && !inputs.roadDeceleration)
        sheet.doubt(tr("Braking was measured neither on a bench nor on the road."));
    return sheet.finish(source);
}

} // namespace ohmwright
