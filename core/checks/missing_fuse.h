// SPDX-License-Identifier: GPL-3.0-or-later
// A branch of which no fuse is told: is there one, and which? The short circuit is only broken by a
// fuse ahead of the cable, its own or one further up (IEC 60364-4-43, 434.2), so that without an
// answer nothing can be said of the cable.
#pragma once

#include "core/checks/given.h"

namespace ohmwright {

struct MissingFuseInputs
{
    QString branch; // key
    QString name;   // "service disconnect"
    Origin fuse;    // where its fuse, or the one further up that protects it, can be told
    // What bounds the rating from both sides, as far as it is known; only told.
    Given<Current> continuous;    // A, 0 or more
    Given<Current> cableCapacity; // A, above 0, corrected for its place
};

// Id "fuse": takes the place of judgeFuse(). Never better than unknown.
Check judgeMissingFuse(const MissingFuseInputs &inputs);

} // namespace ohmwright
