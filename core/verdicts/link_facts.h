// SPDX-License-Identifier: GPL-3.0-or-later
// What precharge, discharge, fuses and isolation ask of a circuit: the highest voltage it can be
// at, the lowest it works at, and the capacitance that hangs on it.
#pragma once

#include "core/checks/regeneration_settings.h"
#include "core/verdicts/pack_facts.h"
#include "core/verdicts/wiring.h"

namespace ohmwright {

// The full pack's voltage, or the worst voltage entered with the circuit if that is higher: what a
// pack drives. What else reaches the circuit is in worstVoltage(), electrical_checks_of_book.h.
Given<Voltage> highestVoltage(const BookInputs &in, const Circuit &circuit, const PackFacts &pack);
// The empty pack's under load, by its cells' lowest voltage; else the circuit's nominal voltage.
Given<Voltage> lowestVoltage(const BookInputs &in, const Circuit &circuit, const PackFacts &pack);
// Both settings of regeneration, where the book has both.
std::optional<RegenerationSettings> regenerationToldTwice(const BookInputs &in,
                                                          const PackFacts &pack);
// As entered with the circuit.
Given<Voltage> worstVoltageEntered(const BookInputs &in, const Circuit &circuit);
Given<Voltage> nominalVoltageEntered(const BookInputs &in, const Circuit &circuit);

// Whether the circuit has a link that is charged and discharged: an inverter, or a capacitance.
bool hasLink(const BookInputs &in, const Wiring &wiring, const Circuit &circuit);
// Of every part on the circuit that tells one. An inverter must; a charger or converter that does
// not is named in the source as left out.
Given<Capacitance> linkCapacitance(const BookInputs &in, const Wiring &wiring,
                                   const Circuit &circuit);

// Those left out, by name.
QStringList notCounted(const BookInputs &in, const Wiring &wiring, const Circuit &circuit);

// "Precharge: Traction".
void addToTitle(Check &check, const QString &name);

} // namespace ohmwright
