// SPDX-License-Identifier: GPL-3.0-or-later
// Ids 1000, 1001, …: for tests that read documents without a book.
#pragma once

#include "core/interchange/interchange.h"

namespace ohmwright {

inline IdSource countingIds()
{
    return [next = std::int64_t{1000}]() mutable {
        return next++;
    };
}

} // namespace ohmwright
