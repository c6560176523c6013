// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/torque_measured.h"

#include "core/checks/usable.h"

#include <QCoreApplication>

#include <algorithm>

namespace ohmwright {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("TorqueMeasured", text);
}

} // namespace

double allowedScatter(Torque torque)
{
    return torque <= Torque::fromSi(10) ? 0.06 : 0.04;
}

Check judgeTorqueMeasured(const TorqueMeasuredInputs &inputs, Protects protects)
{
    Worksheet sheet(QStringLiteral("torque"), tr("Torque of %1, measured").arg(inputs.joint),
                    protects);
    sheet.about(inputs.part);
    sheet.caution(QStringLiteral("high-voltage"));
    sheet.afterwards(tr("Then mark every fastener, and look at the marks after the first drives."));
    const QString source = tr("Reading and scatter of the tool within the specified band; scatter: "
                              "ISO 6789");

    takeRecord(sheet, inputs.record);
    const Torque specified = sheet.take(inputs.specified, u"T", u"N·m", 1e-6);
    const double tolerance = sheet.take(inputs.tolerance, u"±", u"%", 0, 1);
    const double scatter = sheet.take(inputs.scatter, u"u", u"%", 0, 1);
    std::vector<Torque> readings;
    for (const Given<Torque> &reading : inputs.readings) {
        const Torque taken = sheet.take(reading, u"M", u"N·m", 0);
        if (isUsable(reading, taken))
            readings.push_back(taken);
    }
    if (inputs.readings.empty())
        sheet.doubt(tr("No fastener was measured."));
    if (specified.si() <= 0 || !inputs.tolerance.value || readings.empty())
        return sheet.finish(source);

    const Torque least = specified * (1 - tolerance);
    const Torque most = specified * (1 + tolerance);
    const auto [low, high] = std::minmax_element(readings.begin(), readings.end());
    sheet.stepText(tr("band"), QStringLiteral("T·(1 ± tolerance)"),
                   QString(show(specified, u"N·m") + QStringLiteral(" ± ") + show(tolerance, u"%")),
                   tr("%1 to %2").arg(show(least, u"N·m"), show(most, u"N·m")));
    sheet.stepText(
        tr("readings with the tool's scatter"), QStringLiteral("M·(1 ± u)"),
        tr("%1 to %2, ± %3").arg(show(*low, u"N·m"), show(*high, u"N·m"), show(scatter, u"%")),
        tr("%1 to %2")
            .arg(show(*low * (1 - scatter), u"N·m"), show(*high * (1 + scatter), u"N·m")));
    const QString from = tr("specified: %1").arg(spokenOf(inputs.specified.origin.evidence));
    const QString either = show(scatter, u"%");
    const QString again =
        tr("A finer tool, or tightening again from loose with new fasteners where "
           "the manual asks for them.");
    sheet.restsOn(inputs.specified, inputs.tolerance, inputs.scatter);
    sheet.readAtLeast(tr("lowest reading, ± %1").arg(either), *low, scatter, least, u"N·m", from);
    sheet.mendedBy(again);
    sheet.restsOn(inputs.specified, inputs.tolerance, inputs.scatter);
    sheet.readAtMost(tr("highest reading, ± %1").arg(either), *high, scatter, most, u"N·m", from);
    sheet.mendedBy(again);
    if (inputs.scatter.value && scatter >= tolerance)
        sheet.doubt(tr("The tool is no finer than the band: whatever it reads, the torque may lie "
                       "outside."));
    sheet.result(tr("%1 to %2 on %3 fasteners")
                     .arg(show(*low, u"N·m"), show(*high, u"N·m"))
                     .arg(readings.size()));
    return sheet.finish(source);
}

} // namespace ohmwright
