// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/pack.h"

#include "core/checks/taken.h"
#include "core/checks/usable.h"
#include "core/checks/worksheet.h"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>

namespace ohmwright {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("Pack", text);
}

QString moreOrLess()
{
    return tr("More modules in parallel, modules of lower resistance, or less load.");
}

constexpr double kFewest = 1;
constexpr double kMost = 10000;

struct Pack
{
    Curve<double, Voltage> openCircuit; // of the whole
    double cells = 0;
    double parallel = 0;
    Charge charge;
    Resistance inner;
};

Voltage underLoad(Voltage openCircuit, Resistance inner, Power power)
{
    return openCircuit - currentAtPower(openCircuit, inner, power).value_or(Current{}) * inner;
}

// ∫√(v² − c) dv
double integral(double v, double c)
{
    const double root = std::sqrt(std::max(v * v - c, 0.0));
    return c > 0 ? 0.5 * (v * root - c * std::log(v + root)) : 0.5 * v * root;
}

// Mean of the voltage under load, (v + √(v² − 4RP))/2, while v runs evenly from one to the other.
double meanUnderLoad(double from, double to, double c)
{
    const double middle = (from + to) / 2;
    // across a step this small the difference of the integrals would be noise, the middle is exact
    if (std::abs(to - from) < 1e-6 * std::abs(middle))
        return (middle + std::sqrt(std::max(middle * middle - c, 0.0))) / 2;
    return (middle + (integral(to, c) - integral(from, c)) / (to - from)) / 2;
}

// The open-circuit voltage below which the load is cut off.
Voltage lowestOpenCircuit(Resistance inner, Power power, Voltage floor)
{
    const Voltage byPower = volts(2 * std::sqrt(inner.si() * power.si()));
    if (floor <= byPower * 0.5)
        return byPower;
    return std::max(byPower, floor + power / floor * inner);
}

// Where a curve that does not fall reaches `voltage` between two of its points.
double chargeAt(const Curve<double, Voltage> &curve, Voltage voltage, double low, double high)
{
    const double rise = curve.at(high).si() - curve.at(low).si();
    return rise <= 0 ? high : low + (high - low) * (voltage.si() - curve.at(low).si()) / rise;
}

// Places of the curve's points between the two, and the two, from high to low.
std::vector<double> placesDown(const Curve<double, Voltage> &curve, double highest, double lowest)
{
    std::vector<double> places{highest};
    for (const auto &point : curve.points())
        if (point.first < highest && point.first > lowest)
            places.push_back(point.first);
    places.push_back(lowest);
    std::ranges::reverse(places.begin() + 1, places.end() - 1);
    return places;
}

bool falls(const Curve<double, Voltage> &curve)
{
    const auto &points = curve.points();
    return std::adjacent_find(points.begin(), points.end(), [](const auto &a, const auto &b) {
               return b.second < a.second;
           }) != points.end();
}

// The curve onto the sheet; told in a word because a curve has no single value.
void takeCurve(Worksheet &sheet, const PackInputs &inputs)
{
    const auto &points = inputs.openCircuit.points();
    Origin origin = inputs.openCircuitFrom;
    if (origin.name.isEmpty())
        origin.name = tr("open-circuit voltage against state of charge");
    if (points.empty())
        return sheet.takeChoice(origin, {});
    sheet.takeChoice(origin,
                     tr("%1 points, %2 to %3")
                         .arg(points.size())
                         .arg(show(points.front().second, u"V"), show(points.back().second, u"V")));
    if (falls(inputs.openCircuit))
        sheet.refuse(tr("The open-circuit voltage cannot fall while the state of charge rises."));
    if (points.front().first < 0 || points.back().first > 1)
        sheet.refuse(tr("A state of charge lies between 0 % and 100 %."));
    if (points.front().second.si() < 0 || !std::isfinite(points.back().second.si()))
        sheet.refuse(tr("An open-circuit voltage cannot be negative."));
}

