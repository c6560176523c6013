// SPDX-License-Identifier: GPL-3.0-or-later
// Ratings of parts against what passes through them, in one schedule: a group for each check, a row
// for each part, a limit for each way of loading it.
#pragma once

#include "core/sheet/sheet_sections.h"
#include "core/sheet/worked_check.h"

#include <vector>

namespace ohmwright::sections {

// The check holds parts to their limits and works nothing out beside.
bool isOfRatings(const Check &check);

// Without a heading. All of one kind.
void addRatingSchedule(const std::vector<const Check *> &checks, SaidBefore &said, Blocks &to);

} // namespace ohmwright::sections
