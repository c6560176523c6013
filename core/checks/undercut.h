// SPDX-License-Identifier: GPL-3.0-or-later
// For limits that must be undercut ("less than 0.1 Ω"): a value that merely equals one fails it.
#pragma once

namespace ohmwright {

template <class Q>
Q toUndercut(Q value, Q limit)
{
    constexpr double kJustAbove = 1 + 1e-9;
    return value < limit || limit < value ? value : value * kJustAbove;
}

} // namespace ohmwright
