// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/plan/level_grid.h"

#include <QtGlobal>

#include <algorithm>
#include <bit>

namespace ohmwright::plan::level {

namespace {

constexpr unsigned kWordBits = 64;

} // namespace

Packing::Packing(std::span<const int> greatest) : m_guards(1, 0)
{
    unsigned used = 0;
    for (const int most : greatest) {
        const auto bounded = static_cast<unsigned>(std::max(most, 0));
        const auto width = static_cast<unsigned>(std::bit_width(bounded)) + 1;
        if (used + width > kWordBits) {
            m_guards.push_back(0);
            used = 0;
        }
        m_fields.push_back(
            {m_guards.size() - 1, used, std::max(most, 0), ((Word{1} << (width - 1)) - 1) << used});
        used += width;
        m_guards.back() |= Word{1} << (used - 1);
    }
}

void Packing::pack(std::span<const int> amounts, Word *into) const
{
    for (std::size_t r = 0; r < std::min(amounts.size(), m_fields.size()); ++r) {
        const Field &field = m_fields[r];
        into[field.word] |= static_cast<Word>(std::clamp(amounts[r], 0, field.greatest))
                            << field.shift;
    }
}

Grid::Grid(const Timeline &timeline, std::span<const int> greatest)
    : m_timeline(timeline), m_packing(greatest)
{
    const std::size_t words = m_packing.words();
    m_profiles.assign(m_timeline.profiles.size() * words, 0);
    for (std::size_t p = 0; p < m_timeline.profiles.size(); ++p) {
        Word *const packed = m_profiles.data() + p * words;
        m_packing.pack(m_timeline.profiles[p], packed);
        for (std::size_t w = 0; w < words; ++w)
            packed[w] |= m_packing.guards()[w];
    }

    int last = 0;
    for (Slot &slot : m_timeline.line) {
        Q_ASSERT_X(slot.day >= last, "plan::Grid", "the days of slots fall");
        slot.day = last = std::max(slot.day, last);
        append(slot, slot.day);
    }
    const std::size_t from = m_timeline.repeatFrom;
    if (m_timeline.repeatDays > 0 && from < m_timeline.line.size()) {
        const bool room = m_timeline.repeatDays > last - m_timeline.line[from].day;
        Q_ASSERT_X(room, "plan::Grid", "the repetition begins before the slots end");
        if (room) {
            m_head = static_cast<int>(from);
            m_period = count() - m_head;
        }
    }
    if (m_period == 0)
        m_head = count();
}

void Grid::append(const Slot &slot, int day)
{
    const bool known = static_cast<std::size_t>(slot.profile) < m_timeline.profiles.size();
    Q_ASSERT_X(known, "plan::Grid", "no such profile");
    const int index = count();
    const bool follows = index > 0 && !slot.apart && m_day.back() == day;
    const int begin = follows ? m_sittingBegin.back() : index;
    m_profileOf.push_back(known ? slot.profile : -1);
    m_day.push_back(day);
    m_sittingBegin.push_back(begin);
    m_sittingEnd.push_back(index + 1);
    for (int i = begin; i < index; ++i)
        m_sittingEnd[static_cast<std::size_t>(i)] = index + 1;
    // A round may end later, but nothing starts there, whether it has been laid out or not.
    while (m_slotOn.size() <= static_cast<std::size_t>(std::min(day, Timeline::kMostDays)))
        m_slotOn.push_back(index);
    for (std::size_t w = 0; w < m_packing.words(); ++w) {
        m_capacity.push_back(
            known ? m_profiles[static_cast<std::size_t>(slot.profile) * m_packing.words() + w]
                  : m_packing.guards()[w]);
    }
}

bool Grid::reach(int slots)
{
    while (count() < slots) {
        if (m_period == 0 || count() > Timeline::kMostSlots || m_day.back() > Timeline::kMostDays)
            return false;
        ++m_rounds;
        for (int i = 0; i < m_period; ++i) {
            const Slot &slot =
                m_timeline.line[static_cast<std::size_t>(m_head) + static_cast<std::size_t>(i)];
            append(slot, slot.day + m_rounds * m_timeline.repeatDays);
        }
    }
    return true;
}

int Grid::slotBeyond(int day)
{
    if (day < 0)
        return count() > 0 || reach(1) ? 0 : kNever;
    if (day > Timeline::kMostDays)
        return kNever;
    while (m_slotOn.size() <= static_cast<std::size_t>(day)) {
        if (!reach(count() + 1))
            return kNever;
    }
    return m_slotOn[static_cast<std::size_t>(day)];
}

std::span<const int> Grid::profile(int slot) const
{
    const int of = m_profileOf[static_cast<std::size_t>(slot)];
    if (of < 0)
        return {};
    return m_timeline.profiles[static_cast<std::size_t>(of)];
}

} // namespace ohmwright::plan::level
