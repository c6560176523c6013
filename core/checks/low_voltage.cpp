// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/low_voltage.h"

#include "core/checks/taken.h"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>

namespace ohmwright {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("LowVoltage", text);
}

struct Load
{
    std::optional<Power> power;
    std::optional<double> duty;
    std::optional<Power> highest; // of what it draws for good and for moments
};

enum class Drawing { Mean, Lasting, Highest };

std::optional<Power> drawn(const Load &load, Drawing what)
{
    switch (what) {
    case Drawing::Mean:
        return load.power && load.duty ? std::optional(*load.power * *load.duty) : std::nullopt;
    case Drawing::Lasting:
        return load.power;
    case Drawing::Highest:
        return load.highest;
    }
    return std::nullopt;
}

// None as soon as one of them is not known: a sum without it would be too small.
std::optional<Power> sumOf(const std::vector<Load> &loads, Drawing what)
{
    Power sum;
    for (const Load &load : loads) {
        const std::optional<Power> one = drawn(load, what);
        if (!one)
            return std::nullopt;
        sum += *one;
    }
    return sum;
}

// What a sum rests on: the loads that draw most first.
std::vector<const Origin *> loadsFrom(const std::vector<const LowVoltageLoad *> &told, Drawing what)
{
    std::vector<const LowVoltageLoad *> loads = told;
    const auto weight = [what](const LowVoltageLoad &load) {
        const double power = load.power.value.value_or(Power()).si();
        if (what == Drawing::Mean)
            return power * load.duty.value.value_or(1);
        return what == Drawing::Highest && load.peak && load.peak->value
                   ? std::max(power, load.peak->value->si())
                   : power;
    };
    std::stable_sort(
        loads.begin(), loads.end(),
        [&](const LowVoltageLoad *a, const LowVoltageLoad *b) { return weight(*b) < weight(*a); });
    std::vector<const Origin *> from;
    for (const LowVoltageLoad *load : loads) {
        const bool byPeak = what == Drawing::Highest && load->peak && load->peak->value &&
                            load->power.value && *load->power.value < *load->peak->value;
        from.push_back(byPeak ? &load->peak->origin : &load->power.origin);
        if (what == Drawing::Mean)
            from.push_back(&load->duty.origin);
    }
    return from;
}

std::vector<Load> takeLoads(Worksheet &sheet, const LowVoltageInputs &in)
{
    std::vector<Load> loads;
    for (const LowVoltageLoad &load : in.loads) {
        const auto power = taken(sheet, load.power, u"P", u"W", 0);
        const auto duty = taken(sheet, load.duty, u"d", u"%", 0, 1);
        if (power && duty)
            sheet.step(load.name, QStringLiteral("d·P"),
                       QString(show(*duty, u"%") + QStringLiteral(" · ") + show(*power, u"W")),
                       *power * *duty, u"W");
        std::optional<Power> highest = power;
        if (load.peak) {
            const auto peak = taken(sheet, *load.peak, u"P̂", u"W", 0);
            highest = power && peak ? std::optional(std::max(*power, *peak)) : std::nullopt;
        }
        loads.push_back({power, duty, highest});
    }
    return loads;
}

