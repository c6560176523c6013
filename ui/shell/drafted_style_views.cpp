// SPDX-License-Identifier: GPL-3.0-or-later
// Lists, tables and their headers, tabs, menus, scroll bars, and the lines between panels.
#include "ui/shell/drafted_style.h"

#include <QListView>
#include <QPainter>
#include <QStyleOption>
#include <QTabBar>

#include <algorithm>
#include <cmath>

namespace ohmwright::ui {

void DraftedStyle::drawItemPanel(QPainter &painter, const QStyleOption &option) const
{
    const auto *item = qstyleoption_cast<const QStyleOptionViewItem *>(&option);
    if (!item)
        return;
    if (item->backgroundBrush.style() != Qt::NoBrush)
        painter.fillRect(option.rect, item->backgroundBrush);
    if (option.state & State_Selected) {
        painter.fillRect(option.rect, m_tokens.tint());
        const bool first = item->viewItemPosition == QStyleOptionViewItem::Beginning ||
                           item->viewItemPosition == QStyleOptionViewItem::OnlyOne ||
                           qobject_cast<const QListView *>(item->widget);
        if (first)
            painter.fillRect(QRect(option.rect.topLeft(), QSize(3, option.rect.height())),
                             m_tokens.blue);
    } else if ((option.state & State_MouseOver) && (option.state & State_Enabled)) {
        painter.fillRect(option.rect, m_tokens.hover());
    }
}

void DraftedStyle::drawHeaderSection(QPainter &painter, const QStyleOptionHeader &option) const
{
    const QRect rect = option.rect;
    const bool pressed = option.state & State_Sunken;
    const bool over = option.state & State_MouseOver;
    painter.fillRect(rect, pressed || (over && (option.state & State_Enabled)) ? m_tokens.hover()
                                                                               : m_tokens.paper);
    if (option.orientation == Qt::Horizontal) {
        painter.fillRect(QRectF(rect.left(), rect.bottom() - 0.5, rect.width(), 1.5), m_tokens.ink);
        const bool last = option.position == QStyleOptionHeader::End ||
                          option.position == QStyleOptionHeader::OnlyOneSection;
        if (!last)
            painter.fillRect(QRect(rect.right(), rect.top() + 8, 1, rect.height() - 16),
                             m_tokens.hairline());
    } else {
        painter.fillRect(QRect(rect.right(), rect.top(), 1, rect.height()), m_tokens.mute);
        painter.fillRect(QRect(rect.left(), rect.bottom(), rect.width(), 1), m_tokens.hairline());
    }
}

void DraftedStyle::drawTab(QPainter &painter, const QStyleOptionTab &option) const
{
    const QRect rect = option.rect;
    const bool current = option.state & State_Selected;
    if ((option.state & State_MouseOver) && !current)
        painter.fillRect(rect, m_tokens.hover());
    const bool upright =
        option.shape == QTabBar::RoundedWest || option.shape == QTabBar::RoundedEast ||
        option.shape == QTabBar::TriangularWest || option.shape == QTabBar::TriangularEast;
    const bool south =
        option.shape == QTabBar::RoundedSouth || option.shape == QTabBar::TriangularSouth;
    const int thick = current ? 3 : 1;
    const QColor colour = current ? m_tokens.ink : m_tokens.hairline();
    if (upright)
        painter.fillRect(QRect(rect.left(), rect.top(), thick, rect.height()), colour);
    else if (south)
        painter.fillRect(QRect(rect.left(), rect.top(), rect.width(), thick), colour);
    else
        painter.fillRect(QRect(rect.left(), rect.bottom() - thick + 1, rect.width(), thick),
                         colour);
}

void DraftedStyle::drawScrollBar(QPainter &painter, const QStyleOptionSlider &option,
                                 const QWidget *widget) const
{
    const bool across = option.orientation == Qt::Horizontal;
    painter.fillRect(option.rect, m_tokens.paper);
    QRectF track(option.rect);
    if (across)
        track = QRectF(track.left(), track.center().y() - 0.5, track.width(), 1);
    else
        track = QRectF(track.center().x() - 0.5, track.top(), 1, track.height());
    painter.fillRect(track, m_tokens.hairline());
    if (!(option.state & State_Enabled) || option.maximum <= option.minimum)
        return;
    const bool held = option.state & State_Sunken;
    const bool over = (option.state & State_MouseOver);
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(held || over ? m_tokens.ink : m_tokens.mute, 1));
    painter.setBrush(held ? m_tokens.ink : over ? m_tokens.mute : m_tokens.panel);
    const QRectF slider(scrollBarRect(option, SC_ScrollBarSlider, widget));
    painter.drawRoundedRect(across ? slider.adjusted(1.5, 2.5, -1.5, -2.5)
                                   : slider.adjusted(2.5, 1.5, -2.5, -1.5),
                            2.5, 2.5);
    painter.restore();
}

