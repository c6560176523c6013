// SPDX-License-Identifier: GPL-3.0-or-later
// Open questions that only a check asks: the ratings it could not go on without.
#pragma once

#include "core/checks/check.h"
#include "core/parts/questions.h"

#include <vector>

namespace ohmwright {

// The rating behind an input that `check` does not know, asked by the check. Nothing for an input
// that is known or is no rating of a part still in the build.
std::optional<Question> questionBehind(const Records &records, const Check &check,
                                       const CheckInput &input);

// Every rating that any of `checks` names as unknown, once, with all who ask.
std::vector<Question> askedByChecks(const Records &records, const std::vector<Check> &checks);

} // namespace ohmwright
