// SPDX-License-Identifier: GPL-3.0-or-later
// What is still to be done as the forecast plans it: activities with three-point estimates, the
// hands, bays and tools they take, and what may have to be done again.
//
// Made from the book's records (workPlanOf) or by hand in a test. Plain values.
#pragma once

#include "core/forecast/spread.h"
#include "core/plan/levelling.h"
#include "core/plan/network.h"
#include "core/records/records.h"

#include <QDate>
#include <QString>
#include <QStringList>

#include <optional>
#include <vector>

namespace ohmwright::forecast {

enum class ActivityKind {
    Task,
    Milestone,
    Delivery, // of a part: from order to arrival
    Answer,   // to a letter
    Redo,     // a task again, or a wait for what it needs anew, if a test fails
};

struct Activity
{
    QString key;  // "fit-pack"; of others with their kind before it: "part:pack", "letter:scheme"
    QString name; // as shown
    ActivityKind kind = ActivityKind::Task;
    std::optional<std::size_t>
        task;                // index in the network; Redo: of the task done again, or waiting to be
    ThreePoint work;         // minutes by the clock, with all the hands it takes at it
    ThreePoint wait;         // days, after the work
    std::vector<int> demand; // per resource
    plan::Manner manner = plan::Manner::Split;
    int releaseDay = 0;              // days from today
    std::vector<std::size_t> after;  // activities
    std::optional<std::size_t> risk; // Redo: of whose failing
    // Delivery of a part that is wanted: may be ordered another day; what it will cost then. Redo:
    // what is paid anew each time.
    bool toOrder = false;
    std::optional<Money> cost; // book's currency
    bool forShop = false;      // a tool that stays: the build does not pay for it
    QString part;              // its key; Redo: of what is bought anew
    // Answer to a letter that is still to ask: may be asked another day.
    bool toAsk = false;
    QString letter; // its key
};

// The chance that a test fails, each time it is done.
struct Risk
{
    std::size_t activity = 0; // the test
    double chance = 0;        // 0 to 0.95
};

struct WorkPlan
{
    QDate today;
    plan::Timeline timeline;        // all resources; slots of 15 minutes (hours.h)
    std::vector<QString> resources; // "pairs of hands", bays, tools
    std::vector<char> held;
    std::vector<Activity> activities;
    std::vector<Risk> risks;
    std::vector<std::size_t> milestones; // activities, in order of date, then key
    std::vector<std::optional<int>> due; // per milestone: its date, in days from today
    int minutesPerWeek = 0;
    bool hoursAssumed = false;
    int estimatesAssumed = 0; // activities with a spread that nobody told
    // What the plan had to leave out or bend, a sentence each: no evening has two pairs of hands.
    QStringList doubts;
};

// The tasks not done, as plan::networkOf sees them, with
// - work left of a task under way: the estimate less the hours logged, a quarter of an hour at
//   least;
// - a delivery for each part that unmet needs ask for, from today if it is still to order (or from
//   the end of the task that buys it), else what is left of it;
// - an answer for each letter they ask for, from today if it is still to ask (or from the end of
//   the task that asks for it), else what is left of it;
// - the tasks from redo_from to a test that may fail once more behind it, for as often as it does,
//   with what they order or ask for anew, and behind the waits for what their needs say is used up
//   each time.
WorkPlan workPlanOf(const Records &records, QDate today);

// Per activity, whether `goal` waits on it by links, itself included. What drives a goal and is not
// among these does so by the hands, bay or tool it takes first.
std::vector<char> waitedOn(const WorkPlan &plan, std::size_t goal);

} // namespace ohmwright::forecast
