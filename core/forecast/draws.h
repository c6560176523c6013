// SPDX-License-Identifier: GPL-3.0-or-later
// How long everything takes and waits in one sample, and how often what fails is done again.
#pragma once

#include "core/forecast/work_plan.h"

#include <cstdint>
#include <vector>

namespace ohmwright::forecast {

// Of one sample.
struct Drawn
{
    std::vector<int> work, waitDays; // per activity: slots, days
    std::vector<int> failures;       // per risk: how often in a row
};

// What is drawn depends on the seed, the sample and the activity's key alone: the same luck for the
// same thing in every plan (common random numbers).
class Draws
{
public:
    Draws(const WorkPlan &plan, std::uint64_t seed);
    void draw(std::uint64_t sample, Drawn &into) const;
    [[nodiscard]] std::size_t activityCount() const { return m_sure.work.size(); }

private:
    struct Varied // what has a spread
    {
        std::size_t activity = 0;
        std::uint64_t thing = 0; // for luck()
        Quantiles minutesOrDays;
    };
    struct Fails
    {
        std::uint64_t thing = 0;
        double chance = 0;
    };
    struct DoneAgain // an activity that happens as often as another fails
    {
        std::size_t activity = 0;
        std::size_t risk = 0;
    };

    std::uint64_t m_seed;
    Drawn m_sure; // what has no spread, the same in every sample; of the others the least
    std::vector<Varied> m_work, m_wait;
    std::vector<Fails> m_fails; // per risk
    std::vector<DoneAgain> m_again;
};

// Minutes in slots of work; what takes any time at all takes one.
int slotsOf(double minutes);

} // namespace ohmwright::forecast
