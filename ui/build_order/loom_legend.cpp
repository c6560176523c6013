// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/build_order/loom_legend.h"

#include <QFont>
#include <QFontMetricsF>
#include <QPainter>
#include <QPainterPath>
#include <QPen>
#include <QPolygonF>
#include <QStringList>

#include <algorithm>

namespace ohmwright::ui {

using plan::LoomState;

namespace {

constexpr double kSignWidth = 20;
constexpr double kHeight = LoomLegend::kLine;
constexpr double kBetween = 15;
constexpr double kBetweenWords = 4;

QFont legendFont(const QString &family)
{
    QFont font(family);
    font.setHintingPreference(QFont::PreferNoHinting); // measured as it is drawn at any scale
    font.setPixelSize(12);
    return font;
}

} // namespace

LoomLegend::LoomLegend(const LoomPainter &painter, const plan::Network &network,
                       const plan::Loom &loom)
    : m_family(painter.family()), m_colours(painter.colours())
{
    const bool underWay = std::any_of(loom.tasks.begin(), loom.tasks.end(), [](const auto &task) {
        return task.state == LoomState::UnderWay;
    });
    const bool hot = std::any_of(network.tasks.begin(), network.tasks.end(),
                                 [](const plan::Task &task) { return task.highVoltage; });
    const bool shares = std::any_of(loom.wires.begin(), loom.wires.end(), [](const auto &wire) {
        return wire.share > 0 && !wire.driving;
    });
    m_items = {
        {Sign::Done, tr("done"), tr("solid: done")},
        {Sign::CanStart, tr("can start now"), tr("firm outline and a flag: can start now")},
    };
    if (underWay)
        m_items.push_back(
            {Sign::UnderWay, tr("under way"), tr("barred on the left, and a flag: under way")});
    m_items.push_back({Sign::Waits, tr("waits"), tr("dashed: waits")});
    if (std::any_of(network.tasks.begin(), network.tasks.end(),
                    [](const plan::Task &task) { return task.aside; }))
        m_items.push_back(
            {Sign::Aside, tr("set aside"), tr("dotted: set aside, of an option not planned with")});
    m_items.push_back(
        {Sign::MetTask, tr("task before done"), tr("round cavity filled: task before it done")});
    m_items.push_back({Sign::MetNeed, tr("need met"), tr("square cavity filled: need met")});
    m_items.push_back({Sign::Driving,
                       shares ? tr("chain to the milestone; thinner: drives the end, less often")
                              : tr("chain to the milestone"),
                       shares ? tr("thick conductor: longest chain to the milestone; of the others "
                                   "the thicker, the more often it drives the end of the build")
                              : tr("thick conductor: longest chain to the milestone")});
    if (!loom.today.isNull() && loom.rules.empty()) {
        m_items.push_back({Sign::Ready, tr("80\u00A0% day; line: 50 to 95\u00A0%"),
                           tr("day below a task: done by then in 80\u00A0% of the forecast's runs, "
                              "and a line from 50 to 95\u00A0%")});
    }
    if (!loom.rules.empty()) {
        m_items.push_back({Sign::Plan, tr("plan: from start to end"),
                           tr("below a task its plan, “22–24 Jul”: from the day it is "
                              "planned to start, where it stands on the dates above, to the day it "
                              "is planned to be done by; the thick bar below the row is as long")});
        m_items.push_back(
            {Sign::Ready, tr("done by, 50 to 95\u00A0%; tick: 80\u00A0%"),
             tr("thin line behind the bar: from the day it is done by in 50\u00A0% of "
                "the forecast's runs to that of 95\u00A0%, on the dates above; tick "
                "and “80\u00A0%”: done by then in 80\u00A0% of them")});
    }
    if (std::any_of(loom.tasks.begin(), loom.tasks.end(), [&](const plan::LoomTask &task) {
            return !network.tasks[task.task].milestone && !task.date.lines.isEmpty();
        }))
        m_items.push_back(
            {Sign::Again, tr("may fail, and from where it is then done again"),
             tr("arrow that turns back: may fail, how likely each time, and from "
                "which task on all is then done again; the days of the forecast reckon "
                "with that")});
    if (!loom.today.isNull())
        m_items.push_back({Sign::Slack, tr("days of float"), tr("loop: days of float")});
    if (!loom.rules.empty()) {
        m_items.push_back({Sign::Today, tr("today"), tr("blue line: today")});
        const QString even = tr("weeks are as wide as their work needs");
        m_items.push_back({Sign::None, even, even});
    }
    if (hot)
        m_items.push_back({Sign::HighVoltage, tr("high voltage"), tr("HV: high voltage")});
    if (loom.impliedOmitted > 0) {
        const QString implied =
            tr("%1 not drawn")
                .arg(loom.impliedOmitted == 1 ? tr("1 implied link")
                                              : tr("%1 implied links").arg(loom.impliedOmitted));
        m_items.push_back({Sign::None, implied, implied + tr(": longer chains imply them")});
    }
}

void LoomLegend::addCuts()
{
    const QString cuts = tr("a number at a cut: there the wire goes on");
    m_items.push_back({Sign::None, cuts, cuts});
}

void LoomLegend::addLeftOut(const std::vector<std::pair<QString, int>> &areas)
{
    QString words = tr("done and left out:");
    for (std::size_t at = 0; at < areas.size(); ++at) {
        const QString name = areas[at].first.isEmpty() ? tr("no area") : areas[at].first;
        words += (at == 0 ? QStringLiteral(" ") : QString()) +
                 tr("%1\u00A0%2").arg(name).arg(areas[at].second);
        if (at + 1 < areas.size())
            words += QLatin1Char(',');
        m_items.push_back({Sign::None, words, words, at > 0});
        words.clear();
    }
}

QString LoomLegend::text() const
{
    QStringList parts;
    for (const Item &item : m_items) {
        if (item.goesOn)
            parts.back() += QLatin1Char(' ') + item.spoken;
        else
            parts.append(item.spoken);
    }
    return parts.join(QStringLiteral(" · "));
}

double LoomLegend::paint(QPainter *painter, QPointF topLeft, double width) const
{
    if (painter) {
        painter->save();
        painter->setRenderHint(QPainter::Antialiasing);
    }
    QPointF at = topLeft;
    for (const Item &item : m_items) {
        const double own = widthOf(item);
        if (item.goesOn)
            at.rx() -= kBetween - kBetweenWords;
        if (at.x() > topLeft.x() && at.x() + own > topLeft.x() + width)
            at = QPointF(topLeft.x(), at.y() + kHeight);
        if (painter)
            paintItem(*painter, item, at);
        at.rx() += own + kBetween;
    }
    if (painter)
        painter->restore();
    return at.y() + kHeight - topLeft.y();
}

double LoomLegend::widthOf(const Item &item) const
{
    return (item.sign == Sign::None ? 0 : kSignWidth + 6) +
           QFontMetricsF(legendFont(m_family)).horizontalAdvance(item.words);
}

void LoomLegend::paintItem(QPainter &painter, const Item &item, QPointF topLeft) const
{
    const double sign = item.sign == Sign::None ? 0 : kSignWidth + 6;
    if (item.sign != Sign::None)
        paintSign(painter, item.sign, topLeft + QPointF(0, kHeight / 2));
    painter.setFont(legendFont(m_family));
    painter.setPen(m_colours.mute);
    painter.drawText(QRectF(topLeft.x() + sign, topLeft.y(), widthOf(item) - sign + 2, kHeight),
                     Qt::AlignLeft | Qt::AlignVCenter | Qt::TextDontClip, item.words);
}

// As on a task that can be taken up.
void LoomLegend::paintFlag(QPainter &painter, const QRectF &box) const
{
    const QPointF foot(box.left() + 3, box.top());
    painter.setPen(QPen(m_colours.blue, 1.2));
    painter.drawLine(foot, foot - QPointF(0, 6));
    painter.setPen(Qt::NoPen);
    painter.setBrush(m_colours.blue);
    painter.drawPolygon(
        QPolygonF{foot - QPointF(0, 6.5), foot + QPointF(7, -4), foot - QPointF(0, 1.5)});
}

// `at`: middle of the left edge.
void LoomLegend::paintSign(QPainter &painter, Sign sign, QPointF at) const
{
    const QRectF box(at.x() + 1, at.y() - 5, kSignWidth - 2, 10);
    QPen outline(m_colours.ink, 1.8);
    painter.setBrush(m_colours.panel);
    switch (sign) {
    case Sign::Done:
        painter.setPen(Qt::NoPen);
        painter.setBrush(m_colours.ink);
        painter.drawRoundedRect(box, 2, 2);
        break;
    case Sign::CanStart:
        painter.setPen(outline);
        painter.drawRoundedRect(box, 2, 2);
        paintFlag(painter, box);
        break;
    case Sign::UnderWay:
        painter.setPen(outline);
        painter.drawRoundedRect(box, 2, 2);
        painter.fillRect(QRectF(box.left(), box.top(), 5, box.height()), m_colours.ink);
        paintFlag(painter, box);
        break;
    case Sign::Waits:
        outline = QPen(m_colours.mute, 1.2);
        outline.setDashPattern({3.2, 2.2});
        painter.setPen(outline);
        painter.drawRoundedRect(box, 2, 2);
        break;
    case Sign::Aside:
        outline = QPen(m_colours.mute, 0.9);
        outline.setDashPattern({1.2, 3.4});
        painter.setPen(outline);
        painter.drawRoundedRect(box, 2, 2);
        break;
    case Sign::Ready:
        painter.setPen(QPen(m_colours.mute, 0.9));
        painter.drawLine(QPointF(box.left(), at.y()), QPointF(box.right(), at.y()));
        for (const double x : {box.left(), box.right()})
            painter.drawLine(QPointF(x, at.y() - 2), QPointF(x, at.y() + 2));
        painter.setPen(QPen(m_colours.ink, 1.8));
        painter.drawLine(QPointF(box.left() + box.width() * 0.6, at.y() - 3),
                         QPointF(box.left() + box.width() * 0.6, at.y() + 3));
        break;
    case Sign::Plan:
        painter.setPen(QPen(m_colours.mute, 2.6, Qt::SolidLine, Qt::FlatCap));
        painter.drawLine(QPointF(box.left(), at.y()), QPointF(box.right(), at.y()));
        break;
    case Sign::Again:
        painter.setPen(QPen(m_colours.ink, 1));
        painter.setBrush(m_colours.paper);
        painter.drawEllipse(box.center(), 6.2, 6.2);
        painter.setBrush(Qt::NoBrush);
        painter.drawPath(
            LoomPainter::againPath(QRectF(box.center() - QPointF(4, 3.8), QSizeF(8, 7))));
        break;
    case Sign::Slack: {
        const QPainterPath loop =
            LoomPainter::slackPath(QRectF(box.left() + 2, box.top(), 14, 10), 0.6);
        painter.setPen(QPen(m_colours.mute, 1.1));
        painter.setBrush(Qt::NoBrush);
        painter.drawPath(loop);
        break;
    }
    case Sign::Today:
        painter.setPen(QPen(m_colours.blue, 1.6));
        painter.drawLine(QPointF(box.center().x(), at.y() - 7),
                         QPointF(box.center().x(), at.y() + 7));
        break;
    case Sign::MetTask:
        painter.setPen(QPen(m_colours.ink, 1));
        painter.setBrush(m_colours.ink);
        painter.drawEllipse(box.center(), 3.5, 3.5);
        break;
    case Sign::MetNeed:
        painter.setPen(QPen(m_colours.ink, 1));
        painter.setBrush(m_colours.ink);
        painter.drawRoundedRect(QRectF(box.center() - QPointF(4, 3.5), QSizeF(8, 7)), 1.5, 1.5);
        break;
    case Sign::Driving:
        painter.setPen(QPen(m_colours.ink, 3.4, Qt::SolidLine, Qt::FlatCap));
        painter.drawLine(QPointF(box.left(), at.y()), QPointF(box.right(), at.y()));
        break;
    case Sign::HighVoltage: {
        painter.setPen(QPen(m_colours.highVoltage, 1));
        painter.setBrush(m_colours.paper);
        painter.drawRoundedRect(box.adjusted(0, -0.5, 0, 0.5), 2, 2);
        QFont letters(m_family);
        letters.setPixelSize(9);
        letters.setWeight(QFont::Bold);
        painter.setFont(letters);
        painter.setPen(m_colours.ink);
        painter.drawText(box, Qt::AlignCenter, QStringLiteral("HV"));
        break;
    }
    case Sign::None:
        break;
    }
}

} // namespace ohmwright::ui
