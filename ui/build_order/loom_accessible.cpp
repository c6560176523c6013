// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/build_order/loom_accessible.h"

#include "ui/build_order/loom_navigation.h"
#include "ui/build_order/loom_view.h"

#include <QAccessible>
#include <QAccessibleActionInterface>
#include <QAccessibleWidget>
#include <QPointer>
#include <QRect>
#include <QStringList>

#include <vector>

namespace ohmwright::ui {

namespace {

class TaskItem : public QAccessibleInterface, public QAccessibleActionInterface
{
public:
    TaskItem(LoomView *view, int index) : m_view(view), m_index(index) {}

    [[nodiscard]] bool isValid() const override
    {
        return m_view && task() < m_view->loom().tasks.size();
    }
    [[nodiscard]] QObject *object() const override { return nullptr; }
    [[nodiscard]] QAccessibleInterface *childAt(int, int) const override { return nullptr; }
    [[nodiscard]] QAccessibleInterface *parent() const override
    {
        return m_view ? QAccessible::queryAccessibleInterface(m_view) : nullptr;
    }
    [[nodiscard]] QAccessibleInterface *child(int) const override { return nullptr; }
    [[nodiscard]] int childCount() const override { return 0; }
    [[nodiscard]] int indexOfChild(const QAccessibleInterface *) const override { return -1; }

    [[nodiscard]] QString text(QAccessible::Text kind) const override
    {
        if (!isValid())
            return {};
        if (kind == QAccessible::Name)
            return m_view->network().tasks[task()].title;
        if (kind == QAccessible::Description)
            return m_view->description(task());
        return {};
    }
    void setText(QAccessible::Text, const QString &) override {}

    [[nodiscard]] QRect rect() const override
    {
        if (!isValid())
            return {};
        const QRect inView = m_view->taskRect(task());
        return {m_view->viewport()->mapToGlobal(inView.topLeft()), inView.size()};
    }
    [[nodiscard]] QAccessible::Role role() const override { return QAccessible::ListItem; }
    [[nodiscard]] QAccessible::State state() const override
    {
        QAccessible::State state;
        if (!isValid()) {
            state.invalid = true;
            return state;
        }
        state.focusable = true;
        state.selectable = true;
        const bool current = m_view->currentIndex() == task();
        state.selected = current;
        state.focused = current && m_view->hasFocus();
        state.offscreen = !m_view->viewport()->rect().intersects(m_view->taskRect(task()));
        return state;
    }

    void *interface_cast(QAccessible::InterfaceType type) override
    {
        return type == QAccessible::ActionInterface
                   ? static_cast<QAccessibleActionInterface *>(this)
                   : nullptr;
    }
    [[nodiscard]] QStringList actionNames() const override
    {
        return {pressAction(), setFocusAction()};
    }
    void doAction(const QString &name) override
    {
        if (!isValid())
            return;
        const QString key = m_view->network().tasks[task()].key;
        m_view->setCurrentTask(key);
        if (name == pressAction())
            emit m_view->taskActivated(key);
        else if (name == setFocusAction())
            m_view->setFocus();
    }
    [[nodiscard]] QStringList keyBindingsForAction(const QString &) const override { return {}; }

private:
    [[nodiscard]] std::size_t task() const { return static_cast<std::size_t>(m_index); }

    QPointer<LoomView> m_view;
    int m_index;
};

class LoomList final : public QAccessibleWidget
{
public:
    explicit LoomList(LoomView *view) : QAccessibleWidget(view, QAccessible::List) {}
    ~LoomList() override { forgetItems(); }

    void forgetItems()
    {
        for (const QAccessible::Id id : m_items) {
            if (id != 0)
                QAccessible::deleteAccessibleInterface(id);
        }
        m_items.clear();
    }

    [[nodiscard]] int childCount() const override
    {
        return view() ? static_cast<int>(view()->loom().tasks.size()) : 0;
    }
    [[nodiscard]] QAccessibleInterface *child(int index) const override
    {
        if (index < 0 || index >= childCount())
            return nullptr;
        m_items.resize(static_cast<std::size_t>(childCount()), 0);
        QAccessible::Id &id = m_items[static_cast<std::size_t>(index)];
        if (id == 0)
            id = QAccessible::registerAccessibleInterface(new TaskItem(view(), index));
        return QAccessible::accessibleInterface(id);
    }
    [[nodiscard]] int indexOfChild(const QAccessibleInterface *child) const override
    {
        for (std::size_t at = 0; at < m_items.size(); ++at) {
            if (m_items[at] != 0 && QAccessible::accessibleInterface(m_items[at]) == child)
                return static_cast<int>(at);
        }
        return -1;
    }
    [[nodiscard]] QAccessibleInterface *childAt(int x, int y) const override
    {
        if (!view())
            return nullptr;
        const QPoint at = view()->viewport()->mapFromGlobal(QPoint(x, y));
        for (int index = 0; index < childCount(); ++index) {
            if (view()->taskRect(static_cast<std::size_t>(index)).contains(at))
                return child(index);
        }
        return nullptr;
    }
    [[nodiscard]] QAccessibleInterface *focusChild() const override
    {
        if (!view() || !view()->hasFocus() || !view()->currentIndex())
            return QAccessibleWidget::focusChild();
        return child(static_cast<int>(*view()->currentIndex()));
    }

private:
    [[nodiscard]] LoomView *view() const { return qobject_cast<LoomView *>(object()); }

    mutable std::vector<QAccessible::Id> m_items; // made when first asked for
};

QAccessibleInterface *makeInterface(const QString &name, QObject *object)
{
    if (name != QLatin1String(LoomView::staticMetaObject.className()))
        return nullptr;
    auto *view = qobject_cast<LoomView *>(object);
    return view != nullptr ? new LoomList(view) : nullptr;
}

} // namespace

void installLoomAccessibility()
{
    // Qt keeps a list of factories: taken out first, it stands there once.
    QAccessible::removeFactory(makeInterface);
    QAccessible::installFactory(makeInterface);
}

void loomChanged(LoomView *view)
{
    if (!QAccessible::isActive())
        return;
    if (auto *list = dynamic_cast<LoomList *>(QAccessible::queryAccessibleInterface(view)))
        list->forgetItems();
    QAccessibleEvent changed(view, QAccessible::ObjectReorder);
    QAccessible::updateAccessibility(&changed);
}

} // namespace ohmwright::ui
