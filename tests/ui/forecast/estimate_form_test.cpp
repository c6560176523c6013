// SPDX-License-Identifier: GPL-3.0-or-later
// A task's estimates by keyboard: kept when a line is left, refused at the field.
#include "tests/support/test_book.h"
#include "tests/ui/driving.h"
#include "ui/build_order/estimate_form.h"
#include "ui/widgets/entry_form.h"

#include <QCheckBox>
#include <QComboBox>
#include <QLineEdit>

namespace ohmwright::ui {
namespace {

using namespace driving;

class Estimates : public testing::Test
{
protected:
    Estimates() : m_form(*m_book, m_themed.theme)
    {
        Task task = namedTask(QStringLiteral("Fit the pack"));
        task.workMinutes = 240;
        m_task = m_book.add(task);
        m_before = m_book.add(namedTask(QStringLiteral("Build the pack")));
        Part part = namedPart(QStringLiteral("Cover seal"), PartState::Wanted);
        m_part = m_book.add(part);
        Letter letter;
        letter.subject = QStringLiteral("Drawing of the tray");
        m_letter = m_book.add(letter);
        m_form.resize(500, 600);
        showActive(m_form);
        m_form.setTask(m_task);
    }
    EntryForm &entries() { return *m_form.findChild<EntryForm *>(); }
    QLineEdit *line(const char *field)
    {
        return qobject_cast<QLineEdit *>(entries().editor(QLatin1String(field)));
    }
    void enter(const char *field, const char *text)
    {
        line(field)->setFocus();
        line(field)->selectAll();
        press(Qt::Key_Delete);
        type(QLatin1String(text));
        press(Qt::Key_Return);
    }
    const Task &task() { return *m_book.records().find(m_task); }

    TestBook m_book;
    Themed m_themed;
    EstimateForm m_form;
    Id<Task> m_task, m_before;
    Id<Part> m_part;
    Id<Letter> m_letter;
};

TEST_F(Estimates, areKeptLineByLineEachAStepToUndo)
{
    enter("least_work_minutes", "3 h");
    EXPECT_EQ(task().leastWorkMinutes, 180);
    enter("most_work_minutes", "9 h");
    EXPECT_EQ(task().mostWorkMinutes, 540);
    enter("hands", "2");
    EXPECT_EQ(task().hands, 2);
    enter("bay", "the lift");
    EXPECT_EQ(task().bay, QStringLiteral("the lift"));
    enter("fail_percent", "15");
    EXPECT_EQ(task().failPercent, 15);
    OHMWRIGHT_ASSERT_OK(m_book->undo());
    EXPECT_FALSE(task().failPercent);
    EXPECT_EQ(task().bay, QStringLiteral("the lift"));
}

TEST_F(Estimates, namesOtherTasksAndPartsThatTheBookHas)
{
    enter("redo_from", "build");
    EXPECT_EQ(task().redoFrom, m_before);
    enter("buys", "cover");
    EXPECT_EQ(task().buys, m_part);
    enter("asks", "drawing");
    EXPECT_EQ(task().asks, m_letter);
    enter("opens", "nothing like it");
    EXPECT_FALSE(task().opens);
    EXPECT_FALSE(entries().problem().isEmpty());
}

TEST_F(Estimates, outOfOrderOrOutOfBoundsIsToldAtTheField)
{
    enter("least_work_minutes", "5 h");
    EXPECT_FALSE(task().leastWorkMinutes);
    EXPECT_FALSE(entries().problem().isEmpty());
    EXPECT_EQ(line("least_work_minutes")->text(), QStringLiteral("5 h"));
    enter("least_work_minutes", "2 h");
    EXPECT_EQ(task().leastWorkMinutes, 120);
    enter("hands", "9");
    EXPECT_FALSE(task().hands);
    enter("hands", "");
    EXPECT_TRUE(entries().problem().isEmpty());
}

TEST_F(Estimates, milestonesHaveNone)
{
    const Id<Task> goal = m_book.add(namedTask(QStringLiteral("Road-ready"), true));
    m_form.setTask(goal);
    EXPECT_FALSE(m_form.isVisible());
}

} // namespace
} // namespace ohmwright::ui
