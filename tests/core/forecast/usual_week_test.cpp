// SPDX-License-Identifier: GPL-3.0-or-later
// One helper is one pair of hands, however the working times of a day are told.
#include "core/forecast/changes.h"
#include "core/forecast/hours.h"
#include "tests/support/test_book.h"

namespace ohmwright::forecast {
namespace {

const QDate kMonday(2026, 6, 15);

class Helper : public testing::Test
{
protected:
    void add(Weekday day, int minutes, const char *starts = "", int hands = 1)
    {
        WorkingTime time;
        time.weekday = day;
        time.minutes = minutes;
        time.starts = QLatin1String(starts);
        time.hands = hands;
        m_book.add(time);
    }
    Hours with(const char *change) const
    {
        const Records &records = m_book.records();
        return hoursOf(
            changedBy(records, *parsePlanChange(QLatin1String(change), records), kMonday), kMonday);
    }
    Hours now() const { return hoursOf(m_book.records(), kMonday); }

    TestBook m_book;
};

// Five hours from nine, and a friend from ten to one: a helper is there from nine to two.
TEST_F(Helper, IsOneMoreInTheUnionOfTimesThatOverlap)
{
    add(Weekday::Saturday, 300, "09:00");
    add(Weekday::Saturday, 180, "10:00");
    add(Weekday::Tuesday, 120, "19:30");
    EXPECT_EQ(now().minutesPerWeek, 300 + 180 + 120);
    const Hours helped = with("helper:saturday");
    EXPECT_EQ(helped.minutesPerWeek, 600 + 300);
    EXPECT_EQ(helped.mostHands, 3);
    EXPECT_EQ(helped.longestSitting, (std::vector{300, 300, 180}));
}

TEST_F(Helper, GoesHomeBetweenTimesThatAreApart)
{
    add(Weekday::Saturday, 60, "09:00");
    add(Weekday::Saturday, 120, "14:00");
    const Hours helped = with("helper:saturday");
    EXPECT_EQ(helped.minutesPerWeek, 2 * 180);
    EXPECT_EQ(helped.longestSitting, (std::vector{120, 120}));
}

TEST_F(Helper, ComesWithThoseThatSayNoStart)
{
    add(Weekday::Saturday, 300);
    add(Weekday::Saturday, 300);
    EXPECT_EQ(with("helper:saturday").minutesPerWeek, 600 + 300);
    EXPECT_EQ(with("helper:saturday").mostHands, 3);
}

// What would run over midnight is planned before it (hours.h); a time without a start keeps to it.
TEST_F(Helper, KeepsToMidnight)
{
    add(Weekday::Friday, 180, "23:00");
    add(Weekday::Friday, 60);
    EXPECT_EQ(now().minutesPerWeek, 240);
    EXPECT_EQ(now().mostHands, 2);
    const Hours helped = with("helper:friday");
    EXPECT_EQ(helped.minutesPerWeek, 240 + 180);
    EXPECT_EQ(helped.mostHands, 3);
}

TEST_F(Helper, AddsToTheHoursThatAreOnlyAssumed)
{
    EXPECT_EQ(now().minutesPerWeek, 360);
    EXPECT_EQ(with("helper:saturday").minutesPerWeek, 360 + 180);
    EXPECT_EQ(with("helper:sunday").minutesPerWeek, 360) << "nobody works then";
}

} // namespace
} // namespace ohmwright::forecast
