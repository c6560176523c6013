// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/coolant.h"

#include "core/checks/curve.h"

#include <algorithm>
#include <array>
#include <cstddef>
#include <utility>
#include <vector>

namespace ohmwright {

namespace {

// Rows 0, 20, 40, 60, 80, 100 °C; columns 0 (water), 10, 20, 30, 40, 50, 60 % by volume.
using Table = std::array<std::array<double, 7>, 6>;

// clang-format off
constexpr Table kEthyleneDensity{{
    {999.8, 1018.73, 1035.67, 1051.78, 1066.80, 1081.08, 1094.64},
    {998.2, 1013.34, 1029.72, 1045.25, 1059.68, 1073.35, 1086.27},
    {992.2, 1006.01, 1021.83, 1036.78, 1050.62, 1063.66, 1075.95},
    {983.2,  996.72, 1011.99, 1026.36, 1039.61, 1052.04, 1063.69},
    {971.8,  985.50, 1000.21, 1014.00, 1026.65, 1038.46, 1049.48},
    {958.4,  972.32,  986.48,  999.69, 1011.74, 1022.95, 1033.33}}};
constexpr Table kEthyleneHeat{{
    {4219, 3937, 3769, 3589, 3401, 3203, 2997},
    {4184, 3972, 3815, 3645, 3468, 3281, 3084},
    {4179, 4007, 3861, 3702, 3535, 3358, 3171},
    {4185, 4042, 3907, 3759, 3602, 3435, 3258},
    {4197, 4077, 3953, 3816, 3669, 3512, 3345},
    {4216, 4112, 3999, 3872, 3736, 3590, 3433}}};
constexpr Table kPropyleneDensity{{
    {999.8, 1013.85, 1025.84, 1036.24, 1045.12, 1052.71, 1059.00},
    {998.2, 1008.13, 1019.01, 1028.35, 1036.24, 1042.87, 1048.25},
    {992.2, 1000.46, 1010.16, 1018.42, 1025.30, 1030.98, 1035.47},
    {983.2,  990.82,  999.31, 1006.44, 1012.30, 1017.04, 1020.66},
    {971.8,  979.23,  986.44,  992.42,  997.25, 1001.05, 1003.81},
    {958.4,  965.68,  971.56,  976.36,  980.14,  983.00,  984.94}}};
constexpr Table kPropyleneHeat{{
    {4219, 4042, 3929, 3793, 3636, 3455, 3250},
    {4184, 4075, 3973, 3848, 3702, 3532, 3339},
    {4179, 4107, 4016, 3903, 3768, 3609, 3427},
    {4185, 4139, 4060, 3958, 3834, 3686, 3515},
    {4197, 4171, 4104, 4013, 3900, 3763, 3603},
    {4216, 4203, 4147, 4068, 3966, 3841, 3692}}};
// clang-format on

constexpr double kZeroCelsius = 273.15;
constexpr double kMostGlycol = 0.6;

double interpolated(const Table &table, double glycol, double celsius)
{
    const double column = glycol * 10, row = celsius / 20;
    const auto c = std::min<std::size_t>(static_cast<std::size_t>(column), 5);
    const auto r = std::min<std::size_t>(static_cast<std::size_t>(row), 4);
    const double x = column - static_cast<double>(c), y = row - static_cast<double>(r);
    const double upper = table[r][c] + x * (table[r][c + 1] - table[r][c]);
    const double lower = table[r + 1][c] + x * (table[r + 1][c + 1] - table[r + 1][c]);
    return upper + y * (lower - upper);
}

} // namespace

std::optional<VolumetricHeatCapacity> heatCapacityOf(Coolant coolant, double glycol,
                                                     Temperature temperature)
{
    const double celsius = temperature.si() - kZeroCelsius;
    const bool covered = celsius >= 0 && celsius <= 100 && glycol >= 0 && glycol <= kMostGlycol;
    if (!covered) // also for what is no number
        return std::nullopt;
    const bool propylene = coolant == Coolant::PropyleneGlycol;
    const double share = coolant == Coolant::Water ? 0 : glycol;
    return VolumetricHeatCapacity::fromSi(
        interpolated(propylene ? kPropyleneDensity : kEthyleneDensity, share, celsius) *
        interpolated(propylene ? kPropyleneHeat : kEthyleneHeat, share, celsius));
}

std::optional<Temperature> freezingPointOf(Coolant coolant, double glycol)
{
    const bool propylene = coolant == Coolant::PropyleneGlycol;
    if (coolant == Coolant::Water)
        return Temperature::fromSi(kZeroCelsius);
    const bool covered = glycol >= 0 && glycol <= (propylene ? kMostGlycol : 0.575);
    if (!covered)
        return std::nullopt;
    using Points = std::vector<std::pair<double, double>>;
    const Points points =
        propylene ? Points{{0, 0},         {0.096, -3.3},  {0.194, -7.1},  {0.253, -10.2},
                           {0.304, -13.4}, {0.355, -17.3}, {0.406, -22.1}, {0.457, -27.9},
                           {0.509, -35.0}, {0.55, -41.6},  {0.60, -51.1}}
                  : Points{{0, 0},         {0.089, -3.2},  {0.181, -7.8},  {0.248, -12.0},
                           {0.306, -16.2}, {0.355, -20.3}, {0.405, -25.3}, {0.455, -31.1},
                           {0.496, -36.4}, {0.547, -44.2}, {0.578, -48.3}};
    return Temperature::fromSi(kZeroCelsius + Curve<double, double>(points).at(glycol));
}

} // namespace ohmwright
