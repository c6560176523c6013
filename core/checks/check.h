// SPDX-License-Identifier: GPL-3.0-or-later
// Check: one engineering computation, told so that a stranger can follow and dispute it.
//
// The window, the command line and the build sheet all render this one struct. It is made by a
// pure function of plain inputs (one file each in this folder), through a Worksheet.
#pragma once

#include "core/quantity/amount.h"
#include "core/records/work.h"

#include <QString>
#include <QStringList>

#include <array>
#include <optional>
#include <utility>
#include <vector>

namespace ohmwright {

// From best to worst. A known failure stays one whatever else is unknown.
enum class Verdict { Holds, Tight, Unknown, Fails };
template <>
struct EnumWords<Verdict>
{
    static constexpr std::array words{"holds", "tight", "unknown", "fails"};
};

// The order in which verdicts are counted, filtered and listed: what is known to be bad, what may
// be.
inline constexpr std::array kWorstFirst{Verdict::Fails, Verdict::Unknown, Verdict::Tight,
                                        Verdict::Holds};

// What is hurt first when the check fails; the page groups by it.
enum class Protects { People, Pack, Electronics, Driveline, Chassis };
template <>
struct EnumWords<Protects>
{
    static constexpr std::array words{"people", "pack", "electronics", "driveline", "chassis"};
};

// Where an input comes from.
struct Origin
{
    QString name;  // "capacitance of the link"
    QString path;  // through the assembly: "Cabin heater › main relay"; may be empty
    QString field; // which figure of the book it is, to edit it in place; may be empty
    Evidence evidence = Evidence::Assumed;
    QString source;      // "datasheet, page 4"
    bool stale = false;  // older than the rework of its part
    bool clash = false;  // other values are recorded and none is settled
    bool safest = false; // of those that clash, as of limits; else it is the best founded
    bool operator==(const Origin &) const = default;
};

struct CheckInput
{
    Origin origin;
    QString symbol;              // as in the formulas: "C"
    std::optional<Amount> value; // none: not known
    QString shown;               // "1200 µF", or the word of a choice; empty when not known
    bool operator==(const CheckInput &) const = default;
};

// A line of the computation: "stored energy", "E = ½·C·U²", "½ · 1.2 mF · (453.6 V)²", "123.5 J".
struct CheckStep
{
    QString what, formula, worked, result;
    bool operator==(const CheckStep &) const = default;
};

// A result against what it is held to.
struct Comparison
{
    QString what;      // "charge current of the relay"
    QString value;     // "453.6 V"
    QString relation;  // "≤" or "≥"
    QString limit;     // "400 V"
    QString limitFrom; // "nameplate of Cabin heater › main relay", "UN R100, 5.1.3"
    double margin = 0; // of the limit: 0.1 is 10 % to spare; below zero it fails
    Verdict verdict = Verdict::Unknown;
    bool operator==(const Comparison &) const = default;
};

// A threshold somebody set looser than the published one, and why: never told without the other.
struct Loosened
{
    QString name, published, own, source, reason;
    bool operator==(const Loosened &) const = default;
};

// Figures to be drawn: "effort against road load". Points are in the units named.
struct PlotSeries
{
    QString name; // "2nd gear"
    std::vector<std::pair<double, double>> points;
    bool bars = false; // each point a bar, named by Plot::barNames
    bool operator==(const PlotSeries &) const = default;
};
struct Plot
{
    QString title;
    QString xName, xUnit, yName, yUnit;
    QStringList barNames;
    std::vector<PlotSeries> series;
    bool operator==(const Plot &) const = default;
};

struct Check
{
    QString id;      // "precharge"
    QString subject; // key of the circuit, branch, part it is about; may be empty
    QString title;   // "Precharge of the traction circuit"
    Protects protects = Protects::Electronics;
    std::vector<CheckInput> inputs;
    std::vector<CheckStep> steps;
    std::vector<Comparison> comparisons;
    std::vector<Plot> plots;
    QString source; // of the formula: standard, clause, handbook, or "common practice, …"
    QString result; // the figures in one line
    std::optional<double> margin; // the narrowest comparison's
    Verdict verdict = Verdict::Unknown;
    QString sentence; // the verdict's line, with the weak evidence it rests on
    // The weakest input of what decides: of what fails, else of the narrowest comparison; of all
    // while it is unknown.
    std::optional<Evidence> weakest;
    QString weakestInput;
    QStringList unknowns; // names of the inputs that apply and are not known
    QStringList doubts;   // why computing cannot decide it, a sentence each
    QStringList refusals; // inputs outside physics, a sentence each
    QStringList turnedBy; // what would turn the verdict, a sentence each
    QString afterwards;   // what to do whatever was computed: "Then measure …"
    QString caution;      // id of a card in resources/cautions.json; may be empty
    std::vector<Loosened> loosened;
    std::optional<Verdict> publishedVerdict; // set when a threshold in use is looser than published
    bool operator==(const Check &) const = default;
};

} // namespace ohmwright
