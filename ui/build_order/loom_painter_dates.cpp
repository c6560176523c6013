// SPDX-License-Identifier: GPL-3.0-or-later
// What a loom shows of the forecast: the strip below a housing, and the date axis.
#include "core/quantity/dates.h"
#include "ui/build_order/loom_navigation.h"
#include "ui/build_order/loom_painter_canvas.h"

#include <QFontMetricsF>
#include <QPainter>
#include <QPainterPath>

#include <algorithm>
#include <cmath>
#include <limits>

namespace ohmwright::ui {

using plan::LoomRule;
using plan::LoomTask;
using plan::LoomText;

namespace {

// What the smallest text on the axis takes on a screen, pixels.
constexpr double kMonthPixels = 10.5;
constexpr double kMonthSize = 12;
// Of the axis's band: baselines of the months and of the weeks' days, and how tall today's flag is.
constexpr double kTodayLine = 15;
constexpr double kMonthLine = 29;
constexpr double kWeekLine = 42;

} // namespace

void LoomPainter::paintStrip(Canvas &canvas, const LoomTask &task) const
{
    if (task.ready.lines.isEmpty())
        return;
    QPainter &painter = canvas.painter;
    painter.setFont(font(LoomText::Date));
    painter.setPen(m_colours.ink);
    painter.drawText(task.ready.at, task.ready.lines.front());
    if (!task.slack.lines.isEmpty()) {
        painter.setPen(m_colours.mute);
        painter.drawText(task.slack.at, task.slack.lines.front());
        // Half a year and more is all the loop there is.
        constexpr double kMuch = 180;
        const double share =
            std::sqrt(std::min(1.0, std::max(0, task.days.floatDays.value_or(0)) / kMuch));
        painter.setPen(canvas.pen(m_colours.mute, 1.1, 0.7));
        painter.setBrush(Qt::NoBrush);
        painter.drawPath(slackPath(task.slackLoop, share));
    }
    if (task.whisker.isNull())
        return;
    const double y = task.whisker.center().y();
    const auto tick = [&](double x, double half) {
        painter.drawLine(QPointF(x, y - half), QPointF(x, y + half));
    };
    painter.setPen(canvas.pen(m_colours.mute, 0.9, 0.7));
    painter.drawLine(QPointF(task.whisker.left(), y), QPointF(task.whisker.right(), y));
    tick(task.whisker.left(), 2);
    tick(task.whisker.right(), 2);
    painter.setPen(canvas.pen(m_colours.ink, 1.8, 1));
    tick(task.whiskerMark, 3);
}

QPainterPath LoomPainter::slackPath(const QRectF &box, double share)
{
    const double foot = box.bottom() - 1;
    const double high = std::max(4.0, box.height() * (0.45 + 0.55 * share));
    const double half = std::max(2.0, box.width() / 2 * (0.5 + 0.35 * share));
    const double middle = box.center().x();
    QPainterPath path(QPointF(box.left(), foot));
    path.cubicTo(QPointF(middle + half * 1.6, foot), QPointF(middle + half, foot - high),
                 QPointF(middle, foot - high));
    path.cubicTo(QPointF(middle - half, foot - high), QPointF(middle - half * 1.6, foot),
                 QPointF(box.right(), foot));
    return path;
}

QRectF LoomPainter::axisBand(const plan::Loom &loom, double scale)
{
    QRectF band = loom.axisBand;
    const double grown = std::max(1.0, kMonthPixels / (kMonthSize * scale));
    band.setTop(band.bottom() - band.height() * grown);
    return band;
}

void LoomPainter::paintRules(Canvas &canvas) const
{
    QPainter &painter = canvas.painter;
    for (const LoomRule &rule : canvas.loom.rules) {
        if (rule.x < canvas.exposed.left() - 4 || rule.x > canvas.exposed.right() + 4)
            continue;
        const bool week = rule.kind == LoomRule::Kind::Week;
        if (week && canvas.scale < kCavities)
            continue;
        QPen pen = canvas.pen(mixed(m_colours.mute, m_colours.paper, week ? 0.16 : 0.4), 0.8, 0.6);
        if (rule.kind == LoomRule::Kind::NoDate)
            pen.setDashPattern({4, 4});
        if (rule.kind == LoomRule::Kind::Today)
            pen = canvas.pen(m_colours.blue, 1.6, 1.4);
        painter.setPen(pen);
        painter.drawLine(QPointF(rule.x, canvas.loom.axisBand.bottom()),
                         QPointF(rule.x, canvas.loom.bounds.bottom()));
    }
}

// The dates stay in sight while the chart goes up under them.
void LoomPainter::paintAxis(Canvas &canvas) const
{
    if (canvas.loom.rules.empty())
        return;
    QPainter &painter = canvas.painter;
    QRectF band = axisBand(canvas.loom, canvas.scale);
    const double grown = band.height() / canvas.loom.axisBand.height();
    const bool slides = canvas.marks.slideTop && band.top() < *canvas.marks.slideTop;
    if (slides)
        band.moveTop(*canvas.marks.slideTop);
    painter.setOpacity(1);
    painter.setPen(Qt::NoPen);
    painter.setBrush(m_colours.paper);
    painter.drawRect(band);
    painter.setPen(canvas.pen(m_colours.mute, 0.9, 0.8));
    painter.drawLine(band.bottomLeft(), band.bottomRight());
    QFont months = font(LoomText::Sleeve);
    months.setPixelSize(static_cast<int>(std::lround(kMonthSize * grown)));
    months.setWeight(QFont::DemiBold);
    QFont weeks = font(LoomText::Missing);
    weeks.setPixelSize(static_cast<int>(std::lround(10 * grown)));
    const QFontMetricsF monthWidth(months);
    double taken = -std::numeric_limits<double>::max();
    for (const LoomRule &rule : canvas.loom.rules) {
        // A name reaches to the right of its line.
        if (rule.kind == LoomRule::Kind::Today || rule.x > canvas.exposed.right() ||
            rule.x < canvas.exposed.left() - 200 * grown)
            continue;
        const bool month = rule.kind == LoomRule::Kind::Month;
        const bool week = rule.kind == LoomRule::Kind::Week || month;
        if (week && canvas.full()) {
            painter.setFont(weeks);
            painter.setPen(m_colours.mute);
            painter.drawText(QPointF(rule.x + 2, band.top() + kWeekLine * grown),
                             QString::number(rule.day.day()));
        }
        if (rule.kind == LoomRule::Kind::Week)
            continue;
        // "Aug 2027": the day stands below.
        const QString text =
            month ? showDate(rule.day).section(QLatin1Char(' '), 1) : LoomWords::tr("no date");
        const double width = monthWidth.horizontalAdvance(text);
        painter.setPen(canvas.pen(mixed(m_colours.mute, m_colours.paper, 0.6), 0.8, 0.6));
        painter.drawLine(QPointF(rule.x, band.top() + (kMonthLine - 10) * grown),
                         QPointF(rule.x, band.bottom()));
        if (rule.x < taken)
            continue; // no room; the line is there
        painter.setFont(months);
        painter.setPen(m_colours.ink);
        painter.drawText(QPointF(rule.x + 4 * grown, band.top() + kMonthLine * grown), text);
        taken = rule.x + width + 10 * grown;
    }
    for (const LoomRule &rule : canvas.loom.rules) {
        if (rule.kind != LoomRule::Kind::Today)
            continue;
        painter.setPen(canvas.pen(m_colours.blue, 1.6, 1.4));
        painter.drawLine(QPointF(rule.x, band.top() + 3 * grown), QPointF(rule.x, band.bottom()));
        painter.setFont(months);
        painter.drawText(QPointF(rule.x + 4 * grown, band.top() + kTodayLine * grown),
                         LoomWords::tr("today, %1").arg(showDate(rule.day)));
    }
}

} // namespace ohmwright::ui
