// SPDX-License-Identifier: GPL-3.0-or-later
// Which option of a choice is planned with: the one taken; while it is open, the first.
#pragma once

#include "core/book/book.h"
#include "core/records/records.h"

namespace ohmwright {

// Null for a choice without options.
const ChoiceOption *plannedOption(const Records &records, const Choice &choice);

// Whether what belongs to `option` counts: always, unless its choice is planned with another. What
// does not count stays in the book for the record.
bool isPlannedWith(const Records &records, const std::optional<Id<ChoiceOption>> &option);

// Takes it for its choice, decided today; `because` may be empty. One edit. NotFound if the option
// is no longer there, NotAllowed if another was taken meanwhile.
Outcome takeOption(Book &book, Id<ChoiceOption> option, const QString &because);

} // namespace ohmwright
