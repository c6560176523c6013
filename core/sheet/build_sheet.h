// SPDX-License-Identifier: GPL-3.0-or-later
// What goes on the build sheet for an inspector: the book's records as a Document.
//
// Complete and honest: every figure with its evidence, what is unknown said to be unknown, what is
// open listed as open. It states what was recorded and computed, never that something is safe.
#pragma once

#include "core/checks/check.h"
#include "core/parts/questions.h"
#include "core/records/records.h"
#include "core/sheet/document.h"
#include "core/sheet/working.h"

#include <QByteArray>
#include <QDate>

#include <functional>
#include <vector>

namespace ohmwright {

struct SheetOptions
{
    QDate today;               // the day it is printed
    std::int64_t revision = 0; // Book::revision()
    QByteArray oneLine;        // SVG of oneLineOf(); empty: the sheet is without
    // SVG of a check's plot; none: the sheet is without. Charts are drawn where there is a screen.
    std::function<QByteArray(const Plot &)> plotPicture;
    std::vector<Check> checks; // as judgeBook() gives them; none: the sheet is without
    std::vector<Question> askedByChecks = {}; // as askedByChecks() gives them
    Working working = Working::Short;
};

// Images carry the attachment's SHA-256 as id; a writer's loader turns it into bytes.
sheet::Document buildSheet(const Records &records, const SheetOptions &options);

} // namespace ohmwright
