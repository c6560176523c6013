// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/sheet/sheet_style.h"

#include "ui/sheet/sheet_fonts.h"

#include <cmath>

namespace ohmwright::sheet {

namespace {

QFont fontOf(const QString &family, double points, QFont::Weight weight)
{
    QFont font(family);
    font.setPixelSize(static_cast<int>(std::lround(pt(points))));
    font.setWeight(weight);
    // Hinting would round widths to a screen's grid; pages break alike on every device without.
    font.setHintingPreference(QFont::PreferNoHinting);
    return font;
}

} // namespace

SheetStyle makeSheetStyle()
{
    const SheetFonts fonts = loadSheetFonts();
    const auto style = [&fonts](double points, double leading, QFont::Weight weight = QFont::Normal,
                                QColor colour = ink::kInk) {
        return TextStyle{fontOf(fonts.text, points, weight), colour, pt(leading)};
    };
    const auto exact = [&fonts](double points, double leading, QColor colour = ink::kInk) {
        return TextStyle{fontOf(fonts.exact, points, QFont::Normal), colour, pt(leading)};
    };
    SheetStyle s;
    s.title = style(26, 31, QFont::DemiBold);
    s.subtitle = style(12, 16, QFont::Normal, ink::kMute);
    s.imprint = style(8.5, 12, QFont::Medium);
    s.heading[0] = style(16, 20, QFont::DemiBold);
    s.heading[1] = style(11.5, 15, QFont::DemiBold);
    s.heading[2] = style(9.5, 13.5, QFont::DemiBold);
    s.body = style(9.5, 14);
    s.strong = style(9.5, 14, QFont::DemiBold);
    s.muted = style(9.5, 14, QFont::Normal, ink::kMute);
    s.exact = exact(9.5, 14);
    s.note = style(7.5, 9.5, QFont::Normal, ink::kMute);
    s.label = style(7.5, 10.5, QFont::Medium, ink::kMute);
    s.cell = style(8.5, 11);
    s.cellStrong = style(8.5, 11, QFont::DemiBold);
    s.cellMuted = style(8.5, 11, QFont::Normal, ink::kMute);
    s.cellExact = exact(8.5, 11);
    s.cellQuiet = style(8.5, 11, QFont::Normal, ink::kMute);
    s.caption = style(9, 13, QFont::DemiBold);
    s.running = style(7.5, 10, QFont::Normal, ink::kMute);
    s.runningStrong = style(7.5, 10, QFont::DemiBold);
    s.runningExact = exact(7.5, 10, ink::kMute);

    s.title.font.setLetterSpacing(QFont::PercentageSpacing, 98);
    // What small capitals are used for elsewhere: set apart by weight, ink and air, since capitals
    // would turn "mA" into "MA".
    s.label.font.setLetterSpacing(QFont::PercentageSpacing, 103);
    s.cellQuiet.font.setItalic(true);
    return s;
}

const TextStyle &bodyStyle(const SheetStyle &style, Emphasis emphasis)
{
    switch (emphasis) {
    case Emphasis::Strong:
        return style.strong;
    case Emphasis::Muted:
        return style.muted;
    case Emphasis::Exact:
        return style.exact;
    case Emphasis::None:
        break;
    }
    return style.body;
}

const TextStyle &cellStyle(const SheetStyle &style, Emphasis emphasis)
{
    switch (emphasis) {
    case Emphasis::Strong:
        return style.cellStrong;
    case Emphasis::Muted:
        return style.cellMuted;
    case Emphasis::Exact:
        return style.cellExact;
    case Emphasis::None:
        break;
    }
    return style.cell;
}

QColor inkOf(MarkKind kind)
{
    switch (kind) {
    case MarkKind::Holds:
        return ink::kHolds;
    case MarkKind::Tight:
        return ink::kTight;
    case MarkKind::Fails:
        return ink::kFails;
    case MarkKind::Unknown:
        return ink::kUnknown;
    case MarkKind::HighVoltage:
        break;
    }
    return ink::kInk;
}

TextStyle markWordStyle(const TextStyle &beside, MarkKind kind)
{
    TextStyle style = beside;
    style.font.setWeight(QFont::Medium);
    style.font.setItalic(false);
    style.colour = inkOf(kind);
    return style;
}

TextStyle highVoltageStyle(const TextStyle &beside)
{
    constexpr double kSize = 0.8;
    TextStyle style = beside;
    style.font.setWeight(QFont::DemiBold);
    style.font.setItalic(false);
    style.font.setPixelSize(static_cast<int>(std::lround(beside.font.pixelSize() * kSize)));
    style.colour = ink::kInk;
    return style;
}

} // namespace ohmwright::sheet
