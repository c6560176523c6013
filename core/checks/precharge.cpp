// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/precharge.h"

#include "core/checks/taken.h"
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

Threshold<double> leftToRise(const Threshold<double> &reached)
{
    // 5 %, not 5 % and the noise of binary arithmetic
    const auto left = [](double share) {
        return std::round((1 - share) * 1e9) / 1e9;
    };
    Threshold<double> made = reached;
    made.published = left(reached.published);
    made.tighter = Tighter::Lower;
    if (reached.own)
        made.own = left(*reached.own);
    return made;
}

Check judgePrecharge(const PrechargeInputs &inputs)
{
    Worksheet sheet(QStringLiteral("precharge"), tr("Precharge"), Protects::Electronics);
    sheet.about(inputs.circuit);
    sheet.caution(QStringLiteral("high-voltage"));
    sheet.afterwards(tr("Then measure the link's voltage before and after the main contactor "
                        "closes, at a lowered supply first."));
    const QString source = tr("First-order response of a resistor and a capacitor: Nilsson and "
                              "Riedel, Electric Circuits");

    const auto u = taken(sheet, inputs.packVoltage, u"U", u"V", 0);
    const auto c = taken(sheet, inputs.linkCapacitance, u"C", u"µF", 0);
    const auto r = taken(sheet, inputs.resistance, u"R", u"Ω", kAboveNothing);
    const auto pulse = taken(sheet, inputs.pulseEnergy, u"Eₚ", u"J", 0);
    const auto t = taken(sheet, inputs.timeBeforeClosing, u"t", u"s", 0);
    for (const QString &name : inputs.notCounted)
        sheet.doubt(tr("%1 hangs on the link, and its capacitance is not recorded.").arg(name));
    // each line as soon as its figures are known: what is missing then has a size to look for
    QStringList results;
    if (r && c && t) {
        const Duration tau = *r * *c;
        sheet.step(tr("time constant"), QStringLiteral("τ = R·C"),
                   QString(show(*r, u"Ω") + QStringLiteral(" · ") + show(*c, u"µF")), tau, u"ms");
        const double reached = tau.si() > 0 ? 1 - std::exp(-(*t / tau)) : 1;
        sheet.step(tr("reached when the contactor closes"), QStringLiteral("x = 1 − e^(−t/τ)"),
                   QString(QStringLiteral("t = ") + show(*t, u"ms")), reached, u"%");
        if (const double nearly = inputs.reached.inForce(); nearly < 1)
            sheet.step(tr("time the threshold takes"), QStringLiteral("tₓ = −τ·ln(1 − x)"),
                       QString(QStringLiteral("x = ") + show(nearly, u"%")),
                       tau * -std::log1p(-nearly), u"ms");
        sheet.restsOn(inputs.linkCapacitance, inputs.resistance, inputs.timeBeforeClosing);
        sheet.within(tr("left to rise when the contactor closes"), 1 - reached,
                     leftToRise(inputs.reached), u"%");
        sheet.mendedBy(tr("A longer wait before the main contactor closes, or a lower resistance "
                          "if its pulse allows it."));
        results << tr("%1 of the pack's voltage after %2").arg(show(reached, u"%"), show(*t, u"s"));
    }
    if (u && r)
        sheet.step(tr("peak current"), QStringLiteral("I = U/R"),
                   QString(show(*u, u"V") + QStringLiteral(" / ") + show(*r, u"Ω")), *u / *r, u"A");
    if (u && c) {
        const Energy heat = 0.5 * (*c * *u * *u);
        sheet.step(tr("heat in the resistor"), QStringLiteral("E = ½·C·U²"),
                   QString(QStringLiteral("½ · ") + show(*c, u"µF") + QStringLiteral(" · (") +
                           show(*u, u"V") + QStringLiteral(")²")),
                   heat, u"J");
        if (pulse) {
            sheet.restsOn(inputs.packVoltage, inputs.linkCapacitance, inputs.pulseEnergy);
            sheet.atMost(tr("heat of one pulse"), heat, *pulse, u"J",
                         inputs.pulseEnergy.origin.name);
            sheet.mendedBy(tr("A resistor for a larger pulse, or less capacitance on the link."));
        }
        results << tr("%1 in the resistor").arg(show(heat, u"J"));
    }
    sheet.result(results.join(tr(", ")));
    return sheet.finish(source);
}

} // namespace ohmwright
