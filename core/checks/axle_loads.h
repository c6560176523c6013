// SPDX-License-Identifier: GPL-3.0-or-later
// AxleLoads: masses taken out and put in, the axle loads and centre of gravity before and after,
// against the plates and the tyres.
//
//     rear axle  m_r' = m_r ± Σ m·x/L        x behind the front axle, negative before it
//     a1 = L·m_r/(m_f + m_r)                  centre of gravity behind the front axle
//     h = r + Δm·L/(m·tan θ)                  by lifting one end; above the ground
//     h' = (m·h ± Σ m·z)/m'                   carried on to the changed vehicle
// Sources: Jazar, Vehicle Dynamics; Gillespie, Fundamentals of Vehicle Dynamics.
#pragma once

#include "core/checks/dimensions.h"
#include "core/checks/given.h"

#include <optional>
#include <vector>

namespace ohmwright {

struct AxleMasses
{
    Mass front, rear;
    [[nodiscard]] Mass total() const { return front + rear; }
    bool operator==(const AxleMasses &) const = default;
};

// A mass put at a place; a negative mass is one taken out.
AxleMasses withMass(AxleMasses before, Mass mass, Length place, Length wheelbase);
// Behind the front axle.
Length centreOfGravity(AxleMasses axles, Length wheelbase);
// Height above the ground from `shifted`, what the level end weighs more while the other end is
// lifted so that the wheelbase stands at `angle` (radians) to the ground; `radius` is the loaded
// tyre's. Springs blocked, brakes off.
Length heightByLifting(Mass shifted, Mass total, Length wheelbase, double angle, Length radius);

enum class MassMove { Out, In, Load }; // Load: people and luggage, for the laden state

struct MovedMass
{
    QString name;
    MassMove move = MassMove::In;
    Given<Mass> mass;                    // 0 or more
    Given<Length> place;                 // behind the front axle, negative before it; -5 to 20 m
    std::optional<Given<Length>> height; // above the ground; absent: height is not carried on
};

struct AxleLoadsInputs
{
    QString subject; // key of the vehicle
    Given<Length> wheelbase;
    // As it came. Not needed when it has been weighed after.
    Given<Mass> frontBefore, rearBefore;
    std::vector<MovedMass> moved;
    // As finished, unladen, on the scales: leads over what is computed. Both or neither.
    std::optional<Given<Mass>> frontWeighed, rearWeighed;

    Given<Mass> frontPlate, rearPlate; // permitted on each axle
    Given<Mass> grossPlate;            // permitted laden mass
    struct AxleTyres
    {
        Given<Mass> load; // one tyre's: loadOfIndex(), for dual tyres the dual index
        std::optional<Given<double>> count; // on the axle: 2 or 4; absent: 2
    };
    AxleTyres frontTyres, rearTyres;

    // Height of the centre of gravity before, measured by lifting; absent: not told.
    std::optional<Given<Length>> heightBefore;
    // Measured again after; leads.
    std::optional<Given<Length>> heightAfter;
};

Check judgeAxleLoads(const AxleLoadsInputs &inputs);

} // namespace ohmwright
