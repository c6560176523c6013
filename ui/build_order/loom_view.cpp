// SPDX-License-Identifier: GPL-3.0-or-later
// Network to picture, what is chosen, and what is said about it. Zoom and place, keys, pointer and
// painting have files of their own.
#include "ui/build_order/loom_view.h"

#include "ui/build_order/loom_accessible.h"
#include "ui/build_order/loom_legend_bar.h"

#include <QAccessible>
#include <QEvent>
#include <QHelpEvent>
#include <QKeyEvent>
#include <QResizeEvent>
#include <QToolTip>

namespace ohmwright::ui {

LoomView::LoomView(QWidget *parent)
    : QAbstractScrollArea(parent), m_painter(font().family(), LoomColours::light()),
      m_legend(new LoomLegendBar(this))
{
    installLoomAccessibility();
    setFocusPolicy(Qt::StrongFocus);
    setFrameShape(QFrame::NoFrame);
    viewport()->setMouseTracking(true);
    viewport()->setAutoFillBackground(false);
    setAccessibleName(tr("Build order"));
    setWhatsThis(tr("Arrows go along a branch and to the next one, Ctrl with Left or Right along a "
                    "wire. Enter opens a task, N adds one after it, L links it to another, D marks "
                    "it done. W chooses one of its wires and Delete unlinks that. F follows the "
                    "chain. + and - zoom, 0 shows all, 1 is full size. Escape ends what was "
                    "begun."));
    m_legend->setScale(fontFactor());
    setViewportMargins(0, m_legend->sizeHint().height(), 0, 0);
}

LoomView::~LoomView() = default;

void LoomView::setNetwork(const plan::Network &network, const plan::LoomFacts &facts)
{
    const auto keyOf = [&](std::optional<std::size_t> task) {
        return task && *task < m_network.tasks.size() ? m_network.tasks[*task].key : QString();
    };
    const QString current = keyOf(m_marks.task);
    const QString linkFrom = keyOf(m_marks.linkFrom);
    m_network = network;
    m_facts = facts;
    const auto indexOf = [&](const QString &key) -> std::optional<std::size_t> {
        for (std::size_t task = 0; task < m_network.tasks.size() && !key.isEmpty(); ++task) {
            if (m_network.tasks[task].key == key)
                return task;
        }
        return std::nullopt;
    };
    m_marks = LoomMarks();
    m_marks.focus = hasFocus();
    m_marks.task = indexOf(current);
    m_marks.linkFrom = indexOf(linkFrom);
    m_marks.linkTo = m_marks.linkFrom;
    m_following = m_following && m_marks.task;
    m_drag = Drag::None;
    layOut(true);
    loomChanged(this);
    if (!current.isEmpty() && !m_marks.task)
        emit currentTaskChanged(QString());
}

void LoomView::setColours(const LoomColours &colours)
{
    m_painter = LoomPainter(font().family(), colours);
    layOut(true);
}

void LoomView::setImpliedLinks(plan::ImpliedLinks implied)
{
    m_implied = implied;
    m_marks.wire.reset();
    layOut(true);
}

void LoomView::untangle()
{
    layOut(false);
}

void LoomView::layOut(bool keepBranches)
{
    plan::LoomOptions options;
    options.implied = m_implied;
    options.like = keepBranches ? &m_loom : nullptr;
    m_loom = plan::layOutLoom(m_network, m_facts, m_painter.metrics(), options);
    m_legend->setLegend(LoomLegend(m_painter, m_network, m_loom), m_painter.colours(),
                        m_painter.family());
    m_overview = QPixmap();
    refreshLit();
    if (m_fitted) {
        fitAll();
    } else {
        rescale(m_zoom);
        updateScrollBars();
    }
    repaintAll();
}

QString LoomView::currentTask() const
{
    return m_marks.task ? m_network.tasks[*m_marks.task].key : QString();
}

void LoomView::setCurrentTask(const QString &key)
{
    for (std::size_t task = 0; task < m_network.tasks.size(); ++task) {
        if (m_network.tasks[task].key == key) {
            select(task);
            return;
        }
    }
    select(std::nullopt);
}

void LoomView::select(std::optional<std::size_t> task)
{
    const bool changed = task != m_marks.task;
    m_marks.task = task;
    m_marks.wire.reset();
    refreshLit();
    if (task)
        reveal(m_loom.tasks[*task].body | m_loom.tasks[*task].missing.box);
    repaintAll();
    if (!changed)
        return;
    announce();
    emit currentTaskChanged(currentTask());
}

void LoomView::selectWire(std::optional<std::size_t> wire)
{
    m_marks.wire = wire;
    repaintAll();
    announce();
}

QString LoomView::spoken() const
{
    const auto title = [&](std::size_t task) {
        return m_network.tasks[task].title;
    };
    if (m_marks.linkFrom) {
        const QString from = title(*m_marks.linkFrom);
        return m_marks.linkTo && m_marks.linkTo != m_marks.linkFrom
                   ? tr("link: %1 waits on %2").arg(title(*m_marks.linkTo), from)
                   : tr("link from %1: choose the task that waits on it").arg(from);
    }
    if (m_marks.wire) {
        return LoomWords::wire(m_network, m_loom.wires[*m_marks.wire]);
    }
    if (!m_marks.task)
        return {};
    return QStringLiteral("%1: %2").arg(title(*m_marks.task),
                                        LoomWords::description(m_network, m_loom, *m_marks.task));
}

// What has the focus, for a screen reader: the item itself, and in words on the chart for readers
// that do not go into it.
void LoomView::announce()
{
    setAccessibleDescription(spoken());
    if (m_marks.linkFrom)
        m_legend->setHint(
            tr("%1 · arrows and Enter or a click choose · Escape ends").arg(spoken()));
    else if (m_marks.wire)
        m_legend->setHint(tr("%1 · Delete unlinks · Escape ends").arg(spoken()));
    else if (m_following && m_marks.task)
        m_legend->setHint(
            tr("All before and after %1 · Escape ends").arg(m_network.tasks[*m_marks.task].title));
    else
        m_legend->setHint(QString());
    const std::optional<std::size_t> task = m_marks.linkFrom ? m_marks.linkTo : m_marks.task;
    if (!task || !hasFocus())
        return;
    QAccessibleEvent focus(this, QAccessible::Focus);
    focus.setChild(static_cast<int>(*task));
    QAccessible::updateAccessibility(&focus);
}

void LoomView::refreshLit()
{
    m_marks.lit.clear();
    if (m_following && m_marks.task)
        m_marks.lit = loomChain(m_network, *m_marks.task);
}

bool LoomView::event(QEvent *event)
{
    // Keys that mean something here must not be taken as shortcuts of the window around it.
    if (event->type() == QEvent::ShortcutOverride) {
        auto *key = static_cast<QKeyEvent *>(event);
        if (key->modifiers() == Qt::NoModifier || key->modifiers() == Qt::KeypadModifier) {
            switch (key->key()) {
            case Qt::Key_N:
            case Qt::Key_L:
            case Qt::Key_D:
            case Qt::Key_F:
            case Qt::Key_W:
            case Qt::Key_0:
            case Qt::Key_1:
            case Qt::Key_Plus:
            case Qt::Key_Minus:
            case Qt::Key_Delete:
                event->accept();
                return true;
            default:
                break;
            }
        }
    }
    return QAbstractScrollArea::event(event);
}

bool LoomView::viewportEvent(QEvent *event)
{
    if (event->type() == QEvent::ToolTip) {
        showToolTip(static_cast<QHelpEvent *>(event));
        return true;
    }
    if (event->type() == QEvent::Leave && m_marks.hover) {
        m_marks.hover.reset();
        viewport()->update();
    }
    return QAbstractScrollArea::viewportEvent(event);
}

void LoomView::showToolTip(QHelpEvent *event)
{
    const std::optional<std::size_t> task = taskAt(event->pos());
    if (task) {
        QToolTip::showText(event->globalPos(), LoomWords::toolTip(m_network, m_loom, *task),
                           viewport(), taskRect(*task));
        return;
    }
    const std::optional<std::size_t> wire = wireAt(event->pos());
    if (wire)
        QToolTip::showText(event->globalPos(),
                           LoomWords::wire(m_network, m_loom.wires[*wire]).toHtmlEscaped(),
                           viewport());
    else
        QToolTip::hideText();
}

void LoomView::changeEvent(QEvent *event)
{
    QAbstractScrollArea::changeEvent(event);
    if (event->type() != QEvent::FontChange)
        return;
    m_painter = LoomPainter(font().family(), m_painter.colours());
    m_legend->setScale(fontFactor());
    setViewportMargins(0, m_legend->sizeHint().height(), 0, 0);
    layOut(true);
}

void LoomView::resizeEvent(QResizeEvent *event)
{
    QAbstractScrollArea::resizeEvent(event);
    m_legend->setGeometry(0, 0, width(), m_legend->sizeHint().height());
    if (m_fitted)
        fitAll();
    else
        updateScrollBars();
}

void LoomView::scrollContentsBy(int, int)
{
    // Sliding sleeves and the overview stay where they are, so all is painted anew.
    repaintAll();
}

void LoomView::focusInEvent(QFocusEvent *event)
{
    QAbstractScrollArea::focusInEvent(event);
    m_marks.focus = true;
    repaintAll();
    announce();
}

void LoomView::focusOutEvent(QFocusEvent *event)
{
    QAbstractScrollArea::focusOutEvent(event);
    m_marks.focus = false;
    m_spaceHeld = false;
    repaintAll();
}

} // namespace ohmwright::ui
