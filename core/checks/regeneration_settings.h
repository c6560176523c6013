// SPDX-License-Identifier: GPL-3.0-or-later
// Regeneration told twice: as a current into the pack, for its cells, and as a power set in the
// controller, for range. One of them is then not what will be driven with.
#pragma once

#include "core/checks/worksheet.h"

namespace ohmwright {

struct RegenerationSettings
{
    Given<Power> power;         // W, into the pack
    Given<Current> current;     // A, into the pack
    Given<Voltage> least, most; // V of the pack, empty and full
};

// A doubt on the sheet, naming both, where the current at no voltage of the pack is that power.
// Within 2 % they agree: nobody sets a controller finer. Nothing where one of the figures is not
// known. The two settings are inputs of the sheet already.
void doubtIfSetTwice(Worksheet &sheet, const RegenerationSettings &settings);

} // namespace ohmwright
