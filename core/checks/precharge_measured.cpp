// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/precharge_measured.h"

#include "core/checks/precharge.h"

#include <QCoreApplication>

#include <cmath>

namespace ohmwright {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("PrechargeMeasured", text);
}

} // namespace

Check judgePrechargeMeasured(const PrechargeMeasuredInputs &inputs)
{
    Worksheet sheet(QStringLiteral("precharge_measured"), tr("Precharge, measured"),
                    Protects::Electronics);
    sheet.about(inputs.circuit);
    sheet.caution(QStringLiteral("live-measurement"));
    sheet.afterwards(
        tr("Then measure it once more cold and once more after ten tries in a row: the "
           "resistor warms."));
    const QString source = tr("First-order response of a resistor and a capacitor: Nilsson and "
                              "Riedel, Electric Circuits");

    takeRecord(sheet, inputs.record);
    const Voltage pack = sheet.take(inputs.packVoltage, u"U", u"V", 1e-3);
    const Voltage link = sheet.take(inputs.linkVoltage, u"v", u"V", 0);
    const Duration time = sheet.take(inputs.timeToThere, u"t", u"s", 1e-9);
    const Resistance r = sheet.take(inputs.resistance, u"R", u"Ω", 1e-9);
    const Capacitance c = sheet.take(inputs.linkCapacitance, u"C", u"µF", 1e-15);
    const bool reading = pack.si() > 0 && inputs.linkVoltage.value;
    if (reading && pack < link)
        sheet.refuse(tr("The link cannot be above the pack that charges it."));
    if (reading && link <= pack) {
        sheet.step(tr("reached"), QStringLiteral("x = v/U"),
                   QString(show(link, u"V") + QStringLiteral(" / ") + show(pack, u"V")),
                   link / pack, u"%");
        sheet.within(tr("left to rise"), 1 - link / pack, leftToRise(inputs.reached), u"%");
        sheet.mendedBy(tr(
            "A longer wait before the main contactor closes, or no load on the link meanwhile."));
        sheet.result(tr("%1 reached after %2").arg(show(link / pack, u"%"), show(time, u"s")));
    }
    if (sheet.isIncomplete())
        return sheet.finish(source);
    if (!(link < pack)) {
        sheet.doubt(tr("At the pack's own voltage the time tells nothing about resistor and "
                       "capacitance; read it earlier."));
        return sheet.finish(source);
    }
    const Duration computed = r * c * -std::log1p(-(link / pack));
    sheet.step(tr("time computed"), QStringLiteral("t = −R·C·ln(1 − v/U)"),
               QString(show(r, u"Ω") + QStringLiteral(" · ") + show(c, u"µF")), computed, u"ms");
    if (computed.si() > 0) {
        sheet.within(tr("time against the computed"), std::abs(time / computed - 1),
                     inputs.deviation, u"%");
        sheet.mendedBy(tr("Finding what differs: another resistor, more capacitance, or a load on "
                          "the link."));
    }
    return sheet.finish(source);
}

} // namespace ohmwright
