// SPDX-License-Identifier: GPL-3.0-or-later
// What keys do to the chart.
#include "ui/build_order/loom_view.h"

#include <QKeyEvent>

#include <algorithm>
#include <cstddef>
#include <optional>
#include <vector>

namespace ohmwright::ui {

void LoomView::startLinking()
{
    if (!m_marks.task)
        return;
    m_marks.wire.reset();
    m_marks.linkFrom = m_marks.task;
    m_marks.linkTo = m_marks.task;
    m_marks.linkEnd.reset();
    repaintAll(); // the wire's ring
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
    } else if (m_light != Light::None) {
        light(Light::None);
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
    if (m_finding && findKey(event)) {
        event->accept();
        return;
    }
    if (event->key() == Qt::Key_Space && !event->isAutoRepeat()) {
        m_spaceHeld = true;
        viewport()->setCursor(Qt::OpenHandCursor);
        return;
    }
    if (forkKey(event) || stepKey(event) || editKey(event) || zoomKey(event))
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
        if (alongWire)
            wentAlong(*at, *step == LoomStep::After);
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
    case Qt::Key_S:
        if (m_marks.task)
            emit startedToggled(currentTask());
        return true;
    case Qt::Key_T:
        if (m_marks.task)
            emit timeRequested(currentTask());
        return true;
    case Qt::Key_F:
        light(m_light == Light::Chain ? Light::None : Light::Chain);
        return true;
    case Qt::Key_P:
        light(m_light == Light::Before ? Light::None : Light::Before);
        return true;
    case Qt::Key_A:
        light(m_light == Light::After ? Light::None : Light::After);
        return true;
    case Qt::Key_B:
        setBy(m_by == plan::LoomBy::Date ? plan::LoomBy::Chain : plan::LoomBy::Date);
        return true;
    case Qt::Key_Slash:
        startFinding();
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
        if (!m_marks.linkFrom && !m_marks.wire && m_light == Light::None && !m_marks.task)
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
    case Qt::Key_E:
        showEvening();
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

} // namespace ohmwright::ui
