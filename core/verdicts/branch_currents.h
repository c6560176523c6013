// SPDX-License-Identifier: GPL-3.0-or-later
// What a branch carries: as entered with it, or what driving or the units on it take where that is
// more.
//
// A branch that carries the pack's modules or the inverters carries what the drive's power takes of
// the pack at its lowest charge and cold, where that is most, and never less than somebody typed.
// Of strings in parallel each has its share; inverters of a branch of their own take no more than
// they are good for.
#pragma once

#include "core/verdicts/book_inputs.h"

namespace ohmwright {

// As it was typed.
Given<Current> continuousCurrentEntered(const BookInputs &in, const Branch &branch);
// Not known while nothing is entered: what else hangs on the branch is not in what driving takes.
Given<Current> continuousCurrentOf(const BookInputs &in, const Branch &branch);

struct BranchPeak
{
    Given<Current> current;
    Given<Duration> lasts;
    bool isEntered = true; // else driving or its units take more than is entered
};
// None where no peak is entered, and neither driving nor its units take one or nobody knows.
std::optional<BranchPeak> peakOf(const BookInputs &in, const Branch &branch);

} // namespace ohmwright
