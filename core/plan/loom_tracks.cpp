// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/plan/loom_tracks.h"

#include <algorithm>
#include <numeric>

namespace ohmwright::plan::loom {

namespace {

// Up to this many, a stretch is tried at every place; beyond, only swapped with its neighbours.
constexpr std::size_t kThorough = 48;
constexpr int kPasses = 8;

bool overlap(const Stretch &left, const Stretch &right, double clearance)
{
    return left.lo < right.hi + clearance && right.lo < left.hi + clearance;
}

// What crosses when `low` lies on a lower track than `high`.
int crossingsWhen(const Stretch &low, const Stretch &high)
{
    int sum = 0;
    for (const Stretch::Join &join : low.joins)
        sum += join.side > 0 && join.at > high.lo && join.at < high.hi ? 1 : 0;
    for (const Stretch::Join &join : high.joins)
        sum += join.side < 0 && join.at > low.lo && join.at < low.hi ? 1 : 0;
    return sum;
}

std::vector<std::size_t> untangled(const std::vector<Stretch> &stretches)
{
    const std::size_t count = stretches.size();
    std::vector<std::size_t> order(count);
    std::iota(order.begin(), order.end(), std::size_t{0});
    // What joins from lower tracks starts out low.
    std::vector<double> lean(count, 0);
    for (std::size_t at = 0; at < count; ++at) {
        for (const Stretch::Join &join : stretches[at].joins)
            lean[at] += join.side;
    }
    std::stable_sort(order.begin(), order.end(),
                     [&](std::size_t left, std::size_t right) { return lean[left] < lean[right]; });
    std::vector<int> gain(count * count, 0); // by having the first lower than the second
    for (std::size_t left = 0; left < count; ++left) {
        for (std::size_t right = left + 1; right < count; ++right) {
            const int change = crossingsWhen(stretches[right], stretches[left]) -
                               crossingsWhen(stretches[left], stretches[right]);
            gain[left * count + right] = change;
            gain[right * count + left] = -change;
        }
    }
    bool better = count > 1;
    for (int pass = 0; better && pass < kPasses; ++pass) {
        better = false;
        if (count > kThorough) {
            for (std::size_t at = 0; at + 1 < count; ++at) {
                if (gain[order[at + 1] * count + order[at]] > 0) {
                    std::swap(order[at], order[at + 1]);
                    better = true;
                }
            }
            continue;
        }
        for (std::size_t from = 0; from < count; ++from) {
            const std::size_t moved = order[from];
            int most = 0;
            std::size_t best = from;
            int sum = 0;
            for (std::size_t to = from; to-- > 0;) {
                sum += gain[moved * count + order[to]];
                if (sum > most) {
                    most = sum;
                    best = to;
                }
            }
            sum = 0;
            for (std::size_t to = from + 1; to < count; ++to) {
                sum += gain[order[to] * count + moved];
                if (sum > most) {
                    most = sum;
                    best = to;
                }
            }
            if (best == from)
                continue;
            better = true;
            order.erase(order.begin() + static_cast<std::ptrdiff_t>(from));
            order.insert(order.begin() + static_cast<std::ptrdiff_t>(best), moved);
        }
    }
    return order;
}

} // namespace

void Stretch::join(double at, int side)
{
    lo = joins.empty() ? at : std::min(lo, at);
    hi = joins.empty() ? at : std::max(hi, at);
    joins.push_back({at, side});
}

double layTracks(std::vector<Stretch> &stretches, double clearance)
{
    const std::vector<std::size_t> order = untangled(stretches);
    double breadth = 0;
    std::vector<double> lowest(stretches.size(), 0);
    for (std::size_t at = 0; at < order.size(); ++at) {
        const Stretch &own = stretches[order[at]];
        double track = own.width / 2;
        for (std::size_t other = 0; other < at; ++other) {
            const Stretch &below = stretches[order[other]];
            if (overlap(own, below, clearance))
                track = std::max(track, lowest[order[other]] + (own.width + below.width) / 2);
        }
        lowest[order[at]] = track;
        breadth = std::max(breadth, track + own.width / 2);
    }
    // Between the lowest and the highest track a stretch may take, it takes the middle; the order
    // and the distances hold for any such mean.
    std::vector<double> highest(stretches.size(), 0);
    for (std::size_t at = order.size(); at-- > 0;) {
        Stretch &own = stretches[order[at]];
        double track = breadth - own.width / 2;
        for (std::size_t other = at + 1; other < order.size(); ++other) {
            const Stretch &above = stretches[order[other]];
            if (overlap(own, above, clearance))
                track = std::min(track, highest[order[other]] - (own.width + above.width) / 2);
        }
        highest[order[at]] = track;
        own.track = (lowest[order[at]] + track) / 2;
    }
    return breadth;
}

} // namespace ohmwright::plan::loom
