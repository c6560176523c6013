// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/build_order/loom_legend.h"

#include <QFont>
#include <QFontMetricsF>
#include <QPainter>
#include <QPen>
#include <QStringList>

#include <algorithm>

namespace ohmwright::ui {

using plan::LoomState;

namespace {

constexpr double kSignWidth = 20;
constexpr double kHeight = 22;

QFont legendFont(const QString &family)
{
    QFont font(family);
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
        {Sign::CanStart, tr("can start now"), tr("firm outline: can start now")},
    };
    if (underWay)
        m_items.push_back({Sign::UnderWay, tr("under way"), tr("barred on the left: under way")});
    m_items.push_back({Sign::Waits, tr("waits"), tr("dashed: waits")});
    m_items.push_back(
        {Sign::MetTask, tr("task before done"), tr("round cavity filled: task before it done")});
    m_items.push_back({Sign::MetNeed, tr("need met"), tr("square cavity filled: need met")});
    m_items.push_back({Sign::Driving,
                       shares ? tr("drives the date; thinner: less often") : tr("drives the date"),
                       shares ? tr("thick conductor: drives the date; thinner: less often")
                              : tr("thick conductor: drives the date")});
    if (hot)
        m_items.push_back({Sign::HighVoltage, tr("high voltage"), tr("HV: high voltage")});
    if (loom.impliedOmitted > 0) {
        const QString implied =
            loom.impliedOmitted == 1
                ? tr("1 link that a longer chain implies is not drawn")
                : tr("%1 links that longer chains imply are not drawn").arg(loom.impliedOmitted);
        m_items.push_back({Sign::None, implied, implied});
    }
}

double LoomLegend::height() const
{
    return kHeight;
}

QString LoomLegend::text() const
{
    QStringList parts;
    for (const Item &item : m_items)
        parts.append(item.spoken);
    return parts.join(QStringLiteral(" · "));
}

void LoomLegend::paint(QPainter &painter, QPointF topLeft, double width) const
{
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    const QFont font = legendFont(m_family);
    const QFontMetricsF metrics(font);
    double x = topLeft.x();
    for (const Item &item : m_items) {
        const double sign = item.sign == Sign::None ? 0 : kSignWidth + 6;
        const double words = metrics.horizontalAdvance(item.words);
        if (x + sign + words > topLeft.x() + width)
            break;
        if (item.sign != Sign::None)
            paintSign(painter, item.sign, {x, topLeft.y() + kHeight / 2});
        painter.setFont(font);
        painter.setPen(m_colours.mute);
        painter.drawText(QRectF(x + sign, topLeft.y(), words + 2, kHeight),
                         Qt::AlignLeft | Qt::AlignVCenter, item.words);
        x += sign + words + 18;
    }
    painter.restore();
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
        break;
    case Sign::UnderWay:
        painter.setPen(outline);
        painter.drawRoundedRect(box, 2, 2);
        painter.fillRect(QRectF(box.left(), box.top(), 5, box.height()), m_colours.ink);
        break;
    case Sign::Waits:
        outline = QPen(m_colours.mute, 1.2);
        outline.setDashPattern({3.2, 2.2});
        painter.setPen(outline);
        painter.drawRoundedRect(box, 2, 2);
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
