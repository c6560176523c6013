// SPDX-License-Identifier: GPL-3.0-or-later
// What several checks ask of the traction pack: its layout, its voltages, what it can give and
// take. Worked out once, here, from the modules on the traction circuit.
#pragma once

#include "core/verdicts/book_inputs.h"

#include <vector>

namespace ohmwright {

struct PackFacts
{
    const Circuit *circuit = nullptr;  // null: no traction circuit with modules on it
    std::vector<const Part *> modules; // of one type, of the build: that of most on the circuit
    bool isMixed = false;              // others are on it too: how they are joined is not known
    Given<double> modulesInSeries, modulesInParallel;
    Given<double> cellsInSeries;  // of the whole pack
    Given<Voltage> nominal, full; // of the whole pack
    Given<Energy> usableEnergy;   // between the states of charge below, at a gentle load
    Given<double> highestCharge, lowestCharge; // states of charge
    Given<Power> greatestPower;                // for some seconds, at its terminals
    Given<Power> greatestChargePower;          // for some seconds, when neither full nor cold
};

// Worked out once for these inputs, and as long-lived as they are.
const PackFacts &packFacts(const BookInputs &inputs);

} // namespace ohmwright
