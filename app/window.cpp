// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window.h"

#include <QApplication>

namespace ohmwright {

bool hasDisplay()
{
    return qEnvironmentVariableIsSet("DISPLAY") || qEnvironmentVariableIsSet("WAYLAND_DISPLAY")
           || qEnvironmentVariableIsSet("QT_QPA_PLATFORM");
}

int openWindow(QApplication &app, const QString &bookPath)
{
    Q_UNUSED(bookPath)
    return app.exec();
}

} // namespace ohmwright
