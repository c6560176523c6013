// SPDX-License-Identifier: GPL-3.0-or-later
// BalancedGroups: things with two values each, split into groups of one size so that the groups'
// sums come out alike in both. Pure arithmetic on plain numbers; each value may have any unit, for
// only shares of the mean count.
//
//     const std::vector<PairOfValues> items{{8, 1}, {7, 1}, {6, 1}, {5, 1}};
//     groupEvenly(items, 2, 1.0);   // {8, 5} and {7, 6}, cost 0, proven
//
// Sources: N. Karmarkar, R. M. Karp, The Differencing Method of Set Partitioning, UCB/CSD 82/113
// (1982); its balanced form for any number of groups, W. Michiels et al., Performance Ratios for
// the Differencing Method Applied to the Balanced Number Partitioning Problem, STACS 2003.
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

namespace ohmwright {

// Neither is negative.
struct PairOfValues
{
    double first = 0;
    double second = 0;
};

using Groups = std::vector<std::vector<std::size_t>>; // of indices into the items

struct BalancedGroups
{
    Groups groups;
    double cost = 0;     // as spreadOf() has it
    double bound = 0;    // no split costs less
    bool proven = false; // every split was looked at or ruled out: none costs less
};

// What a split costs: the distance from the smallest to the largest group's sum as a share of the
// mean sum, of the first values times `weight` (0 to 1) plus of the second times 1 - `weight`.
double spreadOf(const std::vector<PairOfValues> &items, const Groups &groups, double weight);

// Below it no split of the items into groups of `size` can come: the smallest item stands with at
// most the size - 1 largest of the others, the largest with at least the size - 1 smallest.
double leastSpread(const std::vector<PairOfValues> &items, std::size_t size, double weight);

// The largest sum that the smallest group can reach, in the values' own unit: the mean, or the
// smallest value with the size - 1 largest if that is less.
double bestSmallestSum(const std::vector<double> &values, std::size_t size);

// Balanced differencing of the weighted values, nothing else. `items` is a whole number of groups
// (asserted here and below).
Groups balancedDifferencing(const std::vector<PairOfValues> &items, std::size_t size,
                            double weight);

// Exchanges two items between groups as long as that helps.
Groups improvedBySwaps(const std::vector<PairOfValues> &items, Groups groups, double weight);

// Branch and bound over all splits, starting from one already found; none when there are more than
// `mostSplits` of them.
std::optional<BalancedGroups> exactGroups(const std::vector<PairOfValues> &items, std::size_t size,
                                          double weight, const Groups &found,
                                          double mostSplits = 2e5);

// The best of all these: proven for small sets, with its bound for large ones.
BalancedGroups groupEvenly(const std::vector<PairOfValues> &items, std::size_t size, double weight);

} // namespace ohmwright
