// SPDX-License-Identifier: GPL-3.0-or-later
// Levelling: which activity is worked on when, with the hands, bays and tools there are.
//
// One engine for the builder's book and for the published benchmark problems (the resource
// constrained project scheduling problem: Pritsker, Watters and Wolfe, Management Science 16 (1969)
// 93-108). Plain whole numbers only; no dates, no names, nothing of the book.
//
// Time is a line of slots. A slot is a stretch in which somebody is there: a quarter of an hour of
// Tuesday evening; in the benchmarks one period. Slots have an index, and each lies on a calendar
// day (day 0: today). Nights and days without work have no slots, so work counts in slots, waiting
// in calendar days. An instant is a boundary between slots: instant s is the beginning of slot s,
// and work finished at s has s - 1 as its last slot.
//
// What holds for every plan made here:
// - An activity starts after all it comes after have finished and their waiting is over, and not
//   before its release day. Waiting counts as people count it: work done on day d with two days to
//   wait lets the next start in the first slot of day d + 2 or later; without waiting, in the next
//   slot. Where a day is one slot, work of w slots and waiting of v days thus hold up what follows
//   for w + max(0, v - 1) slots.
// - In no slot more of a resource is taken than the slot's profile has.
// - A held resource (a bay) stays taken from the first to the last slot worked, also in slots where
//   the work rests; any other only in the slots worked.
// - Work 0 is a milestone or pure waiting: it takes no slot and no resource, and may fall on a day
//   without slots.
//
// A pass is serial schedule generation (Kelley 1963; Kolisch, European Journal of Operational
// Research 90 (1996) 320-333): activities in the order given, each as early as it can, in the gaps
// the earlier ones have left. Split work takes every slot that has room.
//
// List scheduling has anomalies (Graham, SIAM Journal on Applied Mathematics 17 (1969) 416-429): a
// shorter activity, an earlier delivery or a second pair of hands may make a plan in the same order
// longer. Nothing here promises otherwise.
#pragma once

#include <cstddef>
#include <cstdint>
#include <limits>
#include <memory>
#include <span>
#include <vector>

namespace ohmwright::plan {

// Slot and day of what can never be: something it needs is not there, or not for long enough.
inline constexpr int kNever = std::numeric_limits<int>::max();

struct Slot
{
    int day = 0;        // from 0, never falling from one slot to the next
    int profile = 0;    // into Timeline::profiles
    bool apart = false; // begins a new sitting on the same day; a new day always does
};

// Where slots run out, those from repeatFrom on come again repeatDays later, and again; with
// repeatDays 0 the time simply ends. repeatDays must exceed the days from line[repeatFrom] to the
// last (asserted; no repetition otherwise). Nothing is planned more than kMostDays ahead.
struct Timeline
{
    std::vector<Slot> line;                 // not "slots": Qt takes that word
    std::vector<std::vector<int>> profiles; // per profile: capacity per resource, from 0
    std::size_t repeatFrom = 0;
    int repeatDays = 7;

