// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/forecast/draws.h"

#include "core/forecast/hours.h"

#include <algorithm>
#include <cmath>

namespace ohmwright::forecast {

namespace {

constexpr int kMostRepeats = 20; // a test that fails more often than that in one sample

// FNV-1a over the key.
std::uint64_t thingOf(const QString &key)
{
    std::uint64_t hash = 0xcbf29ce484222325ULL;
    for (const QChar c : key)
        hash = (hash ^ c.unicode()) * 0x100000001b3ULL;
    return hash;
}

int nearest(double value)
{
    return static_cast<int>(std::lround(value));
}

} // namespace

int slotsOf(double minutes)
{
    return minutes <= 0 ? 0 : std::max(1, nearest(minutes / kSlotMinutes));
}

Draws::Draws(const WorkPlan &plan, std::uint64_t seed) : m_plan(plan), m_seed(seed)
{
    for (const Activity &a : plan.activities) {
        m_things.push_back(thingOf(a.key));
        m_work.emplace_back(a.work);
        m_wait.emplace_back(a.wait);
        m_sure.work.push_back(slotsOf(m_work.back().at(0)));
        m_sure.waitDays.push_back(nearest(m_wait.back().at(0)));
    }
    for (const Risk &risk : plan.risks)
        m_riskThings.push_back(
            thingOf(QStringLiteral("fails:") + plan.activities[risk.activity].key));
}

void Draws::draw(std::uint64_t sample, Drawn &into) const
{
    into.work.resize(activityCount());
    into.waitDays.resize(activityCount());
    const auto repeats = [&](std::size_t risk) {
        // failures in a row: geometric
        const double chance = m_plan.risks[risk].chance;
        const double u = luck(m_seed, sample, m_riskThings[risk]);
        return chance <= 0
                   ? 0
                   : std::min(kMostRepeats, static_cast<int>(std::log(u) / std::log(chance)));
    };
    for (std::size_t i = 0; i < activityCount(); ++i) {
        const Quantiles &work = m_work[i];
        const Quantiles &wait = m_wait[i];
        const std::uint64_t thing = m_things[i];
        into.work[i] =
            work.isFixed() ? m_sure.work[i] : slotsOf(work.at(luck(m_seed, sample, thing)));
        into.waitDays[i] =
            wait.isFixed() ? m_sure.waitDays[i] : nearest(wait.at(luck(m_seed, sample, thing + 1)));
        if (const auto &risk = m_plan.activities[i].risk) {
            const int times = repeats(*risk);
            into.work[i] *= times;
            into.waitDays[i] *= times;
        }
    }
}

} // namespace ohmwright::forecast
