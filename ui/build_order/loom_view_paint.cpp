// SPDX-License-Identifier: GPL-3.0-or-later
// Painting the chart, and the small map in its corner.
#include "ui/build_order/loom_view.h"

#include <QFont>
#include <QPaintEvent>
#include <QPainter>
#include <QPen>
#include <QRegion>
#include <QScrollBar>

#include <cmath>

namespace ohmwright::ui {

namespace {

// The map's greatest size, pixels.
constexpr double kOverviewWidth = 200;
constexpr double kOverviewHeight = 120;

} // namespace

void LoomView::repaintAll()
{
    m_base = QPixmap();
    viewport()->update();
}

QPointF LoomView::baseOrigin() const
{
    return origin() * devicePixelRatioF();
}

// All but what follows the pointer or the view's edge, kept as a picture: neither hovering nor
// dragging may paint thousands of wires.
void LoomView::paintBase()
{
    m_base = QPixmap(viewport()->size() * devicePixelRatioF());
    m_base.setDevicePixelRatio(devicePixelRatioF());
    m_baseOrigin = baseOrigin();
    m_names = m_painter.placeNames(m_network, m_loom, scale());
    paintOnBase(m_base.rect());
}

void LoomView::paintOnBase(const QRect &pixels)
{
    const double ratio = devicePixelRatioF();
    const QRectF place(QPointF(pixels.topLeft()) / ratio, QSizeF(pixels.size()) / ratio);
    QPainter painter(&m_base);
    painter.setClipRect(place);
    painter.fillRect(place, m_painter.colours().paper);
    toScene(painter);
    m_painter.paintScene(painter, m_network, m_loom, m_marks, m_names,
                         {toScene(place.topLeft()), place.size() / scale()}, scale());
}

// After a move by whole pixels only what came into sight is painted. False if all must be.
bool LoomView::scrollBase()
{
    const QPointF moved = baseOrigin() - m_baseOrigin;
    const QPoint pixels = moved.toPoint();
    if (QPointF(pixels - moved).manhattanLength() > 0.01 ||
        std::abs(pixels.x()) >= m_base.width() || std::abs(pixels.y()) >= m_base.height())
        return false;
    QRegion uncovered;
    m_base.scroll(pixels.x(), pixels.y(), m_base.rect(), &uncovered);
    m_baseOrigin = baseOrigin();
    for (const QRect &part : uncovered)
        paintOnBase(part);
    return true;
}

void LoomView::toScene(QPainter &painter) const
{
    painter.translate(origin());
    painter.scale(scale(), scale());
    painter.translate(-m_scene.topLeft());
}

void LoomView::paintEvent(QPaintEvent *event)
{
    QPainter painter(viewport());
    if (m_loom.tasks.empty()) {
        painter.fillRect(event->rect(), m_painter.colours().paper);
        paintEmpty(painter);
        return;
    }
    if (lacksForecast()) {
        painter.fillRect(event->rect(), m_painter.colours().paper);
        paintLack(painter);
        return;
    }
    if (m_base.size() != viewport()->size() * devicePixelRatioF() || !scrollBase())
        paintBase();
    painter.drawPixmap(0, 0, m_base);
    painter.save();
    toScene(painter);
    LoomMarks marks = m_marks;
    marks.slideFrom = toScene(QPointF(6, 0)).x();
    marks.slideTop = toScene(QPointF(0, 0)).y();
    m_painter.paintLabels(painter, m_network, m_loom, marks,
                          {toScene(QPointF(0, 0)), QSizeF(viewport()->size()) / scale()}, scale());
    painter.restore();
    paintOverview(painter);
    QRegion chart(viewport()->rect());
    chart -= overviewRect().toAlignedRect();
    chart -= QRect(0, 0, viewport()->width(), static_cast<int>(std::ceil(datesBottom())));
    painter.setClipRegion(chart);
    toScene(painter);
    m_painter.paintMarks(painter, m_loom, m_marks, scale());
}

void LoomView::paintEmpty(QPainter &painter) const
{
    const LoomColours &colours = m_painter.colours();
    QFont large = font();
    large.setPixelSize(static_cast<int>(15 * fontFactor()));
    painter.setFont(large);
    painter.setPen(colours.ink);
    painter.drawText(viewport()->rect().adjusted(24, 24, -24, -24),
                     Qt::AlignCenter | Qt::TextWordWrap,
                     tr("No tasks yet. The build is drawn here as a wiring loom: a branch for each "
                        "area, a connector for each task.\nPress N to add the first task."));
}

void LoomView::paintLack(QPainter &painter) const
{
    QFont large = font();
    large.setPixelSize(static_cast<int>(15 * fontFactor()));
    painter.setFont(large);
    painter.setPen(m_painter.colours().ink);
    const QString why = m_forecastMissing.isEmpty()
                            ? tr("By date the chart needs the forecast, which is not there yet.")
                            : m_forecastMissing;
    painter.drawText(viewport()->rect().adjusted(24, 24, -24, -24),
                     Qt::AlignCenter | Qt::TextWordWrap,
                     tr("%1\nPress B to see the build order by chain.").arg(why));
}

QRectF LoomView::overviewRect() const
{
    if (lacksForecast())
        return {};
    const QSizeF all = m_scene.size();
    const QSizeF view = QSizeF(viewport()->size()) / scale();
    if (all.isEmpty() ||
        (all.width() <= view.width() * 1.15 && all.height() <= view.height() * 1.15))
        return {};
    const double factor = fontFactor();
    const QSizeF size =
        all.scaled(kOverviewWidth * factor, kOverviewHeight * factor, Qt::KeepAspectRatio);
    const QRectF rect(viewport()->width() - size.width() - 14,
                      viewport()->height() - size.height() - 14, size.width(), size.height());
    // A small window belongs to the chart itself.
    return rect.width() * 3 < viewport()->width() && rect.height() * 3 < viewport()->height()
               ? rect
               : QRectF();
}

void LoomView::paintOverview(QPainter &painter)
{
    const QRectF rect = overviewRect();
    if (rect.isEmpty())
        return;
    const LoomColours &colours = m_painter.colours();
    const QRectF all = m_scene;
    const double small = rect.width() / all.width();
    const QSize pixels = (rect.size() * devicePixelRatioF()).toSize();
    if (m_overview.size() != pixels) {
        m_overview = QPixmap(pixels);
        m_overview.fill(colours.panel);
        QPainter onto(&m_overview);
        onto.setRenderHint(QPainter::Antialiasing);
        onto.scale(small * devicePixelRatioF(), small * devicePixelRatioF());
        onto.translate(-all.topLeft());
        LoomPainter(m_painter.family(), colours).paintOutline(onto, m_network, m_loom, small);
    }
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(colours.mute, 1));
    painter.setBrush(colours.panel);
    painter.drawRect(rect.adjusted(-3, -3, 3, 3));
    painter.drawPixmap(rect, m_overview, QRectF(m_overview.rect()));
    const QRectF seen(toScene({0, 0}), QSizeF(viewport()->size()) / scale());
    const QRectF part = seen.intersected(all);
    painter.setPen(QPen(colours.blue, 1.6));
    painter.setBrush(Qt::NoBrush);
    painter.drawRect(
        QRectF(rect.topLeft() + (part.topLeft() - all.topLeft()) * small, part.size() * small));
}

void LoomView::goByOverview(QPointF at)
{
    const QRectF rect = overviewRect();
    if (rect.isEmpty())
        return;
    const QPointF middle = (at - rect.topLeft()) / rect.width() * m_scene.width() * scale();
    horizontalScrollBar()->setValue(
        static_cast<int>(std::lround(middle.x() - viewport()->width() / 2.0)));
    verticalScrollBar()->setValue(
        static_cast<int>(std::lround(middle.y() - viewport()->height() / 2.0)));
}

} // namespace ohmwright::ui
