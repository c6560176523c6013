// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/marks.h"

#include "ui/shell/theme.h"

#include <QCoreApplication>
#include <QPainter>
#include <QPen>
#include <QPolygonF>
#include <QRectF>

#include <algorithm>
#include <array>

namespace ohmwright::ui {

namespace {

constexpr std::array kAll{
    Mark::Holds,       Mark::Tight,  Mark::Fails,    Mark::Unknown,  Mark::Wanted, Mark::Ordered,
    Mark::InHand,      Mark::Tested, Mark::Fitted,   Mark::Returned, Mark::Sold,   Mark::Scrapped,
    Mark::Quarantined, Mark::Waits,  Mark::CanStart, Mark::Done,
};

QPen firm(const QColor &colour, double width = 1.5)
{
    return {colour, width, Qt::SolidLine, Qt::FlatCap, Qt::MiterJoin};
}

QPen dashed(const QColor &colour)
{
    QPen pen = firm(colour, 1.4);
    pen.setDashPattern({1.9, 1.493});
    pen.setDashOffset(0.95); // a corner of the housing falls in the middle of a dash
    return pen;
}

void line(QPainter &painter, std::initializer_list<QPointF> points)
{
    painter.setBrush(Qt::NoBrush);
    painter.drawPolyline(QPolygonF(QList<QPointF>(points)));
}

void arrowHead(QPainter &painter, QPointF tip, QPointF along, const QColor &colour)
{
    const QPointF side(-along.y(), along.x());
    painter.setPen(Qt::NoPen);
    painter.setBrush(colour);
    painter.drawPolygon(
        QPolygonF{tip, tip - along * 4.2 + side * 2.8, tip - along * 4.2 - side * 2.8});
}

// The limit line at the top, the column below it.
void paintVerdict(QPainter &painter, Mark mark, const QColor &colour)
{
    constexpr double kLimit = 4.25;
    const bool broken = mark == Mark::Fails;
    painter.setPen(firm(colour, 1.75));
    if (broken) {
        line(painter, {{1, kLimit}, {4, kLimit}});
        line(painter, {{12, kLimit}, {15, kLimit}});
    } else {
        line(painter, {{1, kLimit}, {15, kLimit}});
    }
    if (mark == Mark::Unknown) {
        painter.setPen(firm(colour, 1.4));
        painter.drawRect(QRectF(5.5, 7.5, 5, 7));
        return;
    }
    const double top = mark == Mark::Holds ? 9.25 : mark == Mark::Tight ? kLimit : 0.75;
    painter.fillRect(QRectF(5, top, 6, 15 - top), colour);
}

void paintPart(QPainter &painter, Mark mark, const QColor &colour)
{
    const QRectF housing(3.25, 3.25, 9.5, 9.5);
    painter.setBrush(Qt::NoBrush);
    painter.setPen(firm(colour));
    switch (mark) {
    case Mark::Wanted:
        painter.setPen(dashed(colour));
        painter.drawRect(housing);
        break;
    case Mark::Ordered: // on its way into the place kept for it
        painter.setPen(dashed(colour));
        painter.drawRect(housing.translated(2.5, 0));
        painter.setPen(Qt::NoPen);
        painter.setBrush(colour);
        painter.drawRect(QRectF(0, 7.25, 7.5, 1.5));
        arrowHead(painter, {12, 8}, {1, 0}, colour);
        break;
    case Mark::InHand:
        painter.drawRect(housing);
        break;
    case Mark::Tested: // half filled: it works, it is not in yet
        painter.drawRect(housing);
        painter.fillRect(QRectF(3.25, 8, 9.5, 4.75), colour);
        break;
    case Mark::Fitted: // filled, and bolted down by its ears
        painter.fillRect(QRectF(3.5, 2.5, 9, 11), colour);
        line(painter, {{0.5, 12.75}, {15.5, 12.75}});
        line(painter, {{1.5, 10.25}, {1.5, 12.75}});
        line(painter, {{14.5, 10.25}, {14.5, 12.75}});
        break;
    case Mark::Returned: // out again, the way it came
        line(painter, {{7.5, 3.25}, {14, 3.25}, {14, 12.75}, {7.5, 12.75}});
        line(painter, {{4, 8}, {10.5, 8}});
        arrowHead(painter, {0.75, 8}, {-1, 0}, colour);
        break;
    case Mark::Sold: // a tag on a string
        painter.drawPolygon(
            QPolygonF{{5.5, 3.25}, {14.25, 3.25}, {14.25, 12.75}, {5.5, 12.75}, {1.75, 8}});
        painter.setBrush(colour);
        painter.setPen(Qt::NoPen);
        painter.drawEllipse(QPointF(6, 8), 1.3, 1.3);
        break;
    case Mark::Scrapped: // crossed out on the drawing
        painter.drawRect(housing);
        line(painter, {{0.75, 15.25}, {15.25, 0.75}});
        line(painter, {{0.75, 0.75}, {15.25, 15.25}});
        break;
    case Mark::Quarantined: // kept apart inside a fence
        painter.fillRect(QRectF(5.5, 5.5, 5, 5), colour);
        painter.drawPolygon(QPolygonF{{5, 0.9},
                                      {11, 0.9},
                                      {15.1, 5},
                                      {15.1, 11},
                                      {11, 15.1},
                                      {5, 15.1},
                                      {0.9, 11},
                                      {0.9, 5}});
        break;
    default:
        break;
    }
}

// The housing of a task, latch on top, as the build order draws it.
void paintTask(QPainter &painter, Mark mark, const QColor &colour)
{
    const QPolygonF housing{{1.25, 5.5}, {5.5, 5.5},   {5.5, 3},       {10.5, 3},
                            {10.5, 5.5}, {14.75, 5.5}, {14.75, 13.25}, {1.25, 13.25}};
    painter.setPen(mark == Mark::Waits ? dashed(colour) : firm(colour, 1.75));
    painter.setBrush(mark == Mark::Done ? QBrush(colour) : QBrush(Qt::NoBrush));
    painter.drawPolygon(housing);
}

} // namespace

std::span<const Mark> allMarks()
{
    return kAll;
}

QString markWord(Mark mark)
{
    const auto word = [](const char *text) {
        return QCoreApplication::translate("ohmwright::ui::Mark", text);
    };
    switch (mark) {
    case Mark::Holds:
        return word(QT_TRANSLATE_NOOP("ohmwright::ui::Mark", "holds"));
    case Mark::Tight:
        return word(QT_TRANSLATE_NOOP("ohmwright::ui::Mark", "tight"));
    case Mark::Fails:
        return word(QT_TRANSLATE_NOOP("ohmwright::ui::Mark", "fails"));
    case Mark::Unknown:
        return word(QT_TRANSLATE_NOOP("ohmwright::ui::Mark", "unknown"));
    case Mark::Wanted:
        return word(QT_TRANSLATE_NOOP("ohmwright::ui::Mark", "wanted"));
    case Mark::Ordered:
        return word(QT_TRANSLATE_NOOP("ohmwright::ui::Mark", "ordered"));
    case Mark::InHand:
        return word(QT_TRANSLATE_NOOP("ohmwright::ui::Mark", "in hand"));
    case Mark::Tested:
        return word(QT_TRANSLATE_NOOP("ohmwright::ui::Mark", "tested"));
    case Mark::Fitted:
        return word(QT_TRANSLATE_NOOP("ohmwright::ui::Mark", "fitted"));
    case Mark::Returned:
        return word(QT_TRANSLATE_NOOP("ohmwright::ui::Mark", "returned"));
    case Mark::Sold:
        return word(QT_TRANSLATE_NOOP("ohmwright::ui::Mark", "sold"));
    case Mark::Scrapped:
        return word(QT_TRANSLATE_NOOP("ohmwright::ui::Mark", "scrapped"));
    case Mark::Quarantined:
        return word(QT_TRANSLATE_NOOP("ohmwright::ui::Mark", "quarantined"));
    case Mark::Waits:
        return word(QT_TRANSLATE_NOOP("ohmwright::ui::Mark", "waits"));
    case Mark::CanStart:
        return word(QT_TRANSLATE_NOOP("ohmwright::ui::Mark", "can start"));
    case Mark::Done:
        return word(QT_TRANSLATE_NOOP("ohmwright::ui::Mark", "done"));
    }
    Q_UNREACHABLE();
}

QColor markColour(Mark mark, const Tokens &tokens)
{
    switch (mark) {
    case Mark::Holds:
        return tokens.holds;
    case Mark::Tight:
        return tokens.tight;
    case Mark::Fails:
    case Mark::Quarantined:
        return tokens.fails;
    case Mark::Unknown:
        return tokens.unknown;
    case Mark::Wanted:
    case Mark::Returned:
    case Mark::Sold:
    case Mark::Scrapped:
    case Mark::Waits:
        return tokens.mute;
    case Mark::Ordered:
    case Mark::InHand:
    case Mark::Tested:
    case Mark::Fitted:
    case Mark::CanStart:
    case Mark::Done:
        return tokens.ink;
    }
    Q_UNREACHABLE();
}

void paintMark(QPainter &painter, const QRectF &rect, Mark mark, const QColor &colour)
{
    const double side = std::min(rect.width(), rect.height());
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.translate(rect.center() - QPointF(side, side) / 2);
    painter.scale(side / 16, side / 16);
    switch (mark) {
    case Mark::Holds:
    case Mark::Tight:
    case Mark::Fails:
    case Mark::Unknown:
        paintVerdict(painter, mark, colour);
        break;
    case Mark::Waits:
    case Mark::CanStart:
    case Mark::Done:
        paintTask(painter, mark, colour);
        break;
    case Mark::Wanted:
    case Mark::Ordered:
    case Mark::InHand:
    case Mark::Tested:
    case Mark::Fitted:
    case Mark::Returned:
    case Mark::Sold:
    case Mark::Scrapped:
    case Mark::Quarantined:
        paintPart(painter, mark, colour);
        break;
    }
    painter.restore();
}

} // namespace ohmwright::ui
