// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/range.h"

#include "core/checks/cycle_energy.h"
#include "core/checks/take_road_load.h"
#include "core/checks/taken.h"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>

namespace ohmwright {

namespace {

constexpr double kKmh = 1 / 3.6;
constexpr Duration kStep = seconds(0.1);

QString tr(const char *text)
{
    return QCoreApplication::translate("Range", text);
}

struct Known
{
    std::optional<RoadLoad> load;
    std::optional<PackSide> pack;
    std::optional<Energy> usable;
    std::optional<Power> packLimit;
    std::optional<Speed> topSpeed;
    double waiting = 0; // share of the usable energy used before regeneration is taken
    bool capKnown = true;
};

std::optional<Regeneration> takeRegeneration(Worksheet &sheet, const RangeInputs &inputs,
                                             double &waiting)
{
    const auto &asked = *inputs.regeneration;
    const auto set = taken(sheet, asked.set, u"P_r", u"kW", 0, 1e9);
    const auto accepted = taken(sheet, asked.packLimit, u"P_in", u"kW", 0, 1e9);
    const auto efficiency = taken(sheet, asked.efficiency, u"η_r", u"%", 0.01, 1);
    const auto share = taken(sheet, asked.drivenShare, u"x_r", u"%", 0, 1);
    const auto fades = taken(sheet, asked.fadesBelow, u"v_f", u"km/h", 0, 100);
    const auto full = taken(sheet, asked.fullAbove, u"z_r", u"%", 0, 1);
    if (asked.toldTwice) {
        sheet.take(asked.toldTwice->current, u"I_r", u"A", 0);
        doubtIfSetTwice(sheet, *asked.toldTwice);
    }
    if (set && accepted)
        sheet.restsOn(asked.set, asked.packLimit);
    if (set && accepted &&
        sheet.atMost(tr("regeneration set, against what the pack takes"), *set, *accepted, u"kW",
                     asked.packLimit.origin.name) != Verdict::Holds)
        sheet.turnedBy(tr("A lower regeneration power set in the controller."));
    if (inputs.startCharge <= inputs.endCharge || inputs.startCharge > 1 || inputs.endCharge < 0) {
        sheet.refuse(tr("The usable energy lies between two states of charge, the upper first."));
        return std::nullopt;
    }
    if (!set || !accepted || !efficiency || !share || !fades || !full)
        return std::nullopt;
    waiting = std::clamp((inputs.startCharge - *full) / (inputs.startCharge - inputs.endCharge),
                         0.0, 1.0);
    return Regeneration{true, std::min(*set, *accepted), *fades, *efficiency, *share};
}

Known takeAll(Worksheet &sheet, const RangeInputs &inputs)
{
    Known known;
    known.load = takeRoadLoad(sheet, inputs);

    const auto efficiency = taken(sheet, inputs.efficiency, u"η", u"%", 0.01, 1);
    const auto auxiliaries = taken(sheet, inputs.auxiliaries, u"P_aux", u"W", 0, 1e6);
    known.usable = taken(sheet, inputs.usableEnergy, u"E", u"kWh", 0, 1e12);
    known.packLimit = taken(sheet, inputs.packLimit, u"P_max", u"kW", 0, 1e9);
    std::optional<Regeneration> regeneration = Regeneration();
    if (inputs.regeneration)
        regeneration = takeRegeneration(sheet, inputs, known.waiting);
    if (efficiency && auxiliaries && regeneration)
        known.pack = PackSide{*efficiency, *auxiliaries, *regeneration};
    if (inputs.topSpeed) {
        known.topSpeed = taken(sheet, *inputs.topSpeed, u"v_max", u"km/h", 1, 150);
        known.capKnown = known.topSpeed.has_value();
    }
    return known;
}

struct Reach
{
    Length range;
    EnergyPerDistance mean; // over the whole usable energy
};

// First without regeneration, until the pack is empty enough to take it.
Reach reachOver(const CycleEnergy &energy, Energy usable, double waiting)
{
    const EnergyPerDistance full = energy.fromPack / energy.distance;
    const EnergyPerDistance back = (energy.fromPack - energy.intoPack) / energy.distance;
    constexpr double kLeast =
        1e-3; // J/m: regeneration cannot carry a vehicle on the level for ever
    const auto over = [&](double share, EnergyPerDistance each) {
        return usable * share / std::max(each, EnergyPerDistance::fromSi(kLeast));
    };
    const Length range = over(waiting, full) + over(1 - waiting, back);
    return {range, range.si() > 0 ? usable / range : back};
}

void judgeCycles(Worksheet &sheet, const RangeInputs &inputs, const Known &known)
{
    for (const DriveCycle &published : publishedDriveCycles()) {
        const bool judged = published.key == inputs.cycle;
        const bool capped = known.topSpeed && *known.topSpeed < published.highest();
        const DriveCycle cycle = capped ? published.cappedAt(*known.topSpeed) : published;
        const CycleEnergy energy = energyOver(cycle, *known.load, *known.pack, kStep);
        const QString worked =
            tr("%1 in %2%3; at the wheels %4 pulling, %5 net; back into the pack %6")
                .arg(show(energy.distance, u"km"), show(cycle.duration(), u"s"),
                     capped ? tr(", capped at %1").arg(show(*known.topSpeed, u"km/h")) : QString(),
                     show(energy.drive / energy.distance, u"Wh/km"),
                     show(energy.net / energy.distance, u"Wh/km"),
                     show(energy.intoPack / energy.distance, u"Wh/km"));
        const Reach reach = reachOver(energy, known.usable.value_or(joules(1)), known.waiting);
        sheet.step(tr("consumption, %1").arg(cycle.name),
                   QStringLiteral("Σ (F·v̄/η + P_aux)·Δt − Σ regeneration"), worked, reach.mean,
                   u"Wh/km");
        if (known.usable)
            sheet.step(tr("range, %1").arg(cycle.name), QStringLiteral("s = E/(consumption)"),
                       QString(show(*known.usable, u"kWh") + QStringLiteral(" / ") +
                               show(reach.mean, u"Wh/km")),
                       reach.range, u"km");
        if (!judged)
            continue;
        if (known.packLimit)
            sheet.restsOn(inputs.packLimit, inputs.mass, inputs.efficiency, inputs.topSpeed,
                          inputs.rotating, inputs.dragCoefficient, inputs.frontalArea,
                          inputs.rollingCoefficient, inputs.auxiliaries);
        if (known.packLimit &&
            sheet.atMost(tr("power from the pack, %1").arg(cycle.name), energy.mostFromPack,
                         *known.packLimit, u"kW", inputs.packLimit.origin.name) != Verdict::Holds)
            sheet.turnedBy(tr("A pack that may give more, or accepting slower acceleration."));
        if (inputs.wantedRange && known.usable) {
            const auto wanted = taken(sheet, *inputs.wantedRange, u"s", u"km", 0, 1e8);
            sheet.restsOn(inputs.usableEnergy, inputs.efficiency, inputs.mass,
                          inputs.rollingCoefficient, inputs.dragCoefficient, inputs.frontalArea,
                          inputs.auxiliaries, inputs.topSpeed, inputs.rotating, inputs.wantedRange);
            if (wanted && sheet.atLeast(tr("range, %1").arg(cycle.name), reach.range, *wanted,
                                        u"km", inputs.wantedRange->origin.name) != Verdict::Holds)
                sheet.turnedBy(tr("More usable energy, less mass or drag, lower speeds."));
        }
        if (known.usable)
            sheet.result(
                tr("%1 and %2 over %3")
                    .arg(show(reach.mean, u"Wh/km"), show(reach.range, u"km"), cycle.name));
    }
}

void tellSteady(Worksheet &sheet, const RangeInputs &inputs, const Known &known)
{
    for (const Speed speed : inputs.steadySpeeds) {
        if (speed.si() <= 0 || (known.topSpeed && *known.topSpeed < speed))
            continue;
        const Power power = powerAtSteady(speed, *known.load, *known.pack);
        const EnergyPerDistance each = power / speed;
        sheet.step(tr("consumption at a steady %1").arg(show(speed, u"km/h")),
                   QStringLiteral("(R·v/η + P_aux)/v"),
                   QString(show(power, u"kW") + QStringLiteral(" / ") + show(speed, u"km/h")), each,
                   u"Wh/km");
        if (known.usable && each.si() > 0)
            sheet.step(
                tr("range at a steady %1").arg(show(speed, u"km/h")),
                QStringLiteral("s = E/(consumption)"),
                QString(show(*known.usable, u"kWh") + QStringLiteral(" / ") + show(each, u"Wh/km")),
                *known.usable / each, u"km");
    }
    if (!known.usable)
        return;
    Plot plot;
    plot.title = tr("Range at steady speed");
    plot.xName = tr("road speed");
    plot.xUnit = QStringLiteral("km/h");
    plot.yName = tr("range");
    plot.yUnit = QStringLiteral("km");
    PlotSeries series;
    series.name = tr("level road, no wind");
    constexpr int kSlowest = 10, kFastest = 140, kApart = 5;
    for (int kmh = kSlowest; kmh <= kFastest; kmh += kApart) {
        const Speed speed = Speed::fromSi(kmh * kKmh);
        const EnergyPerDistance each = powerAtSteady(speed, *known.load, *known.pack) / speed;
        if (each.si() > 0 && !(known.topSpeed && *known.topSpeed < speed))
            series.points.emplace_back(kmh, (*known.usable / each).si() * 1e-3);
    }
    plot.series.push_back(std::move(series));
    sheet.plot(std::move(plot));
}

} // namespace

Check judgeRange(const RangeInputs &inputs)
{
    Worksheet sheet(QStringLiteral("range"), tr("Range and consumption"), Protects::Pack);
    sheet.about(inputs.subject);
    sheet.caution(QStringLiteral("battery"));
    sheet.afterwards(tr("Then measure: energy over a known distance, there and back, warm and "
                        "cold. The first drives stay near home. Heating the cabin, a cold pack "
                        "and headwind are not in it."));
    const QString source =
        tr("Energy demand of a cycle in the form of UN R154, annex B7; cycles from 40 CFR Parts "
           "86 and 600, Regulation (EU) 2017/1151, UN Regulations 83 and 154");

    const Known known = takeAll(sheet, inputs);
    const auto &cycles = publishedDriveCycles();
    if (std::none_of(cycles.begin(), cycles.end(),
                     [&](const DriveCycle &cycle) { return cycle.key == inputs.cycle; }))
        sheet.refuse(tr("There is no drive cycle named %1.").arg(inputs.cycle));
    if (!known.load || !known.pack || !known.capKnown)
        return sheet.finish(source);
    judgeCycles(sheet, inputs, known);
    tellSteady(sheet, inputs, known);
    return sheet.finish(source);
}

} // namespace ohmwright
