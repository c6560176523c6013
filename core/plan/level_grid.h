// SPDX-License-Identifier: GPL-3.0-or-later
// Inside of levelling.h: the timeline laid out slot by slot, with capacities packed into words.
//
// Each resource has a field of bits in a 64-bit word, wide enough for its greatest capacity, and
// one guard bit above. With all guard bits set in what is free, one subtraction takes a demand from
// every field at once, and a guard bit that has gone says that its field had too little (the
// packed comparison of L. Lamport, "Multiple byte processing with full-word instructions",
// Communications of the ACM 18 (1975) 471-475). Further words where one is too narrow.
#pragma once

#include "core/plan/levelling.h"

#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

namespace ohmwright::plan::level {

using Word = std::uint64_t;

// Where each resource's field lies.
class Packing
{
public:
    // Greatest capacity per resource; below 0 counts as 0.
    explicit Packing(std::span<const int> greatest);

    [[nodiscard]] std::size_t words() const { return m_guards.size(); } // at least 1
    [[nodiscard]] std::span<const Word> guards() const { return m_guards; }
    // Adds the amounts, bounded to 0 … greatest, to `into`, which has words() words.
    void pack(std::span<const int> amounts, Word *into) const;

    struct Field
    {
        std::size_t word = 0;
        unsigned shift = 0;
        int greatest = 0;
        Word mask = 0; // without the guard bit
    };
    [[nodiscard]] const std::vector<Field> &fields() const { return m_fields; } // per resource

private:
    std::vector<Field> m_fields;
    std::vector<Word> m_guards;
};

// The slots so far laid out; more on demand.
class Grid
{
public:
    Grid(const Timeline &timeline, std::span<const int> greatest);

    [[nodiscard]] const Packing &packing() const { return m_packing; }
    [[nodiscard]] int count() const { return static_cast<int>(m_day.size()); }
    // Lays out at least `slots` slots; false if the time ends before.
    bool reach(int count);
    // The first slot on that day or later, laying out what is needed; kNever if there is none.
    int slotOn(int day)
    {
        const auto index = static_cast<std::size_t>(day);
        return index < m_slotOn.size() ? m_slotOn[index] : slotBeyond(day);
    }

    [[nodiscard]] const int *day() const { return m_day.data(); }
    // One past the last slot of its sitting, and the first one.
    [[nodiscard]] const int *sittingEnd() const { return m_sittingEnd.data(); }
    [[nodiscard]] const int *sittingBegin() const { return m_sittingBegin.data(); }
    // words() for each slot, guard bits set.
    [[nodiscard]] const Word *capacity() const { return m_capacity.data(); }
    [[nodiscard]] std::span<const int> profile(int slot) const;

    // How many slots lie before the first that repeats, and how many repeat; 0: none do.
    [[nodiscard]] int head() const { return m_head; }
    [[nodiscard]] int period() const { return m_period; }
    [[nodiscard]] int periodDays() const { return m_timeline.repeatDays; }
    [[nodiscard]] int daySpan() const { return m_day.empty() ? 1 : m_day.back() + 1; }

private:
    int slotBeyond(int day);
    void append(const Slot &slot, int day);

    Timeline m_timeline;
    Packing m_packing;
    std::vector<Word> m_profiles;
    int m_head = 0, m_period = 0;
    int m_rounds = 0; // how often the pattern has come again
    std::vector<int> m_profileOf, m_day, m_sittingBegin, m_sittingEnd;
    std::vector<int> m_slotOn; // per day, up to that of the last slot
    std::vector<Word> m_capacity;
};

} // namespace ohmwright::plan::level
