// SPDX-License-Identifier: GPL-3.0-or-later
// Charging: what the charger draws from the mains for hours against what protects and carries it,
// its window against the pack, and the time a charge takes.
//
//     I = P/(η·cosφ·n·U)      t = E₁/P + E₂/(s·P)
//
// Sources: power of alternating current, Nilsson and Riedel, Electric Circuits; continuous load at
// most 80 % of the protective device, US National Electrical Code 210.20(A) with 625.41 and 625.42
// (the load is continuous, the device at least 125 % of it); control pilot, IEC 61851-1
// (control_pilot.h). The falling current at the end of a charge is an assumption, told as one.
#pragma once

#include "core/checks/given.h"

#include <optional>

namespace ohmwright {

struct ChargingInputs
{
    QString charger; // key

    // Mains side.
    Given<Voltage> mainsVoltage; // rms, across what each loaded line works on: 230 V, 240 V; > 0
    Given<double> phases;        // lines loaded: 1, or 3 with mainsVoltage to neutral
    Given<Power> outputPower;    // the charger's, direct current, continuous; > 0
    Given<double> efficiency;    // of the charger, mains to direct current; > 0 to 1
    Given<double> powerFactor;   // of the charger; > 0 to 1
    Given<Current> breaker;      // rated current of the protective device; > 0
    // Continuous rating of the weakest of outlet, inlet and cable; > 0. Applies always.
    Given<Current> weakestLink;
    // Mains current a line is held to, by a setting or by obeying the pilot. Only where there is
    // one.
    std::optional<Given<Current>> heldTo;
    // Duty cycle of the control pilot, 0 to 1. Only where a charging point gives one.
    std::optional<Given<double>> pilotDuty;

    // Battery side.
    Given<Voltage> packEmpty;      // the lowest at which charging may begin; > 0
    Given<Voltage> packFull;       // the highest the pack may reach; > 0
    Given<Current> packCurrent;    // the most it may be charged with, continuous; > 0
    Given<Voltage> chargerLeast;   // window of the charger's output
    Given<Voltage> chargerMost;    //
    Given<Voltage> endOfCharge;    // voltage the charger is set to stop at; > 0
    Given<Current> chargerCurrent; // the most it puts out; > 0

    // Time.
    Given<Energy> packEnergy; // usable, from empty to full; > 0
    Given<double> from;       // state of charge, 0 to 1
    Given<double> to;         // state of charge, above `from`, to 1
    // Hours there are for it. Only where it matters: time is then judged, else only told.
    std::optional<Given<Duration>> timeAtHand;
    // Above this state of charge the current falls, to this share of the power on average.
    Given<double> fallsFrom =
        given(0.85, QStringLiteral("where the charging current falls"), Evidence::Assumed);
    Given<double> fallsTo =
        given(0.5, QStringLiteral("mean power once the current falls"), Evidence::Assumed);

    Threshold<double> continuousShare{
        QStringLiteral("charging.continuous_share"),
        0.80,
        QStringLiteral("National Electrical Code 210.20(A), 625.41, 625.42: a rule of the United "
                       "States; the code of the place decides"),
        Tighter::Lower,
        std::nullopt,
        {}};
};

Check judgeCharging(const ChargingInputs &inputs);

// What it draws from each line of the mains, and what it puts out for it, by the check's own rules:
// held to a setting where there is one. Each rests on the weakest of what it comes from. Not known
// while one of those is not.
struct ChargerDraw
{
    Given<Current> mains;
    Given<Power> output;
};
ChargerDraw chargerDraw(const ChargingInputs &inputs);

} // namespace ohmwright
