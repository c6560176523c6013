// SPDX-License-Identifier: GPL-3.0-or-later
// Circuit ratings: does every part on a circuit, and every part inside it, withstand the worst
// voltage the circuit can reach? And the inverse: how many cells in series they all allow.
//
// The worst voltage is the greatest of what can drive the circuit. Direct and alternating voltages
// are brought together by their peaks: a motor's line-to-line voltage E (rms) puts √2·E on the link
// through the inverter's diodes, and a link at U puts no more than peaks of U on the phases, as an
// alternating voltage of U/√2 (rms) would. What the phases see as rms goes with the inverter's
// modulation: space vector reaches a fundamental whose line-to-line peak is U, so U/√2; six-step
// has U from line to line for two thirds of the time, so √(2/3)·U, its harmonics of low order with
// it, which windings and rms meters see. Many inverters for vehicles go there at speed, so that
// six-step is assumed until it is told. Sources: N. Mohan, T. Undeland, W. Robbins, Power
// Electronics (six-step); J. Holtz, Pulsewidth modulation for electronic power conversion, Proc.
// IEEE 82, 1994. That each source counts is common practice, no published source. The ripple of the
// switching itself, and reflections on long motor leads, which can double a peak, are not in it.
// Voltage classes: ISO 6469-3.
#pragma once

#include "core/checks/assembly.h"
#include "core/checks/chosen.h"

#include <optional>
#include <vector>

namespace ohmwright {

// How the inverter makes its alternating voltage: up to the limit of space-vector modulation (a
// sine with a third harmonic added reaches the same), or on to six-step.
enum class Modulation { SpaceVector, SixStep };
template <>
struct EnumWords<Modulation>
{
    static constexpr std::array words{"space vector", "six-step"};
};

// What may drive the circuit. One that applies and is not known makes the verdict unknown.
struct VoltageSource
{
    bool applies = true;
    QString whyNot;                     // shown when it does not apply
    QString name;                       // "charger's maximum output"
    Given<Voltage> voltage;             // V, 0 or more; rms if alternating
    CurrentKind kind = CurrentKind::Dc; //
    bool ofThePack = false; // told for the pack as it is: it rises and falls with its cells
};

// The traction pack when full.
struct PackAtFull
{
    bool applies = true;
    QString whyNot;
    Given<double> cellsInSeries;        // 1 or more
    Given<Voltage> cellFull;            // V a cell at full charge, 0 or more
    std::optional<Voltage> cellNominal; // only told beside it, never judged
};

// A motor with magnets turned from outside (downhill, towing), with nothing holding it down. The
// voltage is proportional to the speed.
struct MotorAtOverspeed
{
    bool applies = true;
    QString whyNot;                    // "no magnets: an induction motor"
    QString of;                        // which of several motors; empty for the only one
    Given<Voltage> noLoad;             // V line to line, rms, at the speed below
    Given<RotationSpeed> noLoadSpeed;  // rad/s, above 0
    Given<RotationSpeed> highestSpeed; // rad/s, of the motor, in gear, at the vehicle's highest
};

// A part's limit. One whose kind is not stated answers for neither.
struct VoltageLimit
{
    Given<Voltage> voltage; // V, above 0; rms if alternating
    std::optional<CurrentKind> kind;
};

struct CircuitRatingsInputs
{
    QString circuit; // key
    QString name;    // "traction circuit"
    CurrentKind current = CurrentKind::Dc;
    // Of the inverter that joins an alternating circuit to direct voltages; asked for only there.
    Chosen<Modulation> modulation{
        chosen(Modulation::SixStep, QStringLiteral("modulation"), Evidence::Assumed)};
    PackAtFull pack;
    MotorAtOverspeed motor;
    std::vector<MotorAtOverspeed> otherMotors; // that hang on the same link
    // Charger's maximum output, boosted link, regeneration when the pack drops out, whatever else.
    std::vector<VoltageSource> others;
    std::vector<Assembly<VoltageLimit>> parts;
};

// "class A", "class B" (ISO 6469-3: 60 V DC or 30 V AC, 1500 V DC or 1000 V AC), "beyond class B".
QString voltageClass(Voltage voltage, CurrentKind kind);

// Id "circuit_ratings". Comparisons are per part, worst first. Where a pack drives the circuit, the
// inverse is worked beside them.
Check judgeCircuitRatings(const CircuitRatingsInputs &inputs);

// The greatest voltage that is known to reach the circuit, of its kind; and those that apply and
// nobody knows, which may be greater. Known in no circuit of which nothing is.
struct WorstVoltage
{
    Given<Voltage> known; // V, above 0; rms if alternating
    std::vector<Origin> missing;
};

// For what else starts at that voltage, by the same rules as the check.
WorstVoltage worstVoltage(const CircuitRatingsInputs &inputs);

struct MostCells
{
    std::optional<int> cells; // none: no known limit, or the full voltage of a cell is not known
    QString decidedBy;        // path of the part with the lowest limit
    Voltage limit;            // its limit
    QStringList unknowns;     // what could still lower it, a name each
    QStringList above;        // what is above that limit however few the cells, a name each
    bool operator==(const MostCells &) const = default;
};

// Most cells in series that every part on the circuit allows, given the full voltage of a cell, and
// what is told of the whole pack in proportion. `share` of each limit, above 0 to 1, is used.
MostCells mostCellsInSeries(const CircuitRatingsInputs &inputs, double share = 1);

} // namespace ohmwright