void judgeConverter(Worksheet &sheet, const LowVoltageInputs &in, const std::vector<Load> &loads,
                    std::optional<Voltage> u)
{
    const auto current = taken(sheet, in.converterCurrent, u"I_c", u"A", kAboveNothing);
    const std::optional<Power> mean = sumOf(loads, Drawing::Mean);
    const std::optional<Power> all = sumOf(loads, Drawing::Highest);
    if (!u || !all)
        return;
    const Current most = *all / *u;
    if (mean)
        sheet.step(tr("mean current of all loads"), QStringLiteral("Ī = Σ(d·P)/U"),
                   QString(show(*mean, u"W") + QStringLiteral(" / ") + show(*u, u"V")), *mean / *u,
                   u"A");
    sheet.step(tr("everything on at once, at its highest"), QStringLiteral("Î = ΣP̂/U"),
               QString(show(*all, u"W") + QStringLiteral(" / ") + show(*u, u"V")), most, u"A");
    if (!current)
        return;
    std::vector<const LowVoltageLoad *> every;
    every.reserve(in.loads.size());
    for (const LowVoltageLoad &load : in.loads)
        every.push_back(&load);
    sheet.restsOn(in.converterCurrent, loadsFrom(every, Drawing::Highest), in.systemVoltage);
    sheet.atMost(tr("everything on at once, of the converter"), most, *current, u"A",
                 in.converterCurrent.origin.name);
    sheet.mendedBy(tr("A larger converter, or loads that are not on together."));
    if (mean)
        sheet.result(tr("%1 on average and %2 with everything at its highest, of the converter's "
                        "%3")
                         .arg(show(*mean / *u, u"A"), show(most, u"A"), show(*current, u"A")));
}

void judgeReserve(Worksheet &sheet, const LowVoltageInputs &in, const std::vector<Load> &loads)
{
    const auto u = taken(sheet, in.batteryVoltage, u"U_b", u"V", kAboveNothing);
    const auto capacity = taken(sheet, in.batteryCapacity, u"Q", u"Ah", kAboveNothing);
    const auto usable = taken(sheet, in.usableShare, u"s", u"%", kAboveNothing, 1);
    const auto exponent = taken(sheet, in.peukert, u"k", u"", 1, 2);
    std::optional<Duration> rated = seconds(1); // of no effect with the exponent 1
    if (exponent != 1.0)
        rated = taken(sheet, in.ratedTime, u"H", u"h", kAboveNothing);
    std::vector<Load> essential;
    std::vector<const LowVoltageLoad *> told;
    for (std::size_t i = 0; i < loads.size(); ++i) {
        if (in.loads[i].inReserve) {
            essential.push_back(loads[i]);
            told.push_back(&in.loads[i]);
        }
    }
    if (essential.empty()) {
        sheet.doubt(tr("No load is marked as needed while the converter is off."));
        return;
    }
    const std::optional<Power> power = sumOf(essential, Drawing::Mean);
    if (!u || !capacity || !usable || !exponent || !rated || !power)
        return;
    if (power->si() <= 0) {
        sheet.doubt(tr("What is needed while the converter is off draws nothing, as it stands."));
        return;
    }
    const Current drawn = *power / *u;
    const Duration lasts = reserveTime(*capacity, *usable, drawn, *exponent, *rated);
    sheet.step(tr("current without the converter"), QStringLiteral("I = Σ(d·P)/U_b"),
               QString(show(*power, u"W") + QStringLiteral(" / ") + show(*u, u"V")), drawn, u"A");
    const bool isEven = *exponent == 1;
    sheet.step(tr("reserve"),
               isEven ? QStringLiteral("t = s·Q/I") : QStringLiteral("t = s·H·(Q/(I·H))^k"),
               QString(show(*usable, u"%") + QStringLiteral(" · ") +
                       (isEven ? QString() : QString(show(*rated, u"h") + QStringLiteral(" · ("))) +
                       show(*capacity, u"Ah") + QStringLiteral(" / ") + show(drawn, u"A") +
                       (isEven ? QString()
                               : QString(QStringLiteral(" / ") + show(*rated, u"h") +
                                         QStringLiteral(")^") + show(*exponent, u"").trimmed()))),
               lasts, u"min");
    if (!isEven && in.peukert.origin.evidence == Evidence::Assumed)
        sheet.stepText(tr("Peukert's exponent, assumed"), QStringLiteral("k"),
                       in.peukert.origin.source, show(*exponent, u""));
    sheet.restsOn(loadsFrom(told, Drawing::Mean), in.peukert, in.batteryCapacity, in.usableShare,
                  in.batteryVoltage, isEven ? nullptr : &in.ratedTime);
    sheet.within(tr("reserve of the battery"), lasts, in.reserve, u"min");
    sheet.mendedBy(
        tr("A larger 12 V battery, or fewer loads that must work without the converter."));
}

