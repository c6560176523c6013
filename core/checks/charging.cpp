// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/charging.h"

#include "core/checks/control_pilot.h"
#include "core/checks/taken.h"

#include <QCoreApplication>

#include <algorithm>

namespace ohmwright {

namespace {

const QString kTimes = QStringLiteral(" · ");

QString tr(const char *text)
{
    return QCoreApplication::translate("Charging", text);
}

// What the charger really puts out, and what it draws for it.
struct Drawn
{
    Power output;
    Current mains;
    std::vector<const Origin *> from; // of the current from the mains
};

std::optional<Drawn> drawnFromMains(Worksheet &sheet, const ChargingInputs &in)
{
    const auto u = taken(sheet, in.mainsVoltage, u"U", u"V", kAboveNothing);
    const auto n = taken(sheet, in.phases, u"n", u"", 1, 3);
    const auto p = taken(sheet, in.outputPower, u"P", u"kW", kAboveNothing);
    const auto efficiency = taken(sheet, in.efficiency, u"η", u"%", kAboveNothing, 1);
    const auto factor = taken(sheet, in.powerFactor, u"cosφ", u"", kAboveNothing, 1);
    std::optional<Current> held;
    if (in.heldTo)
        held = taken(sheet, *in.heldTo, u"Iₛ", u"A", kAboveNothing);
    if (n && *n != 1 && *n != 3) {
        sheet.refuse(tr("Mains are loaded on one line or on three."));
        return std::nullopt;
    }
    if (!u || !n || !p || !efficiency || !factor)
        return std::nullopt;
    const std::vector<const Origin *> ofFull{&in.outputPower.origin, &in.mainsVoltage.origin,
                                             &in.efficiency.origin, &in.powerFactor.origin,
                                             &in.phases.origin};
    const Current full = *p / *u / (*efficiency * *factor * *n);
    sheet.step(tr("mains current at full power"), QStringLiteral("I = P/(η·cosφ·n·U)"),
               QString(show(*p, u"kW") + QStringLiteral(" / (") + show(*efficiency, u"%") + kTimes +
                       show(*factor, u"") + kTimes + show(*n, u"") + kTimes + show(*u, u"V") +
                       QStringLiteral(")")),
               full, u"A");
    if (!in.heldTo)
        return Drawn{*p, full, ofFull};
    if (!held)
        return std::nullopt; // what it is held to applies and is not known
    const Current mains = std::min(full, *held);
    const Power output = *p * (mains / full);
    sheet.step(tr("mains current as it is held"), QStringLiteral("min(I, Iₛ)"),
               QString(show(full, u"A") + QStringLiteral(", ") + show(*held, u"A")), mains, u"A");
    sheet.step(tr("power that leaves"), QStringLiteral("P·min(I, Iₛ)/I"), show(*p, u"kW"), output,
               u"kW");
    // held, nothing else tells how much is drawn
    return Drawn{output, mains,
                 *held < full ? std::vector<const Origin *>{&in.heldTo->origin} : ofFull};
}

void judgePilot(Worksheet &sheet, const Given<double> &input, const std::optional<Drawn> &drawn)
{
    const double duty = sheet.take(input, u"D", u"%", 0, 1);
    if (!input.value || *input.value != duty)
        return;
    const std::optional<Current> offered = pilotCurrent(duty);
    if (!offered) {
        sheet.doubt(duty >= 0.03 && duty <= 0.07
                        ? tr("This duty cycle asks for digital communication, not for a current.")
                        : tr("At this duty cycle the charging point lets nothing be drawn."));
        return;
    }
    sheet.step(tr("current the control pilot offers"),
               duty <= 0.85 ? QStringLiteral("0.6 A · D/%") : QStringLiteral("2.5 A · (D/% − 64)"),
               show(duty, u"%"), *offered, u"A");
    if (drawn) {
        sheet.restsOn(input, drawn->from);
        sheet.atMost(tr("current against the control pilot"), drawn->mains, *offered, u"A",
                     tr("IEC 61851-1, control pilot"));
        sheet.mendedBy(tr("A lower current set at the charger, or a supply for more current, put "
                          "in by those licensed to."));
    }
}

void judgeMains(Worksheet &sheet, const ChargingInputs &in, const std::optional<Drawn> &drawn)
{
    const auto breaker = taken(sheet, in.breaker, u"Iₙ", u"A", kAboveNothing);
    const auto link = taken(sheet, in.weakestLink, u"I_w", u"A", kAboveNothing);
    if (drawn && breaker) {
        const double share = drawn->mains / *breaker;
        sheet.step(tr("share of the protective device"), QStringLiteral("I/Iₙ"),
                   QString(show(drawn->mains, u"A") + QStringLiteral(" / ") + show(*breaker, u"A")),
                   share, u"%");
        sheet.restsOn(drawn->from, in.breaker);
        sheet.within(tr("continuous load on the protective device"), share, in.continuousShare,
                     u"%");
        sheet.mendedBy(tr("A lower current set at the charger, or a supply for more current, put "
                          "in by those licensed to."));
    }
    if (drawn && link) {
        sheet.restsOn(drawn->from, in.weakestLink);
        sheet.atMost(tr("current through outlet, inlet and cable"), drawn->mains, *link, u"A",
                     in.weakestLink.origin.name);
        sheet.mendedBy(
            tr("A lower current set at the charger, or a stronger outlet, cable or inlet."));
    }
    if (in.pilotDuty)
        judgePilot(sheet, *in.pilotDuty, drawn);
}
void judgeWindow(Worksheet &sheet, const ChargingInputs &in, const std::optional<Drawn> &drawn)
{
    const auto empty = taken(sheet, in.packEmpty, u"Uₑ", u"V", kAboveNothing);
    const auto full = taken(sheet, in.packFull, u"Uf", u"V", kAboveNothing);
    const auto packCurrent = taken(sheet, in.packCurrent, u"Iₚ", u"A", kAboveNothing);
    const auto least = taken(sheet, in.chargerLeast, u"Uₘᵢₙ", u"V", 0);
    const auto most = taken(sheet, in.chargerMost, u"Uₘₐₓ", u"V", kAboveNothing);
    const auto end = taken(sheet, in.endOfCharge, u"Uₛ", u"V", kAboveNothing);
    const auto current = taken(sheet, in.chargerCurrent, u"I_c", u"A", kAboveNothing);
    if (empty && full && *full < *empty)
        sheet.refuse(tr("The pack cannot be full below the voltage at which it is empty."));
    if (empty && least) {
        keepAtLeast(sheet, tr("empty pack against the charger's window"), *empty, *least, u"V",
                    in.chargerLeast.origin.name);
        sheet.mendedBy(tr("A charger whose window reaches down to the empty pack."));
    }
    if (end && full) {
        keepAtMost(sheet, tr("end of charge against the full pack"), *end, *full, u"V",
                   in.packFull.origin.name);
        sheet.mendedBy(tr("A lower end of charging set at the charger."));
    }
    if (end && most) {
        keepAtMost(sheet, tr("end of charge against the charger's window"), *end, *most, u"V",
                   in.chargerMost.origin.name);
        sheet.mendedBy(
            tr("A charger whose window reaches up to that voltage, or a lower end of charging."));
    }
    if (drawn && empty && current && packCurrent) {
        const Current greatest = std::min(drawn->output / *empty, *current);
        sheet.step(tr("greatest charging current"), QStringLiteral("min(P/Uₑ, I_c)"),
                   QString(show(drawn->output, u"kW") + QStringLiteral(" / ") + show(*empty, u"V") +
                           QStringLiteral(", ") + show(*current, u"A")),
                   greatest, u"A");
        sheet.restsOn(in.chargerCurrent, in.packCurrent, drawn->from, in.packEmpty);
        sheet.atMost(tr("charging current of the pack"), greatest, *packCurrent, u"A",
                     in.packCurrent.origin.name);
        sheet.mendedBy(tr("A lower charging current set, or more modules in parallel."));
    }
}

void judgeTime(Worksheet &sheet, const ChargingInputs &in, const std::optional<Drawn> &drawn)
{
    const auto energy = taken(sheet, in.packEnergy, u"E", u"kWh", kAboveNothing);
    const auto from = taken(sheet, in.from, u"z₁", u"%", 0, 1);
    const auto to = taken(sheet, in.to, u"z₂", u"%", 0, 1);
    const auto hand = in.timeAtHand ? taken(sheet, *in.timeAtHand, u"tₘₐₓ", u"h", kAboveNothing)
                                    : std::optional<Duration>();
    // what is only told does not weigh on the verdict
    const auto falls =
        in.timeAtHand ? taken(sheet, in.fallsFrom, u"z_f", u"%", 0, 1) : in.fallsFrom.value;
    const auto share =
        in.timeAtHand ? taken(sheet, in.fallsTo, u"s", u"%", kAboveNothing, 1) : in.fallsTo.value;
    if (from && to && *to <= *from) {
        sheet.refuse(tr("A charge ends above the state of charge it begins with."));
        return;
    }
    if (!drawn || !energy || !from || !to || !falls || !share || *share <= 0)
        return;
    const double below = std::clamp(*falls, *from, *to) - *from;
    const double above = *to - *from - below;
    const Duration steady = *energy * below / drawn->output;
    const Duration falling = *energy * above / (drawn->output * *share);
    const QString assumed = tr("assumed: above %1 charged it takes %2 of the power on average")
                                .arg(show(*falls, u"%"), show(*share, u"%"));
    sheet.step(tr("time at full power"), QStringLiteral("t₁ = E·(z_f − z₁)/P"),
               QString(show(*energy, u"kWh") + kTimes + show(below, u"%") + QStringLiteral(" / ") +
                       show(drawn->output, u"kW")),
               steady, u"h");
    sheet.step(tr("time while the current falls"), QStringLiteral("t₂ = E·(z₂ − z_f)/(s·P)"),
               assumed, falling, u"h");
    sheet.step(tr("time of the charge"), QStringLiteral("t = t₁ + t₂"),
               QString(show(steady, u"h") + QStringLiteral(" + ") + show(falling, u"h")),
               steady + falling, u"h");
    if (hand) {
        sheet.atMost(tr("time of the charge"), steady + falling, *hand, u"h",
                     in.timeAtHand->origin.name);
        sheet.mendedBy(tr("More power from the mains, or more hours."));
    }
    sheet.result(tr("%1 from the mains on each line; %2 from %3 to %4, its end assumed")
                     .arg(show(drawn->mains, u"A"), show(steady + falling, u"h"), show(*from, u"%"),
                          show(*to, u"%")));
}

} // namespace

ChargerDraw chargerDraw(const ChargingInputs &inputs)
{
    Worksheet aside(QStringLiteral("charging"), {}, Protects::People);
    const std::optional<Drawn> drawn = drawnFromMains(aside, inputs);
    ChargerDraw draw;
    if (!drawn || drawn->from.empty())
        return draw;
    const Origin &weakest = **std::ranges::max_element(
        drawn->from, {}, [](const Origin *origin) { return origin->evidence; });
    draw.mains = {drawn->mains, weakest};
    draw.output = {drawn->output, weakest};
    return draw;
}

Check judgeCharging(const ChargingInputs &in)
{
    Worksheet sheet(QStringLiteral("charging"), tr("Charging from the mains"), Protects::People);
    sheet.about(in.charger);
    sheet.caution(QStringLiteral("mains"));
    sheet.afterwards(tr("Then measure the mains current and feel for warmth at plug, outlet and "
                        "terminals through the first full charge, and stay with it."));
    const std::optional<Drawn> drawn = drawnFromMains(sheet, in);
    judgeMains(sheet, in, drawn);
    judgeWindow(sheet, in, drawn);
    judgeTime(sheet, in, drawn);
    return sheet.finish(
        tr("Power of alternating current: Nilsson and Riedel, Electric Circuits; National "
           "Electrical Code 210.20(A), 625.41, 625.42; IEC 61851-1"));
}

} // namespace ohmwright
