// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/sheet/column_widths.h"

#include <algorithm>
#include <numeric>

namespace ohmwright::sheet {

namespace {

double sum(const std::vector<double> &values)
{
    return std::accumulate(values.begin(), values.end(), 0.0);
}

// `total` in proportion to the weights, but to none less than its least; the least add up to no
// more than the total.
std::vector<double> inProportion(const std::vector<double> &weights,
                                 const std::vector<double> &least, double total)
{
    std::vector<double> widths = least;
    std::vector<bool> atLeast(weights.size(), false);
    for (bool changed = true; changed;) {
        changed = false;
        double free = total;
        double weight = 0;
        for (std::size_t i = 0; i < weights.size(); ++i) {
            if (atLeast[i])
                free -= least[i];
            else
                weight += weights[i];
        }
        for (std::size_t i = 0; i < weights.size(); ++i) {
            if (atLeast[i])
                continue;
            widths[i] = weight > 0 ? free * weights[i] / weight : 0;
            if (widths[i] < least[i]) {
                widths[i] = least[i];
                atLeast[i] = true;
                changed = true;
            }
        }
    }
    return widths;
}

} // namespace

std::vector<double> shareOutWidth(const std::vector<ColumnNeed> &needs, double total)
{
    if (needs.empty())
        return {};
    std::vector<double> least;
    for (const ColumnNeed &need : needs)
        least.push_back(need.least);
    if (const double all = sum(least); all > total) {
        for (double &value : least)
            value *= total / all;
    }

    // Columns without a share take their natural width, if the others keep their least.
    double sharedLeast = 0;
    double askedFor = 0;
    bool anyShare = false;
    for (std::size_t i = 0; i < needs.size(); ++i) {
        if (needs[i].share > 0) {
            sharedLeast += least[i];
            anyShare = true;
        } else {
            askedFor += std::max(needs[i].natural, least[i]);
        }
    }
    const double offered = total - sharedLeast;
    std::vector<double> weights(needs.size(), 0.0);
    if (anyShare && askedFor <= offered) {
        for (std::size_t i = 0; i < needs.size(); ++i) {
            if (needs[i].share > 0)
                weights[i] = needs[i].share;
            else
                least[i] = std::max(needs[i].natural, least[i]);
        }
        return inProportion(weights, least, total);
    }
    if (!anyShare && askedFor <= total) {
        // All fit: what is left goes to the columns that can use it.
        const bool anyStretches = std::ranges::any_of(needs, &ColumnNeed::stretches);
        for (std::size_t i = 0; i < needs.size(); ++i) {
            least[i] = std::max(needs[i].natural, least[i]);
            weights[i] = needs[i].stretches || !anyStretches ? least[i] : 0.0;
        }
        const double left = total - sum(least);
        const double weight = sum(weights);
        for (std::size_t i = 0; i < needs.size(); ++i)
            least[i] +=
                weight > 0 ? left * weights[i] / weight : left / static_cast<double>(needs.size());
        return least;
    }
    // Too much is asked for: by natural width, and what has a share by what that would be.
    double shares = 0;
    for (const ColumnNeed &need : needs)
        shares += std::max(need.share, 0);
    for (std::size_t i = 0; i < needs.size(); ++i) {
        weights[i] = needs[i].share > 0 ? total * 0.5 * needs[i].share / shares
                                        : std::max(needs[i].natural, least[i]);
    }
    return inProportion(weights, least, total);
}

} // namespace ohmwright::sheet
