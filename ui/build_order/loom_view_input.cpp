// SPDX-License-Identifier: GPL-3.0-or-later
// What keys and the pointer do to the chart.
#include "ui/build_order/loom_view.h"

#include <QKeyEvent>
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
    if (overviewRect().contains(at))
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

void LoomView::setFollowing(bool following)
{
    m_following = following && m_marks.task;
    refreshLit();
    repaintAll();
    announce();
}

void LoomView::startLinking()
{
    if (!m_marks.task)
        return;
    m_marks.wire.reset();
    m_marks.linkFrom = m_marks.task;
    m_marks.linkTo = m_marks.task;
    m_marks.linkEnd.reset();
    viewport()->update();
    announce();
}

// Ends the innermost thing begun: a link, a chosen wire, the followed chain, the choice.
void LoomView::cancel()
{
    m_drag = Drag::None;
    if (m_marks.linkFrom) {
        m_marks.linkFrom.reset();
        m_marks.linkTo.reset();
        m_marks.linkEnd.reset();
    } else if (m_marks.wire) {
        m_marks.wire.reset();
    } else if (m_following) {
        m_following = false;
        refreshLit();
    } else {
        select(std::nullopt);
    }
    repaintAll();
    announce();
}

void LoomView::linkTo(std::size_t task)
{
    const std::optional<std::size_t> from = m_marks.linkFrom;
    if (!from || *from == task)
        return;
    m_marks.linkFrom.reset();
    m_marks.linkTo.reset();
    m_marks.linkEnd.reset();
    viewport()->update();
    announce();
    emit linkRequested(m_network.tasks[*from].key, m_network.tasks[task].key);
}

void LoomView::keyPressEvent(QKeyEvent *event)
{
    if (event->key() == Qt::Key_Space && !event->isAutoRepeat()) {
        m_spaceHeld = true;
        viewport()->setCursor(Qt::OpenHandCursor);
        return;
    }
    if (stepKey(event) || editKey(event) || zoomKey(event))
        event->accept();
    else
        QAbstractScrollArea::keyPressEvent(event);
}

void LoomView::keyReleaseEvent(QKeyEvent *event)
{
    if (event->key() == Qt::Key_Space && !event->isAutoRepeat()) {
        m_spaceHeld = false;
        viewport()->unsetCursor();
        return;
    }
    QAbstractScrollArea::keyReleaseEvent(event);
}

bool LoomView::stepKey(QKeyEvent *event)
{
    std::optional<LoomStep> step;
    switch (event->key()) {
    case Qt::Key_Left:
        step = LoomStep::Before;
        break;
    case Qt::Key_Right:
        step = LoomStep::After;
        break;
    case Qt::Key_Up:
        step = LoomStep::Up;
        break;
    case Qt::Key_Down:
        step = LoomStep::Down;
        break;
    case Qt::Key_Home:
        step = LoomStep::First;
        break;
    case Qt::Key_End:
        step = LoomStep::Last;
        break;
    default:
        return false;
    }
    if (m_loom.tasks.empty())
        return true;
    const bool linking = m_marks.linkFrom.has_value();
    const std::optional<std::size_t> at = linking ? m_marks.linkTo : m_marks.task;
    if (!at) {
        select(loomStart(m_loom));
        return true;
    }
    const bool alongWire = event->modifiers().testFlag(Qt::ControlModifier) &&
                           (*step == LoomStep::Before || *step == LoomStep::After);
    const std::optional<std::size_t> next =
        alongWire ? loomAlongWire(m_loom, *at, *step == LoomStep::After)
                  : loomNeighbour(m_loom, *at, *step);
    if (!next)
        return true;
    if (!linking) {
        select(next);
        return true;
    }
    m_marks.linkTo = next;
    m_marks.linkEnd.reset();
    reveal(m_loom.tasks[*next].body);
    viewport()->update();
    announce();
    return true;
}

bool LoomView::editKey(QKeyEvent *event)
{
    const bool plain = !(event->modifiers() & (Qt::ControlModifier | Qt::AltModifier));
    if (!plain)
        return false;
    switch (event->key()) {
    case Qt::Key_Return:
    case Qt::Key_Enter:
        if (m_marks.linkFrom) {
            if (m_marks.linkTo)
                linkTo(*m_marks.linkTo);
        } else if (m_marks.wire) {
            // To its other end.
            const plan::LoomWire &wire = m_loom.wires[*m_marks.wire];
            select(m_marks.task == wire.to ? wire.from : wire.to);
        } else if (m_marks.task) {
            emit taskActivated(currentTask());
        }
        return true;
    case Qt::Key_N:
        emit addRequested(currentTask(),
                          m_marks.task ? m_network.tasks[*m_marks.task].area : QString());
        return true;
    case Qt::Key_L:
        startLinking();
        return true;
    case Qt::Key_D:
        if (m_marks.task)
            emit doneToggled(currentTask());
        return true;
    case Qt::Key_F:
        setFollowing(!m_following);
        return true;
    case Qt::Key_W:
        nextWire(event->modifiers().testFlag(Qt::ShiftModifier));
        return true;
    case Qt::Key_Delete:
    case Qt::Key_Backspace:
        if (m_marks.wire) {
            const plan::LoomWire wire = m_loom.wires[*m_marks.wire];
            emit unlinkRequested(m_network.tasks[wire.from].key, m_network.tasks[wire.to].key);
        }
        return true;
    case Qt::Key_Escape:
        if (!m_marks.linkFrom && !m_marks.wire && !m_following && !m_marks.task)
            return false;
        cancel();
        return true;
    default:
        return false;
    }
}

bool LoomView::zoomKey(QKeyEvent *event)
{
    switch (event->key()) {
    case Qt::Key_Plus:
    case Qt::Key_Equal:
        zoomIn();
        return true;
    case Qt::Key_Minus:
        zoomOut();
        return true;
    case Qt::Key_0:
        fitAll();
        return true;
    case Qt::Key_1:
        resetZoom();
        return true;
    default:
        return false;
    }
}

// Round the wires of the selected task: into it, then out of it.
void LoomView::nextWire(bool backward)
{
    if (!m_marks.task || m_marks.linkFrom)
        return;
    const std::vector<std::size_t> wires = loomWiresOf(m_loom, *m_marks.task);
    if (wires.empty())
        return;
    const auto at =
        m_marks.wire ? std::find(wires.begin(), wires.end(), *m_marks.wire) : wires.end();
    std::size_t next = backward ? wires.size() - 1 : 0;
    if (at != wires.end()) {
        const auto own = static_cast<std::size_t>(at - wires.begin());
        next = (own + (backward ? wires.size() - 1 : 1)) % wires.size();
    }
    selectWire(wires[next]);
}

void LoomView::mousePressEvent(QMouseEvent *event)
{
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
