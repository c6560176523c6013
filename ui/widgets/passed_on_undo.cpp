// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/passed_on_undo.h"

#include <QApplication>
#include <QEvent>
#include <QKeyEvent>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QTextDocument>

namespace ohmwright::ui {

namespace {

bool hasToTakeBack(const QObject *field, bool redo)
{
    if (const auto *line = qobject_cast<const QLineEdit *>(field))
        return redo ? line->isRedoAvailable() : line->isUndoAvailable();
    if (const auto *text = qobject_cast<const QPlainTextEdit *>(field))
        return redo ? text->document()->isRedoAvailable() : text->document()->isUndoAvailable();
    return true; // no field: as it is
}

} // namespace

PassedOnUndo::PassedOnUndo(QApplication &app) : QObject(&app)
{
    app.installEventFilter(this);
}

bool PassedOnUndo::eventFilter(QObject *watched, QEvent *event)
{
    if (event->type() != QEvent::ShortcutOverride)
        return QObject::eventFilter(watched, event);
    const auto *key = static_cast<QKeyEvent *>(event);
    const bool undo = key->matches(QKeySequence::Undo);
    const bool redo = key->matches(QKeySequence::Redo);
    if ((!undo && !redo) || hasToTakeBack(watched, redo))
        return QObject::eventFilter(watched, event);
    event->ignore();
    return true;
}

} // namespace ohmwright::ui
