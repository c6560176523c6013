// SPDX-License-Identifier: GPL-3.0-or-later
// The whole budget as a short account: what there is, what it goes to, and what is left, large.
#pragma once

#include "core/budget/budget.h"

#include <QWidget>

#include <array>

class QLabel;

namespace ohmwright::ui {

class FigureLabel;
class MoneyBar;
class Theme;

class Account : public QWidget
{
    Q_OBJECT

public:
    explicit Account(const Theme &theme, QWidget *parent = nullptr);

    void setBudget(const Budget &budget, int contingencyPercent);

private:
    enum Row { Allowances, Contingency, GotBack, Spent, Committed, ToCome, RowCount };

    std::array<QLabel *, RowCount> m_names{};
    std::array<FigureLabel *, RowCount> m_figures{};
    QLabel *m_leftName;
    FigureLabel *m_left;
    QLabel *m_remark;
    MoneyBar *m_bar;
};

} // namespace ohmwright::ui
