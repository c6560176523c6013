// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/diagram/symbols.h"

namespace ohmwright {

namespace {

constexpr double kLong = 40;
constexpr double kLine = 3;

} // namespace

void Symbols::battery(double x, double y)
{
    // two cells: a long thin stroke and a short thick one each
    for (const double at : {0.0, 11.0}) {
        m_drawing.line(x + at, y - 18, x + at, y + 18, m_colours.ink, 1.5);
        m_drawing.line(x + at + 5, y - 9, x + at + 5, y + 9, m_colours.ink, 4);
    }
}

void Symbols::body(double x, double y, bool down)
{
    if (down) {
        m_drawing.line(x, y, x, y + kLong, m_colours.highVoltage, 2);
        m_drawing.box(x - 6, y + 8, 12, 24, m_colours.ink);
    } else {
        m_drawing.line(x, y, x + kLong, y, m_colours.highVoltage, kLine);
        m_drawing.box(x + 8, y - 6, 24, 12, m_colours.ink);
    }
}

void Symbols::fuse(double x, double y, bool down)
{
    body(x, y, down);
    // the line goes through it
    if (down)
        m_drawing.line(x, y + 8, x, y + 32, m_colours.ink, 1.5);
    else
        m_drawing.line(x + 8, y, x + 32, y, m_colours.ink, 1.5);
}

void Symbols::resistor(double x, double y, bool down)
{
    body(x, y, down);
}

void Symbols::gap(double x, double y, bool down)
{
    if (down) {
        m_drawing.line(x, y, x, y + 8, m_colours.highVoltage, kLine);
        m_drawing.line(x, y + 32, x, y + kLong, m_colours.highVoltage, kLine);
        m_drawing.line(x, y + 32, x - 12, y + 10, m_colours.ink, 2);
    } else {
        m_drawing.line(x, y, x + 8, y, m_colours.highVoltage, kLine);
        m_drawing.line(x + 32, y, x + kLong, y, m_colours.highVoltage, kLine);
        m_drawing.line(x + 32, y, x + 10, y - 12, m_colours.ink, 2);
    }
}

void Symbols::disconnect(double x, double y, bool down)
{
    gap(x, y, down);
    // the bar of a disconnector
    if (down)
        m_drawing.line(x - 6, y + 8, x + 6, y + 8, m_colours.ink, 2);
    else
        m_drawing.line(x + 8, y - 6, x + 8, y + 6, m_colours.ink, 2);
}

void Symbols::contactor(double x, double y, bool down)
{
    gap(x, y, down);
    // the half circle of a contactor, as three strokes
    if (down)
        m_drawing.polyline({{x, y + 4}, {x + 5, y + 6}, {x + 5, y + 10}, {x, y + 12}},
                           m_colours.ink, 1.5);
    else
        m_drawing.polyline({{x + 4, y}, {x + 6, y + 5}, {x + 10, y + 5}, {x + 12, y}},
                           m_colours.ink, 1.5);
}

void Symbols::unit(double x, double y, std::optional<PartRole> role)
{
    m_drawing.box(x - 20, y, 40, 40, m_colours.ink);
    const auto converter = [&](const char *from, const char *to) {
        m_drawing.line(x - 20, y + 40, x + 20, y, m_colours.ink, 1.5);
        m_drawing.text(x - 9, y + 15, QString::fromUtf8(from), m_colours.ink, 14, Anchor::Middle);
        m_drawing.text(x + 9, y + 36, QString::fromUtf8(to), m_colours.ink, 14, Anchor::Middle);
    };
    switch (role.value_or(PartRole::Bay)) {
    case PartRole::Inverter:
    case PartRole::Charger:
        converter("=", "~");
        return;
    case PartRole::Converter:
        converter("=", "=");
        return;
    case PartRole::Heater:
        // the three strokes of a heating element
        for (const double at : {10.0, 20.0, 30.0})
            m_drawing.line(x - 20 + at, y + 8, x - 20 + at, y + 32, m_colours.ink, 1.5);
        return;
    case PartRole::Motor:
    case PartRole::Compressor:
        m_drawing.text(x, y + 26, QStringLiteral("M"), m_colours.ink, 16, Anchor::Middle, true);
        return;
    default:
        return;
    }
}

void Symbols::motor(double x, double y)
{
    m_drawing.circle(x, y, 26, m_colours.ink, 2);
    m_drawing.text(x, y + 2, QStringLiteral("M"), m_colours.ink, 16, Anchor::Middle, true);
    m_drawing.text(x, y + 17, QStringLiteral("3 ~"), m_colours.ink, 11, Anchor::Middle);
}

} // namespace ohmwright
