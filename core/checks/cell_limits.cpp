// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/cell_limits.h"

#include "core/checks/pack.h"
#include "core/checks/taken.h"
#include "core/checks/usable.h"

#include <QCoreApplication>

#include <algorithm>
#include <array>

namespace ohmwright {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("CellLimits", text);
}

constexpr double kColdest = 173.15; // −100 °C
constexpr double kHottest = 423.15; // 150 °C

QString from(const Origin &origin)
{
    return tr("%1: %2").arg(origin.name, spokenOf(origin.evidence));
}

struct Cells
{
    double series = 0;
    double parallel = 0;
    Voltage most, least;
    Origin parallelFrom;
};

struct Range
{
    Temperature coldest, hottest;
    bool known = false;
    std::vector<const Origin *> from;
};

Range takeRange(Worksheet &sheet, const Given<Temperature> &coldest, QStringView coldestSymbol,
                const Given<Temperature> &hottest, QStringView hottestSymbol)
{
    Range range;
    range.from = {&coldest.origin, &hottest.origin};
    range.coldest = sheet.take(coldest, coldestSymbol, u"°C", kColdest, kHottest);
    range.hottest = sheet.take(hottest, hottestSymbol, u"°C", kColdest, kHottest);
    range.known = isUsable(coldest, range.coldest) && isUsable(hottest, range.hottest);
    if (range.known && range.hottest < range.coldest) {
        sheet.refuse(tr("%1 is above %2.").arg(coldest.origin.name, hottest.origin.name));
        range.known = false;
    }
    return range;
}

LimitByTemperature takeLimit(Worksheet &sheet, LimitByTemperature limit, const QString &name)
{
    if (limit.origin.name.isEmpty())
        limit.origin.name = name;
    const auto &points = limit.curve.points();
    if (points.empty()) {
        sheet.takeChoice(limit.origin, {});
        return limit;
    }
    sheet.takeChoice(limit.origin,
                     tr("%1 points, %2 to %3")
                         .arg(points.size())
                         .arg(show(points.front().first, u"°C"), show(points.back().first, u"°C")));
    const bool negative = std::any_of(points.begin(), points.end(),
                                      [](const auto &point) { return point.second.si() < 0; });
    if (negative) {
        sheet.refuse(tr("%1 cannot be negative.").arg(limit.origin.name));
        limit.curve = {};
    }
    return limit;
}

bool covers(const LimitByTemperature &limit, Temperature temperature)
{
    const auto &points = limit.curve.points();
    return !points.empty() && points.front().first <= temperature &&
           temperature <= points.back().first;
}

void doubtBeyond(Worksheet &sheet, const LimitByTemperature &limit, const Range &range)
{
    const auto &points = limit.curve.points();
    if (!covers(limit, range.coldest) || !covers(limit, range.hottest))
        sheet.doubt(tr("%1 is known from %2 to %3 only, not for %4 to %5.")
                        .arg(limit.origin.name, show(points.front().first, u"°C"),
                             show(points.back().first, u"°C"), show(range.coldest, u"°C"),
                             show(range.hottest, u"°C")));
}

QString lessPower()
{
    return tr("Less power while the pack is cold, set in the controller, more cells in parallel, "
              "or the maker's limit for seconds at that temperature.");
}

void judgeCurrent(Worksheet &sheet, const QString &what, Current ofCell, const Range &range,
                  const LimitByTemperature &limit, const std::vector<const Origin *> &ofCellFrom,
                  const QString &mend)
{
    const auto &points = limit.curve.points();
    if (points.empty() || !range.known)
        return;
    doubtBeyond(sheet, limit, range);
    // level beyond the ends: what the nearest known temperature forbids is forbidden there too
    const Current lowest = lowestBetween(limit.curve, range.coldest, range.hottest);
    sheet.step(tr("lowest limit, %1").arg(what), limit.origin.name,
               tr("%1 to %2").arg(show(range.coldest, u"°C"), show(range.hottest, u"°C")), lowest,
               u"A");
    sheet.restsOn(ofCellFrom, range.from, limit);
    sheet.atMost(what, ofCell, lowest, u"A", from(limit.origin));
    sheet.mendedBy(mend);
}

