// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/missing_fuse.h"

#include "core/checks/usable.h"
#include "core/checks/worksheet.h"

#include <QCoreApplication>

namespace ohmwright {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("MissingFuse", text);
}

} // namespace

Check judgeMissingFuse(const MissingFuseInputs &inputs)
{
    Worksheet sheet(QStringLiteral("fuse"), tr("Fuse"), Protects::Pack);
    sheet.about(inputs.branch);
    sheet.caution(QStringLiteral("battery"));
    sheet.doubt(tr("No fuse is told for %1.").arg(inputs.name));
    sheet.takeChoice(inputs.fuse, {});
    const Current load = sheet.take(inputs.continuous, u"I_b", u"A", 0);
    const Current capacity = sheet.take(inputs.cableCapacity, u"I_z", u"A", 1e-6);
    if (isUsable(inputs.continuous, load) && isUsable(inputs.cableCapacity, capacity))
        sheet.stepText(tr("rating the fuse may have"), QStringLiteral("I_b ≤ Iₙ ≤ I_z"),
                       tr("%1 to %2").arg(show(load, u"A"), show(capacity, u"A")),
                       capacity < load ? tr("none: the cable is too thin for the load")
                                       : QString());
    sheet.turnedBy(tr("Its fuse named with the branch; where it has none of its own, the fuse "
                      "further up that protects it: that one is then held to this cable too."));
    return sheet.finish(tr("IEC 60364-4-43, 433.1 and 434.2"));
}

} // namespace ohmwright
