// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/forecast/spread.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <mutex>

namespace ohmwright::forecast {

ThreePoint threePoint(int likely, std::optional<int> least, std::optional<int> most)
{
    ThreePoint estimate;
    estimate.likely = std::max(0, likely);
    estimate.assumed = estimate.likely > 0 && (!least || !most);
    const auto times = [&](double factor) {
        return static_cast<int>(std::lround(estimate.likely * factor));
    };
    estimate.least = std::clamp(least.value_or(times(kAssumedLeast)), 0, estimate.likely);
    estimate.most = std::max(most.value_or(times(kAssumedMost)), estimate.likely);
    return estimate;
}

Quantiles::Quantiles(const ThreePoint &estimate) : m_least(estimate.least)
{
    if (estimate.isFixed())
        return;
    m_range = estimate.most - estimate.least;
    m_table = shapeOf((estimate.likely - estimate.least) / m_range);
}

// The density of the beta distribution with parameters 1 + 4 mode and 5 - 4 mode, summed by the
// midpoint rule over ever finer steps towards the ends, then turned round.
std::shared_ptr<const Quantiles::Shape> Quantiles::shapeOf(double mode)
{
    static std::mutex guard;
    static std::map<double, std::shared_ptr<const Shape>> known;
    const std::lock_guard lock(guard);
    if (const auto found = known.find(mode); found != known.end())
        return found->second;
    constexpr std::size_t kSteps = 4096;
    const double low = 4 * mode;
    const double high = 4 - 4 * mode;
    std::vector<double> sums(kSteps + 1, 0);
    for (std::size_t i = 0; i < kSteps; ++i) {
        const double x = (static_cast<double>(i) + 0.5) / kSteps;
        sums[i + 1] = sums[i] + std::pow(x, low) * std::pow(1 - x, high);
    }
    auto shape = std::make_shared<Shape>(kCells + 1);
    std::size_t at = 0;
    for (std::size_t cell = 0; cell <= kCells; ++cell) {
        const double wanted = sums[kSteps] * static_cast<double>(cell) / kCells;
        while (at + 1 < kSteps && sums[at + 1] < wanted)
            ++at;
        const double part = (wanted - sums[at]) / (sums[at + 1] - sums[at]);
        (*shape)[cell] =
            static_cast<float>((static_cast<double>(at) + std::clamp(part, 0.0, 1.0)) / kSteps);
    }
    if (known.size() > 4096) // a book of nothing but different shapes, edited for days
        known.clear();
    known.emplace(mode, shape);
    return shape;
}

} // namespace ohmwright::forecast
