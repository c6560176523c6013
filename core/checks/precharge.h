// SPDX-License-Identifier: GPL-3.0-or-later
// Precharge: does the resistor bring the link up before the main contactor closes, and survive it?
#pragma once

#include "core/checks/given.h"

namespace ohmwright {

struct PrechargeInputs
{
    QString circuit;                    // key
    Given<Voltage> packVoltage;         // the highest the pack reaches
    Given<Capacitance> linkCapacitance; // of everything charged through the resistor
    QStringList notCounted;             // what hangs on the link with a capacitance nobody recorded
    Given<Resistance> resistance;
    Given<Energy> pulseEnergy;         // what the resistor takes in one pulse
    Given<Duration> timeBeforeClosing; // from the precharge relay to the main contactor
    // How far the link must be up when the main contactor closes.
    Threshold<double> reached{QStringLiteral("precharge.reached"),
                              0.95,
                              QStringLiteral("common practice, no published source"),
                              Tighter::Higher,
                              std::nullopt,
                              {}};
};

// First-order response of a capacitor charged through a resistor: v = U·(1 − e^(−t/RC)); the
// resistor turns ½·C·U² into heat whatever its resistance. Source: any circuits text.
Check judgePrecharge(const PrechargeInputs &inputs);

// The same threshold by what is left to rise: held to the whole, a link that is up would be within
// a few percent of its limit for ever.
Threshold<double> leftToRise(const Threshold<double> &reached);

} // namespace ohmwright
