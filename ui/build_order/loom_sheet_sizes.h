// SPDX-License-Identifier: GPL-3.0-or-later
// Inside of loom_sheet.h: sizes that folding and painting share.
#pragma once

#include <QSizeF>

#include <algorithm>
#include <cmath>

namespace ohmwright::ui {

// A scene unit is a screen's pixel; at full size 96 of them are an inch.
inline constexpr double kFullSize = 0.75; // points per unit
// Tiles are drawn so that it can still be read.
inline constexpr double kTileScale = 0.66;
// Between two bands, units; and so much more where a sheet has room left.
inline constexpr double kBetweenBands = 24;
inline constexpr double kMostBetween = 90;

// On larger paper title and legend are larger, too; 1 on A3. `room`: points.
inline double headScale(QSizeF room)
{
    return std::clamp(std::sqrt(room.width() * room.height() / (1134 * 786.0)), 0.72, 2.2);
}

} // namespace ohmwright::ui
