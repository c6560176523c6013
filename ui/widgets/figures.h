// SPDX-License-Identifier: GPL-3.0-or-later
// Painting numbers so that a column of them can be read: every digit takes the same room, and the
// decimal signs stand under each other.
//
// Works on text already printed by core/quantity ("1 250.00 EUR", "3.3 kW", "-12,5 A"); it neither
// parses nor rounds.
#pragma once

#include <QString>

class QColor;
class QFontMetricsF;
class QPainter;
class QRectF;

namespace ohmwright::ui {

struct FigureText
{
    QString whole;    // sign, digits and grouping: "-1 250"
    QString fraction; // the decimal sign and what follows: ".00"; empty if there is none
    QString unit;     // "EUR", "kW"; empty if there is none

    bool operator==(const FigureText &) const = default;
};

// The last comma or point of the number is the decimal sign, unless it stands there more than once
// (a grouping one stands alone only in text we never print). "2/0 AWG" and "3–5 kW" keep their
// numbers whole. Text without any digit ("unknown") is all `whole`.
[[nodiscard]] FigureText splitFigure(const QString &text);

// How many digits stand behind the decimal sign.
[[nodiscard]] int fractionDigits(const FigureText &figure);

// Width of `text` with all digits equally wide.
[[nodiscard]] double tabularWidth(const QFontMetricsF &metrics, const QString &text);

// Width from the decimal sign to the right end for that many digits; 0 digits need none.
[[nodiscard]] double fractionWidth(const QFontMetricsF &metrics, int digits);

// One line of text at `x` and the baseline, all digits equally wide. Returns the advance.
double paintTabular(QPainter &painter, double x, double baseline, const QString &text);

// Right-aligned in `rect` on its middle line, with room kept for `digits` decimals and for
// `unitWidth` (0: as wide as this unit is). The unit is painted in `unitColour`. Words in place of
// a number stand at the right end.
void paintFigure(QPainter &painter, const QRectF &rect, const FigureText &figure, int digits,
                 double unitWidth, const QColor &unitColour);

} // namespace ohmwright::ui
