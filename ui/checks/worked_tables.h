// SPDX-License-Identifier: GPL-3.0-or-later
// The working of a check as it is written by hand: formulas, figures put in and results under one
// another at the equals sign; and the results held against their limits.
#pragma once

#include "core/checks/check.h"

#include <vector>

class QWidget;

namespace ohmwright::ui {

class Theme;

[[nodiscard]] QWidget *makeWorked(const Theme &theme, const std::vector<CheckStep> &steps);
[[nodiscard]] QWidget *makeHeldAgainst(const Theme &theme,
                                       const std::vector<Comparison> &comparisons);
// Both verdicts side by side, and each loosened threshold with the published one and the reason.
[[nodiscard]] QWidget *makeLoosened(const Theme &theme, const Check &check);

} // namespace ohmwright::ui
