// SPDX-License-Identifier: GPL-3.0-or-later
// The conductor of a branch as its checks need it: what is told of it in the branch's own words
// ("copper, class 5, cross-linked, 125 °C") or in figures, and which table answers for it.
//
// Assumed unless told otherwise, each said so: 50 °C where it lies, alone, in a closed duct (the
// worst of the ways there are tables for), there and back twice the branch's length.
#pragma once

#include "core/checks/conductor.h"
#include "core/verdicts/book_inputs.h"
#include "core/verdicts/branch_currents.h"

namespace ohmwright {

// Whether anything is told of the branch's conductor.
bool hasConductor(const BookInputs &in, const Branch &branch);

AmpacityConditions ampacityConditions(const BookInputs &in, const Branch &branch);
// The cable maker's current if it is known, else the table for how the cable lies and what its
// insulation stands.
AmpacityTable tableFor(const BookInputs &in, const Branch &branch,
                       const AmpacityConditions &conditions);
Chosen<ConductorClass> strandsOf(const BookInputs &in, const Branch &branch);
Given<Length> runOf(const BookInputs &in, const Branch &branch);
// What it carries for good at its place; not known when a condition is not, or no table answers.
Given<Current> capacityOf(const BookInputs &in, const Branch &branch);
// What the insulation stands for seconds; by its kind unless it is told.
Given<Temperature> shortTimeOf(const BookInputs &in, const Branch &branch);
// Hot, of the whole run.
Given<Resistance> hotResistanceOf(const BookInputs &in, const Branch &branch);

} // namespace ohmwright
