// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/sheet/mark_painter.h"

#include "ui/sheet/sheet_style.h"

#include <QPainter>
#include <QPainterPath>
#include <QPen>

namespace ohmwright::sheet {

namespace {

// Shapes are drawn on a grid of 16 by 16; warning signs on one of 24 by 24.
constexpr double kGrid = 16.0;
constexpr double kSignGrid = 24.0;

QPen pen(const QColor &colour, double width)
{
    return {colour, width, Qt::SolidLine, Qt::FlatCap, Qt::MiterJoin};
}

void paintHolds(QPainter &painter, const QColor &colour)
{
    painter.setPen(pen(colour, 1.4));
    painter.drawEllipse(QRectF(1, 1, 14, 14));
    QPainterPath tick(QPointF(4.4, 8.4));
    tick.lineTo(7, 11);
    tick.lineTo(11.8, 5.4);
    painter.setPen(pen(colour, 1.8));
    painter.drawPath(tick);
}

void paintTight(QPainter &painter, const QColor &colour)
{
    QPainterPath lowerHalf(QPointF(0.9, 8));
    lowerHalf.lineTo(15.1, 8);
    lowerHalf.lineTo(8, 15.1);
    lowerHalf.closeSubpath();
    painter.fillPath(lowerHalf, colour);
    QPainterPath diamond(QPointF(8, 0.9));
    diamond.lineTo(15.1, 8);
    diamond.lineTo(8, 15.1);
    diamond.lineTo(0.9, 8);
    diamond.closeSubpath();
    painter.setPen(pen(colour, 1.4));
    painter.drawPath(diamond);
}

void paintFails(QPainter &painter, const QColor &colour)
{
    painter.fillRect(QRectF(1, 1, 14, 14), colour);
    painter.setPen(pen(ink::kPaper, 1.9));
    painter.drawLine(QPointF(4.6, 4.6), QPointF(11.4, 11.4));
    painter.drawLine(QPointF(11.4, 4.6), QPointF(4.6, 11.4));
}

void paintUnknown(QPainter &painter, const QColor &colour)
{
    // eleven dashes and gaps of one length round the ring; in units of the pen's width
    constexpr double kRing = 3.14159265358979 * 14.0;
    constexpr int kDashes = 11;
    QPen broken = pen(colour, 1.4);
    const double dash = kRing / (2 * kDashes) / broken.widthF();
    broken.setDashPattern({dash, dash});
    painter.setPen(broken);
    painter.drawEllipse(QRectF(1, 1, 14, 14));
    QPainterPath question(QPointF(5.8, 6.5));
    question.cubicTo(5.8, 3.3, 10.2, 3.3, 10.2, 6.3);
    question.cubicTo(10.2, 8.1, 8.0, 8.0, 8.0, 9.9);
    painter.setPen(pen(colour, 1.5));
    painter.drawPath(question);
    painter.setPen(Qt::NoPen);
    painter.setBrush(colour);
    painter.drawEllipse(QPointF(8, 12), 1, 1);
}

} // namespace

void paintMark(QPainter &painter, MarkKind kind, const QRectF &box)
{
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.translate(box.topLeft());
    painter.scale(box.width() / kGrid, box.height() / kGrid);
    painter.setBrush(Qt::NoBrush);
    switch (kind) {
    case MarkKind::Holds:
        paintHolds(painter, inkOf(kind));
        break;
    case MarkKind::Tight:
        paintTight(painter, inkOf(kind));
        break;
    case MarkKind::Fails:
        paintFails(painter, inkOf(kind));
        break;
    case MarkKind::Unknown:
        paintUnknown(painter, inkOf(kind));
        break;
    case MarkKind::HighVoltage:
        break;
    }
    painter.restore();
}

void paintHighVoltageFrame(QPainter &painter, const QRectF &frame)
{
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setBrush(Qt::NoBrush);
    painter.setPen(pen(ink::kHighVoltage, pt(0.9)));
    painter.drawRoundedRect(frame, pt(1), pt(1));
    painter.restore();
}

void paintCautionSign(QPainter &painter, const QRectF &box)
{
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.translate(box.topLeft());
    painter.scale(box.width() / kSignGrid, box.height() / kSignGrid);
    QPainterPath triangle(QPointF(12, 2.2));
    triangle.lineTo(22.6, 21);
    triangle.lineTo(1.4, 21);
    triangle.closeSubpath();
    QPen edge = pen(ink::kInk, 1.7);
    edge.setJoinStyle(Qt::RoundJoin);
    painter.setPen(edge);
    painter.setBrush(Qt::NoBrush);
    painter.drawPath(triangle);
    painter.setPen(pen(ink::kInk, 2));
    painter.drawLine(QPointF(12, 8.6), QPointF(12, 14.6));
    painter.setPen(Qt::NoPen);
    painter.setBrush(ink::kInk);
    painter.drawEllipse(QPointF(12, 17.6), 1.2, 1.2);
    painter.restore();
}

} // namespace ohmwright::sheet
