// SPDX-License-Identifier: GPL-3.0-or-later
// The starters' files as JSON, and what their conditions mean.
#pragma once

#include "core/starters/starters.h"

#include <array>
#include <nlohmann/json.hpp>
#include <string>

namespace ohmwright {

using StarterJson = nlohmann::ordered_json;

// The arrays of records a starter may hold, as the interchange calls them.
inline constexpr std::array kStarterKinds{
    "working_times",  "budget_lines", "circuits", "parts", "interfaces", "lost_functions",
    "safety_systems", "masses",       "letters",  "tests", "tasks",
};

// The file of that name, compiled in; read once. Null for one that is not there.
const StarterJson *starterFile(const QString &name);

// Names of the starters' own files, in the order to offer them.
const QStringList &starterNames();

// A text member, empty when it is not there.
QString textAt(const StarterJson &object, const char *member);

// All answers a condition can ask about: those given, the usual ones for the rest, what the starter
// settles without asking, and its own name as the answer to "starter".
QMap<std::string, std::string> allAnswers(const Starter &starter, const StarterAnswers &answers);

// "when": every question named has one of the answers named. "unless": none has.
// A question that nobody answered, or a condition of another shape, is our data's mistake:
// BadInput.
Result<bool> isIncluded(const StarterJson &record, const QMap<std::string, std::string> &answers);

} // namespace ohmwright
