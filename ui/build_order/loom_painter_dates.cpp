// SPDX-License-Identifier: GPL-3.0-or-later
// What a loom shows of the forecast: the strip below a housing, and the date axis.
#include "core/quantity/dates.h"
#include "ui/build_order/loom_navigation.h"
#include "ui/build_order/loom_painter_canvas.h"
#include "ui/build_order/loom_time.h"

#include <QFontMetricsF>
#include <QPainter>
#include <QPainterPath>

#include <algorithm>
#include <cmath>
#include <limits>
#include <vector>

namespace ohmwright::ui {

using plan::LoomRule;
using plan::LoomTask;
using plan::LoomText;

namespace {

// Of the axis's band, in its own size: letters, and the baselines of today, of the months and of
// the weeks' days.
constexpr int kAxisLetters = 12;
constexpr double kTodayLine = 14;
constexpr double kMonthLine = 29;
constexpr double kWeekLine = 42;
// Between two things written on one line, and between a line and what is written beside it.
constexpr double kApart = 7;
constexpr double kBesideLine = 4;

// What stands between two lines of the axis: a month, what is done, what has no day.
struct Stretch
{
    double left = 0;      // scene
    QString whole, brief; // "Jan 2027", "Jan"
    bool line = true;     // begins with a line of its own
};

std::vector<Stretch> stretchesOf(const plan::Loom &loom)
{
    std::vector<Stretch> all{
        {-std::numeric_limits<double>::max(), LoomWords::tr("done"), {}, false}};
    for (const LoomRule &rule : loom.rules) {
        if (rule.kind == LoomRule::Kind::Week)
            continue;
        Stretch own{rule.x, LoomWords::tr("no date"), {}, true};
        if (rule.kind != LoomRule::Kind::NoDate) {
            // "Aug 2027": the day stands below.
            own.whole = showDate(rule.day).section(QLatin1Char(' '), 1);
            own.brief = own.whole.section(QLatin1Char(' '), 0, 0);
            own.line = rule.kind == LoomRule::Kind::Month;
        }
        all.push_back(std::move(own));
    }
    return all;
}

} // namespace

void LoomPainter::paintStrip(Canvas &canvas, const LoomTask &task) const
{
    if (task.ready.lines.isEmpty())
        return;
    QPainter &painter = canvas.painter;
    painter.setFont(font(LoomText::Date));
    painter.setPen(m_colours.ink);
    if (!task.plan.lines.isEmpty()) {
        painter.drawText(task.plan.at, task.plan.lines.front());
        painter.setPen(m_colours.mute);
    }
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
    if (task.whisker.isNull() || !canvas.loom.rules.empty())
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

// By date: what hangs from a task's left edge and lies along the axis as long as it takes. It lies
// under the wires, which it crosses.
void LoomPainter::paintBars(Canvas &canvas) const
{
    if (canvas.loom.rules.empty() || canvas.scale < kCavities)
        return;
    const LoomTime time(canvas.loom);
    if (!time.known())
        return;
    QPainter &painter = canvas.painter;
    const double end = std::min(canvas.loom.bounds.right() - 5, time.right());
    for (const LoomTask &task : canvas.loom.tasks) {
        if (task.whisker.isNull())
            continue;
        const double from = task.body.left();
        const double y = task.whisker.center().y();
        if (from + 4 > end) // beside the dates: it waits on what has none yet
            continue;
        const double planned =
            task.days.finish ? std::clamp(time.at(*task.days.finish), from + 4, end) : from;
        const double right = std::max(task.whisker.right(), planned);
        if (from > canvas.exposed.right() || right < canvas.exposed.left() ||
            task.body.bottom() > canvas.exposed.bottom() || y + 4 < canvas.exposed.top())
            continue;
        painter.setOpacity(canvas.lit(task.task) ? 1 : kDimmed);
        const QColor quiet = mixed(m_colours.mute, m_colours.paper, 0.75);
        QPen hang = canvas.pen(quiet, 0.8, 0.6);
        hang.setDashPattern({2, 2});
        painter.setPen(hang);
        painter.drawLine(QPointF(from, task.body.bottom()), QPointF(from, y));
        painter.setPen(canvas.pen(m_colours.mute, 2.6, 1.6));
        painter.drawLine(QPointF(from, y), QPointF(planned, y));
        const double last = std::min(task.whisker.right(), end);
        painter.setPen(canvas.pen(quiet, 0.9, 0.7));
        if (task.whisker.left() > planned)
            painter.drawLine(QPointF(planned, y), QPointF(std::min(task.whisker.left(), last), y));
        painter.setPen(canvas.pen(m_colours.mute, 0.9, 0.7));
        painter.drawLine(QPointF(task.whisker.left(), y), QPointF(last, y));
        const auto tick = [&](double x, double half) {
            painter.drawLine(QPointF(x, y - half), QPointF(x, y + half));
        };
        if (task.whisker.left() <= end)
            tick(task.whisker.left(), 2);
        if (task.whisker.right() <= end) {
            tick(task.whisker.right(), 2);
        } else { // it goes on beyond what is drawn
            painter.drawLine(QPointF(last - 3, y - 2.5), QPointF(last, y));
            painter.drawLine(QPointF(last - 3, y + 2.5), QPointF(last, y));
        }
        if (task.whiskerMark <= end) {
            painter.setPen(canvas.pen(m_colours.ink, 1.8, 1));
            tick(task.whiskerMark, 3);
        }
    }
    painter.setOpacity(1);
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

QRectF LoomPainter::axisBand(const plan::Loom &loom, double scale,
                             std::optional<double> slideTop) const
{
    if (loom.rules.empty())
        return {};
    QRectF band = loom.axisBand;
    for (const Sleeve &sleeve : sleeves(loom, scale, std::nullopt)) {
        // Of a band that is folded, names of branches elsewhere are closed up anywhere.
        if (sleeve.box.right() < loom.bounds.left() || sleeve.box.left() > loom.bounds.right())
            continue;
        band.setBottom(std::min(band.bottom(), sleeve.box.top() - 3 / scale));
    }
    const double grown = m_letters / scale;
    band.setTop(band.bottom() - loom.axisBand.height() * grown);
    // Room for what the last line says.
    const double words = 64 * grown;
    band.setRight(std::max(band.right(), loom.rules.back().x + words));
    if (slideTop)
        band.moveTop(std::max(band.top(), *slideTop));
    return band;
}

void LoomPainter::paintRules(Canvas &canvas) const
{
    if (canvas.loom.rules.empty())
        return;
    QPainter &painter = canvas.painter;
    const double top = axisBand(canvas.loom, canvas.scale).bottom();
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
        painter.drawLine(QPointF(rule.x, top), QPointF(rule.x, canvas.loom.bounds.bottom()));
    }
}

// The dates stay in sight while the chart goes up under them, in letters of one size.
void LoomPainter::paintAxis(Canvas &canvas) const
{
    if (canvas.loom.rules.empty())
        return;
    QPainter &painter = canvas.painter;
    QRectF band = axisBand(canvas.loom, canvas.scale, canvas.marks.slideTop);
    if (canvas.marks.slideTop) {
        // Across the whole view, whatever part of it the loom takes.
        band.setLeft(canvas.exposed.left());
        band.setRight(canvas.exposed.right());
    }
    const double grown = band.height() / canvas.loom.axisBand.height();
    painter.save();
    painter.setOpacity(1);
    painter.translate(band.topLeft());
    painter.scale(grown, grown);
    const double width =
        std::min(band.right(), canvas.exposed.right()) / grown - band.left() / grown;
    const double height = band.height() / grown;
    const auto at = [&](double x) {
        return (x - band.left()) / grown;
    };
    painter.fillRect(QRectF(0, 0, width, height), m_colours.paper);
    painter.setPen(QPen(m_colours.mute, 1.2));
    painter.drawLine(QPointF(0, height), QPointF(width, height));
    paintWeeks(painter, canvas.loom, band.left(), grown, width);
    QFont letters = font(LoomText::Sleeve);
    letters.setPixelSize(kAxisLetters);
    letters.setWeight(QFont::DemiBold);
    painter.setFont(letters);
    const QFontMetricsF metrics(letters);
    const std::vector<Stretch> stretches = stretchesOf(canvas.loom);
    double taken = 0;
    for (std::size_t index = 0; index < stretches.size(); ++index) {
        const Stretch &own = stretches[index];
        const double line = at(own.left);
        const double end =
            index + 1 < stretches.size() ? std::min(width, at(stretches[index + 1].left)) : width;
        if (end <= 0 || line >= width)
            continue;
        if (own.line && line > 0) {
            painter.setPen(QPen(mixed(m_colours.mute, m_colours.paper, 0.6), 0.9));
            painter.drawLine(QPointF(line, kMonthLine - 11), QPointF(line, height));
        }
        // Its name keeps in sight as long as any of it is.
        const double from = std::max({line + kBesideLine, kBesideLine, taken});
        for (const QString &text : {own.whole, own.brief}) {
            const double wide = metrics.horizontalAdvance(text);
            if (text.isEmpty() || from + wide > end)
                continue;
            painter.setPen(own.line ? m_colours.ink : m_colours.mute);
            painter.drawText(QPointF(from, kMonthLine), text);
            taken = from + wide + kApart;
            break;
        }
    }
    for (const LoomRule &rule : canvas.loom.rules) {
        const double line = at(rule.x);
        if (rule.kind != LoomRule::Kind::Today || line < 0 || line > width)
            continue;
        painter.setPen(QPen(m_colours.blue, 1.6));
        painter.drawLine(QPointF(line, 3), QPointF(line, height));
        const QString text = LoomWords::tr("today, %1").arg(showDate(rule.day));
        const double wide = metrics.horizontalAdvance(text);
        const bool right = line + kBesideLine + wide <= width || line < wide;
        painter.drawText(
            QPointF(right ? line + kBesideLine : line - kBesideLine - wide, kTodayLine), text);
    }
    painter.restore();
}

// The Mondays' days, as many as there is room for.
void LoomPainter::paintWeeks(QPainter &painter, const plan::Loom &loom, double left, double grown,
                             double width) const
{
    painter.setFont(font(LoomText::Missing));
    painter.setPen(m_colours.mute);
    const QFontMetricsF metrics(font(LoomText::Missing));
    double taken = 0;
    for (const LoomRule &rule : loom.rules) {
        if (rule.kind != LoomRule::Kind::Week && rule.kind != LoomRule::Kind::Month)
            continue;
        const double x = (rule.x - left) / grown + 2;
        const QString day = QString::number(rule.day.day());
        const double wide = metrics.horizontalAdvance(day);
        if (x < taken || x + wide > width)
            continue;
        painter.drawText(QPointF(x, kWeekLine), day);
        taken = x + wide + kApart - 2;
    }
}

} // namespace ohmwright::ui
