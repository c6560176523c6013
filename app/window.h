// SPDX-License-Identifier: GPL-3.0-or-later
// Opens the window: everything that lives as long as it does is made here and passed down.
#pragma once

#include <QString>

class QApplication;

namespace ohmwright {

// Whether there is a screen to draw on; Qt would abort without.
bool hasDisplay();
// Runs the event loop. `bookPath` empty: the book opened last, or the page that helps to start.
int openWindow(QApplication &app, const QString &bookPath);

} // namespace ohmwright
