// SPDX-License-Identifier: GPL-3.0-or-later
// Pieces: what a document becomes before it is cut into pages. A piece knows how tall it is, where
// it may be cut, and how to draw any part of itself; paged_layout.cpp decides what stands where.
//
// All lengths in layout units (sheet_style.h).
#pragma once

#include "ui/sheet/text_block.h"

#include <QPointF>
#include <QRectF>

#include <functional>
#include <memory>
#include <vector>

class QPainter;

namespace ohmwright::sheet {

// What is known only when the pages are.
struct PaintContext
{
    QPainter &painter;
    std::function<int(int heading)> pageOfHeading; // counted from 1
};

// How a piece stands among its neighbours.
struct Flow
{
    double spaceBefore = 0;
    double spaceAfter = 0;
    bool keepWithNext = false;
    bool startsPage = false;
    bool flows = false; // may be cut wherever it can, not only when taller than a page
    int heading = -1;   // which of the document's headings it is
    int linkTo = -1;    // which heading a reader is taken to
};

class Piece
{
public:
    Piece() = default;
    Piece(const Piece &) = delete;
    Piece &operator=(const Piece &) = delete;
    virtual ~Piece() = default;

    [[nodiscard]] virtual double height() const = 0;
    // Heights, rising, at which it can be cut without cutting a line of text.
    [[nodiscard]] virtual std::vector<double> cuts() const { return {}; }
    // Draws the part [from, to) with that part's top left at `origin`.
    virtual void paint(PaintContext &context, QPointF origin, double from, double to) const = 0;

    Flow flow;
    // Shown again at the top of a page that begins with this piece or inside it.
    std::vector<std::shared_ptr<const Piece>> repeats;
};

using Pieces = std::vector<std::shared_ptr<Piece>>;

// Keeps the pieces from `first` on to one page if they are short beside its body, and otherwise
// the first two and the last two, so that no row stands alone.
void holdTogether(const Pieces &pieces, std::size_t first, double bodyHeight);

// Blocks of text at places, over an optional backdrop: all there is but pictures.
class TextPiece : public Piece
{
public:
    struct Part
    {
        TextBlock text;
        QPointF at;
    };
    // Draws behind the text; `visible` is the part shown, first and last tell if it holds the
    // piece's top and bottom.
    using Backdrop = std::function<void(QPainter &, const QRectF &visible, bool first, bool last)>;

    explicit TextPiece(double width) : m_width(width) {}

    void add(TextBlock text, QPointF at); // laid out already
    // The height is the lowest text's foot and this much more.
    void setSpaceBelow(double space) { m_spaceBelow = space; }
    void setMinimumHeight(double height) { m_minimumHeight = height; }
    void setBackdrop(Backdrop backdrop) { m_backdrop = std::move(backdrop); }

    [[nodiscard]] double height() const override;
    [[nodiscard]] std::vector<double> cuts() const override;
    void paint(PaintContext &context, QPointF origin, double from, double to) const override;

protected:
    [[nodiscard]] double width() const { return m_width; }

private:
    std::vector<Part> m_parts;
    double m_width = 0;
    double m_bottom = 0;
    double m_spaceBelow = 0;
    double m_minimumHeight = 0;
    Backdrop m_backdrop;
};

} // namespace ohmwright::sheet
