// SPDX-License-Identifier: GPL-3.0-or-later
// What a budget line is made of, as rows: a purchase, below it its items, then what is to come and
// what came back. Prices are in the currency they were asked in.
#pragma once

#include "core/budget/line_contents.h"

#include <QAbstractTableModel>

#include <vector>

namespace ohmwright::ui {

class EntriesModel : public QAbstractTableModel
{
    Q_OBJECT

public:
    enum Column { What, Price, Shared, Core, InBook, Standing, ColumnCount };

    explicit EntriesModel(QObject *parent = nullptr);

    // `records` only during the call.
    void setEntries(const Records &records, std::vector<LineEntry> entries);
    [[nodiscard]] const LineEntry *entry(int row) const;
    // The row of the same thing; -1 if it is gone.
    [[nodiscard]] int rowOf(const LineEntry &entry) const;

    [[nodiscard]] int rowCount(const QModelIndex &parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex &parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex &index, int role) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation,
                                      int role) const override;

private:
    std::vector<LineEntry> m_entries;
    std::vector<QString> m_remarks; // second lines, by row
    QString m_own;                  // code of the book's currency
};

// "paid", "2 of 3 paid", "to come", …: where the money of an entry stands.
[[nodiscard]] QString standing(const LineEntry &entry);

} // namespace ohmwright::ui
