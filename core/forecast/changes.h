// SPDX-License-Identifier: GPL-3.0-or-later
// A single change to a plan that can be tried: an hour more a week, a helper on Saturdays, a part
// ordered today, a task left out. What it would bring is gains.h's.
#pragma once

#include "core/forecast/forecast.h"
#include "core/quantity/result.h"

namespace ohmwright::forecast {

// Written as a person types it after --try:
//   hours+90            minutes more a week, on the day with the longest working time
//   evening:monday+120  minutes more on that day, alone, behind the working times it has
//   helper:saturday     one more pair of hands whenever anybody works on that day
//   order:PART          ordered today, without the task that is for it
//   drop:TASK           not done at all
struct PlanChange
{
    enum class Kind { Hours, Helper, Order, Drop, Evening };
    Kind kind = Kind::Hours;
    int minutes = 60; // of Hours and Evening, 1 to 1440
    Weekday weekday = Weekday::Saturday;
    QString key;
    [[nodiscard]] QString code() const; // as typed
    bool operator==(const PlanChange &) const = default;
};

// BadInput with a sentence if it cannot be read, or if the day has not so many minutes left;
// NotFound if the book has no such thing open; NotAllowed for a task that no plan leaves out and a
// part that cannot be ordered today (free_work.h).
Result<PlanChange> parsePlanChange(const QString &text, const Records &records);
// "“Pack” ordered today", "A helper on Saturdays", "Monday evenings, 2 h more a week".
QString describe(const PlanChange &change, const Records &records);

// The records as they would be; a copy, nothing is written.
Records changedBy(const Records &records, const PlanChange &change, QDate today);

// Why the change can bring nothing, a sentence: a helper on a day when nobody works, a part planned
// as ordered today, or that nothing waits for. Empty if it may bring something.
QString whyNothing(const PlanChange &change, const Records &records, const WorkPlan &plan);

} // namespace ohmwright::forecast
