// SPDX-License-Identifier: GPL-3.0-or-later
// Statistics that a few bad values cannot bend: median, median absolute deviation, and how far a
// value stands out.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <vector>

namespace ohmwright {

// Not a number without values.
inline double medianOf(std::vector<double> values)
{
    if (values.empty())
        return std::nan("");
    std::sort(values.begin(), values.end());
    const std::size_t half = values.size() / 2;
    return values.size() % 2 == 1 ? values[half] : (values[half - 1] + values[half]) / 2;
}

// Modified z-score, 0.6745·(x - median)/MAD; where more than half the values are alike (MAD = 0)
// 0.7979·(x - median)/mean absolute deviation; zeros where all are alike. Source: B. Iglewicz,
// D. C. Hoaglin, How to Detect and Handle Outliers, ASQC 1993, 3.3, who take 3.5 and more for an
// outlier; the fall-back is common practice.
inline std::vector<double> modifiedZScores(const std::vector<double> &values)
{
    const double median = medianOf(values);
    std::vector<double> off;
    double sum = 0;
    for (const double value : values) {
        off.push_back(std::abs(value - median));
        sum += off.back();
    }
    const double mad = medianOf(off);
    double scale = 0;
    if (mad > 0)
        scale = 0.6745 / mad;
    else if (sum > 0)
        scale = 0.7979 * static_cast<double>(values.size()) / sum;
    std::vector<double> scores;
    scores.reserve(values.size());
    for (const double value : values)
        scores.push_back((value - median) * scale);
    return scores;
}

} // namespace ohmwright
