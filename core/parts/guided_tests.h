// SPDX-License-Identifier: GPL-3.0-or-later
// What the program knows of tests before one is made: the steps of a guided one, and the cautions
// that stand before the first field of each kind. Data in resources/.
#pragma once

#include "core/book/book.h"

#include <QStringList>

#include <vector>

namespace ohmwright {

// Ids of cards in resources/cautions.json, most important first; none for kinds without danger.
QStringList cautionsBefore(TestKind kind);

// Steps of the guided first power-up, without ids. Source: resources/first-power-up.json.
std::vector<TestStep> firstPowerUpSteps();

// Low-energy checks on arrival for such a part, or for any: look, compare, measure, turn by hand;
// none of them energises the unit or opens it. Source: resources/acceptance-checks.json.
std::vector<TestStep> acceptanceSteps(const Part *part);

// One edit: a test record with those steps, for a part in hand. NotFound if it is gone.
Result<Id<TestRecord>> addAcceptanceChecks(Book &book, Id<Part> part);

// Only inside an edit: gives a guided test its steps, if it has none yet. Others are left alone.
Outcome addGuidedSteps(Book &book, const TestRecord &test);

} // namespace ohmwright
