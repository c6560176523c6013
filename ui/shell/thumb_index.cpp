// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/shell/thumb_index.h"

#include "ui/shell/drafted_style.h"
#include "ui/shell/theme.h"
#include "ui/widgets/figures.h"
#include "ui/widgets/icons.h"

#include <QFontMetricsF>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QPainterPath>

#include <algorithm>

namespace ohmwright::ui {

namespace {

constexpr double kStep = 5;   // how much further each leaf stands out
constexpr double kMargin = 5; // right of the last leaf
constexpr double kCut = 7;    // the corner cut off a tab
constexpr double kIcon = 22;
constexpr double kCompactSide = 9;
constexpr int kTall = 62;
constexpr int kLeast = 44;

} // namespace

ThumbIndex::ThumbIndex(const Theme &theme, QWidget *parent) : QTabBar(parent), m_theme(theme)
{
    setShape(QTabBar::RoundedEast);
    setDrawBase(false);
    setExpanding(false);
    setUsesScrollButtons(false);
    setElideMode(Qt::ElideNone);
    setFocusPolicy(Qt::StrongFocus);
    setMouseTracking(true);
    setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Expanding);
}

int ThumbIndex::addLeaf(const QString &name, const QString &icon)
{
    m_leaves.push_back({icon, {}});
    const int index = addTab(name);
    setTabToolTip(index, tr("%1 (Ctrl+%2)").arg(name).arg(index + 1));
    return index;
}

void ThumbIndex::setBadge(int index, const QString &words, const QString &spoken)
{
    m_leaves.at(static_cast<std::size_t>(index)).badge = words;
    setAccessibleTabName(index,
                         spoken.isEmpty() ? QString() : tr("%1, %2").arg(tabText(index), spoken));
    update();
}

void ThumbIndex::setCompact(bool compact)
{
    if (compact == m_compact)
        return;
    m_compact = compact;
    // the bar only measures its tabs again when told that something about them changed
    setIconSize(iconSize() + QSize(compact ? 1 : -1, 0));
    updateGeometry();
    update();
}

QSize ThumbIndex::tabSizeHint(int) const
{
    QFont strong = m_compact ? m_theme.font(Lettering::Small) : font();
    strong.setWeight(QFont::DemiBold);
    const QFontMetricsF metrics(strong);
    double words = 0;
    for (int i = 0; i < count(); ++i)
        words = std::max(words, metrics.horizontalAdvance(tabText(i)));
    // the word stands below the icon where there is little room, beside it elsewhere
    const double least =
        m_compact ? kCompactSide + std::max(kIcon + 22, words) + 8 : 12 + kIcon + 9 + words + 22;
    return {qRound(least + (count() - 1) * kStep + kMargin), kTall};
}

QSize ThumbIndex::minimumTabSizeHint(int index) const
{
    return {tabSizeHint(index).width(), kLeast};
}

double ThumbIndex::edgeOf(int index) const
{
    return width() - kMargin - (count() - 1 - index) * kStep - 0.5;
}

QPainterPath ThumbIndex::tabPath(int index) const
{
    const QRectF rect = tabRect(index);
    const double top = rect.top() + 0.5;
    const double bottom = rect.bottom() + 0.5;
    const double edge = edgeOf(index);
    QPainterPath path(QPointF(0, top));
    path.lineTo(edge - kCut, top);
    path.lineTo(edge, top + kCut);
    path.lineTo(edge, bottom - kCut);
    path.lineTo(edge - kCut, bottom);
    path.lineTo(0, bottom);
    return path;
}

void ThumbIndex::paintLeaf(QPainter &painter, int index) const
{
    const Tokens &tokens = m_theme.tokens();
    // the edges of the leaves that lie below this one
    const QRectF rect = tabRect(index);
    painter.setPen(QPen(tokens.hairline(), 1));
    if (index == 0)
        painter.drawLine(QPointF(edgeOf(0) - kCut, rect.top() + 0.5),
                         QPointF(edgeOf(count() - 1), rect.top() + 0.5));
    for (int below = index + 1; below < count(); ++below)
        painter.drawLine(QPointF(edgeOf(below), rect.top()), QPointF(edgeOf(below), rect.bottom()));
    painter.setPen(QPen(tokens.mute, 1));
    painter.setBrush(index == m_under ? tokens.hover() : tokens.panel);
    painter.drawPath(tabPath(index));
}

