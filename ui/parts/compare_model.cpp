// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/parts/compare_model.h"

#include "ui/widgets/drafted_table_delegate.h"

#include <utility>

namespace ohmwright::ui {

namespace {

QVariant agreementData(Agreement agreement, int role)
{
    if (role == Qt::DisplayRole || role == Qt::AccessibleTextRole)
        return wordOf(agreement);
    if (role != MarkRole || agreement == Agreement::Same)
        return {};
    // the shape a clash has on a part's own ratings
    return QVariant::fromValue(agreement == Agreement::Differs ? Mark::Tight : Mark::Unknown);
}

} // namespace

CompareModel::CompareModel(QObject *parent) : QAbstractTableModel(parent) {}

void CompareModel::setCompared(SideBySide compared)
{
    beginResetModel();
    m_compared = std::move(compared);
    endResetModel();
}

int CompareModel::rowCount(const QModelIndex &parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(m_compared.rows.size());
}

int CompareModel::columnCount(const QModelIndex &parent) const
{
    return parent.isValid() || unitCount() == 0 ? 0 : unitCount() + 2;
}

QVariant CompareModel::cellData(const ComparedRow &row, std::size_t unit, int role) const
{
    const ComparedCell &cell = row.cells.at(unit);
    const QString value = cell.value.isEmpty() ? tr("not known") : cell.value;
    switch (role) {
    case Qt::DisplayRole:
        return value;
    case SecondLineRole:
        return cell.from;
    case MarkRole:
        return cell.value.isEmpty() ? QVariant::fromValue(Mark::Unknown) : QVariant();
    case Qt::ToolTipRole:
        return cell.from.isEmpty() ? value : QString(value + u'\n' + cell.from);
    case Qt::AccessibleTextRole: {
        const QString spoken =
            tr("%1 of %2: %3").arg(row.what, m_compared.units.at(unit).head, value);
        return cell.from.isEmpty() ? spoken : tr("%1, %2").arg(spoken, cell.from);
    }
    default:
        return {};
    }
}

QVariant CompareModel::data(const QModelIndex &index, int role) const
{
    if (!index.isValid() || index.row() >= rowCount())
        return {};
    const ComparedRow &row = m_compared.rows[static_cast<std::size_t>(index.row())];
    if (index.column() == 0) {
        if (role == Qt::AccessibleTextRole)
            return tr("%1: %2").arg(row.what, wordOf(row.agreement));
        return role == Qt::DisplayRole || role == Qt::ToolTipRole ? row.what : QVariant();
    }
    if (index.column() > unitCount())
        return agreementData(row.agreement, role);
    return cellData(row, static_cast<std::size_t>(index.column() - 1), role);
}

QVariant CompareModel::headerData(int section, Qt::Orientation orientation, int role) const
{
    if (orientation != Qt::Horizontal || (role != Qt::DisplayRole && role != Qt::ToolTipRole))
        return {};
    if (section == 0)
        return role == Qt::DisplayRole ? tr("figure") : QVariant();
    if (section > unitCount())
        return role == Qt::DisplayRole ? tr("side by side") : QVariant();
    const ComparedUnit &unit = m_compared.units[static_cast<std::size_t>(section - 1)];
    return role == Qt::DisplayRole ? unit.head : QString(unit.name + u'\n' + unit.under);
}

} // namespace ohmwright::ui
