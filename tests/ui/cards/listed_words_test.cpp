// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/test_book.h"
#include "ui/cards/listed_words.h"
#include "ui/cards/record_list.h"

#include <QStringList>

namespace ohmwright::ui {
namespace {

class ListedWordsTest : public testing::Test
{
protected:
    QStringList listed(const char *table)
    {
        RecordList list(*recordKind(table));
        list.read(book.records(), {});
        QStringList rows;
        for (int row = 0; row < list.rowCount(); ++row)
            rows << list.data(list.index(row, 0), Qt::AccessibleTextRole).toString();
        return rows;
    }
    static QString u(const char *text) { return QString::fromUtf8(text); }

    TestBook book;
};

TEST_F(ListedWordsTest, TellWorkingTimesInTheOrderOfTheWeek)
{
    WorkingTime saturday;
    saturday.minutes = 300;
    saturday.hands = 2;
    book.add(saturday);
    WorkingTime tuesday;
    tuesday.weekday = Weekday::Tuesday;
    tuesday.starts = u("19:00");
    book.add(tuesday);
    EXPECT_EQ(listed("working_time"),
              (QStringList{u("Tuesdays, from 19:00, 2 h"), u("Saturdays, 5 h, 2 pairs of hands")}));
}

TEST_F(ListedWordsTest, TellDaysByTheCalendar)
{
    SpecialDay summer;
    summer.from = QDate(2027, 7, 12);
    summer.to = QDate(2027, 7, 25);
    summer.note = u("away");
    book.add(summer);
    SpecialDay winter;
    winter.from = QDate(2026, 12, 23);
    winter.minutes = 225;
    book.add(winter);
    EXPECT_EQ(listed("special_day"),
              (QStringList{u("23 Dec 2026, 3 h 45 min a day"),
                           u("12 Jul 2027 to 25 Jul 2027, nobody works, away")}));
}

TEST_F(ListedWordsTest, TellTheNewestWorkFirst)
{
    WorkEntry old;
    old.on = QDate(2026, 4, 11);
    old.minutes = 420;
    book.add(old);
    WorkEntry late;
    late.on = QDate(2026, 11, 3);
    late.started = u("19:40");
    book.add(late);
    EXPECT_EQ(listed("work_entry"), (QStringList{u("3 Nov 2026, the build, under way since 19:40"),
                                                 u("11 Apr 2026, the build, 7 h")}));
}

TEST_F(ListedWordsTest, CountNamesAsPeopleDo)
{
    for (const char *name : {"Yard 10", "Yard 2"}) {
        Seller seller;
        seller.name = u(name);
        seller.key = keyFrom(seller.name);
        book.add(seller);
    }
    EXPECT_EQ(listed("seller").front().section(u',', 0, 0), u("Yard 2"));
}

} // namespace
} // namespace ohmwright::ui
