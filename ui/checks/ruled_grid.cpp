// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/checks/ruled_grid.h"

#include <QGridLayout>
#include <QLabel>
#include <QPainter>

namespace ohmwright::ui {

namespace {

constexpr int kBetweenColumns = 14;
constexpr int kBetweenLines = 3;
constexpr int kAroundRule = 5;

} // namespace

RuledGrid::RuledGrid(const Theme &theme, const std::vector<RuledColumn> &columns, QWidget *parent)
    : QWidget(parent), m_theme(theme), m_grid(new QGridLayout(this))
{
    m_grid->setContentsMargins(0, 0, 0, 2);
    m_grid->setHorizontalSpacing(kBetweenColumns);
    m_grid->setVerticalSpacing(0);
    for (std::size_t i = 0; i < columns.size(); ++i) {
        const int column = static_cast<int>(i);
        m_grid->setColumnStretch(column, columns[i].stretch);
        if (columns[i].head.isEmpty())
            continue;
        auto *head = new QLabel(columns[i].head);
        head->setFont(theme.font(Lettering::Small));
        head->setForegroundRole(QPalette::PlaceholderText);
        head->setContentsMargins(0, 0, 0, kAroundRule);
        m_grid->addWidget(head, 0, column, columns[i].right ? Qt::AlignRight : Qt::AlignLeft);
    }
    m_lastOf.push_back(0);
}

int RuledGrid::beginRow()
{
    if (m_next > 1) {
        m_grid->setRowMinimumHeight(m_next, kAroundRule);
        m_lastOf.push_back(m_next++);
    }
    m_grid->setRowMinimumHeight(m_next++, kAroundRule);
    return m_next++;
}

int RuledGrid::addLine()
{
    m_grid->setRowMinimumHeight(m_next++, kBetweenLines);
    return m_next++;
}

void RuledGrid::paintEvent(QPaintEvent *)
{
    QPainter painter(this);
    const Tokens &tokens = m_theme.tokens();
    for (const int row : m_lastOf) {
        const QRect cell = m_grid->cellRect(row, 0);
        const bool head = row == 0;
        painter.fillRect(QRectF(0, cell.bottom() - (head ? 0.5 : 0), width(), head ? 1.5 : 1),
                         head ? tokens.ink : tokens.hairline());
    }
}

QLabel *selectableWords(const Theme &theme, const QString &text, Lettering lettering, bool mute)
{
    auto *label = new QLabel(text);
    label->setTextFormat(Qt::PlainText);
    label->setWordWrap(true);
    label->setFont(theme.font(lettering));
    label->setTextInteractionFlags(Qt::TextSelectableByMouse);
    if (mute)
        label->setForegroundRole(QPalette::PlaceholderText);
    return label;
}

} // namespace ohmwright::ui
