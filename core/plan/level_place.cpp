// SPDX-License-Identifier: GPL-3.0-or-later
// Where one activity goes in what the ones before it have left.
#include "core/plan/level_planner.h"

#include <algorithm>
#include <array>
#include <bit>
#include <cstdint>

namespace ohmwright::plan::level {

namespace {

constexpr Word kAll = ~Word{0};

// The bits from … until - 1 of 0 … 63; none if until is not above from.
Word between(int from, int until)
{
    if (until <= from)
        return 0;
    const Word above = kAll << from;
    return until >= 64 ? above : above & ~(kAll << until);
}

constexpr Word kEachByte = 0x0101'0101'0101'0101U;

// How many bits each byte has.
Word bitsOfBytes(Word bits)
{
    bits -= bits >> 1 & 0x5555'5555'5555'5555U;
    bits = (bits & 0x3333'3333'3333'3333U) + (bits >> 2 & 0x3333'3333'3333'3333U);
    return (bits + (bits >> 4)) & 0x0f0f'0f0f'0f0f'0f0fU;
}

// As std::popcount, which calls the library where the processor is not known to have it
// (H. S. Warren, Hacker's Delight, section 5-1).
int bitCount(Word bits)
{
    return static_cast<int>(bitsOfBytes(bits) * kEachByte >> 56);
}

// For each byte where its first bit is, its second, …
constexpr auto kBitsOfByte = [] {
    std::array<std::array<std::uint8_t, 8>, 256> places{};
    for (std::size_t byte = 0; byte < places.size(); ++byte)
        for (std::uint8_t bit = 0, nth = 0; bit < 8; ++bit)
            if ((byte >> bit & 1) != 0)
                places[byte][nth++] = bit;
    return places;
}();

// Where the bit is that has `before` bits below it; there is one. The byte is found by all running
// sums at once (S. Vigna, Broadword implementation of rank/select queries, WEA 2008, section 5).
inline int placeOfBit(Word bits, int before)
{
    const Word sums = bitsOfBytes(bits) * kEachByte; // in each byte: of it and those below
    constexpr Word kHigh = kEachByte << 7;
    const Word below = ((static_cast<Word>(before) * kEachByte | kHigh) - sums) & kHigh;
    const int place = 8 * static_cast<int>((below >> 7) * kEachByte >> 56);
    const Word inByte = static_cast<Word>(before) - (sums << 8 >> place & 0xff);
    return place + kBitsOfByte[bits >> place & 0xff][inByte];
}

// `taken`, of so many words, less in each slot from `there` to `end`. Of one word four slots at a
// time: the compiler leaves it at one.
inline void takeFrom(Word *there, const Word *end, const Word *taken, std::size_t words)
{
    if (words == 1) {
        const Word one = *taken;
        for (; end - there >= 4; there += 4) {
            there[0] -= one;
            there[1] -= one;
            there[2] -= one;
            there[3] -= one;
        }
    }
    while (there != end)
        for (std::size_t w = 0; w < words; ++w)
            *there++ -= taken[w];
}

} // namespace

// Of those 64 slots, the ones with `wanted` left.
template <std::size_t kWords>
Word Planner::fittingOf(std::size_t block, Word of, const Word *wanted) const
{
    const Word *const first = m_free.data() + block * kBits * words<kWords>();
    Word fitting = 0;
    for (; of != 0; of &= of - 1) {
        const auto slot = static_cast<std::size_t>(std::countr_zero(of));
        fitting |= static_cast<Word>(fits<kWords>(first + slot * words<kWords>(), wanted)) << slot;
    }
    return fitting;
}

// Of those slots, all laid out, the ones the activity can be worked on in.
template <std::size_t kWords>
inline Word Planner::workBits(std::size_t activity, std::size_t block, Word among) const
{
    const PacedOf &of = m_pacedOf[activity];
    const Word bits = among & openBits(of, of.count, block);
    return of.exact ? bits : fittingOf<kWords>(block, bits, demandOf(activity));
}

// The ones it can keep what it holds in.
template <std::size_t kWords>
Word Planner::holdBits(std::size_t activity, std::size_t block, Word among) const
{
    const PacedOf &of = m_pacedOf[activity];
    const Word bits = among & openBits(of, of.heldCount, block);
    return of.heldExact ? bits : fittingOf<kWords>(block, bits, heldBy(activity));
}

// The first slot from `from` on in which no paced resource of the activity is used up, or the end
// of what is laid out.
int Planner::firstOpen(std::size_t activity, int from) const
{
    const PacedOf &of = m_pacedOf[activity];
    if (of.count == 0 || from >= m_known)
        return from;
    Word mask = kAll << from % kBits;
    for (auto block = static_cast<std::size_t>(from / kBits); block < m_lastTaking.size();
         ++block) {
        const Word bits = mask & openBits(of, of.count, block);
        if (bits != 0)
            return static_cast<int>(block) * kBits + std::countr_zero(bits);
        mask = kAll;
    }
    return m_known;
}

// The first 64 slots from `from` on in which the first paced resource of the activity is not used
// up: at the latest those that are not all laid out yet.
std::size_t Planner::firstBlock(const PacedOf &of, std::size_t from) const
{
    const auto end = static_cast<std::size_t>(m_known / kBits);
    if (of.count == 0 || from >= end)
        return from;
    const Word *some = m_some.data() + of.needs[0].plane;
    Word mask = kAll << from % kBits;
    for (std::size_t word = from / kBits; word * kBits < end; ++word) {
        const Word bits = mask & some[word * kMostPlanes];
        if (bits != 0)
            return std::min(word * kBits + static_cast<std::size_t>(std::countr_zero(bits)), end);
        mask = kAll;
    }
    return end;
}

template <std::size_t kWords, Planner::Trace kTrace>
void Planner::take(std::size_t activity, std::size_t block, Word slots, bool works)
{
    const Word *const taken = works ? demandOf(activity) : heldBy(activity);
    Word *const first = m_free.data() + block * kBits * words<kWords>();
    for (Word rest = slots; rest != 0;) { // stretch by stretch
        const int from = std::countr_zero(rest);
        const Word behind = ~(rest >> from);
        const int until = behind == 0 ? kBits : from + std::countr_zero(behind);
        Word *const there = first + static_cast<std::size_t>(from) * words<kWords>();
        Word *const end = first + static_cast<std::size_t>(until) * words<kWords>();
        takeFrom(there, end, taken, words<kWords>());
        rest &= until == kBits ? 0 : kAll << until;
    }
    const PacedOf &of = m_pacedOf[activity];
    Word *const open = m_open.data() + block * kMostPlanes;
    Word *const some = m_some.data() + block / kBits * kMostPlanes;
    for (std::size_t i = 0; i < (works ? of.count : of.heldCount); ++i) {
        // Where a were taken, n are left if a + n were.
        const PacedOf::Need need = of.needs[i];
        const int amount = need.plane - need.first + 1;
        for (int plane = need.first; plane < need.end; ++plane) {
            open[plane] &= ~slots | (plane + amount < need.end ? open[plane + amount] : 0);
            if (open[plane] == 0)
                some[plane] &= ~(Word{1} << block % kBits);
        }
    }
    if constexpr (kTrace == Trace::On)
        note(activity, block, slots, works);
}

template <std::size_t kWords, Planner::Trace kTrace>
void Planner::takeAll(std::size_t activity, int start, int finish)
{
    if (kTrace == Trace::Off && m_pacedOf[activity].count == 0) {
        Word *const first = m_free.data();
        takeFrom(first + static_cast<std::size_t>(start) * words<kWords>(),
                 first + static_cast<std::size_t>(finish) * words<kWords>(), demandOf(activity),
                 words<kWords>());
        return;
    }
    for (int block = start / kBits; block * kBits < finish; ++block) {
        const int first = block * kBits;
        const Word slots = between(std::max(start - first, 0), finish - first);
        take<kWords, kTrace>(activity, static_cast<std::size_t>(block), slots, true);
    }
}

// Who last took what was too little for `wanted`, in the last of the slots from … until that would
// have had it but for the others; -1: there is none, they never had it.
std::int32_t Planner::blocker(int from, int until, const Word *wanted) const
{
    int slot = until - 1;
    while (slot >= from && (!couldFit(slot, wanted) || fits<0>(freeIn(slot), wanted)))
        --slot;
    if (slot < from)
        return -1;
    const Word *const there = freeIn(slot);
    const Word bit = Word{1} << slot % kBits;
    for (std::int32_t t = m_lastTaking[static_cast<std::size_t>(slot / kBits)]; t >= 0;
         t = m_takings[static_cast<std::size_t>(t)].earlier) {
        const Taking &taking = m_takings[static_cast<std::size_t>(t)];
        if ((taking.taken & bit) == 0)
            continue;
        const auto by = static_cast<std::size_t>(taking.by());
        const Word *const taken = taking.works() ? demandOf(by) : heldBy(by);
        for (std::size_t w = 0; w < m_words; ++w) {
            const Word lacking = ~(there[w] - wanted[w]) & m_guards[w];
            // Fields with a demand are those that nothing at all does not meet.
            if (lacking & ~(m_guards[w] - taken[w]))
                return taking.by();
        }
    }
    return -1;
}

// Neighbouring slots, looked at from the back so that a refusal skips the most; none is looked at
// twice.
template <std::size_t kWords, Planner::Trace kTrace>
Planner::Place Planner::placeTogether(std::size_t activity, int slots, int from, int bound,
                                      bool sitting)
{
    const Word *const wanted = demandOf(activity);
    const bool paced = m_pacedOf[activity].count > 0;
    int start = from;
    int looked = from; // from here to the end of the last stretch all is well
    while (true) {
        if (paced) {
            start = firstOpen(activity, start);
            looked = std::max(looked, start);
        }
        if (start > bound - slots)
            return {};
        const int finish = start + slots;
        if (finish > m_known && !grow(finish))
            return {};
        if (sitting && m_grid.sittingEnd()[start] < finish) {
            start = m_grid.sittingEnd()[start];
            looked = std::max(looked, start);
            continue;
        }
        int slot = finish - 1;
        while (
            slot >= looked &&
            fits<kWords>(m_free.data() + static_cast<std::size_t>(slot) * words<kWords>(), wanted))
            --slot;
        if (slot < looked) {
            takeAll<kWords, kTrace>(activity, start, finish);
            return {start, finish};
        }
        if (kTrace == Trace::On && couldFit(slot, wanted))
            m_lastBlock = slot;
        start = slot + 1;
        looked = finish;
    }
}

// Work that may rest: the first slot that can be worked in such that enough others follow before
// one in which what it holds is gone. 64 slots at a time.
template <std::size_t kWords>
Planner::Place Planner::findSplit(std::size_t activity, int slots, int from, int bound)
{
    const bool holds = m_holds[activity];
    const PacedOf &of = m_pacedOf[activity];
    int start = kNever; // as long as nothing is found
    int done = 0;
    int at = from % kBits; // in the block
    for (int first = from - at; first < bound; first += kBits, at = 0) {
        if (!holds || done == 0) { // no gap in what it holds can matter
            const std::size_t next = firstBlock(of, static_cast<std::size_t>(first / kBits));
            if (static_cast<int>(next) * kBits > first) {
                first = static_cast<int>(next) * kBits;
                at = 0;
                if (first >= bound)
                    return {};
            }
        }
        // Slots not laid out, when time ends, have nothing.
        if (first + kBits > m_known && !grow(first + kBits) && first >= m_known)
            return {};
        const Word there = between(at, std::min(bound, m_known) - first);
        const auto block = static_cast<std::size_t>(first / kBits);
        Word work = workBits<kWords>(activity, block, there);
        if (!holds) {
            if (work == 0)
                continue;
            if (start == kNever)
                start = first + std::countr_zero(work);
            const int more = bitCount(work);
            if (done + more < slots) {
                done += more;
                continue;
            }
            return {start, first + placeOfBit(work, slots - done - 1) + 1};
        }
        const Word gaps = ~holdBits<kWords>(activity, block, there);
        while (at < kBits) {
            if (done == 0) {
                work &= kAll << at;
                if (work == 0)
                    break;
                at = std::countr_zero(work);
                start = first + at;
            }
            const Word gapsAhead = gaps & kAll << at;
            const int gap = gapsAhead == 0 ? kBits : std::countr_zero(gapsAhead);
            const Word together = work & between(at, gap);
            const int more = bitCount(together);
            if (done + more >= slots) {
                return {start, first + placeOfBit(together, slots - done - 1) + 1};
            }
            done = gap == kBits ? done + more : 0;
            at = gap;
        }
    }
    return {};
}

// Whom the last rest between start and finish was for; -1: nobody. To be asked before the slots are
// taken.
template <std::size_t kWords>
std::int32_t Planner::interrupter(std::size_t activity, const Place &place) const
{
    for (int block = (place.finish - 1) / kBits; block >= place.start / kBits; --block) {
        const int first = block * kBits;
        const Word span = between(std::max(place.start - first, 0), place.finish - first);
        const Word rest = span & ~workBits<kWords>(activity, static_cast<std::size_t>(block), span);
        if (rest == 0)
            continue;
        const int until = kBits - std::countl_zero(rest);
        const Word before = ~rest & between(0, until);
        const int from = before == 0 ? 0 : kBits - std::countl_zero(before);
        return blocker(first + from, first + until, demandOf(activity));
    }
    return -1;
}

template <std::size_t kWords, Planner::Trace kTrace>
Planner::Place Planner::placeSplit(std::size_t activity, int slots, int from, int bound)
{
    const Place place = findSplit<kWords>(activity, slots, from, bound);
    if (place.start == kNever)
        return place;
    if (kTrace == Trace::On && place.finish - place.start > slots)
        m_plan.interrupter[activity] = interrupter<kWords>(activity, place);
    for (int first = place.start & -kBits; first < place.finish; first += kBits) {
        const auto block = static_cast<std::size_t>(first / kBits);
        const Word span = between(std::max(place.start - first, 0), place.finish - first);
        const Word work = workBits<kWords>(activity, block, span);
        if (work != 0)
            take<kWords, kTrace>(activity, block, work, true);
        if (work != span && m_holds[activity])
            take<kWords, kTrace>(activity, block, span & ~work, false);
    }
    return place;
}

template <std::size_t kWords, Planner::Trace kTrace>
Planner::Place Planner::place(std::size_t activity, int slots, int from)
{
    if (from == kNever || m_tooMuch[activity])
        return {};
    // What can't come in the slots that repeat is looked for only before and across the seam.
    const int seam = m_grid.head() + 2 * m_grid.period();
    m_lastBlock = -1;
    const bool pieces = m_alone && slots > m_together[activity];
    if (m_manner[activity] != Manner::Split && !pieces) {
        const int bound = slots > m_together[activity] ? seam : kNever;
        const bool sitting = m_manner[activity] == Manner::OneSitting;
        const Place together = placeTogether<kWords, kTrace>(activity, slots, from, bound, sitting);
        if (together.start != kNever)
            return together;
        m_plan.broken[activity] = 1;
        m_lastBlock = -1;
    }
    const int bound = slots > m_inPieces[activity] ? seam : kNever;
    return placeSplit<kWords, kTrace>(activity, slots, from, bound);
}

template Planner::Place Planner::place<1, Planner::Trace::Off>(std::size_t, int, int);
template Planner::Place Planner::place<1, Planner::Trace::On>(std::size_t, int, int);
template Planner::Place Planner::place<0, Planner::Trace::Off>(std::size_t, int, int);
template Planner::Place Planner::place<0, Planner::Trace::On>(std::size_t, int, int);

// The mirror of placeTogether, not before slot `floor`. What finds no room is left as it is.
template <std::size_t kWords>
void Planner::placeLateTogether(std::size_t activity, int limit, int floor)
{
    const Word *const wanted = demandOf(activity);
    const int slots = m_passWork[activity];
    const bool sitting = m_manner[activity] == Manner::OneSitting;
    int finish = limit;
    int looked = limit; // from the beginning of the last stretch to here all is well
    while (finish - slots >= floor) {
        const int start = finish - slots;
        if (sitting && m_grid.sittingBegin()[finish - 1] > start) {
            finish = m_grid.sittingBegin()[finish - 1];
            looked = std::min(looked, finish);
            continue;
        }
        int slot = start;
        while (slot < looked && fits<kWords>(freeIn(slot), wanted))
            ++slot;
        if (slot >= looked) {
            takeAll<kWords, Trace::Off>(activity, start, finish);
            m_lateStart[activity] = start;
            m_touched = std::max(m_touched, finish);
            return;
        }
        finish = slot;
        looked = start;
    }
}

// The mirror of placeSplit, slot by slot.
template <std::size_t kWords>
void Planner::placeLate(std::size_t activity, int limit, int floor)
{
    const Word *const wanted = demandOf(activity);
    const Word *const held = heldBy(activity);
    const int slots = m_passWork[activity];
    int done = 0;
    int finish = limit;
    for (int slot = limit - 1; slot >= floor; --slot) {
        if (!fits<kWords>(freeIn(slot), wanted)) {
            if (!fits<kWords>(freeIn(slot), held))
                done = 0;
            continue;
        }
        if (done == 0)
            finish = slot + 1;
        if (++done < slots)
            continue;
        for (int s = slot; s < finish; ++s) {
            const bool works = fits<kWords>(freeIn(s), wanted);
            const auto block = static_cast<std::size_t>(s / kBits);
            if (works || m_holds[activity])
                take<kWords, Trace::Off>(activity, block, Word{1} << s % kBits, works);
        }
        m_lateStart[activity] = slot;
        m_touched = std::max(m_touched, finish);
        return;
    }
}

template void Planner::placeLate<1>(std::size_t, int, int);
template void Planner::placeLate<0>(std::size_t, int, int);
template void Planner::placeLateTogether<1>(std::size_t, int, int);
template void Planner::placeLateTogether<0>(std::size_t, int, int);

} // namespace ohmwright::plan::level
