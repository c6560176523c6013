// SPDX-License-Identifier: GPL-3.0-or-later
// Photos and drawings made ready for paper: upright, no larger than they are shown, without what a
// camera wrote into them.
#pragma once

#include "core/sheet/document.h"

#include <QByteArray>
#include <QImage>
#include <QRectF>
#include <QSize>

class QPainter;

namespace ohmwright::sheet {

// In pixels, turned upright; invalid when the bytes are no picture that can be shown.
// An SVG's size is that of its view box. An SVG that refers to other files is not shown.
QSize pictureSize(const QByteArray &bytes);

// Draws the picture into `target`, keeping its shape, with no more dots than the device or
// `dotsPerUnit` (dots to a unit of the painter's coordinates) can show. Drawings of few colours are
// kept without loss, an SVG as lines. False when there was nothing to draw.
bool paintPicture(QPainter &painter, const QRectF &target, const QByteArray &bytes,
                  double dotsPerUnit);

// A loader that hands on what `inner` gives (or the image's own bytes), with the longer side at
// most `longestSide` pixels and no camera data: no place, no time, no serial number. Photos as
// JPEG, drawings as PNG, SVG unchanged. Empty where the bytes are no picture.
ImageLoader reducedPictures(ImageLoader inner, int longestSide = 1600);

} // namespace ohmwright::sheet
