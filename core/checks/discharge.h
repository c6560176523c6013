// SPDX-License-Identifier: GPL-3.0-or-later
// Discharge: how long a circuit's capacitors stay dangerous after it is switched off, by what
// always bleeds them and by what is switched across them, and what the bleeding costs.
//
// A capacitor through a resistor: t = R·C·ln(U₀/Uₗ); stored energy ½·C·U²; bleed loss U²/R. Source:
// Nilsson and Riedel, Electric Circuits. Touch voltages 60 V DC and 30 V AC: ISO 6469-3 and 49 CFR
// 571.305 S3. No rule that was read gives a time for a vehicle switched off, so the times are
// design choices, and named so; 1 s is published for a connector that opens without tools. The 0.2
// J of Y-capacitors after a crash: ISO 6469-4:2015, 5.2.2 (an older UN R94 text prints 2.0 J; the
// stricter is used).
#pragma once

#include "core/checks/given.h"

#include <optional>

namespace ohmwright {

// A resistor switched across the link, on purpose, when it is switched off.
struct ActiveDischarge
{
    Given<Resistance> resistance; // Ω, above 0
    Given<Duration> delay;        // s, 0 or more, from switching off to it being across
    Given<Energy> pulseEnergy;    // J it takes in one go
};

struct DischargeInputs
{
    QString circuit; // key
    CurrentKind current = CurrentKind::Dc;
    // V, 0 or more, the highest it can be left at; rms if alternating: the capacitor may be left
    // at its peak.
    Given<Voltage> start;
    std::vector<Origin> missing;    // what may charge it higher and nobody knows: unknown inputs
    Given<Capacitance> capacitance; // F, above 0; all that hangs on the circuit
    QStringList notCounted;         // what hangs on it too, its capacitance not recorded
    std::optional<Given<Resistance>> bleed; // Ω, above 0, always across; none: there is none
    Given<Power> bleedRating;               // W, continuous; asked for only with a bleed
    std::optional<ActiveDischarge> active;  // none: there is none
    bool opensWithoutTools = false;         // a connector on it can be opened by hand
    // F from both poles to the chassis together; none: not asked.
    std::optional<Given<Capacitance>> yCapacitance;

    Threshold<Voltage> touchDc{QStringLiteral("discharge.voltage_dc"),
                               volts(60),
                               QStringLiteral("ISO 6469-3, voltage class A"),
                               Tighter::Lower,
                               std::nullopt,
                               {}};
    Threshold<Voltage> touchAc{QStringLiteral("discharge.voltage_ac"),
                               volts(30),
                               QStringLiteral("ISO 6469-3, voltage class A"),
                               Tighter::Lower,
                               std::nullopt,
                               {}};
    Threshold<Duration> passiveTime{QStringLiteral("discharge.passive_time"),
                                    seconds(60),
                                    QStringLiteral("design choice, no published source"),
                                    Tighter::Lower,
                                    std::nullopt,
                                    {}};
    Threshold<Duration> activeTime{QStringLiteral("discharge.active_time"),
                                   seconds(5),
                                   QStringLiteral("design choice, no published source"),
                                   Tighter::Lower,
                                   std::nullopt,
                                   {}};
    Threshold<Duration> openedTime{QStringLiteral("discharge.opened_connector_time"),
                                   seconds(1),
                                   QStringLiteral("FMVSS 305: connectors opened without tools"),
                                   Tighter::Lower,
                                   std::nullopt,
                                   {}};
    Threshold<Energy> yEnergy{QStringLiteral("discharge.y_energy"),
                              joules(0.2),
                              QStringLiteral("ISO 6469-4:2015, 5.2.2: less than 0.2 J"),
                              Tighter::Lower,
                              std::nullopt,
                              {}};
};

// Id "discharge".
Check judgeDischarge(const DischargeInputs &inputs);

Energy storedEnergy(Capacitance capacitance, Voltage voltage); // ½·C·U²

// From one voltage down to another; nothing if it already is there. Both above 0.
Duration dischargeTime(Resistance resistance, Capacitance capacitance, Voltage from, Voltage to);

} // namespace ohmwright
