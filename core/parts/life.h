// SPDX-License-Identifier: GPL-3.0-or-later
// The life of a part: which state may follow which, and every move dated.
//
//     wanted -> ordered -> in hand -> tested -> fitted
//     and out of it: returned, sold, scrapped (ends), quarantined (kept apart, not to be used)
//
// A unit or module must be tested before it is fitted; hardware, tools, consumables and services
// need not be.
#pragma once

#include "core/book/book.h"
#include "core/records/records.h"

#include <vector>

namespace ohmwright {

// NotAllowed with the reason in the part's own words ("A unit must be tested before it is
// fitted.").
Outcome mayMove(PartKind kind, PartState from, PartState to);
std::vector<PartState> movesFrom(PartKind kind, PartState from);

// Out of the build for good: returned, sold, scrapped.
bool isGone(PartState state);
// Whether a part in `state` has got as far as `wanted` on the way wanted, ordered, in hand, tested,
// fitted. A part that is gone or quarantined has not.
bool hasReached(PartState state, PartState wanted);

// Inside an edit: the move and the new state. Refuses dates before the last move's and after today.
Outcome recordMove(Book &book, Id<Part> part, PartState to, QDate on, const QString &note);
// Inside an edit: the first entry of a new part's life, in its state.
Outcome recordBirth(Book &book, const Part &part, QDate on);

// One edit: "Rear drive unit is tested".
Outcome movePart(Book &book, Id<Part> part, PartState to, QDate on, const QString &note = {});

} // namespace ohmwright
