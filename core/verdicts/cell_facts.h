// SPDX-License-Identifier: GPL-3.0-or-later
// What the pack's modules say of themselves and their cells, and what follows for the whole pack:
// beside pack_facts.h, for the checks of the pack alone.
#pragma once

#include "core/verdicts/pack_facts.h"

namespace ohmwright {

struct CellFacts
{
    Given<double> inSeriesPerModule; // cells in series in a module
    Given<double> inParallel;        // cells, in the whole pack
    Given<Voltage> full, lowest;     // of a cell, by its maker
    Given<Charge> moduleCapacity;    // of the weakest module
    Given<Resistance> worstModule;   // cold if that is known, else the worst as measured
    Given<Resistance> pack;          // of all modules as they are, joints with them if known
    Given<Current> moduleCurrent;    // for good, of the module that takes least
    Given<Resistance> coldPack;      // of the worst module for each of them, joints with them
    std::optional<Given<Resistance>> joints;
    Curve<double, Voltage> openCircuit; // of a cell
    Origin openCircuitFrom;
};

// Worked out once for these inputs, together with the pack's.
const CellFacts &cellFacts(const BookInputs &in);
// Of a pack of which circuit, modules and layout are known already.
CellFacts readCells(const BookInputs &in, const PackFacts &pack);

// What the pack gives from one state of charge down to another, at a third of its capacity an hour:
// what driving at a steady pace takes. Without an open-circuit curve, by its nominal voltage.
Given<Energy> energyBetween(const CellFacts &cells, const PackFacts &pack,
                            const Given<double> &highest, const Given<double> &lowest,
                            const QString &name);

// The pack at rest where a drive ends: by the open-circuit curve, without one its nominal voltage.
Given<Voltage> restingWhenLow(const PackFacts &pack, const CellFacts &cells);

// Of the pack's voltages: the number of cells times one cell's.
Given<Voltage> ofAllCells(const Given<double> &cells, const Given<Voltage> &cell,
                          const QString &name);

} // namespace ohmwright
