// SPDX-License-Identifier: GPL-3.0-or-later
// Types and parts side by side: two units in the same case with another suffix, the old part and
// the one that replaces it. Every figure that any of them has, with the value in force of each and
// where that is known from; what differs is marked, and what one has and another lacks is told as
// not known, never as the same.
#pragma once

#include "core/parts/figures.h"
#include "core/records/records.h"

#include <optional>
#include <variant>
#include <vector>

namespace ohmwright {

using ComparedId = std::variant<Id<PartType>, Id<Part>>;

struct ComparedUnit
{
    ComparedId id;
    QString key, name;
    QString under; // "type, Kestrin 0448-C"; of a part its state, its make and part number
    // To head its figures: of a type its part number first, for variants often share a name. With
    // the key behind it where two of those compared would read the same.
    QString head;
};

// How one figure stands among those compared. Two known values that disagree are different,
// whatever a third has; else one that is not known leaves it open.
enum class Agreement { Same, Differs, NotKnown };
template <>
struct EnumWords<Agreement>
{
    static constexpr std::array words{"same", "differs", "not known"};
};

struct ComparedCell
{
    QString value; // for people, with its unit; empty: not known
    // Of a value where it is from: evidence and source, or the part a plug is on. Of what is not
    // known why, where anything says so. May be empty.
    QString from;
    std::optional<Amount> amount, duration; // of a figure
    std::optional<Evidence> evidence;
    QString source;
    bool ofType = false; // a part has it from its type
    bool clash = false;  // other values are recorded; this is the one in force
    bool stale = false;  // older than the rework of its part
};

struct ComparedRow
{
    QString what;
    std::optional<FigureName> figure;
    std::vector<ComparedCell> cells; // one for each unit
    Agreement agreement = Agreement::Same;
};

struct SideBySide
{
    std::vector<ComparedUnit> units;
    // Figures in order of the enum, then what their interfaces say.
    std::vector<ComparedRow> rows;
};

// Two units or more. BadInput for fewer, or for one named twice; NotFound for one that is gone.
// Peaks agree only if they last as long. Limits agree if they are equal, actual values as figures.h
// says.
Result<SideBySide> compareUnits(const Records &records, const std::vector<ComparedId> &units);

// What it is called; none if it is no longer in the book.
std::optional<ComparedUnit> comparedUnit(const Records &records, ComparedId id);

// By key; "type:KEY" or "part:KEY" where a type and a part share one. NotFound, or BadInput where
// it could be either.
Result<ComparedId> unitNamed(const Records &records, const QString &name);

// Of texts: as they are read, whatever their case and spaces.
Agreement agreementOf(const std::vector<ComparedCell> &cells);

// "2 differ, 1 is not known of all, 5 are the same."
QString summary(const SideBySide &compared);

} // namespace ohmwright
