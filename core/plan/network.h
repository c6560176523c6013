// SPDX-License-Identifier: GPL-3.0-or-later
// The build order as plain values: tasks, milestones, what each needs, and how long things take.
//
// A Network is made from the book's records (plan_view.h) or by hand in a test. Everything here is
// a pure function of it: no dates but those passed in, no database. It is not the forecast: every
// duration is one whole number of calendar days, and no hands or hours are shared out.
//
// What holds for all of it:
// - Nothing recurses, so a chain may be as long as memory allows; but for what is said beside a
//   function, the cost grows with tasks + links.
// - A link to a task that does not exist is our mistake: asserted, and ignored where assertions
//   are off. A link named twice counts once. Days below 0 (an answer that is overdue) count as 0.
// - Sums of days stop at kLongestDays instead of overflowing.
#pragma once

#include "core/quantity/result.h"

#include <QDate>
#include <QString>

#include <cstddef>
#include <optional>
#include <vector>

namespace ohmwright::plan {

// The greatest number of days anything here comes to; more than two million years.
inline constexpr int kLongestDays = 1'000'000'000;

// What must be true before a task can start, apart from other tasks being done.
enum class NeedKind {
    Part,
    Figure,
    Tool,
    Consumable,
    Money,
    Service,
    Test,
    Letter,
    Person,
    Permit,
    Interface,
};

// The things a person can do now. Do is mostly for a task that can start; of the leaf needs only a
// part that lies there and must be fitted asks for it.
enum class MoveKind { Do, Order, Chase, FindOut, Pay, Test, Ask };

struct LeafNeed
{
    QString key; // unique in the network
    NeedKind kind = NeedKind::Part;
    bool met = false;
    // Only read when unmet: what to do about it, and to what. Needs with the same move and subject
    // are met by one move.
    MoveKind move = MoveKind::Order;
    // Key of the part, letter, test, … ; never empty when unmet (asserted; the need's own key
    // stands in otherwise).
    QString subject;
    QString subjectName; // as shown: "coupling blank"
    QString reason;      // "wanted, no offer taken yet", "asked 3 Mar, no answer"
    int daysToMeet = 0;  // elapsed calendar days from acting to having it (lead time, days left)
    // Later it is worth less, whatever the milestone: the return has ended, the day to ask after an
    // answer is past.
    std::optional<QDate> by;
    bool operator==(const LeafNeed &) const = default;
};

struct Task
{
    QString key;
    QString title;
    QString area; // the branch of the loom it hangs on: "battery", "papers"
    bool milestone = false;
    bool done = false;
    bool started = false; // under way; counts its whole elapsedDays until it is done
    bool aside = false;   // of an option that is not planned with; `done` is set too, so that it
                          // holds up nothing
    bool highVoltage = false;
    int elapsedDays = 0;            // calendar days from start to done, cure and waiting included
    std::vector<std::size_t> after; // indices of tasks that must be done first
    std::vector<LeafNeed> needs;
    std::optional<QDate> date; // milestones: the fixed date, else the target; tasks: unused
    bool operator==(const Task &) const = default;
};

struct Network
{
    std::vector<Task> tasks; // in key order, so that ties by index are ties by key
    // Looks at the tasks one by one; for many keys make an index of your own.
    [[nodiscard]] std::optional<std::size_t> find(const QString &key) const;
    bool operator==(const Network &) const = default;
};

// The tasks of one loop, each waiting on the one before it and the first on the last; the first is
// not repeated at the end. Empty if there is none. Done or not makes no difference: a loop is wrong
// either way. Of all loops: one through the lowest task that is on any, which stands first; of
// those the shortest; of those the one whose last task is lowest, then the last but one, and so on.
std::vector<std::size_t> findLoop(const Network &network);

// The loop that would arise if `task` had to come after `before`: `task` first, `before` last,
// chosen as in findLoop; empty if none would. A task after itself is a loop of one. Loops already
// in the network that do not use the new link are not looked for. Both must exist (asserted, empty
// otherwise).
std::vector<std::size_t> loopIfLinked(const Network &network, std::size_t before, std::size_t task);

// "Fit pack waits on Build pack, which waits on Fit pack." for people, beginning with the loop's
// first task; a task without a title is named by its key. Of a loop of more than ten the first
// eight are named, and how many more there are. Empty for an empty loop.
QString describeLoop(const Network &network, const std::vector<std::size_t> &loop);

// An order in which every task stands after all it waits on, the lowest index first wherever there
// is a choice. The network must be free of loops (asserted; empty otherwise).
// Cost: tasks x log(tasks) + links.
std::vector<std::size_t> topologicalOrder(const Network &network);

// Tasks on a way from `first` to `last`, both included, in `order`, which is a topological one.
// Empty if `last` does not wait on `first`. Both must exist.
std::vector<std::size_t> tasksBetween(const Network &network, std::size_t first, std::size_t last,
                                      const std::vector<std::size_t> &order);

// Critical path method over all tasks not done, day 0 being today: forward and backward pass.
// A task's days are from its start to its finish; one that starts when another finishes starts on
// the same day number. Leaf needs are not looked at (holdUps does).
// Done tasks are behind us: all four figures are 0, and what they waited on does not hold up what
// waits on them, as for holdUps.
struct Pass
{
    std::vector<int> earlyStart, earlyFinish, lateStart, lateFinish; // per task, days
    int length = 0; // the latest early finish, whatever the deadline
    // Days a task may slip without moving the end; below 0 if the deadline is too early.
    [[nodiscard]] int slack(std::size_t task) const { return lateStart[task] - earlyStart[task]; }
};

// `deadline`, in days from today, is where the backward pass begins; the project's own length when
// not given. The tasks not done must be free of loops (asserted; all zeros otherwise).
Pass criticalPath(const Network &network, std::optional<int> deadline = std::nullopt);

// A task not done, all tasks before it done, all its needs met; started or not.
bool canStart(const Network &network, std::size_t task);

// Hold-ups ---------------------------------------------------------------------------------------
//
// The chain of a milestone is the milestone and every task not done from which it can be reached
// through tasks not done. A done task cuts the chain: what it waited on, and its own unmet needs,
// hold up nothing any more. Milestones on the way are tasks like others; only the date of the one
// asked about counts.
//
// The moves of a milestone are what a person can do now to get nearer to it:
// - one Do for each task on the chain that can start (canStart), the milestone itself included;
// - one move for each kind and subject among the unmet leaf needs of the tasks on the chain, so
//   that three tasks wanting one coupling ask for one order. Its title, and why, are those of the
//   need that takes longest to meet (ties: the lowest task, then the first of its needs).
//
// The tail of a task is the longest elapsed path from its start to the end of the milestone: its
// own elapsedDays and those of the tasks after it, a started task counting whole.
//
// The milestone is reached, at the soonest, chainDays after everything is set in motion today: all
// needs are met in parallel, each in its daysToMeet, and each task starts as soon as it can.

struct Move
{
    MoveKind kind = MoveKind::Do;
    QString subject;               // task key for a task's Do, else the LeafNeed's subject
    QString title;                 // "Build pack", "coupling blank"; the subject if unnamed
    QString why;                   // one clause; for Do "can start now" or "under way"
    std::vector<QString> needs;    // keys of the leaf needs it meets; empty: a task
    std::vector<std::size_t> for_; // tasks whose needs these are (Do: the task), ascending
    // The tasks on the chain that wait on it, directly or not, ascending: those in for_ and all
    // that come after them; for Do those that come after the task, itself not among them.
    std::vector<std::size_t> frees;
    // Days from acting to the milestone: the greatest, over its needs, of daysToMeet + the tail of
    // the task in need; for Do the tail of the task.
    int chainDays = 0;
    std::optional<QDate> by; // the earliest of its needs' own
    // Milestone's date less chainDays, or `by` if that is earlier; none without either.
    std::optional<QDate> latestStart;
};

struct HoldUps
{
    std::size_t milestone = 0;
    std::vector<std::size_t> chain; // ascending, the milestone included; empty if it is done
    std::vector<Move> moves;        // in the order to start them, see holdUps
    // The path that sets the date: from a task whose own move has the greatest chainDays, each
    // next one with the longest tail, to the milestone. Ties: the lowest index.
    std::vector<std::size_t> driving;
    int chainDays = 0; // the greatest of the moves'; 0 if the milestone is done
    // When the levelled plan reaches it by the likely times, where that is after its date: then the
    // moves' days keep this one (forecast::tellLatestDays).
    std::optional<QDate> likely;
};

// Every unmet leaf need on the chain belongs to exactly one move, and so does every task on it that
// can start now (Do). Meeting all the moves' needs leaves at least one task startable, unless the
// milestone is done (no moves). Order: latest start ascending, that is chainDays descending but for
// moves with a day of their own (first, without a date); then tasks freed descending; then key, the
// subject by its UTF-16 codes; then kind. Any task may be asked about, milestone or not.
//
// The chain must be free of loops and the milestone must exist (asserted; no chain and no moves
// otherwise).
// Cost: what frees holds, that is moves x chain at worst; besides that tasks + links, the latter
// once for every 256 moves.
HoldUps holdUps(const Network &network, std::size_t milestone);

// One word or two, lower case, to be set in a sentence or a label.
QString moveKindName(MoveKind kind); // "do", "order", "chase", "find out", "pay", "test", "ask"
QString needKindName(NeedKind kind); // "part", "figure", …, "second person", "work permit"

} // namespace ohmwright::plan
