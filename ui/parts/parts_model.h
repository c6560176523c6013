// SPDX-License-Identifier: GPL-3.0-or-later
// The Parts table as a model: rows are ids arranged by PartsIndex, columns one table of header and
// getter. It computes nothing itself.
#pragma once

#include "ui/parts/parts_index.h"

#include <QAbstractTableModel>

namespace ohmwright::ui {

class Theme;

// Where there is no room for columns of their own, the second lines tell what they would.
enum class PartsRoom {
    Wide,   // all columns
    Narrow, // assembly and place below part and state, the HV tag behind the name
    Less,   // also what ends soon and is open, below the part
    Least,  // as Less, and the cost is left to the detail
};

class PartsModel : public QAbstractTableModel
{
    Q_OBJECT

public:
    PartsModel(const Records &records, const PartsIndex &index, const Theme &theme,
               QObject *parent = nullptr);

    // Rows that come and go are told one run at a time; a larger change is told as a whole.
    void show(std::vector<PartRow> rows);
    // What the rows say may have changed, which rows there are has not.
    void contentChanged();

    void setRoom(PartsRoom room);

    [[nodiscard]] Id<Part> partAt(int row) const; // not set for a heading or no row
    [[nodiscard]] int rowOf(Id<Part> part) const; // -1 when it is not shown
    [[nodiscard]] bool isHeading(int row) const;

    [[nodiscard]] int rowCount(const QModelIndex &parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex &parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex &index, int role) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation,
                                      int role) const override;
    [[nodiscard]] Qt::ItemFlags flags(const QModelIndex &index) const override;

private:
    [[nodiscard]] QString belowName(const Part &part) const;
    [[nodiscard]] QVariant narrowData(const Part &part, PartColumn column, int role) const;

    const Records &m_records;
    const PartsIndex &m_index;
    const Theme &m_theme;
    std::vector<PartRow> m_rows;
    PartsRoom m_room = PartsRoom::Wide;
};

} // namespace ohmwright::ui
