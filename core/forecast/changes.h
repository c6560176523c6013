// SPDX-License-Identifier: GPL-3.0-or-later
// A single change to a plan that can be tried: an hour more a week, a helper on Saturdays, a part
// ordered today, a task left out. What it would bring is gains.h's.
#pragma once

#include "core/forecast/forecast.h"
#include "core/quantity/result.h"

#include <array>
#include <set>

namespace ohmwright::forecast {

// Written as a person types it after --try:
//   hours+90            minutes more a week, on the day with the longest working time
//   evening:monday+120  minutes more on that day, alone, behind the working times it has
//   helper:saturday     one more pair of hands in that day's working times
//   order:PART          ordered today, whatever task is for it
//   drop:TASK           not done at all; what waited on it waits on what it waited on itself
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
// NotFound if the book has no such thing open; NotAllowed for a task that is no free work.
Result<PlanChange> parsePlanChange(const QString &text, const Records &records);
// "“Pack” ordered today", "A helper on Saturdays", "Monday evenings, 2 h more a week".
QString describe(const PlanChange &change, const Records &records);

// The records as they would be; a copy, nothing is written.
Records changedBy(const Records &records, const PlanChange &change, QDate today);

// Why the change can bring nothing, a sentence: a helper on a day when nobody works, a part planned
// as ordered today, or that nothing waits for. Empty if it may bring something.
QString whyNothing(const PlanChange &change, const Records &records, const WorkPlan &plan);

// Days of the usual week, Monday first, on which anybody works.
std::array<bool, 7> workingDays(const Records &records);

// Whether a plan without the task may be looked at as a question of one's own: not what may protect
// people (high voltage, testing, paperwork, what may fail, what needs a test, a permit or a
// letter), not what buys or opens a part or asks for a letter, and no milestone.
bool isFreeWork(const Records &records, const ohmwright::Task &task);
// The tasks that open ones wait on, other than milestones.
std::set<Id<ohmwright::Task>> neededByWork(const Records &records);
// Whether leaving it out may be advised: free work that nothing but milestones waits on.
// `needed`: neededByWork(), once for many tasks.
bool mayBeLeftOut(const Records &records, const ohmwright::Task &task,
                  const std::set<Id<ohmwright::Task>> &needed);

} // namespace ohmwright::forecast