    static constexpr int kMostDays = 36'525; // a hundred years
    static constexpr int kMostSlots = 1 << 21;
};

enum class Manner : std::uint8_t {
    Split,      // may rest and go on in any later slot
    OneSitting, // neighbouring slots within one sitting
    Unbroken,   // neighbouring slots, over days as well; the benchmarks' way
};

struct Activity
{
    int work = 0;            // slots; below 0 counts as 0
    std::vector<int> demand; // per resource; missing ones are 0
    int waitDays = 0;        // after the work, before what follows; below 0 counts as 0
    int releaseDay = 0;      // does not start before
    Manner manner = Manner::Split;
    std::vector<std::size_t> after; // indices of activities; twice counts once
};

// As in network.h, links to activities that do not exist are asserted and ignored, and so are
// links in a loop.
struct Workload
{
    Timeline timeline;
    std::vector<char> held; // per resource: taken from start to finish; missing ones are not
    std::vector<Activity> activities;
};

enum class DrivenBy : std::uint8_t {
    Nothing,  // it starts with the first slot it can use
    Release,  // its release day
    Link,     // an activity before it, with that one's waiting
    Resource, // an activity that had what it needed
};

// Why an activity does not start earlier. `activity` is meant for Link and Resource only. A
// resource counts if, but for the calendar, the activity could have worked there: waiting for the
// evening of the helper alone leaves the driver what it was.
struct Driver
{
    DrivenBy by = DrivenBy::Nothing;
    std::int32_t activity = -1;
    bool operator==(const Driver &) const = default;
};

// What a pass gives; per activity. Instants are slot indices, see above.
struct Levelled
{
    std::vector<int> start, finish;
    std::vector<int> startDay, finishDay; // days of the first and last slot; work 0: both the same
    std::vector<int> readyDay;            // finishDay and waiting
    std::vector<Driver> driver;           // of the start
    // The last that had what it needed while it rested between start and finish; -1: none.
    std::vector<std::int32_t> interrupter;
    // 1: its manner could not be kept (a sitting longer than any there is); planned as Split.
    std::vector<char> broken;
    // When everything is finished and waited for; kNever if anything never is.
    int end = 0, endDay = 0;
};

struct Latest
{
    std::vector<int> startDay;  // per activity
    std::vector<int> floatDays; // from the plan's start day; 0 and more unless endDay is too early
    // A milestone that falls on the end of a slot worked in is given the day of the last slot that
    // may be worked in before it, so that one on the critical chain has no float.
};

// The durations of one sample; an empty span stands for what the workload says. Values below 0
// count as 0.
struct Sample
{
    std::span<const int> work, waitDays, releaseDay;
};

// What will go wrong whatever the order.
struct LevelTrouble
{
    enum class Kind {
        NeverEnough, // no slot has all it demands at once
        TooLong,     // no sitting, no stretch, or not what time there is, is long enough
        BehindNever, // it comes after one of those that never are
        InLoop,      // links of it were left out
    };
    Kind kind = Kind::NeverEnough;
    std::size_t activity = 0;
    bool operator==(const LevelTrouble &) const = default;
};

// Plans one workload again and again without allocating, but for when a pass reaches further into
// the future than any before it. Not for several threads at once: each takes a copy.
class Levelling
{
public:
    explicit Levelling(const Workload &workload);
    Levelling(const Levelling &other);
    Levelling(Levelling &&other) noexcept;
    Levelling &operator=(const Levelling &other);
    Levelling &operator=(Levelling &&other) noexcept;
    ~Levelling();

    [[nodiscard]] std::size_t activityCount() const;
    // In the order of activities; judged by the workload's own durations. Empty: every pass
    // without a sample ends.
    [[nodiscard]] std::vector<LevelTrouble> troubles() const;

    // Activities by priority, each once. Where one stands before what it comes after, it is moved
    // behind it: of those whose predecessors are all in, the first by priority is always next.
    // Missing ones come last, by index. To begin with: PriorityRule::LatestFinish (level_rules.h).
    void setOrder(std::span<const std::size_t> priority);
    [[nodiscard]] std::span<const std::int32_t> order() const;

    // Valid until the next pass. Untraced it is quicker, and tells no Resource for a driver, no
    // interrupter and no worked slots; the days are the same.
    enum class Traced { No, Yes };
    const Levelled &pass(const Sample &sample = {}, Traced traced = Traced::Yes);
    [[nodiscard]] const Levelled &plan() const; // the last pass's
    // The slots in which each activity is worked on, ascending, in the last pass. Not to be asked
    // after latest() (nothing is given then).
    [[nodiscard]] std::vector<std::vector<int>> workedSlots() const;

    // How late everything may begin: the last pass's plan pushed as late as it goes with the
    // resources there are, latest finish first, everything ready by the end of `endDay`. With an
    // endDay before the plan's own, each latest start is that many days earlier than for its own.
    // If anything in the plan never is, everything is given its own start. Valid until the next
    // pass. Work that is split may be refused a later place only because its own was given away;
    // it then keeps its own, and the float is too short rather than too long.
    const Latest &latest(int endDay);

private:
    struct Inside;
    std::unique_ptr<Inside> m_in;
};

} // namespace ohmwright::plan
