// SPDX-License-Identifier: GPL-3.0-or-later
// Pieces for everything that is made of text: titles, headings, paragraphs, lists, facts, cautions,
// signatures, contents.
#pragma once

#include "core/sheet/document.h"
#include "ui/sheet/piece.h"
#include "ui/sheet/sheet_style.h"

namespace ohmwright::sheet {

// Appends pieces of one width, in one style, to a list.
class TextPieceMaker
{
public:
    TextPieceMaker(const SheetStyle &style, double width, double bodyHeight, Pieces &pieces)
        : m_style(style), m_width(width), m_bodyHeight(bodyHeight), m_pieces(pieces)
    {}

    void addTitle(const Document &document);
    void add(const Heading &heading, int index); // index: which of the document's headings
    void add(const Paragraph &paragraph);
    void add(const List &list);
    void add(const KeyValues &keyValues);
    void add(const Caution &caution);
    void add(const Signatures &signatures);
    void add(const Contents &contents, const Document &document);

private:
    std::shared_ptr<TextPiece> append();
    // The space a block of several pieces stands in.
    void setOff(std::size_t first, double before, double after);

    const SheetStyle &m_style;
    double m_width;
    double m_bodyHeight; // of a page
    Pieces &m_pieces;
};

// 1 to 3.
int levelOf(const Heading &heading);

} // namespace ohmwright::sheet
