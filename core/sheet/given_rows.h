// SPDX-License-Identifier: GPL-3.0-or-later
// What a check is given, as tables: a row for each input with its evidence, and where the same
// figures are given of one thing after another (mass, place and height of each load) a row for each
// thing.
#pragma once

#include "core/checks/check.h"
#include "core/sheet/sheet_sections.h"

#include <vector>

namespace ohmwright::sections {

using Inputs = std::vector<const CheckInput *>;

// A row for each, alike ones joined; `what` heads the column of names. That a figure is one of what
// the check's `title` ends with is not said in each row.
void addGivenRows(const Inputs &inputs, const QString &what, const QString &title, Blocks &to);

// The same, with what is given of one thing after another folded into tables of their own.
void addGivenFolded(const Inputs &inputs, const QString &what, const QString &title, Blocks &to);

} // namespace ohmwright::sections
