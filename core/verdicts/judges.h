// SPDX-License-Identifier: GPL-3.0-or-later
// The judges: each reads out of a book what one check needs, for everything in the book the check
// is about, and works it. One file each in this folder; to add one, a line in the list of
// electrical_judges.cpp or vehicle_judges.cpp.
#pragma once

#include "core/verdicts/book_inputs.h"

#include <span>
#include <string_view>
#include <vector>

namespace ohmwright {

struct Judge
{
    std::string_view check; // id, as the Check has it
    // As many as there are things it is about; none where the book has nothing of the kind.
    std::vector<Check> (*judge)(const BookInputs &inputs);
    // Tables it reads, so that an edit elsewhere need not be judged anew. A test sees to it that
    // none is forgotten.
    std::vector<std::string_view> reads;
};

std::span<const Judge> electricalJudges();
std::span<const Judge> vehicleJudges();

} // namespace ohmwright
