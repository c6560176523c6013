// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/forecast/six_tasks.h"
#include "ui/forecast/records_copy.h"

namespace ohmwright::ui {
namespace {

TEST(ARecordsCopy, TakenALittleAtATimeIsTheWholeBook)
{
    SixTasks six;
    for (int i = 0; i < 1000; ++i) {
        Part part = namedPart(QStringLiteral("Bolt %1").arg(i));
        six.book.add(part);
        if (i == 450)
            break;
    }
    RecordsCopy copy;
    int steps = 1;
    while (!copy.step(six.book.records(), std::chrono::microseconds(0)))
        ++steps;
    EXPECT_GT(steps, 3); // more than 200 rows are not copied in one go
    const std::shared_ptr<const Records> taken = copy.take();
    EXPECT_TRUE(taken->all<Part>() == six.book.records().all<Part>());
    EXPECT_TRUE(taken->all<PartMove>() == six.book.records().all<PartMove>());
    EXPECT_TRUE(taken->all<Task>() == six.book.records().all<Task>());
    EXPECT_TRUE(taken->all<TaskNeed>() == six.book.records().all<TaskNeed>());
    EXPECT_TRUE(taken->all<WorkingTime>() == six.book.records().all<WorkingTime>());
    EXPECT_EQ(taken->build(), six.book.records().build());
    // found by id, key and owner
    ASSERT_NE(taken->find(six.lift), nullptr);
    EXPECT_EQ(taken->byKey<Part>(QStringLiteral("coupling"))->id, six.coupling);
    EXPECT_EQ(taken->of<TaskNeed>(six.fit).size(), 2U);
}

} // namespace
} // namespace ohmwright::ui
