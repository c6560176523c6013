// SPDX-License-Identifier: GPL-3.0-or-later
// The one-line diagram of the traction circuit, drawn from the book: pack, disconnect, main fuse,
// contactors with the precharge path, and a feeder for each branch, down to the motor.
//
// One line stands for both poles. Symbols after IEC 60617 (battery, fuse, switch, resistor,
// converter, machine). What the book does not know is not drawn as if it were known: a feeder
// without a fuse says so, a conductor without a size has a question mark.
#pragma once

#include "core/records/records.h"

#include <QByteArray>
#include <QString>

#include <vector>

namespace ohmwright {

// Colours as "#rrggbb", so that the same drawing serves paper, light and dark.
struct DiagramColours
{
    QString ink = QStringLiteral("#1F2A33");
    QString mute = QStringLiteral("#5A646C");
    QString highVoltage = QStringLiteral("#C94A08");
    QString ground = QStringLiteral("#FFFFFF");
};

struct OneLine
{
    QByteArray svg;       // empty: the book has no traction circuit
    int width = 0;        // in the drawing's units
    int height = 0;       //
    QString description;  // in words, for those who do not see it
    QStringList notDrawn; // what the book leaves open, a sentence each
};

OneLine oneLineOf(const Records &records, const DiagramColours &colours = {});

} // namespace ohmwright
