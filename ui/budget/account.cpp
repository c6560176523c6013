// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/budget/account.h"

#include "ui/shell/theme.h"
#include "ui/widgets/figure_label.h"
#include "ui/widgets/money_bar.h"

#include <QGridLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QVBoxLayout>

namespace ohmwright::ui {

namespace {

const NumberStyle kStyle = NumberStyle::pointDecimal();

} // namespace

Account::Account(const Theme &theme, QWidget *parent)
    : QWidget(parent), m_leftName(new QLabel(tr("Left"))), m_left(new FigureLabel(theme)),
      m_remark(new QLabel), m_bar(new MoneyBar(theme))
{
    const std::array<QString, RowCount> names{tr("Allowances"), tr("Contingency"), tr("Got back"),
                                              tr("Spent"),      tr("Committed"),   tr("To come")};
    auto *row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(44);
    auto *grid = new QGridLayout;
    grid->setHorizontalSpacing(14);
    grid->setVerticalSpacing(5);
    for (int i = 0; i < RowCount; ++i) {
        const auto at = static_cast<std::size_t>(i);
        m_names[at] = new QLabel(names[at]);
        m_names[at]->setForegroundRole(QPalette::PlaceholderText);
        m_figures[at] = new FigureLabel(theme);
        m_figures[at]->setLettering(Lettering::Strong);
        m_names[at]->setBuddy(m_figures[at]);
        const int column = i < Spent ? 0 : 3;
        grid->addWidget(m_names[at], i % 3, column);
        grid->addWidget(m_figures[at], i % 3, column + 1);
    }
    grid->setColumnMinimumWidth(2, 26);
    row->addLayout(grid);

    auto *side = new QVBoxLayout;
    side->setSpacing(2);
    auto *figure = new QHBoxLayout;
    figure->setSpacing(14);
    m_leftName->setFont(theme.font(Lettering::Heading));
    m_left->setLettering(Lettering::Figure);
    m_remark->setTextFormat(Qt::PlainText);
    m_remark->setForegroundRole(QPalette::PlaceholderText);
    figure->addWidget(m_leftName, 0, Qt::AlignVCenter);
    figure->addWidget(m_left, 0, Qt::AlignVCenter);
    figure->addWidget(m_remark, 1, Qt::AlignVCenter);
    side->addLayout(figure);
    side->addWidget(m_bar);
    side->addWidget(new MoneyBarLegend(theme));
    row->addLayout(side, 1);
}

void Account::setBudget(const Budget &budget, int contingencyPercent)
{
    const std::array<Money, RowCount> sums{budget.total.allowance, budget.contingency,
                                           budget.total.gotBack,   budget.total.spent,
                                           budget.total.committed, budget.total.toCome};
    for (std::size_t i = 0; i < sums.size(); ++i) {
        m_figures[i]->setDecimals(budget.currency.digits());
        m_figures[i]->setUnitRoom(budget.currency.code());
        m_figures[i]->setFigure(showMoney(sums[i], kStyle));
    }
    m_names[Contingency]->setText(tr("Contingency, %1 %").arg(contingencyPercent));
    m_left->setDecimals(budget.currency.digits());
    m_left->setFigure(showMoney(budget.left(), kStyle));
    m_remark->setText(budget.left().minor() < 0 ? tr("more than there is") : QString());
    const Money means = budget.total.allowance + budget.contingency + budget.total.gotBack;
    m_bar->setShares({budget.total.spent.minor(), budget.total.committed.minor(),
                      budget.total.toCome.minor(), means.minor()},
                     tr("%1 spent, %2 committed, %3 to come, of %4")
                         .arg(showMoney(budget.total.spent, kStyle),
                              showMoney(budget.total.committed, kStyle),
                              showMoney(budget.total.toCome, kStyle), showMoney(means, kStyle)));
}

} // namespace ohmwright::ui
