// SPDX-License-Identifier: GPL-3.0-or-later
// The passes: one activity after the other, from the front or from the back.
#include "core/plan/level_planner.h"

#include <algorithm>

namespace ohmwright::plan::level {

namespace {

int sum(int day, int days)
{
    return day > kNever - days ? kNever : day + days;
}

} // namespace

void Planner::reset()
{
    const auto slots = static_cast<std::size_t>(m_touched);
    const std::size_t blocks = (slots + kBits - 1) / kBits;
    std::copy_n(m_grid.capacity(), slots * m_words, m_free.begin());
    std::fill_n(m_lastTaking.begin(), blocks, -1);
    std::copy_n(m_allOpen.begin(), blocks * kMostPlanes, m_open.begin());
    std::copy_n(m_allSome.begin(), (blocks + kBits - 1) / kBits * kMostPlanes, m_some.begin());
    m_takings.clear();
    m_touched = 0;
}

bool Planner::grow(int slots)
{
    const bool reached = m_grid.reach(slots);
    catchUp();
    return reached;
}

// The state of a pass gets what the grid has had laid out since.
void Planner::catchUp()
{
    const auto known = static_cast<std::size_t>(m_known);
    const auto count = static_cast<std::size_t>(m_grid.count());
    const std::size_t blocks = (count + kBits - 1) / kBits;
    const Word *const capacity = m_grid.capacity();
    m_free.insert(m_free.end(), capacity + known * m_words, capacity + count * m_words);
    m_lastTaking.resize(blocks, -1);
    m_allOpen.resize(blocks * kMostPlanes, 0);
    m_open.resize(blocks * kMostPlanes, 0);
    const std::size_t ofBlocks = (blocks + kBits - 1) / kBits;
    m_allSome.resize(ofBlocks * kMostPlanes, 0);
    m_some.resize(ofBlocks * kMostPlanes, 0);
    for (const Paced &paced : m_paced) {
        const Packing::Field &field = m_grid.packing().fields()[paced.resource];
        for (std::size_t slot = known; slot < count; ++slot) {
            const Word there = (capacity[slot * m_words + field.word] & field.mask) >> field.shift;
            for (std::size_t i = 0; i < there; ++i) {
                const std::size_t block = slot / kBits;
                const std::size_t at = block * kMostPlanes + paced.plane + i;
                m_allOpen[at] |= Word{1} << slot % kBits;
                m_open[at] |= Word{1} << slot % kBits;
                const std::size_t some = block / kBits * kMostPlanes + paced.plane + i;
                m_allSome[some] |= Word{1} << block % kBits;
                m_some[some] |= Word{1} << block % kBits;
            }
        }
    }
    m_known = m_grid.count();
}

template <std::size_t kWords, Planner::Trace kTrace>
Instant Planner::forwardOf(std::span<const std::int32_t> order, const Sample &sample)
{
    const int *const work = sample.work.empty() ? m_work.data() : sample.work.data();
    const int *const waiting = sample.waitDays.empty() ? m_waitDays.data() : sample.waitDays.data();
    const int *const releases =
        sample.releaseDay.empty() ? m_releaseDay.data() : sample.releaseDay.data();
    Instant end = 0;
    for (const std::int32_t index : order) {
        const auto a = static_cast<std::size_t>(index);
        const int release = std::clamp(releases[a], 0, Timeline::kMostDays);
        const int wait = std::max(waiting[a], 0);
        const int slots = std::max(work[a], 0);
        m_passWork[a] = slots;
        m_passWait[a] = wait;

        Instant from = instant(release, slotOn(release));
        Driver driver{release > 0 ? DrivenBy::Release : DrivenBy::Nothing, -1};
        for (const std::int32_t before : m_before[a]) {
            const Instant over = m_ready[static_cast<std::size_t>(before)];
            if (over > from || (over == from && driver.by != DrivenBy::Link)) {
                from = over;
                driver = {DrivenBy::Link, before};
            }
        }

        Place place{slotOf(from), slotOf(from)};
        int startDay = dayOf(from);
        int finishDay = startDay;
        if (slots > 0) {
            place = this->place<kWords, kTrace>(a, slots, slotOf(from));
            if (place.start == kNever) {
                startDay = finishDay = kNever;
            } else {
                startDay = m_grid.day()[place.start];
                finishDay = m_grid.day()[place.finish - 1];
                m_touched = std::max(m_touched, place.finish);
                if (kTrace == Trace::On && place.start > slotOf(from)) {
                    const int first = m_lastBlock < 0 ? slotOf(from) : m_lastBlock;
                    const int until = m_lastBlock < 0 ? place.start : m_lastBlock + 1;
                    const std::int32_t by = blocker(first, until, demandOf(a));
                    if (by >= 0)
                        driver = {DrivenBy::Resource, by};
                }
            }
        }
        const int readyDay = sum(finishDay, wait);
        int readySlot = place.finish;
        if (wait > 0 && readySlot != kNever)
            readySlot = std::max(readySlot, slotOn(readyDay));
        m_plan.start[a] = place.start;
        m_plan.finish[a] = place.finish;
        m_plan.startDay[a] = startDay;
        m_plan.finishDay[a] = finishDay;
        m_plan.readyDay[a] = readyDay;
        m_plan.driver[a] = driver;
        m_ready[a] = instant(readyDay, readySlot);
        end = std::max(end, m_ready[a]);
    }
    m_plan.end = slotOf(end);
    m_plan.endDay = dayOf(end);
    return end;
}

template <Planner::Trace kTrace>
Instant Planner::forward(std::span<const std::int32_t> order, const Sample &sample)
{
    reset();
    std::ranges::fill(m_plan.interrupter, -1);
    std::ranges::fill(m_plan.broken, 0);
    return m_words == 1 ? forwardOf<1, kTrace>(order, sample) : forwardOf<0, kTrace>(order, sample);
}

template Instant Planner::forward<Planner::Trace::Off>(std::span<const std::int32_t>,
                                                       const Sample &);
template Instant Planner::forward<Planner::Trace::On>(std::span<const std::int32_t>,
                                                      const Sample &);

Instant Planner::alone(std::span<const std::int32_t> order)
{
    Instant end = 0;
    m_alone = true;
    std::ranges::fill(m_plan.interrupter, -1);
    std::ranges::fill(m_plan.broken, 0);
    for (std::size_t i = 0; i < order.size(); ++i) {
        reset();
        end = std::max(end, forwardOf<0, Trace::Off>(order.subspan(i, 1), {}));
    }
    m_alone = false;
    return end;
}

template <std::size_t kWords>
void Planner::backwardOf(std::span<const std::int32_t> order, int endDay, int endSlot, From from)
{
    const bool fromPlan = from == From::Plan;
    for (const std::int32_t index : order) {
        const auto a = static_cast<std::size_t>(index);
        const int wait = m_passWait[a];
        int limit = endSlot;
        int lastDay = endDay - wait;
        for (const std::int32_t after : m_next[a]) {
            limit = std::min(limit, m_lateStart[static_cast<std::size_t>(after)]);
            lastDay = std::min(lastDay, m_lateStartDay[static_cast<std::size_t>(after)] - wait);
        }
        m_lateStart[a] = fromPlan ? m_plan.start[a] : 0;
        m_lateStartDay[a] = fromPlan ? m_plan.startDay[a] : 0;
        if (lastDay < m_lateStartDay[a])
            continue;
        limit = std::min({limit, slotOn(lastDay + 1), m_known});
        if (m_passWork[a] == 0) {
            m_lateStart[a] = std::max(m_lateStart[a], limit);
            m_lateStartDay[a] = lastDay;
            continue;
        }
        const int floor = fromPlan ? m_plan.start[a] + 1 : 0;
        if (m_manner[a] == Manner::Split || m_plan.broken[a])
            placeLate<kWords>(a, limit, floor);
        else
            placeLateTogether<kWords>(a, limit, floor);
        m_lateStartDay[a] = m_known > 0 ? m_grid.day()[m_lateStart[a]] : 0;
    }
}

void Planner::backward(std::span<const std::int32_t> order, int endDay, int endSlot, From from)
{
    reset();
    if (m_words == 1)
        backwardOf<1>(order, endDay, endSlot, from);
    else
        backwardOf<0>(order, endDay, endSlot, from);
}

} // namespace ohmwright::plan::level
