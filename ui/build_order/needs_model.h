// SPDX-License-Identifier: GPL-3.0-or-later
// What one task needs, as rows: met or not in shape and word, what, and why not yet.
#pragma once

#include "core/records/records.h"

#include <QAbstractTableModel>
#include <QDate>

#include <optional>
#include <vector>

namespace ohmwright::ui {

struct NeedRow
{
    Id<TaskNeed> need;
    QString kind; // "part", "second person"
    QString what;
    QString reason; // empty when met
    bool met = false;
    std::optional<Id<Part>> part;
    bool bySaying = false; // a person says it is met
};

// In the task's order.
[[nodiscard]] std::vector<NeedRow> needRows(const Records &records, Id<Task> task, QDate today);

class NeedsModel : public QAbstractTableModel
{
    Q_OBJECT

public:
    enum Column { State, What, ColumnCount };

    explicit NeedsModel(QObject *parent = nullptr);

    void setRows(std::vector<NeedRow> rows);
    [[nodiscard]] const NeedRow *row(int row) const;
    [[nodiscard]] int openCount() const;

    [[nodiscard]] int rowCount(const QModelIndex &parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex &parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex &index, int role) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation,
                                      int role) const override;

private:
    std::vector<NeedRow> m_rows;
};

} // namespace ohmwright::ui
