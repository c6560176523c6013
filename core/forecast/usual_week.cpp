// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/forecast/usual_week.h"

#include "core/forecast/hours.h"

#include <algorithm>
#include <bitset>

namespace ohmwright::forecast {

namespace {

constexpr int kMinutesOfADay = 24 * 60;
constexpr std::size_t kSlotsOfADay = kMinutesOfADay / kSlotMinutes;

// The pattern that stands for the hours a week while none is told (hours.h), as working times.
void tellAssumedHours(Records &records)
{
    if (records.all<WorkingTime>().size() > 0)
        return;
    const int minutes = records.build().hoursPerWeek * 60;
    std::vector<WorkingTime> times;
    const auto add = [&](Weekday day, int length) {
        WorkingTime time;
        time.id = Id<WorkingTime>(static_cast<std::int64_t>(times.size()) + 1);
        time.key = wordOf(day);
        time.weekday = day;
        time.minutes = std::clamp(length, 1, 1440);
        times.push_back(time);
    };
    if (minutes <= 24 * 60) {
        add(Weekday::Tuesday, minutes / 4);
        add(Weekday::Thursday, minutes / 4);
        add(Weekday::Saturday, minutes / 2);
    } else {
        for (int day = 0; day < 7; ++day)
            add(static_cast<Weekday>(day), minutes / 7);
    }
    records.all<WorkingTime>().assign(std::move(times));
}

// The usual week alone, told or assumed.
Records withUsualWeek(const Records &records)
{
    Records week;
    week.all<Build>() = records.all<Build>();
    week.all<WorkingTime>() = records.all<WorkingTime>();
    tellAssumedHours(week);
    return week;
}

// Of the working times that are told.
DaySpan spanOfTold(const Records &records, Weekday weekday)
{
    DaySpan span;
    std::optional<int> earliest;
    for (const WorkingTime &time : records.all<WorkingTime>())
        if (const std::optional<int> start = minuteOf(time.starts);
            start && time.weekday == weekday)
            earliest = std::min(earliest.value_or(*start), *start);
    span.starts = earliest.value_or(usualStart(static_cast<int>(weekday) + 1));
    span.from = span.to = span.starts;
    for (const WorkingTime &time : records.all<WorkingTime>())
        if (time.weekday == weekday) {
            // what would run over midnight is planned before it (hours.h)
            const int start = std::max(0, std::min(minuteOf(time.starts).value_or(span.starts),
                                                   kMinutesOfADay - time.minutes));
            span.from = std::min(span.from, start);
            span.to = std::max(span.to, start + time.minutes);
        }
    return span;
}

QString clock(int minute)
{
    return QStringLiteral("%1:%2")
        .arg(minute / 60, 2, 10, QLatin1Char('0'))
        .arg(minute % 60, 2, 10, QLatin1Char('0'));
}

// The working times with a start for each of that day: else those without one would begin with
// whatever is added to it.
std::vector<WorkingTime> withStarts(const Records &records, Weekday weekday)
{
    const DaySpan span = spanOfTold(records, weekday);
    std::vector<WorkingTime> times = records.all<WorkingTime>().rows();
    for (WorkingTime &time : times)
        if (time.weekday == weekday && time.starts.isEmpty())
            time.starts = clock(span.starts);
    return times;
}

WorkingTime oneMore(const std::vector<WorkingTime> &times, Weekday weekday, int minutes)
{
    std::int64_t last = 0;
    for (const WorkingTime &time : times)
        last = std::max(last, time.id.value());
    WorkingTime further;
    further.id = Id<WorkingTime>(last + 1);
    further.key = QStringLiteral("further-%1").arg(last + 1);
    further.weekday = weekday;
    further.minutes = minutes;
    return further;
}

} // namespace

DaySpan spanOf(const Records &records, Weekday weekday)
{
    return spanOfTold(withUsualWeek(records), weekday);
}

std::array<bool, 7> workingDays(const Records &records)
{
    const Records week = withUsualWeek(records);
    std::array<bool, 7> days{};
    for (const WorkingTime &time : week.all<WorkingTime>())
        days[static_cast<std::size_t>(time.weekday)] = true;
    return days;
}

void addMinutes(Records &records, int minutes)
{
    tellAssumedHours(records);
    std::vector<WorkingTime> times = records.all<WorkingTime>().rows();
    const auto longest = std::max_element(
        times.begin(), times.end(),
        [](const WorkingTime &a, const WorkingTime &b) { return a.minutes < b.minutes; });
    longest->minutes = std::min(1440, longest->minutes + minutes);
    records.all<WorkingTime>().assign(std::move(times));
}

void addEvening(Records &records, Weekday weekday, int minutes)
{
    tellAssumedHours(records);
    const DaySpan span = spanOfTold(records, weekday);
    std::vector<WorkingTime> times = withStarts(records, weekday);
    WorkingTime further = oneMore(times, weekday, minutes);
    further.starts = span.to + minutes <= kMinutesOfADay ? clock(span.to)
                     : span.from >= minutes              ? clock(span.from - minutes)
                                                         : QString();
    times.push_back(further);
    records.all<WorkingTime>().assign(std::move(times));
}

void addHelper(Records &records, Weekday weekday)
{
    tellAssumedHours(records);
    std::vector<WorkingTime> times = withStarts(records, weekday);
    std::bitset<kSlotsOfADay + 1> worked; // the last one never is
    for (const WorkingTime &time : times)
        if (time.weekday == weekday) {
            const DaySlots taken = daySlotsOf(minuteOf(time.starts).value_or(0), time.minutes);
            for (int slot = 0; slot < taken.count; ++slot)
                worked.set(static_cast<std::size_t>(taken.first + slot));
        }
    int from = -1;
    for (std::size_t slot = 0; slot < worked.size(); ++slot) {
        const int minute = static_cast<int>(slot) * kSlotMinutes;
        if (worked[slot] && from < 0) {
            from = minute;
        } else if (!worked[slot] && from >= 0) {
            WorkingTime helper = oneMore(times, weekday, minute - from);
            helper.starts = clock(from);
            times.push_back(helper);
            from = -1;
        }
    }
    records.all<WorkingTime>().assign(std::move(times));
}

} // namespace ohmwright::forecast
