// SPDX-License-Identifier: GPL-3.0-or-later
// Voltage class of a circuit, by ISO 6469-3: class B is above 60 V DC or 30 V AC rms.
#pragma once

#include "core/records/records.h"

namespace ohmwright {

// By the circuit's worst voltage, else its nominal one; unknown counts as class B, but for a
// circuit that is said to be a low-voltage one.
bool isVoltageClassB(const Circuit &circuit);
// On any circuit of class B.
bool isVoltageClassB(const Records &records, const Part &part);

} // namespace ohmwright