void judgeFuses(Worksheet &sheet, const LowVoltageInputs &in, const std::vector<Load> &loads,
                std::optional<Voltage> u)
{
    std::optional<double> factor = 1;
    if (in.fuseTemperatureFactor)
        factor = taken(sheet, *in.fuseTemperatureFactor, u"F", u"", kAboveNothing, 1.2);
    std::vector<bool> fused(loads.size(), false);
    for (const LowVoltageFuse &fuse : in.fuses) {
        const auto rating = taken(sheet, fuse.rating, u"Iₙ", u"A", kAboveNothing);
        const auto cable = taken(sheet, fuse.cable, u"I_z", u"A", kAboveNothing);
        std::vector<Load> fed;
        std::vector<const LowVoltageLoad *> told;
        for (const std::size_t i : fuse.loads) {
            if (i < loads.size()) {
                fed.push_back(loads[i]);
                told.push_back(&in.loads[i]);
                fused[i] = true;
            }
        }
        if (rating && cable) {
            sheet.restsOn(fuse.cable, fuse.rating);
            sheet.atMost(tr("%1 against its cable").arg(fuse.name), *rating, *cable, u"A",
                         fuse.cable.origin.name);
            sheet.mendedBy(tr("A smaller fuse, or a thicker cable."));
        }
        if (fed.empty()) // of the supply, not of a load
            continue;
        const std::optional<Power> power = sumOf(fed, Drawing::Lasting);
        const std::optional<Power> highest = sumOf(fed, Drawing::Highest);
        if (!u || !power || !factor || !rating)
            continue;
        const Current through = *power / *u;
        sheet.step(tr("%1: rating its loads ask for").arg(fuse.name), QStringLiteral("ΣP/(U·F·a)"),
                   QString(show(through, u"A") + QStringLiteral(" / (") + show(*factor, u"") +
                           QStringLiteral(" · ") + show(in.fuseShare.inForce(), u"%") +
                           QLatin1Char(')')),
                   through / (*factor * in.fuseShare.inForce()), u"A");
        sheet.restsOn(loadsFrom(told, Drawing::Lasting), fuse.rating, in.fuseTemperatureFactor,
                      in.systemVoltage);
        sheet.within(tr("%1: load of the rating").arg(fuse.name), through / (*rating * *factor),
                     in.fuseShare, u"%");
        sheet.mendedBy(tr("A larger fuse as far as its cable allows, or less load on it."));
        if (!highest || *highest <= *power)
            continue;
        // a moment is no lasting load: all of the rating is there for it
        sheet.restsOn(loadsFrom(told, Drawing::Highest), fuse.rating, in.fuseTemperatureFactor,
                      in.systemVoltage);
        sheet.atMost(tr("%1: loads at their highest").arg(fuse.name), *highest / *u,
                     *rating * *factor, u"A", fuse.rating.origin.name);
        sheet.mendedBy(tr("A larger fuse as far as its cable allows, or less load on it."));
    }
    for (std::size_t i = 0; i < loads.size(); ++i) {
        if (!fused[i])
            sheet.doubt(tr("No fuse is told for %1.").arg(in.loads[i].name));
    }
}

// The battery's, at its terminals: what a cable between takes off it is left out. None while it is
// not told, which is asked for only where somebody wanted to know it.
std::optional<Current> shortCircuit(Worksheet &sheet, const LowVoltageInputs &in)
{
    if (in.shortCircuit)
        return taken(sheet, *in.shortCircuit, u"I_k", u"kA", kAboveNothing);
    if (!in.innerResistance)
        return std::nullopt;
    const auto inner = taken(sheet, *in.innerResistance, u"R", u"mΩ", kAboveNothing);
    if (!inner || !in.batteryVoltage.value || !(in.batteryVoltage.value->si() > 0))
        return std::nullopt;
    const Current current = *in.batteryVoltage.value / *inner;
    sheet.step(
        tr("short circuit at the battery"), QStringLiteral("I_k = U_b/R"),
        QString(show(*in.batteryVoltage.value, u"V") + QStringLiteral(" / ") + show(*inner, u"mΩ")),
        current, u"kA");
    return current;
}

