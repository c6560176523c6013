// SPDX-License-Identifier: GPL-3.0-or-later
// Zoom, and which part of the loom the window shows.
#include "ui/build_order/loom_view.h"

#include <QFontInfo>
#include <QScrollBar>

#include <algorithm>
#include <cmath>

namespace ohmwright::ui {

namespace {

constexpr double kLeastZoom = 0.04;
constexpr double kMostZoom = 4;
constexpr double kZoomStep = 1.2;
// Air around what has just been chosen, and around the whole, pixels.
constexpr double kAir = 24;
// More on the left, where the names of branches stand.
constexpr double kAirLeft = 140;

} // namespace

// The loom's own sizes are meant for an interface font of 13 pixels.
double LoomView::fontFactor() const
{
    return std::max(0.5, QFontInfo(font()).pixelSize() / 13.0);
}

double LoomView::scale() const
{
    return m_zoom * fontFactor();
}

void LoomView::rescale(double zoom)
{
    m_zoom = std::clamp(zoom, kLeastZoom, kMostZoom);
    m_scene = m_painter.extent(m_loom, scale());
}

QPointF LoomView::origin() const
{
    const QRectF all = m_scene;
    const QSizeF view = viewport()->size();
    const QSizeF size = all.size() * scale();
    // What is smaller than the window lies in its middle.
    return {size.width() < view.width() ? (view.width() - size.width()) / 2
                                        : -horizontalScrollBar()->value(),
            size.height() < view.height() ? (view.height() - size.height()) / 2
                                          : -verticalScrollBar()->value()};
}

QPointF LoomView::toScene(QPointF at) const
{
    return m_scene.topLeft() + (at - origin()) / scale();
}

QRect LoomView::taskRect(std::size_t task) const
{
    const QRectF &body = m_loom.tasks.at(task).body;
    const QPointF topLeft = origin() + (body.topLeft() - m_scene.topLeft()) * scale();
    return QRectF(topLeft, body.size() * scale()).toAlignedRect();
}

void LoomView::updateScrollBars()
{
    const QSizeF size = m_scene.size() * scale();
    const QSize view = viewport()->size();
    horizontalScrollBar()->setPageStep(view.width());
    verticalScrollBar()->setPageStep(view.height());
    horizontalScrollBar()->setSingleStep(40);
    verticalScrollBar()->setSingleStep(40);
    horizontalScrollBar()->setRange(
        0, std::max(0, static_cast<int>(std::ceil(size.width())) - view.width()));
    verticalScrollBar()->setRange(
        0, std::max(0, static_cast<int>(std::ceil(size.height())) - view.height()));
}

void LoomView::zoomAbout(double zoom, QPointF at)
{
    const QPointF kept = toScene(at);
    rescale(zoom);
    updateScrollBars();
    const QPointF now = (kept - m_scene.topLeft()) * scale();
    horizontalScrollBar()->setValue(static_cast<int>(std::lround(now.x() - at.x())));
    verticalScrollBar()->setValue(static_cast<int>(std::lround(now.y() - at.y())));
    repaintAll();
    emit zoomChanged(m_zoom);
}

void LoomView::setZoom(double zoom)
{
    m_fitted = false;
    const QPointF middle = QRectF(viewport()->rect()).center();
    zoomAbout(zoom, m_marks.task ? QPointF(taskRect(*m_marks.task).center()) : middle);
    if (m_marks.task)
        reveal(m_loom.tasks[*m_marks.task].body);
}

void LoomView::zoomIn()
{
    setZoom(m_zoom * kZoomStep);
}

void LoomView::zoomOut()
{
    setZoom(m_zoom / kZoomStep);
}

void LoomView::resetZoom()
{
    setZoom(1);
}

void LoomView::fitAll()
{
    m_fitted = true;
    const QSizeF view = viewport()->size();
    // Names stick out the more the smaller the scale is, so it takes a few rounds.
    double zoom = 1;
    for (int round = 0; round < 4; ++round) {
        rescale(zoom);
        const QSizeF size = m_scene.size() * fontFactor();
        if (size.isEmpty())
            break;
        zoom = std::clamp(std::min(view.width() / size.width(), view.height() / size.height()),
                          kLeastZoom, 1.0);
    }
    rescale(zoom);
    updateScrollBars();
    repaintAll();
    emit zoomChanged(m_zoom);
}

void LoomView::reveal(const QRectF &sceneRect)
{
    const QPointF topLeft = (sceneRect.topLeft() - m_scene.topLeft()) * scale();
    const QRectF wanted =
        QRectF(topLeft, sceneRect.size() * scale()).adjusted(-kAirLeft, -kAir, kAir, kAir);
    const auto show = [](QScrollBar *bar, double from, double to, int page) {
        // The bar counts whole pixels of the scene; the near edge wins when both do not fit.
        if (to > bar->value() + page)
            bar->setValue(static_cast<int>(std::ceil(to)) - page);
        if (from < bar->value())
            bar->setValue(static_cast<int>(std::floor(from)));
    };
    show(horizontalScrollBar(), wanted.left(), wanted.right(), viewport()->width());
    show(verticalScrollBar(), wanted.top(), wanted.bottom(), viewport()->height());
}

} // namespace ohmwright::ui