void judgeVoltages(Worksheet &sheet, const CellLimitsInputs &inputs, const Cells &cells)
{
    const Voltage chargeEnd = sheet.take(inputs.chargeEnd, u"U₁", u"V", 0);
    const Voltage dischargeEnd = sheet.take(inputs.dischargeEnd, u"U₂", u"V", 0);
    if (cells.series < 1)
        return;
    if (isUsable(inputs.chargeEnd, chargeEnd) && cells.most.si() > 0) {
        sheet.step(tr("cell at the end of charging"), QStringLiteral("u = U₁/n"),
                   QString(show(chargeEnd, u"V") + QStringLiteral(" / ") + show(cells.series, u"")),
                   chargeEnd / cells.series, u"V");
        keepAtMost(sheet, tr("cell at the end of charging, if all are alike"),
                   chargeEnd / cells.series, cells.most, u"V", from(inputs.cellMost.origin),
                   inputs.chargeEnd, inputs.cellMost, inputs.cellsInSeries);
        sheet.mendedBy(tr("A lower end of charging."));
    }
    if (isUsable(inputs.dischargeEnd, dischargeEnd) && isUsable(inputs.cellLeast, cells.least)) {
        sheet.step(
            tr("cell at the end of driving"), QStringLiteral("u = U₂/n"),
            QString(show(dischargeEnd, u"V") + QStringLiteral(" / ") + show(cells.series, u"")),
            dischargeEnd / cells.series, u"V");
        keepAtLeast(sheet, tr("cell at the end of driving, if all are alike"),
                    dischargeEnd / cells.series, cells.least, u"V", from(inputs.cellLeast.origin),
                    inputs.dischargeEnd, inputs.cellLeast, inputs.cellsInSeries);
        sheet.mendedBy(tr("A higher end of driving, set where the pack is cut off."));
    }
}

void judgeFrost(Worksheet &sheet, const CellLimitsInputs &inputs, const Range &charging,
                const LimitByTemperature &limit)
{
    const Threshold<Temperature> &floor = inputs.chargeFloor;
    const Temperature highest = std::max(floor.published, floor.inForce());
    if (!charging.known || charging.coldest >= highest)
        return;
    if (covers(limit, charging.coldest) && !floor.own) {
        sheet.stepText(tr("charging below freezing"), {}, show(charging.coldest, u"°C"),
                       tr("by the maker's curve"));
        return;
    }
    sheet.restsOn(inputs.coldestCharging);
    sheet.within(tr("coldest charging"), charging.coldest, floor, u"°C");
    sheet.mendedBy(tr("Warming the pack before it is charged."));
}

struct DrawnNames
{
    QString power, current, cell; // "peak power", "current of the pack at …", "current of a cell …"
    QString powerSymbol, currentSymbol, mostSymbol;
};

// A power as it was taken; none: not known.
struct Drawn
{
    const DrawnPower *told = nullptr;
    DrawnNames names;
    std::optional<Power> power;
    std::optional<Current> most;
    bool isPeak = false;
};

Drawn takeDrawn(Worksheet &sheet, const DrawnPower &drawn, DrawnNames names, bool isPeak)
{
    Drawn taken{&drawn, std::move(names), {}, {}, isPeak};
    const Power power = sheet.take(drawn.power, taken.names.powerSymbol, u"kW", 0);
    if (isUsable(drawn.power, power))
        taken.power = power;
    if (drawn.atMost) {
        const Current most = sheet.take(*drawn.atMost, taken.names.mostSymbol, u"A", 0);
        if (isUsable(*drawn.atMost, most))
            taken.most = most;
    }
    return taken;
}

// The pack as it is then.
struct Source
{
    Voltage open;
    Resistance inner;
};

