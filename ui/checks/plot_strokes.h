// SPDX-License-Identifier: GPL-3.0-or-later
// How the lines and bars of a plot are told apart: by stroke, marker and filling; colour helps.
#pragma once

#include <QColor>
#include <QPen>

#include <cstddef>

class QPainter;
class QPointF;
class QRectF;

namespace ohmwright::ui {

struct PlotLook;

enum class PlotMarker { Disc, Square, Triangle, Diamond, Ring, HollowSquare, HollowTriangle };

[[nodiscard]] QPen strokeOf(std::size_t series, const PlotLook &look);
[[nodiscard]] PlotMarker markerOf(std::size_t series);
// How a bar is filled. `of`: how many series there are; a single one is tinted.
[[nodiscard]] QColor fillingOf(std::size_t series, std::size_t of, const PlotLook &look);
// Strokes over the filling, drawn as lines so that they are the same on screen and on paper.
void paintHatch(QPainter &painter, const QRectF &bar, std::size_t series, const PlotLook &look);

inline constexpr double kMarkerSize = 7;   // pixels of the scene
inline constexpr double kBarsShare = 0.62; // of its place, all bars of one name together

void paintMarker(QPainter &painter, const QPointF &middle, PlotMarker marker, const QColor &ink,
                 const QColor &ground);

} // namespace ohmwright::ui