void ThumbIndex::paintWords(QPainter &painter, int index) const
{
    const Tokens &tokens = m_theme.tokens();
    const Leaf &leaf = m_leaves.at(static_cast<std::size_t>(index));
    const bool current = index == currentIndex();
    const QRectF rect = tabRect(index);
    const double middle = rect.center().y() + 0.5;
    const double left = m_compact ? kCompactSide : 12;
    const double iconTop = m_compact ? rect.top() + 9 : middle - kIcon / 2;
    const QColor colour = current ? tokens.ink : mix(tokens.mute, tokens.ink, 0.35);
    paintIcon(painter, QRectF(left, iconTop, kIcon, kIcon), leaf.icon, colour);

    painter.setFont(m_theme.font(Lettering::Small));
    const QFontMetricsF small(painter.font());
    const QString number = QString::number(index + 1);
    painter.setPen(tokens.mute);
    painter.drawText(QPointF(edgeOf(index) - 11 - small.horizontalAdvance(number),
                             rect.top() + 8 + small.ascent()),
                     number);
    QFont font = m_theme.font(m_compact ? Lettering::Small : Lettering::Body);
    font.setWeight(current ? QFont::DemiBold : QFont::Medium);
    const QFontMetricsF metrics(font);
    const double x = m_compact ? left : left + kIcon + 9;
    double baseline = m_compact ? iconTop + kIcon + 3 + metrics.ascent()
                                : middle + (metrics.ascent() - metrics.descent()) / 2;
    if (!leaf.badge.isEmpty() && !m_compact) {
        const double both = metrics.height() + small.height();
        baseline = middle - both / 2 + metrics.ascent();
        paintTabular(painter, x, baseline + metrics.descent() + small.ascent(), leaf.badge);
    }
    painter.setFont(font);
    painter.setPen(colour);
    painter.drawText(QPointF(x, baseline), tabText(index));
}

void ThumbIndex::paintEvent(QPaintEvent *)
{
    const Tokens &tokens = m_theme.tokens();
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const int current = currentIndex();
    for (int i = 0; i < count(); ++i)
        paintLeaf(painter, i);

    // the cut edge of the page, stepping out around its own tab
    QPainterPath edge(QPointF(0.75, 0));
    if (current >= 0) {
        painter.setPen(Qt::NoPen);
        painter.setBrush(tokens.paper);
        painter.drawPath(tabPath(current));
        const QRectF rect = tabRect(current);
        edge.lineTo(0.75, rect.top() + 0.5);
        edge.connectPath(tabPath(current));
        edge.lineTo(0.75, rect.bottom() + 0.5);
    }
    edge.lineTo(0.75, height());
    painter.setPen(QPen(tokens.ink, 1.5, Qt::SolidLine, Qt::FlatCap, Qt::MiterJoin));
    painter.setBrush(Qt::NoBrush);
    painter.drawPath(edge);

    for (int i = 0; i < count(); ++i)
        paintWords(painter, i);
    if (hasFocus() && current >= 0) {
        const QRectF rect = tabRect(current);
        paintFocusRing(painter, QRectF(3, rect.top() + 4, edgeOf(current) - 7, rect.height() - 7),
                       tokens);
    }
}

void ThumbIndex::keyPressEvent(QKeyEvent *event)
{
    switch (event->key()) {
    case Qt::Key_Up:
        setCurrentIndex(std::max(0, currentIndex() - 1));
        return;
    case Qt::Key_Down:
        setCurrentIndex(std::min(count() - 1, currentIndex() + 1));
        return;
    case Qt::Key_Home:
        setCurrentIndex(0);
        return;
    case Qt::Key_End:
        setCurrentIndex(count() - 1);
        return;
    case Qt::Key_Left:
    case Qt::Key_Return:
    case Qt::Key_Enter:
        emit leafEntered();
        return;
    case Qt::Key_Right:
        return;
    default:
        QTabBar::keyPressEvent(event);
    }
}

void ThumbIndex::mouseMoveEvent(QMouseEvent *event)
{
    QTabBar::mouseMoveEvent(event);
    const int under = tabAt(event->position().toPoint());
    if (under != m_under) {
        m_under = under;
        update();
    }
}

void ThumbIndex::leaveEvent(QEvent *event)
{
    QTabBar::leaveEvent(event);
    m_under = -1;
    update();
}

} // namespace ohmwright::ui
