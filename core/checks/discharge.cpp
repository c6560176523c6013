// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/discharge.h"

#include "core/checks/undercut.h"
#include "core/checks/usable.h"
#include "core/checks/worksheet.h"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace ohmwright {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("Discharge", text);
}

struct Link
{
    Voltage start; // what the capacitor may be left at
    Voltage touch; // where it is let be
    Capacitance capacitance;
    std::optional<Resistance> bleed;
};

// Both ways round, so that a loosened voltage and a loosened time each stand beside the published.
void judgeTime(Worksheet &sheet, const QString &by, Duration time, Voltage left,
               const Threshold<Duration> &allowed, const Threshold<Voltage> &touch,
               const std::vector<const Origin *> &from)
{
    sheet.restsOn(from);
    sheet.within(tr("time %1").arg(by), time, allowed, u"s");
    sheet.mendedBy(tr("A lower bleed resistance with the rating for its loss, an active discharge, "
                      "or less capacitance."));
    sheet.restsOn(from);
    sheet.within(tr("voltage left %1 after %2").arg(by, show(allowed.inForce(), u"s")), left, touch,
                 u"V");
    sheet.mendedBy(tr("A lower bleed resistance with the rating for its loss, an active discharge, "
                      "or less capacitance."));
}

// What the time to discharge rests on.
std::vector<const Origin *> linkFrom(const DischargeInputs &inputs, bool active)
{
    std::vector<const Origin *> from{&inputs.capacitance.origin};
    if (active)
        from.insert(from.end(), {&inputs.active->resistance.origin, &inputs.active->delay.origin});
    if (inputs.bleed)
        from.push_back(&inputs.bleed->origin);
    from.push_back(&inputs.start.origin);
    return from;
}

const Threshold<Voltage> &touchOf(const DischargeInputs &inputs)
{
    return inputs.current == CurrentKind::Ac ? inputs.touchAc : inputs.touchDc;
}

Voltage voltageAfter(Voltage start, Resistance resistance, Capacitance capacitance, Duration time)
{
    return start * std::exp(-(time / (resistance * capacitance)));
}

Duration judgePassive(Worksheet &sheet, const DischargeInputs &inputs, const Link &link)
{
    const Duration time = dischargeTime(*link.bleed, link.capacitance, link.start, link.touch);
    sheet.step(tr("time by the bleed alone"), QStringLiteral("t = R·C·ln(U₀/Uₗ)"),
               QString(show(*link.bleed, u"kΩ") + QStringLiteral(" · ") +
                       show(link.capacitance, u"µF") + QStringLiteral(" · ln(") +
                       show(link.start, u"V") + QStringLiteral(" / ") + show(link.touch, u"V") +
                       QLatin1Char(')')),
               time, u"s");
    const Power loss = link.start * link.start / *link.bleed;
    sheet.step(tr("loss in the bleed while live"), QStringLiteral("P = U²/R"),
               QString(QLatin1Char('(') + show(link.start, u"V") + QStringLiteral(")² / ") +
                       show(*link.bleed, u"kΩ")),
               loss, u"W");
    judgeTime(sheet, tr("by the bleed alone"), time,
              voltageAfter(link.start, *link.bleed, link.capacitance, inputs.passiveTime.inForce()),
              inputs.passiveTime, touchOf(inputs), linkFrom(inputs, false));
    const Power rating = sheet.take(inputs.bleedRating, u"Pₘ", u"W", 0);
    if (isUsable(inputs.bleedRating, rating)) {
        sheet.restsOn(inputs.start, inputs.bleed, inputs.bleedRating);
        sheet.atMost(tr("loss in the bleed"), loss, rating, u"W", inputs.bleedRating.origin.name);
        sheet.mendedBy(
            tr("A bleed rated for more loss, or a higher resistance if the time allows it."));
    }
    return time;
}

// What is switched across, beside the bleed; none when something of it is not known.
std::optional<Duration> judgeActive(Worksheet &sheet, const DischargeInputs &inputs,
                                    const Link &link)
{
    const Resistance resistance = sheet.take(inputs.active->resistance, u"Rₐ", u"Ω", 1e-6);
    const Duration delay = sheet.take(inputs.active->delay, u"tₐ", u"s", 0);
    const Energy pulse = sheet.take(inputs.active->pulseEnergy, u"Eₚ", u"J", 0);
    if (sheet.isIncomplete())
        return std::nullopt;

    Voltage left = link.start;
    Resistance both = resistance;
    if (link.bleed) {
        left = voltageAfter(link.start, *link.bleed, link.capacitance, delay);
        both = 1.0 / (1.0 / resistance + 1.0 / *link.bleed);
    }
    const Duration time = left <= link.touch && link.bleed
                              ? dischargeTime(*link.bleed, link.capacitance, link.start, link.touch)
                              : delay + dischargeTime(both, link.capacitance, left, link.touch);
    sheet.step(tr("time by active discharge"), QStringLiteral("t = tₐ + R·C·ln(U/Uₗ)"),
               QString(show(delay, u"s") + QStringLiteral(" + ") + show(both, u"Ω") +
                       QStringLiteral(" · ") + show(link.capacitance, u"µF") +
                       QStringLiteral(" · ln(") + show(left, u"V") + QStringLiteral(" / ") +
                       show(link.touch, u"V") + QLatin1Char(')')),
               time, u"s");
    const Energy heat = storedEnergy(link.capacitance, left);
    sheet.step(tr("heat in the active discharge"), QStringLiteral("E = ½·C·U²"),
               tr("all of it, at most"), heat, u"J");
    const Duration allowed = inputs.activeTime.inForce();
    Voltage end = voltageAfter(left, both, link.capacitance, allowed - delay);
    if (allowed < delay)
        end = link.bleed ? voltageAfter(link.start, *link.bleed, link.capacitance, allowed)
                         : link.start;
    judgeTime(sheet, tr("by active discharge"), time, end, inputs.activeTime, touchOf(inputs),
              linkFrom(inputs, true));
    sheet.restsOn(inputs.active->pulseEnergy, inputs.start, inputs.capacitance);
    sheet.atMost(tr("heat in the active discharge"), heat, pulse, u"J",
                 inputs.active->pulseEnergy.origin.name);
    sheet.mendedBy(tr("A resistor for a larger pulse, or less capacitance."));
    return time;
}

