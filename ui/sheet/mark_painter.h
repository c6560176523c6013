// SPDX-License-Identifier: GPL-3.0-or-later
// The drawn shapes of marks and cautions. Shapes, not characters: they never turn up in text that
// is copied or searched, and look the same whatever fonts there are.
#pragma once

#include "core/sheet/document.h"

#include <QRectF>

class QPainter;

namespace ohmwright::sheet {

// A ring with a tick, a half-filled diamond, a solid square with a cross, a broken ring with a
// question mark. `box` is square. HighVoltage has no shape but its frame.
void paintMark(QPainter &painter, MarkKind kind, const QRectF &box);
void paintHighVoltageFrame(QPainter &painter, const QRectF &frame);
// A warning triangle in ink.
void paintCautionSign(QPainter &painter, const QRectF &box);

} // namespace ohmwright::sheet
