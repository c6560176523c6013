// SPDX-License-Identifier: GPL-3.0-or-later
// Housings and plates, and what is written in and on them.
#include "ui/build_order/loom_dress.h"
#include "ui/build_order/loom_painter_canvas.h"

#include <QFontMetricsF>
#include <QPainter>
#include <QPainterPath>
#include <QPolygonF>
#include <QStringList>

#include <algorithm>
#include <cmath>
#include <vector>

namespace ohmwright::ui {

using plan::LoomLabel;
using plan::LoomState;
using plan::LoomTask;
using plan::LoomText;

namespace {

// A connector housing seen from the side, with its key on top.
QPainterPath housingPath(const QRectF &body, bool withKey)
{
    QPainterPath path;
    const double r = 4;
    if (!withKey) {
        path.addRoundedRect(body, r, r);
        return path;
    }
    const double middle = body.center().x();
    const double half = std::min(11.0, body.width() / 5);
    path.moveTo(body.left() + r, body.top());
    path.lineTo(middle - half, body.top());
    path.lineTo(middle - half, body.top() - 5);
    path.lineTo(middle + half, body.top() - 5);
    path.lineTo(middle + half, body.top());
    path.lineTo(body.right() - r, body.top());
    path.arcTo(QRectF(body.right() - 2 * r, body.top(), 2 * r, 2 * r), 90, -90);
    path.lineTo(body.right(), body.bottom() - r);
    path.arcTo(QRectF(body.right() - 2 * r, body.bottom() - 2 * r, 2 * r, 2 * r), 0, -90);
    path.lineTo(body.left() + r, body.bottom());
    path.arcTo(QRectF(body.left(), body.bottom() - 2 * r, 2 * r, 2 * r), 270, -90);
    path.lineTo(body.left(), body.top() + r);
    path.arcTo(QRectF(body.left(), body.top(), 2 * r, 2 * r), 180, -90);
    path.closeSubpath();
    return path;
}

// The tapered seal where a wire enters a housing; `outward` is -1 on the left, +1 on the right.
QPainterPath bootPath(QPointF at, int outward)
{
    QPainterPath path;
    path.moveTo(at + QPointF(0, -7));
    path.lineTo(at + QPointF(7.0 * outward, -3.5));
    path.lineTo(at + QPointF(7.0 * outward, 3.5));
    path.lineTo(at + QPointF(0, 7));
    path.closeSubpath();
    return path;
}

} // namespace

// Always in letters as well: the colour alone says nothing to some.
void LoomPainter::paintHighVoltage(Canvas &canvas, const LoomTask &task) const
{
    QPainter &painter = canvas.painter;
    const QRectF &tag = task.highVoltageMark;
    painter.setPen(canvas.pen(m_colours.highVoltage, 1, 0.8));
    painter.setBrush(m_colours.paper);
    painter.drawRoundedRect(tag, 2, 2);
    QFont letters = font(LoomText::Missing);
    letters.setWeight(QFont::Bold);
    painter.setFont(letters);
    painter.setPen(m_colours.ink);
    painter.drawText(tag, Qt::AlignCenter, QStringLiteral("HV"));
}

void LoomPainter::paintHousing(Canvas &canvas, const LoomTask &task) const
{
    QPainter &painter = canvas.painter;
    const bool hot = canvas.network.tasks[task.task].highVoltage;
    const bool aside = task.state == LoomState::SetAside;
    const bool quiet = aside || task.state == LoomState::Waits;
    const QColor edge = hot ? m_colours.highVoltage : quiet ? m_colours.mute : m_colours.ink;
    const bool done = task.state == LoomState::Done;
    QPen outline = canvas.pen(edge, aside ? 0.9 : quiet ? 1.2 : 2.0, kOutline);
    if (aside)
        outline.setDashPattern({1.2, 3.4});
    else if (quiet)
        outline.setDashPattern({3.2, 2.2});
    const double y = task.body.center().y();
    if (canvas.scale >= kCavities) {
        QPen seal = canvas.pen(edge, 1.1, 0.8);
        painter.setPen(seal);
        painter.setBrush(done ? m_colours.ink : m_colours.panel);
        if (task.wireEnters)
            painter.drawPath(bootPath({task.body.left(), y}, -1));
        if (task.wireLeaves)
            painter.drawPath(bootPath({task.body.right(), y}, 1));
    }
    const QPainterPath shape = housingPath(task.body, canvas.scale >= kCavities);
    painter.fillPath(shape, done ? m_colours.ink : m_colours.panel);
    if (task.state == LoomState::UnderWay) {
        // Cut to the shape here: a drawing in SVG knows no clipping.
        QPainterPath bar;
        bar.addRect(QRectF(task.body.left(), task.body.top() - 6, 4.5, task.body.height() + 6));
        painter.fillPath(bar.intersected(shape), m_colours.ink);
    }
    painter.setPen(outline);
    painter.setBrush(Qt::NoBrush);
    if (!done || hot)
        painter.drawPath(shape);
    if (hot && canvas.full())
        paintHighVoltage(canvas, task);
    if (canvas.scale >= kShortTitles)
        paintTitle(canvas, task);
}

// A pennant on what can be taken up now; it keeps its size, so that the front of the work is seen
// from afar.
void LoomPainter::paintFlag(Canvas &canvas, const LoomTask &task) const
{
    if (task.state != LoomState::CanStart && task.state != LoomState::UnderWay)
        return;
    const double unit = 1 / std::min(1.0, canvas.scale);
    const QPointF foot(task.body.left() + std::min(5.0, task.body.width() / 4), task.body.top());
    canvas.painter.setPen(canvas.pen(m_colours.blue, 1.4, 1.4));
    canvas.painter.drawLine(foot, foot - QPointF(0, kFlagHeight * unit));
    const QPolygonF pennant{foot - QPointF(0, kFlagHeight * unit),
                            foot + QPointF(9 * unit, -(kFlagHeight - 3.5) * unit),
                            foot - QPointF(0, (kFlagHeight - 7) * unit)};
    canvas.painter.setPen(Qt::NoPen);
    canvas.painter.setBrush(m_colours.blue);
    canvas.painter.drawPolygon(pennant);
}

void LoomPainter::paintTitle(Canvas &canvas, const LoomTask &task) const
{
    QPainter &painter = canvas.painter;
    const bool done = task.state == LoomState::Done;
    const bool quiet = task.state == LoomState::Waits || task.state == LoomState::SetAside;
    painter.setPen(done ? m_colours.paper : quiet ? m_colours.mute : m_colours.ink);
    QFont face = font(LoomText::Title);
    if (task.state == LoomState::CanStart || task.state == LoomState::UnderWay)
        face.setWeight(QFont::DemiBold);
    if (canvas.full()) {
        painter.setFont(face);
        for (qsizetype line = 0; line < task.title.lines.size(); ++line) {
            const double top =
                task.title.box.top() + static_cast<double>(line) * task.title.lineHeight;
            painter.drawText(
                QRectF(task.body.left() - 4, top, task.body.width() + 8, task.title.lineHeight),
                Qt::AlignCenter | Qt::TextDontClip, task.title.lines[line]);
        }
        return;
    }
    // Larger letters than laid out, so fewer of them: what the words begin with.
    face.setPixelSize(static_cast<int>(std::lround(kShortTitlePixels / canvas.scale)));
    const QFontMetricsF metrics(face);
    painter.setFont(face);
    const double lineHeight = metrics.height() * 0.92;
    const double room = task.body.width() - 5;
    QStringList words =
        canvas.network.tasks[task.task].title.split(QLatin1Char(' '), Qt::SkipEmptyParts);
    QStringList lines;
    while (!words.isEmpty() && lines.size() < 2) {
        QString line = words.takeFirst();
        while (!words.isEmpty() &&
               metrics.horizontalAdvance(line + QLatin1Char(' ') + words.front()) <= room)
            line += QLatin1Char(' ') + words.takeFirst();
        if (lines.size() == 1 && !words.isEmpty())
            line += QLatin1Char(' ') + words.join(QLatin1Char(' '));
        lines.append(metrics.elidedText(line, Qt::ElideRight, room));
    }
    double top =
        task.body.top() + 1 +
        std::max(0.0,
                 (task.body.height() - 13 - lineHeight * static_cast<double>(lines.size())) / 2);
    for (const QString &text : lines) {
        painter.drawText(QRectF(task.body.left(), top, task.body.width(), lineHeight),
                         Qt::AlignCenter | Qt::TextDontClip, text);
        top += lineHeight;
    }
}

void LoomPainter::paintPlate(Canvas &canvas, const LoomTask &task) const
{
    QPainter &painter = canvas.painter;
    const bool done = task.state == LoomState::Done;
    const bool hot = canvas.network.tasks[task.task].highVoltage;
    const QColor edge = hot ? m_colours.highVoltage : m_colours.ink;
    QPen outline = canvas.pen(edge, 1.8, kOutline);
    if (task.state == LoomState::Waits || task.state == LoomState::SetAside)
        outline.setDashPattern({4.5, 1.6});
    painter.setPen(outline);
    painter.setBrush(done ? m_colours.ink : m_colours.panel);
    painter.drawRoundedRect(task.body, 4, 4);
    if (canvas.scale >= kCavities) {
        painter.setPen(canvas.pen(done ? m_colours.paper : m_colours.ink, 1, 0.6));
        painter.setBrush(Qt::NoBrush);
        for (const double y : {task.body.top() + 6.5, task.body.bottom() - 6.5}) {
            const QPointF screw(task.body.center().x(), y);
            painter.drawEllipse(screw, 3.0, 3.0);
            painter.drawLine(screw + QPointF(-2, -1), screw + QPointF(2, 1));
        }
    }
    if (!canvas.full())
        return;
    if (hot)
        paintHighVoltage(canvas, task);
    const auto write = [&](const plan::LoomLabel &label, LoomText kind, const QColor &colour) {
        painter.setFont(font(kind));
        painter.setPen(colour);
        for (qsizetype line = 0; line < label.lines.size(); ++line)
            painter.drawText(label.at + QPointF(0, static_cast<double>(line) * label.lineHeight),
                             label.lines[line]);
    };
    write(task.title, LoomText::Milestone, m_colours.ink);
    write(task.date, LoomText::Date, m_colours.mute);
}

void LoomPainter::paintCavities(Canvas &canvas, const LoomTask &task) const
{
    if (canvas.scale < kCavities)
        return;
    QPainter &painter = canvas.painter;
    const bool plate = canvas.network.tasks[task.task].milestone;
    const bool done = task.state == LoomState::Done;
    const QColor ink = done ? m_colours.paper : m_colours.ink;
    const QColor ground = done ? m_colours.ink : m_colours.panel;
    std::vector<double> tops;
    if (plate) {
        for (const plan::LoomCavity &cavity : task.cavities)
            tops.push_back(cavity.box.top());
        std::sort(tops.begin(), tops.end());
        QFont numerals = font(LoomText::Missing);
        numerals.setWeight(QFont::Medium);
        painter.setFont(numerals);
    }
    for (const plan::LoomCavity &cavity : task.cavities) {
        painter.setPen(canvas.pen(ink, 1, 0.7));
        painter.setBrush(cavity.filled ? QBrush(ink) : QBrush(Qt::NoBrush));
        if (cavity.forTask && !plate)
            painter.drawEllipse(cavity.box.center(), cavity.box.height() / 2,
                                cavity.box.height() / 2);
        else
            painter.drawRoundedRect(cavity.box, 1.5, 1.5);
        if (plate && canvas.full()) {
            const auto number =
                std::lower_bound(tops.begin(), tops.end(), cavity.box.top() - 0.01) - tops.begin() +
                1;
            painter.setPen(cavity.filled ? ground : ink);
            painter.drawText(cavity.box, Qt::AlignCenter, QString::number(number));
        }
    }
}

QPainterPath LoomPainter::againPath(const QRectF &box)
{
    const double head = box.height() * 0.3;
    const double low = box.bottom() - head * 0.4;
    const double high = box.top() + head;
    const double turn = box.right() - (low - high) / 2;
    QPainterPath path(QPointF(box.left() + head, low));
    path.lineTo(turn, low);
    path.arcTo(QRectF(turn - (low - high) / 2, high, low - high, low - high), 270, 180);
    path.lineTo(box.left() + 1, high);
    path.moveTo(box.left() + 1 + head, high - head);
    path.lineTo(box.left() + 1, high);
    path.lineTo(box.left() + 1 + head, high + head);
    return path;
}

// A sign on the right edge, where what is done leaves a housing, and in words below it.
void LoomPainter::paintRisk(Canvas &canvas, const LoomTask &task) const
{
    if (canvas.network.tasks[task.task].milestone || task.date.lines.isEmpty() ||
        canvas.scale < kCavities)
        return;
    QPainter &painter = canvas.painter;
    const QPointF at(task.body.right(), task.body.bottom() - 9);
    painter.setPen(canvas.pen(m_colours.ink, 1, 0.8));
    painter.setBrush(m_colours.paper);
    painter.drawEllipse(at, 6.2, 6.2);
    painter.setBrush(Qt::NoBrush);
    painter.drawPath(againPath(QRectF(at - QPointF(4, 3.8), QSizeF(8, 7))));
    if (!canvas.full())
        return;
    const LoomLabel &words = task.date;
    painter.setPen(canvas.pen(m_colours.mute, 1, 0.8));
    painter.drawPath(againPath(
        QRectF(words.box.left() - kRiskSign, words.box.top() + words.lineHeight * 0.5 - 4, 10, 8)));
    painter.setFont(font(LoomText::Missing));
    painter.setPen(m_colours.mute);
    for (qsizetype line = 0; line < words.lines.size(); ++line)
        painter.drawText(words.at + QPointF(0, static_cast<double>(line) * words.lineHeight),
                         words.lines[line]);
}

void LoomPainter::paintMissing(Canvas &canvas, const LoomTask &task) const
{
    if (task.missing.lines.isEmpty())
        return;
    QPainter &painter = canvas.painter;
    const QColor colour = task.missingIsQuestion ? m_colours.unknown : m_colours.ink;
    painter.setPen(canvas.pen(colour, 0.9, 0.6));
    const double foot = task.missing.box.top() + task.missing.lineHeight * 0.5;
    if (!task.missingLead.empty()) {
        painter.drawPolyline(task.missingLead.data(), static_cast<int>(task.missingLead.size()));
    } else if (!canvas.network.tasks[task.task].milestone && !task.missingFrom.isNull()) {
        // Down from the cavity, then to the text where there is room beside it.
        const QPointF from = task.missingFrom;
        const bool beside = from.x() < task.missing.box.left() - 2;
        painter.drawLine(from, QPointF(from.x(), beside ? foot : task.missing.box.top() + 1));
        if (beside)
            painter.drawLine(QPointF(from.x(), foot), QPointF(task.missing.box.left() - 2, foot));
    }
    painter.setFont(font(LoomText::Missing));
    for (qsizetype line = 0; line < task.missing.lines.size(); ++line) {
        const bool begins = line == 0 || task.missing.lines[line].startsWith(furtherLack());
        painter.setPen(begins ? colour : m_colours.mute);
        painter.drawText(task.missing.at +
                             QPointF(0, static_cast<double>(line) * task.missing.lineHeight),
                         task.missing.lines[line]);
    }
}

} // namespace ohmwright::ui
