// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/checks/plot_overlay.h"

#include "ui/checks/plot_strokes.h"

#include <QChart>
#include <QFontMetricsF>
#include <QPainter>
#include <QPointF>

#include <algorithm>
#include <cmath>

namespace ohmwright::ui {

namespace {

constexpr double kLineSample = 40;
constexpr double kBarSample = 16;
constexpr double kSampleGap = 7;
constexpr double kApart = 20;
constexpr double kTitleGap = 6;
constexpr double kBelow = 8;
constexpr int kMarkersEach = 6;
constexpr std::size_t kMarkAllUpTo = 14;
constexpr std::size_t kBarValuesUpTo = 16;
constexpr int kDigits = 4;

} // namespace

PlotOverlay::PlotOverlay(const Plot &plot, const PlotLook &look, QChart &chart)
    : QGraphicsItem(&chart), m_plot(plot), m_look(look), m_chart(chart)
{
    setZValue(100);
    setAcceptedMouseButtons(Qt::NoButton);
}

void PlotOverlay::setSize(const QSizeF &size)
{
    prepareGeometryChange();
    m_size = size;
}

bool PlotOverlay::hasLegend() const
{
    // a single line says on its axis what it is
    return m_plot.series.size() > 1 ||
           (m_plot.series.size() == 1 && m_plot.series.front().name != m_plot.yName);
}

double PlotOverlay::headHeight(double width) const
{
    double height = 0;
    if (m_look.withTitle)
        height += QFontMetricsF(m_look.titleFont).height() + kTitleGap;
    if (hasLegend())
        height += legend(width, 0, nullptr) + kBelow;
    return height;
}

double PlotOverlay::legend(double width, double top, QPainter *painter) const
{
    const QFontMetricsF metrics(m_look.font);
    const double line = metrics.height() + 5;
    double x = 0;
    double y = top;
    for (std::size_t i = 0; i < m_plot.series.size(); ++i) {
        const PlotSeries &series = m_plot.series[i];
        const double sample = series.bars ? kBarSample : kLineSample;
        const double wide = sample + kSampleGap + metrics.horizontalAdvance(series.name);
        if (x > 0 && x + wide > width) {
            x = 0;
            y += line;
        }
        if (painter) {
            paintSample(*painter, QRectF(x, y, sample, line), i);
            painter->setPen(m_look.ink);
            painter->drawText(QRectF(x + sample + kSampleGap, y, wide, line),
                              Qt::AlignLeft | Qt::AlignVCenter | Qt::TextSingleLine, series.name);
        }
        x += wide + kApart;
    }
    return y + line - top;
}

void PlotOverlay::paintSample(QPainter &painter, const QRectF &rect, std::size_t series) const
{
    if (m_plot.series[series].bars) {
        const QRectF box(rect.left() + 1, rect.center().y() - 5.5, rect.width() - 2, 11);
        painter.setPen(QPen(m_look.ink, 1));
        painter.setBrush(fillingOf(series, m_plot.series.size(), m_look));
        painter.drawRect(box);
        paintHatch(painter, box, series, m_look);
        return;
    }
    painter.setPen(strokeOf(series, m_look));
    painter.drawLine(QPointF(rect.left(), rect.center().y()),
                     QPointF(rect.right(), rect.center().y()));
    paintMarker(painter, rect.center(), markerOf(series), strokeOf(series, m_look).color(),
                m_look.ground);
}

void PlotOverlay::paintMarkers(QPainter &painter) const
{
    const QRectF room = m_chart.plotArea().adjusted(-1, -1, 1, 1);
    for (std::size_t i = 0; i < m_plot.series.size(); ++i) {
        const PlotSeries &series = m_plot.series[i];
        if (series.bars || i >= m_series.size())
            continue;
        const std::size_t count = series.points.size();
        const bool all = count <= kMarkAllUpTo;
        // each line begins elsewhere, so that markers of lines that run together do not coincide
        const double step = all ? 1 : static_cast<double>(count) / kMarkersEach;
        const double shift = all ? 0 : step * (0.25 + 0.5 * static_cast<double>(i % 4) / 4);
        for (double at = shift; at < static_cast<double>(count); at += step) {
            const auto &[x, y] = series.points[static_cast<std::size_t>(at)];
            const QPointF middle = m_chart.mapToPosition(QPointF(x, y), m_series[i]);
            if (room.contains(middle))
                paintMarker(painter, middle, markerOf(i), strokeOf(i, m_look).color(),
                            m_look.ground);
        }
    }
}

void PlotOverlay::paintBars(QPainter &painter) const
{
    std::size_t bars = 0;
    std::size_t sets = 0;
    for (const PlotSeries &series : m_plot.series) {
        sets += series.bars ? 1 : 0;
        bars += series.bars ? series.points.size() : 0;
    }
    if (bars == 0 || m_plot.barNames.isEmpty())
        return;
    // as the chart places them: all bars of a name share the middle of its place
    const QRectF area = m_chart.plotArea();
    const double each = area.width() / static_cast<double>(m_plot.barNames.size());
    const double wide = each * kBarsShare / static_cast<double>(sets);
    std::size_t set = 0;
    for (std::size_t i = 0; i < m_plot.series.size() && i < m_series.size(); ++i) {
        const PlotSeries &series = m_plot.series[i];
        if (!series.bars)
            continue;
        const auto heightOf = [&](double value) {
            return m_chart.mapToPosition(QPointF(0, value), m_series[i]).y();
        };
        for (std::size_t at = 0; at < series.points.size(); ++at) {
            const double value = series.points[at].second;
            const double left = area.left() + each * (static_cast<double>(at) + 0.5) +
                                wide * (static_cast<double>(set) - static_cast<double>(sets) / 2);
            const QRectF bar =
                QRectF(QPointF(left, heightOf(value)), QPointF(left + wide, heightOf(0)))
                    .normalized();
            paintHatch(painter, bar, i, m_look);
            if (bars <= kBarValuesUpTo)
                paintBarValue(painter, bar, value);
        }
        ++set;
    }
}

void PlotOverlay::paintBarValue(QPainter &painter, const QRectF &bar, double value) const
{
    const QFontMetricsF metrics(m_look.font);
    const QString text = showNumber(value, NumberStyle::pointDecimal(), kDigits);
    const double half = metrics.horizontalAdvance(text) / 2 + 2;
    const double top = value < 0 ? bar.bottom() + 2 : bar.top() - metrics.height() - 2;
    const QRectF box(bar.center().x() - half, top, 2 * half, metrics.height());
    painter.fillRect(box, m_look.ground); // a line of the grid would strike it out
    painter.setPen(m_look.ink);
    painter.drawText(box, Qt::AlignCenter | Qt::TextSingleLine, text);
}

void PlotOverlay::paint(QPainter *painter, const QStyleOptionGraphicsItem *, QWidget *)
{
    painter->save();
    painter->setRenderHint(QPainter::Antialiasing);
    double top = 0;
    if (m_look.withTitle) {
        painter->setFont(m_look.titleFont);
        painter->setPen(m_look.ink);
        const double height = QFontMetricsF(m_look.titleFont).height();
        painter->drawText(QRectF(0, 0, m_size.width(), height),
                          Qt::AlignLeft | Qt::AlignVCenter | Qt::TextSingleLine, m_plot.title);
        top = height + kTitleGap;
    }
    painter->setFont(m_look.font);
    if (hasLegend())
        legend(m_size.width(), top, painter);
    paintMarkers(*painter);
    paintBars(*painter);
    painter->restore();
}

} // namespace ohmwright::ui
