// SPDX-License-Identifier: GPL-3.0-or-later
// Orders in which to plan activities, from the network alone: priority rules, and drawing by lot
// around them.
//
// Lengths are in days with fractions: work counts as many days as the slots that come again take
// for it on average, without looking at resources.
#pragma once

#include "core/plan/level_planner.h"
#include "core/plan/levelling.h"

#include <cstdint>
#include <vector>

namespace ohmwright::plan {

// R. Kolisch, "Efficient priority rules for the resource-constrained project scheduling problem",
// Journal of Operations Management 14 (1996) 179-192, compares these and others.
enum class PriorityRule {
    LatestFinish,    // the least latest finish first
    MostSuccessors,  // the most activities that come after it, directly or not, first
    LeastSlack,      // the least difference of latest and earliest start first
    LongestWorkload, // the most work times demand, its own and its successors', first
};

namespace level {

// Numbers by lot, the same everywhere for the same seed (splitmix64: G. L. Steele, D. Lea, C. H.
// Flood, OOPSLA 2014, 453-472).
class Lot
{
public:
    explicit Lot(std::uint64_t seed) : m_state(seed) {}
    std::uint64_t next()
    {
        std::uint64_t z = m_state += 0x9e37'79b9'7f4a'7c15U;
        z = (z ^ z >> 30) * 0xbf58'476d'1ce4'e5b9U;
        z = (z ^ z >> 27) * 0x94d0'49bb'1331'11ebU;
        return z ^ z >> 31;
    }
    // 0 … bound - 1; bound at least 1. The bias is below bound / 2^32.
    std::uint32_t below(std::uint32_t bound)
    {
        return static_cast<std::uint32_t>((next() >> 32) * bound >> 32);
    }
    double unit() { return static_cast<double>(next() >> 11) * 0x1p-53; } // 0 … below 1

private:
    std::uint64_t m_state;
};

// Per activity; less comes first.
std::vector<double> ruleValues(const Planner &planner, PriorityRule rule);
std::vector<std::int32_t> byRule(Planner &planner, PriorityRule rule);

// Draws one order: of those whose predecessors are in, each is taken with a probability that grows
// with its regret, the amount by which its value is better than the worst of them (regret based
// biased random sampling, A. Drexl, Management Science 37 (1991) 1590-1602, with exponent 1 and
// the least regret, made 1 of the range of values, added to each).
void drawOrder(const Planner &planner, const std::vector<double> &values, Lot &lot,
               std::vector<std::int32_t> &order);

// For pushing the last plan back: the latest finish first; where finishes are the same, the one
// later in `order`.
void latestFinishFirst(const Planner &planner, std::span<const std::int32_t> order,
                       std::vector<std::int32_t> &backwards);

} // namespace level
} // namespace ohmwright::plan
