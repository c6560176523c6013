// SPDX-License-Identifier: GPL-3.0-or-later
// Whether two values of one figure say the same.
#pragma once

#include "core/quantity/amount.h"
#include "core/records/records.h"

namespace ohmwright {

// Limits agree if they are equal but for a change of unit; actual values if they are within 2 %,
// for garage scales and meters do not do better (common practice, no published source).
bool agree(RatingKind kind, const Amount &a, const Amount &b);

} // namespace ohmwright
