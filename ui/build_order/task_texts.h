// SPDX-License-Identifier: GPL-3.0-or-later
// A task's times as they are typed and shown, and the caution that goes with its work.
#pragma once

#include "core/parts/cautions.h"
#include "core/quantity/result.h"
#include "core/records/records.h"

#include <QString>

#include <optional>

namespace ohmwright::ui {

// "3 h", "45 min", "1 h 30 min"; empty for none.
[[nodiscard]] QString showWorkTime(int minutes);
// Whole minutes; a bare number is hours, nothing typed is none.
[[nodiscard]] Result<int> readWorkMinutes(const QString &typed);

// "5 d"; empty for none.
[[nodiscard]] QString showWaitDays(int days);
// A part of a day counts whole; a bare number is days, nothing typed is none.
[[nodiscard]] Result<int> readWaitDays(const QString &typed);

// High voltage leads; else by the task's area and title: battery, petrol, lifting.
[[nodiscard]] std::optional<CautionText> cautionFor(const Task &task);

} // namespace ohmwright::ui
