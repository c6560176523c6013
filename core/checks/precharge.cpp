// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/precharge.h"

#include "core/checks/worksheet.h"

#include <QCoreApplication>

#include <cmath>

namespace ohmwright {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("Precharge", text);
}

} // namespace

Check judgePrecharge(const PrechargeInputs &inputs)
{
    Worksheet sheet(QStringLiteral("precharge"), tr("Precharge"), Protects::Electronics);
    sheet.about(inputs.circuit);
    sheet.caution(QStringLiteral("high-voltage"));
    sheet.afterwards(tr("Then measure the link's voltage before and after the main contactor "
                        "closes, at a lowered supply first."));
    const QString source = tr("First-order response of a resistor and a capacitor; any text on "
                              "circuits");

    const Voltage u = sheet.take(inputs.packVoltage, u"U", u"V", 0);
    const Capacitance c = sheet.take(inputs.linkCapacitance, u"C", u"µF", 0);
    const Resistance r = sheet.take(inputs.resistance, u"R", u"Ω", 0);
    const Energy pulse = sheet.take(inputs.pulseEnergy, u"Eₚ", u"J", 0);
    const Duration t = sheet.take(inputs.timeBeforeClosing, u"t", u"s", 0);
    if (!sheet.isIncomplete() && r.si() == 0)
        sheet.refuse(tr("A precharge resistor of zero ohms limits nothing."));
    if (sheet.isIncomplete())
        return sheet.finish(source);

    const Duration tau = r * c;
    sheet.step(tr("time constant"), QStringLiteral("τ = R·C"),
               QString(show(r, u"Ω") + QStringLiteral(" · ") + show(c, u"µF")), tau, u"ms");
    const double reached = 1 - std::exp(-(t / tau));
    sheet.step(tr("reached when the contactor closes"), QStringLiteral("x = 1 − e^(−t/τ)"),
               QString(QStringLiteral("t/τ = ") + show(t / tau, u"")), reached, u"%");
    const Current peak = u / r;
    sheet.step(tr("peak current"), QStringLiteral("I = U/R"),
               QString(show(u, u"V") + QStringLiteral(" / ") + show(r, u"Ω")), peak, u"A");
    const Energy heat = 0.5 * (c * u * u);
    sheet.step(tr("heat in the resistor"), QStringLiteral("E = ½·C·U²"),
               QString(QStringLiteral("½ · ") + show(c, u"µF") + QStringLiteral(" · (") +
                       show(u, u"V") + QStringLiteral(")²")),
               heat, u"J");
    const double nearly = inputs.reached.inForce();
    if (nearly < 1)
        sheet.step(tr("time the threshold takes"), QStringLiteral("tₓ = −τ·ln(1 − x)"),
                   QString(QStringLiteral("x = ") + show(nearly, u"%")), tau * -std::log1p(-nearly),
                   u"ms");

    sheet.within(tr("link voltage reached"), reached, inputs.reached, u"%");
    sheet.atMost(tr("heat of one pulse"), heat, pulse, u"J", inputs.pulseEnergy.origin.name);
    sheet.turnedBy(tr("A resistor for a larger pulse, a longer wait before the main contactor "
                      "closes, or a lower resistance if the pulse allows it."));
    sheet.result(tr("%1 of the pack's voltage after %2, %3 in the resistor")
                     .arg(show(reached, u"%"), show(t, u"s"), show(heat, u"J")));
    return sheet.finish(source);
}

} // namespace ohmwright
