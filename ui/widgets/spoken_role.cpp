// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/spoken_role.h"

#include <QAccessibleWidget>
#include <QWidget>

namespace ohmwright::ui {

namespace {

constexpr const char *kRole = "spokenRole";

QAccessibleInterface *withRole(const QString &, QObject *object)
{
    auto *widget = qobject_cast<QWidget *>(object);
    const QVariant role = widget ? widget->property(kRole) : QVariant();
    return role.isValid()
               ? new QAccessibleWidget(widget, static_cast<QAccessible::Role>(role.toInt()))
               : nullptr;
}

} // namespace

void speakAs(QWidget &widget, QAccessible::Role role)
{
    static const bool kInstalled = [] {
        QAccessible::installFactory(withRole);
        return true;
    }();
    Q_UNUSED(kInstalled)
    widget.setProperty(kRole, static_cast<int>(role));
}

} // namespace ohmwright::ui
