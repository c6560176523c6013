// SPDX-License-Identifier: GPL-3.0-or-later
// Inside of loom_painter.h: what its parts share.
#pragma once

#include "ui/build_order/loom_painter.h"

#include <QColor>
#include <QPen>

#include <algorithm>
#include <cstddef>

class QPainter;

namespace ohmwright::ui {

// From this scale on everything is written as laid out.
inline constexpr double kFullText = 0.72;
// Down to this one titles are still written, larger than laid out and cut shorter.
inline constexpr double kShortTitles = 0.5;
// Down to this one cavities can be told apart.
inline constexpr double kCavities = 0.3;
// What a screen must give the smallest text, pixels.
inline constexpr double kShortTitlePixels = 8.5;
inline constexpr double kNamePixels = 11;
// Thinner lines than these fade on a screen, pixels.
inline constexpr double kThinWire = 0.65;
inline constexpr double kThickWire = 2.2;
inline constexpr double kOutline = 1.0;
inline constexpr double kDimmed = 0.16;
inline constexpr double kTrunkHalf = 3.4;
// The flag on what can start now, pixels; of a picture nearer than 100 %, scene units.
inline constexpr double kFlagHeight = 13;

// `share` of one colour over another, without transparency: paper and PDF/A know none.
QColor mixed(const QColor &over, const QColor &under, double share);

struct LoomPainter::Canvas
{
    QPainter &painter;
    const plan::Network &network;
    const plan::Loom &loom;
    const LoomMarks &marks;
    QRectF exposed;
    double scale = 1;

    // A pen at least `pixels` wide on the screen.
    [[nodiscard]] QPen pen(const QColor &colour, double width, double pixels = 0) const
    {
        QPen result(colour, std::max(width, pixels / scale));
        result.setCapStyle(Qt::FlatCap);
        result.setJoinStyle(Qt::MiterJoin);
        return result;
    }
    [[nodiscard]] bool lit(std::size_t task) const
    {
        return task >= marks.lit.size() || marks.lit[task];
    }
    [[nodiscard]] bool full() const { return scale >= kFullText; }
};

} // namespace ohmwright::ui
