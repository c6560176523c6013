// SPDX-License-Identifier: GPL-3.0-or-later
// Opening a unit while a return or warranty window runs: low-energy acceptance checks first, then
// one deliberate step with a reason.
#pragma once

#include "core/plan/network.h"
#include "core/records/records.h"

#include <QDate>

namespace ohmwright::plan {

// What the task must wait for before it opens a unit; none if it opens none, if the unit was opened
// before, is not in hand yet, or no window runs any more. First the acceptance checks (move test),
// then, when they are passed, the recorded opening (move do). The reason says what may be lost.
std::optional<LeafNeed> openingNeed(const Records &records, const ohmwright::Task &task,
                                    QDate today);

} // namespace ohmwright::plan
