// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/bench/bench_rows.h"

#include "ui/shell/theme.h"
#include "ui/widgets/hv_tag.h"

#include <QPainter>
#include <QRegularExpression>

namespace ohmwright::ui {

namespace {

constexpr int kPad = 6;

int leadWidth(const QFontMetrics &metrics)
{
    return metrics.horizontalAdvance(QStringLiteral("by 30 Mmm 2026")) + 10;
}

} // namespace

BenchRowButton::BenchRowButton(const Theme &theme, BenchRow row, QWidget *parent)
    : QPushButton(parent), m_theme(theme), m_row(std::move(row))
{
    setFlat(true);
    setCursor(Qt::PointingHandCursor);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    setAccessibleName(
        QStringList{m_row.title, m_row.lead, m_row.highVoltage ? tr("high voltage") : QString()}
            .filter(QRegularExpression(QStringLiteral(".")))
            .join(tr(", ")));
    setAccessibleDescription(m_row.detail);
    setToolTip(m_row.detail);
}

QSize BenchRowButton::sizeHint() const
{
    const QFontMetrics body(m_theme.font(Lettering::Body));
    const QFontMetrics small(m_theme.font(Lettering::Small));
    const int lines = body.height() + (m_row.detail.isEmpty() ? 0 : small.height() + 1);
    return {360, lines + 2 * kPad};
}

QSize BenchRowButton::minimumSizeHint() const
{
    return {200, sizeHint().height()};
}

void BenchRowButton::paintEvent(QPaintEvent *)
{
    const Tokens &tokens = m_theme.tokens();
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    if (underMouse() || isDown())
        painter.fillRect(rect(), tokens.hover());
    const QFont body = m_theme.font(Lettering::Body);
    const QFont small = m_theme.font(Lettering::Small);
    const QFontMetrics bodyMetrics(body);
    const QFontMetrics smallMetrics(small);
    const int lead = leadWidth(smallMetrics);
    int right = width() - kPad;
    painter.setPen(tokens.mute);
    painter.setFont(small);
    painter.drawText(QRect(kPad, kPad + bodyMetrics.ascent() - smallMetrics.ascent(), lead,
                           smallMetrics.height()),
                     Qt::AlignLeft | Qt::AlignTop, m_row.lead);
    if (m_row.highVoltage) {
        const QSizeF tag = highVoltageTagSize(small);
        right -= static_cast<int>(tag.width());
        paintHighVoltageTag(
            painter, QRectF(QPointF(right, kPad + (bodyMetrics.height() - tag.height()) / 2), tag),
            small, tokens);
        right -= kPad;
    }
    const int left = kPad + lead;
    painter.setPen(tokens.ink);
    painter.setFont(body);
    painter.drawText(QRect(left, kPad, right - left, bodyMetrics.height()),
                     Qt::AlignLeft | Qt::AlignVCenter,
                     bodyMetrics.elidedText(m_row.title, Qt::ElideRight, right - left));
    if (!m_row.detail.isEmpty()) {
        painter.setPen(tokens.mute);
        painter.setFont(small);
        painter.drawText(
            QRect(left, kPad + bodyMetrics.height() + 1, width() - kPad - left,
                  smallMetrics.height()),
            Qt::AlignLeft | Qt::AlignVCenter,
            smallMetrics.elidedText(m_row.detail, Qt::ElideRight, width() - kPad - left));
    }
    if (hasFocus()) {
        painter.setPen(QPen(tokens.blue, 2));
        painter.drawRect(QRectF(rect()).adjusted(1, 1, -1, -1));
    }
}

} // namespace ohmwright::ui
