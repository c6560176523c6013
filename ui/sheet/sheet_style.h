// SPDX-License-Identifier: GPL-3.0-or-later
// How paper looks: sizes, fonts and inks in one place.
//
// Layout counts in twentieths of a point, so that font sizes are whole numbers of it and a PDF of
// 1440 dots to the inch has the very same grid.
#pragma once

#include "core/sheet/document.h"

#include <QColor>
#include <QFont>

namespace ohmwright::sheet {

constexpr double kUnitsPerPoint = 20.0;
constexpr double kPointsPerInch = 72.0;
constexpr double kUnitsPerInch = kUnitsPerPoint * kPointsPerInch;

constexpr double pt(double points)
{
    return points * kUnitsPerPoint;
}
constexpr double mm(double millimetres)
{
    constexpr double kMillimetresPerInch = 25.4;
    return millimetres / kMillimetresPerInch * kUnitsPerInch;
}

namespace ink {
constexpr QColor kInk(0x1F, 0x2A, 0x33);
constexpr QColor kMute(0x5A, 0x64, 0x6C);
constexpr QColor kHairline(0xB9, 0xBD, 0xBD);
constexpr QColor kTint(0xF6, 0xF3, 0xEC);
constexpr QColor kHolds(0x2C, 0x6A, 0x3F);
constexpr QColor kTight(0x6B, 0x59, 0x00);
constexpr QColor kFails(0x9E, 0x2A, 0x2B);
constexpr QColor kUnknown(0x5B, 0x4A, 0x8A);
constexpr QColor kHighVoltage(0xC9, 0x4A, 0x08); // lines and edges only
constexpr QColor kPaper(0xFF, 0xFF, 0xFF);
} // namespace ink

struct TextStyle
{
    QFont font;
    QColor colour = ink::kInk;
    double leading = 0; // from line to line
};

struct SheetStyle
{
    TextStyle title, subtitle, imprint;
    TextStyle heading[3];
    TextStyle body, strong, muted, exact;
    TextStyle note;  // evidence and remarks
    TextStyle label; // column headers, what a fact is, figure numbers
    TextStyle cell, cellStrong, cellMuted, cellExact, cellQuiet, caption;
    TextStyle running, runningStrong, runningExact; // head and foot of each page
};

const TextStyle &bodyStyle(const SheetStyle &style, Emphasis emphasis);
const TextStyle &cellStyle(const SheetStyle &style, Emphasis emphasis);

// Registers the fonts if need be (sheet_fonts.h).
SheetStyle makeSheetStyle();

QColor inkOf(MarkKind kind);
// The same size and ink, in the weight of a mark's word.
TextStyle markWordStyle(const TextStyle &beside, MarkKind kind);
TextStyle highVoltageStyle(const TextStyle &beside);

} // namespace ohmwright::sheet
