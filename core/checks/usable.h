// SPDX-License-Identifier: GPL-3.0-or-later
// Whether an input just taken onto a sheet can be computed with: known, and not refused. For checks
// that go on with what is known, so that a known failure is found whatever else is missing.
#pragma once

#include "core/checks/given.h"

namespace ohmwright {

// take() gives back what was put in, or zero.
template <class Q>
bool isUsable(const Given<Q> &input, Q taken)
{
    return input.value && *input.value == taken;
}

} // namespace ohmwright
