// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/sheet/pages_view.h"

#include "ui/sheet/paged_layout.h"
#include "ui/shell/theme.h"
#include "ui/widgets/spoken_role.h"

#include <QKeyEvent>
#include <QPainter>
#include <QScrollBar>
#include <QWheelEvent>

#include <algorithm>
#include <cmath>

namespace ohmwright::ui {

namespace {

constexpr double kGap = 18; // pixels between pages
constexpr double kLeastZoom = 0.4;
constexpr double kMostZoom = 3.0;

} // namespace

PagesView::PagesView(const Theme &theme, QWidget *parent)
    : QAbstractScrollArea(parent), m_theme(theme)
{
    speakAs(*this, QAccessible::Document);
    setAccessibleName(tr("Preview of the build sheet"));
    setFocusPolicy(Qt::StrongFocus);
    setFrameShape(QFrame::NoFrame);
    m_kept.setMaxCost(12); // pages; more than fit on a screen
}

double PagesView::scale() const
{
    return m_zoom * logicalDpiX() / 72.0;
}

double PagesView::pageStep() const
{
    return m_layout ? m_layout->pageSize().height() * scale() + kGap : 0.0;
}

void PagesView::setLayout(std::shared_ptr<const sheet::PagedLayout> layout)
{
    m_layout = std::move(layout);
    m_kept.clear();
    setAccessibleDescription(m_layout ? tr("%1 pages").arg(m_layout->pageCount()) : QString());
    fitWidth();
    updateScrollBars();
    viewport()->update();
}

void PagesView::updateScrollBars()
{
    if (!m_layout)
        return;
    const int height = static_cast<int>(std::ceil(pageStep() * m_layout->pageCount() + kGap));
    const int width =
        static_cast<int>(std::ceil(m_layout->pageSize().width() * scale() + 2 * kGap));
    verticalScrollBar()->setPageStep(viewport()->height());
    verticalScrollBar()->setSingleStep(48);
    verticalScrollBar()->setRange(0, std::max(0, height - viewport()->height()));
    horizontalScrollBar()->setPageStep(viewport()->width());
    horizontalScrollBar()->setRange(0, std::max(0, width - viewport()->width()));
}

void PagesView::showPlace(int page, double top)
{
    verticalScrollBar()->setValue(
        static_cast<int>(kGap + page * pageStep() + (top - 12) * scale()));
}

void PagesView::setZoom(double zoom)
{
    m_zoomChosen = true;
    changeZoom(zoom);
}

void PagesView::fitWidth()
{
    if (m_zoomChosen || !m_layout)
        return;
    const double room = viewport()->width() - 2 * kGap;
    changeZoom(std::min(1.0, room / (m_layout->pageSize().width() * logicalDpiX() / 72.0)));
}

void PagesView::changeZoom(double zoom)
{
    zoom = std::clamp(zoom, kLeastZoom, kMostZoom);
    if (zoom == m_zoom || !m_layout)
        return;
    // keep what stands at the top of the view where it is
    const double at = verticalScrollBar()->value() / pageStep();
    m_zoom = zoom;
    m_kept.clear();
    updateScrollBars();
    verticalScrollBar()->setValue(static_cast<int>(at * pageStep()));
    viewport()->update();
    emit zoomChanged(zoom);
}

const QPixmap &PagesView::pagePicture(int page)
{
    if (const QPixmap *kept = m_kept.object(page))
        return *kept;
    const double ratio = devicePixelRatioF();
    const QSizeF size = m_layout->pageSize() * scale();
    auto *picture = new QPixmap((size * ratio).toSize());
    picture->setDevicePixelRatio(ratio);
    picture->fill(Qt::white);
    QPainter painter(picture);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.scale(scale(), scale());
    m_layout->paintPage(painter, page);
    painter.end();
    m_kept.insert(page, picture);
    return *picture;
}

void PagesView::paintEvent(QPaintEvent *)
{
    QPainter painter(viewport());
    painter.fillRect(viewport()->rect(), mix(m_theme.tokens().paper, m_theme.tokens().ink, 0.08));
    if (!m_layout)
        return;
    painter.setRenderHint(QPainter::Antialiasing);
    const double width = m_layout->pageSize().width() * scale();
    const double height = m_layout->pageSize().height() * scale();
    const double left =
        std::max(kGap, (viewport()->width() - width) / 2) - horizontalScrollBar()->value();
    for (int page = 0; page < m_layout->pageCount(); ++page) {
        const double top = kGap + page * pageStep() - verticalScrollBar()->value();
        if (top + height < 0 || top > viewport()->height())
            continue;
        const QRectF paper(left, top, width, height);
        // paper is white in both shades: this is what comes out of the printer
        painter.fillRect(paper, Qt::white);
        painter.setPen(QPen(m_theme.tokens().hairline(), 1));
        painter.drawRect(paper);
        painter.drawPixmap(paper.topLeft(), pagePicture(page));
    }
    if (hasFocus()) {
        painter.setPen(QPen(m_theme.tokens().blue, 2));
        painter.setBrush(Qt::NoBrush);
        painter.drawRect(QRectF(viewport()->rect()).adjusted(1, 1, -1, -1));
    }
}

void PagesView::resizeEvent(QResizeEvent *event)
{
    QAbstractScrollArea::resizeEvent(event);
    fitWidth();
    updateScrollBars();
}

void PagesView::keyPressEvent(QKeyEvent *event)
{
    switch (event->key()) {
    case Qt::Key_Plus:
        setZoom(m_zoom * 1.2);
        return;
    case Qt::Key_Minus:
        setZoom(m_zoom / 1.2);
        return;
    case Qt::Key_PageDown:
    case Qt::Key_PageUp:
        verticalScrollBar()->triggerAction(event->key() == Qt::Key_PageDown
                                               ? QScrollBar::SliderPageStepAdd
                                               : QScrollBar::SliderPageStepSub);
        return;
    case Qt::Key_Home:
        verticalScrollBar()->setValue(0);
        return;
    case Qt::Key_End:
        verticalScrollBar()->setValue(verticalScrollBar()->maximum());
        return;
    default:
        QAbstractScrollArea::keyPressEvent(event);
    }
}

void PagesView::wheelEvent(QWheelEvent *event)
{
    if (event->modifiers() & Qt::ControlModifier) {
        setZoom(m_zoom * std::pow(1.0015, event->angleDelta().y()));
        event->accept();
        return;
    }
    QAbstractScrollArea::wheelEvent(event);
}

} // namespace ohmwright::ui