Pack takePack(Worksheet &sheet, const PackInputs &inputs)
{
    Pack pack;
    const double series = sheet.take(inputs.modulesInSeries, u"nₛ", u"", kFewest, kMost);
    pack.parallel = sheet.take(inputs.modulesInParallel, u"nₚ", u"", kFewest, kMost);
    const double perModule = sheet.take(inputs.cellsInSeriesPerModule, u"c", u"", kFewest, kMost);
    takeCurve(sheet, inputs);
    const Charge charge = sheet.take(inputs.moduleCapacity, u"Q₁", u"Ah", 1e-3);
    const Resistance inner = sheet.take(inputs.moduleResistance, u"R₁", u"mΩ", 0);
    Resistance connections;
    if (inputs.connections)
        connections = sheet.take(*inputs.connections, u"Rᵥ", u"mΩ", 0);
    if (sheet.isIncomplete())
        return pack;

    pack.cells = series * perModule;
    pack.charge = charge * pack.parallel;
    pack.inner = inner * (series / pack.parallel) + connections;
    std::vector<std::pair<double, Voltage>> points = inputs.openCircuit.points();
    for (auto &point : points)
        point.second = point.second * pack.cells;
    pack.openCircuit = Curve<double, Voltage>(std::move(points));

    sheet.step(tr("cells in series"), QStringLiteral("n = nₛ·c"),
               QString(show(series, u"") + QStringLiteral(" · ") + show(perModule, u"")),
               pack.cells, u"");
    sheet.step(tr("capacity"), QStringLiteral("Q = nₚ·Q₁"),
               QString(show(pack.parallel, u"") + QStringLiteral(" · ") + show(charge, u"Ah")),
               pack.charge, u"Ah");
    sheet.step(tr("inner resistance"), QStringLiteral("R = nₛ/nₚ·R₁ + Rᵥ"),
               inputs.connections
                   ? QString(show(series, u"") + QStringLiteral(" / ") + show(pack.parallel, u"") +
                             QStringLiteral(" · ") + show(inner, u"mΩ") + QStringLiteral(" + ") +
                             show(connections, u"mΩ"))
                   : QString(show(series, u"") + QStringLiteral(" / ") + show(pack.parallel, u"") +
                             QStringLiteral(" · ") + show(inner, u"mΩ") +
                             tr(", connections left out")),
               pack.inner, u"mΩ");
    if (inputs.moduleMass) {
        const Mass mass = sheet.take(*inputs.moduleMass, u"m₁", u"kg", 0);
        sheet.step(tr("mass of the modules"), QStringLiteral("m = nₛ·nₚ·m₁"), {},
                   mass * (series * pack.parallel), u"kg");
    }
    return pack;
}

Plot dischargePlot(const Pack &pack, Power load, double highest, const UsableEnergy &usable)
{
    Plot plot;
    plot.title = tr("Pack voltage over discharge");
    plot.xName = tr("energy taken");
    plot.xUnit = QStringLiteral("kWh");
    plot.yName = tr("voltage");
    plot.yUnit = QStringLiteral("V");
    PlotSeries open{tr("open circuit"), {}, false};
    PlotSeries loaded{tr("at %1").arg(show(load, u"kW")), {}, false};
    constexpr int kSteps = 48;
    for (int i = 0; i <= kSteps; ++i) {
        const double place =
            highest + (usable.endsAtCharge - highest) * (static_cast<double>(i) / kSteps);
        const UsableEnergy taken =
            usableEnergy(pack.openCircuit, pack.charge, pack.inner, load, volts(0), highest, place);
        const double x = taken.atTerminals.si() / 3.6e6;
        const Voltage v = pack.openCircuit.at(place);
        open.points.emplace_back(x, v.si());
        loaded.points.emplace_back(x, underLoad(v, pack.inner, load).si());
    }
    plot.series = {std::move(open), std::move(loaded)};
    return plot;
}

struct End
{
    Voltage open, floor; // of the pack, where a drive ends
};

// The highest voltage that something on the pack, or its cells, must not be pulled below.
std::pair<Voltage, QString> leastVoltage(const PackInputs &inputs, Voltage floor)
{
    std::pair<Voltage, QString> least{floor, inputs.cellFloor.origin.name};
    for (const VoltageWindow &window : inputs.windows)
        if (!window.isCharger && window.least.value && *window.least.value > least.first)
            least = {*window.least.value, window.least.origin.name};
    return least;
}

