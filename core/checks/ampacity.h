// SPDX-License-Identifier: GPL-3.0-or-later
// Ampacity: current-carrying capacity from a named table, with the conditions it was made for. No
// road-vehicle cable standard gives one; the tables here are those of buildings and of single
// cables in free air. A cable maker's own table is the better one: it is plain data.
#pragma once

#include "core/checks/chosen.h"
#include "core/checks/conductor_data.h"

#include <vector>

namespace ohmwright {

enum class Installation { FreeAir, OnSurface, InConduit };
template <>
struct EnumWords<Installation>
{
    static constexpr std::array words{"in free air", "on a surface", "in conduit or a closed duct"};
};

struct AmpacityTable
{
    QString name; // "IEC 60364-5-52, table B.52.4, method B2"
    ConductorMaterial material = ConductorMaterial::Copper;
    Installation installation = Installation::FreeAir;
    Temperature conductor; // reached at the table's currents; the insulation must stand it
    Temperature ambient;   // the table's currents are for this
    Temperature hottest;   // beyond it the table does not apply
    std::vector<std::pair<Area, Current>> rows;       // rising
    std::vector<std::pair<int, double>> groupFactors; // circuits bunched, and what is left; rising
};

// Built in, copper: IEC 60364-5-52 B.52.10 method G and B.52.4 method B2 (PVC, 70 °C), EN 50355
// single core in free air (cross-linked, 90 °C). All for 30 °C.
std::vector<AmpacityTable> ampacityTables();

struct AmpacityConditions
{
    Chosen<ConductorMaterial> material;
    Given<Area> area;           // m², above 0
    Given<Temperature> ambient; // K, of the hottest place the cable passes
    Chosen<Installation> installation;
    Given<double> bunched;         // circuits lying together, itself counted; 1 or more
    Given<Temperature> insulation; // K, what the insulation stands continuously
};

// √((θ − θa)/(θ − θ₀)), from which the tables' ambient factors come. Colder than the table's
// coldest printed place (10 °C) counts as that.
double ambientFactor(const AmpacityTable &table, Temperature ambient);

// For this many circuits, or the next higher number in the table; none: more than it has.
std::optional<double> groupFactor(const AmpacityTable &table, double circuits);

// At the table's own conditions; between two sizes on straight lines of the logarithms (annex D of
// IEC 60364-5-52 fits I = A·S^m). None: outside its sizes.
std::optional<Current> tabulated(const AmpacityTable &table, Area area);

// Takes the conditions onto the sheet and gives the corrected capacity. None: something is not
// known or refused, or the table does not apply, which the sheet then doubts with the reason.
std::optional<Current> takeAmpacity(Worksheet &sheet, const AmpacityConditions &conditions,
                                    const AmpacityTable &table);

} // namespace ohmwright
