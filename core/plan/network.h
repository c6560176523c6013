// SPDX-License-Identifier: GPL-3.0-or-later
// The build order as plain values: tasks, milestones, what each needs, and how long things take.
//
// A Network is made from the book's records (plan_view.h) or by hand in a test. Everything here is
// a pure function of it: no dates but those passed in, no database.
#pragma once

#include "core/quantity/result.h"

#include <QDate>
#include <QString>

#include <cstddef>
#include <optional>
#include <vector>

namespace ohmwright::plan {

// What must be true before a task can start, apart from other tasks being done.
enum class NeedKind {
    Part, Figure, Tool, Consumable, Money, Service, Test, Letter, Person, Permit,
};

// The things a person can do about an unmet need now.
enum class MoveKind { Do, Order, Chase, FindOut, Pay, Test, Ask };

struct LeafNeed
{
    QString key;         // unique in the network
    NeedKind kind = NeedKind::Part;
    bool met = false;
    // Only read when unmet: what to do about it, and to what. Needs with the same move and subject
    // are met by one move.
    MoveKind move = MoveKind::Order;
    QString subject;     // key of the part, letter, test, … ; never empty when unmet
    QString subjectName; // as shown: "coupling blank"
    QString reason;      // "wanted, no offer taken yet", "asked 3 Mar, no answer"
    int daysToMeet = 0;  // elapsed calendar days from acting to having it (lead time, days left)
};

struct Task
{
    QString key;
    QString title;
    QString area;                     // the branch of the loom it hangs on: "battery", "papers"
    bool milestone = false;
    bool done = false;
    bool started = false;
    bool highVoltage = false;
    int elapsedDays = 0;              // calendar days from start to done, cure and waiting included
    std::vector<std::size_t> after;   // indices of tasks that must be done first
    std::vector<LeafNeed> needs;
    std::optional<QDate> date;        // milestones: the fixed date, else the target; tasks: unused
};

struct Network
{
    std::vector<Task> tasks;          // in key order
    [[nodiscard]] std::optional<std::size_t> find(const QString &key) const;
};

// The tasks of one loop, each waiting on the one before it, first not repeated at the end; empty
// if there is none. Deterministic: the loop found from the lowest index.
std::vector<std::size_t> findLoop(const Network &network);
// The loop that would arise if `task` had to come after `before`; empty if none would.
std::vector<std::size_t> loopIfLinked(const Network &network, std::size_t before, std::size_t task);
// "Fit pack waits on Build pack, which waits on Fit pack." for people.
QString describeLoop(const Network &network, const std::vector<std::size_t> &loop);

// An order in which every task stands after all it waits on, ties by index. The network must be
// free of loops (asserted).
std::vector<std::size_t> topologicalOrder(const Network &network);

// Critical path method over all tasks not done, day 0 being today: forward and backward pass.
// `deadline` is the project's length when not given. Done tasks take no time.
struct Pass
{
    std::vector<int> earlyStart, earlyFinish, lateStart, lateFinish;  // per task, days
    int length = 0;
    [[nodiscard]] int slack(std::size_t task) const { return lateStart[task] - earlyStart[task]; }
};
Pass criticalPath(const Network &network, std::optional<int> deadline = std::nullopt);

// A task not done, all tasks before it done, all its needs met.
bool canStart(const Network &network, std::size_t task);

// Hold-ups ---------------------------------------------------------------------------------------

struct Move
{
    MoveKind kind = MoveKind::Do;
    QString subject;                       // task key for Do, else the LeafNeed's subject
    QString title;                         // "Build pack", "coupling blank"
    QString why;                           // the reason, one clause
    std::vector<QString> needs;            // keys of the leaf needs it meets; empty for Do
    std::vector<std::size_t> for_;         // tasks whose needs these are (Do: the task), ascending
    std::vector<std::size_t> frees;        // tasks on the chain that wait on it, directly or not
    int chainDays = 0;                     // longest elapsed chain from acting to the milestone
    std::optional<QDate> latestStart;      // milestone's date less chainDays; none without a date
};

struct HoldUps
{
    std::size_t milestone = 0;
    std::vector<std::size_t> chain;        // every task not done on the way, the milestone included
    std::vector<Move> moves;               // sorted by latest start, then more freed, then key
    std::vector<std::size_t> driving;      // longest chain, first task to the milestone
    int chainDays = 0;                     // its length, from the first move on
};

// Every unmet leaf need on the chain belongs to exactly one move, and so does every task on it that
// can start now (Do). Meeting all the moves' needs leaves at least one task startable, unless the
// milestone is done (no moves). Order: latest start ascending (equivalently chainDays descending),
// then number of tasks freed descending, then kind, then subject.
HoldUps holdUps(const Network &network, std::size_t milestone);

QString moveKindName(MoveKind kind);  // "do", "order", "chase", "find out", "pay", "test", "ask"
QString needKindName(NeedKind kind);

} // namespace ohmwright::plan
