// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/steady_wheel.h"

#include <QAbstractSlider>
#include <QAbstractSpinBox>
#include <QApplication>
#include <QComboBox>
#include <QEvent>
#include <QScrollBar>

namespace ohmwright::ui {

namespace {

bool isField(const QObject *object)
{
    return qobject_cast<const QComboBox *>(object) ||
           qobject_cast<const QAbstractSpinBox *>(object) ||
           (qobject_cast<const QAbstractSlider *>(object) &&
            !qobject_cast<const QScrollBar *>(object));
}

} // namespace

SteadyWheel::SteadyWheel(QApplication &app) : QObject(&app)
{
    app.installEventFilter(this);
}

bool SteadyWheel::eventFilter(QObject *watched, QEvent *event)
{
    if (event->type() != QEvent::Wheel || !isField(watched))
        return QObject::eventFilter(watched, event);
    event->ignore(); // goes on to what the field stands in
    return true;
}

} // namespace ohmwright::ui