void judgeYCapacitors(Worksheet &sheet, const DischargeInputs &inputs, const Link &link)
{
    const Capacitance y = sheet.take(*inputs.yCapacitance, u"Cᵧ", u"µF", 0);
    if (!isUsable(*inputs.yCapacitance, y))
        return;
    const Energy energy = storedEnergy(y, link.start);
    sheet.step(tr("energy in the Y-capacitors"), QStringLiteral("E = ½·Cᵧ·U²"),
               QString(QStringLiteral("½ · ") + show(y, u"µF") + QStringLiteral(" · (") +
                       show(link.start, u"V") + QStringLiteral(")²")),
               energy, u"J");
    sheet.restsOn(inputs.yCapacitance, inputs.start);
    sheet.within(tr("energy in the Y-capacitors, to be below"),
                 toUndercut(energy, inputs.yEnergy.inForce()), inputs.yEnergy, u"J");
    sheet.mendedBy(tr("Less capacitance to the chassis."));
}

} // namespace

Energy storedEnergy(Capacitance capacitance, Voltage voltage)
{
    return 0.5 * (capacitance * voltage * voltage);
}

Duration dischargeTime(Resistance resistance, Capacitance capacitance, Voltage from, Voltage to)
{
    return from <= to ? seconds(0) : resistance * capacitance * std::log(from / to);
}

Check judgeDischarge(const DischargeInputs &inputs)
{
    Worksheet sheet(QStringLiteral("discharge"), tr("Discharge after switching off"),
                    Protects::People);
    sheet.about(inputs.circuit);
    sheet.caution(QStringLiteral("high-voltage"));
    sheet.afterwards(tr("Then measure that the voltage is gone, every time before touching, with a "
                        "meter proved on a known voltage before and after. The pack's side of the "
                        "contactors stays live whatever is computed here."));
    const QString source =
        tr("Discharge of a capacitor through a resistor: Nilsson and Riedel, Electric Circuits; "
           "touch voltages: ISO 6469-3");

    Link link;
    const bool ac = inputs.current == CurrentKind::Ac;
    link.start = sheet.take(inputs.start, u"U₀", u"V", 0) * (ac ? std::numbers::sqrt2 : 1.0);
    link.touch = touchOf(inputs).inForce();
    link.capacitance = sheet.take(inputs.capacitance, u"C", u"µF", 1e-15);
    for (const QString &name : inputs.notCounted)
        sheet.doubt(tr("%1 hangs on it too, and its capacitance is not recorded.").arg(name));
    if (inputs.bleed)
        link.bleed = sheet.take(*inputs.bleed, u"R", u"kΩ", 1e-6);
    if (!(link.touch.si() > 0))
        sheet.refuse(tr("A touch voltage of zero is never reached."));
    if (sheet.isIncomplete())
        return sheet.finish(source);
    // too slow from what is known is too slow from more
    for (const Origin &missing : inputs.missing)
        sheet.takeChoice(missing, {});

    if (ac)
        sheet.step(tr("left at its peak"), QStringLiteral("√2·U"), {}, link.start, u"V");
    sheet.step(tr("stored energy"), QStringLiteral("E = ½·C·U²"),
               QString(QStringLiteral("½ · ") + show(link.capacitance, u"µF") +
                       QStringLiteral(" · (") + show(link.start, u"V") + QStringLiteral(")²")),
               storedEnergy(link.capacitance, link.start), u"J");

    std::optional<Duration> quickest;
    if (link.bleed)
        quickest = judgePassive(sheet, inputs, link);
    else
        sheet.stepText(tr("time by the bleed alone"), {}, tr("there is no bleed"),
                       tr("it stays charged"));
    if (inputs.active) {
        if (const std::optional<Duration> active = judgeActive(sheet, inputs, link))
            quickest = quickest ? std::min(*quickest, *active) : *active;
    }
    if (!link.bleed && !inputs.active) {
        sheet.within(tr("voltage left"), link.start, touchOf(inputs), u"V");
        sheet.mendedBy(tr("A bleed resistor across the link, or an active discharge."));
    }
    if (inputs.opensWithoutTools && quickest) {
        sheet.within(tr("time until an opened connector may be touched"), *quickest,
                     inputs.openedTime, u"s");
        sheet.mendedBy(tr("An active discharge, or a connector that needs a tool."));
    }
    if (inputs.yCapacitance)
        judgeYCapacitors(sheet, inputs, link);

    if (quickest)
        sheet.result(tr("below %1 after %2; %3 stored")
                         .arg(show(link.touch, u"V"), show(*quickest, u"s"),
                              show(storedEnergy(link.capacitance, link.start), u"J")));
    else
        sheet.result(tr("nothing is known to discharge it; %1 stored")
                         .arg(show(storedEnergy(link.capacitance, link.start), u"J")));
    return sheet.finish(source);
}

} // namespace ohmwright
