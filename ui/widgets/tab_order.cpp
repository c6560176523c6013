// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/tab_order.h"

#include <QAbstractItemView>
#include <QAbstractSpinBox>
#include <QApplication>
#include <QComboBox>
#include <QGridLayout>
#include <QLayout>
#include <QLineEdit>
#include <QMainWindow>
#include <QScrollArea>
#include <QSplitter>

#include <algorithm>

namespace ohmwright::ui {

namespace {

bool isStop(const QWidget &widget)
{
    return (widget.focusPolicy() & Qt::TabFocus) && !widget.focusProxy();
}

// What a stop of these kinds holds, it goes through by itself.
bool isWhole(const QWidget &widget)
{
    return qobject_cast<const QComboBox *>(&widget) ||
           qobject_cast<const QAbstractSpinBox *>(&widget) ||
           qobject_cast<const QLineEdit *>(&widget) ||
           qobject_cast<const QAbstractItemView *>(&widget);
}

// Every stop of a part, shown or not.
class Walk
{
public:
    explicit Walk(std::vector<QWidget *> &stops) : m_stops(stops) {}

    void through(QWidget &widget)
    {
        if (isStop(widget))
            m_stops.push_back(&widget);
        if (isWhole(widget))
            return;
        if (auto *window = qobject_cast<QMainWindow *>(&widget)) {
            if (QWidget *central = window->centralWidget())
                through(*central);
        } else if (auto *area = qobject_cast<QScrollArea *>(&widget)) {
            if (area->widget())
                through(*area->widget());
        } else if (auto *splitter = qobject_cast<QSplitter *>(&widget)) {
            for (int i = 0; i < splitter->count(); ++i)
                through(*splitter->widget(i));
        } else if (QLayout *layout = widget.layout()) {
            through(*layout);
        } else {
            for (QWidget *child : widget.findChildren<QWidget *>(Qt::FindDirectChildrenOnly))
                if (!child->isWindow())
                    through(*child);
        }
    }

private:
    // A grid is read row by row, whatever was put into it first.
    void through(QGridLayout &grid)
    {
        struct Place
        {
            int row = 0, column = 0, item = 0;
            auto operator<=>(const Place &) const = default;
        };
        std::vector<Place> places;
        for (int i = 0; i < grid.count(); ++i) {
            int rows = 0;
            int columns = 0;
            Place place{0, 0, i};
            grid.getItemPosition(i, &place.row, &place.column, &rows, &columns);
            places.push_back(place);
        }
        std::ranges::sort(places);
        for (const Place &place : places)
            through(*grid.itemAt(place.item));
    }

    void through(QLayout &layout)
    {
        if (auto *grid = qobject_cast<QGridLayout *>(&layout)) {
            through(*grid);
            return;
        }
        for (int i = 0; i < layout.count(); ++i) {
            through(*layout.itemAt(i));
        }
    }

    void through(QLayoutItem &item)
    {
        if (QWidget *widget = item.widget())
            through(*widget);
        else if (QLayout *inner = item.layout())
            through(*inner);
    }

    std::vector<QWidget *> &m_stops;
};

std::vector<QWidget *> allStops(QWidget &root)
{
    std::vector<QWidget *> stops;
    Walk(stops).through(root);
    return stops;
}

} // namespace

std::vector<QWidget *> tabStops(QWidget &root)
{
    std::vector<QWidget *> stops = allStops(root);
    std::erase_if(stops,
                  [](const QWidget *stop) { return !stop->isVisible() || !stop->isEnabled(); });
    return stops;
}

QWidget *nextTabStop(QWidget &root, bool forward)
{
    const std::vector<QWidget *> stops = tabStops(root);
    if (stops.empty())
        return nullptr;
    // the focus may be on a part of a stop, such as the line of a choice
    auto at = stops.end();
    for (QWidget *now = QApplication::focusWidget(); now && at == stops.end();
         now = now->parentWidget())
        at = std::find(stops.begin(), stops.end(), now);
    if (at == stops.end())
        return forward ? stops.front() : stops.back();
    if (forward)
        return at + 1 == stops.end() ? stops.front() : *(at + 1);
    return at == stops.begin() ? stops.back() : *(at - 1);
}

void tabInReadingOrder(QWidget &root)
{
    QWidget *last = root.previousInFocusChain();
    while (last && last != &root && (!isStop(*last) || root.isAncestorOf(last)))
        last = last->previousInFocusChain();
    if (last == &root)
        last = nullptr;
    for (QWidget *stop : allStops(root)) {
        if (last)
            QWidget::setTabOrder(last, stop);
        last = stop;
    }
}

} // namespace ohmwright::ui
