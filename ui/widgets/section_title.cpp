// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/section_title.h"

#include "ui/shell/theme.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QPainter>

#include <algorithm>

namespace ohmwright::ui {

namespace {

// When it wraps: in one line where there is room, else in as many as it takes. QLabel would rather
// make a square of it.
class TitleLabel : public QLabel
{
public:
    explicit TitleLabel(const QString &text) : QLabel(text) { setTextFormat(Qt::PlainText); }
    [[nodiscard]] QSize sizeHint() const override
    {
        const QSize words = fontMetrics().size(0, text());
        return {words.width() + 1, words.height()};
    }
    [[nodiscard]] QSize minimumSizeHint() const override
    {
        constexpr int kLeast = 14; // letters
        const QSize whole = sizeHint();
        if (!wordWrap())
            return whole;
        return {std::min(whole.width(), fontMetrics().averageCharWidth() * kLeast),
                fontMetrics().height()};
    }
};

} // namespace

SectionTitle::SectionTitle(const Theme &theme, const QString &text, TitleLevel level,
                           QWidget *parent)
    : QWidget(parent), m_theme(theme), m_level(level), m_layout(new QHBoxLayout(this)),
      m_text(new TitleLabel(text)), m_remark(new QLabel), m_ruleSpace(new QWidget)
{
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    m_layout->setContentsMargins(0, 0, 0, 0);
    m_layout->setSpacing(12);
    m_text->setFont(theme.font(level == TitleLevel::Page ? Lettering::Title : Lettering::Heading));
    m_remark->setFont(theme.font(Lettering::Small));
    m_remark->setTextFormat(Qt::PlainText);
    m_remark->setForegroundRole(QPalette::PlaceholderText);
    m_remark->hide();
    m_ruleSpace->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Preferred);
    m_ruleSpace->setMinimumWidth(8);
    m_layout->addWidget(m_text, 0, Qt::AlignBottom);
    m_layout->addWidget(m_remark, 0, Qt::AlignBottom);
    m_layout->addWidget(m_ruleSpace, 1);
    if (level == TitleLevel::Page) {
        // both baselines on one line: the larger letters reach lower
        const int drop = m_text->fontMetrics().descent() - m_remark->fontMetrics().descent();
        m_remark->setContentsMargins(0, 0, 0, drop);
    }
}

void SectionTitle::setText(const QString &text)
{
    m_text->setText(text);
}

void SectionTitle::setWraps(bool wraps)
{
    m_text->setWordWrap(wraps);
    // a fixed height would hold it to one line
    setSizePolicy(QSizePolicy::Expanding, wraps ? QSizePolicy::Minimum : QSizePolicy::Fixed);
}

void SectionTitle::setRemark(const QString &remark)
{
    m_remark->setText(remark);
    m_remark->setVisible(!remark.isEmpty());
}

void SectionTitle::addAtEnd(QWidget *widget)
{
    m_layout->addWidget(widget, 0, Qt::AlignVCenter);
}

void SectionTitle::paintEvent(QPaintEvent *)
{
    if (m_level == TitleLevel::Page)
        return;
    QPainter painter(this);
    const QRect space = m_ruleSpace->geometry();
    painter.fillRect(QRect(space.left(), m_text->geometry().center().y() + 1, space.width(), 1),
                     m_theme.tokens().hairline());
}

} // namespace ohmwright::ui
