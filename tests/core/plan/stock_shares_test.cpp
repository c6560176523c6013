// SPDX-License-Identifier: GPL-3.0-or-later
// A consumable is promised once: to tasks under way first, then by key. Common practice, no
// published source.
#include "core/plan/plan_edits.h"
#include "core/plan/plan_view.h"
#include "tests/support/chance.h"
#include "tests/support/test_book.h"

namespace ohmwright::plan {
namespace {

class AConsumable : public testing::Test
{
protected:
    void stock(const char *text)
    {
        Part part =
            namedPart(QStringLiteral("Threadlocker"), PartState::InHand, PartKind::Consumable);
        part.stock = amount(text);
        bottle = book.add(part);
    }
    Id<ohmwright::Task> taskNeeding(const char *title, const char *text)
    {
        const Id<ohmwright::Task> task = book.add(namedTask(QLatin1String(title)));
        TaskNeed need;
        need.task = task;
        need.kind = ohmwright::NeedKind::Consumable;
        need.part = bottle;
        need.amount = amount(text);
        book.add(need);
        return task;
    }
    LeafNeed needOf(Id<ohmwright::Task> task) const
    {
        const Network network = networkOf(book.records(), book.clock.today());
        const QString key = book.records().find(task)->key;
        for (const plan::Task &node : network.tasks)
            if (node.key == key)
                return node.needs.front();
        return {};
    }
    double inStock() const { return book.records().find(bottle)->stock->number(); }

    TestBook book;
    Id<Part> bottle;
};

TEST_F(AConsumable, ThatIsEnoughForOneIsNotPromisedToTwo)
{
    stock("6 mL");
    const auto first = taskNeeding("A", "5 mL");
    const auto second = taskNeeding("B", "5 mL");
    EXPECT_TRUE(needOf(first).met);
    EXPECT_FALSE(needOf(second).met);
    EXPECT_EQ(needOf(second).move, MoveKind::Order);
    EXPECT_TRUE(needOf(second).reason.contains(QStringLiteral("promised")));
}

TEST_F(AConsumable, GoesToTheTaskUnderWayFirst)
{
    stock("6 mL");
    const auto first = taskNeeding("A", "5 mL");
    const auto second = taskNeeding("B", "5 mL");
    OHMWRIGHT_ASSERT_OK(setTaskStarted(*book, second, true, book.clock.today()));
    EXPECT_FALSE(needOf(first).met);
    EXPECT_TRUE(needOf(second).met);
}

TEST_F(AConsumable, RunsDownWhenATaskIsDoneAndComesBackWhenItIsNot)
{
    stock("6 mL");
    const auto first = taskNeeding("A", "5 mL");
    const auto second = taskNeeding("B", "5 mL");
    OHMWRIGHT_ASSERT_OK(
        finishTask(*book, second, book.clock.today())); // it is there for whoever comes
    EXPECT_DOUBLE_EQ(inStock(), 1);
    EXPECT_FALSE(needOf(first).met);
    OHMWRIGHT_ASSERT_OK(book->undo());
    EXPECT_DOUBLE_EQ(inStock(), 6);
}

TEST_F(AConsumable, LeavesWhatIsTooLittleForOneToTheNext)
{
    stock("6 mL");
    taskNeeding("A", "5 mL");
    taskNeeding("B", "5 mL");
    EXPECT_TRUE(needOf(taskNeeding("C", "1 mL")).met);
}

TEST_F(AConsumable, IsNotUsedTwiceByOneTask)
{
    stock("6 mL");
    const auto task = taskNeeding("A", "5 mL");
    TaskNeed again = book.records().of<TaskNeed>(task).front();
    again.id = {};
    book.add(again);
    EXPECT_FALSE(finishTask(*book, task, book.clock.today()).has_value());
}

// Whatever the tasks, what is promised never adds up to more than there is.
TEST_F(AConsumable, IsNeverPromisedBeyondTheStock)
{
    Chance chance(7);
    stock("100 mL");
    std::vector<Id<ohmwright::Task>> tasks;
    for (int i = 0; i < 30; ++i) {
        const QByteArray title = "T" + QByteArray::number(i);
        const QByteArray need = QByteArray::number(1 + chance.below(20)) + " mL";
        tasks.push_back(taskNeeding(title.constData(), need.constData()));
    }
    double promised = 0;
    const StockShares shares = StockShares::of(book.records());
    for (const TaskNeed &need : book.records().all<TaskNeed>())
        if (judge(book.records(), need, shares, book.clock.today()).met)
            promised += need.amount->number();
    EXPECT_GT(promised, 80);
    EXPECT_LE(promised, 100);
}

} // namespace
} // namespace ohmwright::plan
