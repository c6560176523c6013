// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/conductor.h"

#include "core/checks/usable.h"
#include "core/checks/worksheet.h"

#include <QCoreApplication>

#include <algorithm>

namespace ohmwright {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("Conductor", text);
}

// The cable is taken as hot as its continuous current makes it: a moment warms it little.
void judgePeakDrop(Worksheet &sheet, const ConductorInputs &inputs, Resistance warm,
                   Voltage voltage)
{
    if (!inputs.peak)
        return;
    const Current peak = sheet.take(*inputs.peak, u"Î", u"A", 0);
    if (!isUsable(*inputs.peak, peak))
        return;
    sheet.step(tr("voltage drop at its peak"), QStringLiteral("ΔÛ = Î·R"),
               QString(show(peak, u"A") + QStringLiteral(" · ") + show(warm, u"mΩ")), peak * warm,
               u"V");
    sheet.restsOn(*inputs.peak, inputs.length, inputs.conditions.area, inputs.voltage,
                  inputs.conditions.insulation, inputs.conditions.material, inputs.strands);
    sheet.within(tr("voltage drop at its peak"), peak * warm / voltage, inputs.peakDrop, u"%");
    sheet.mendedBy(tr("A larger size, or a shorter run."));
}

void judgeDrop(Worksheet &sheet, const ConductorInputs &inputs, ConductorMaterial material,
               Temperature hot, Current current)
{
    const auto strands = takeChosen(sheet, inputs.strands);
    const Length length = sheet.take(inputs.length, u"l", u"m", 0);
    const Voltage voltage = sheet.take(inputs.voltage, u"U", u"V", 1e-3);
    if (sheet.isIncomplete())
        return;
    const Area area = *inputs.conditions.area.value;
    const auto cold = conductorResistance(material, *strands, area, length);
    if (!cold) {
        sheet.doubt(tr("IEC 60228 has no resistance for %1, %2, %3.")
                        .arg(show(area, u"mm²"), wordOf(material), wordOf(*strands)));
        return;
    }
    const Resistance warm = atTemperature(cold->at20, material, hot);
    const Voltage drop = current * warm;
    sheet.step(tr("resistance at 20 °C"), QStringLiteral("IEC 60228"),
               cold->fromTable ? show(length, u"m")
                               : tr("%1, from the neighbouring sizes").arg(show(length, u"m")),
               cold->at20, u"mΩ");
    sheet.step(tr("resistance hot"), QStringLiteral("R = R₂₀·(1 + α·(θ − 20 °C))"),
               tr("at %1").arg(show(hot, u"°C")), warm, u"mΩ");
    sheet.step(tr("voltage drop"), QStringLiteral("ΔU = I·R"),
               QString(show(current, u"A") + QStringLiteral(" · ") + show(warm, u"mΩ")), drop,
               u"V");
    sheet.step(tr("heat in the conductor"), QStringLiteral("P = I²·R"), {},
               current * current * warm, u"W");
    sheet.restsOn(inputs.continuous, inputs.length, inputs.conditions.area, inputs.voltage,
                  inputs.conditions.insulation, inputs.conditions.material, inputs.strands);
    sheet.within(tr("voltage drop"), drop / voltage, inputs.drop, u"%");
    sheet.mendedBy(tr("A larger size, or a shorter run."));
    judgePeakDrop(sheet, inputs, warm, voltage);
    sheet.result(
        tr("%1 dropped and %2 of heat at %3")
            .arg(show(drop, u"V"), show(current * current * warm, u"W"), show(current, u"A")));
}

void judgeShortCircuit(Worksheet &sheet, const ConductorInputs &inputs, ConductorMaterial material,
                       Temperature start)
{
    const ShortCircuit &fault = *inputs.shortCircuit;
    const Current current = sheet.take(fault.current, u"I_k", u"A", 1e-6);
    const Duration time = sheet.take(fault.clearing, u"t", u"s", 1e-9);
    const Temperature end = sheet.take(fault.insulation, u"θ_f", u"°C", 273.15, 1273.15);
    if (!sheet.isIncomplete() && end <= start)
        sheet.refuse(tr("The insulation cannot stand less in a short circuit than always."));
    if (sheet.isIncomplete())
        return;
    if (kAdiabaticUpTo < time) {
        sheet.doubt(tr("The formula for short circuits ends at %1; the fuse takes %2.")
                        .arg(show(kAdiabaticUpTo, u"s"), show(time, u"s")));
        return;
    }
    const double k = adiabaticK(material, start, end);
    const Area least = leastArea(current, time, k);
    sheet.step(tr("k of the conductor"),
               QStringLiteral("k = √(Qc·(β + 20 °C)/ρ₂₀ · ln(1 + (θf − θi)/(β + θi)))"),
               tr("%1 to %2").arg(show(start, u"°C"), show(end, u"°C")), k, u"");
    sheet.step(tr("least area in a short circuit"), QStringLiteral("S = √(I²t)/k"),
               QString(show(current, u"kA") + QStringLiteral(", ") + show(time, u"s")), least,
               u"mm²");
    sheet.restsOn(fault.current, inputs.conditions.area, fault.clearing, fault.insulation,
                  inputs.conditions.insulation, inputs.conditions.material);
    sheet.atLeast(tr("area in a short circuit"), *inputs.conditions.area.value, least, u"mm²",
                  tr("IEC 60364-4-43, 434.5.2"));
    sheet.mendedBy(tr("A larger size, or a fuse that opens sooner."));
}

} // namespace

Check judgeConductor(const ConductorInputs &inputs)
{
    Worksheet sheet(QStringLiteral("conductor"), tr("Conductor"), Protects::Electronics);
    sheet.about(inputs.branch);
    sheet.caution(QStringLiteral("battery"));
    sheet.afterwards(tr("Then measure the drop over cable and joints at a known current."));
    const QString source = tr("Resistance: IEC 60228; capacity: %1; short circuit: IEC 60364-4-43 "
                              "and 5-54, annex A")
                               .arg(inputs.table.name);

    const Current current = sheet.take(inputs.continuous, u"I", u"A", 0);
    const std::optional<Current> capacity = takeAmpacity(sheet, inputs.conditions, inputs.table);
    if (capacity) {
        sheet.atMost(tr("continuous current"), current, *capacity, u"A", inputs.table.name);
        sheet.mendedBy(tr("A larger size, a cooler or freer place for it, or fewer beside it."));
    }
    if (!sheet.isIncomplete()) {
        const ConductorMaterial material = *inputs.conditions.material.value;
        const Temperature insulation = *inputs.conditions.insulation.value;
        // where the table applies, its currents warm the conductor to the table's temperature only
        const Temperature hot =
            capacity ? std::min(insulation, inputs.table.conductor) : insulation;
        judgeDrop(sheet, inputs, material, hot, current);
        if (inputs.shortCircuit)
            judgeShortCircuit(sheet, inputs, material, insulation);
    }
    return sheet.finish(source);
}

} // namespace ohmwright
