// SPDX-License-Identifier: GPL-3.0-or-later
// Warranty, return and carrier-claim windows of a part, on a given day.
#pragma once

#include "core/records/records.h"

#include <QDate>
#include <QString>

#include <optional>
#include <vector>

namespace ohmwright {

enum class DeadlineKind { Claim, Return, Warranty };
enum class DeadlineState {
    Running,
    EndingSoon, // within kEndingSoonDays
    Over,
    MaybeEnded, // still running by date, but the part was opened: by its terms and local law
};

inline constexpr int kEndingSoonDays = 21;

struct Deadline
{
    Id<Part> part;
    DeadlineKind kind = DeadlineKind::Warranty;
    QDate lastDay; // the window is open on this day still
    DeadlineState state = DeadlineState::Running;
    int daysLeft = 0; // 0 on the last day, negative when over
};

QString deadlineName(DeadlineKind kind);    // "warranty", "return", "carrier claim"
QString describe(const Deadline &deadline); // "warranty ends in 12 days (7 Dec 2026)"

std::vector<Deadline> deadlinesOf(const Part &part, QDate today);
// Of parts still in the build, those ending soon, soonest first, then by part key.
std::vector<Deadline> endingSoon(const Records &records, QDate today);

} // namespace ohmwright
