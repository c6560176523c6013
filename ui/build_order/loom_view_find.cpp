// SPDX-License-Identifier: GPL-3.0-or-later
// What stands out on the chart: a chain followed, what was found, the next evening; and by chain or
// by date.
#include "ui/build_order/loom_legend_bar.h"
#include "ui/build_order/loom_view.h"

#include <QKeyEvent>
#include <QScrollBar>

#include <algorithm>
#include <cmath>

namespace ohmwright::ui {

namespace {

// An evening's tasks are shown as large as this at most, and not smaller than that.
constexpr double kLargest = 1.5;
constexpr double kLegible = 0.8;
// Where one task stands for the rest, which lie too far apart.
constexpr double kOneTask = 1.25;
constexpr double kAir = 40;

} // namespace

bool LoomView::lacksForecast() const
{
    return m_by == plan::LoomBy::Date && !m_facts.forecast;
}

void LoomView::setBy(plan::LoomBy by)
{
    if (by == m_by)
        return;
    m_by = by;
    m_marks.wire.reset();
    layOutAnew(true);
    if (m_marks.task)
        reveal(m_loom.tasks[*m_marks.task].body);
    announce();
    emit byChanged(by);
}

void LoomView::setForecastMissing(const QString &sentence)
{
    m_forecastMissing = sentence;
    if (lacksForecast())
        viewport()->update();
}

void LoomView::setFollowing(bool following)
{
    light(following ? Light::Chain : Light::None);
}

void LoomView::light(Light light)
{
    m_light = light;
    m_lightFrom.reset();
    if (isFollowing()) {
        m_lightFrom = m_marks.task;
        if (!m_lightFrom)
            m_light = Light::None;
    }
    refreshLit();
    repaintAll();
    announce();
}

void LoomView::refreshLit()
{
    m_marks.lit.clear();
    const auto only = [&](const std::vector<std::size_t> &tasks) {
        m_marks.lit.assign(m_network.tasks.size(), false);
        for (const std::size_t task : tasks)
            m_marks.lit[task] = true;
    };
    if (m_finding) {
        if (!m_findText.isEmpty())
            only(m_found);
        return;
    }
    switch (m_light) {
    case Light::None:
        break;
    case Light::Chain:
        m_marks.lit = loomChain(m_network, *m_lightFrom, LoomWay::Both);
        break;
    case Light::Before:
        m_marks.lit = loomChain(m_network, *m_lightFrom, LoomWay::Before);
        break;
    case Light::After:
        m_marks.lit = loomChain(m_network, *m_lightFrom, LoomWay::After);
        break;
    case Light::Evening:
        only(loomEvening(m_network, m_loom));
        break;
    }
}

QString LoomView::hint() const
{
    if (m_finding) {
        const QString found = m_findText.isEmpty() ? tr("type what the task is called")
                              : m_found.empty()
                                  ? tr("nothing")
                                  : tr("%1 of %2: %3")
                                        .arg(m_foundAt + 1)
                                        .arg(m_found.size())
                                        .arg(m_network.tasks[m_found[m_foundAt]].title);
        return tr("Find “%1”: %2 · Up and Down choose · Enter stays there · Escape goes back")
            .arg(m_findText, found);
    }
    if (m_marks.linkFrom)
        return tr("%1 · arrows and Enter or a click choose · Escape ends").arg(spoken());
    if (m_marks.wire)
        return tr("%1 · Delete unlinks · Escape ends").arg(spoken());
    const QString from = m_lightFrom ? m_network.tasks[*m_lightFrom].title : QString();
    switch (m_light) {
    case Light::None:
        break;
    case Light::Chain:
        return tr("All before and after %1 · Ctrl with arrows walks along · Escape ends").arg(from);
    case Light::Before:
        return tr("All before %1 · Ctrl with arrows walks along · Escape ends").arg(from);
    case Light::After:
        return tr("All after %1 · Ctrl with arrows walks along · Escape ends").arg(from);
    case Light::Evening: {
        const auto count = std::count(m_marks.lit.begin(), m_marks.lit.end(), true);
        return count == 0 ? tr("Nothing can be done just now · Escape ends")
               : count == 1
                   ? tr("The next evening: 1 task · 0 shows all · Escape ends")
                   : tr("The next evening: %1 tasks · 0 shows all · Escape ends").arg(count);
    }
    }
    return {};
}

void LoomView::showEvening()
{
    light(Light::Evening);
    const std::vector<std::size_t> tasks = loomEvening(m_network, m_loom);
    if (tasks.empty())
        return;
    QRectF all;
    for (const std::size_t task : tasks)
        all |= plan::reachOf(m_loom.tasks[task]);
    const QSizeF view = QSizeF(viewport()->size()) - QSizeF(2 * kAir, 2 * kAir);
    const double fitting =
        std::min(view.width() / all.width(), view.height() / all.height()) / fontFactor();
    m_fitted = false;
    const bool chosen =
        m_marks.task && std::find(tasks.begin(), tasks.end(), *m_marks.task) != tasks.end();
    if (fitting < kLegible) {
        if (!chosen)
            select(tasks.front());
        all = plan::reachOf(m_loom.tasks[chosen ? *m_marks.task : tasks.front()]);
    }
    rescale(fitting < kLegible ? kOneTask : std::min(kLargest, fitting));
    updateScrollBars();
    const QPointF middle = (all.center() - m_scene.topLeft()) * scale();
    horizontalScrollBar()->setValue(
        static_cast<int>(std::lround(middle.x() - viewport()->width() / 2.0)));
    verticalScrollBar()->setValue(
        static_cast<int>(std::lround(middle.y() - viewport()->height() / 2.0)));
    repaintAll();
    emit zoomChanged(m_zoom);
}

void LoomView::startFinding()
{
    if (m_loom.tasks.empty() || lacksForecast())
        return;
    m_finding = true;
    m_beforeFinding = m_marks.task;
    m_findText.clear();
    m_found.clear();
    m_foundAt = 0;
    m_marks.wire.reset();
    m_marks.linkFrom.reset();
    m_marks.linkTo.reset();
    refreshLit();
    repaintAll();
    announce();
}

void LoomView::endFinding(bool stay)
{
    m_finding = false;
    const std::optional<std::size_t> back = m_beforeFinding;
    if (isFollowing() && stay)
        m_light = Light::None;
    refreshLit();
    if (!stay) {
        select(back);
    } else if (m_marks.task && scale() < 1) {
        setZoom(1 / fontFactor()); // it was found to be read
    }
    repaintAll();
    announce();
}

void LoomView::findAgain()
{
    m_found = loomFind(m_network, m_loom, m_findText);
    m_foundAt = 0;
    refreshLit();
    if (m_found.empty())
        repaintAll();
    else
        select(m_found.front());
    announce();
}

bool LoomView::findKey(QKeyEvent *event)
{
    const auto turn = [&](std::size_t by) {
        if (m_found.empty())
            return;
        m_foundAt = (m_foundAt + by) % m_found.size();
        select(m_found[m_foundAt]);
        announce();
    };
    switch (event->key()) {
    case Qt::Key_Escape:
        endFinding(false);
        return true;
    case Qt::Key_Return:
    case Qt::Key_Enter:
        endFinding(!m_found.empty());
        return true;
    case Qt::Key_Down:
        turn(1);
        return true;
    case Qt::Key_Up:
        turn(m_found.empty() ? 0 : m_found.size() - 1);
        return true;
    case Qt::Key_Backspace:
        m_findText.chop(1);
        findAgain();
        return true;
    default:
        break;
    }
    if (event->modifiers() & (Qt::ControlModifier | Qt::AltModifier))
        return false;
    const QString typed = event->text();
    if (typed.isEmpty() || !typed.front().isPrint())
        return false;
    m_findText += typed;
    findAgain();
    return true;
}

void LoomView::wentAlong(std::size_t from, bool forward)
{
    m_fork = Fork{from, forward};
}

// Ctrl with Up or Down: the next of the wires at the fork one came by.
bool LoomView::forkKey(QKeyEvent *event)
{
    const bool up = event->key() == Qt::Key_Up;
    if ((!up && event->key() != Qt::Key_Down) ||
        !event->modifiers().testFlag(Qt::ControlModifier) || !m_marks.task || m_marks.linkFrom)
        return false;
    if (!m_fork)
        return true;
    const Fork fork = *m_fork;
    const std::vector<std::size_t> ends = loomFork(m_loom, fork.from, fork.forward);
    const auto at = std::find(ends.begin(), ends.end(), *m_marks.task);
    if (at == ends.end())
        return true;
    const auto place = at - ends.begin() + (up ? -1 : 1);
    if (place < 0 || place >= static_cast<std::ptrdiff_t>(ends.size()))
        return true;
    select(ends[static_cast<std::size_t>(place)]);
    m_fork = fork;
    return true;
}

} // namespace ohmwright::ui
