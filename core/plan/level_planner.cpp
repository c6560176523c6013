// SPDX-License-Identifier: GPL-3.0-or-later
// What a workload comes to before any pass: demands packed, links, how much fits in one go.
#include "core/plan/level_planner.h"

#include <algorithm>
#include <bit>
#include <numeric>
#include <utility>

namespace ohmwright::plan::level {

namespace {

// Greatest capacity of each resource in any profile.
std::vector<int> greatestOf(const Timeline &timeline)
{
    std::vector<int> greatest;
    for (const std::vector<int> &profile : timeline.profiles) {
        greatest.resize(std::max(greatest.size(), profile.size()), 0);
        for (std::size_t r = 0; r < profile.size(); ++r)
            greatest[r] = std::max(greatest[r], profile[r]);
    }
    return greatest;
}

} // namespace

Planner::Planner(const Workload &workload)
    : m_grid(workload.timeline, greatestOf(workload.timeline)), m_words(m_grid.packing().words()),
      m_guards(m_grid.packing().guards().begin(), m_grid.packing().guards().end()),
      m_before(workload.activities)
{
    const std::size_t count = workload.activities.size();
    for (const Activity &activity : workload.activities) {
        m_work.push_back(std::max(activity.work, 0));
        m_waitDays.push_back(std::max(activity.waitDays, 0));
        m_releaseDay.push_back(std::max(activity.releaseDay, 0));
        m_manner.push_back(activity.manner);
    }
    packDemands(workload);
    choosePaced();

    m_inLoop.assign(count, 0);
    std::vector<std::int32_t> indices(count);
    std::iota(indices.begin(), indices.end(), 0);
    feasibleOrder(m_before, indices, m_inLoop);
    m_next = m_before.turned();

    for (std::vector<int> *of :
         {&m_passWork, &m_passWait, &m_lateStart, &m_lateStartDay, &m_plan.start, &m_plan.finish,
          &m_plan.startDay, &m_plan.finishDay, &m_plan.readyDay})
        of->assign(count, 0);
    m_ready.assign(count, 0);
    m_plan.driver.assign(count, {});
    m_plan.interrupter.assign(count, -1);
    m_plan.broken.assign(count, 0);
    catchUp();
    for (std::size_t a = 0; a < count; ++a) {
        m_together.push_back(stretch(a, m_manner[a]));
        m_inPieces.push_back(stretch(a, Manner::Split));
    }
}

void Planner::packDemands(const Workload &workload)
{
    const std::size_t count = workload.activities.size();
    const std::vector<int> greatest = greatestOf(workload.timeline);
    m_demand.assign(count * m_words, 0);
    m_heldDemand.assign(count * m_words, 0);
    m_holds.assign(count, 0);
    m_tooMuch.assign(count, 0);
    for (std::size_t a = 0; a < count; ++a) {
        const std::vector<int> &demand = workload.activities[a].demand;
        std::vector<int> held(demand.size(), 0);
        for (std::size_t r = 0; r < demand.size(); ++r) {
            if (r < workload.held.size() && workload.held[r])
                held[r] = demand[r];
            if (demand[r] > (r < greatest.size() ? greatest[r] : 0))
                m_tooMuch[a] = 1;
        }
        m_grid.packing().pack(demand, m_demand.data() + a * m_words);
        m_grid.packing().pack(held, m_heldDemand.data() + a * m_words);
        m_holds[a] = std::any_of(heldBy(a), heldBy(a) + m_words, [](Word w) { return w != 0; });
    }
}

// The resources with the most work behind them get bits per slot, those of which there are many
// do not; none do where all work is unbroken, which looks at every slot of its stretch anyhow.
void Planner::choosePaced()
{
    const std::vector<Packing::Field> &fields = m_grid.packing().fields();
    const auto demanded = [&fields](const Word *demand, std::size_t r) {
        return static_cast<int>((demand[fields[r].word] & fields[r].mask) >> fields[r].shift);
    };
    std::vector<std::int64_t> load(fields.size(), 0);
    for (std::size_t a = 0; a < count(); ++a) {
        for (std::size_t r = 0; r < fields.size() && m_manner[a] != Manner::Unbroken; ++r)
            load[r] += demanded(demandOf(a), r) > 0 ? m_work[a] : 0;
    }
    std::vector<std::size_t> most(fields.size());
    std::iota(most.begin(), most.end(), std::size_t{0});
    std::stable_sort(most.begin(), most.end(),
                     [&load](std::size_t a, std::size_t b) { return load[a] > load[b]; });
    std::size_t used = 0;
    for (const std::size_t r : most) {
        const auto planes = static_cast<std::size_t>(fields[r].greatest);
        if (load[r] == 0 || planes > kMostPlanesEach || used + planes > kMostPlanes)
            continue;
        m_paced.push_back({r, static_cast<std::uint8_t>(used), static_cast<std::uint8_t>(planes)});
        used += planes;
    }

    m_pacedOf.assign(count(), {});
    for (std::size_t a = 0; a < count(); ++a) {
        PacedOf &of = m_pacedOf[a];
        std::vector<char> isPaced(fields.size(), 0);
        for (const bool held : {true, false}) {
            for (const Paced &paced : m_paced) {
                isPaced[paced.resource] = 1;
                const int amount = demanded(demandOf(a), paced.resource);
                if (amount == 0 || held != (demanded(heldBy(a), paced.resource) > 0))
                    continue;
                const auto plane = static_cast<std::uint8_t>(paced.plane + amount - 1);
                const auto end = static_cast<std::uint8_t>(paced.plane + paced.planes);
                of.needs[of.count++] = {plane, paced.plane, end};
                if (held)
                    ++of.heldCount;
            }
        }
        for (std::size_t r = 0; r < fields.size(); ++r) {
            of.exact = of.exact && (isPaced[r] || demanded(demandOf(a), r) == 0);
            of.heldExact = of.heldExact && (isPaced[r] || demanded(heldBy(a), r) == 0);
        }
    }
}

// The most work the activity can do in one go, in that manner, in the slots that come again. Two
// rounds of them are looked at, since a stretch may lie across the seam; one longer than a round
// has no end.
int Planner::stretch(std::size_t activity, Manner manner) const
{
    const int period = m_grid.period();
    const bool split = manner == Manner::Split;
    const bool sitting = manner == Manner::OneSitting;
    int most = 0;
    int worked = 0;
    int length = 0;
    for (int i = 0; i < 2 * period; ++i) {
        const int slot = m_grid.head() + i % period;
        if (sitting && (i == period || m_grid.sittingBegin()[slot] == slot))
            worked = length = 0;
        const bool works = couldFit(slot, demandOf(activity));
        if (works || (split && couldFit(slot, heldBy(activity)))) {
            worked += works ? 1 : 0;
            ++length;
        } else {
            worked = length = 0;
        }
        if (length >= period && worked > 0 && !sitting)
            return kNever;
        most = std::max(most, worked);
    }
    return most;
}

Instant Planner::poured()
{
    Instant latest = 0;
    for (const Packing::Field &field : m_grid.packing().fields()) {
        const auto amount = [&field](const Word *words) {
            return static_cast<std::int64_t>((words[field.word] & field.mask) >> field.shift);
        };
        std::int64_t missing = 0;
        for (std::size_t a = 0; a < count(); ++a)
            missing += amount(demandOf(a)) * m_work[a];
        const Word *const capacity = m_grid.capacity();
        std::int64_t perRound = 0;
        for (int slot = m_grid.head(); slot < m_grid.head() + m_grid.period(); ++slot)
            perRound += amount(capacity + static_cast<std::size_t>(slot) * m_words);
        int slot = 0;
        for (; missing > 0 && (slot < m_known || (perRound > 0 && grow(slot + 1))); ++slot)
            missing -= amount(m_grid.capacity() + static_cast<std::size_t>(slot) * m_words);
        if (slot > 0 && missing <= 0)
            latest = std::max(latest, instant(m_grid.day()[slot - 1], slot));
    }
    return latest;
}

bool Planner::couldFit(int slot, const Word *wanted) const
{
    const Word *const there = m_grid.capacity() + static_cast<std::size_t>(slot) * m_words;
    for (std::size_t w = 0; w < m_words; ++w) {
        if (((there[w] - wanted[w]) & m_guards[w]) != m_guards[w])
            return false;
    }
    return true;
}

bool Planner::hasSlot(std::size_t activity) const
{
    for (int slot = 0; slot < m_grid.head() + m_grid.period() && !m_tooMuch[activity]; ++slot) {
        if (couldFit(slot, demandOf(activity)))
            return true;
    }
    return false;
}

double Planner::load(std::size_t activity) const
{
    double shares = 0;
    for (const Packing::Field &field : m_grid.packing().fields()) {
        const Word amount = (demandOf(activity)[field.word] & field.mask) >> field.shift;
        shares += field.greatest == 0 ? 0 : static_cast<double>(amount) / field.greatest;
    }
    return shares * m_work[activity];
}

std::vector<std::int32_t> Planner::feasible(std::span<const std::int32_t> priority)
{
    return feasibleOrder(m_before, priority, m_inLoop);
}

std::vector<std::vector<int>> Planner::workedSlots() const
{
    std::vector<std::vector<int>> result(count());
    for (std::size_t block = 0; block < m_lastTaking.size(); ++block) {
        for (std::int32_t t = m_lastTaking[block]; t >= 0;
             t = m_takings[static_cast<std::size_t>(t)].earlier) {
            const Taking &taking = m_takings[static_cast<std::size_t>(t)];
            for (Word bits = taking.works() ? taking.taken : 0; bits != 0; bits &= bits - 1)
                result[static_cast<std::size_t>(taking.by())].push_back(
                    static_cast<int>(block) * kBits + std::countr_zero(bits));
        }
    }
    return result;
}

} // namespace ohmwright::plan::level
