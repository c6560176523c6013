// SPDX-License-Identifier: GPL-3.0-or-later
// Zoom and place of the chart: what of the scene lies where in the window.
#include "ui/build_order/loom_legend_bar.h"
#include "ui/build_order/loom_view.h"

#include <QFontInfo>
#include <QScrollBar>

#include <algorithm>
#include <cmath>

namespace ohmwright::ui {

namespace {

constexpr double kLeastZoom = 0.04;
constexpr double kMostZoom = 2;
constexpr double kZoomStep = 1.2;
// The legend takes at most so much of the height: one part in so many.
constexpr int kLegendShare = 3;
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

QPointF LoomView::toView(QPointF at) const
{
    return origin() + (at - m_scene.topLeft()) * scale();
}

double LoomView::datesBottom() const
{
    if (m_loom.rules.empty())
        return 0;
    return toView(m_painter.axisBand(m_loom, scale(), toScene(QPointF(0, 0)).y()).bottomLeft()).y();
}

QRect LoomView::taskRect(std::size_t task) const
{
    const QRectF &body = m_loom.tasks.at(task).body;
    return QRectF(toView(body.topLeft()), body.size() * scale()).toAlignedRect();
}

void LoomView::updateScrollBars()
{
    const QSizeF size = m_scene.size() * scale();
    const QSize view = m_fitted ? maximumViewportSize() : viewport()->size();
    horizontalScrollBar()->setPageStep(view.width());
    verticalScrollBar()->setPageStep(view.height());
    horizontalScrollBar()->setSingleStep(40);
    verticalScrollBar()->setSingleStep(40);
    horizontalScrollBar()->setRange(
        0, std::max(0, static_cast<int>(std::ceil(size.width() - 0.01)) - view.width()));
    verticalScrollBar()->setRange(
        0, std::max(0, static_cast<int>(std::ceil(size.height() - 0.01)) - view.height()));
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
    // Scroll bars, if there are any now, will not be needed.
    const QSizeF view = maximumViewportSize();
    // Names stick out the more the smaller the scale is, so it takes a few rounds.
    double zoom = 1;
    for (int round = 0; round < 16; ++round) {
        rescale(zoom);
        const QSizeF size = m_scene.size() * fontFactor();
        if (size.isEmpty())
            break;
        zoom = std::clamp(std::min(view.width() / size.width(), view.height() / size.height()),
                          kLeastZoom, 1.0);
    }
    rescale(zoom);
    const auto fits = [&] {
        const QSizeF size = m_scene.size() * scale();
        return size.width() <= view.width() && size.height() <= view.height();
    };
    while (!fits() && m_zoom > kLeastZoom)
        rescale(m_zoom * 0.99);
    updateScrollBars();
    repaintAll();
    emit zoomChanged(m_zoom);
}

void LoomView::reveal(const QRectF &sceneRect)
{
    const QPointF topLeft = (sceneRect.topLeft() - m_scene.topLeft()) * scale();
    const QRectF wanted =
        QRectF(topLeft, sceneRect.size() * scale())
            .adjusted(-kAirLeft, -kAir - m_loom.axisBand.height() * fontFactor(), kAir, kAir);
    const auto show = [](QScrollBar *bar, double from, double to, int page) {
        // The bar counts whole pixels of the scene; the near edge wins when both do not fit.
        if (to > bar->value() + page)
            bar->setValue(static_cast<int>(std::ceil(to)) - page);
        if (from < bar->value())
            bar->setValue(static_cast<int>(std::floor(from)));
    };
    show(horizontalScrollBar(), wanted.left(), wanted.right(), viewport()->width());
    show(verticalScrollBar(), wanted.top(), wanted.bottom(), viewport()->height());
    // The small map lies over the chart: what is shown moves up from behind it.
    const QRectF map = overviewRect().adjusted(-8, -8, 8, 8);
    const QRectF shown(origin() + topLeft, sceneRect.size() * scale());
    if (!overviewRect().isEmpty() && shown.intersects(map))
        verticalScrollBar()->setValue(verticalScrollBar()->value() +
                                      static_cast<int>(std::ceil(shown.bottom() - map.top())));
}

// The legend takes as many lines as it needs, but never the chart's own room; what does not fit
// then, it says.
void LoomView::placeLegend()
{
    const int high = std::min(m_legend->heightFor(width()),
                              std::max(m_legend->heightOf(1), height() / kLegendShare));
    m_legend->setGeometry(0, 0, width(), high);
    if (viewportMargins().top() != high)
        setViewportMargins(0, high, 0, 0);
}

} // namespace ohmwright::ui
