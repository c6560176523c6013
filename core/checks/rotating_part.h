// SPDX-License-Identifier: GPL-3.0-or-later
// RotatingPart: does a coupler, adaptor or flywheel hold together at overspeed, and is it balanced?
//
//     thin ring     σ = ρ·r²·ω²                                          (Carvill, Mechanical
//     solid disc    σ = (3+ν)/8·ρ·ro²·ω², at the centre                   Engineer's Data Handbook,
//     annular disc  σ = (3+ν)/4·ρ·ω²·(ro² + (1−ν)/(3+ν)·ri²), at the bore  1.2.7; Shigley and
//     Mischke) stored        E = ½·J·ω² balance       G = e·ω, U = e·m (ISO 21940-11)
#pragma once

#include "core/checks/chosen.h"
#include "core/checks/dimensions.h"

#include <optional>

namespace ohmwright {

enum class RotatingShape { ThinRing, SolidDisc, AnnularDisc };
template <>
struct EnumWords<RotatingShape>
{
    static constexpr std::array words{"thin ring", "solid disc", "disc with a bore"};
};

// Largest stresses at a speed, without notches. `inner` counts for the annular disc alone.
Pressure rotatingStress(RotatingShape shape, Density density, double poisson, Length outer,
                        Length inner, RotationSpeed speed);
// Of the annular disc: radial, at √(ri·ro); hoop at the outer edge.
Pressure annularRadialStress(Density density, double poisson, Length outer, Length inner,
                             RotationSpeed speed);
Pressure annularEdgeStress(Density density, double poisson, Length outer, Length inner,
                           RotationSpeed speed);
// m·r² for the ring, ½·m·(ro² + ri²) for discs.
MomentOfInertia rotatingInertia(RotatingShape shape, Mass mass, Length outer, Length inner);
// e_per·m, with e_per = G/ω.
Unbalance permissibleUnbalance(Speed grade, Mass mass, RotationSpeed speed);

struct RotatingPartInputs
{
    QString subject; // key of the part
    Chosen<RotatingShape> shape;
    Given<Length> outerRadius; // of the ring: its mean radius, or on the safer side the outer
    Given<Length> innerRadius; // annular disc only: the bore
    Given<Mass> mass;
    Given<Density> density;
    Given<double> poisson; // 0 to 0.5; steel 0.3
    Given<Pressure> yieldStrength;
    // A certificate for this very piece of material (EN 10204 3.1 or better). Without it the
    // verdict is never better than unknown.
    bool certified = false;
    // The speed a spin test of this very part has proved; decides where there is no certificate.
    std::optional<Given<RotationSpeed>> spinTestedTo;
    // Local stress over plain stress, at holes, keyways and corners: 1 to 10. Absent: a plain part.
    std::optional<Given<double>> concentration;

    Given<RotationSpeed> highestSpeed; // it is ever turned at: the motor's limit, or downhill
    // Speeds of further motors that nobody tells, any of which may turn it faster: unknown inputs.
    std::vector<Origin> missing;
    Given<double> overspeed = given(1.2, QStringLiteral("overspeed factor"), Evidence::Datasheet,
                                    QStringLiteral("IEC 60034-1, overspeed test"));
    Given<Unbalance> residualUnbalance; // measured, on the balancing machine's sheet

    // A stated factor lower than this is held against it.
    Threshold<double> leastOverspeed{QStringLiteral("rotating.overspeed"),
                                     1.2,
                                     QStringLiteral("IEC 60034-1, overspeed test"),
                                     Tighter::Higher,
                                     std::nullopt,
                                     {}};
    Threshold<double> safety{QStringLiteral("rotating.safety"), // against yielding, at overspeed
                             1.5,
                             QStringLiteral("common practice, no published source"),
                             Tighter::Higher,
                             std::nullopt,
                             {}};
    Threshold<Speed> balanceGrade{QStringLiteral("rotating.balance"),
                                  Speed::fromSi(6.3e-3),
                                  QStringLiteral("ISO 21940-11, grade G 6.3"),
                                  Tighter::Lower,
                                  std::nullopt,
                                  {}};
};

Check judgeRotatingPart(const RotatingPartInputs &inputs);

} // namespace ohmwright
