// SPDX-License-Identifier: GPL-3.0-or-later
// Whether a work permit gives leave to work on high voltage today, and what it lacks.
//
// Gloves in date, the circuit locked off, the wait over, absence of voltage proved with a named
// instrument and found below the touch limit, two people. Source of the points: EN 50110-1, the
// usual five rules; of the limit, 60 V DC: ISO 6469-3. What the place's own law asks leads.
#pragma once

#include "core/records/records.h"

#include <QStringList>

namespace ohmwright {

// A sentence each; empty when it holds. A closed permit lacks being open, whatever else it has.
// Proof of absence counts on the day it was given alone.
QStringList lackingOf(const WorkPermit &permit, QDate today);

} // namespace ohmwright
