// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/build_order/moves_model.h"

#include "core/quantity/dates.h"
#include "ui/widgets/drafted_table_delegate.h"

#include <utility>

namespace ohmwright::ui {

QString daysAway(QDate today, QDate day)
{
    const auto days = today.daysTo(day);
    if (days == 0)
        return MovesModel::tr("today");
    if (days == 1)
        return MovesModel::tr("tomorrow");
    if (days == -1)
        return MovesModel::tr("1 day late");
    return days > 0 ? MovesModel::tr("in %1 days").arg(days)
                    : MovesModel::tr("%1 days late").arg(-days);
}

MovesModel::MovesModel(QObject *parent) : QAbstractTableModel(parent) {}

void MovesModel::setMoves(std::vector<plan::Move> moves, QDate today)
{
    beginResetModel();
    m_moves = std::move(moves);
    m_today = today;
    endResetModel();
}

const plan::Move *MovesModel::move(int row) const
{
    return row >= 0 && row < rowCount() ? &m_moves[static_cast<std::size_t>(row)] : nullptr;
}

int MovesModel::rowOf(plan::MoveKind kind, const QString &subject) const
{
    for (int row = 0; row < rowCount(); ++row)
        if (move(row)->kind == kind && move(row)->subject == subject)
            return row;
    return -1;
}

int MovesModel::rowCount(const QModelIndex &parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(m_moves.size());
}

int MovesModel::columnCount(const QModelIndex &parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(ColumnCount);
}

QString MovesModel::startBy(const plan::Move &move) const
{
    return move.latestStart ? showDate(*move.latestStart) : tr("any day");
}

QString MovesModel::startByRemark(const plan::Move &move) const
{
    return move.latestStart ? daysAway(m_today, *move.latestStart)
                            : tr("%1 days before the end").arg(move.chainDays);
}

QString MovesModel::spoken(const plan::Move &move, int row) const
{
    return tr("Move %1 of %2: %3 %4. %5. Start by %6, %7. Frees %8 tasks.")
        .arg(row + 1)
        .arg(m_moves.size())
        .arg(plan::moveKindName(move.kind), move.title, move.why, startBy(move),
             startByRemark(move))
        .arg(move.frees.size());
}

QVariant MovesModel::data(const QModelIndex &index, int role) const
{
    if (!checkIndex(index, CheckIndexOption::IndexIsValid))
        return {};
    const plan::Move &move = m_moves[static_cast<std::size_t>(index.row())];
    if (role == Qt::AccessibleTextRole)
        return spoken(move, index.row());
    if (role == Qt::ToolTipRole)
        return QString(move.title + u'\n' + move.why);
    switch (index.column()) {
    case Kind:
        return role == Qt::DisplayRole ? plan::moveKindName(move.kind) : QVariant();
    case Title:
        if (role == Qt::DisplayRole)
            return move.title;
        return role == SecondLineRole ? move.why : QVariant();
    case StartBy:
        if (role == Qt::DisplayRole)
            return startBy(move);
        return role == SecondLineRole ? startByRemark(move) : QVariant();
    case Frees:
        if (role == FigureRole || role == Qt::DisplayRole)
            return QString::number(move.frees.size());
        return {};
    default:
        return {};
    }
}

QVariant MovesModel::headerData(int section, Qt::Orientation orientation, int role) const
{
    if (orientation != Qt::Horizontal)
        return {};
    if (role == Qt::TextAlignmentRole && section == Frees)
        return QVariant::fromValue(Qt::Alignment(Qt::AlignRight | Qt::AlignVCenter));
    if (role != Qt::DisplayRole)
        return {};
    switch (section) {
    case Kind:
        return tr("Move");
    case Title:
        return tr("What, and why");
    case StartBy:
        return tr("Start by");
    case Frees:
        return tr("Frees");
    default:
        return {};
    }
}

} // namespace ohmwright::ui
