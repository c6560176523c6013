// SPDX-License-Identifier: GPL-3.0-or-later
// 128-bit whole numbers, so that shares and exchange are exact. Used inside core/quantity only.
#pragma once

#include <cstdint>

namespace ohmwright::detail {

// g++ and clang have it on every 64-bit target; __extension__ says that we know it is theirs
__extension__ using Wide = unsigned __int128;

constexpr std::uint64_t magnitude(std::int64_t value)
{
    // written so that the most negative value does not overflow
    return value < 0 ? ~static_cast<std::uint64_t>(value) + 1 : static_cast<std::uint64_t>(value);
}

// `value` is at most 2^63, and that only if negative.
constexpr std::int64_t signedMinor(Wide value, bool negative)
{
    const auto low = static_cast<std::uint64_t>(value);
    return static_cast<std::int64_t>(negative ? ~low + 1 : low);
}

} // namespace ohmwright::detail
