// SPDX-License-Identifier: GPL-3.0-or-later
// Names as people count them: "Module 2" before "Module 10".
#pragma once

#include <QString>

namespace ohmwright::ui {

// A key that sorts as the text is read: case folded, each run of digits as a number.
[[nodiscard]] QString naturalKey(const QString &text);

} // namespace ohmwright::ui
