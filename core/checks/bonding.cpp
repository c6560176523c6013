// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/bonding.h"

#include "core/checks/undercut.h"
#include "core/checks/usable.h"

#include <QCoreApplication>

namespace ohmwright {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("Bonding", text);
}

} // namespace

Check judgeBonding(const BondingInputs &inputs)
{
    Worksheet sheet(QStringLiteral("bonding"), tr("Bonding to the chassis, measured"),
                    Protects::People);
    sheet.about(inputs.part);
    sheet.caution(QStringLiteral("high-voltage"));
    sheet.afterwards(tr("Then measure it again after the joint was ever loosened, and at the next "
                        "yearly look over."));
    const QString source = tr("UN R100, 5.1.2.2");

    if (inputs.isWelded) {
        sheet.stepText(tr("joint"), source, {}, tr("welded: met by construction"));
        sheet.within(tr("resistance of the welded joint"), ohms(0), inputs.most, u"Ω");
        sheet.result(tr("welded"));
        return sheet.finish(source);
    }
    takeRecord(sheet, inputs.record);
    const Resistance measured = sheet.take(inputs.measured, u"R", u"Ω", 0);
    const Current current = sheet.take(inputs.testCurrent, u"I", u"A", 1e-9);
    if (isUsable(inputs.measured, measured)) {
        sheet.within(tr("resistance, to be below"), toUndercut(measured, inputs.most.inForce()),
                     inputs.most, u"Ω");
        sheet.mendedBy(
            tr("Bare metal, a toothed washer, a shorter or thicker strap, the right torque."));
        sheet.result(tr("%1 at %2").arg(show(measured, u"mΩ"), show(current, u"A")));
    }
    // too small a current does not make the joint bad, it makes the test worthless
    if (inputs.testCurrent.value && current < inputs.leastCurrent.inForce())
        sheet.doubt(tr("The test current was %1; at least %2 is asked (%3).")
                        .arg(show(current, u"A"), show(inputs.leastCurrent.inForce(), u"A"),
                             inputs.leastCurrent.source));
    return sheet.finish(source);
}

} // namespace ohmwright
