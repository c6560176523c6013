// SPDX-License-Identifier: GPL-3.0-or-later
// How long something may take: three estimates, and numbers drawn from between them.
//
// The distribution is the one PERT uses (Malcolm, Roseboom, Clark, Fazar: Application of a
// technique for research and development program evaluation, Operations Research 7 (1959)
// 646-669): a beta distribution from least to most with its mode at the likely and the mean
// (least + 4 likely + most) / 6.
#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <vector>

namespace ohmwright::forecast {

// Minutes or days. Told in any order they count as least <= likely <= most.
struct ThreePoint
{
    int least = 0, likely = 0, most = 0;
    bool assumed = false; // least or most was not told
    [[nodiscard]] bool isFixed() const { return least == most; }
    [[nodiscard]] double mean() const { return (least + 4.0 * likely + most) / 6; }
    bool operator==(const ThreePoint &) const = default;
};

// What is assumed of an estimate that stands alone: three quarters of it if all goes well, twice if
// it does not. Common practice, no published source; shown as assumed wherever it is used.
inline constexpr double kAssumedLeast = 0.75;
inline constexpr double kAssumedMost = 2.0;

// The likely with what was told around it, and what was not, assumed; a likely of 0 has no spread.
ThreePoint threePoint(int likely, std::optional<int> least, std::optional<int> most);

// Number between 0 and 1, ends excluded, that depends on nothing but these: the same thing has the
// same luck in the same sample whatever else is in the plan (common random numbers). SplitMix64's
// finaliser (Steele, Lea, Flood, OOPSLA 2014).
inline double luck(std::uint64_t seed, std::uint64_t sample, std::uint64_t thing)
{
    std::uint64_t z = seed + sample * 0x9e3779b97f4a7c15ULL + thing * 0xd1342543de82ef95ULL;
    z = (z ^ (z >> 30U)) * 0xbf58476d1ce4e5b9ULL;
    z = (z ^ (z >> 27U)) * 0x94d049bb133111ebULL;
    z ^= z >> 31U;
    z = (z ^ (z >> 30U)) * 0xbf58476d1ce4e5b9ULL;
    z = (z ^ (z >> 27U)) * 0x94d049bb133111ebULL;
    z ^= z >> 31U;
    return (static_cast<double>(z >> 12U) + 0.5) * 0x1p-52;
}

// Inverse of a three-point estimate's distribution function, from a table; those of equal shape
// share one. Within 0.1 % of the range from least to most, but for the outermost thousandth at
// either end.
class Quantiles
{
public:
    explicit Quantiles(const ThreePoint &estimate);
    // `u` from 0 to 1. The estimate itself where it has no spread.
    [[nodiscard]] double at(double u) const
    {
        if (!m_table)
            return m_least;
        const double place = u * kCells;
        const auto cell = static_cast<std::size_t>(place);
        const float *const from = m_table->data() + (cell < kCells ? cell : kCells - 1);
        const double part = place - static_cast<double>(cell);
        return m_least + m_range * (from[0] + part * static_cast<double>(from[1] - from[0]));
    }
    [[nodiscard]] bool isFixed() const { return !m_table; }

private:
    static constexpr std::size_t kCells = 1024;
    using Shape = std::vector<float>; // kCells + 1 fractions of the range
    static std::shared_ptr<const Shape> shapeOf(double mode);

    double m_least = 0, m_range = 0;
    std::shared_ptr<const Shape> m_table;
};

} // namespace ohmwright::forecast
