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
};

// None as soon as one of them is not known: a sum without it would be too small.
std::optional<Power> sumOf(const std::vector<Load> &loads, bool atDuty)
{
    Power sum;
    for (const Load &load : loads) {
        if (!load.power || (atDuty && !load.duty))
            return std::nullopt;
        sum += atDuty ? *load.power * *load.duty : *load.power;
    }
    return sum;
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
        loads.push_back({power, duty});
    }
    return loads;
}

void judgeConverter(Worksheet &sheet, const LowVoltageInputs &in, const std::vector<Load> &loads,
                    std::optional<Voltage> u)
{
    const auto current = taken(sheet, in.converterCurrent, u"I_c", u"A", kAboveNothing);
    const std::optional<Power> mean = sumOf(loads, true), all = sumOf(loads, false);
    if (!u || !mean || !all)
        return;
    const Current drawn = *mean / *u;
    sheet.step(tr("mean current of all loads"), QStringLiteral("Ī = Σ(d·P)/U"),
               QString(show(*mean, u"W") + QStringLiteral(" / ") + show(*u, u"V")), drawn, u"A");
    sheet.step(tr("everything on at once"), QStringLiteral("ΣP/U"),
               QString(show(*all, u"W") + QStringLiteral(" / ") + show(*u, u"V")), *all / *u, u"A");
    if (!current)
        return;
    sheet.step(tr("what the battery adds with everything on"), QStringLiteral("ΣP/U − I_c"),
               QString(show(*all / *u, u"A") + QStringLiteral(" − ") + show(*current, u"A")),
               std::max(Current(), *all / *u - *current), u"A");
    sheet.atMost(tr("mean current of the converter"), drawn, *current, u"A",
                 in.converterCurrent.origin.name);
    sheet.result(tr("%1 on average and %2 with everything on, of the converter's %3")
                     .arg(show(drawn, u"A"), show(*all / *u, u"A"), show(*current, u"A")));
}

void judgeReserve(Worksheet &sheet, const LowVoltageInputs &in, const std::vector<Load> &loads)
{
    const auto u = taken(sheet, in.batteryVoltage, u"U_b", u"V", kAboveNothing);
    const auto capacity = taken(sheet, in.batteryCapacity, u"Q", u"Ah", kAboveNothing);
    const auto usable = taken(sheet, in.usableShare, u"s", u"%", kAboveNothing, 1);
    std::optional<double> exponent = 1;
    std::optional<Duration> rated = seconds(1); // of no effect with the exponent 1
    if (in.peukert) {
        exponent = taken(sheet, *in.peukert, u"k", u"", 1, 2);
        rated = taken(sheet, in.ratedTime, u"H", u"h", kAboveNothing);
    }
    std::vector<Load> essential;
    for (std::size_t i = 0; i < loads.size(); ++i) {
        if (in.loads[i].inReserve)
            essential.push_back(loads[i]);
    }
    if (essential.empty()) {
        sheet.doubt(tr("No load is marked as needed while the converter is off."));
        return;
    }
    const std::optional<Power> power = sumOf(essential, true);
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
    sheet.step(tr("reserve"),
               in.peukert ? QStringLiteral("t = s·H·(Q/(I·H))^k") : QStringLiteral("t = s·Q/I"),
               QString(show(*usable, u"%") + QStringLiteral(" · ") + show(*capacity, u"Ah") +
                       QStringLiteral(" / ") + show(drawn, u"A")),
               lasts, u"min");
    sheet.within(tr("reserve of the battery"), lasts, in.reserve, u"min");
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
        for (const std::size_t i : fuse.loads) {
            if (i < loads.size()) {
                fed.push_back(loads[i]);
                fused[i] = true;
            }
        }
        if (rating && cable)
            sheet.atMost(tr("%1 against its cable").arg(fuse.name), *rating, *cable, u"A",
                         fuse.cable.origin.name);
        if (fed.empty()) // of the supply, not of a load
            continue;
        const std::optional<Power> power = sumOf(fed, false);
        if (!u || !power || !factor || !rating)
            continue;
        const Current through = *power / *u;
        sheet.step(tr("%1: rating its loads ask for").arg(fuse.name), QStringLiteral("ΣP/(U·F·a)"),
                   QString(show(through, u"A") + QStringLiteral(" / (") + show(*factor, u"") +
                           QStringLiteral(" · ") + show(in.fuseShare.inForce(), u"%") +
                           QLatin1Char(')')),
                   through / (*factor * in.fuseShare.inForce()), u"A");
        sheet.within(tr("%1: load of the rating").arg(fuse.name), through / (*rating * *factor),
                     in.fuseShare, u"%");
    }
    for (std::size_t i = 0; i < loads.size(); ++i) {
        if (!fused[i])
            sheet.doubt(tr("No fuse is told for %1.").arg(in.loads[i].name));
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
    sheet.turnedBy(tr("A larger converter, or loads that are on less."));
    sheet.turnedBy(tr("A larger 12 V battery, or fewer loads that must work without the "
                      "converter."));
    sheet.turnedBy(tr("A fuse between the load and what its cable carries; if there is none, a "
                      "thicker cable."));
    return sheet.finish(
        tr("Any text on circuits; Peukert 1897 for lead-acid; fuse makers' guides"));
}

} // namespace ohmwright
