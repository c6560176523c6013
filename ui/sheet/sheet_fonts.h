// SPDX-License-Identifier: GPL-3.0-or-later
// The families paper is set in, made from the Inter that the program carries with it.
#pragma once

#include <QString>

namespace ohmwright::sheet {

struct SheetFonts
{
    QString text;  // Inter with figures of one width; what is typed is what is drawn
    QString exact; // the same, with no two characters alike: 0 and O, 1, I and l
};

// Registers both families with Qt the first time, and names them. Needs a QGuiApplication and
// registerResources(). Without the resources the names are of fonts nobody has, and Qt takes its
// default font.
SheetFonts loadSheetFonts();

} // namespace ohmwright::sheet
