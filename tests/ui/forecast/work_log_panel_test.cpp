// SPDX-License-Identifier: GPL-3.0-or-later
// The work log by keyboard: the clock, hours entered after, what is refused.
#include "core/plan/work_log.h"
#include "tests/support/test_book.h"
#include "tests/ui/driving.h"
#include "ui/bench/work_log_panel.h"
#include "ui/widgets/entry_form.h"
#include "ui/widgets/pick_or_new.h"

#include <QLineEdit>
#include <QPushButton>
#include <QSignalSpy>

namespace ohmwright::ui {
namespace {

using namespace driving;

class WorkLogOnBench : public testing::Test
{
protected:
    WorkLogOnBench()
        : m_task(m_book.add(namedTask(QStringLiteral("Strip the bay")))),
          m_panel(*m_book, m_themed.theme)
    {
        m_panel.resize(600, 500);
        showActive(m_panel);
    }
    QPushButton *button(const char *text)
    {
        for (auto *one : m_panel.findChildren<QPushButton *>())
            if (one->text().remove(u'&').contains(QLatin1String(text)))
                return one;
        return nullptr;
    }
    EntryForm *form() { return m_panel.findChild<EntryForm *>(); }
    QLineEdit *line(const char *field)
    {
        return qobject_cast<QLineEdit *>(form()->editor(QLatin1String(field)));
    }

    TestBook m_book;
    Id<Task> m_task;
    Themed m_themed;
    WorkLogPanel m_panel;
};

TEST_F(WorkLogOnBench, theClockIsStartedAndStoppedByKeyboard)
{
    line("task")->setFocus();
    type(QStringLiteral("strip"));
    press(Qt::Key_Tab);
    QPushButton *clock = button("Start the clock");
    ASSERT_NE(clock, nullptr);
    clock->setFocus();
    press(Qt::Key_Space);
    ASSERT_NE(workUnderWay(m_book.records()), nullptr);
    EXPECT_EQ(workUnderWay(m_book.records())->task, m_task);
    EXPECT_EQ(m_book.records().find(m_task)->state, TaskState::Started);
    clock = button("Stop the clock");
    ASSERT_NE(clock, nullptr);
    clock->setFocus();
    press(Qt::Key_Space);
    EXPECT_EQ(workUnderWay(m_book.records()), nullptr);
    EXPECT_EQ(m_book.records().all<WorkEntry>().size(), 1U);
}

TEST_F(WorkLogOnBench, hoursAreEnteredAfterAndGoToTheTask)
{
    QSignalSpy said(&m_panel, &WorkLogPanel::said);
    line("task")->setFocus();
    type(QStringLiteral("strip"));
    press(Qt::Key_Tab);
    line("worked_on")->setFocus();
    type(QStringLiteral("yesterday"));
    line("minutes")->setFocus();
    type(QStringLiteral("2.5 h"));
    line("hands")->setFocus();
    type(QStringLiteral("2"));
    line("note")->setFocus();
    type(QStringLiteral("hoses off"));
    press(Qt::Key_Return);
    ASSERT_EQ(m_book.records().all<WorkEntry>().size(), 1U);
    const WorkEntry &entry = m_book.records().all<WorkEntry>().rows().front();
    EXPECT_EQ(entry.task, m_task);
    EXPECT_EQ(entry.on, QDate(2026, 6, 14));
    EXPECT_EQ(entry.minutes, 150);
    EXPECT_EQ(entry.hands, 2);
    EXPECT_EQ(entry.note, QStringLiteral("hoses off"));
    EXPECT_EQ(loggedMinutes(m_book.records(), m_task), 300);
    EXPECT_TRUE(line("minutes")->text().isEmpty());
    EXPECT_EQ(said.size(), 1);
}

TEST_F(WorkLogOnBench, whatCannotBeMeantIsToldAtItsFieldAndNothingIsLost)
{
    line("task")->setFocus();
    type(QStringLiteral("no such task"));
    line("minutes")->setFocus();
    type(QStringLiteral("1 h"));
    press(Qt::Key_Return);
    EXPECT_EQ(m_book.records().all<WorkEntry>().size(), 0U);
    EXPECT_FALSE(form()->problem().isEmpty());
    EXPECT_EQ(line("minutes")->text(), QStringLiteral("1 h"));
    line("task")->clear();
    line("minutes")->clear();
    line("minutes")->setFocus();
    type(QStringLiteral("ages"));
    press(Qt::Key_Return);
    EXPECT_EQ(m_book.records().all<WorkEntry>().size(), 0U);
    EXPECT_EQ(line("minutes")->text(), QStringLiteral("ages"));
}

} // namespace
} // namespace ohmwright::ui
