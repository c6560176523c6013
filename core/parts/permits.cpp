// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/parts/permits.h"

#include "core/quantity/dates.h"

#include <QCoreApplication>

#include <cmath>

namespace ohmwright {

namespace {

constexpr double kTouchLimit = 60; // V DC, ISO 6469-3 voltage class A

QString tr(const char *text)
{
    return QCoreApplication::translate("Permits", text);
}

} // namespace

QStringList lackingOf(const WorkPermit &permit, QDate today)
{
    if (permit.closedOn)
        return {tr("closed on %1").arg(showDate(*permit.closedOn))};
    QStringList lacking;
    if (!permit.glovesValidUntil)
        lacking << tr("no test date of the gloves");
    else if (*permit.glovesValidUntil < today)
        lacking << tr("gloves out of test date since %1").arg(showDate(*permit.glovesValidUntil));
    if (!permit.lockedOff)
        lacking << tr("not locked off");
    if (!permit.waitMinutes)
        lacking << tr("no waiting time");
    if (!permit.absenceProvenOn || !permit.absenceReading)
        lacking << tr("absence of voltage not proved");
    else if (*permit.absenceProvenOn != today)
        lacking << tr("absence of voltage proved on another day, %1")
                       .arg(showDate(*permit.absenceProvenOn));
    else if (!(std::abs(permit.absenceReading->si()) < kTouchLimit))
        lacking << tr("%1 was still found").arg(printAmount(*permit.absenceReading));
    if (permit.instrument.trimmed().isEmpty())
        lacking << tr("no instrument named");
    if (permit.workedBy.trimmed().isEmpty())
        lacking << tr("nobody named who works");
    if (permit.secondPerson.trimmed().isEmpty())
        lacking << tr("no second person");
    return lacking;
}

} // namespace ohmwright