QString decidedBy(const PackInputs &inputs, const MostPower &most, const QString &least)
{
    switch (most.by) {
    case MostPower::Limit::MatchedLoad:
        return tr("half the voltage; no load draws more");
    case MostPower::Limit::LeastVoltage:
        return least;
    case MostPower::Limit::ModuleCurrent:
        return inputs.peak ? inputs.peak->moduleLimit.origin.name
                           : inputs.moduleCurrentLimit.origin.name;
    }
    return {};
}

// Of a drive with the peak: by its limit for seconds; else by the lasting one.
std::optional<Current> packCurrentLimit(const PackInputs &inputs, double parallel)
{
    const Given<Current> &limit =
        inputs.peak ? inputs.peak->moduleLimit : inputs.moduleCurrentLimit;
    return limit.value && limit.value->si() > 0 ? std::optional(*limit.value * parallel)
                                                : std::nullopt;
}

struct ToldMost
{
    MostPower most;
    QString by; // what decides it
};

std::optional<ToldMost> tellMostPower(Worksheet &sheet, const PackInputs &inputs, const Pack &pack,
                                      const QString &what, Voltage open, Voltage floor)
{
    const auto [least, leastName] = leastVoltage(inputs, floor);
    const auto most = mostPower(open, pack.inner, least, packCurrentLimit(inputs, pack.parallel));
    if (!most)
        return std::nullopt;
    ToldMost told{*most, decidedBy(inputs, *most, leastName)};
    QString formula;
    switch (most->by) {
    case MostPower::Limit::MatchedLoad:
        formula = QStringLiteral("Pₘ = V²/(4·R)");
        break;
    case MostPower::Limit::LeastVoltage:
        formula = QStringLiteral("Pₘ = U·(V − U)/R");
        break;
    case MostPower::Limit::ModuleCurrent:
        formula = QStringLiteral("Pₘ = I·(V − I·R)");
        break;
    }
    sheet.step(what, formula, tr("%1 decides").arg(told.by), most->power, u"kW");
    return told;
}

// Above the limit that holds as long it is too much only if it is above one for less time as well;
// in between nobody knows.
void judgePeakOfModule(Worksheet &sheet, const PackInputs &inputs, Current asked, Current limit)
{
    const PackPeak &peak = *inputs.peak;
    const Given<Current> *held = &peak.moduleLimit;
    if (limit < asked && peak.shorter && peak.shorter->value) {
        if (asked <= *peak.shorter->value) {
            if (!peak.lasts || peak.lasts->value) // else that is what is asked for
                sheet.take(peak.longer, u"Îₘ", u"A");
            return;
        }
        held = &*peak.shorter;
    }
    sheet.restsOn(peak.power, held, inputs.modulesInParallel, inputs.openCircuitFrom,
                  inputs.lowestCharge, inputs.moduleResistance, inputs.connections, peak.lasts);
    sheet.atMost(tr("current of a module at peak power"), asked, *held->value, u"A",
                 tr("%1: %2").arg(held->origin.name, spokenOf(held->origin.evidence)));
    sheet.mendedBy(tr("Less peak power set in the controller, or more modules in parallel."));
}

