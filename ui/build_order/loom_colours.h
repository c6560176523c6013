// SPDX-License-Identifier: GPL-3.0-or-later
// The colours the loom is drawn in. Orange is for high voltage and nothing else.
#pragma once

#include <QColor>

namespace ohmwright::ui {

struct LoomColours
{
    QColor paper, panel;
    QColor ink, mute;
    QColor blue;        // selection, links to and from it
    QColor highVoltage; // lines and edges, never small text
    QColor unknown;     // what hangs from a cavity because a figure is not known

    static LoomColours light();
    static LoomColours dark();
    static LoomColours print(); // ink on white
};

} // namespace ohmwright::ui