void DraftedStyle::drawMenuItem(QPainter &painter, const QStyleOptionMenuItem &option) const
{
    const QRect rect = option.rect;
    if (option.menuItemType == QStyleOptionMenuItem::Separator) {
        painter.fillRect(QRect(rect.left() + 8, rect.center().y(), rect.width() - 16, 1),
                         m_tokens.hairline());
        return;
    }
    const bool enabled = option.state & State_Enabled;
    if (option.state & State_Selected) {
        painter.fillRect(rect, enabled ? m_tokens.tint() : m_tokens.hover());
        painter.fillRect(QRect(rect.topLeft(), QSize(3, rect.height())),
                         enabled ? m_tokens.blue : m_tokens.mute);
    }
    const QRect iconRect(rect.left() + 12, rect.center().y() - 9, 20, 20);
    if (option.checkType != QStyleOptionMenuItem::NotCheckable) {
        QStyleOption mark(option); // no more than that NOLINT(cppcoreguidelines-slicing)
        mark.rect = iconRect.adjusted(1, 1, -1, -1);
        mark.state.setFlag(State_On, option.checked);
        mark.state.setFlag(State_MouseOver, false);
        if (option.checkType == QStyleOptionMenuItem::Exclusive)
            drawRadio(painter, mark);
        else
            drawCheck(painter, mark);
    } else if (!option.icon.isNull()) {
        option.icon.paint(&painter, iconRect, Qt::AlignCenter,
                          enabled ? QIcon::Normal : QIcon::Disabled);
    }
    const QStringList halves = option.text.split(QLatin1Char('\t'));
    const QRect textRect = rect.adjusted(44, 0, -28, 0);
    painter.save();
    painter.setFont(option.font);
    painter.setPen(enabled ? m_tokens.ink : m_tokens.mute);
    painter.drawText(textRect,
                     Qt::AlignLeft | Qt::AlignVCenter | Qt::TextShowMnemonic | Qt::TextSingleLine,
                     halves.front());
    if (halves.size() > 1) {
        painter.setPen(m_tokens.mute);
        painter.drawText(rect.adjusted(0, 0, -14, 0),
                         Qt::AlignRight | Qt::AlignVCenter | Qt::TextSingleLine, halves.at(1));
    }
    painter.restore();
    if (option.menuItemType == QStyleOptionMenuItem::SubMenu)
        chevron(painter, QRectF(rect.right() - 22, rect.top(), 14, rect.height()), Qt::RightArrow,
                enabled ? m_tokens.ink : m_tokens.mute);
}

void DraftedStyle::drawSplitter(QPainter &painter, const QStyleOption &option) const
{
    // one rule, and three short strokes where it can be gripped
    const bool sideBySide = option.state & State_Horizontal;
    const QColor colour =
        option.state & (State_MouseOver | State_Sunken) ? m_tokens.blue : m_tokens.hairline();
    const QRectF rect(option.rect);
    const QPointF c(std::floor(rect.center().x()), std::floor(rect.center().y()));
    if (sideBySide)
        painter.fillRect(QRectF(c.x(), rect.top(), 1, rect.height()), colour);
    else
        painter.fillRect(QRectF(rect.left(), c.y(), rect.width(), 1), colour);
    const QColor grip =
        option.state & (State_MouseOver | State_Sunken) ? m_tokens.blue : m_tokens.mute;
    for (int i = -1; i <= 1; ++i) {
        const QRectF stroke = sideBySide ? QRectF(c.x() - 2, c.y() + i * 5, 5, 1)
                                         : QRectF(c.x() + i * 5, c.y() - 2, 1, 5);
        painter.fillRect(stroke, grip);
    }
}

