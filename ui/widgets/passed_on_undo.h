// SPDX-License-Identifier: GPL-3.0-or-later
// Undo and redo belong to a field only while it has something to take back; else the keys are the
// window's, which takes back the book's last step.
#pragma once

#include <QObject>

class QApplication;

namespace ohmwright::ui {

class PassedOnUndo : public QObject
{
    Q_OBJECT

public:
    // For all windows of the application, for as long as this lives.
    explicit PassedOnUndo(QApplication &app);

protected:
    bool eventFilter(QObject *watched, QEvent *event) override;
};

} // namespace ohmwright::ui
