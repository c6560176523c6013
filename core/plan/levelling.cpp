// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/plan/levelling.h"

#include "core/plan/level_grid.h"
#include "core/plan/level_links.h"

#include <QtGlobal>
#include <queue>

#include <algorithm>
#include <cstring>
#include <numeric>
#include <utility>

namespace ohmwright::plan {

using level::Word;

namespace {

// Day and slot in one number: later is greater. Of two instants of one plan the one with the later
// day never has the earlier slot, so one comparison serves both.
using Instant = std::uint64_t;

Instant instant(int day, int slot)
{
    return static_cast<Instant>(static_cast<std::uint32_t>(day)) << 32 |
           static_cast<std::uint32_t>(slot);
}
int dayOf(Instant i)
{
    return static_cast<int>(i >> 32);
}
int slotOf(Instant i)
{
    return static_cast<int>(i & 0xffff'ffffU);
}

int sum(int day, int days)
{
    return day > kNever - days ? kNever : day + days;
}

} // namespace

struct Levelling::Inside
{
    explicit Inside(const Workload &workload);

    const Levelled &pass(const Sample &sample);
    const Latest &latest(int endDay);
    std::vector<LevelTrouble> troubles();

    // What does not change from pass to pass.
    level::Grid grid;
    std::size_t words;
    level::ActivityLinks before, next;
    std::vector<int> work, waitDays, releaseDay;
    std::vector<Manner> manner;
    std::vector<Word> demand;      // words per activity
    std::vector<Word> heldDemand;  // of held resources only
    std::vector<Word> uses;        // guard bits of the fields with a demand
    std::vector<char> tooMuch;     // demands more of a resource than any profile has
    std::vector<int> mostTogether; // per activity: the most work its manner allows in the slots
                                   // that come again; kNever: any
    std::vector<std::int32_t> order;
    std::vector<char> inLoop;

    // Of the current pass.
    std::vector<Word> free; // words per slot, guard bits set
    struct Taking           // of one slot by one activity
    {
        std::int32_t activity;
        std::int32_t earlier; // the slot's taking before this one
        bool heldOnly;        // it rests there
    };
    std::vector<Taking> takings;
    std::vector<std::int32_t> lastTaking; // per slot
    std::vector<Instant> ready;           // per activity: from when on what follows may start
    std::vector<int> passWork, passWait;
    Levelled plan;
    Latest late;
    std::vector<int> lateStart; // slots
    std::vector<std::int32_t> backwards;

private:
    struct Place
    {
        int start = kNever, finish = kNever;
    };

    void reset();
    void catchUp(); // free and lastTaking with slots laid out since
    bool fits(int slot, const Word *wanted) const;
    bool couldFit(int slot, const Word *wanted) const; // if nobody else were there
    void take(int slot, std::size_t activity, bool heldOnly);
    Place placeTogether(std::size_t activity, int slots, int from, int bound, bool sitting);
    Place placeSplit(std::size_t activity, int slots, int from, int bound);
    void put(std::size_t activity, const Sample &sample);
    std::int32_t blocker(int slot, const Word *wanted) const;
    void placeLate(std::size_t activity, int limit);
    int stretch(std::size_t activity) const;
    std::vector<std::int32_t> byLatestFinish() const;