void judgePeak(Worksheet &sheet, const PackInputs &inputs, const Pack &pack, const End &end)
{
    const Power power = sheet.take(inputs.peak->power, u"P̂", u"kW", 0);
    std::optional<Current> most;
    if (inputs.peak->atMost) {
        const Current taken = sheet.take(*inputs.peak->atMost, u"Î", u"A", 0);
        if (isUsable(*inputs.peak->atMost, taken))
            most = taken;
    }
    const Current limit = sheet.take(inputs.peak->moduleLimit, u"Îₘ", u"A", 1e-3);
    if (inputs.peak->lasts)
        sheet.take(*inputs.peak->lasts, u"t̂", u"s", 0);
    if (!isUsable(inputs.peak->power, power))
        return;
    std::optional<Current> current = currentAtPower(end.open, pack.inner, power);
    if (most && (!current || *most < *current))
        current = *most * pack.inner < end.open ? most : std::nullopt;
    if (!current) {
        sheet.atMost(tr("peak power of driving"), power, end.open * end.open / (4 * pack.inner),
                     u"kW", tr("most power of the pack"));
        sheet.mendedBy(tr("Less peak power set in the controller, or more modules."));
        return;
    }
    const Voltage loaded = end.open - *current * pack.inner;
    sheet.step(tr("current at peak power"), QStringLiteral("I = (V − √(V² − 4·R·P))/(2·R)"),
               QString(show(end.open, u"V") + QStringLiteral(", ") + show(pack.inner, u"mΩ") +
                       QStringLiteral(", ") + show(power, u"kW")),
               *current, u"A");
    sheet.step(tr("voltage under load at peak power"), QStringLiteral("V − I·R"),
               QString(show(end.open, u"V") + QStringLiteral(" − ") + show(*current, u"A") +
                       QStringLiteral(" · ") + show(pack.inner, u"mΩ")),
               loaded, u"V");
    if (limit.si() > 0)
        judgePeakOfModule(sheet, inputs, *current / pack.parallel, limit);
    keepAtLeast(sheet, tr("cells at peak power"), loaded, end.floor, u"V",
                inputs.cellFloor.origin.name);
    sheet.mendedBy(tr(
        "Less peak power, a drive that ends at a higher charge, or modules of lower resistance."));
    for (const VoltageWindow &window : inputs.windows) {
        if (window.isCharger || !window.least.value || !std::isfinite(window.least.value->si()))
            continue;
        keepAtLeast(sheet, tr("%1 at peak power").arg(window.name), loaded, *window.least.value,
                    u"V", window.least.origin.name);
        sheet.mendedBy(tr("Less peak power, more modules in series, or a unit that works lower."));
    }
}

void judgeWindows(Worksheet &sheet, const PackInputs &inputs, Voltage full, Voltage start,
                  Voltage emptyLoaded, Voltage emptyOpen)
{
    for (const VoltageWindow &window : inputs.windows) {
        const Voltage least = sheet.take(window.least, u"Uₗ", u"V", 0);
        const Voltage most = sheet.take(window.most, u"Uₕ", u"V", 0);
        const QString top = tr("%1, pack at its highest").arg(window.name);
        const QString bottom = tr("%1, pack at its lowest").arg(window.name);
        const auto from = [](const Given<Voltage> &limit) {
            return tr("%1: %2").arg(limit.origin.name, spokenOf(limit.origin.evidence));
        };
        if (window.most.value && most.si() > 0) {
            const std::vector<const Origin *> ofPack{&inputs.openCircuitFrom,
                                                     &inputs.modulesInSeries.origin,
                                                     &inputs.cellsInSeriesPerModule.origin};
            // a charger has to reach the charge a drive starts with
            if (window.isCharger) {
                keepAtLeast(sheet, top, most, start, u"V", inputs.highestCharge.origin.name,
                            window.most, inputs.highestCharge, ofPack);
                sheet.mendedBy(tr("A charger that reaches higher, or a drive that starts at less "
                                  "charge."));
            }
            if (!window.isCharger) {
                sheet.restsOn(window.most, ofPack);
                sheet.atMost(top, full, most, u"V", from(window.most));
                sheet.mendedBy(tr("Fewer modules in series, or a unit for more voltage."));
            }
        }
        if (isUsable(window.least, least)) {
            sheet.restsOn(window.least, inputs.openCircuitFrom, inputs.lowestCharge, inputs.load,
                          inputs.moduleResistance, inputs.connections);
            sheet.atLeast(bottom, window.isCharger ? emptyOpen : emptyLoaded, least, u"V",
                          from(window.least));
            sheet.mendedBy(tr("More modules in series, a drive that ends at a higher charge, or a "
                              "unit that works lower."));
        }
    }
}

} // namespace

std::optional<Current> currentAtPower(Voltage openCircuit, Resistance inner, Power power)
{
    const double v = openCircuit.si();
    const double root = v * v - 4 * inner.si() * power.si();
    if (root < 0 || v <= 0)
        return std::nullopt;
    // 2P/(V + √…) is the same root without the difference of near equals, and good for R = 0
    return amperes(2 * power.si() / (v + std::sqrt(root)));
}

