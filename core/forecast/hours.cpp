// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/forecast/hours.h"

#include <QCoreApplication>

#include <algorithm>
#include <array>
#include <map>
#include <set>

namespace ohmwright::forecast {

namespace {

constexpr int kSlotsPerDay = 24 * 60 / kSlotMinutes;
constexpr int kFurthest = 3653; // ten years

// Pairs of hands in each slot of one day.
using Day = std::array<int, kSlotsPerDay>;

struct Stretch
{
    int from = 0, minutes = 0, hands = 1;
};

void add(Day &day, const Stretch &stretch)
{
    const DaySlots taken = daySlotsOf(stretch.from, stretch.minutes);
    for (int slot = taken.first; slot < taken.first + taken.count; ++slot)
        day[static_cast<std::size_t>(slot)] += stretch.hands;
}

std::array<Day, 7> usualWeek(const Records &records, bool &assumed)
{
    std::array<Day, 7> week{};
    assumed = records.all<WorkingTime>().size() == 0;
    if (assumed) {
        const int minutes = records.build().hoursPerWeek * 60;
        if (minutes <= 24 * 60) {
            add(week[1], {kEveningStart, minutes / 4});
            add(week[3], {kEveningStart, minutes / 4});
            add(week[5], {kMorningStart, minutes / 2});
        } else {
            for (Day &day : week)
                add(day, {kMorningStart, minutes / 7});
        }
        return week;
    }
    // those without a start begin with the earliest that has one, so that they work together
    std::array<int, 7> first{};
    for (int day = 0; day < 7; ++day)
        first[static_cast<std::size_t>(day)] = usualStart(day + 1);
    std::array<bool, 7> told{};
    for (const WorkingTime &time : records.all<WorkingTime>()) {
        const auto day = static_cast<std::size_t>(time.weekday);
        if (const std::optional<int> from = minuteOf(time.starts)) {
            first[day] = told[day] ? std::min(first[day], *from) : *from;
            told[day] = true;
        }
    }
    for (const WorkingTime &time : records.all<WorkingTime>()) {
        const auto day = static_cast<std::size_t>(time.weekday);
        add(week[day], {minuteOf(time.starts).value_or(first[day]), time.minutes, time.hands});
    }
    return week;
}

class TimelineMaker
{
public:
    explicit TimelineMaker(Hours &into) : m_hours(into) {}

    void addDay(int day, const Day &hands)
    {
        int last = -1;
        std::vector<int> sitting; // slots up to now, per pairs of hands
        for (int slot = 0; slot < kSlotsPerDay; ++slot) {
            const int count = hands[static_cast<std::size_t>(slot)];
            if (count == 0)
                continue;
            const bool apart = last >= 0 && slot != last + 1;
            if (apart)
                sitting.clear();
            // those with fewer hands go on, those with more have been broken off
            sitting.resize(static_cast<std::size_t>(count), 0);
            keepLongest(sitting);
            last = slot;
            m_hours.timeline.line.push_back({day, profile(count), apart});
            m_hours.mostHands = std::max(m_hours.mostHands, count);
        }
    }

private:
    // One slot more for each of them.
    void keepLongest(std::vector<int> &sitting)
    {
        std::vector<int> &longest = m_hours.longestSitting;
        longest.resize(std::max(longest.size(), sitting.size()), 0);
        for (std::size_t i = 0; i < sitting.size(); ++i)
            longest[i] = std::max(longest[i], ++sitting[i] * kSlotMinutes);
    }

    int profile(int hands)
    {
        const auto [at, fresh] =
            m_profiles.emplace(hands, static_cast<int>(m_hours.timeline.profiles.size()));
        if (fresh)
            m_hours.timeline.profiles.push_back({hands});
        return at->second;
    }

    Hours &m_hours;
    std::map<int, int> m_profiles;
};

} // namespace

DaySlots daySlotsOf(int startMinute, int minutes)
{
    const int count = std::clamp((minutes + kSlotMinutes / 2) / kSlotMinutes, 1, kSlotsPerDay);
    return {std::min(startMinute / kSlotMinutes, kSlotsPerDay - count), count};
}

QString dayName(Weekday weekday)
{
    QString name = wordOf(weekday);
    name[0] = name[0].toUpper();
    return name;
}

QString duration(int minutes)
{
    if (minutes < 60)
        return QCoreApplication::translate("Forecast", "%1\u00A0min").arg(minutes);
    if (minutes % 60 == 0)
        return QCoreApplication::translate("Forecast", "%1\u00A0h").arg(minutes / 60);
    return QCoreApplication::translate("Forecast", "%1\u00A0h %2\u00A0min")
        .arg(minutes / 60)
        .arg(minutes % 60);
}

std::optional<int> minuteOf(const QString &time)
{
    if (time.size() != 5)
        return std::nullopt;
    return time.left(2).toInt() * 60 + time.mid(3).toInt();
}

int usualStart(int isoWeekday)
{
    return isoWeekday >= 6 ? kMorningStart : kEveningStart;
}

Hours hoursOf(const Records &records, QDate today)
{
    Hours hours;
    const std::array<Day, 7> week = usualWeek(records, hours.assumed);
    for (const Day &day : week)
        for (const int hands : day)
            hours.minutesPerWeek += hands * kSlotMinutes;

    std::map<int, Day> special; // by day from today
    for (const SpecialDay &days : records.all<SpecialDay>()) {
        const qint64 from = std::max<qint64>(0, today.daysTo(days.from));
        const qint64 to = std::min<qint64>(kFurthest, today.daysTo(days.to.value_or(days.from)));
        for (qint64 day = from; day <= to; ++day) {
            Day &hands = special.try_emplace(static_cast<int>(day), Day{}).first->second;
            if (days.minutes > 0)
                add(hands, {usualStart(today.addDays(day).dayOfWeek()), days.minutes, days.hands});
        }
    }

    TimelineMaker maker(hours);
    const int explicitDays = special.empty() ? 0 : special.rbegin()->first + 1;
    for (int day = 0; day < explicitDays + 7; ++day) {
        if (day == explicitDays)
            hours.timeline.repeatFrom = hours.timeline.line.size();
        const auto found = special.find(day);
        const auto weekday = static_cast<std::size_t>(today.addDays(day).dayOfWeek() - 1);
        maker.addDay(day, found == special.end() ? week[weekday] : found->second);
    }
    hours.timeline.repeatDays = 7;
    return hours;
}

} // namespace ohmwright::forecast
