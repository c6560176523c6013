// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/checks/ruled_grid.h"

#include <QGridLayout>
#include <QLabel>
#include <QPainter>

namespace ohmwright::ui {

namespace {

constexpr int kBetweenColumns = 12;
constexpr int kBetweenLines = 3;
constexpr int kAroundRule = 5;

// A widget, not painted by the table: where the rows of a layout of wrapping words end is known to
// its items alone.
class Rule : public QWidget
{
public:
    Rule(const Theme &theme, bool firm) : m_theme(theme), m_firm(firm)
    {
        setFixedHeight(kAroundRule + (firm ? 2 : 1));
        setAttribute(Qt::WA_TransparentForMouseEvents);
    }

protected:
    void paintEvent(QPaintEvent *) override
    {
        QPainter painter(this);
        const Tokens &tokens = m_theme.tokens();
        painter.fillRect(m_firm ? QRectF(0, 0.5, width(), 1.5) : QRectF(0, 0, width(), 1),
                         m_firm ? tokens.ink : tokens.hairline());
    }

private:
    const Theme &m_theme;
    bool m_firm;
};

} // namespace

RuledGrid::RuledGrid(const Theme &theme, const std::vector<RuledColumn> &columns, QWidget *parent)
    : QWidget(parent), m_theme(theme), m_grid(new QGridLayout(this)),
      m_columns(static_cast<int>(columns.size()))
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
        head->setContentsMargins(0, 0, 0, 3);
        m_grid->addWidget(head, 0, column, columns[i].right ? Qt::AlignRight : Qt::AlignLeft);
    }
}

void RuledGrid::addRule(bool firm)
{
    m_grid->addWidget(new Rule(m_theme, firm), m_next++, 0, 1, m_columns);
}

int RuledGrid::beginRow()
{
    const bool first = m_next == 1;
    if (!first)
        m_grid->setRowMinimumHeight(m_next++, kAroundRule);
    addRule(first);
    return m_next++;
}

int RuledGrid::addLine()
{
    m_grid->setRowMinimumHeight(m_next++, kBetweenLines);
    return m_next++;
}

QLabel *selectableWords(const Theme &theme, const QString &text, Lettering lettering, bool mute)
{
    auto *label = new QLabel(text);
    label->setTextFormat(Qt::PlainText);
    label->setWordWrap(true);
    label->setFont(theme.font(lettering));
    if (!text.isEmpty()) // an empty one would be a stop without a name
        label->setTextInteractionFlags(Qt::TextSelectableByMouse);
    if (mute)
        label->setForegroundRole(QPalette::PlaceholderText);
    return label;
}

} // namespace ohmwright::ui
