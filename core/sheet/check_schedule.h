// SPDX-License-Identifier: GPL-3.0-or-later
// Checks alike that hold, worked in one schedule as an engineer sets it out: what each figure is,
// its formula and what is the same for all once, then a row for each check.
//
// Nothing is left out: a figure that stands neither in a row nor in the head is told by a
// number beside the result it was used for, as is evidence that differs: the list stands at the
// end.
#pragma once

#include "core/sheet/sheet_sections.h"
#include "core/sheet/worked_check.h"

#include <vector>

namespace ohmwright::sections {

// Whether the schedule has a place for all there is to say of the check.
bool fitsASchedule(const Check &check);

// Without a heading. Two or more of one kind.
void addCheckSchedule(const std::vector<const Check *> &checks, SaidBefore &said, Blocks &to);

} // namespace ohmwright::sections
