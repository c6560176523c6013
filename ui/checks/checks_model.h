// SPDX-License-Identifier: GPL-3.0-or-later
// The list of checks as a model: rows as checks_order.h arranges them, headings among them.
#pragma once

#include "ui/checks/checks_order.h"

#include <QAbstractTableModel>

namespace ohmwright::ui {

class ChecksModel : public QAbstractTableModel
{
    Q_OBJECT

public:
    enum Column { VerdictColumn, What, ColumnCount };
    // Of a heading: how many of each verdict stand below it, as QList<int> by enumerator.
    static constexpr int CountsRole = Qt::UserRole + 1;

    explicit ChecksModel(QObject *parent = nullptr);

    // Resets only when the rows are others; else says that their content changed.
    void show(std::vector<CheckEntry> entries, std::vector<CheckRow> rows);

    [[nodiscard]] const CheckEntry *entryAt(int row) const; // null for a heading or no row
    [[nodiscard]] int rowOf(const QString &key) const;      // -1 when it is not shown
    [[nodiscard]] bool isHeading(int row) const;

    [[nodiscard]] int rowCount(const QModelIndex &parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex &parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex &index, int role) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation,
                                      int role) const override;
    [[nodiscard]] Qt::ItemFlags flags(const QModelIndex &index) const override;

private:
    [[nodiscard]] QVariant headingData(const CheckRow &row, int column, int role) const;

    std::vector<CheckEntry> m_entries;
    std::vector<CheckRow> m_rows;
};

// "holds → fails" while a tried change turns it; else the verdict's word.
[[nodiscard]] QString turnedWords(const CheckEntry &entry);
// "fails: Precharge, Traction circuit. Fails by 13 %, …": all of a row in words.
[[nodiscard]] QString spokenCheck(const CheckEntry &entry);

} // namespace ohmwright::ui
