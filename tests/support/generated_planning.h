// SPDX-License-Identifier: GPL-3.0-or-later
// The planning records and fields of a book made by chance, all within the rules: estimates, hands
// and hours, the work log, choices.
#pragma once

#include "tests/support/generated_book.h"

#include <cstdint>

namespace ohmwright {

// Added to a book that is whole but for them; drawn from chances of their own, so that the rest of
// the book stays what its seed makes it.
void addPlanning(Records &records, std::uint32_t seed, const BookSize &size, Texts texts);

} // namespace ohmwright
