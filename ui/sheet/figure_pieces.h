// SPDX-License-Identifier: GPL-3.0-or-later
// Pieces for pictures: one alone, or two or three side by side, each on its plate.
#pragma once

#include "core/sheet/document.h"
#include "ui/sheet/piece.h"
#include "ui/sheet/sheet_style.h"

namespace ohmwright::sheet {

struct Plate
{
    Image image;
    QRectF frame; // within the piece
    TextBlock caption;
    QPointF captionAt;
};

class FigurePieceMaker
{
public:
    // `tallest`: no plate is taller. The loader is asked again each time a picture is drawn, so
    // that a document of many photos is never in memory as a whole; it must outlive the pieces.
    FigurePieceMaker(const SheetStyle &style, double width, double tallest,
                     const ImageLoader &loader, Pieces &pieces)
        : m_style(style), m_width(width), m_tallest(tallest), m_loader(loader), m_pieces(pieces)
    {}

    void add(const Figure &figure);
    void add(const FigureRow &row);

private:
    void addRow(const std::vector<Figure> &figures, double width, double gap);
    Plate makePlate(const Figure &figure, const QRectF &frame, double captionWidth);
    void append(std::vector<Plate> plates);

    const SheetStyle &m_style;
    double m_width;
    double m_tallest;
    const ImageLoader &m_loader;
    Pieces &m_pieces;
    int m_number = 0;
};

} // namespace ohmwright::sheet