// Of the fuse: what its loop lets through, else the battery's whole short circuit.
std::optional<Current> faultAt(Worksheet &sheet, const LowVoltageInputs &in,
                               const LowVoltageFuse &fuse, const std::optional<Current> &battery)
{
    if (!fuse.loop)
        return battery;
    const auto loop = taken(sheet, *fuse.loop, u"R", u"mΩ", kAboveNothing);
    if (!loop || !in.batteryVoltage.value || !(in.batteryVoltage.value->si() > 0))
        return std::nullopt;
    const Current current = *in.batteryVoltage.value / *loop;
    sheet.step(
        tr("%1: short circuit there").arg(fuse.name), QStringLiteral("I_k = U_b/R"),
        QString(show(*in.batteryVoltage.value, u"V") + QStringLiteral(" / ") + show(*loop, u"mΩ")),
        current, u"kA");
    return current;
}

// Once the short circuit is known, a fuse of which nobody knows what it breaks is not known to.
void judgeBreaking(Worksheet &sheet, const LowVoltageInputs &in)
{
    const std::optional<Current> battery = shortCircuit(sheet, in);
    const bool asked = in.shortCircuit || in.innerResistance;
    for (const LowVoltageFuse &fuse : in.fuses) {
        if (!asked && !fuse.loop)
            continue;
        Given<Current> told = fuse.breaking;
        if (told.origin.name.isEmpty())
            told.origin.name = tr("breaking capacity of %1").arg(fuse.name);
        const auto breaking = taken(sheet, told, u"I₁", u"kA", kAboveNothing);
        const std::optional<Current> fault = faultAt(sheet, in, fuse, battery);
        if (!breaking || !fault)
            continue;
        if (fuse.loop)
            sheet.restsOn(fuse.loop, fuse.breaking, in.batteryVoltage);
        else if (in.shortCircuit)
            sheet.restsOn(in.shortCircuit, fuse.breaking);
        else
            sheet.restsOn(in.innerResistance, fuse.breaking, in.batteryVoltage);
        sheet.atMost(tr("%1: short circuit to break").arg(fuse.name), *fault, *breaking, u"kA",
                     told.origin.name);
        sheet.mendedBy(tr("A fuse of a higher breaking capacity, or one farther along the cable."));
    }
}

} // namespace

Duration reserveTime(Charge capacity, double usable, Current current, double peukert,
                     Duration ratedTime)
{
    const Duration even = capacity / current;
    return even * usable * std::pow(even / ratedTime, peukert - 1);
}

Check judgeLowVoltage(const LowVoltageInputs &in)
{
    Worksheet sheet(QStringLiteral("low_voltage"), tr("The 12 V side"), Protects::Electronics);
    sheet.about(in.circuit);
    sheet.caution(QStringLiteral("battery"));
    sheet.afterwards(tr("Then measure with everything on: the voltage at the farthest load, the "
                        "converter's current, and again with the converter off."));
    const auto u = taken(sheet, in.systemVoltage, u"U", u"V", kAboveNothing);
    const std::vector<Load> loads = takeLoads(sheet, in);
    judgeConverter(sheet, in, loads, u);
    judgeReserve(sheet, in, loads);
    judgeFuses(sheet, in, loads, u);
    judgeBreaking(sheet, in);
    return sheet.finish(tr("Ohm's law; Peukert 1897 for lead-acid; fuse makers' guides"));
}

} // namespace ohmwright
