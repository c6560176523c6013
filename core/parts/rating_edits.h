// SPDX-License-Identifier: GPL-3.0-or-later
// What a person does to the ratings of a part or of a type; each one edit.
#pragma once

#include "core/book/book.h"
#include "core/parts/figures.h"

namespace ohmwright {

// Every figure anything is recorded for the type, in order of the enum.
std::vector<Figure> figuresOf(const Records &records, const PartType &type);

// Of a new one the id is not set, and it goes last; its part or type says whose it is.
Result<Id<Rating>> saveRating(Book &book, Rating rating);
// This one stands, and no other of the same figure of that part or type. BadInput without a reason.
Outcome settleRating(Book &book, Id<Rating> rating, const QString &reason);
Outcome unsettleRating(Book &book, Id<Rating> rating);
Outcome removeRating(Book &book, Id<Rating> rating);

} // namespace ohmwright
