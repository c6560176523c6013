// SPDX-License-Identifier: GPL-3.0-or-later
// Precharge, measured: how far the link really was up when the main contactor closed, and whether
// it got there as slowly as resistor and capacitance say. Faster or slower means that one of them
// is not what the book believes, or that something else hangs on the link.
//
// t = −R·C·ln(1 − v/U). Source: first-order response, Nilsson and Riedel, Electric Circuits; that
// the measured time should be within a fifth of it is common practice, no published source.
#pragma once

#include "core/checks/given.h"
#include "core/checks/recorded_test.h"

namespace ohmwright {

struct PrechargeMeasuredInputs
{
    QString circuit; // key
    RecordedTest record;
    Given<Voltage> packVoltage;         // V, above 0, during the test
    Given<Voltage> linkVoltage;         // V, 0 or more, just before the main contactor closes
    Given<Duration> timeToThere;        // s, above 0, from the precharge relay to that reading
    Given<Resistance> resistance;       // Ω, above 0
    Given<Capacitance> linkCapacitance; // F, above 0
    Threshold<double> reached{QStringLiteral("precharge.reached"),
                              0.95,
                              QStringLiteral("common practice, no published source"),
                              Tighter::Higher,
                              std::nullopt,
                              {}};
    Threshold<double> deviation{QStringLiteral("precharge.deviation"),
                                0.20,
                                QStringLiteral("common practice, no published source"),
                                Tighter::Lower,
                                std::nullopt,
                                {}};
};

// Id "precharge_measured".
Check judgePrechargeMeasured(const PrechargeMeasuredInputs &inputs);

} // namespace ohmwright
