// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/conductor_data.h"

#include <algorithm>
#include <cmath>
#include <span>

namespace ohmwright {

namespace {

// mm² and the most Ω/km at 20 °C.
struct Row
{
    double area = 0;
    double resistance = 0;
    [[nodiscard]] double product() const { return area * resistance; }
};

constexpr Row kCopperStranded[] = {
    {0.5, 36.0},  {0.75, 24.5},  {1, 18.1},     {1.5, 12.1},   {2.5, 7.41},
    {4, 4.61},    {6, 3.08},     {10, 1.83},    {16, 1.15},    {25, 0.727},
    {35, 0.524},  {50, 0.387},   {70, 0.268},   {95, 0.193},   {120, 0.153},
    {150, 0.124}, {185, 0.0991}, {240, 0.0754}, {300, 0.0601}, {400, 0.0470},
};
constexpr Row kCopperFlexible[] = {
    {0.5, 39.0},  {0.75, 26.0}, {1, 19.5},     {1.5, 13.3},   {2.5, 7.98},
    {4, 4.95},    {6, 3.30},    {10, 1.91},    {16, 1.21},    {25, 0.780},
    {35, 0.554},  {50, 0.386},  {70, 0.272},   {95, 0.206},   {120, 0.161},
    {150, 0.129}, {185, 0.106}, {240, 0.0801}, {300, 0.0641}, {400, 0.0486},
};
constexpr Row kAluminiumStranded[] = {
    {10, 3.08},   {16, 1.91},   {25, 1.20},    {35, 0.868},  {50, 0.641},
    {70, 0.443},  {95, 0.320},  {120, 0.253},  {150, 0.206}, {185, 0.164},
    {240, 0.125}, {300, 0.100}, {400, 0.0778},
};

std::span<const Row> tableOf(ConductorMaterial material, ConductorClass strands)
{
    if (material == ConductorMaterial::Aluminium)
        return strands == ConductorClass::Stranded ? std::span<const Row>(kAluminiumStranded)
                                                   : std::span<const Row>();
    return strands == ConductorClass::Stranded ? std::span<const Row>(kCopperStranded)
                                               : std::span<const Row>(kCopperFlexible);
}

struct Metal
{
    double alpha20;     // per K
    double beta;        // °C
    double heat;        // J/(K·mm³)
    double resistivity; // Ω·mm at 20 °C
};

Metal metalOf(ConductorMaterial material)
{
    return material == ConductorMaterial::Copper ? Metal{0.00393, 234.5, 3.45e-3, 17.241e-6}
                                                 : Metal{0.00403, 228, 2.5e-3, 28.264e-6};
}

double inCelsius(Temperature temperature)
{
    return temperature.si() - 273.15;
}

} // namespace

std::optional<ConductorResistance>
conductorResistance(ConductorMaterial material, ConductorClass strands, Area area, Length length)
{
    constexpr double kSameSize = 0.005; // sizes of the table lie much further apart
    const std::span<const Row> table = tableOf(material, strands);
    const double mm2 = area.si() * 1e6;
    if (table.empty() || mm2 < table.front().area * (1 - kSameSize) ||
        mm2 > table.back().area * (1 + kSameSize))
        return std::nullopt;
    const auto ohmsOf = [&](double perKilometre) {
        return ohms(perKilometre * length.si() / 1e3);
    };
    const auto above = std::find_if(table.begin(), table.end(), [&](const Row &row) {
        return row.area * (1 + kSameSize) >= mm2;
    });
    if (above == table.end() || mm2 >= above->area * (1 - kSameSize))
        return ConductorResistance{
            ohmsOf(above == table.end() ? table.back().resistance : above->resistance), true};
    const double product = std::max(above->product(), (above - 1)->product());
    return ConductorResistance{ohmsOf(product / mm2), false};
}

Resistance atTemperature(Resistance at20, ConductorMaterial material, Temperature temperature)
{
    return at20 * (1 + metalOf(material).alpha20 * (inCelsius(temperature) - 20));
}

double adiabaticK(ConductorMaterial material, Temperature start, Temperature end)
{
    const Metal metal = metalOf(material);
    const double from = inCelsius(start);
    const double rise = end.si() - start.si();
    if (rise <= 0 || metal.beta + from <= 0)
        return 0;
    return std::sqrt(metal.heat * (metal.beta + 20) / metal.resistivity *
                     std::log1p(rise / (metal.beta + from)));
}

Area leastArea(Current current, Duration time, double k)
{
    return Area::fromSi(current.si() * std::sqrt(time.si()) / k * 1e-6);
}

} // namespace ohmwright
