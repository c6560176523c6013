// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/build_order/loom_legend_bar.h"

#include <QFont>
#include <QPainter>
#include <QRegion>

#include <algorithm>
#include <cmath>

namespace ohmwright::ui {

namespace {

constexpr int kMargin = 12;
// Above and below, and what one line of the legend takes.
constexpr double kAround = 8;
constexpr double kOneLine = LoomLegend::kLine;

} // namespace

LoomLegendBar::LoomLegendBar(QWidget *parent) : QWidget(parent)
{
    setAccessibleName(tr("Legend"));
}

void LoomLegendBar::setLegend(const LoomLegend &legend, const LoomColours &colours,
                              const QString &family)
{
    m_legend = legend;
    m_colours = colours;
    m_family = family;
    setToolTip(legend.text());
    setAccessibleDescription(legend.text());
    update();
}

void LoomLegendBar::setHint(const QString &hint)
{
    m_hint = hint;
    update();
}

void LoomLegendBar::setScale(double scale)
{
    m_scale = scale;
    updateGeometry();
    update();
}

int LoomLegendBar::heightFor(int width) const
{
    const double lines =
        m_legend ? m_legend->paint(nullptr, {}, width / m_scale - 2 * kMargin) : kOneLine;
    return static_cast<int>(std::ceil((lines + kAround) * m_scale));
}

int LoomLegendBar::heightOf(int lines) const
{
    return static_cast<int>(std::ceil((lines * kOneLine + kAround) * m_scale));
}

QSize LoomLegendBar::sizeHint() const
{
    return {200, heightFor(width())};
}

void LoomLegendBar::paintEvent(QPaintEvent *)
{
    QPainter painter(this);
    painter.fillRect(rect(), m_colours.paper);
    if (!m_legend)
        return;
    painter.save();
    painter.scale(m_scale, m_scale);
    const QRectF strip(kMargin, 0, width() / m_scale - 2 * kMargin, height() / m_scale);
    if (m_hint.isEmpty()) {
        // Whole lines only; where one is missing, the last one shown ends by saying so.
        const double lines = std::max(1.0, std::floor((strip.height() - kAround / 2) / kOneLine));
        const bool all = heightFor(width()) <= height();
        const QString rest = tr("… point here for the rest");
        QFont font(m_family);
        font.setPixelSize(12);
        painter.setFont(font);
        const double words = all ? 0 : painter.fontMetrics().horizontalAdvance(rest) + 8;
        painter.save();
        if (!all) {
            const QRectF shown(0, 0, strip.right(), kAround / 2 + lines * kOneLine);
            const QRectF last(strip.right() - words, shown.bottom() - kOneLine, words, kOneLine);
            painter.setClipRegion(QRegion(shown.toRect()) - last.toRect());
            m_legend->paint(&painter, QPointF(strip.left(), kAround / 2), strip.width());
            painter.setClipping(false);
            painter.setPen(m_colours.ink);
            painter.drawText(last, Qt::AlignRight | Qt::AlignVCenter, rest);
        } else {
            m_legend->paint(&painter, QPointF(strip.left(), kAround / 2), strip.width());
        }
        painter.restore();
    } else {
        QFont font(m_family);
        font.setPixelSize(12);
        font.setWeight(QFont::DemiBold);
        painter.setFont(font);
        painter.setPen(m_colours.blue);
        painter.drawText(strip, Qt::AlignLeft | Qt::AlignVCenter, m_hint);
    }
    painter.restore();
    painter.setPen(QColor(m_colours.mute.red(), m_colours.mute.green(), m_colours.mute.blue(), 70));
    painter.drawLine(0, height() - 1, width(), height() - 1);
}

} // namespace ohmwright::ui
