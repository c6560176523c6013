// SPDX-License-Identifier: GPL-3.0-or-later
// The hands and hours there are: the weekly pattern and the special days as a timeline of slots.
#pragma once

#include "core/plan/levelling.h"
#include "core/records/records.h"

#include <QDate>
#include <QString>

#include <optional>
#include <vector>

namespace ohmwright::forecast {

inline constexpr int kSlotMinutes = 15;

// Where no start is told: the evening on working days, the morning at the weekend.
inline constexpr int kEveningStart = 19 * 60;
inline constexpr int kMorningStart = 9 * 60;

QString dayName(Weekday weekday); // "Monday"
QString duration(int minutes);    // "2 h", "1 h 30 min", "45 min"
// Minute of the day of "19:40"; none for an empty time.
std::optional<int> minuteOf(const QString &time);
// Minute of the day when work begins where no start is told; Monday is 1, as in ISO 8601.
int usualStart(int isoWeekday);

// The slots of a day, counted from midnight, that a working time takes. What would run over
// midnight is moved forward: it is the hours that count, not the clock.
struct DaySlots
{
    int first = 0, count = 1;
};
DaySlots daySlotsOf(int startMinute, int minutes);

struct Hours
{
    plan::Timeline timeline; // day 0: today; one resource, the pairs of hands
    bool assumed = false;    // no working time is told: the build's hours a week, shared over
                             // Tuesday and Thursday evening (a quarter each) and Saturday
    int mostHands = 0;       // at once, anywhere
    int minutesPerWeek = 0;  // person-minutes of the usual week
    // Minutes without a break with as many pairs of hands, or more: [0] with one, [1] with two.
    std::vector<int> longestSitting;
};

// Minutes are rounded to whole slots, a working time to one slot at least. What a special day says
// replaces the week's pattern on it; those that are over, or more than ten years ahead, are passed
// over.
Hours hoursOf(const Records &records, QDate today);

} // namespace ohmwright::forecast
