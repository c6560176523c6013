// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/budget/cost_row.h"

#include "core/budget/budget.h"

#include <QCoreApplication>

#include <algorithm>

namespace ohmwright {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("CostRow", text);
}

} // namespace

std::optional<ComparedRow> landedCostRow(const Records &records,
                                         const std::vector<ComparedUnit> &units)
{
    ComparedRow row;
    row.what = tr("landed cost");
    for (const ComparedUnit &unit : units) {
        ComparedCell cell;
        if (const auto *id = std::get_if<Id<Part>>(&unit.id)) {
            const std::optional<Money> cost = landedCostOf(records, *records.find(*id));
            cell.value = cost ? showMoney(*cost, NumberStyle::pointDecimal()) : QString();
            cell.from = cost ? QString() : tr("not bought");
        } else {
            cell.from = tr("of parts alone");
        }
        row.cells.push_back(std::move(cell));
    }
    if (std::ranges::all_of(row.cells, [](const auto &cell) { return cell.value.isEmpty(); }))
        return std::nullopt;
    row.agreement = agreementOf(row.cells);
    return row;
}

} // namespace ohmwright
