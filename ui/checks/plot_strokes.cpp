// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/checks/plot_strokes.h"

#include "ui/checks/plot_scene.h"
#include "ui/shell/theme.h"

#include <QPainter>
#include <QPolygonF>

#include <algorithm>
#include <array>

namespace ohmwright::ui {

namespace {

constexpr double kWidth = 1.4;

// Whole, dashed, dotted, dash-dotted; in widths of the line.
const std::array<QList<qreal>, 4> &dashes()
{
    static const std::array<QList<qreal>, 4> kDashes{
        QList<qreal>{}, QList<qreal>{6, 3}, QList<qreal>{1.2, 2.4}, QList<qreal>{8, 2.5, 1.5, 2.5}};
    return kDashes;
}

} // namespace

QPen strokeOf(std::size_t series, const PlotLook &look)
{
    const std::array colours{look.ink, look.blue, look.mute};
    QPen pen(colours[series % colours.size()], kWidth, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin);
    // round: a whole line is drawn piece by piece, and would show its seams
    if (const QList<qreal> &dash = dashes()[series % dashes().size()]; !dash.isEmpty()) {
        pen.setCapStyle(Qt::FlatCap);
        pen.setDashPattern(dash);
    }
    return pen;
}

PlotMarker markerOf(std::size_t series)
{
    // seven: with four dashes and three colours no two of a dozen are alike in two ways of three
    static constexpr std::array kMarkers{
        PlotMarker::Disc, PlotMarker::Square,       PlotMarker::Triangle,      PlotMarker::Diamond,
        PlotMarker::Ring, PlotMarker::HollowSquare, PlotMarker::HollowTriangle};
    return kMarkers[series % kMarkers.size()];
}

QColor fillingOf(std::size_t series, std::size_t of, const PlotLook &look)
{
    constexpr double kTint = 0.3;
    if (of == 1)
        return mix(look.ground, look.ink, kTint);
    return series % 4 == 1 ? look.ink : look.ground;
}

void paintHatch(QPainter &painter, const QRectF &bar, std::size_t series, const PlotLook &look)
{
    constexpr double kApart = 5;
    const bool rising = series % 4 >= 2;
    const bool crossed = series % 4 == 3;
    if (!rising || bar.height() < 1)
        return;
    painter.save();
    painter.setPen(QPen(look.ink, 0.8));
    for (double x = bar.left() - bar.height() + kApart; x < bar.right(); x += kApart) {
        // a line at 45 degrees from the foot at x, cut at the bar's sides; an SVG is not clipped
        const double first = std::max(0.0, bar.left() - x);
        const double last = std::min(bar.height(), bar.right() - x);
        painter.drawLine(QPointF(x + first, bar.bottom() - first),
                         QPointF(x + last, bar.bottom() - last));
        if (crossed)
            painter.drawLine(QPointF(x + first, bar.top() + first),
                             QPointF(x + last, bar.top() + last));
    }
    painter.restore();
}

void paintMarker(QPainter &painter, const QPointF &middle, PlotMarker marker, const QColor &ink,
                 const QColor &ground)
{
    constexpr double kHalf = kMarkerSize / 2;
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.translate(middle);
    // the rim keeps the marker clear of the line it sits on
    painter.setPen(QPen(ground, 1));
    painter.setBrush(ink);
    switch (marker) {
    case PlotMarker::Disc:
        painter.drawEllipse(QPointF(), kHalf, kHalf);
        break;
    case PlotMarker::Square:
        painter.drawRect(QRectF(-kHalf + 0.4, -kHalf + 0.4, kMarkerSize - 0.8, kMarkerSize - 0.8));
        break;
    case PlotMarker::Triangle:
        painter.drawPolygon(
            QPolygonF{{0, -kHalf - 0.6}, {kHalf + 0.4, kHalf}, {-kHalf - 0.4, kHalf}});
        break;
    case PlotMarker::Diamond:
        painter.drawPolygon(
            QPolygonF{{0, -kHalf - 0.8}, {kHalf + 0.8, 0}, {0, kHalf + 0.8}, {-kHalf - 0.8, 0}});
        break;
    case PlotMarker::Ring:
        painter.setPen(QPen(ink, 1.3));
        painter.setBrush(ground);
        painter.drawEllipse(QPointF(), kHalf - 0.5, kHalf - 0.5);
        break;
    case PlotMarker::HollowTriangle:
        painter.setPen(QPen(ink, 1.3));
        painter.setBrush(ground);
        painter.drawPolygon(
            QPolygonF{{0, -kHalf - 0.2}, {kHalf, kHalf - 0.4}, {-kHalf, kHalf - 0.4}});
        break;
    case PlotMarker::HollowSquare:
        painter.setPen(QPen(ink, 1.3));
        painter.setBrush(ground);
        painter.drawRect(QRectF(-kHalf + 0.7, -kHalf + 0.7, kMarkerSize - 1.4, kMarkerSize - 1.4));
        break;
    }
    painter.restore();
}

} // namespace ohmwright::ui
