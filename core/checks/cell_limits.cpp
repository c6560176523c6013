// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/cell_limits.h"

#include "core/checks/usable.h"
#include "core/checks/worksheet.h"

#include <QCoreApplication>

#include <algorithm>

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
};

struct Range
{
    Temperature coldest, hottest;
    bool known = false;
};

Range takeRange(Worksheet &sheet, const Given<Temperature> &coldest,
                const Given<Temperature> &hottest)
{
    Range range;
    range.coldest = sheet.take(coldest, u"θ₁", u"°C", kColdest, kHottest);
    range.hottest = sheet.take(hottest, u"θ₂", u"°C", kColdest, kHottest);
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

void judgeCurrent(Worksheet &sheet, const QString &what, Current ofCell, const Range &range,
                  const LimitByTemperature &limit)
{
    const auto &points = limit.curve.points();
    if (points.empty() || !range.known)
        return;
    if (!covers(limit, range.coldest) || !covers(limit, range.hottest))
        sheet.doubt(tr("%1 is known from %2 to %3 only, not for %4 to %5.")
                        .arg(limit.origin.name, show(points.front().first, u"°C"),
                             show(points.back().first, u"°C"), show(range.coldest, u"°C"),
                             show(range.hottest, u"°C")));
    // level beyond the ends: what the nearest known temperature forbids is forbidden there too
    const Current lowest = lowestBetween(limit.curve, range.coldest, range.hottest);
    sheet.step(tr("lowest limit, %1").arg(what), limit.origin.name,
               tr("%1 to %2").arg(show(range.coldest, u"°C"), show(range.hottest, u"°C")), lowest,
               u"A");
    sheet.atMost(what, ofCell, lowest, u"A", from(limit.origin));
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
        sheet.atMost(tr("cell at the end of charging, if all are alike"), chargeEnd / cells.series,
                     cells.most, u"V", from(inputs.cellMost.origin));
    }
    if (isUsable(inputs.dischargeEnd, dischargeEnd) && isUsable(inputs.cellLeast, cells.least)) {
        sheet.step(
            tr("cell at the end of driving"), QStringLiteral("u = U₂/n"),
            QString(show(dischargeEnd, u"V") + QStringLiteral(" / ") + show(cells.series, u"")),
            dischargeEnd / cells.series, u"V");
        sheet.atLeast(tr("cell at the end of driving, if all are alike"),
                      dischargeEnd / cells.series, cells.least, u"V",
                      from(inputs.cellLeast.origin));
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
    sheet.within(tr("coldest charging"), charging.coldest, floor, u"°C");
}

void judgeRegeneration(Worksheet &sheet, const CellLimitsInputs &inputs, const Cells &cells,
                       const Range &driving, const LimitByTemperature &chargeLimit)
{
    const Regeneration &braking = *inputs.regeneration;
    const Current current = sheet.take(braking.current, u"I_r", u"A", 0);
    const Voltage open = sheet.take(braking.cellVoltage, u"u₀", u"V", 0, 10);
    const Resistance inner = sheet.take(braking.cellResistance, u"R", u"mΩ", 0);
    const LimitByTemperature limit =
        braking.limit ? takeLimit(sheet, *braking.limit, tr("limit for braking, of a cell"))
                      : chargeLimit;
    if (!isUsable(braking.current, current) || cells.parallel < 1)
        return;
    const Current ofCell = current / cells.parallel;
    judgeCurrent(sheet, tr("current of a cell when braking"), ofCell, driving, limit);
    if (isUsable(braking.cellVoltage, open) && isUsable(braking.cellResistance, inner) &&
        cells.most.si() > 0) {
        const Voltage reached = open + ofCell * inner;
        sheet.step(tr("cell when braking with a full pack"), QStringLiteral("u = u₀ + I/p·R"),
                   QString(show(open, u"V") + QStringLiteral(" + ") + show(ofCell, u"A") +
                           QStringLiteral(" · ") + show(inner, u"mΩ")),
                   reached, u"V");
        sheet.atMost(tr("cell when braking with a full pack"), reached, cells.most, u"V",
                     from(inputs.cellMost.origin));
    }
}

void judgeChannels(Worksheet &sheet, const CellLimitsInputs &inputs, double series)
{
    const double channels = sheet.take(inputs.channels, u"k", u"", 0);
    if (!isUsable(inputs.channels, channels) || series < 1)
        return;
    // as many as cells is as good as more: a margin would tell nothing
    if (channels < series)
        sheet.atLeast(tr("management channels"), channels, series, u"", tr("cells in series"));
    else
        sheet.stepText(tr("management channels"), QStringLiteral("k ≥ n"),
                       QString(show(channels, u"") + QStringLiteral(", ") + show(series, u"")),
                       tr("one for each"));
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
    const Range charging = takeRange(sheet, inputs.coldestCharging, inputs.hottestCharging);
    const Range driving = takeRange(sheet, inputs.coldestDriving, inputs.hottestDriving);
    if (cells.parallel >= 1) {
        if (isUsable(inputs.chargeCurrent, charge))
            judgeCurrent(sheet, tr("current of a cell when charging"), charge / cells.parallel,
                         charging, chargeLimit);
        if (isUsable(inputs.dischargeCurrent, discharge))
            judgeCurrent(sheet, tr("current of a cell when driving"), discharge / cells.parallel,
                         driving, dischargeLimit);
    }
    judgeFrost(sheet, inputs, charging, chargeLimit);
    if (inputs.regeneration)
        judgeRegeneration(sheet, inputs, cells, driving, chargeLimit);
    judgeChannels(sheet, inputs, cells.series);

    sheet.turnedBy(tr("A lower end of charging, less current in the cold, warming the pack before "
                      "charging, no braking into a full or cold pack, or more channels."));
    if (cells.series >= 1 && cells.parallel >= 1)
        sheet.result(tr("%1 in series, %2 in parallel; charging %3 a cell, driving %4 a cell")
                         .arg(show(cells.series, u""), show(cells.parallel, u""),
                              show(charge / cells.parallel, u"A"),
                              show(discharge / cells.parallel, u"A")));
    return sheet.finish(source);
}

} // namespace ohmwright
