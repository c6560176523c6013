// SPDX-License-Identifier: GPL-3.0-or-later
// Fit: does a box go into a bay in a way it may lie, with room for its cables and around it? Two
// boxes are judged exactly, for two boxes apart can always be parted by a plane along an axis;
// more of them in one row, and pair by pair.
//
// Geometry; the room of a bend is core/checks/cable_bend.h. No published source for the rest.
#pragma once

#include "core/checks/given.h"

#include <array>
#include <optional>
#include <vector>

namespace ohmwright {

// Faces of a box as its drawing has it, lying on its bottom.
enum class Face { Front, Back, Left, Right, Bottom, Top };
template <>
struct EnumWords<Face>
{
    static constexpr std::array words{"front", "back", "left", "right", "bottom", "top"};
};

struct BoxPort
{
    QString name;
    Face face = Face::Front;
    Given<Length> cableDiameter; // outside; 0 for a port that stays closed
    Given<Length> connector;     // how far connector and boot stand out; 0 or more
    // Inner bending radius over the diameter, from the cable's data sheet; else IEC 62440.
    std::optional<Given<double>> bendFactor; // 1 to 50
};

struct BayBox
{
    QString name;
    Given<Length> length; // front to back; > 0
    Given<Length> width;  // left to right; > 0
    Given<Length> height; // bottom to top; > 0
    std::vector<BoxPort> ports;
    // Which of its own directions may stand upright in the bay. At least one.
    bool heightUp = true;
    bool lengthUp = false;
    bool widthUp = false;
};

struct FitInputs
{
    QString bay;             // key
    Given<Length> bayLength; // clear, along the vehicle; > 0
    Given<Length> bayWidth;  // clear, across; > 0
    Given<Length> bayHeight; // clear, up; > 0
    std::vector<BayBox> boxes;
    // Left free between boxes and to every wall, beyond what cables need.
    Threshold<Length> clearance{QStringLiteral("fit.clearance"),
                                metres(0.010),
                                QStringLiteral("common practice, no published source"),
                                Tighter::Higher,
                                std::nullopt,
                                {}};
};

// Along the bay, across it, up; metres.
using Extent = std::array<double, 3>;

// The ways a box of this extent (with the room of its cables) may lie, turned by right angles.
std::vector<Extent> waysToLie(const Extent &box, bool heightUp, bool lengthUp, bool widthUp);

// A row of boxes along one axis of the bay: each box's way to lie, what they take together, and the
// clearance that is left: the same between neighbours and to every wall; below zero they overlap.
struct RowOfBoxes
{
    std::size_t axis = 0;
    std::vector<Extent> ways;
    Extent taken{};       // without clearance
    double clearance = 0; // metres
};

// The row with the most clearance, over all axes and ways. `ways[i]` are those of box i; none
// empty.
RowOfBoxes bestRow(const std::vector<std::vector<Extent>> &ways, const Extent &bay);

Check judgeFit(const FitInputs &inputs);

} // namespace ohmwright