std::optional<MostPower> mostPower(Voltage openCircuit, Resistance inner, Voltage least,
                                   const std::optional<Current> &atMost)
{
    std::optional<MostPower> most;
    if (inner.si() > 0) {
        const Voltage half = openCircuit / 2;
        const Voltage lowest = std::max(least, half);
        const Current flowing = std::max(Current(), (openCircuit - lowest) / inner);
        most = MostPower{flowing * (openCircuit - flowing * inner), flowing,
                         least > half ? MostPower::Limit::LeastVoltage
                                      : MostPower::Limit::MatchedLoad};
    }
    if (atMost && (!most || *atMost < most->current))
        most = MostPower{*atMost * (openCircuit - *atMost * inner), *atMost,
                         MostPower::Limit::ModuleCurrent};
    return most;
}

UsableEnergy usableEnergy(const Curve<double, Voltage> &openCircuit, Charge charge,
                          Resistance inner, Power power, Voltage floor, double highest,
                          double lowest)
{
    UsableEnergy usable{joules(0), highest, false};
    const Voltage end = lowestOpenCircuit(inner, power, floor);
    const double c = 4 * inner.si() * power.si();
    const std::vector<double> places = placesDown(openCircuit, highest, lowest);
    for (std::size_t i = 0; i + 1 < places.size() && !usable.cutOff; ++i) {
        const double from = places[i];
        double to = places[i + 1];
        if (openCircuit.at(from) < end) {
            usable.cutOff = true;
            break;
        }
        if (openCircuit.at(to) < end) {
            to = chargeAt(openCircuit, end, to, from);
            usable.cutOff = true;
        }
        const double mean = meanUnderLoad(openCircuit.at(from).si(), openCircuit.at(to).si(), c);
        usable.atTerminals += charge * volts(mean) * (from - to);
        usable.endsAtCharge = to;
    }
    return usable;
}

