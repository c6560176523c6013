// SPDX-License-Identifier: GPL-3.0-or-later
// Curve: values between given points, straight lines between them, level beyond the ends.
//
//     const Curve<double, Voltage> openCircuit({{0.0, volts(3.0)}, {1.0, volts(4.2)}});
//     openCircuit.at(0.5);   // 3.6 V
#pragma once

#include <algorithm>
#include <utility>
#include <vector>

namespace ohmwright {

template <class X, class Y>
class Curve
{
public:
    using Point = std::pair<X, Y>;

    Curve() = default;
    // In any order; of points at the same place the last given counts.
    explicit Curve(std::vector<Point> points) : m_points(std::move(points))
    {
        std::stable_sort(m_points.begin(), m_points.end(),
                         [](const Point &a, const Point &b) { return a.first < b.first; });
        std::vector<Point> distinct;
        for (const Point &point : m_points) {
            if (!distinct.empty() && distinct.back().first == point.first)
                distinct.back() = point;
            else
                distinct.push_back(point);
        }
        m_points = std::move(distinct);
    }

    [[nodiscard]] bool isEmpty() const { return m_points.empty(); }
    [[nodiscard]] const std::vector<Point> &points() const { return m_points; }

    // A default-constructed value for an empty curve.
    [[nodiscard]] Y at(X x) const
    {
        if (m_points.empty())
            return Y{};
        const auto after =
            std::upper_bound(m_points.begin(), m_points.end(), x,
                             [](X place, const Point &point) { return place < point.first; });
        if (after == m_points.begin())
            return m_points.front().second;
        if (after == m_points.end())
            return m_points.back().second;
        const Point &low = *(after - 1);
        const double share = (x - low.first) / (after->first - low.first);
        return low.second + (after->second - low.second) * share;
    }

private:
    std::vector<Point> m_points;
};

} // namespace ohmwright
