// SPDX-License-Identifier: GPL-3.0-or-later
// Where everything lies when the build is drawn as a wiring loom.
//
// Pure geometry from a Network: no fonts (widths are passed in), no colours, no widgets. The view
// in ui/build_order paints it; the PDF writer paints the same.
//
// A branch of the loom is one area's tasks, laid left to right along a laced trunk; an area with
// work that goes on side by side forks into several runs. A task stands right of everything it
// waits on, so no wire runs backwards. A wire joins two tasks where one waits on the other; it
// keeps to the gaps between columns and the channels between runs, so it crosses no housing, no
// sleeve and no text. A milestone is a bulkhead plate with a numbered cavity for each need.
//
// Scene units are the pixels of a screen at 100 %; y grows downwards.
#pragma once

#include "core/plan/loom_forecast.h"
#include "core/plan/network.h"

#include <QPointF>
#include <QRectF>
#include <QString>
#include <QStringList>

#include <cstddef>
#include <functional>
#include <optional>
#include <vector>

namespace ohmwright::plan {

// What a piece of text on the loom is; each has its own size and weight.
enum class LoomText { Title, Missing, Sleeve, Milestone, Date };

struct LoomMetrics
{
    // Width of a text, scene units; never negative. Empty: an estimate is used.
    std::function<double(LoomText, const QString &)> textWidth;
    double titleLine = 14.5, missingLine = 13, milestoneLine = 15, dateLine = 13;
    double housingMinWidth = 70, housingMaxWidth = 116, housingHeight = 52;
    double cavityWidth = 8, cavityHeight = 7, cavityGap = 3;
    double plateWidth = 28, plateCavityPitch = 14;
    double sleeveHeight = 18, sleeveMaxWidth = 128;
    double gap = 40;      // least space between columns, for wires to change height
    double channel = 20;  // least space between branches, for wires to run along
    double wirePitch = 5; // between two wires side by side
};

// What is known of dates; all of it may be left empty.
struct LoomFacts
{
    std::vector<std::size_t> driving; // HoldUps::driving: the chain that drives the date
    std::vector<double> drives; // per task: share of simulated runs (0 to 1) it drove the date
    std::vector<QString> dates; // per task; shown at milestones, a line each: "50 %: 6 Aug"
    std::optional<LoomForecast> forecast; // `drives` above, if given, goes before its shares
    bool operator==(const LoomFacts &) const = default;
};

// A link that a longer chain of links implies carries no news. Omit leaves its wire out, Faint
// draws it thin, Draw like any other. Its cavity is there in any case.
enum class ImpliedLinks { Omit, Faint, Draw };

// By chain a task stands a column right of what it waits on. By date it stands where the forecast
// plans it to start: done tasks left of today, those without a day at the far right. The axis is
// not even: a week takes the room of what starts in it. Without a forecast: by chain.
enum class LoomBy { Chain, Date };

struct Loom;

struct LoomOptions
{
    LoomBy by = LoomBy::Chain;
    ImpliedLinks implied = ImpliedLinks::Omit;
    // Branches as the areas first appear, instead of untangled.
    bool keepAreaOrder = false;
    // For paper: a branch is broken where it has nothing to do for a while, each piece with its
    // sleeve, and pieces stand on one run that are not beside one another. Half as high, but a
    // branch is no longer one line; `keepAreaOrder` and `like` are not looked at.
    bool shareRuns = false;
    // Branches as they lie in this loom, new areas last, so that an edit does not move what the
    // person knows; ignored when it has no branches. Only read during the call.
    const Loom *like = nullptr;
};

struct LoomLabel
{
    QStringList lines;
    QPointF at; // left end of the first baseline
    QRectF box; // covers all lines
    double lineHeight = 0;
    bool cut = false; // something did not fit and was elided
};

struct LoomCavity
{
    QRectF box;
    bool filled = false;
    bool forTask = false;  // waits on a task (a wire ends here), else on a leaf need
    std::size_t index = 0; // into Task::after or Task::needs
};

// SetAside: of an option that is not planned with; holds up nothing.
enum class LoomState { Done, UnderWay, CanStart, Waits, SetAside };

struct LoomTask
{
    std::size_t task = 0;
    std::size_t branch = 0;
    int column = 0, row = 0; // row counts runs from the top of the whole loom
    QRectF body;             // the connector housing, or the milestone's plate
    LoomLabel title;         // inside the housing; right of a plate and above its centre line
    LoomLabel date;          // milestones: right of the plate, below its centre line; of other
                             // tasks what may fail (ui/build_order/loom_dress), below the rest
    std::vector<LoomCavity> cavities; // all of after, then all of needs; a plate's number is the
                                      // place from the top
    LoomLabel missing;                // what the first empty leaf cavity lacks; below the housing
    QPointF missingFrom;              // middle of that cavity's lower edge; null: set aside
    std::vector<QPointF> missingLead; // from there to the text, where the forecast is in between
    // Below the housing, where there is a forecast: the day it is done by in 80 % of the samples,
    // a whisker from 50 to 95 % in the loom's own scale (Loom::whiskerPerDay), the float.
    // By date, where the axis tells the plan and not the 80 %, both are written and nothing is
    // drawn in another scale: "plan 6 Feb" in `plan`, "80 %: 6 Mar" below it in `ready`.
    LoomLabel plan, ready, slack;
    QRectF whisker;                 // null without one
    double whiskerMark = 0;         // x of 80 %
    QRectF slackLoop;               // null without float
    LoomDays days;                  // what the forecast says
    bool missingIsQuestion = false; // a figure not known
    QRectF highVoltageMark;         // where "HV" is written; empty when not high voltage
    LoomState state = LoomState::Waits;
    bool onDrivingChain = false;
    bool wireEnters = false, wireLeaves = false; // a drawn wire does
};

// All that is drawn of a task, its texts included, without margins and the lead to what it lacks.
QRectF reachOf(const LoomTask &task);
// All of that elsewhere.
void moveBy(LoomTask &task, QPointF by);

// A stretch of trunk between two housings.
struct LoomSpan
{
    double left = 0, right = 0;
    bool highVoltage = false; // what it joins is
};

// One straight run of a branch's laced trunk.
struct LoomTrunk
{
    double y = 0, left = 0, right = 0;
    std::vector<QPointF> fork;   // cubic from the run above it, 4 points; empty for the first run
    std::vector<LoomSpan> spans; // left to right
};

struct LoomBranch // or a piece of one, where runs are shared
{
    QString area;
    std::vector<LoomTrunk> runs; // the one with the sleeve first
    QRectF sleeve;               // the name sleeve, on the first run
    LoomLabel name;
    bool highVoltage = false;   // any task on it is
    double top = 0, bottom = 0; // the band it takes, without its channels
};

struct LoomWire
{
    std::size_t from = 0, to = 0; // tasks; `to` waits on `from`
    std::size_t cavity = 0;       // of `to`
    std::vector<QPointF> path;    // start, then c1, c2, end for each cubic (3n + 1 points)
    bool driving = false;
    bool alongTrunk = false;  // runs straight within its run
    bool highVoltage = false; // both ends are
    bool implied = false;
    bool met = false;   // the task it comes from is done
    bool aside = false; // one of its ends is set aside
    double share = 0;   // of the simulated runs in which both ends drove the date
};

// A line on the date axis, from top to bottom between two columns.
struct LoomRule
{
    enum class Kind { Week, Month, Today, NoDate }; // NoDate: right of it stands what has no day
    Kind kind = Kind::Week;
    double x = 0;
    QDate day; // the Monday; of Month the first Monday in it; null for NoDate
};

// Where wires are tied together: a mark across them.
struct LoomTie
{
    QPointF at;
    double halfSpan = 0;
    bool acrossUpright = false; // the wires run up and down, the mark lies level
    bool highVoltage = false;
};

struct Loom
{
    std::vector<LoomTask> tasks;      // by task index
    std::vector<LoomBranch> branches; // top to bottom
    std::vector<LoomWire> wires;      // by `to`, then `from`
    std::vector<LoomTie> ties;
    std::vector<QRectF> bundles; // bands behind wires that run side by side; they overlap
    QRectF bounds;
    std::vector<LoomRule> rules; // the date axis, left to right; empty by chain
    QRectF axisBand;             // where its dates are written, on top; null by chain
    std::vector<double> cuts;    // x between two columns, left to right: there it may be cut in two
    QDate today;                 // of the forecast; null without one
    double whiskerPerDay = 0;    // scene units
    int impliedOmitted = 0;      // links without a wire because a longer chain implies them
    int crossings = 0;           // wires crossing wires, for tests and tuning
    double wireLength = 0;       // of all wires, likewise
};

// Deterministic. Of a loop (the plan refuses those) the link that closes it gets no wire; a link
// named twice gets one. Costs about n log n: 2,000 tasks with 4,000 links take well under 100 ms.
Loom layOutLoom(const Network &network, const LoomFacts &facts, const LoomMetrics &metrics,
                const LoomOptions &options = {});

// A task's state as the loom shows it; UnderWay: started, and not done.
LoomState loomState(const Network &network, std::size_t task);

// A leaf need in words: "part coupling blank".
QString loomNeed(const LeafNeed &need);

// What a task not done waits for, in words: "task Mounts in", "part coupling blank", one each,
// links first. Empty for a task that can start.
QStringList loomWaits(const Network &network, std::size_t task);

} // namespace ohmwright::plan
