// SPDX-License-Identifier: GPL-3.0-or-later
// A paper document as plain values: what the build sheet, or any other paper, is made of.
//
// What goes into it is decided where records are read; how it looks is decided by the writers
// (html_writer.h here, PDF and preview in ui/sheet). All text is plain text: writers escape it, a
// line feed starts a new line. Nothing here knows fonts, colours or page sizes.
//
//     Document sheet;
//     sheet.title = "Build sheet";
//     sheet.blocks.push_back(Heading{1, "Traction battery", "battery"});
//     sheet.blocks.push_back(Paragraph{{{"108 cells in series. "}, {"Full charge ",
//     Emphasis::Muted}}}); sheet.contentHash = contentHash(sheet);
#pragma once

#include "core/quantity/quantity.h"
#include "core/sheet/text_blocks.h"

#include <QByteArray>
#include <QString>

#include <functional>
#include <variant>
#include <vector>

namespace ohmwright::sheet {

// Pictures ---------------------------------------------------------------------------------------

// Bytes of a JPEG, PNG, GIF, WebP or SVG file, or the id a loader knows them by. An id that is the
// file's SHA-256 in lower-case hexadecimals hashes like the bytes themselves.
struct Image
{
    QString id;
    QByteArray bytes;
    // In pixels, upright; 0: found out by loading. Saves a layout from loading every photo.
    int width = 0, height = 0;
};

// Gives a picture's bytes; empty when there are none. When a writer is given a loader it asks it
// for every picture, also for those that carry bytes, so a loader may reduce them.
using ImageLoader = std::function<QByteArray(const Image &)>;
QByteArray imageBytes(const Image &image, const ImageLoader &loader);

struct Figure
{
    Image image;
    QString caption; // writers number figures in order: "Figure 3"
    QString altText; // for screen readers; empty: the caption
    Length maxHeight = metres(0.11);
};

// Figures side by side, `columns` (2 or 3) to a row, in as many rows as it takes.
struct FigureRow
{
    std::vector<Figure> figures;
    int columns = 2;
};

// Warnings, signing, pages -----------------------------------------------------------------------

struct Caution
{
    QString title;
    std::vector<QString> lines;
    bool highVoltage = false;
};

struct SignatureLine
{
    QString role;      // "Builder", "Inspector"
    QString statement; // what is signed for
    QString name;      // printed over the name line when already known
};

struct Signatures
{
    std::vector<SignatureLine> lines;
};

struct PageBreak
{};

// A list of the headings down to `depth`, with page numbers on paper and links in a browser.
struct Contents
{
    int depth = 1;
};

using Block = std::variant<Heading, Paragraph, List, KeyValues, Table, Figure, FigureRow, Caution,
                           Signatures, PageBreak, Contents>;

struct Document
{
    QString title;
    QString subtitle;
    QString revision;    // as printed: "Revision 4, 3 Mar 2026"
    QString contentHash; // lower-case hexadecimals, see content_hash.h; empty: not shown
    QString language = QStringLiteral("en"); // BCP 47
    QString footer;                          // a short note at the foot of each page
    std::vector<Block> blocks;
};

} // namespace ohmwright::sheet
