// SPDX-License-Identifier: GPL-3.0-or-later
// Inside of levelling.h: one workload with the state of one pass over it.
//
// The time that counts is that of forward(): a forecast runs it thousands of times, a search tens
// of thousands. Hence flat arrays, no allocation but when the time laid out grows, one bit per slot
// for "anything left" of the resources most asked for, and code of its own for one-word packings.
#pragma once

#include "core/plan/level_grid.h"
#include "core/plan/level_links.h"
#include "core/plan/levelling.h"

#include <array>
#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

namespace ohmwright::plan::level {

// Day and slot in one number: later is greater. Of two instants of one plan the one with the later
// day never has the earlier slot, so one comparison serves both.
using Instant = std::uint64_t;

inline Instant instant(int day, int slot)
{
    return static_cast<Instant>(static_cast<std::uint32_t>(day)) << 32 |
           static_cast<std::uint32_t>(slot);
}
inline int dayOf(Instant i)
{
    return static_cast<int>(i >> 32);
}
inline int slotOf(Instant i)
{
    return static_cast<int>(i & 0xffff'ffffU);
}
inline constexpr Instant kNeverInstant = Instant{kNever} << 32 | Instant{kNever};

class Planner
{
public:
    explicit Planner(const Workload &workload);

    [[nodiscard]] std::size_t count() const { return m_work.size(); }
    [[nodiscard]] const ActivityLinks &before() const { return m_before; }
    [[nodiscard]] const ActivityLinks &next() const { return m_next; }
    [[nodiscard]] const Grid &grid() const { return m_grid; }
    [[nodiscard]] std::span<const int> work() const { return m_work; }
    [[nodiscard]] std::span<const int> waitDays() const { return m_waitDays; }
    [[nodiscard]] std::span<const int> releaseDay() const { return m_releaseDay; }
    // Work times demand, each resource as a share of its greatest capacity.
    [[nodiscard]] double load(std::size_t activity) const;
    [[nodiscard]] bool inLoop(std::size_t activity) const { return m_inLoop[activity]; }
    // An order with each activity after what it comes after, else as the priority has it.
    std::vector<std::int32_t> feasible(std::span<const std::int32_t> priority);

    // Each activity of `order` (all of them, each after what it comes after) as early as it can;
    // the instant at which all is finished and waited for. With drivers, interrupters and worked
    // slots only if traced.
    enum class Trace { Off, On };
    template <Trace kTrace>
    Instant forward(std::span<const std::int32_t> order, const Sample &sample);
    // The same as if each activity had every resource for itself: no plan ends earlier.
    Instant alone(std::span<const std::int32_t> order);
    // The first instant by which there has been as much of each resource as all the work demands.
    Instant poured();
    // Each activity as late as it can, finished and waited for by the end of `endDay` and worked on
    // before slot `endSlot`, with the durations of the last forward pass. `order` begins with what
    // nothing comes after. From::Plan pushes the last plan (see latestFinishFirst): what finds no
    // room later than there keeps its start, and its old place is not taken, as it may have gone to
    // another. From::Anywhere looks at neither plan nor releases; what finds no room has start 0.
    enum class From { Plan, Anywhere };
    void backward(std::span<const std::int32_t> order, int endDay, int endSlot, From from);

    [[nodiscard]] const Levelled &plan() const { return m_plan; }
    [[nodiscard]] Instant ready(std::size_t activity) const { return m_ready[activity]; }
    [[nodiscard]] const std::vector<int> &lateStart() const { return m_lateStart; }
    [[nodiscard]] std::span<const int> lateStartDay() const { return m_lateStartDay; }
    [[nodiscard]] std::vector<std::vector<int>> workedSlots() const;
    // Some slot, of those given or to come, has all the activity demands at once.
    [[nodiscard]] bool hasSlot(std::size_t activity) const;

private:
    static constexpr std::size_t kMostPlanes = 16, kMostPlanesEach = 4;
    static constexpr int kBits = 64;

    struct Place
    {
        int start = kNever, finish = kNever;
    };
    struct Taking // of some of 64 slots by one activity
    {
        std::int32_t activity = 0; // or its complement if it only rests there
        std::int32_t earlier = -1; // the one before it in these 64, in m_takings
        Word taken = 0;            // a bit each
        [[nodiscard]] bool works() const { return activity >= 0; }
        [[nodiscard]] std::int32_t by() const { return works() ? activity : ~activity; }
    };

    // Where each paced resource's bits lie: one plane for "one left", one for "two left", …
    struct Paced
    {
        std::size_t resource = 0;
        std::uint8_t plane = 0, planes = 0;
    };
    struct PacedOf // an activity: which of the planes it needs
    {
        struct Need
        {
            std::uint8_t plane = 0;          // of the amount it demands
            std::uint8_t first = 0, end = 0; // the resource's planes
        };
        std::uint8_t count = 0, heldCount = 0; // the held ones stand first
        bool exact = true, heldExact = true;   // nothing else is demanded, or held
        std::array<Need, kMostPlanes> needs{};
    };

    void packDemands(const Workload &workload);
    void choosePaced();
    int stretch(std::size_t activity, Manner manner) const;

    void reset();
    bool grow(int count);
    void catchUp();
    int slotOn(int day)
    {
        const int slot = m_grid.slotOn(day);
        if (m_known != m_grid.count())
            catchUp();
        return slot;
    }
    template <std::size_t kWords, Trace kTrace>
    Instant forwardOf(std::span<const std::int32_t> order, const Sample &sample);
    template <std::size_t kWords, Trace kTrace>
    Place place(std::size_t activity, int work, int from);
    template <std::size_t kWords, Trace kTrace>
    Place placeTogether(std::size_t activity, int work, int from, int bound, bool sitting);
    template <std::size_t kWords, Trace kTrace>
    Place placeSplit(std::size_t activity, int work, int from, int bound);
    template <std::size_t kWords>
    Place findSplit(std::size_t activity, int work, int from, int bound);
    template <std::size_t kWords>
    void placeLate(std::size_t activity, int limit, int floor);
    template <std::size_t kWords>
    void placeLateTogether(std::size_t activity, int limit, int floor);
    template <std::size_t kWords>
    void backwardOf(std::span<const std::int32_t> order, int endDay, int endSlot, From from);
    template <std::size_t kWords>
    bool fits(const Word *there, const Word *wanted) const
    {
        for (std::size_t w = 0; w < words<kWords>(); ++w) {
            if (((there[w] - wanted[w]) & m_guards[w]) != m_guards[w])
                return false;
        }
        return true;
    }
    template <std::size_t kWords>
    Word fittingOf(std::size_t block, Word of, const Word *wanted) const;
    template <std::size_t kWords>
    Word workBits(std::size_t activity, std::size_t block, Word among) const;
    template <std::size_t kWords>
    Word holdBits(std::size_t activity, std::size_t block, Word among) const;
    Word openBits(const PacedOf &of, std::size_t count, std::size_t block) const
    {
        Word bits = ~Word{0};
        for (std::size_t i = 0; i < count; ++i)
            bits &= m_open[block * kMostPlanes + of.needs[i].plane];
        return bits;
    }
    int firstOpen(std::size_t activity, int from) const;
    std::size_t firstBlock(const PacedOf &of, std::size_t from) const;
    template <std::size_t kWords, Trace kTrace>
    void take(std::size_t activity, std::size_t block, Word taken, bool works);
    template <std::size_t kWords, Trace kTrace>
    void takeAll(std::size_t activity, int start, int finish);
    void note(std::size_t activity, std::size_t block, Word taken, bool works)
    {
        const auto by = static_cast<std::int32_t>(activity);
        std::int32_t &last = m_lastTaking[block];
        m_takings.push_back({works ? by : ~by, last, taken});
        last = static_cast<std::int32_t>(m_takings.size() - 1);
    }
    template <std::size_t kWords>
    std::int32_t interrupter(std::size_t activity, const Place &place) const;
    bool couldFit(int slot, const Word *wanted) const;
    std::int32_t blocker(int from, int until, const Word *wanted) const;
    template <std::size_t kWords>
    std::size_t words() const
    {
        return kWords ? kWords : m_words;
    }
    const Word *freeIn(int slot) const
    {
        return m_free.data() + static_cast<std::size_t>(slot) * m_words;
    }
    const Word *demandOf(std::size_t activity) const
    {
        return m_demand.data() + activity * m_words;
    }
    const Word *heldBy(std::size_t activity) const
    {
        return m_heldDemand.data() + activity * m_words;
    }

    // What does not change from pass to pass.
    Grid m_grid;
    std::size_t m_words;
    std::vector<Word> m_guards;
    ActivityLinks m_before, m_next;
    std::vector<int> m_work, m_waitDays, m_releaseDay;
    std::vector<Manner> m_manner;
    std::vector<Word> m_demand;     // words per activity
    std::vector<Word> m_heldDemand; // of held resources only
    std::vector<char> m_holds;      // any held resource
    std::vector<char> m_tooMuch;    // demands more of a resource than any profile has
    // The most work that can be done in the slots that come again, in the activity's manner and
    // split; kNever: any.
    std::vector<int> m_together, m_inPieces;
    std::vector<char> m_inLoop;
    std::vector<Paced> m_paced;
    std::vector<Word> m_allOpen; // kMostPlanes for every 64 slots: how much there is
    std::vector<Word> m_allSome; // kMostPlanes for every 64 of those: in which there is anything
    std::vector<PacedOf> m_pacedOf;

    // Of the current pass.
    std::vector<Word> m_free;               // words per slot, guard bits set
    std::vector<Word> m_open;               // of m_allOpen, how much is left
    std::vector<Word> m_some;               // of m_allSome, in which anything is left
    int m_known = 0;                        // slots of the grid that the state has
    int m_touched = 0;                      // no slot from here on is taken
    std::vector<std::int32_t> m_lastTaking; // per 64 slots, into m_takings; -1: none. Traced only
    std::vector<Taking> m_takings;
    bool m_alone = false;         // no manner is kept that may have to be given up
    int m_lastBlock = -1;         // where placeTogether was last refused for another's sake
    std::vector<Instant> m_ready; // per activity: from when on what follows may start
    std::vector<int> m_passWork, m_passWait;
    Levelled m_plan;
    std::vector<int> m_lateStart, m_lateStartDay;
};

} // namespace ohmwright::plan::level
