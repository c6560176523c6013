// SPDX-License-Identifier: GPL-3.0-or-later
// Words and marks the pieces of the Checks page share.
#pragma once

#include "core/checks/check.h"
#include "ui/widgets/marks.h"

#include <QString>

namespace ohmwright::ui {

// All verdicts, worst first: the order in which they are counted, filtered and listed.
inline constexpr std::array kWorstFirst{Verdict::Fails, Verdict::Unknown, Verdict::Tight,
                                        Verdict::Holds};

[[nodiscard]] Mark markOf(Verdict verdict);
[[nodiscard]] QString verdictWord(Verdict verdict); // "fails"
[[nodiscard]] QString protectedName(Protects what); // "Electronics"
// "datasheet", "seller's word".
[[nodiscard]] QString evidenceWord(Evidence evidence);

// "12.3 %", "-4.0 %"; one decimal, and no more than 999 % either way.
[[nodiscard]] QString marginFigure(double margin);
// "12.3 % to spare", "short by 4.0 %".
[[nodiscard]] QString marginWords(double margin);

// Stays the same while the figures change: id, subject and title.
[[nodiscard]] QString checkKey(const Check &check);

// One line of text: the sentence of a refusal with what to do about it.
[[nodiscard]] QString toldOf(const Problem &problem);

} // namespace ohmwright::ui
