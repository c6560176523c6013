// SPDX-License-Identifier: GPL-3.0-or-later
// The usual week of a copy of the records as it would be with more time or more hands. Where no
// working time is told, the hours a week that stand for them (hours.h) are told first.
#pragma once

#include "core/records/records.h"

#include <array>

namespace ohmwright::forecast {

// When somebody works on a day of the usual week, in minutes of that day; `from` is `to` on a free
// one. `starts`: when those working times begin that say no start.
struct DaySpan
{
    int starts = 0, from = 0, to = 0;
};
DaySpan spanOf(const Records &records, Weekday weekday);

// Days of the usual week, Monday first, on which anybody works.
std::array<bool, 7> workingDays(const Records &records);

// On the day with the longest working time, up to midnight.
void addMinutes(Records &records, int minutes);
// Alone, behind what there is on that day, or before it where midnight is too near.
void addEvening(Records &records, Weekday weekday, int minutes);
// One pair of hands more whenever anybody works on that day: one helper, however many working times
// the day has, and whether they overlap or not.
void addHelper(Records &records, Weekday weekday);

} // namespace ohmwright::forecast
