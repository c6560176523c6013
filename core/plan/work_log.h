// SPDX-License-Identifier: GPL-3.0-or-later
// The work log: start and stop, or entered after; each one edit.
#pragma once

#include "core/book/book.h"

#include <QDateTime>

namespace ohmwright {

inline constexpr int kMostMinutesLogged = 2880; // in one entry; two days by the clock

// Work under way; the one begun last, null when there is none.
const WorkEntry *workUnderWay(const Records &records);
// From its start to `now` (local time), whole minutes, 0 to kMostMinutesLogged.
int minutesSince(const WorkEntry &entry, const QDateTime &now);

// Begins now, on a task or on the build as a whole; work under way is stopped first, and a task
// that is open counts as started from today on. NotAllowed for a task that is done.
Result<Id<WorkEntry>> startWork(Book &book, std::optional<Id<Task>> task, const QDateTime &now);
// NotFound if none is under way. `note` is added to what it says already.
Outcome stopWork(Book &book, const QDateTime &now, const QString &note = {});
// Entered after: BadInput without minutes, for a day ahead, or beyond the bounds of the record.
Result<Id<WorkEntry>> logWork(Book &book, WorkEntry entry);
// Of all finished entries of the task, with every pair of hands; person-minutes.
int loggedMinutes(const Records &records, Id<Task> task);

} // namespace ohmwright
