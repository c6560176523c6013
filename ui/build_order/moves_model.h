// SPDX-License-Identifier: GPL-3.0-or-later
// The next moves of a milestone as rows: start by, what to do, to what and why, how much it frees.
#pragma once

#include "core/plan/network.h"

#include <QAbstractTableModel>
#include <QDate>

#include <vector>

namespace ohmwright::ui {

class MovesModel : public QAbstractTableModel
{
    Q_OBJECT

public:
    enum Column { Kind, Title, StartBy, Frees, ColumnCount };

    explicit MovesModel(QObject *parent = nullptr);

    void setMoves(std::vector<plan::Move> moves, QDate today);
    // Null when there is no such row; good until the next setMoves().
    [[nodiscard]] const plan::Move *move(int row) const;
    // The row of the move with that kind and subject; -1 if it is gone.
    [[nodiscard]] int rowOf(plan::MoveKind kind, const QString &subject) const;

    [[nodiscard]] int rowCount(const QModelIndex &parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex &parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex &index, int role) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation,
                                      int role) const override;

private:
    [[nodiscard]] QString startBy(const plan::Move &move) const;
    [[nodiscard]] QString startByRemark(const plan::Move &move) const;
    [[nodiscard]] QString spoken(const plan::Move &move, int row) const;

    std::vector<plan::Move> m_moves;
    QDate m_today;
};

// "in 12 days", "today", "3 days late".
[[nodiscard]] QString daysAway(QDate today, QDate day);

} // namespace ohmwright::ui
