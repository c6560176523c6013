// SPDX-License-Identifier: GPL-3.0-or-later
// One check worked in full: what is given, the formulas with the figures in them, what the results
// are held against, its plots and what was said of it.
#pragma once

#include "core/sheet/held_limits.h"
#include "core/sheet/sheet_sections.h"

#include <QStringList>

#include <set>
#include <utility>

namespace ohmwright::sections {

// What was said already of a check of the same kind is not said again.
class SaidBefore
{
public:
    [[nodiscard]] QStringList fresh(const Check &check, const QStringList &texts);

private:
    std::set<std::pair<QString, QString>> m_said;
};

// Verdict and sentence, at the head of a check's working.
void addVerdict(const Check &check, Blocks &to);

// Without its heading. In the short working a limit is not given as well, and what would turn a
// verdict is left out where it holds. `leaveOut`: inputs told before for several checks together.
void addWorked(const Sources &from, const Check &check, Working working,
               const std::set<const CheckInput *> &leaveOut, SaidBefore &said, Blocks &to);

// Thresholds of one's own, doubts, refusals, what would turn it, what to do afterwards, source.
void addLines(const Check &check, Working working, SaidBefore &said, Blocks &to);

} // namespace ohmwright::sections
