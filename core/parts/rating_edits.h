// SPDX-License-Identifier: GPL-3.0-or-later
// What a person does to the ratings of a part or of a type; each one edit.
#pragma once

#include "core/book/book.h"
#include "core/parts/figures.h"

namespace ohmwright {

// Of a new one the id is not set, and it goes last; its part or type says whose it is.
Result<Id<Rating>> saveRating(Book &book, Rating rating);
// This one stands, and no other of the same figure of its part or type. A part's own stands before
// its type's, so a type's that is to stand on a part unsettles that part's own; a part's own leaves
// the type alone, for other parts lean on it. BadInput without a reason.
Outcome settleRating(Book &book, Id<Rating> rating, const QString &reason,
                     Id<Part> onPart = Id<Part>());
Outcome unsettleRating(Book &book, Id<Rating> rating);
Outcome removeRating(Book &book, Id<Rating> rating);

} // namespace ohmwright
