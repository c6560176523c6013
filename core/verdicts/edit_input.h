// SPDX-License-Identifier: GPL-3.0-or-later
// Changing an input of a check in place: the figure behind it, wherever in the book it lies.
#pragma once

#include "core/book/book.h"
#include "core/checks/check.h"
#include "core/parts/questions.h"

#include <QString>

#include <optional>

namespace ohmwright {

// One edit. `address` is a CheckInput's Origin::field. `typed` is "450 V", or with where it comes
// from "450 V, datasheet, page 4"; a choice is its word; empty says that it is not known. Without
// evidence it counts as assumed, for nobody knows where it came from; a field of another record
// keeps what it rests on. A curve is its points, "0 %: 3.0 V; 100 %: 4.2 V", with where they come
// from likewise; it becomes the part's own. A rating stands from then on; one that cannot, because
// only papers and plate raise a limit, is refused. BadInput with a sentence for what cannot be read
// or is not allowed.
Outcome editInput(Book &book, const QString &address, const QString &typed);

// What was typed, taken apart: "450 V DC, datasheet, page 4".
struct TypedFigure
{
    QString value; // "450 V"; a DC or AC behind it is taken off
    std::optional<Evidence> evidence;
    QString source;
};
TypedFigure splitTyped(const QString &typed);

// "Find out" of an unknown input: a task that holds up what needs the part, if it is a figure of
// one. `unknown` is one of Check::unknowns.
Result<Id<Task>> findOut(Book &book, const Check &check, const QString &unknown);
// Whether such a task is on the build order and open.
bool isBeingFoundOut(const Records &records, const Check &check, const QString &unknown);

// Which choices an address has; empty for a number.
QStringList choicesAt(const QString &address);

} // namespace ohmwright
