// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/plan/plan_edits.h"
#include "core/plan/work_log.h"
#include "tests/support/test_book.h"

namespace ohmwright {
namespace {

const QDateTime kEvening(QDate(2026, 6, 15), QTime(19, 30));

TEST(WorkLog, theClockStartsTheTaskAndStoppingWritesTheMinutes)
{
    TestBook book;
    const Id<Task> task = book.add(namedTask(QStringLiteral("Strip the bay")));
    OHMWRIGHT_ASSERT_OK(startWork(*book, task, kEvening));
    EXPECT_EQ(book.records().find(task)->state, TaskState::Started);
    EXPECT_EQ(book.records().find(task)->startedOn, QDate(2026, 6, 15));
    ASSERT_NE(workUnderWay(book.records()), nullptr);
    EXPECT_EQ(minutesSince(*workUnderWay(book.records()), kEvening.addSecs(5459)), 90);
    OHMWRIGHT_ASSERT_OK(
        stopWork(*book, kEvening.addSecs(qint64{95} * 60), QStringLiteral(" hoses off ")));
    EXPECT_EQ(workUnderWay(book.records()), nullptr);
    const WorkEntry &entry = book.records().all<WorkEntry>().rows().front();
    EXPECT_EQ(entry.minutes, 95);
    EXPECT_EQ(entry.note, QStringLiteral("hoses off"));
    EXPECT_EQ(loggedMinutes(book.records(), task), 95);
    OHMWRIGHT_ASSERT_OK(book->undo());
    EXPECT_NE(workUnderWay(book.records()), nullptr);
}

TEST(WorkLog, beginningAnotherTaskStopsTheFirst)
{
    TestBook book;
    const Id<Task> first = book.add(namedTask(QStringLiteral("First")));
    const Id<Task> second = book.add(namedTask(QStringLiteral("Second")));
    OHMWRIGHT_ASSERT_OK(startWork(*book, first, kEvening));
    OHMWRIGHT_ASSERT_OK(startWork(*book, second, kEvening.addSecs(3600)));
    EXPECT_EQ(loggedMinutes(book.records(), first), 60);
    EXPECT_EQ(workUnderWay(book.records())->task, second);
}

TEST(WorkLog, overMidnightAndForgottenClocksStayWithinBounds)
{
    TestBook book;
    OHMWRIGHT_ASSERT_OK(startWork(*book, std::nullopt, kEvening));
    const WorkEntry &entry = *workUnderWay(book.records());
    EXPECT_EQ(minutesSince(entry, kEvening.addSecs(qint64{6} * 3600)), 360);
    EXPECT_EQ(minutesSince(entry, kEvening.addDays(40)), kMostMinutesLogged);
    EXPECT_EQ(minutesSince(entry, kEvening.addSecs(-60)), 0);
}

TEST(WorkLog, refusesWhatCannotBeMeant)
{
    TestBook book;
    EXPECT_FALSE(stopWork(*book, kEvening));
    Task done = namedTask(QStringLiteral("Done"));
    done.state = TaskState::Done;
    done.doneOn = QDate(2026, 6, 1);
    EXPECT_FALSE(startWork(*book, book.add(done), kEvening));
    WorkEntry entry;
    entry.on = QDate(2026, 6, 15);
    EXPECT_FALSE(logWork(*book, entry)) << "without minutes";
    entry.minutes = 5000;
    EXPECT_FALSE(logWork(*book, entry));
    entry.minutes = 50;
    entry.on = QDate(2026, 6, 16);
    EXPECT_FALSE(logWork(*book, entry)) << "tomorrow";
    entry.on = QDate(2026, 6, 15);
    entry.hands = 9;
    EXPECT_FALSE(logWork(*book, entry));
    entry.hands = 2;
    OHMWRIGHT_ASSERT_OK(logWork(*book, entry));
    EXPECT_EQ(book.records().all<WorkEntry>().size(), 1U);
}

TEST(WorkLog, aTaskWithHoursIsNotRemoved)
{
    TestBook book;
    const Id<Task> task = book.add(namedTask(QStringLiteral("Weld")));
    WorkEntry entry;
    entry.task = task;
    entry.on = QDate(2026, 6, 14);
    entry.minutes = 60;
    OHMWRIGHT_ASSERT_OK(logWork(*book, entry));
    const Outcome removed = removeTask(*book, task);
    ASSERT_FALSE(removed);
    EXPECT_TRUE(removed.error().sentence.contains(QStringLiteral("logged")));
}

} // namespace
} // namespace ohmwright
