// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/wrap_layout.h"

#include <QWidget>

#include <algorithm>

namespace ohmwright::ui {

WrapLayout::WrapLayout(QWidget *parent, int gap) : QLayout(parent), m_gap(gap)
{
    setContentsMargins(0, 0, 0, 0);
}

WrapLayout::~WrapLayout() = default;

void WrapLayout::addItem(QLayoutItem *item)
{
    m_items.emplace_back(item);
}

int WrapLayout::count() const
{
    return static_cast<int>(m_items.size());
}

QLayoutItem *WrapLayout::itemAt(int index) const
{
    return index >= 0 && index < count() ? m_items[static_cast<std::size_t>(index)].get() : nullptr;
}

QLayoutItem *WrapLayout::takeAt(int index)
{
    if (index < 0 || index >= count())
        return nullptr;
    QLayoutItem *item = m_items[static_cast<std::size_t>(index)].release();
    m_items.erase(m_items.begin() + index);
    return item;
}

int WrapLayout::heightForWidth(int width) const
{
    return layOut(QRect(0, 0, width, 0), false);
}

// All in one row, if there is room.
QSize WrapLayout::sizeHint() const
{
    QSize size;
    for (const auto &item : m_items) {
        if (item->isEmpty())
            continue;
        const QSize one = item->sizeHint();
        size = QSize(size.width() + one.width() + (size.width() > 0 ? m_gap : 0),
                     std::max(size.height(), one.height()));
    }
    return size;
}

QSize WrapLayout::minimumSize() const
{
    QSize size;
    for (const auto &item : m_items)
        if (!item->isEmpty())
            size = size.expandedTo(item->minimumSize());
    return size;
}

void WrapLayout::setGeometry(const QRect &rect)
{
    QLayout::setGeometry(rect);
    layOut(rect, true);
}

int WrapLayout::layOut(const QRect &rect, bool place) const
{
    int x = rect.x();
    int y = rect.y();
    int row = 0;
    for (const auto &item : m_items) {
        if (item->isEmpty())
            continue;
        QSize size = item->sizeHint();
        size.setWidth(std::min(size.width(), std::max(rect.width(), item->minimumSize().width())));
        if (x > rect.x() && x + size.width() > rect.x() + rect.width()) {
            x = rect.x();
            y += row + m_gap;
            row = 0;
        }
        // words that wrap are as high as this width makes them
        if (item->hasHeightForWidth())
            size.setHeight(item->heightForWidth(size.width()));
        if (place)
            item->setGeometry(QRect(QPoint(x, y), size));
        x += size.width() + m_gap;
        row = std::max(row, size.height());
    }
    return y + row - rect.y();
}

} // namespace ohmwright::ui
