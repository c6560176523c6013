// SPDX-License-Identifier: GPL-3.0-or-later
// A part that is not in the book yet, judged against the circuit it is meant for.
#pragma once

#include "core/verdicts/book_inputs.h"

#include <vector>

namespace ohmwright {

// Its voltage limits against the worst the circuit can reach; others of `ratings` are passed over.
// None when the book does not know any voltage of the circuit, or the part has no limit yet.
std::optional<Check> judgeCandidate(const BookInputs &in, const Circuit &circuit,
                                    const QString &name, const std::vector<Rating> &ratings);

} // namespace ohmwright
