// SPDX-License-Identifier: GPL-3.0-or-later
// Cooling loop: the heat of what is cooled, one after the other, against what radiator, coolant and
// pump carry away at stated conditions.
//
//     C = ρ·c·V̇      T_in = T_air + Q/K      K = ε·min(C, C_air)
//     ε = 1/(r·N)·Σₙ (1 − e^−N·Σₘ N^m/m!)·(1 − e^−rN·Σₘ (rN)^m/m!),  m from 0 to n
//     N = UA/C_min, r = C_min/C_max
//
// Sources: heat balance; effectiveness of a cross-flow exchanger with both sides unmixed, J. L.
// Mason, Proc. 2nd US Nat. Congress of Applied Mechanics, 1954 (Nusselt's solution as a series; the
// closed formula of Incropera and DeWitt, chapter 11, differs by up to 4 %); coolants, coolant.h.
#pragma once

#include "core/checks/coolant.h"
#include "core/checks/given.h"

#include <optional>
#include <vector>

namespace ohmwright {

struct CooledPart
{
    QString name;
    Given<Power> heat;          // at the stated conditions; 0 or more
    Given<Temperature> hottest; // coolant it may be fed with
};

// The air side, when the radiator is told by its exchange area rather than by test.
struct AirSide
{
    Given<ThermalConductance> exchange; // U·A, at these flows; > 0
    Given<FlowRate> air;                // through the core; > 0
};

// Flow worked out from the pump and the loop, both as parabolas: Δp = Δp₀·(1 − (V̇/V̇₀)²) and
// Δp = Δp₁·(V̇/V̇₁)².
struct PumpAndLoop
{
    Given<Pressure> shutOff;  // Δp₀ at no flow; > 0
    Given<FlowRate> freeFlow; // V̇₀ at no pressure; > 0
    Given<Pressure> loopDrop; // Δp₁ of the whole loop; > 0
    Given<FlowRate> loopFlow; // V̇₁ at which it was measured; > 0
};

struct CoolingInputs
{
    QString loop;                  // key
    std::vector<CooledPart> parts; // in the order the coolant meets them behind the radiator
    Given<Coolant> coolant;
    Given<double> glycol;       // share by volume, 0 to 0.6; not used for water
    Given<Temperature> ambient; // air at the radiator
    Given<Temperature> coldest; // of the place, for freezing
    // One of the two.
    Given<FlowRate> flow; // as measured; > 0
    std::optional<PumpAndLoop> pump;
    // One of the two. Between coolant in and air in, at the stated flows; > 0.
    Given<ThermalConductance> radiator;
    std::optional<AirSide> airSide;
};

// Effectiveness ε of a cross-flow exchanger with both sides unmixed; `transferUnits` N and `ratio`
// r (0 to 1) as above.
double crossFlowEffectiveness(double transferUnits, double ratio);

Check judgeCooling(const CoolingInputs &inputs);

} // namespace ohmwright
