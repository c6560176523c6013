// SPDX-License-Identifier: GPL-3.0-or-later
// What the units on a branch take of it by their own figures, whatever was typed for the branch.
//
// Units that hold their power take most at the lowest voltage they work at: heater, compressor and
// converter from the traction circuit. A charger takes from the mains, and gives to the pack, what
// its check works out. A converter gives the 12 V side all its power. Phases carry what inverter
// and motor both allow. Whatever tells its own current takes that. A precharge resistor takes U/R
// for a moment. Source: Ohm's law; that controlled units hold their power is common practice, no
// published source.
#pragma once

#include "core/verdicts/book_inputs.h"

#include <optional>

namespace ohmwright {

// Of all units on it together; none where none of them tells.
std::optional<Given<Current>> unitsContinuous(const BookInputs &in, const Branch &branch);

struct UnitsPeak
{
    Given<Current> current;
    std::optional<Given<Duration>> lasts; // none: not told with the units
};
std::optional<UnitsPeak> unitsPeak(const BookInputs &in, const Branch &branch);

} // namespace ohmwright