// None where it is not known, or not to be had from the pack, which is then told.
std::optional<Current> drawnCurrent(Worksheet &sheet, const Drawn &drawn, const Source &source,
                                    const std::optional<Power> &heldTo, const QString &where)
{
    const auto &[open, inner] = source;
    if (!drawn.power || open.si() <= 0)
        return std::nullopt;
    const Power asked = heldTo ? std::min(*drawn.power, *heldTo) : *drawn.power;
    std::optional<Current> current = currentAtPower(open, inner, asked);
    if (!current && drawn.most && *drawn.most * inner < open)
        current = drawn.most; // it takes no more, and so much can be had
    if (!current) {
        sheet.atMost(tr("%1, %2").arg(drawn.names.power, where), asked, open * open / (4 * inner),
                     u"kW", tr("most power of the cold pack"));
        sheet.mendedBy(lessPower());
        return std::nullopt;
    }
    const bool held = drawn.most && *drawn.most < *current;
    sheet.step(tr("%1, %2").arg(drawn.names.current, where),
               QString(drawn.names.currentSymbol + QStringLiteral(" = (V − √(V² − 4·R·") +
                       drawn.names.powerSymbol + QStringLiteral("))/(2·R)")),
               held ? tr("no more than %1").arg(drawn.told->atMost->origin.name)
                    : QString(show(open, u"V") + QStringLiteral(", ") + show(inner, u"mΩ") +
                              QStringLiteral(", ") + show(asked, u"kW")),
               held ? *drawn.most : *current, u"A");
    return held ? *drawn.most : *current;
}

// A temperature at which the drive is judged.
struct Place
{
    QString where; // "coldest"
    Temperature at;
    bool isHeld = false; // by the controller, to the power for a cold pack
    std::vector<const Origin *> from;
};

// The coldest; where the controller lets go; the hottest.
std::vector<Place> placesOf(Worksheet &sheet, const ColdDrive &drive, const Range &driving,
                            bool isHeld)
{
    std::optional<Temperature> below;
    if (drive.heldTo) {
        const Temperature taken = sheet.take(drive.heldBelow, u"θ_c", u"°C", kColdest, kHottest);
        if (isUsable(drive.heldBelow, taken))
            below = taken;
    }
    if (!driving.known)
        return {};
    const auto holdsAt = [&](Temperature at) {
        return isHeld && below && at < *below;
    };
    const Origin *coldest = driving.from.front();
    std::vector<Place> places{{tr("coldest"),
                               driving.coldest,
                               isHeld && (!below || holdsAt(driving.coldest)),
                               {coldest}}};
    if (holdsAt(driving.coldest) && *below <= driving.hottest)
        places.push_back({tr("held no more"), *below, false, {&drive.heldBelow.origin}});
    if (driving.coldest < driving.hottest)
        places.push_back(
            {tr("hottest"), driving.hottest, holdsAt(driving.hottest), {driving.from.back()}});
    return places;
}

void judgeColdDrive(Worksheet &sheet, const ColdDrive &drive, const Cells &cells,
                    const Range &driving, const LimitByTemperature &limit)
{
    const Voltage open = sheet.take(drive.openCircuit, u"V", u"V", 0);
    const Resistance inner = sheet.take(drive.inner, u"R", u"mΩ", 0);
    std::optional<Power> heldTo;
    if (drive.heldTo) {
        const Power taken = sheet.take(*drive.heldTo, u"P_c", u"kW", 0);
        if (isUsable(*drive.heldTo, taken))
            heldTo = taken;
    }
    const auto takePeak = [&sheet](const std::optional<Given<Current>> &peak, QStringView symbol) {
        const Current taken = peak ? sheet.take(*peak, symbol, u"A", 0) : Current();
        return peak && isUsable(*peak, taken) ? std::optional(taken) : std::nullopt;
    };
    const std::optional<Current> coldPeak = takePeak(drive.cellPeak, u"i_c");
    const std::optional<Current> warmPeak = takePeak(drive.warmCellPeak, u"i_w");
    const std::vector<Place> places = placesOf(sheet, drive, driving, heldTo.has_value());
    const bool known = isUsable(drive.openCircuit, open) && isUsable(drive.inner, inner);
    const Source source{known ? open : Voltage(), inner};

    const auto judgeAt = [&](const Drawn &drawn, const Place &place, Current ofPack) {
        // what it is held to decides, not what more it could draw
        const bool isHeld = place.isHeld && drawn.power && *heldTo < *drawn.power;
        const std::vector<const Origin *> drawnFrom{
            isHeld ? &drive.heldTo->origin : &drawn.told->power.origin, &drive.openCircuit.origin,
            &cells.parallelFrom, &drive.inner.origin};
        const Current ofCell = ofPack / cells.parallel;
        const QString what = tr("%1, %2").arg(drawn.names.cell, place.where);
        const bool isColdest = place.at == driving.coldest;
        const std::optional<Given<Current>> &told = isColdest ? drive.cellPeak : drive.warmCellPeak;
        if (drawn.isPeak && told) {
            if (const auto &peak = isColdest ? coldPeak : warmPeak) {
                sheet.restsOn(drawnFrom, *told);
                sheet.atMost(what, ofCell, *peak, u"A", from(told->origin));
                sheet.mendedBy(lessPower());
            }
        } else if (!limit.curve.isEmpty()) {
            if (!covers(limit, place.at))
                doubtBeyond(sheet, limit, driving);
            sheet.restsOn(drawnFrom, place.from, limit);
            sheet.atMost(what, ofCell, limit.curve.at(place.at), u"A",
                         tr("%1, at %2").arg(from(limit.origin), show(place.at, u"°C")));
            sheet.mendedBy(lessPower());
        }
    };
    const auto judge = [&](const Drawn &drawn) {
        std::array<std::optional<Current>, 2> worked; // unheld, held: alike wherever it is
        std::array<bool, 2> isWorked{};
        for (const Place &place : places) {
            const std::size_t held = place.isHeld ? 1 : 0;
            if (!isWorked[held])
                worked[held] =
                    drawnCurrent(sheet, drawn, source,
                                 place.isHeld ? heldTo : std::optional<Power>(), place.where);
            isWorked[held] = true;
            if (worked[held] && cells.parallel >= 1)
                judgeAt(drawn, place, *worked[held]);
        }
    };
    judge(takeDrawn(sheet, drive.peak,
                    {tr("peak power of driving"), tr("current of the pack at peak power"),
                     tr("current of a cell at peak power"), QStringLiteral("P̂"),
                     QStringLiteral("Î"), QStringLiteral("Î_m")},
                    true));
    if (drive.continuous)
        judge(takeDrawn(sheet, *drive.continuous,
                        {tr("continuous power of driving"),
                         tr("current of the pack at continuous power"),
                         tr("current of a cell at continuous power"), QStringLiteral("P"),
                         QStringLiteral("I"), QStringLiteral("I_m")},
                        false));
}

