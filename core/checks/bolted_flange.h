// SPDX-License-Identifier: GPL-3.0-or-later
// BoltedFlange: does a bolted joint carry a torque by friction, and would its bolts by shear?
//
//     As = π/4·(d − 0.9382·P)²      (ISO 898-1)        F = T/(K·d)     (Shigley)
//     by friction T = n·F·µ·r       (clamp force as in VDI 2230)
//     by shear    T = n·A·τ·r       (any text on strength of materials)
#pragma once

#include "core/checks/bolts.h"
#include "core/checks/chosen.h"
#include "core/checks/dimensions.h"

#include <optional>

namespace ohmwright {

Pressure proofStress(BoltClass strength, Length diameter); // ISO 898-1
// Of the metric coarse thread of that diameter (ISO 261); nothing if it is none from M5 to M24.
std::optional<Length> coarsePitch(Length diameter);
Torque torqueByFriction(int bolts, Force preload, double friction, Length radius);
Torque torqueByShear(int bolts, Area each, Pressure shear, Length radius);

struct BoltedFlangeInputs
{
    QString subject;        // key of the part
    Given<double> bolts;    // 1 to 100, all on one circle
    Given<Length> diameter; // nominal, of the thread
    Given<Length> pitch;
    Chosen<BoltClass> strength; // by the mark on the head
    Given<Length> circleRadius;
    Given<Torque> tightening; // each
    Given<double> nutFactor;  // K: 0.2 dry, 0.15 oiled
    // Largest over least clamp force of bolts tightened alike: 1 to 4.
    Given<double> scatter = given(1.6, QStringLiteral("scatter of tightening"), Evidence::Datasheet,
                                  QStringLiteral("VDI 2230, torque wrench, as quoted"));
    Given<double> friction; // between the faces: 0.1 oiled to 0.2 dry steel
    Given<Torque> carried;  // the most the joint sees
    // Torques of further motors that nobody tells and the joint may see: unknown inputs.
    std::vector<Origin> missing;
    bool threadInShear = true; // the thread, not the shank, stands in the joint

    Threshold<double> slipSafety{QStringLiteral("flange.slip"),
                                 1.5,
                                 QStringLiteral("common practice, no published source"),
                                 Tighter::Higher,
                                 std::nullopt,
                                 {}};
    Threshold<double> shearSafety{QStringLiteral("flange.shear"),
                                  1.25,
                                  QStringLiteral("EN 1993-1-8"),
                                  Tighter::Higher,
                                  std::nullopt,
                                  {}};
};

// The least clamp force that scatter allows is held to friction, the greatest to the proof load.
Check judgeBoltedFlange(const BoltedFlangeInputs &inputs);

} // namespace ohmwright
