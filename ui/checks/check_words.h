// SPDX-License-Identifier: GPL-3.0-or-later
// Words and marks the pieces of the Checks page share.
#pragma once

#include "core/checks/check.h"
#include "core/checks/margin_words.h"
#include "ui/widgets/marks.h"

#include <QString>

namespace ohmwright::ui {

[[nodiscard]] Mark markOf(Verdict verdict);
[[nodiscard]] QString verdictWord(Verdict verdict); // "fails"
[[nodiscard]] QString protectedName(Protects what); // "Electronics"
// "datasheet", "seller's word".
[[nodiscard]] QString evidenceWord(Evidence evidence);

// Stays the same while the figures change: id, subject and title.
[[nodiscard]] QString checkKey(const Check &check);

// One line of text: the sentence of a refusal with what to do about it.
[[nodiscard]] QString toldOf(const Problem &problem);

} // namespace ohmwright::ui