void judgeRegeneration(Worksheet &sheet, const CellLimitsInputs &inputs, const Cells &cells,
                       const Range &driving, const LimitByTemperature &chargeLimit)
{
    const Regeneration &braking = *inputs.regeneration;
    const Current current = sheet.take(braking.current, u"I_r", u"A", 0);
    const Voltage open = sheet.take(braking.cellVoltage, u"u₀", u"V", 0, 10);
    const Resistance inner = sheet.take(braking.cellResistance, u"r", u"mΩ", 0);
    const LimitByTemperature limit =
        braking.limit ? takeLimit(sheet, *braking.limit, tr("limit for braking, of a cell"))
                      : chargeLimit;
    if (braking.toldTwice) {
        sheet.take(braking.toldTwice->power, u"P_r", u"kW", 0);
        doubtIfSetTwice(sheet, *braking.toldTwice);
    }
    if (!isUsable(braking.current, current) || cells.parallel < 1)
        return;
    const Current ofCell = current / cells.parallel;
    judgeCurrent(sheet, tr("current of a cell when braking"), ofCell, driving, limit,
                 {&braking.current.origin, &inputs.cellsInParallel.origin},
                 tr("Less braking by the motor, or none into a cold or full pack."));
    if (isUsable(braking.cellVoltage, open) && isUsable(braking.cellResistance, inner) &&
        cells.most.si() > 0) {
        const Voltage reached = open + ofCell * inner;
        sheet.step(tr("cell when braking with a full pack"), QStringLiteral("u = u₀ + I_r/p·r"),
                   QString(show(open, u"V") + QStringLiteral(" + ") + show(ofCell, u"A") +
                           QStringLiteral(" · ") + show(inner, u"mΩ")),
                   reached, u"V");
        sheet.restsOn(braking.cellVoltage, inputs.cellMost, braking.current, braking.cellResistance,
                      inputs.cellsInParallel);
        sheet.atMost(tr("cell when braking with a full pack"), reached, cells.most, u"V",
                     from(inputs.cellMost.origin));
        sheet.mendedBy(tr("Less braking by the motor, or none into a cold or full pack."));
    }
}

