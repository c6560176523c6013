// SPDX-License-Identifier: GPL-3.0-or-later
// What the hours logged teach about the estimates.
#include "core/forecast/learning.h"
#include "tests/core/forecast/six_tasks.h"

namespace ohmwright::forecast {
namespace {

class LearningFromHours : public testing::Test
{
protected:
    SixTasks m_six;
};

TEST_F(LearningFromHours, hoursLoggedTeachAFactorThatIsOfferedAndAppliedAsOneEdit)
{
    for (int i = 0; i < 3; ++i) {
        const Id<Task> done =
            m_six.add(qPrintable(QStringLiteral("wire-%1").arg(i)), 100, {}, [&](Task &t) {
                t.trade = Trade::Electrical;
                t.state = TaskState::Done;
                t.doneOn = kToday;
            });
        WorkEntry entry;
        entry.task = done;
        entry.on = kToday;
        entry.minutes = 75;
        entry.hands = 2;
        m_six.book.add(entry);
    }
    const Id<Task> open = m_six.add("wire-more", 200, {}, [](Task &t) {
        t.trade = Trade::Electrical;
        t.mostWorkMinutes = 400;
    });
    const std::vector<Learned> learned = learnedFrom(m_six.book.records());
    ASSERT_EQ(learned.size(), 1U);
    EXPECT_EQ(learned[0].trade, Trade::Electrical);
    EXPECT_EQ(learned[0].tasks, 3);
    EXPECT_DOUBLE_EQ(learned[0].factor(), 1.5);
    EXPECT_TRUE(learned[0].isOffered());
    OHMWRIGHT_ASSERT_OK(scaleEstimates(*m_six.book, Trade::Electrical, 1.5));
    EXPECT_EQ(m_six.book.records().find(open)->workMinutes, 300);
    EXPECT_EQ(m_six.book.records().find(open)->mostWorkMinutes, 600);
    OHMWRIGHT_ASSERT_OK(m_six.book->undo());
    EXPECT_EQ(m_six.book.records().find(open)->workMinutes, 200);
    EXPECT_FALSE(scaleEstimates(*m_six.book, Trade::Electrical, 50));
    EXPECT_FALSE(scaleEstimates(*m_six.book, Trade::Bodywork, 1.2));
}

} // namespace
} // namespace ohmwright::forecast