bool DraftedStyle::drawViewPrimitive(PrimitiveElement element, const QStyleOption &option,
                                     QPainter &painter, const QWidget *widget) const
{
    switch (element) {
    case PE_PanelItemViewRow: {
        const auto *item = qstyleoption_cast<const QStyleOptionViewItem *>(&option);
        if (item && (item->features & QStyleOptionViewItem::Alternate))
            painter.fillRect(option.rect, option.palette.brush(QPalette::AlternateBase));
        return true;
    }
    case PE_PanelItemViewItem:
        drawItemPanel(painter, option);
        return true;
    case PE_PanelMenu:
    case PE_FrameMenu:
    case PE_PanelTipLabel:
        if (element != PE_FrameMenu)
            painter.fillRect(option.rect, m_tokens.panel);
        painter.save();
        painter.setPen(QPen(m_tokens.ink, 1));
        painter.setBrush(Qt::NoBrush);
        painter.drawRect(QRectF(option.rect).adjusted(0.5, 0.5, -0.5, -0.5));
        painter.restore();
        return true;
    case PE_Frame:
    case PE_FrameWindow:
        box(painter, option.rect, option, Qt::transparent, widget);
        return true;
    case PE_FrameGroupBox:
        painter.fillRect(QRect(option.rect.topLeft(), QSize(option.rect.width(), 1)),
                         m_tokens.hairline());
        return true;
    case PE_PanelScrollAreaCorner:
        painter.fillRect(option.rect, m_tokens.paper);
        return true;
    case PE_FrameTabWidget:
    case PE_FrameStatusBarItem:
        return true;
    case PE_FrameTabBarBase:
        if (const auto *base = qstyleoption_cast<const QStyleOptionTabBarBase *>(&option)) {
            const QRect rect = option.rect;
            const bool upright =
                base->shape == QTabBar::RoundedWest || base->shape == QTabBar::RoundedEast;
            painter.fillRect(upright ? QRect(rect.right(), rect.top(), 1, rect.height())
                                     : QRect(rect.left(), rect.bottom(), rect.width(), 1),
                             m_tokens.hairline());
        }
        return true;
    case PE_IndicatorHeaderArrow: {
        const auto *header = qstyleoption_cast<const QStyleOptionHeader *>(&option);
        if (header && header->sortIndicator != QStyleOptionHeader::None)
            chevron(painter, option.rect,
                    header->sortIndicator == QStyleOptionHeader::SortUp ? Qt::UpArrow
                                                                        : Qt::DownArrow,
                    m_tokens.ink);
        return true;
    }
    case PE_IndicatorBranch:
        if (option.state & State_Children)
            chevron(painter, option.rect,
                    option.state & State_Open ? Qt::DownArrow : Qt::RightArrow, m_tokens.ink);
        return true;
    default:
        return false;
    }
}

bool DraftedStyle::drawViewControl(ControlElement element, const QStyleOption &option,
                                   QPainter &painter, const QWidget *widget) const
{
    switch (element) {
    case CE_HeaderSection:
        if (const auto *header = qstyleoption_cast<const QStyleOptionHeader *>(&option))
            drawHeaderSection(painter, *header);
        return true;
    case CE_HeaderEmptyArea:
        painter.fillRect(option.rect, m_tokens.paper);
        if (option.state & State_Horizontal)
            painter.fillRect(
                QRectF(option.rect.left(), option.rect.bottom() - 0.5, option.rect.width(), 1.5),
                m_tokens.ink);
        return true;
    case CE_TabBarTabShape:
        if (const auto *tab = qstyleoption_cast<const QStyleOptionTab *>(&option))
            drawTab(painter, *tab);
        return true;
    case CE_TabBarTabLabel:
        // the base draws its own ring past us, so it is not told of the focus
        if (const auto *tab = qstyleoption_cast<const QStyleOptionTab *>(&option)) {
            QStyleOptionTab label(*tab);
            label.state.setFlag(State_HasFocus, false);
            QProxyStyle::drawControl(element, &label, &painter, widget);
            if (tab->state & State_HasFocus)
                paintFocusRing(painter, QRectF(tab->rect).adjusted(3, 3, -3, -5), m_tokens);
        }
        return true;
    case CE_MenuItem:
        if (const auto *item = qstyleoption_cast<const QStyleOptionMenuItem *>(&option))
            drawMenuItem(painter, *item);
        return true;
    case CE_MenuEmptyArea:
        painter.fillRect(option.rect, m_tokens.panel);
        return true;
    case CE_Splitter:
        drawSplitter(painter, option);
        return true;
    case CE_ProgressBarGroove:
        painter.save();
        painter.setPen(QPen(m_tokens.mute, 1));
        painter.setBrush(m_tokens.panel);
        painter.drawRect(QRectF(option.rect).adjusted(0.5, 0.5, -0.5, -0.5));
        painter.restore();
        return true;
    case CE_ProgressBarContents:
        if (const auto *bar = qstyleoption_cast<const QStyleOptionProgressBar *>(&option)) {
            const double range = static_cast<double>(bar->maximum) - bar->minimum;
            const double share =
                range > 0 ? (static_cast<double>(bar->progress) - bar->minimum) / range : 0.5;
            QRectF filled = QRectF(option.rect).adjusted(3, 3, -3, -3);
            filled.setWidth(filled.width() * std::clamp(share, 0.0, 1.0));
            // an unknown length is hatched, not moving: nothing on the page should blink
            painter.fillRect(filled, range > 0 ? QBrush(m_tokens.ink)
                                               : QBrush(m_tokens.mute, Qt::BDiagPattern));
        }
        return true;
    default:
        return false;
    }
}

} // namespace ohmwright::ui
