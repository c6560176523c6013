// SPDX-License-Identifier: GPL-3.0-or-later
// Symbols of a one-line diagram, after IEC 60617. Those in a line are 40 long, from (x, y) to the
// right or downwards.
#pragma once

#include "core/diagram/one_line.h"
#include "core/diagram/svg_drawing.h"

#include <optional>

namespace ohmwright {

class Symbols
{
public:
    Symbols(SvgDrawing &drawing, const DiagramColours &colours)
        : m_drawing(drawing), m_colours(colours)
    {}

    void battery(double x, double y); // 16 long, to the right
    void fuse(double x, double y, bool down);
    void resistor(double x, double y, bool down);
    void disconnect(double x, double y, bool down);
    void contactor(double x, double y, bool down);
    // 40 high, below (x, y).
    void unit(double x, double y, std::optional<PartRole> role);
    void motor(double x, double y); // its centre

private:
    void body(double x, double y, bool down); // 24 by 12, in the middle of 40
    void gap(double x, double y, bool down);

    SvgDrawing &m_drawing;
    const DiagramColours &m_colours;
};

} // namespace ohmwright
