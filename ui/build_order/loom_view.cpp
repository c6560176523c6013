// SPDX-License-Identifier: GPL-3.0-or-later
// Network to picture, and what is said about it; zoom and place, keys, pointer and painting have
// files of their own.
#include "ui/build_order/loom_view.h"

#include "ui/build_order/loom_accessible.h"
#include "ui/build_order/loom_dress.h"
#include "ui/build_order/loom_legend_bar.h"

#include <QAccessible>
#include <QEvent>
#include <QFontInfo>
#include <QHelpEvent>
#include <QMetaObject>
#include <QPaintEvent>
#include <QPainter>
#include <QResizeEvent>
#include <QScrollBar>
#include <QToolTip>

#include <algorithm>
#include <cmath>
#include <memory>
#include <utility>

namespace ohmwright::ui {

namespace {

// As many tasks are laid out in a few milliseconds.
constexpr std::size_t kLaidOutAtOnce = 400;

} // namespace

LoomView::LoomView(QWidget *parent)
    : QAbstractScrollArea(parent), m_painter(font().family(), LoomColours::light(), fontFactor()),
      m_legend(new LoomLegendBar(this))
{
    installLoomAccessibility();
    setFocusPolicy(Qt::StrongFocus);
    setFrameShape(QFrame::NoFrame);
    viewport()->setMouseTracking(true);
    viewport()->setAutoFillBackground(false);
    setAccessibleName(tr("Build order"));
    setWhatsThis(
        tr("Arrows go along a branch and to the next one, Ctrl with Left or Right along a "
           "wire, Ctrl with Up or Down to the other wires of that fork. Enter opens a "
           "task, T its time, N adds one after it, L links it to another, S marks it "
           "started, D done. W chooses one of its wires and Delete unlinks that. F follows "
           "the chain, P only what comes before, A only what comes after. B lays the "
           "chart out by date or by chain. / finds a task. + and - zoom, 0 shows the whole "
           "build, 1 is full size, E shows the next evening's work. Escape ends what was "
           "begun."));
    m_worker.setMaxThreadCount(1);
    m_legend->setScale(fontFactor());
    placeLegend();
}

LoomView::~LoomView() = default;

void LoomView::setNetwork(const plan::Network &network, const plan::LoomFacts &facts,
                          const LoomRisks &risks)
{
    const bool same = m_coming ? network == m_coming->network && facts == m_coming->facts &&
                                     risks == m_coming->risks
                               : network == m_network && facts == m_facts && risks == m_risks;
    if (same)
        return; // most edits of a book leave the build order as it is
    ++m_run;
    if (network.tasks.size() <= kLaidOutAtOnce || m_network.tasks.empty()) {
        m_coming.reset();
        take(network, facts, risks, std::nullopt);
        return;
    }
    m_coming = Coming{network, facts, risks, m_coming ? m_coming->wanted : QString()};
    layOutBeside();
}

void LoomView::layOutBeside()
{
    m_worker.clear(); // whatever waits is older
    auto options = plan::LoomOptions{.by = m_by, .implied = m_implied};
    m_worker.start([this, run = m_run, network = m_coming->network, facts = m_coming->facts,
                    risks = m_coming->risks, metrics = m_painter.metrics(), like = m_loom,
                    options]() mutable {
        options.like = &like;
        auto loom =
            std::make_shared<plan::Loom>(plan::layOutLoom(network, facts, metrics, options));
        dressLoom(*loom, network, facts, metrics, {&risks, false});
        QMetaObject::invokeMethod(this, [this, run, loom = std::move(loom)] {
            if (run != m_run || !m_coming)
                return;
            const Coming coming = std::move(*m_coming);
            m_coming.reset();
            take(coming.network, coming.facts, coming.risks, std::move(*loom));
            if (!coming.wanted.isEmpty())
                setCurrentTask(coming.wanted);
        });
    });
}

void LoomView::take(const plan::Network &network, const plan::LoomFacts &facts,
                    const LoomRisks &risks, std::optional<plan::Loom> loom)
{
    const auto keyOf = [&](std::optional<std::size_t> task) {
        return task && *task < m_network.tasks.size() ? m_network.tasks[*task].key : QString();
    };
    const QString current = keyOf(m_marks.task);
    const QString linkFrom = keyOf(m_marks.linkFrom);
    const QString lightFrom = keyOf(m_lightFrom);
    m_network = network;
    m_facts = facts;
    m_risks = risks;
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
    m_lightFrom = indexOf(lightFrom);
    if (isFollowing() && !m_lightFrom)
        m_light = Light::None;
    m_fork.reset();
    m_finding = false;
    m_drag = Drag::None;
    if (loom)
        showLoom(std::move(*loom));
    else
        layOut(true);
    loomChanged(this);
    if (!current.isEmpty() && !m_marks.task)
        emit currentTaskChanged(QString());
}

void LoomView::setColours(const LoomColours &colours)
{
    m_painter = LoomPainter(font().family(), colours, fontFactor());
    layOutAnew(true);
}

void LoomView::setImpliedLinks(plan::ImpliedLinks implied)
{
    m_implied = implied;
    m_marks.wire.reset();
    layOutAnew(true);
}

void LoomView::untangle()
{
    layOutAnew(false);
}

// Also what is being laid out beside, or it would come in the old way.
void LoomView::layOutAnew(bool keepBranches)
{
    layOut(keepBranches);
    if (!m_coming)
        return;
    ++m_run;
    layOutBeside();
}

void LoomView::layOut(bool keepBranches)
{
    plan::LoomOptions options;
    options.by = m_by;
    options.implied = m_implied;
    options.like = keepBranches ? &m_loom : nullptr;
    const plan::LoomMetrics metrics = m_painter.metrics();
    plan::Loom loom = plan::layOutLoom(m_network, m_facts, metrics, options);
    dressLoom(loom, m_network, m_facts, metrics, {&m_risks, false});
    showLoom(std::move(loom));
}

void LoomView::showLoom(plan::Loom loom)
{
    m_loom = std::move(loom);
    m_legend->setLegend(LoomLegend(m_painter, m_network, m_loom), m_painter.colours(),
                        m_painter.family());
    placeLegend();
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
    if (m_coming && m_coming->network.find(key)) {
        m_coming->wanted = key;
        return;
    }
    select(std::nullopt);
}

void LoomView::select(std::optional<std::size_t> task)
{
    const bool changed = task != m_marks.task;
    m_marks.task = task;
    m_marks.wire.reset();
    m_fork.reset();
    // Within a lit chain one walks; a step out of it follows the new task's own.
    if (isFollowing() && !m_finding &&
        (!task || *task >= m_marks.lit.size() || !m_marks.lit[*task]))
        m_lightFrom = task;
    if (isFollowing() && !m_lightFrom)
        m_light = Light::None;
    refreshLit();
    if (task)
        reveal(plan::reachOf(m_loom.tasks[*task]));
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
    return QStringLiteral("%1: %2").arg(title(*m_marks.task), description(*m_marks.task));
}

QString LoomView::description(std::size_t task) const
{
    const QString words = LoomWords::description(m_network, m_loom, task);
    const auto risk = m_risks.constFind(m_network.tasks[task].key);
    return risk == m_risks.constEnd() || m_network.tasks[task].done
               ? words
               : words + QStringLiteral("; ") + RiskWords::of(*risk);
}

// What has the focus, for a screen reader: the item itself, and in words on the chart for readers
// that do not go into it.
void LoomView::announce()
{
    setAccessibleDescription(spoken());
    m_legend->setHint(hint());
    const std::optional<std::size_t> task = m_marks.linkFrom ? m_marks.linkTo : m_marks.task;
    if (!task || !hasFocus())
        return;
    QAccessibleEvent focus(this, QAccessible::Focus);
    focus.setChild(static_cast<int>(*task));
    QAccessible::updateAccessibility(&focus);
}

bool LoomView::event(QEvent *event)
{
    // Keys that mean something here must not be taken as shortcuts of the window around it.
    if (event->type() == QEvent::ShortcutOverride) {
        auto *key = static_cast<QKeyEvent *>(event);
        if (m_finding && key->key() != Qt::Key_unknown &&
            !(key->modifiers() & (Qt::ControlModifier | Qt::AltModifier))) {
            event->accept();
            return true;
        }
        if (key->key() == Qt::Key_Slash) { // with Shift on many keyboards
            event->accept();
            return true;
        }
        if (key->modifiers() == Qt::NoModifier || key->modifiers() == Qt::KeypadModifier) {
            switch (key->key()) {
            case Qt::Key_N:
            case Qt::Key_L:
            case Qt::Key_D:
            case Qt::Key_F:
            case Qt::Key_W:
            case Qt::Key_S:
            case Qt::Key_T:
            case Qt::Key_B:
            case Qt::Key_P:
            case Qt::Key_A:
            case Qt::Key_E:
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
        QToolTip::showText(event->globalPos(),
                           LoomWords::toolTip(m_network, *task, description(*task)), viewport(),
                           taskRect(*task));
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
    m_painter = LoomPainter(font().family(), m_painter.colours(), fontFactor());
    m_legend->setScale(fontFactor());
    layOutAnew(true);
}

void LoomView::resizeEvent(QResizeEvent *event)
{
    QAbstractScrollArea::resizeEvent(event);
    placeLegend();
    if (m_fitted)
        fitAll();
    else
        updateScrollBars();
}

void LoomView::scrollContentsBy(int, int)
{
    viewport()->update(); // what stays in sight is moved, the rest painted
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
    if (m_finding) {
        m_finding = false;
        refreshLit();
        announce();
    }
    repaintAll();
}

} // namespace ohmwright::ui