Check judgePack(const PackInputs &inputs)
{
    Worksheet sheet(QStringLiteral("pack"), tr("Pack"), Protects::Pack);
    sheet.about(inputs.pack);
    sheet.caution(QStringLiteral("battery"));
    sheet.afterwards(tr("Then measure every module's voltage before joining it to others, and the "
                        "pack's sag at a known current."));
    const QString source =
        tr("A voltage source with an inner resistance: Nilsson and Riedel, Electric "
           "Circuits");

    const Pack pack = takePack(sheet, inputs);
    const double highest = sheet.take(inputs.highestCharge, u"s₁", u"%", 0, 1);
    const double lowest = sheet.take(inputs.lowestCharge, u"s₂", u"%", 0, 1);
    const Voltage cellFloor = sheet.take(inputs.cellFloor, u"uₘ", u"V", 0, 10);
    const Power load = sheet.take(inputs.load, u"P", u"kW", 1e-3);
    if (!sheet.isIncomplete() && lowest > highest)
        sheet.refuse(tr("The lowest state of charge is above the highest."));
    if (sheet.isIncomplete())
        return sheet.finish(source);
    const auto &points = inputs.openCircuit.points();
    if (points.back().first < 1 || points.front().first > lowest)
        sheet.doubt(tr("The open-circuit curve covers %1 to %2 only; it is taken as level beyond, "
                       "which hides the highest and the lowest voltage.")
                        .arg(show(points.front().first, u"%"), show(points.back().first, u"%")));

    const Voltage full = pack.openCircuit.at(1);
    const Voltage start = pack.openCircuit.at(highest);
    const Voltage floor = cellFloor * pack.cells;
    const UsableEnergy usable =
        usableEnergy(pack.openCircuit, pack.charge, pack.inner, load, floor, highest, lowest);
    const Voltage endOpen = pack.openCircuit.at(usable.endsAtCharge);
    sheet.step(tr("voltage at full charge"), QStringLiteral("V = n·u(1)"),
               QString(show(pack.cells, u"") + QStringLiteral(" · ") +
                       show(inputs.openCircuit.at(1), u"V")),
               full, u"V");
    const std::optional<Current> first = currentAtPower(start, pack.inner, load);
    if (!first) {
        const auto most =
            tellMostPower(sheet, inputs, pack, tr("most power at the start"), start, floor);
        sheet.atMost(tr("load"), load, most ? most->most.power : Power(), u"kW",
                     tr("most power of the pack: %1").arg(most ? most->by : QString()));
        sheet.mendedBy(moreOrLess());
        return sheet.finish(source);
    }
    if (start - *first * pack.inner < floor) {
        sheet.atLeast(tr("voltage under load at the start"), start - *first * pack.inner, floor,
                      u"V", inputs.cellFloor.origin.name);
        sheet.mendedBy(moreOrLess());
        return sheet.finish(source);
    }

    const Current current = currentAtPower(endOpen, pack.inner, load).value_or(*first);
    const Voltage endLoaded = endOpen - current * pack.inner;
    const auto most =
        tellMostPower(sheet, inputs, pack, tr("most power at the end"), endOpen, floor);
    sheet.step(tr("voltage at the end, no load"), QStringLiteral("V"),
               tr("at a state of charge of %1").arg(show(usable.endsAtCharge, u"%")), endOpen,
               u"V");
    sheet.step(tr("current at the end"), QStringLiteral("I = (V − √(V² − 4·R·P))/(2·R)"),
               QString(show(endOpen, u"V") + QStringLiteral(", ") + show(pack.inner, u"mΩ") +
                       QStringLiteral(", ") + show(load, u"kW")),
               current, u"A");
    sheet.step(tr("sag at the end"), QStringLiteral("ΔV = I·R"),
               QString(show(current, u"A") + QStringLiteral(" · ") + show(pack.inner, u"mΩ")),
               current * pack.inner, u"V");
    sheet.step(tr("voltage under load at the end"), QStringLiteral("V − ΔV"), {}, endLoaded, u"V");
    sheet.step(tr("heat at the end"), QStringLiteral("I²·R"), {}, current * current * pack.inner,
               u"W");
    sheet.stepText(
        tr("usable energy"), QStringLiteral("E = Q·∫(V − I·R) ds"),
        usable.cutOff
            ? tr("cut off by the floor or the power at %1").arg(show(usable.endsAtCharge, u"%"))
            : tr("from %1 to %2").arg(show(highest, u"%"), show(lowest, u"%")),
        show(usable.atTerminals, u"kWh"));
    sheet.plot(dischargePlot(pack, load, highest, usable));

    const Current limit = sheet.take(inputs.moduleCurrentLimit, u"Iₘ", u"A", 1e-3);
    if (limit.si() > 0) {
        sheet.restsOn(inputs.load, inputs.moduleCurrentLimit, inputs.modulesInParallel,
                      inputs.openCircuitFrom, inputs.lowestCharge, inputs.moduleResistance,
                      inputs.connections);
        sheet.atMost(tr("current of a module"), current / pack.parallel, limit, u"A",
                     tr("%1: %2").arg(inputs.moduleCurrentLimit.origin.name,
                                      spokenOf(inputs.moduleCurrentLimit.origin.evidence)));
        sheet.mendedBy(tr("Less load, or more modules in parallel."));
    }
    if (inputs.peak)
        judgePeak(sheet, inputs, pack, {endOpen, floor});
    if (inputs.neededEnergy) {
        const Energy needed = sheet.take(*inputs.neededEnergy, u"Eₙ", u"kWh", 0);
        if (needed.si() > 0) {
            sheet.restsOn(inputs.neededEnergy, inputs.moduleCapacity, inputs.openCircuitFrom,
                          inputs.lowestCharge, inputs.highestCharge, inputs.load,
                          inputs.moduleResistance, inputs.connections);
            sheet.atLeast(tr("usable energy"), usable.atTerminals, needed, u"kWh",
                          inputs.neededEnergy->origin.name);
            sheet.mendedBy(tr("More modules, or a drive that needs less."));
        }
    }
    judgeWindows(sheet, inputs, full, start, endLoaded, endOpen);
    const QString figures =
        tr("%1 full, %2 under load at the end; %3 usable, %4 and %5 of heat then")
            .arg(show(full, u"V"), show(endLoaded, u"V"), show(usable.atTerminals, u"kWh"),
                 show(current, u"A"), show(current * current * pack.inner, u"W"));
    sheet.result(
        most
            ? tr("%1; at most %2 then, by %3").arg(figures, show(most->most.power, u"kW"), most->by)
            : figures);
    return sheet.finish(source);
}

} // namespace ohmwright
