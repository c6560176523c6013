// SPDX-License-Identifier: GPL-3.0-or-later
// The electrical checks, read out of a book: one function a check, one Check for each thing in the
// book that the check is about. What is read, and what is assumed, stands with each function's
// file.
#pragma once

#include "core/checks/charging.h"
#include "core/checks/check.h"
#include "core/checks/circuit_ratings.h"
#include "core/verdicts/book_inputs.h"

#include <vector>

namespace ohmwright {

std::vector<Check> judgeCircuitRatingsOfBook(const BookInputs &in); // each circuit with parts
std::vector<Check> judgeBranchRatingsOfBook(const BookInputs &in);  // each branch
std::vector<Check> judgePackOfBook(const BookInputs &in);           // the pack's circuit
std::vector<Check> judgeCellLimitsOfBook(const BookInputs &in);     // the pack's circuit
std::vector<Check> judgeGroupingOfBook(const BookInputs &in);       // the pack's circuit
std::vector<Check> judgePrechargeOfBook(const BookInputs &in);      // each circuit with a resistor
std::vector<Check> judgeDischargeOfBook(const BookInputs &in);      // each circuit with a link
std::vector<Check> judgeConductorOfBook(const BookInputs &in);      // each branch with a cable
std::vector<Check> judgeFuseOfBook(const BookInputs &in);     // each branch, DC or fused, not 12 V
std::vector<Check> judgeChargingOfBook(const BookInputs &in); // each charger
std::vector<Check> judgeLowVoltageOfBook(const BookInputs &in);        // each 12 V circuit
std::vector<Check> judgeIsolationOfBook(const BookInputs &in);         // tests on a live pack
std::vector<Check> judgeBondingOfBook(const BookInputs &in);           // tests
std::vector<Check> judgeTorqueMeasuredOfBook(const BookInputs &in);    // tests
std::vector<Check> judgePrechargeMeasuredOfBook(const BookInputs &in); // tests

// The same inputs for another question: how many cells in series does every part of the circuit
// allow? See mostCellsInSeries().
CircuitRatingsInputs circuitRatingsInputs(const BookInputs &in, const Circuit &circuit);
MostCells mostCellsInSeries(const BookInputs &in, const Circuit &circuit);
// What the check of this charger works with, for what hangs on its branches.
ChargerDraw drawOf(const BookInputs &in, const Part &charger);
// And what discharge and isolation start from, and the fuses have to part.
WorstVoltage worstVoltage(const BookInputs &in, const Circuit &circuit);

} // namespace ohmwright
