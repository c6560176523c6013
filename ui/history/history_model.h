// SPDX-License-Identifier: GPL-3.0-or-later
// The history as a table, newest first: when, what was done, what that changed. Older edits are
// read as the table is scrolled to them.
#pragma once

#include "core/cards/history.h"

#include <QAbstractTableModel>

#include <optional>
#include <vector>

namespace ohmwright::ui {

class HistoryModel : public QAbstractTableModel
{
    Q_OBJECT

public:
    enum Column { When, Edit, Changed, ColumnCount };

    explicit HistoryModel(QObject *parent = nullptr);

    // Of the whole book, or of one record and what it holds.
    Outcome read(const Book &book, const std::optional<RecordRef> &of);
    void forget(); // the copy of the book it reads from goes too
    [[nodiscard]] const StepChange &step(int row) const
    {
        return m_steps[static_cast<std::size_t>(row)];
    }
    [[nodiscard]] int rowOf(std::int64_t number) const; // -1 when it is not told (yet)

    [[nodiscard]] int rowCount(const QModelIndex &parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex &parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex &index, int role) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation,
                                      int role) const override;
    [[nodiscard]] bool canFetchMore(const QModelIndex &parent) const override;
    void fetchMore(const QModelIndex &parent) override;

private:
    std::vector<StepChange> m_steps;
    std::optional<History> m_history; // what of it is still to be read
    bool m_ofOne = false;
};

// All that an edit changed, a line each.
QString changesInFull(const StepChange &step, bool withHolder);

} // namespace ohmwright::ui
