// SPDX-License-Identifier: GPL-3.0-or-later
// How tightly a cable may be bent, and the room its bend takes.
#pragma once

#include "core/checks/given.h"

namespace ohmwright {

// Least inner bending radius over the cable's diameter, fixed installation, normal use: 4 up to
// 8 mm, 5 up to 12 mm, 6 above. Source: IEC 62440, table 3, as printed by a cable maker. The
// cable's own data sheet leads.
constexpr double leastBendFactor(Length diameter)
{
    return diameter.si() <= 8e-3 ? 4 : diameter.si() <= 12e-3 ? 5 : 6;
}

// From the face a connector stands on to the far side of a cable that turns away at a right angle
// behind it: the connector's length, the inner radius and the cable itself.
constexpr Length roomForBend(Length connector, Length diameter, double factor)
{
    return connector + diameter * (factor + 1);
}

} // namespace ohmwright
