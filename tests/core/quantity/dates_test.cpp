// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/quantity/dates.h"
#include "tests/core/quantity/printers.h"

#include <gtest/gtest.h>

namespace ohmwright {

namespace {

const QDate kToday(2026, 3, 1);

void expectDate(QStringView text, QDate date)
{
    const Result<QDate> read = parseDate(text, kToday);
    ASSERT_TRUE(read) << text.toString().toStdString() << ": "
                      << read.error().sentence.toStdString();
    EXPECT_EQ(*read, date) << text.toString().toStdString();
}

void expectAfter(QStringView text, QDate base, QDate date)
{
    const Result<QDate> read = parseDate(text, kToday, base);
    ASSERT_TRUE(read) << text.toString().toStdString();
    EXPECT_EQ(*read, date) << text.toString().toStdString();
}

void expectRefused(QStringView text, const QString &sentence)
{
    const Result<QDate> read = parseDate(text, kToday);
    ASSERT_FALSE(read) << text.toString().toStdString();
    EXPECT_EQ(read.error().code, ProblemCode::BadInput);
    EXPECT_EQ(read.error().sentence, sentence);
    EXPECT_FALSE(read.error().whatToDo.isEmpty());
}

} // namespace

TEST(ParseDate, TakesWhatPeopleWrite)
{
    for (const QStringView text :
         {u"2026-03-01", u"2026-3-1", u"2026/3/1", u"2026.03.01", u"1.3.2026", u"01.03.2026",
          u"1. 3. 2026", u"1.3.26", u"1 Mar 2026", u"1. March 2026", u"01 mar 26", u"1-Mar-2026",
          u"March 1, 2026", u"Mar 1st, 2026", u"1st march 2026", u"today", u"Today", u"+0d"})
        expectDate(text, QDate(2026, 3, 1));
    expectDate(u"22nd Sept 2026", QDate(2026, 9, 22));
    expectDate(u"yesterday", QDate(2026, 2, 28));
    expectDate(u"tomorrow", QDate(2026, 3, 2));
    expectDate(u"29 Feb 2028", QDate(2028, 2, 29));
    expectDate(u"1.1.1900", QDate(1900, 1, 1));
    expectDate(u"31.12.2199", QDate(2199, 12, 31));
}

TEST(ParseDate, TakesAYearOfTwoDigitsNearToday)
{
    expectDate(u"1.1.46", QDate(2046, 1, 1));
    expectDate(u"1.1.47", QDate(1947, 1, 1));
    expectDate(u"1.1.00", QDate(2000, 1, 1));
    expectDate(u"1 Jan 99", QDate(1999, 1, 1));
}

TEST(ParseDate, CountsFromTheBase)
{
    expectAfter(u"+90d", QDate(2026, 1, 15), QDate(2026, 4, 15));
    expectAfter(u"-3d", QDate(2026, 3, 1), QDate(2026, 2, 26));
    expectAfter(u"−3d", QDate(2026, 3, 1), QDate(2026, 2, 26));
    expectAfter(u"+2w", QDate(2026, 2, 20), QDate(2026, 3, 6));
    expectAfter(u"+ 2 weeks", QDate(2026, 2, 20), QDate(2026, 3, 6));
    expectAfter(u"+1 Month", QDate(2026, 2, 20), QDate(2026, 3, 20));
    expectAfter(u"+6m", QDate(2025, 8, 31), QDate(2026, 2, 28));
    expectAfter(u"+1y", QDate(2028, 2, 29), QDate(2029, 2, 28));
    expectAfter(u"+4y", QDate(2028, 2, 29), QDate(2032, 2, 29));
    expectAfter(u"-1m", QDate(2026, 3, 31), QDate(2026, 2, 28));
    expectAfter(u"tomorrow", QDate(2020, 1, 1), QDate(2026, 3, 2)); // from today, not the base
}

TEST(ParseDate, RefusesWithOnePlainSentence)
{
    expectRefused(u"", QStringLiteral("A date is missing."));
    expectRefused(u"1/3/2026", QStringLiteral("“1/3/2026” does not tell the day from the month."));
    expectRefused(u"25/12/2026",
                  QStringLiteral("“25/12/2026” does not tell the day from the month."));
    expectRefused(u"01-03-2026",
                  QStringLiteral("“01-03-2026” does not tell the day from the month."));
    expectRefused(u"30.2.2026", QStringLiteral("“30.2.2026” is not a day in the calendar."));
    expectRefused(u"29 Feb 2026", QStringLiteral("“29 Feb 2026” is not a day in the calendar."));
    expectRefused(u"2026-13-01", QStringLiteral("“2026-13-01” is not a day in the calendar."));
    expectRefused(u"2026-00-10", QStringLiteral("“2026-00-10” is not a day in the calendar."));
    expectRefused(u"31.12.1899", QStringLiteral("“31.12.1899” is not between 1900 and 2199."));
    expectRefused(u"1.1.2200", QStringLiteral("“1.1.2200” is not between 1900 and 2199."));
    expectRefused(u"0000-01-01", QStringLiteral("“0000-01-01” is not between 1900 and 2199."));
    expectRefused(u"+99999y", QStringLiteral("“+99999y” is not between 1900 and 2199."));
    expectRefused(u"-99999w", QStringLiteral("“-99999w” is not between 1900 and 2199."));
    expectRefused(u"+90", QStringLiteral("“+90” is not a span of time."));
    expectRefused(u"+d", QStringLiteral("“+d” is not a span of time."));
    expectRefused(u"+1.5y", QStringLiteral("“+1.5y” is not a span of time."));
    expectRefused(u"+", QStringLiteral("“+” is not a span of time."));
    expectRefused(u"next week", QStringLiteral("“next week” is not a date."));
    expectRefused(u"1.3.", QStringLiteral("“1.3.” is not a date."));
    expectRefused(u"1.3.226", QStringLiteral("“1.3.226” is not a date."));
    expectRefused(u"1 Ma 2026", QStringLiteral("“1 Ma 2026” is not a date."));
    expectRefused(u"46082", QStringLiteral("“46082” is not a date."));
    expectRefused(QString(500, u'1'), u"“" + QString(40, u'1') + u"…” is not a date.");
}

TEST(ParseIsoDate, TakesTheCalendarDateOnly)
{
    EXPECT_EQ(*parseIsoDate(u"2026-03-01"), QDate(2026, 3, 1));
    EXPECT_EQ(*parseIsoDate(u"2028-02-29"), QDate(2028, 2, 29));
    for (const QStringView text :
         {u"", u"2026-3-1", u"20260301", u"2026-W09-7", u" 2026-03-01", u"2026-03-01T00:00",
          u"1.3.2026", u"today", u"+2026-03-01", u"2026-03-0x", u"２026-03-01"}) {
        EXPECT_EQ(sentenceOf(parseIsoDate(text)), u"“" + text.toString() + u"” is not a date.");
    }
    EXPECT_EQ(sentenceOf(parseIsoDate(u"2026-02-29")),
              QStringLiteral("“2026-02-29” is not a day in the calendar."));
    EXPECT_EQ(sentenceOf(parseIsoDate(u"1899-12-31")),
              QStringLiteral("“1899-12-31” is not between 1900 and 2199."));
}

TEST(PrintDate, EveryDayReadsBackInBothForms)
{
    for (QDate date(1999, 1, 1); date < QDate(2033, 1, 1); date = date.addDays(1)) {
        ASSERT_EQ(*parseIsoDate(printDate(date)), date);
        ASSERT_EQ(*parseDate(showDate(date), kToday), date) << showDate(date).toStdString();
    }
    EXPECT_EQ(printDate(QDate(2026, 3, 1)), QStringLiteral("2026-03-01"));
    EXPECT_EQ(showDate(QDate(2026, 3, 1)), QStringLiteral("1 Mar 2026"));
    EXPECT_EQ(printDate(QDate()), QString());
    EXPECT_EQ(showDate(QDate()), QString());
}

TEST(DatesDeathTest, CountOnlyFromAValidDay)
{
    EXPECT_DEATH(static_cast<void>(parseDate(u"+1d", kToday, QDate())), "valid day");
}

} // namespace ohmwright
