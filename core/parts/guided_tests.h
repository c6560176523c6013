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

// Only inside an edit: gives a guided test its steps, if it has none yet. Others are left alone.
Outcome addGuidedSteps(Book &book, const TestRecord &test);

} // namespace ohmwright
