// SPDX-License-Identifier: GPL-3.0-or-later
// A line of working, ready to be set on the page: which side of the equals sign is which, and the
// formula with its subscripts and powers where they belong.
#pragma once

#include "core/checks/check.h"

#include <QString>

#include <vector>

namespace ohmwright::ui {

// As rich text: "m_f" gets a subscript, "e^(−t/RC)" a power, single letters stand slanted as
// quantities do (ISO 80000-2). Prose is left upright.
[[nodiscard]] QString formulaHtml(const QString &formula);
// The same for what is certainly no prose: "m_f" alone, left of an equals sign or as a symbol.
[[nodiscard]] QString symbolHtml(const QString &symbol);

// One line of a step: what stands before the sign, the sign, and what follows it.
struct WorkedLine
{
    QString left, sign, right;
    bool isFormula = false; // else figures or words
    bool isResult = false;
    bool operator==(const WorkedLine &) const = default;
};

// Formula, figures put in, result; each only if there is one that says something new.
[[nodiscard]] std::vector<WorkedLine> workedLines(const CheckStep &step);

} // namespace ohmwright::ui
