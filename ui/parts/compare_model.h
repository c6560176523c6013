// SPDX-License-Identifier: GPL-3.0-or-later
// Units side by side as a table: a row for each figure, a column for each unit, and last how they
// stand to each other.
#pragma once

#include "core/parts/compare.h"

#include <QAbstractTableModel>

namespace ohmwright::ui {

class CompareModel : public QAbstractTableModel
{
    Q_OBJECT

public:
    explicit CompareModel(QObject *parent = nullptr);

    void setCompared(SideBySide compared);
    [[nodiscard]] const SideBySide &compared() const { return m_compared; }

    [[nodiscard]] int rowCount(const QModelIndex &parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex &parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex &index, int role) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation,
                                      int role) const override;

private:
    [[nodiscard]] int unitCount() const { return static_cast<int>(m_compared.units.size()); }
    [[nodiscard]] QVariant cellData(const ComparedRow &row, std::size_t unit, int role) const;

    SideBySide m_compared;
};

} // namespace ohmwright::ui
