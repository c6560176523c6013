// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/forecast/hours.h"
#include "tests/support/test_book.h"

#include <map>

namespace ohmwright::forecast {
namespace {

const QDate kMonday(2026, 6, 15);

std::map<int, int> slotsByDay(const Hours &hours)
{
    std::map<int, int> found;
    for (const plan::Slot &slot : hours.timeline.line)
        ++found[slot.day];
    return found;
}

void add(TestBook &book, Weekday day, int minutes, const char *starts = "", int hands = 1)
{
    WorkingTime time;
    time.weekday = day;
    time.minutes = minutes;
    time.starts = QLatin1String(starts);
    time.hands = hands;
    book.add(time);
}

TEST(Hours, withoutWorkingTimesTheHoursAWeekAreSpreadAndSaidToBeAssumed)
{
    TestBook book; // 6 hours a week
    const Hours hours = hoursOf(book.records(), kMonday);
    EXPECT_TRUE(hours.assumed);
    EXPECT_EQ(hours.minutesPerWeek, 360);
    EXPECT_EQ(slotsByDay(hours), (std::map<int, int>{{1, 6}, {3, 6}, {5, 12}}));
    EXPECT_EQ(hours.longestSitting, std::vector{180});
}

TEST(Hours, timesThatOverlapAddTheirHandsAndGapsBeginANewSitting)
{
    TestBook book;
    add(book, Weekday::Saturday, 120, "09:00");
    add(book, Weekday::Saturday, 60, "10:00", 2);
    add(book, Weekday::Saturday, 60, "14:00");
    const Hours hours = hoursOf(book.records(), kMonday);
    EXPECT_FALSE(hours.assumed);
    EXPECT_EQ(hours.mostHands, 3);
    EXPECT_EQ(hours.minutesPerWeek, 120 + 2 * 60 + 60);
    EXPECT_EQ(hours.longestSitting, (std::vector{120, 60, 60}));
    ASSERT_EQ(hours.timeline.line.size(), 12U);
    EXPECT_TRUE(hours.timeline.line[8].apart);
    EXPECT_EQ(hours.timeline.profiles[static_cast<std::size_t>(hours.timeline.line[0].profile)][0],
              1);
    EXPECT_EQ(hours.timeline.profiles[static_cast<std::size_t>(hours.timeline.line[4].profile)][0],
              3);
}

TEST(Hours, oneWithoutAStartBeginsWithTheOtherOfThatDay)
{
    TestBook book;
    add(book, Weekday::Saturday, 120, "08:00");
    add(book, Weekday::Saturday, 120);
    EXPECT_EQ(hoursOf(book.records(), kMonday).mostHands, 2);
}

TEST(Hours, specialDaysReplaceTheWeekAndTheWeekGoesOnAfter)
{
    TestBook book;
    add(book, Weekday::Tuesday, 60);
    SpecialDay off;
    off.from = kMonday.addDays(1);
    book.add(off);
    SpecialDay free;
    free.from = kMonday.addDays(9);
    free.to = kMonday.addDays(10);
    free.minutes = 120;
    free.hands = 2;
    book.add(free);
    SpecialDay over;
    over.from = kMonday.addDays(-20);
    over.to = kMonday.addDays(-10);
    over.minutes = 600;
    book.add(over);
    const Hours hours = hoursOf(book.records(), kMonday);
    // Tuesday of the second week, two free days, then the pattern of the week after them
    EXPECT_EQ(slotsByDay(hours), (std::map<int, int>{{8, 4}, {9, 8}, {10, 8}, {15, 4}}));
    EXPECT_EQ(hours.timeline.line[hours.timeline.repeatFrom].day, 15);
    EXPECT_EQ(hours.timeline.repeatDays, 7);
    EXPECT_EQ(hours.minutesPerWeek, 60);
}

TEST(Hours, whatRunsOverMidnightKeepsItsLength)
{
    TestBook book;
    add(book, Weekday::Friday, 180, "23:00");
    EXPECT_EQ(slotsByDay(hoursOf(book.records(), kMonday)), (std::map<int, int>{{4, 12}}));
}

} // namespace
} // namespace ohmwright::forecast
