// SPDX-License-Identifier: GPL-3.0-or-later
// The budget's lines as rows of sums, all in the book's currency. The bar's column is empty here:
// the page puts a MoneyBar there.
#pragma once

#include "core/budget/budget.h"

#include <QAbstractTableModel>

#include <vector>

namespace ohmwright::ui {

class LinesModel : public QAbstractTableModel
{
    Q_OBJECT

public:
    enum Column { Name, Bar, Allowance, Spent, Committed, ToCome, GotBack, Left, ColumnCount };

    explicit LinesModel(QObject *parent = nullptr);

    // Resets only when the lines themselves are others; else says which sums changed.
    void setLines(std::vector<LineSums> lines);
    [[nodiscard]] const LineSums *line(int row) const;
    [[nodiscard]] int rowOf(Id<BudgetLine> line) const; // -1 if it is gone

    [[nodiscard]] int rowCount(const QModelIndex &parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex &parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex &index, int role) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation,
                                      int role) const override;

private:
    std::vector<LineSums> m_lines;
};

// The same in words, for who cannot see the bar.
[[nodiscard]] QString spokenLine(const LineSums &line);
// A figure without its currency where the heading names it: "1 250.00".
[[nodiscard]] QString bareFigure(Money money);

} // namespace ohmwright::ui
