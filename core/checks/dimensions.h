// SPDX-License-Identifier: GPL-3.0-or-later
// Dimensions only the checks compute with; what a person types has its type in core/quantity.
#pragma once

#include "core/checks/check.h" // first: lists of measures in it would shadow the types below
#include "core/quantity/quantity.h"

namespace ohmwright {

using Acceleration = Quantity<0, 1, -2, 0, 0>;
using ForcePerSpeed = Quantity<1, 0, -1, 0, 0>;        // of a coast-down: f1
using ForcePerSpeedSquared = Quantity<1, -1, 0, 0, 0>; // of a coast-down: f2
using MomentOfInertia = Quantity<1, 2, 0, 0, 0>;

} // namespace ohmwright
