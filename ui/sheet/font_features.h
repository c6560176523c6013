// SPDX-License-Identifier: GPL-3.0-or-later
// An OpenType font with some of its features made permanent.
//
// Qt 6.4 cannot ask a font for figures of one width, nor keep it from replacing "4x4" by "4×4" or
// the colon in "12:30" by another glyph, which then cannot be searched for or copied out of a PDF.
// So the wanted glyphs are written into the font's character map and its substitutions left out.
#pragma once

#include <QByteArray>
#include <QString>

#include <vector>

namespace ohmwright::sheet {

struct FontFeature
{
    QByteArray tag;     // "tnum", "zero", …
    QString characters; // those it is wanted for; empty: all
};

// `font` with its characters mapped through the single substitutions of `features` in that order,
// without any other substitutions, under the names `family` and `style`.
// Empty when the font is damaged or has no full Unicode map (cmap format 12).
// Formats: ISO/IEC 14496-22 (OpenType).
QByteArray withFeatures(const QByteArray &font, const std::vector<FontFeature> &features,
                        const QString &family, const QString &style);

} // namespace ohmwright::sheet
