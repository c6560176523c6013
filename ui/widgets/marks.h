// SPDX-License-Identifier: GPL-3.0-or-later
// Verdicts and states as a shape and a word; colour only supports them.
//
// A verdict is a column under its limit line: well below (holds), touching (tight), breaking
// through (fails), hollow (unknown). A part is a housing that becomes real: dashed while it is
// only wanted, filled and bolted down once it is fitted. A task is drawn as on the build order:
// dashed while it waits, firm when it can start, solid when done.
#pragma once

#include <QColor>
#include <QString>

#include <span>

class QPainter;
class QRectF;

namespace ohmwright::ui {

struct Tokens;

enum class Mark {
    Holds,
    Tight,
    Fails,
    Unknown,
    Wanted,
    Ordered,
    InHand,
    Tested,
    Fitted,
    Returned,
    Sold,
    Scrapped,
    Quarantined,
    Waits,
    CanStart,
    Done,
};

[[nodiscard]] std::span<const Mark> allMarks();

// "holds", "in hand", "can start": translated, lower case.
[[nodiscard]] QString markWord(Mark mark);

[[nodiscard]] QColor markColour(Mark mark, const Tokens &tokens);

// Into the middle of `rect`; drawn for 16 units a side and scaled.
void paintMark(QPainter &painter, const QRectF &rect, Mark mark, const QColor &colour);

} // namespace ohmwright::ui
