// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/ampacity.h"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>
#include <iterator>

namespace ohmwright {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("Ampacity", text);
}

constexpr Temperature kColdest = celsius(10);

AmpacityTable tableFor(QString name, Installation installation, double conductor, double hottest,
                       std::initializer_list<std::pair<double, double>> rows)
{
    AmpacityTable table;
    table.name = std::move(name);
    table.installation = installation;
    table.conductor = celsius(conductor);
    table.ambient = celsius(30);
    table.hottest = celsius(hottest);
    for (const auto &[mm2, a] : rows)
        table.rows.emplace_back(Area::fromSi(mm2 * 1e-6), amperes(a));
    // IEC 60364-5-52, table B.52.17, item 1: bunched in air, on a surface, embedded or enclosed
    table.groupFactors = {{1, 1.00}, {2, 0.80}, {3, 0.70}, {4, 0.65},  {5, 0.60},  {6, 0.57},
                          {7, 0.54}, {8, 0.52}, {9, 0.50}, {12, 0.45}, {16, 0.41}, {20, 0.38}};
    return table;
}

// Why the table does not answer for these conditions; empty when it does.
QString whyNot(const AmpacityTable &table, ConductorMaterial material, Installation installation,
               Temperature ambient, Temperature insulation, double bunched)
{
    if (material != table.material)
        return tr("it is for %1").arg(wordOf(table.material));
    if (installation != table.installation)
        return tr("it is for cables %1").arg(wordOf(table.installation));
    if (insulation < table.conductor)
        return tr("its currents warm the conductor to %1, more than the insulation stands")
            .arg(show(table.conductor, u"°C"));
    if (table.hottest < ambient)
        return tr("it ends at an ambient of %1").arg(show(table.hottest, u"°C"));
    if (!groupFactor(table, bunched))
        return tr("it ends at %1 bunched circuits").arg(table.groupFactors.back().first);
    return {};
}

} // namespace

std::vector<AmpacityTable> ampacityTables()
{
    return {tableFor(QStringLiteral("IEC 60364-5-52, table B.52.10, method G"),
                     Installation::FreeAir, 70, 60,
                     {{4, 46},
                      {6, 59},
                      {10, 80},
                      {16, 108},
                      {25, 146},
                      {35, 181},
                      {50, 219},
                      {70, 281},
                      {95, 341},
                      {120, 396}}),
            tableFor(QStringLiteral("IEC 60364-5-52, table B.52.4, method B2"),
                     Installation::InConduit, 70, 60,
                     {{1.5, 15},
                      {2.5, 20},
                      {4, 27},
                      {6, 34},
                      {10, 46},
                      {16, 62},
                      {25, 80},
                      {35, 99},
                      {50, 118},
                      {70, 149},
                      {95, 179},
                      {120, 206}}),
            tableFor(QStringLiteral("EN 50355, single-core cable in free air"),
                     Installation::FreeAir, 90, 80,
                     {{1.5, 29},
                      {2.5, 38},
                      {4, 53},
                      {6, 69},
                      {10, 98},
                      {16, 127},
                      {25, 173},
                      {35, 219},
                      {50, 276},
                      {70, 345},
                      {95, 414},
                      {120, 489},
                      {150, 564},
                      {185, 644},
                      {240, 776}})};
}

double ambientFactor(const AmpacityTable &table, Temperature ambient)
{
    const Temperature counted = std::max(ambient, kColdest);
    const double left = (table.conductor - counted) / (table.conductor - table.ambient);
    return left > 0 ? std::sqrt(left) : 0;
}

std::optional<double> groupFactor(const AmpacityTable &table, double circuits)
{
    const auto found =
        std::find_if(table.groupFactors.begin(), table.groupFactors.end(),
                     [&](const std::pair<int, double> &row) { return row.first >= circuits; });
    return found == table.groupFactors.end() ? std::nullopt : std::optional(found->second);
}

std::optional<Current> tabulated(const AmpacityTable &table, Area area)
{
    constexpr double kSameSize = 0.005;
    const auto &rows = table.rows;
    if (rows.empty() || area < rows.front().first * (1 - kSameSize) ||
        rows.back().first * (1 + kSameSize) < area)
        return std::nullopt;
    for (const auto &[size, current] : rows) {
        if (std::abs(area / size - 1) <= kSameSize)
            return current;
    }
    const auto above =
        std::find_if(rows.begin(), rows.end(), [&](const auto &row) { return area < row.first; });
    const auto below = std::prev(above);
    const double share = std::log(area / below->first) / std::log(above->first / below->first);
    return below->second * std::pow(above->second / below->second, share);
}

std::optional<Current> takeAmpacity(Worksheet &sheet, const AmpacityConditions &conditions,
                                    const AmpacityTable &table)
{
    const auto material = takeChosen(sheet, conditions.material);
    const Area area = sheet.take(conditions.area, u"S", u"mm²", 1e-9);
    const Temperature ambient = sheet.take(conditions.ambient, u"θₐ", u"°C", 173.15, 473.15);
    const auto installation = takeChosen(sheet, conditions.installation);
    const double bunched = sheet.take(conditions.bunched, u"n", u"", 1, 1000);
    const Temperature insulation = sheet.take(conditions.insulation, u"θᵢ", u"°C", 273.15, 1273.15);
    if (sheet.isIncomplete())
        return std::nullopt;
    const QString reason = whyNot(table, *material, *installation, ambient, insulation, bunched);
    if (!reason.isEmpty()) {
        sheet.doubt(tr("The table does not apply (%1): %2.").arg(table.name, reason));
        return std::nullopt;
    }
    const std::optional<Current> listed = tabulated(table, area);
    if (!listed) {
        sheet.doubt(tr("The table does not apply (%1): it has no size of %2.")
                        .arg(table.name, show(area, u"mm²")));
        return std::nullopt;
    }
    const double byAmbient = ambientFactor(table, ambient);
    const double byGroup = *groupFactor(table, bunched);
    const Current capacity = *listed * (byAmbient * byGroup);
    sheet.step(tr("capacity of the table"), table.name, show(area, u"mm²"), *listed, u"A");
    sheet.step(tr("factor for the ambient"), QStringLiteral("√((θ − θₐ)/(θ − θ₀))"),
               tr("θ = %1, θ₀ = %2").arg(show(table.conductor, u"°C"), show(table.ambient, u"°C")),
               byAmbient, u"");
    sheet.step(tr("factor for bunching"), tr("IEC 60364-5-52, table B.52.17, item 1"),
               show(bunched, u""), byGroup, u"");
    sheet.step(tr("capacity here"), QStringLiteral("I_z = I·f₁·f₂"),
               QString(show(*listed, u"A") + QStringLiteral(" · ") + show(byAmbient, u"") +
                       QStringLiteral(" · ") + show(byGroup, u"")),
               capacity, u"A");
    return capacity;
}

} // namespace ohmwright