    int m_lastBlock = -1; // where the place being looked for was last refused for another's sake
};

Levelling::Inside::Inside(const Workload &workload)
    : grid(workload.timeline,
           workload.timeline.profiles.empty()
               ? 0
               : std::max_element(workload.timeline.profiles.begin(),
                                  workload.timeline.profiles.end(),
                                  [](const auto &a, const auto &b) { return a.size() < b.size(); })
                     ->size()),
      words(grid.packing().words()), before(workload.activities)
{
    const std::size_t count = workload.activities.size();
    inLoop.assign(count, 0);
    demand.assign(count * words, 0);
    heldDemand.assign(count * words, 0);
    uses.assign(count * words, 0);
    tooMuch.assign(count, 0);
    std::vector<int> greatest;
    for (const std::vector<int> &profile : workload.timeline.profiles) {
        greatest.resize(std::max(greatest.size(), profile.size()), 0);
        for (std::size_t r = 0; r < profile.size(); ++r)
            greatest[r] = std::max(greatest[r], profile[r]);
    }
    for (std::size_t a = 0; a < count; ++a) {
        const Activity &activity = workload.activities[a];
        work.push_back(std::max(activity.work, 0));
        waitDays.push_back(std::max(activity.waitDays, 0));
        releaseDay.push_back(std::max(activity.releaseDay, 0));
        manner.push_back(activity.manner);
        grid.packing().pack(activity.demand, demand.data() + a * words);
        std::vector<int> ofHeld = activity.demand;
        std::vector<int> used = activity.demand;
        for (std::size_t r = 0; r < ofHeld.size(); ++r) {
            if (r >= workload.held.size() || !workload.held[r])
                ofHeld[r] = 0;
            if (activity.demand[r] > (r < greatest.size() ? greatest[r] : 0))
                tooMuch[a] = 1;
        }
        grid.packing().pack(ofHeld, heldDemand.data() + a * words);
        // A field with a demand is one that nothing does not meet.
        for (std::size_t w = 0; w < words; ++w) {
            const Word guards = grid.packing().guards()[w];
            uses[a * words + w] = guards & ~(guards - demand[a * words + w]);
        }
    }
    ready.assign(count, 0);
    passWork.assign(count, 0);
    passWait.assign(count, 0);
    for (std::vector<int> *of : {&plan.start, &plan.finish, &plan.startDay, &plan.finishDay,
                                 &plan.readyDay, &late.startDay, &late.floatDays})
        of->assign(count, 0);
    plan.driver.assign(count, {});
    plan.interrupter.assign(count, -1);
    plan.broken.assign(count, 0);
    lateStart.assign(count, 0);
    backwards.assign(count, 0);
    order.resize(count);
    std::iota(order.begin(), order.end(), 0);
    order = level::feasibleOrder(before, order, inLoop);
    next = before.turned();
    order = level::feasibleOrder(before, byLatestFinish(), inLoop);
    catchUp();
    for (std::size_t a = 0; a < count; ++a)
        mostTogether.push_back(stretch(a));
}

// Priorities by latest finish in the network alone, in days: work counts as many as the slots that
// come again need on average.
std::vector<std::int32_t> Levelling::Inside::byLatestFinish() const
{
    const std::size_t count = work.size();
    const int slots = std::max(grid.period() > 0 ? grid.period() : grid.count(), 1);
    const double days = grid.period() > 0 ? grid.periodDays() : grid.daySpan();
    std::vector<double> length(count);
    std::vector<double> rest(count, 0); // from its finish to the end, the waiting included
    for (std::size_t a = 0; a < count; ++a)
        length[a] = work[a] * days / slots;
    for (std::size_t i = count; i-- > 0;) {
        const auto a = static_cast<std::size_t>(order[i]);
        rest[a] += waitDays[a];
        for (const std::int32_t b : before[a]) {
            double &of = rest[static_cast<std::size_t>(b)];
            of = std::max(of, length[a] + rest[a]);
        }
    }
    std::vector<std::int32_t> priority = order;
    std::stable_sort(priority.begin(), priority.end(), [&](std::int32_t a, std::int32_t b) {
        return rest[static_cast<std::size_t>(a)] > rest[static_cast<std::size_t>(b)];
    });
    return priority;
}

// The most work the activity can do in one go (its manner's) in the slots that come again. Two
// rounds of them are looked at, since a stretch may lie across the seam; one longer than a round
// has no end.
int Levelling::Inside::stretch(std::size_t activity) const
{
    const Word *const wanted = demand.data() + activity * words;
    const Word *const held = heldDemand.data() + activity * words;
    const int head = grid.head();
    const int period = grid.period();
    const bool split = manner[activity] == Manner::Split;
    int most = 0;
    int worked = 0;
    int length = 0;
    for (int i = 0; i < 2 * period; ++i) {
        const int slot = head + i % period;
        if (manner[activity] == Manner::OneSitting &&
            (i == period || grid.sittingBegin()[slot] == slot))
            worked = length = 0;
        const bool works = couldFit(slot, wanted);
        if (works || (split && couldFit(slot, held))) {
            worked += works ? 1 : 0;
            ++length;
        } else {
            worked = length = 0;
        }
        if (length >= period && worked > 0 && manner[activity] != Manner::OneSitting)
            return kNever;
        most = std::max(most, worked);
    }
    return most;
}

void Levelling::Inside::catchUp()
{
    const std::size_t known = lastTaking.size();
    const auto count = static_cast<std::size_t>(grid.count());
    if (known == count)
        return;
    free.insert(free.end(), grid.capacity() + known * words, grid.capacity() + count * words);
    lastTaking.resize(count, -1);
}

void Levelling::Inside::reset()
{
    std::copy(grid.capacity(), grid.capacity() + free.size(), free.begin());
    std::fill(lastTaking.begin(), lastTaking.end(), -1);
    takings.clear();
}

bool Levelling::Inside::fits(int slot, const Word *wanted) const
{
    const Word *const there = free.data() + static_cast<std::size_t>(slot) * words;
    bool all = true;
    for (std::size_t w = 0; w < words; ++w) {
        const Word guards = grid.packing().guards()[w];
        all = all && ((there[w] - wanted[w]) & guards) == guards;
    }
    return all;
}

bool Levelling::Inside::couldFit(int slot, const Word *wanted) const
{
    const Word *const there = grid.capacity() + static_cast<std::size_t>(slot) * words;
    bool all = true;
    for (std::size_t w = 0; w < words; ++w) {
        const Word guards = grid.packing().guards()[w];
        all = all && ((there[w] - wanted[w]) & guards) == guards;
    }
    return all;
}

void Levelling::Inside::take(int slot, std::size_t activity, bool heldOnly)
{
    const Word *const taken = (heldOnly ? heldDemand : demand).data() + activity * words;
    Word *const there = free.data() + static_cast<std::size_t>(slot) * words;
    for (std::size_t w = 0; w < words; ++w)
        there[w] -= taken[w];
    std::int32_t &last = lastTaking[static_cast<std::size_t>(slot)];
    takings.push_back({static_cast<std::int32_t>(activity), last, heldOnly});
    last = static_cast<std::int32_t>(takings.size() - 1);
}

// Who last took, in a slot that refused `wanted`, what was too little there; -1: nobody, the slot
// never had it.
std::int32_t Levelling::Inside::blocker(int slot, const Word *wanted) const
{
    if (!couldFit(slot, wanted))
        return -1;
    const Word *const there = free.data() + static_cast<std::size_t>(slot) * words;
    for (std::int32_t t = lastTaking[static_cast<std::size_t>(slot)]; t >= 0;
         t = takings[static_cast<std::size_t>(t)].earlier) {
        const Taking &taking = takings[static_cast<std::size_t>(t)];
        const std::size_t by = static_cast<std::size_t>(taking.activity) * words;
        for (std::size_t w = 0; w < words; ++w) {
            const Word guards = grid.packing().guards()[w];
            const Word lacking = guards & ~(there[w] - wanted[w]);
            const Word used =
                taking.heldOnly ? guards & ~(guards - heldDemand[by + w]) : uses[by + w];
            if (lacking & used)
                return taking.activity;
        }
    }
    return -1;
}

// Neighbouring slots, looked at from the back so that a refusal skips the most.
Levelling::Inside::Place Levelling::Inside::placeTogether(std::size_t activity, int slots, int from,
                                                          int bound, bool sitting)
{
    const Word *const wanted = demand.data() + activity * words;
    for (int start = from; start <= bound - slots;) {
        if (!grid.reach(start + slots))
            return {};
        catchUp();
        if (sitting && grid.sittingEnd()[start] - start < slots) {
            start = grid.sittingEnd()[start];
            continue;
        }
        int slot = start + slots - 1;
        while (slot >= start && fits(slot, wanted))
            --slot;
        if (slot < start) {
            for (slot = start; slot < start + slots; ++slot)
                take(slot, activity, false);
            return {start, start + slots};
        }
        if (couldFit(slot, wanted))
            m_lastBlock = slot;
        start = slot + 1;
    }
    return {};
}

Levelling::Inside::Place Levelling::Inside::placeSplit(std::size_t activity, int slots, int from,
                                                       int bound)
{
    const Word *const wanted = demand.data() + activity * words;
    const Word *const held = heldDemand.data() + activity * words;
    const bool holds = std::any_of(held, held + words, [](Word w) { return w != 0; });
    int start = -1;
    int done = 0;
    for (int slot = from; slot < bound; ++slot) {
        if (!grid.reach(slot + 1))
            return {};
        catchUp();
        if (fits(slot, wanted)) {
            if (done == 0)
                start = slot;
            if (++done < slots)
                continue;
            for (int s = slot; s >= start; --s) {
                const bool works = fits(s, wanted);
                if (!works && plan.interrupter[activity] < 0)
                    plan.interrupter[activity] = blocker(s, wanted);
                if (works || holds)
                    take(s, activity, !works);
            }
            return {start, slot + 1};
        }
        if (done == 0 || !fits(slot, held)) {
            done = 0;
            if (couldFit(slot, wanted))
                m_lastBlock = slot;
        }
    }
    return {};
}

void Levelling::Inside::put(std::size_t a, const Sample &sample)
{
    const int given = sample.releaseDay.empty() ? releaseDay[a] : sample.releaseDay[a];
    const int release = std::min(std::max(given, 0), Timeline::kMostDays);
    const int wait = sample.waitDays.empty() ? waitDays[a] : std::max(sample.waitDays[a], 0);
    const int slots = sample.work.empty() ? work[a] : std::max(sample.work[a], 0);
    passWork[a] = slots;
    passWait[a] = wait;

    Instant from = instant(release, grid.slotOn(release));
    Driver driver{release > 0 ? DrivenBy::Release : DrivenBy::Nothing, -1};
    for (const std::int32_t before_ : before[a]) {
        const Instant over = ready[static_cast<std::size_t>(before_)];
        if (over > from || (over == from && driver.by != DrivenBy::Link)) {
            from = over;
            driver = {DrivenBy::Link, before_};
        }
    }

    Place place{slotOf(from), slotOf(from)};
    int startDay = dayOf(from);
    int finishDay = startDay;
    plan.interrupter[a] = -1;
    plan.broken[a] = 0;
    if (slots > 0) {
        m_lastBlock = -1;
        const int first = slotOf(from);
        // What can't come in the slots that repeat is looked for in those before and across the
        // seam only.
        const int bounded = slots > mostTogether[a] ? grid.head() + 2 * grid.period() : kNever;
        if (first == kNever || tooMuch[a]) {
            place = {};
        } else if (manner[a] == Manner::Split) {
            place = placeSplit(a, slots, first, bounded);
        } else {
            place = placeTogether(a, slots, first, bounded, manner[a] == Manner::OneSitting);
            if (place.start == kNever) {
                plan.broken[a] = 1;
                m_lastBlock = -1;
                place = placeSplit(a, slots, first,
                                   mostTogether[a] > 0 ? kNever : grid.head() + 2 * grid.period());
            }
        }
        if (place.start == kNever) {
            startDay = finishDay = kNever;
        } else {
            const Word *const wanted = demand.data() + a * words;
            startDay = grid.day()[place.start];
            finishDay = grid.day()[place.finish - 1];
            const std::int32_t by = m_lastBlock < 0 ? -1 : blocker(m_lastBlock, wanted);
            if (by >= 0)
                driver = {DrivenBy::Resource, by};
        }
    }
    plan.start[a] = place.start;
    plan.finish[a] = place.finish;
    plan.startDay[a] = startDay;
    plan.finishDay[a] = finishDay;
    plan.driver[a] = driver;
    plan.readyDay[a] = sum(finishDay, wait);
    const int readySlot = wait == 0 || place.finish == kNever
                              ? place.finish
                              : std::max(place.finish, grid.slotOn(plan.readyDay[a]));
    ready[a] = instant(plan.readyDay[a], readySlot);
}

const Levelled &Levelling::Inside::pass(const Sample &sample)
{
    reset();
    Instant end = 0;
    for (const std::int32_t a : order) {
        put(static_cast<std::size_t>(a), sample);
        end = std::max(end, ready[static_cast<std::size_t>(a)]);
    }
    plan.end = slotOf(end);
    plan.endDay = dayOf(end);
    return plan;
}

// The mirror of placeTogether and placeSplit: as late as it goes before slot `limit`. Where it
// finds no room, or none that is later, the activity stays where it was; its place is not taken
// then, since others may have been given it.
void Levelling::Inside::placeLate(std::size_t activity, int limit)
{
    const Word *const wanted = demand.data() + activity * words;
    const Word *const held = heldDemand.data() + activity * words;
    const int slots = passWork[activity];
    const bool split = manner[activity] == Manner::Split || plan.broken[activity];
    const bool sitting = manner[activity] == Manner::OneSitting && !split;
    const bool holds = std::any_of(held, held + words, [](Word w) { return w != 0; });
    int done = 0;
    int finish = limit;
    for (int slot = limit - 1; slot > plan.start[activity]; --slot) {
        if (done > 0 && sitting && grid.sittingEnd()[slot] == slot + 1)
            done = 0;
        if (fits(slot, wanted)) {
            if (done == 0)
                finish = slot + 1;
            if (++done < slots)
                continue;
            for (int s = slot; s < finish; ++s) {
                const bool works = fits(s, wanted);
                if (works || holds)
                    take(s, activity, !works);
            }
            lateStart[activity] = slot;
            late.startDay[activity] = grid.day()[slot];
            return;
        }
        if (!split || !fits(slot, held))
            done = 0;
    }
}

const Latest &Levelling::Inside::latest(int endDay)
{
    const std::size_t count = order.size();
    std::vector<std::int32_t> &byFinish = backwards;
    // Later in the order comes later in the plan where finishes are the same.
    std::reverse_copy(order.begin(), order.end(), byFinish.begin());
    std::stable_sort(byFinish.begin(), byFinish.end(), [this](std::int32_t a, std::int32_t b) {
        return plan.finish[static_cast<std::size_t>(a)] > plan.finish[static_cast<std::size_t>(b)];
    });
    reset();
    std::copy(plan.start.begin(), plan.start.end(), lateStart.begin());
    std::copy(plan.startDay.begin(), plan.startDay.end(), late.startDay.begin());
    std::fill(late.floatDays.begin(), late.floatDays.end(), 0);
    if (plan.endDay == kNever)
        return late;

    const int end = std::clamp(endDay, plan.endDay, Timeline::kMostDays);
    for (const std::int32_t index : byFinish) {
        const auto a = static_cast<std::size_t>(index);
        int limit = kNever; // slot
        int lastDay = end - passWait[a];
        for (const std::int32_t after : next[a]) {
            limit = std::min(limit, lateStart[static_cast<std::size_t>(after)]);
            lastDay =
                std::min(lastDay, late.startDay[static_cast<std::size_t>(after)] - passWait[a]);
        }
        limit = std::min({limit, lastDay < 0 ? 0 : grid.slotOn(lastDay + 1), grid.count()});
        catchUp();
        if (passWork[a] > 0) {
            placeLate(a, limit);
        } else if (lastDay > plan.startDay[a]) {
            late.startDay[a] = lastDay;
            lateStart[a] = std::max(lateStart[a], limit);
        }
    }
    const int early = std::max(plan.endDay - endDay, 0);
    for (std::size_t a = 0; a < count; ++a) {
        late.startDay[a] -= early;
        late.floatDays[a] = late.startDay[a] - plan.startDay[a];
    }
    return late;
}

std::vector<LevelTrouble> Levelling::Inside::troubles()
{
    pass({});
    std::vector<LevelTrouble> result;
    for (std::size_t a = 0; a < order.size(); ++a) {
        const auto tell = [&](LevelTrouble::Kind kind) {
            result.push_back({kind, a});
        };
        if (inLoop[a])
            tell(LevelTrouble::Kind::InLoop);
        if (plan.startDay[a] != kNever) {
            if (plan.broken[a])
                tell(LevelTrouble::Kind::TooLong);
            continue;
        }
        const bool behind = std::any_of(before[a].begin(), before[a].end(), [this](std::int32_t b) {
            return plan.startDay[static_cast<std::size_t>(b)] == kNever;
        });
        const Word *const wanted = demand.data() + a * words;
        bool some = false;
        for (int slot = 0; slot < grid.head() + grid.period() && !tooMuch[a]; ++slot)
            some = some || couldFit(slot, wanted);
        if (!some && work[a] > 0)
            tell(LevelTrouble::Kind::NeverEnough);
        else if (behind)
            tell(LevelTrouble::Kind::BehindNever);
        else
            tell(LevelTrouble::Kind::TooLong);
    }
    return result;
}

Levelling::Levelling(const Workload &workload) : m_in(std::make_unique<Inside>(workload)) {}
Levelling::Levelling(const Levelling &other) : m_in(std::make_unique<Inside>(*other.m_in)) {}
Levelling::Levelling(Levelling &&other) noexcept = default;
Levelling &Levelling::operator=(Levelling &&other) noexcept = default;
Levelling::~Levelling() = default;

Levelling &Levelling::operator=(const Levelling &other)
{
    if (this != &other)
        m_in = std::make_unique<Inside>(*other.m_in);
    return *this;
}

std::size_t Levelling::activityCount() const
{
    return m_in->work.size();
}
std::span<const std::int32_t> Levelling::order() const
{
    return m_in->order;
}
const Levelled &Levelling::pass(const Sample &sample)
{
    return m_in->pass(sample);
}
const Latest &Levelling::latest(int endDay)
{
    return m_in->latest(endDay);
}
std::vector<std::vector<int>> Levelling::workedSlots() const
{
    std::vector<std::vector<int>> result(activityCount());
    for (std::size_t slot = 0; slot < m_in->lastTaking.size(); ++slot) {
        for (std::int32_t t = m_in->lastTaking[slot]; t >= 0;
             t = m_in->takings[static_cast<std::size_t>(t)].earlier) {
            const auto &taking = m_in->takings[static_cast<std::size_t>(t)];
            if (!taking.heldOnly)
                result[static_cast<std::size_t>(taking.activity)].push_back(static_cast<int>(slot));
        }
    }
    return result;
}
const Levelled &Levelling::plan() const
{
    return m_in->plan;
}

std::vector<LevelTrouble> Levelling::troubles() const
{
    Inside copy(*m_in);
    return copy.troubles();
}

void Levelling::setOrder(std::span<const std::size_t> priority)
{
    const std::size_t count = activityCount();
    std::vector<char> named(count, 0);
    std::vector<std::int32_t> wanted;
    for (const std::size_t a : priority) {
        const bool fresh = a < count && !named[a];
        Q_ASSERT_X(fresh, "plan::Levelling::setOrder", "not an activity, or named twice");
        if (fresh) {
            named[a] = 1;
            wanted.push_back(static_cast<std::int32_t>(a));
        }
    }
    for (std::size_t a = 0; a < count; ++a) {
        if (!named[a])
            wanted.push_back(static_cast<std::int32_t>(a));
    }
    m_in->order = level::feasibleOrder(m_in->before, wanted, m_in->inLoop);
}

} // namespace ohmwright::plan
