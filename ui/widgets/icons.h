// SPDX-License-Identifier: GPL-3.0-or-later
// The program's own line icons, drawn in whatever colour the theme has at that moment.
//
// Names are the files of resources/icons without ".svg": bench, parts, build_order, budget, checks,
// sheet, find, undo, redo, add, remove, photo, link, done, sun, moon, book, close, caution, note,
// file, send_out, question, chevron_down.
#pragma once

#include <QIcon>
#include <QString>

class QColor;
class QPainter;
class QRectF;

namespace ohmwright::ui {

class Theme;

[[nodiscard]] bool hasIcon(const QString &name);

// In the theme's ink, muted when disabled; follows a change of shade by itself. The theme must
// outlive it. An unknown name is our own mistake: asserted, and an empty icon.
[[nodiscard]] QIcon themedIcon(const Theme &theme, const QString &name);

// Fits the icon into `rect`, sharp at any scale.
void paintIcon(QPainter &painter, const QRectF &rect, const QString &name, const QColor &colour);

} // namespace ohmwright::ui
