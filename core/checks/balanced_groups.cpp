// SPDX-License-Identifier: GPL-3.0-or-later
// Over 400 lines: differencing, exchanges and branch and bound work on the same sums.
#include "core/checks/balanced_groups.h"

#include "core/quantity/invariant.h"

#include <queue>

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>
#include <utility>

namespace ohmwright {

namespace {

constexpr double kRounding = 1e-12; // shares of the mean nearer than this are the same
constexpr long kMostTrials = 3'000'000;
constexpr double kFar = std::numeric_limits<double>::infinity();

PairOfValues meanSums(const std::vector<PairOfValues> &items, std::size_t size)
{
    PairOfValues sum;
    for (const PairOfValues &item : items) {
        sum.first += item.first;
        sum.second += item.second;
    }
    const std::size_t whole = items.size() / size;
    const auto groups = static_cast<double>(whole);
    return {sum.first / groups, sum.second / groups};
}

// Shares of a group's mean sum, already weighted: after this the cost is a plain difference.
std::vector<PairOfValues> weighted(const std::vector<PairOfValues> &items, std::size_t size,
                                   double weight)
{
    const PairOfValues mean = meanSums(items, size);
    const double first = mean.first > 0 ? weight / mean.first : 0;
    const double second = mean.second > 0 ? (1 - weight) / mean.second : 0;
    std::vector<PairOfValues> shares;
    shares.reserve(items.size());
    for (const PairOfValues &item : items)
        shares.push_back({item.first * first, item.second * second});
    return shares;
}

std::vector<PairOfValues> sumsOf(const std::vector<PairOfValues> &shares, const Groups &groups)
{
    std::vector<PairOfValues> sums(groups.size());
    for (std::size_t g = 0; g < groups.size(); ++g) {
        for (const std::size_t item : groups[g]) {
            sums[g].first += shares[item].first;
            sums[g].second += shares[item].second;
        }
    }
    return sums;
}

// Least and most of sums seen.
struct Range
{
    PairOfValues least{kFar, kFar}, most{-kFar, -kFar};
    void see(const PairOfValues &sum)
    {
        least = {std::min(least.first, sum.first), std::min(least.second, sum.second)};
        most = {std::max(most.first, sum.first), std::max(most.second, sum.second)};
    }
    [[nodiscard]] double spread() const
    {
        return most.first - least.first + most.second - least.second;
    }
};

double spread(const std::vector<PairOfValues> &sums)
{
    Range range;
    for (const PairOfValues &sum : sums)
        range.see(sum);
    return sums.empty() ? 0 : range.spread();
}

double spreadWith(Range others, const PairOfValues &one, const PairOfValues &other)
{
    others.see(one);
    others.see(other);
    return others.spread();
}

Range rangeWithout(const std::vector<PairOfValues> &sums, std::size_t a, std::size_t b)
{
    Range range;
    for (std::size_t g = 0; g < sums.size(); ++g) {
        if (g != a && g != b)
            range.see(sums[g]);
    }
    return range;
}

double squares(const PairOfValues &sum, const PairOfValues &mean)
{
    const double first = sum.first - mean.first, second = sum.second - mean.second;
    return first * first + second * second;
}

PairOfValues exchanged(const PairOfValues &sum, const PairOfValues &out, const PairOfValues &in)
{
    return {sum.first - out.first + in.first, sum.second - out.second + in.second};
}

// Groups of the tuple being built by differencing, and their sums.
struct Tuple
{
    std::vector<std::pair<double, std::vector<std::size_t>>> parts; // descending
    [[nodiscard]] double difference() const { return parts.front().first - parts.back().first; }
    bool operator<(const Tuple &o) const { return difference() < o.difference(); }
};

Tuple folded(const Tuple &a, const Tuple &b)
{
    Tuple sum = a;
    const std::size_t count = a.parts.size();
    for (std::size_t i = 0; i < count; ++i) {
        const auto &other = b.parts[count - 1 - i];
        sum.parts[i].first += other.first;
        sum.parts[i].second.insert(sum.parts[i].second.end(), other.second.begin(),
                                   other.second.end());
    }
    std::stable_sort(sum.parts.begin(), sum.parts.end(),
                     [](const auto &x, const auto &y) { return x.first > y.first; });
    return sum;
}

double boundOf(std::vector<double> values, std::size_t size)
{
    std::sort(values.begin(), values.end());
    const std::size_t whole = values.size() / size;
    const auto groups = static_cast<double>(whole);
    const double mean = std::accumulate(values.begin(), values.end(), 0.0) / groups;
    const auto others = static_cast<std::ptrdiff_t>(size - 1);
    const double withSmallest =
        std::accumulate(values.end() - others, values.end(), values.front());
    const double withLargest =
        std::accumulate(values.begin(), values.begin() + others, values.back());
    return std::max(mean, withLargest) - std::min(mean, withSmallest);
}

// How many ways there are to split `items` into groups of `size` without order.
double countOfSplits(std::size_t items, std::size_t size)
{
    double count = 1;
    for (std::size_t left = items; left > size; left -= size) {
        // the first of those left takes size - 1 of the others with it
        for (std::size_t i = 1; i < size; ++i)
            count *= static_cast<double>(left - i) / static_cast<double>(i);
    }
    return count;
}

class Search
{
public:
    Search(const std::vector<PairOfValues> &shares, std::size_t size, const Groups &found)
        : m_shares(shares), m_size(size), m_best(found), m_bestCost(spread(sumsOf(shares, found))),
          m_taken(shares.size(), false)
    {
        for (const PairOfValues &share : shares) {
            m_left.first += share.first;
            m_left.second += share.second;
        }
    }

