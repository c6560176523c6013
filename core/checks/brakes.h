// SPDX-License-Identifier: GPL-3.0-or-later
// Brakes at the new mass and centre of gravity: deceleration, balance, and what boosts them. The
// deceleration is judged as driven and at the plated gross mass, whichever is worse.
//
//     a = (F_f + F_r)/m      N_f = m·(g·b + a·h)/L      f = F/N
//
// Sources: equilibrium of a braked vehicle, T. D. Gillespie, Fundamentals of Vehicle
// Dynamics; UN R13-H (deceleration; balance: the front axle locks first from 0.15 to 0.8 g;
// adhesion used).
#pragma once

#include "core/checks/given.h"

#include <optional>

namespace ohmwright {

enum class BrakeBoost {
    Unassisted,   // as built
    EngineVacuum, // from an engine
    VacuumPump,   // electric
    Electric      // booster without vacuum
};
template <>
struct EnumWords<BrakeBoost>
{
    static constexpr std::array words{"unassisted", "engine vacuum", "vacuum pump", "electric"};
};

// People and what is carried, of which more or less is in the vehicle another time.
struct CarriedLoad
{
    Given<Mass> mass;    // of it, in the mass as it is to drive; 0 or more
    Given<Length> place; // behind the front axle
    Given<Length> height;
};

struct BrakesInputs
{
    QString vehicle;          // key
    Given<Mass> mass;         // as it is to drive, laden; > 0
    Given<Mass> frontAxle;    // of it, standing on the level; > 0, less than mass
    Given<Length> wheelbase;  // > 0
    Given<Length> height;     // of the centre of gravity over the road; > 0
    Given<Mass> approvedMass; // largest the brakes were approved for: the plate's; > 0
    // The balance is worked without it as well, and with more of it up to the approved mass;
    // absent: as driven alone.
    std::optional<CarriedLoad> carried;
    Given<Force> frontForce;  // of both wheels together, at the pedal force below; 0 or more
    Given<Force> rearForce;   // likewise; behind a limiting valve as it is at full braking
    Given<Force> pedalForce;  // at which they were measured, with the boost as it will be; > 0
    Given<BrakeBoost> boost;  //
    bool engineStays = false; // it goes on to make vacuum
    Given<Pressure> vacuum;   // the pump keeps in the reservoir, below the air's; VacuumPump only

    Threshold<Acceleration> deceleration{
        QStringLiteral("brakes.deceleration"),
        Acceleration::fromSi(6.43),
        QStringLiteral("UN R13-H, type 0 test, engine disconnected"),
        Tighter::Higher,
        std::nullopt,
        {}};
    Threshold<Force> pedal{QStringLiteral("brakes.pedal"),
                           Force::fromSi(500),
                           QStringLiteral("UN R13-H, type 0 test"),
                           Tighter::Lower,
                           std::nullopt,
                           {}};
    // Up to this braking, as a share of gravity, the front axle locks first.
    Threshold<double> frontFirstTo{QStringLiteral("brakes.front_first_to"),
                                   0.8,
                                   QStringLiteral("UN R13-H, distribution of braking"),
                                   Tighter::Higher,
                                   std::nullopt,
                                   {}};
    Threshold<Pressure> leastVacuum{QStringLiteral("brakes.least_vacuum"),
                                    Pressure::fromSi(60e3),
                                    QStringLiteral("common practice, no published source"),
                                    Tighter::Higher,
                                    std::nullopt,
                                    {}};
};

// Share of the weight on the front axle while braking at `braking` times gravity; `frontAtRest`
// standing still.
double frontShareBraking(double frontAtRest, Length height, Length wheelbase, double braking);

// The most adhesion k an axle may use at `braking` z, from z ≥ 0.1 + 0.7·(k − 0.2), for k of 0.2
// to 0.8. UN R13-H, distribution of braking.
double mostAdhesionUsed(double braking);

Check judgeBrakes(const BrakesInputs &inputs);

} // namespace ohmwright
