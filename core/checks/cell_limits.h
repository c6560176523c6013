// SPDX-License-Identifier: GPL-3.0-or-later
// Cell limits: voltage and current of a cell against what its maker allows at the temperatures it
// will see: charging in frost, braking with a full or cold pack; and a management channel for each.
//
// A cell's share: U/n of the voltage, I/p of the current; when braking, u₀ + I/p·R. What the drive
// asks is a power, so that the current is that at the voltage under load: I = (V − √(V² −
// 4·R·P))/(2·R). Limits by temperature come as the maker's curve; beyond its ends nothing is known,
// and nothing is assumed.
// Without a curve that reaches there, a lithium cell is not charged below 0 °C: common practice, no
// published source (metallic lithium plates out).
#pragma once

#include "core/checks/conductor_data.h"
#include "core/checks/curve.h"
#include "core/checks/given.h"
#include "core/checks/regeneration_settings.h"

#include <optional>

namespace ohmwright {

// Of one cell, A against K. Zero where it is not allowed at all. Empty: not known.
struct LimitByTemperature
{
    Curve<Temperature, Current> curve;
    Origin origin;
};

struct Regeneration
{
    Given<Current> current;           // A, 0 or more, into the pack, the highest
    Given<Voltage> cellVoltage;       // V, open circuit, of the fullest cell it is allowed at
    Given<Resistance> cellResistance; // Ω, 0 or more, of one cell, cold
    // For pulses as short as braking; none: the limit for charging is used.
    std::optional<LimitByTemperature> limit;
    // Where it is told as a power as well, for range.
    std::optional<RegenerationSettings> toldTwice = {};
};

// What motor and inverter draw, at the pack's terminals.
struct DrawnPower
{
    Given<Power> power;                   // W, 0 or more
    std::optional<Given<Current>> atMost; // A, 0 or more; the inverter takes no more
};

// Driving in the coldest that counts, with as little in the pack as it is driven to; and where the
// controller lets go, and at the hottest, with the same resistance, which there is on the safe
// side.
struct ColdDrive
{
    Given<Voltage> openCircuit; // V of the pack at rest, above 0
    Given<Resistance> inner;    // Ω of the pack when cold, 0 or more
    DrawnPower peak;            // for seconds
    std::optional<DrawnPower> continuous;
    // W; the controller asks no more of a pack colder than `heldBelow`, K; none: it never holds.
    std::optional<Given<Power>> heldTo;
    Given<Temperature> heldBelow = {};
    // A, of one cell for seconds, when coldest; none: the curve for driving is used.
    std::optional<Given<Current>> cellPeak;
    // Likewise from where it is held no more up to the hottest.
    std::optional<Given<Current>> warmCellPeak = {};
};

struct CellLimitsInputs
{
    QString pack;                  // key
    Given<double> cellsInSeries;   // 1 or more
    Given<double> cellsInParallel; // 1 or more
    Given<Voltage> cellMost;       // V, above 0, the maker's highest
    Given<Voltage> cellLeast;      // V, 0 or more, the maker's lowest under load
    Given<Voltage> chargeEnd;      // V of the pack where charging ends
    Given<Voltage> dischargeEnd;   // V of the pack where driving is cut off
    LimitByTemperature chargeLimit;
    LimitByTemperature dischargeLimit;
    Given<Current> chargeCurrent;    // A, 0 or more, into the pack
    Given<Current> dischargeCurrent; // A, 0 or more, out of the pack, for as long as the curve says
    Given<Temperature> coldestCharging, hottestCharging; // K of the cells
    Given<Temperature> coldestDriving, hottestDriving;   // K of the cells
    std::optional<ColdDrive> drive;           // none: nothing is known to drive from the pack
    std::optional<Regeneration> regeneration; // none: the motor never brakes into the pack
    Given<double> channels; // 0 or more, of the battery management, all boards together

    Threshold<Temperature> chargeFloor{QStringLiteral("cells.charge_floor"),
                                       celsius(0),
                                       QStringLiteral("common practice, no published source"),
                                       Tighter::Higher,
                                       std::nullopt,
                                       {}};
};

// Id "cell_limits".
Check judgeCellLimits(const CellLimitsInputs &inputs);

// The lowest limit between two temperatures, level beyond the ends of the curve.
Current lowestBetween(const Curve<Temperature, Current> &curve, Temperature from, Temperature to);

} // namespace ohmwright
