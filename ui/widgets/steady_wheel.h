// SPDX-License-Identifier: GPL-3.0-or-later
// The mouse wheel scrolls; it never changes what a field says.
//
// A form that is scrolled under the pointer would otherwise change each choice the pointer passes
// over, and a record that saves itself would keep it.
#pragma once

#include <QObject>

class QApplication;

namespace ohmwright::ui {

class SteadyWheel : public QObject
{
    Q_OBJECT

public:
    // For all windows of the application, for as long as this lives.
    explicit SteadyWheel(QApplication &app);

protected:
    bool eventFilter(QObject *watched, QEvent *event) override;
};

} // namespace ohmwright::ui
