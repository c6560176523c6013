// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/build_order/needs_model.h"

#include "core/plan/plan_view.h"
#include "ui/widgets/drafted_table_delegate.h"

#include <algorithm>
#include <utility>

namespace ohmwright::ui {

std::vector<NeedRow> needRows(const Records &records, Id<Task> task, QDate today)
{
    std::vector<NeedRow> rows;
    const auto shares = plan::StockShares::of(records);
    for (const TaskNeed &need : records.of<TaskNeed>(task)) {
        NeedRow row;
        row.need = need.id;
        if (const Task *before = records.find(need.after)) {
            row.kind = NeedsModel::tr("task");
            row.what = before->title;
            row.met = before->state == TaskState::Done;
            row.reason = before->state == TaskState::Started ? NeedsModel::tr("under way")
                                                             : NeedsModel::tr("not started");
        } else {
            const plan::LeafNeed leaf = plan::judge(records, need, shares, today);
            row.kind = plan::needKindName(leaf.kind);
            row.what = leaf.subjectName;
            row.met = leaf.met;
            row.reason = leaf.reason;
            row.part = need.part;
            row.bySaying =
                need.kind == NeedKind::Person || (need.kind == NeedKind::Permit && !need.permit) ||
                need.kind == NeedKind::Money || (need.kind == NeedKind::Service && !need.part);
        }
        if (row.met)
            row.reason.clear();
        if (need.eachTime.value_or(false))
            row.kind = NeedsModel::tr("%1, anew each time").arg(row.kind);
        rows.push_back(std::move(row));
    }
    return rows;
}

NeedsModel::NeedsModel(QObject *parent) : QAbstractTableModel(parent) {}

void NeedsModel::setRows(std::vector<NeedRow> rows)
{
    beginResetModel();
    m_rows = std::move(rows);
    endResetModel();
}

const NeedRow *NeedsModel::row(int row) const
{
    return row >= 0 && row < rowCount() ? &m_rows[static_cast<std::size_t>(row)] : nullptr;
}

int NeedsModel::openCount() const
{
    return static_cast<int>(
        std::count_if(m_rows.begin(), m_rows.end(), [](const NeedRow &row) { return !row.met; }));
}

int NeedsModel::rowCount(const QModelIndex &parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(m_rows.size());
}

int NeedsModel::columnCount(const QModelIndex &parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(ColumnCount);
}

QVariant NeedsModel::data(const QModelIndex &index, int role) const
{
    if (!checkIndex(index, CheckIndexOption::IndexIsValid))
        return {};
    const NeedRow &row = m_rows[static_cast<std::size_t>(index.row())];
    const QString state = row.met ? tr("met") : tr("open");
    const QString below = row.reason.isEmpty() ? row.kind : tr("%1: %2").arg(row.kind, row.reason);
    if (role == Qt::AccessibleTextRole)
        return tr("%1, %2, %3").arg(row.what, state, below);
    if (role == Qt::ToolTipRole)
        return QString(row.what + u'\n' + below);
    if (index.column() == State) {
        if (role == Qt::DisplayRole)
            return state;
        return role == MarkRole ? QVariant::fromValue(row.met ? Mark::Done : Mark::Waits)
                                : QVariant();
    }
    if (role == Qt::DisplayRole)
        return row.what;
    return role == SecondLineRole ? QVariant(below) : QVariant();
}

QVariant NeedsModel::headerData(int section, Qt::Orientation orientation, int role) const
{
    if (orientation != Qt::Horizontal || role != Qt::DisplayRole)
        return {};
    return section == State ? tr("State") : tr("Needs");
}

} // namespace ohmwright::ui
