// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/plan/levelling.h"

#include "core/plan/level_planner.h"
#include "core/plan/level_rules.h"

#include <QtGlobal>

#include <algorithm>

namespace ohmwright::plan {

struct Levelling::Inside
{
    explicit Inside(const Workload &workload)
        : planner(workload), order(level::byRule(planner, PriorityRule::LatestFinish)),
          backwards(order.size())
    {
        late.startDay.resize(order.size());
        late.floatDays.resize(order.size());
    }

    level::Planner planner;
    std::vector<std::int32_t> order, backwards;
    Latest late;
};

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
    return m_in->planner.count();
}
std::span<const std::int32_t> Levelling::order() const
{
    return m_in->order;
}
const Levelled &Levelling::plan() const
{
    return m_in->planner.plan();
}
std::vector<std::vector<int>> Levelling::workedSlots() const
{
    return m_in->planner.workedSlots();
}

const Levelled &Levelling::pass(const Sample &sample, Traced traced)
{
    for (const std::span<const int> &of : {sample.work, sample.waitDays, sample.releaseDay})
        Q_ASSERT_X(of.empty() || of.size() == activityCount(), "plan::Levelling::pass",
                   "a sample of another size");
    using level::Planner;
    if (traced == Traced::Yes)
        m_in->planner.forward<Planner::Trace::On>(m_in->order, sample);
    else
        m_in->planner.forward<Planner::Trace::Off>(m_in->order, sample);
    return plan();
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
    m_in->order = m_in->planner.feasible(wanted);
}

const Latest &Levelling::latest(int endDay)
{
    level::Planner &planner = m_in->planner;
    Latest &late = m_in->late;
    const Levelled &made = plan();
    if (made.endDay == kNever) {
        late.startDay = made.startDay;
        std::fill(late.floatDays.begin(), late.floatDays.end(), 0);
        return late;
    }
    level::latestFinishFirst(planner, m_in->order, m_in->backwards);
    planner.backward(m_in->backwards, std::clamp(endDay, made.endDay, Timeline::kMostDays), kNever,
                     level::Planner::From::Plan);
    const int early = std::max(made.endDay - endDay, 0);
    const int *const day = planner.grid().day();
    for (std::size_t a = 0; a < activityCount(); ++a) {
        late.startDay[a] = planner.lateStartDay()[a];
        const int start = made.start[a];
        if (start == made.finish[a] && start > 0 && day[start - 1] == made.startDay[a])
            late.startDay[a] =
                std::clamp(day[planner.lateStart()[a] - 1], made.startDay[a], late.startDay[a]);
        late.startDay[a] -= early;
        late.floatDays[a] = late.startDay[a] - made.startDay[a];
    }
    return late;
}

std::vector<LevelTrouble> Levelling::troubles() const
{
    Levelling copy(*this);
    const Levelled &made = copy.pass();
    const level::Planner &planner = copy.m_in->planner;
    std::vector<LevelTrouble> result;
    for (std::size_t a = 0; a < activityCount(); ++a) {
        const std::span<const std::int32_t> before = planner.before()[a];
        const bool behind = std::any_of(before.begin(), before.end(), [&made](std::int32_t b) {
            return made.startDay[static_cast<std::size_t>(b)] == kNever;
        });
        using Kind = LevelTrouble::Kind;
        if (planner.inLoop(a))
            result.push_back({Kind::InLoop, a});
        if (planner.work()[a] > 0 && !planner.hasSlot(a))
            result.push_back({Kind::NeverEnough, a});
        else if (made.startDay[a] == kNever && behind)
            result.push_back({Kind::BehindNever, a});
        else if (made.startDay[a] == kNever || made.broken[a])
            result.push_back({Kind::TooLong, a});
    }
    return result;
}

} // namespace ohmwright::plan