void judgeChannels(Worksheet &sheet, const CellLimitsInputs &inputs, double series)
{
    const double channels = sheet.take(inputs.channels, u"k", u"", 0);
    if (!isUsable(inputs.channels, channels) || series < 1)
        return;
    // as many as cells is as good as more: a margin would tell nothing
    if (channels < series) {
        sheet.restsOn(inputs.channels, inputs.cellsInSeries);
        sheet.atLeast(tr("management channels"), channels, series, u"", tr("cells in series"));
        sheet.mendedBy(tr("Management with a channel for each cell in series."));
    } else {
        sheet.stepText(tr("management channels"), QStringLiteral("k ≥ n"),
                       QString(show(channels, u"") + QStringLiteral(", ") + show(series, u"")),
                       tr("one for each"));
    }
}

} // namespace

Current lowestBetween(const Curve<Temperature, Current> &curve, Temperature from, Temperature to)
{
    Current lowest = std::min(curve.at(from), curve.at(to));
    for (const auto &[temperature, current] : curve.points()) {
        if (from < temperature && temperature < to)
            lowest = std::min(lowest, current);
    }
    return lowest;
}

Check judgeCellLimits(const CellLimitsInputs &inputs)
{
    Worksheet sheet(QStringLiteral("cell_limits"), tr("Limits of the cells"), Protects::Pack);
    sheet.about(inputs.pack);
    sheet.caution(QStringLiteral("battery"));
    sheet.afterwards(tr("Then measure every cell's voltage full, empty and under load, and the "
                        "warmest and coldest cell's temperature: the management watches only what "
                        "it is wired to."));
    const QString source = tr("The cell maker's limits; below freezing: common practice, no "
                              "published source");

    Cells cells;
    cells.series = sheet.take(inputs.cellsInSeries, u"n", u"", 1, 10000);
    cells.parallel = sheet.take(inputs.cellsInParallel, u"p", u"", 1, 10000);
    cells.parallelFrom = inputs.cellsInParallel.origin;
    cells.most = sheet.take(inputs.cellMost, u"u_max", u"V", 1e-3, 10);
    cells.least = sheet.take(inputs.cellLeast, u"u_min", u"V", 0, 10);
    if (cells.most.si() > 0 && cells.most < cells.least)
        sheet.refuse(tr("The lowest voltage of a cell is above its highest."));
    judgeVoltages(sheet, inputs, cells);

    const LimitByTemperature chargeLimit =
        takeLimit(sheet, inputs.chargeLimit, tr("limit for charging, of a cell"));
    const LimitByTemperature dischargeLimit =
        takeLimit(sheet, inputs.dischargeLimit, tr("limit for driving, of a cell"));
    const Current charge = sheet.take(inputs.chargeCurrent, u"I₁", u"A", 0);
    const Current discharge = sheet.take(inputs.dischargeCurrent, u"I₂", u"A", 0);
    const Range charging =
        takeRange(sheet, inputs.coldestCharging, u"θ₁", inputs.hottestCharging, u"θ₂");
    const Range driving =
        takeRange(sheet, inputs.coldestDriving, u"θ₃", inputs.hottestDriving, u"θ₄");
    if (cells.parallel >= 1) {
        if (isUsable(inputs.chargeCurrent, charge))
            judgeCurrent(sheet, tr("current of a cell when charging"), charge / cells.parallel,
                         charging, chargeLimit,
                         {&inputs.chargeCurrent.origin, &inputs.cellsInParallel.origin},
                         tr("Less charging current in the cold, or warming the pack first."));
        if (isUsable(inputs.dischargeCurrent, discharge))
            judgeCurrent(sheet, tr("current of a cell when driving"), discharge / cells.parallel,
                         driving, dischargeLimit,
                         {&inputs.dischargeCurrent.origin, &inputs.cellsInParallel.origin},
                         lessPower());
    }
    if (inputs.drive)
        judgeColdDrive(sheet, *inputs.drive, cells, driving, dischargeLimit);
    judgeFrost(sheet, inputs, charging, chargeLimit);
    if (inputs.regeneration)
        judgeRegeneration(sheet, inputs, cells, driving, chargeLimit);
    judgeChannels(sheet, inputs, cells.series);

    if (cells.series >= 1 && cells.parallel >= 1)
        sheet.result(tr("%1 in series, %2 in parallel; charging %3 a cell, driving %4 a cell")
                         .arg(show(cells.series, u""), show(cells.parallel, u""),
                              show(charge / cells.parallel, u"A"),
                              show(discharge / cells.parallel, u"A")));
    return sheet.finish(source);
}

} // namespace ohmwright
