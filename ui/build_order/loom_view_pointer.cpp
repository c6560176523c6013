// SPDX-License-Identifier: GPL-3.0-or-later
// What the pointer does to the chart.
#include "ui/build_order/loom_view.h"

#include <QMouseEvent>
#include <QPainterPath>
#include <QPainterPathStroker>
#include <QScrollBar>
#include <QWheelEvent>

#include <algorithm>
#include <cmath>
#include <utility>

namespace ohmwright::ui {

namespace {

// How near a wire or a housing's end the pointer must be, pixels.
constexpr double kWireReach = 5;
constexpr double kHandleReach = 11;
// A press that moves less than this is a click, pixels.
constexpr int kClick = 4;
// One notch of a wheel, eighths of a degree; a notch zooms by this much.
constexpr double kNotch = 120;
constexpr double kNotchZoom = 1.2;

} // namespace

std::optional<std::size_t> LoomView::taskAt(QPointF at) const
{
    if (overviewRect().contains(at) || lacksForecast() || at.y() < datesBottom())
        return std::nullopt;
    const QPointF scenePoint = toScene(at);
    for (const plan::LoomTask &task : m_loom.tasks) {
        if (task.body.adjusted(-3, -6, 3, 3).contains(scenePoint))
            return task.task;
    }
    return std::nullopt;
}

// The right end of a housing, where its wire leaves.
std::optional<std::size_t> LoomView::linkHandleAt(QPointF at) const
{
    if (lacksForecast() || at.y() < datesBottom())
        return std::nullopt;
    const QPointF scenePoint = toScene(at);
    const double reach = kHandleReach / std::min(1.0, scale());
    for (const plan::LoomTask &task : m_loom.tasks) {
        const QRectF handle(task.body.right() - reach * 0.6, task.body.center().y() - reach,
                            reach * 1.6, 2 * reach);
        if (handle.contains(scenePoint))
            return task.task;
    }
    return std::nullopt;
}

std::optional<std::size_t> LoomView::wireAt(QPointF at) const
{
    if (lacksForecast() || at.y() < datesBottom())
        return std::nullopt;
    const QPointF scenePoint = toScene(at);
    const double reach = kWireReach / scale();
    QPainterPathStroker stroker;
    stroker.setWidth(2 * reach);
    for (std::size_t wire = 0; wire < m_loom.wires.size(); ++wire) {
        const QPainterPath path = LoomPainter::wirePath(m_loom.wires[wire]);
        if (path.controlPointRect().adjusted(-reach, -reach, reach, reach).contains(scenePoint) &&
            stroker.createStroke(path).contains(scenePoint))
            return wire;
    }
    return std::nullopt;
}

void LoomView::mousePressEvent(QMouseEvent *event)
{
    if (m_finding) {
        m_finding = false;
        refreshLit();
        repaintAll();
        announce();
    }
    m_pressedAt = event->pos();
    m_draggedTo = event->pos();
    if (event->button() == Qt::MiddleButton || (event->button() == Qt::LeftButton && m_spaceHeld)) {
        m_drag = Drag::Pan;
        viewport()->setCursor(Qt::ClosedHandCursor);
        return;
    }
    if (event->button() != Qt::LeftButton)
        return;
    if (overviewRect().contains(event->position())) {
        m_drag = Drag::Overview;
        goByOverview(event->position());
        return;
    }
    const std::optional<std::size_t> task = taskAt(event->position());
    if (m_marks.linkFrom) {
        if (task)
            linkTo(*task);
        else
            cancel();
        return;
    }
    const std::optional<std::size_t> handle = linkHandleAt(event->position());
    if (handle) {
        select(handle);
        m_drag = Drag::Link;
        return;
    }
    if (task) {
        select(task);
        return;
    }
    if (const std::optional<std::size_t> wire = wireAt(event->position())) {
        selectWire(wire);
        return;
    }
    m_drag = Drag::Pan;
    viewport()->setCursor(Qt::ClosedHandCursor);
}

void LoomView::mouseMoveEvent(QMouseEvent *event)
{
    const QPoint moved = event->pos() - m_draggedTo;
    switch (m_drag) {
    case Drag::Pan:
        horizontalScrollBar()->setValue(horizontalScrollBar()->value() - moved.x());
        verticalScrollBar()->setValue(verticalScrollBar()->value() - moved.y());
        m_draggedTo = event->pos();
        return;
    case Drag::Overview:
        goByOverview(event->position());
        return;
    case Drag::Link: {
        if ((event->pos() - m_pressedAt).manhattanLength() < kClick)
            return;
        m_marks.linkFrom = m_marks.task;
        m_marks.linkEnd = toScene(event->position());
        const std::optional<std::size_t> task = taskAt(event->position());
        m_marks.linkTo = task != m_marks.linkFrom ? task : std::nullopt;
        viewport()->update();
        announce();
        return;
    }
    case Drag::None:
        break;
    }
    const std::optional<std::size_t> hover = taskAt(event->position());
    if (m_marks.linkFrom) {
        m_marks.linkEnd = toScene(event->position());
        if (hover)
            m_marks.linkTo = hover;
        viewport()->update();
    }
    if (!m_spaceHeld) {
        if (linkHandleAt(event->position()))
            viewport()->setCursor(Qt::CrossCursor);
        else if (hover)
            viewport()->setCursor(Qt::PointingHandCursor);
        else
            viewport()->unsetCursor();
    }
    if (hover != m_marks.hover) {
        m_marks.hover = hover;
        viewport()->update();
    }
}

void LoomView::mouseReleaseEvent(QMouseEvent *event)
{
    const Drag drag = std::exchange(m_drag, Drag::None);
    const bool clicked = (event->pos() - m_pressedAt).manhattanLength() < kClick;
    if (drag == Drag::Pan) {
        viewport()->unsetCursor();
        if (clicked && event->button() == Qt::LeftButton && !m_spaceHeld)
            select(std::nullopt);
    } else if (drag == Drag::Link && m_marks.linkFrom) {
        const std::optional<std::size_t> task = taskAt(event->position());
        if (task && task != m_marks.linkFrom)
            linkTo(*task);
        else
            cancel();
    }
}

void LoomView::mouseDoubleClickEvent(QMouseEvent *event)
{
    if (event->button() != Qt::LeftButton)
        return;
    const std::optional<std::size_t> task = taskAt(event->position());
    if (task && !m_marks.linkFrom) {
        select(task);
        emit taskActivated(currentTask());
    }
}

void LoomView::wheelEvent(QWheelEvent *event)
{
    if (event->modifiers().testFlag(Qt::ControlModifier)) {
        m_fitted = false;
        zoomAbout(m_zoom * std::pow(kNotchZoom, event->angleDelta().y() / kNotch),
                  event->position());
        event->accept();
        return;
    }
    if (event->modifiers().testFlag(Qt::ShiftModifier) && event->angleDelta().x() == 0) {
        horizontalScrollBar()->setValue(horizontalScrollBar()->value() - event->angleDelta().y());
        event->accept();
        return;
    }
    QAbstractScrollArea::wheelEvent(event);
}

} // namespace ohmwright::ui
