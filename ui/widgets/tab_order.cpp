// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/tab_order.h"

#include <QLayout>
#include <QWidget>

namespace ohmwright::ui {

namespace {

bool isStop(const QWidget &widget)
{
    return (widget.focusPolicy() & Qt::TabFocus) && !widget.focusProxy();
}

class Walk
{
public:
    // `last`: the stop before the first one met.
    explicit Walk(QWidget *last) : m_last(last) {}

    void through(QWidget &widget)
    {
        if (isStop(widget)) {
            if (m_last)
                QWidget::setTabOrder(m_last, &widget);
            m_last = &widget;
            return; // its parts, such as the line of a choice, follow it by themselves
        }
        if (QLayout *layout = widget.layout()) {
            through(*layout);
            return;
        }
        for (QWidget *child : widget.findChildren<QWidget *>(Qt::FindDirectChildrenOnly))
            through(*child);
    }

private:
    void through(QLayout &layout)
    {
        for (int i = 0; i < layout.count(); ++i) {
            QLayoutItem &item = *layout.itemAt(i);
            if (QWidget *widget = item.widget())
                through(*widget);
            else if (QLayout *inner = item.layout())
                through(*inner);
        }
    }

    QWidget *m_last;
};

} // namespace

void tabInReadingOrder(QWidget &root)
{
    QWidget *before = root.previousInFocusChain();
    while (before && before != &root && (!isStop(*before) || root.isAncestorOf(before)))
        before = before->previousInFocusChain();
    Walk(before == &root ? nullptr : before).through(root);
}

} // namespace ohmwright::ui
