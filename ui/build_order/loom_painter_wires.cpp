// SPDX-License-Identifier: GPL-3.0-or-later
// Trunks, wires, bundles and their ties.
#include "ui/build_order/loom_painter_canvas.h"

#include <QPainter>
#include <QPainterPath>

#include <algorithm>
#include <cmath>
#include <utility>
#include <vector>

namespace ohmwright::ui {

using plan::LoomWire;

// A cubic stays within its control points.
QRectF LoomPainter::reach(const LoomWire &wire)
{
    if (wire.path.empty())
        return {};
    QPointF low = wire.path.front();
    QPointF high = low;
    for (const QPointF &point : wire.path) {
        low = {std::min(low.x(), point.x()), std::min(low.y(), point.y())};
        high = {std::max(high.x(), point.x()), std::max(high.y(), point.y())};
    }
    return QRectF(low, high).adjusted(-4, -4, 4, 4);
}

QPainterPath LoomPainter::wirePath(const LoomWire &wire)
{
    QPainterPath path;
    if (wire.path.empty())
        return path;
    path.moveTo(wire.path.front());
    for (std::size_t at = 1; at + 2 < wire.path.size(); at += 3)
        path.cubicTo(wire.path[at], wire.path[at + 1], wire.path[at + 2]);
    return path;
}

// Wires side by side lie in one band, as if wrapped together.
void LoomPainter::paintBundles(Canvas &canvas) const
{
    QPainter &painter = canvas.painter;
    painter.setPen(Qt::NoPen);
    painter.setBrush(
        mixed(m_colours.mute, m_colours.paper, canvas.marks.lit.empty() ? 0.11 : 0.05));
    for (const QRectF &bundle : canvas.loom.bundles) {
        if (bundle.intersects(canvas.exposed))
            painter.drawRoundedRect(bundle, 3, 3);
    }
}

// A branch's trunk: a wrapped band. Wires of other branches pass beneath it; where a wire joins two
// neighbours its core is drawn in it, else it is empty.
void LoomPainter::paintTrunks(Canvas &canvas) const
{
    QPainter &painter = canvas.painter;
    const double half = kTrunkHalf;
    const bool dim = !canvas.marks.lit.empty();
    const auto wrapped = [&](const QPainterPath &middle, bool hot) {
        const QColor tone = hot ? m_colours.highVoltage : m_colours.mute;
        const double share = dim ? 0.3 : 1;
        painter.setBrush(Qt::NoBrush);
        painter.setPen(canvas.pen(mixed(tone, m_colours.paper, 0.62 * share), 2 * half + 1.4, 2.2));
        painter.drawPath(middle);
        if (canvas.scale < kCavities)
            return;
        painter.setPen(canvas.pen(mixed(tone, m_colours.paper, 0.13 * share), 2 * half));
        painter.drawPath(middle);
    };
    for (const plan::LoomBranch &branch : canvas.loom.branches) {
        for (const plan::LoomTrunk &trunk : branch.runs) {
            if (trunk.fork.empty())
                continue;
            QPainterPath path(trunk.fork[0]);
            path.cubicTo(trunk.fork[1], trunk.fork[2], trunk.fork[3]);
            if (path.controlPointRect().adjusted(-8, -8, 8, 8).intersects(canvas.exposed))
                wrapped(path, !trunk.spans.empty() && trunk.spans.front().highVoltage);
        }
    }
    for (const plan::LoomBranch &branch : canvas.loom.branches) {
        for (const plan::LoomTrunk &trunk : branch.runs) {
            if (trunk.y < canvas.exposed.top() - 8 || trunk.y > canvas.exposed.bottom() + 8)
                continue;
            for (const plan::LoomSpan &span : trunk.spans) {
                if (span.right < canvas.exposed.left() || span.left > canvas.exposed.right())
                    continue;
                QPainterPath path(QPointF(span.left, trunk.y));
                path.lineTo(span.right, trunk.y);
                wrapped(path, span.highVoltage);
            }
        }
    }
}

void LoomPainter::paintWires(Canvas &canvas, Layer layer) const
{
    const auto &wires = canvas.loom.wires;
    // Quiet ones first; each task's wires together, so that a halo never cuts a wire's own twin.
    std::vector<std::size_t> order;
    const auto touched = [&](const LoomWire &wire) {
        return canvas.marks.task &&
               (wire.from == *canvas.marks.task || wire.to == *canvas.marks.task);
    };
    const auto loudness = [&](const LoomWire &wire) {
        const bool lit = canvas.lit(wire.from) && canvas.lit(wire.to);
        return (lit ? 8 : 0) + (touched(wire) ? 4 : 0) + (wire.driving ? 2 : 0) +
               (wire.highVoltage ? 1 : 0);
    };
    for (std::size_t at = 0; at < wires.size(); ++at) {
        if (!reach(wires[at]).intersects(canvas.exposed))
            continue;
        const bool above =
            wires[at].alongTrunk || wires[at].driving || touched(wires[at]) ||
            canvas.marks.wire == at ||
            (!canvas.marks.lit.empty() && canvas.lit(wires[at].from) && canvas.lit(wires[at].to));
        if (above == (layer == Layer::Above))
            order.push_back(at);
    }
    std::stable_sort(order.begin(), order.end(), [&](std::size_t left, std::size_t right) {
        return std::pair(loudness(wires[left]), wires[left].from) <
               std::pair(loudness(wires[right]), wires[right].from);
    });
    for (std::size_t first = 0; first < order.size();) {
        std::size_t past = first;
        while (past < order.size() && wires[order[past]].from == wires[order[first]].from &&
               loudness(wires[order[past]]) == loudness(wires[order[first]]))
            ++past;
        for (std::size_t at = first; at < past; ++at)
            paintWire(canvas, order[at], true);
        for (std::size_t at = first; at < past; ++at)
            paintWire(canvas, order[at], false);
        first = past;
    }
    canvas.painter.setOpacity(1);
}

void LoomPainter::paintWire(Canvas &canvas, std::size_t index, bool halo) const
{
    const LoomWire &wire = canvas.loom.wires[index];
    if (wire.path.empty())
        return;
    QPainter &painter = canvas.painter;
    const bool lit = canvas.lit(wire.from) && canvas.lit(wire.to);
    const bool touched =
        canvas.marks.task && (wire.from == *canvas.marks.task || wire.to == *canvas.marks.task);
    const bool selected = canvas.marks.wire == index;
    // The thicker, the more often it drives the date; the chain as planned always stands out.
    double width = 1.15 + 2.6 * wire.share;
    if (wire.driving)
        width = wire.share > 0 ? std::max(2.4, width) : 3.4;
    if ((wire.implied || wire.aside) && !wire.driving)
        width = 0.7;
    if ((touched || selected) && !wire.driving)
        width += 0.7;
    const double pixels = wire.driving ? kThickWire : kThinWire;
    if (halo) {
        // A wire that passes over another leaves a little air; only straight stretches do, so that
        // wires that join stay joined.
        if (!lit || canvas.scale < kCavities)
            return;
        painter.setOpacity(1);
        painter.setPen(canvas.pen(m_colours.paper, width + 3));
        for (std::size_t at = 0; at + 3 < wire.path.size(); at += 3) {
            const QPointF from = wire.path[at];
            const QPointF to = wire.path[at + 3];
            if (std::abs(from.x() - to.x()) < 0.01 && std::abs(to.y() - from.y()) > 4)
                painter.drawLine(from, to);
        }
        return;
    }
    QColor colour = wire.met && !wire.driving ? mixed(m_colours.mute, m_colours.paper, 0.75)
                                              : mixed(m_colours.ink, m_colours.paper, 0.88);
    if (wire.driving)
        colour = m_colours.ink;
    if (wire.highVoltage)
        colour = m_colours.highVoltage;
    if (touched || selected)
        colour = m_colours.blue;
    QPen pen = canvas.pen(colour, width, pixels);
    pen.setJoinStyle(Qt::RoundJoin);
    if ((wire.implied || wire.aside) && !wire.driving)
        pen.setDashPattern({6, 4});
    painter.setOpacity(lit ? 1 : kDimmed);
    painter.setBrush(Qt::NoBrush);
    painter.setPen(pen);
    const QPainterPath path = wirePath(wire);
    painter.drawPath(path);
    if (selected) {
        QPen ring = canvas.pen(m_colours.blue, 1, 1);
        const QPointF middle = path.pointAtPercent(0.5);
        painter.setPen(ring);
        painter.setBrush(m_colours.paper);
        painter.drawEllipse(middle, 5 / std::min(1.0, canvas.scale),
                            5 / std::min(1.0, canvas.scale));
    }
}

void LoomPainter::paintTies(Canvas &canvas) const
{
    if (canvas.scale < kCavities)
        return;
    QPainter &painter = canvas.painter;
    painter.setOpacity(canvas.marks.lit.empty() ? 1 : 0.35);
    for (const plan::LoomTie &tie : canvas.loom.ties) {
        if (!canvas.exposed.adjusted(-6, -20, 6, 20).contains(tie.at))
            continue;
        painter.setPen(Qt::NoPen);
        painter.setBrush(mixed(tie.highVoltage ? m_colours.highVoltage : m_colours.mute,
                               m_colours.paper, tie.highVoltage ? 0.8 : 0.62));
        const double high = tie.halfSpan;
        if (tie.acrossUpright)
            painter.drawRect(QRectF(tie.at - QPointF(high, 1.5), QSizeF(2 * high, 3)));
        else
            painter.drawRect(QRectF(tie.at - QPointF(1.5, high), QSizeF(3, 2 * high)));
    }
    painter.setOpacity(1);
}

} // namespace ohmwright::ui