    void run() { openGroup(); }
    [[nodiscard]] const Groups &best() const { return m_best; }

private:
    // Groups that are still to come have this mean, so one is at least and one at most that.
    [[nodiscard]] double atLeast() const
    {
        const std::size_t left = m_shares.size() / m_size - m_groups.size();
        const auto open = static_cast<double>(left);
        PairOfValues least = m_least, most = m_most;
        if (open > 0) {
            const PairOfValues mean{m_left.first / open, m_left.second / open};
            least = {std::min(least.first, mean.first), std::min(least.second, mean.second)};
            most = {std::max(most.first, mean.first), std::max(most.second, mean.second)};
        }
        return most.first - least.first + most.second - least.second;
    }

    void openGroup()
    {
        const auto first = std::find(m_taken.begin(), m_taken.end(), false);
        if (first == m_taken.end()) {
            const double cost = atLeast();
            if (cost < m_bestCost) {
                m_bestCost = cost;
                m_best = m_groups;
            }
            return;
        }
        m_groups.emplace_back();
        take(static_cast<std::size_t>(first - m_taken.begin()), {});
        m_groups.pop_back();
    }

    void take(std::size_t item, PairOfValues sum)
    {
        m_taken[item] = true;
        m_groups.back().push_back(item);
        sum = {sum.first + m_shares[item].first, sum.second + m_shares[item].second};
        if (m_groups.back().size() == m_size) {
            closeGroup(sum);
        } else {
            for (std::size_t next = item + 1; next < m_shares.size(); ++next) {
                if (!m_taken[next])
                    take(next, sum);
            }
        }
        m_groups.back().pop_back();
        m_taken[item] = false;
    }

    void closeGroup(const PairOfValues &sum)
    {
        const PairOfValues least = m_least, most = m_most, left = m_left;
        m_least = {std::min(least.first, sum.first), std::min(least.second, sum.second)};
        m_most = {std::max(most.first, sum.first), std::max(most.second, sum.second)};
        m_left = {left.first - sum.first, left.second - sum.second};
        if (atLeast() < m_bestCost - kRounding)
            openGroup();
        m_least = least;
        m_most = most;
        m_left = left;
    }

