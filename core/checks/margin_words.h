// SPDX-License-Identifier: GPL-3.0-or-later
// A margin in words and figures, alike on every page, on paper and in what the commands print.
//
// A margin is of the limit. What must be at most a limit has at most all of it to spare; what must
// be at least one may be any number of times as much, and what exceeds its limit likewise: beyond
// the whole of the limit it is told as times, which can be pictured, and not as a percentage.
#pragma once

#include <QString>

namespace ohmwright {

// "12 %", "4.5 %", "-4.0 %"; "3.2 times"; "3.5 times over". A tenth of a percent is told below ten,
// and no more than 100 times.
[[nodiscard]] QString marginFigure(double margin);
// "12 % to spare", "short by 4.0 %"; "3.2 times what is asked", "3.5 times the limit".
[[nodiscard]] QString marginWords(double margin);

} // namespace ohmwright
