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

// std::lround calls the library, millions of times a forecast; what is told here is never negative.
int nearest(double value)
{
    return static_cast<int>(value + 0.5); // NOLINT(bugprone-incorrect-roundings)
}

int roundedSlots(double minutes)
{
    return minutes <= 0 ? 0 : std::max(1, nearest(minutes / kSlotMinutes));
}

} // namespace

int slotsOf(double minutes)
{
    return roundedSlots(minutes);
}

Draws::Draws(const WorkPlan &plan, std::uint64_t seed) : m_seed(seed)
{
    for (std::size_t i = 0; i < plan.activities.size(); ++i) {
        const Activity &a = plan.activities[i];
        const std::uint64_t thing = thingOf(a.key);
        const Quantiles work(a.work), wait(a.wait);
        m_sure.work.push_back(slotsOf(work.at(0)));
        m_sure.waitDays.push_back(nearest(wait.at(0)));
        if (!work.isFixed())
            m_work.push_back({i, thing, work});
        if (!wait.isFixed())
            m_wait.push_back({i, thing + 1, wait});
        if (a.risk)
            m_again.push_back({i, *a.risk});
    }
    for (const Risk &risk : plan.risks)
        m_fails.push_back(
            {thingOf(QStringLiteral("fails:") + plan.activities[risk.activity].key), risk.chance});
    m_sure.failures.resize(m_fails.size());
}

void Draws::draw(std::uint64_t sample, Drawn &into) const
{
    into = m_sure;
    for (const Varied &one : m_work)
        into.work[one.activity] =
            roundedSlots(one.minutesOrDays.at(luck(m_seed, sample, one.thing)));
    for (const Varied &one : m_wait)
        into.waitDays[one.activity] =
            nearest(one.minutesOrDays.at(luck(m_seed, sample, one.thing)));
    for (std::size_t risk = 0; risk < m_fails.size(); ++risk) {
        const Fails &fails = m_fails[risk];
        if (fails.chance <= 0)
            continue;
        // failures in a row: geometric
        const double u = luck(m_seed, sample, fails.thing);
        into.failures[risk] =
            std::min(kMostRepeats, static_cast<int>(std::log(u) / std::log(fails.chance)));
    }
    for (const DoneAgain &again : m_again) {
        const int times = into.failures[again.risk];
        into.work[again.activity] *= times;
        into.waitDays[again.activity] *= times;
    }
}

} // namespace ohmwright::forecast