    const std::vector<PairOfValues> &m_shares;
    std::size_t m_size;
    Groups m_best, m_groups;
    double m_bestCost;
    std::vector<bool> m_taken;
    PairOfValues m_least{kFar, kFar}, m_most{-kFar, -kFar}, m_left;
};

void requireWholeGroups(const std::vector<PairOfValues> &items, std::size_t size)
{
    require(size > 0 && !items.empty() && items.size() % size == 0,
            "items are split into whole groups");
}

// First the squares of what the groups are off, which every exchange changes; then the spread,
// which only the outermost groups decide.
enum class Aim { Squares, Spread };

bool isOutermost(const std::vector<PairOfValues> &sums, std::size_t g)
{
    const auto byFirst = std::minmax_element(
        sums.begin(), sums.end(),
        [](const PairOfValues &a, const PairOfValues &b) { return a.first < b.first; });
    const auto bySecond = std::minmax_element(
        sums.begin(), sums.end(),
        [](const PairOfValues &a, const PairOfValues &b) { return a.second < b.second; });
    const auto it = sums.begin() + static_cast<std::ptrdiff_t>(g);
    return it == byFirst.first || it == byFirst.second || it == bySecond.first ||
           it == bySecond.second;
}

// One pass over all pairs; whether any exchange helped.
bool swapPass(const std::vector<PairOfValues> &shares, const PairOfValues &mean, Aim aim,
              Groups &groups, std::vector<PairOfValues> &sums, long &trials)
{
    bool helped = false;
    for (std::size_t a = 0; a < groups.size(); ++a) {
        if (aim == Aim::Spread && !isOutermost(sums, a))
            continue;
        for (std::size_t b = 0; b < groups.size(); ++b) {
            if (a == b || (aim == Aim::Squares && b < a))
                continue;
            Range others;
            if (aim == Aim::Spread) {
                others = rangeWithout(sums, a, b);
                trials += static_cast<long>(sums.size());
            }
            for (std::size_t &one : groups[a]) {
                for (std::size_t &other : groups[b]) {
                    if (++trials > kMostTrials)
                        return false;
                    const PairOfValues nextA = exchanged(sums[a], shares[one], shares[other]);
                    const PairOfValues nextB = exchanged(sums[b], shares[other], shares[one]);
                    const double now = aim == Aim::Squares
                                           ? squares(sums[a], mean) + squares(sums[b], mean)
                                           : spreadWith(others, sums[a], sums[b]);
                    const double then = aim == Aim::Squares
                                            ? squares(nextA, mean) + squares(nextB, mean)
                                            : spreadWith(others, nextA, nextB);
                    if (then < now - kRounding) {
                        sums[a] = nextA;
                        sums[b] = nextB;
                        std::swap(one, other);
                        helped = true;
                    }
                }
            }
        }
    }
    return helped;
}

} // namespace

double spreadOf(const std::vector<PairOfValues> &items, const Groups &groups, double weight)
{
    if (groups.empty())
        return 0;
    return spread(sumsOf(weighted(items, groups.front().size(), weight), groups));
}

double leastSpread(const std::vector<PairOfValues> &items, std::size_t size, double weight)
{
    requireWholeGroups(items, size);
    std::vector<double> first, second;
    for (const PairOfValues &share : weighted(items, size, weight)) {
        first.push_back(share.first);
        second.push_back(share.second);
    }
    return boundOf(std::move(first), size) + boundOf(std::move(second), size);
}

double bestSmallestSum(const std::vector<double> &values, std::size_t size)
{
    require(size > 0 && !values.empty() && values.size() % size == 0,
            "items are split into whole groups");
    std::vector<double> sorted = values;
    std::sort(sorted.begin(), sorted.end());
    const std::size_t whole = sorted.size() / size;
    const auto groups = static_cast<double>(whole);
    const double mean = std::accumulate(sorted.begin(), sorted.end(), 0.0) / groups;
    const auto others = static_cast<std::ptrdiff_t>(size - 1);
    return std::min(mean, std::accumulate(sorted.end() - others, sorted.end(), sorted.front()));
}

Groups balancedDifferencing(const std::vector<PairOfValues> &items, std::size_t size, double weight)
{
    requireWholeGroups(items, size);
    const std::vector<PairOfValues> shares = weighted(items, size, weight);
    const auto key = [&shares](std::size_t i) {
        return shares[i].first + shares[i].second;
    };
    std::vector<std::size_t> order(items.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(),
                     [&key](std::size_t a, std::size_t b) { return key(a) > key(b); });

    // one tuple for each place in a group: the largest, the next largest, …
    const std::size_t count = items.size() / size;
    std::priority_queue<Tuple> tuples;
    for (std::size_t start = 0; start < order.size(); start += count) {
        Tuple tuple;
        for (std::size_t i = start; i < start + count; ++i)
            tuple.parts.push_back({key(order[i]), {order[i]}});
        tuples.push(std::move(tuple));
    }
    while (tuples.size() > 1) {
        const Tuple largest = tuples.top();
        tuples.pop();
        const Tuple next = tuples.top();
        tuples.pop();
        tuples.push(folded(largest, next));
    }
    Groups groups;
    for (const auto &part : tuples.top().parts)
        groups.push_back(part.second);
    return groups;
}

Groups improvedBySwaps(const std::vector<PairOfValues> &items, Groups groups, double weight)
{
    if (groups.size() < 2)
        return groups;
    const std::size_t size = groups.front().size();
    const std::vector<PairOfValues> shares = weighted(items, size, weight);
    const PairOfValues mean = meanSums(shares, size);
    std::vector<PairOfValues> sums = sumsOf(shares, groups);
    const Groups given = groups;
    const double before = spread(sums);
    long trials = 0;
    for (const Aim aim : {Aim::Squares, Aim::Spread}) {
        while (swapPass(shares, mean, aim, groups, sums, trials)) {
        }
    }
    return spread(sums) <= before ? groups : given; // fewer squares may still be a wider spread
}

std::optional<BalancedGroups> exactGroups(const std::vector<PairOfValues> &items, std::size_t size,
                                          double weight, const Groups &found, double mostSplits)
{
    requireWholeGroups(items, size);
    if (countOfSplits(items.size(), size) > mostSplits)
        return std::nullopt;
    const std::vector<PairOfValues> shares = weighted(items, size, weight);
    Search search(shares, size, found);
    search.run();
    BalancedGroups result;
    result.groups = search.best();
    result.cost = spreadOf(items, result.groups, weight);
    result.bound = result.cost;
    result.proven = true;
    return result;
}

BalancedGroups groupEvenly(const std::vector<PairOfValues> &items, std::size_t size, double weight)
{
    requireWholeGroups(items, size);
    BalancedGroups best;
    best.bound = leastSpread(items, size, weight);
    best.cost = std::numeric_limits<double>::infinity();
    for (const double start : {weight, 1.0, 0.0}) {
        Groups groups = improvedBySwaps(items, balancedDifferencing(items, size, start), weight);
        const double cost = spreadOf(items, groups, weight);
        if (cost < best.cost) {
            best.cost = cost;
            best.groups = std::move(groups);
        }
    }
    best.proven = best.cost <= best.bound + kRounding;
    if (!best.proven) {
        if (const auto exact = exactGroups(items, size, weight, best.groups))
            best = *exact;
    }
    for (std::vector<std::size_t> &group : best.groups)
        std::sort(group.begin(), group.end());
    std::sort(best.groups.begin(), best.groups.end());
    return best;
}

} // namespace ohmwright
