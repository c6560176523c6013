// SPDX-License-Identifier: GPL-3.0-or-later
// A large network is laid out beside the window's thread: nothing waits, nothing is lost.
#include "ui/build_order/loom_view.h"

#include <QSignalSpy>
#include <QTest>

#include <gtest/gtest.h>

namespace ohmwright::ui {
namespace {

plan::Network chain(std::size_t count)
{
    plan::Network network;
    for (std::size_t i = 0; i < count; ++i) {
        plan::Task task;
        task.key = QStringLiteral("t%1").arg(i);
        task.title = task.key;
        task.area = QStringLiteral("area %1").arg(i % 7);
        if (i > 0)
            task.after = {i - 1};
        network.tasks.push_back(task);
    }
    return network;
}

TEST(LoomBeside, TheOldChartStaysUntilTheNewOneIsThere)
{
    LoomView view;
    view.setNetwork(chain(900), {});
    EXPECT_EQ(view.network().tasks.size(), 900U) << "the first is shown at once";
    view.setNetwork(chain(901), {});
    EXPECT_EQ(view.network().tasks.size(), 900U);
    EXPECT_TRUE(QTest::qWaitFor([&] { return view.network().tasks.size() == 901U; }, 20000));
    EXPECT_EQ(view.loom().tasks.size(), 901U);
}

TEST(LoomBeside, OfSeveralTheNewestCounts)
{
    LoomView view;
    view.setNetwork(chain(900), {});
    for (std::size_t count = 901; count < 905; ++count)
        view.setNetwork(chain(count), {});
    EXPECT_TRUE(QTest::qWaitFor([&] { return view.network().tasks.size() == 904U; }, 20000));
}

TEST(LoomBeside, ATaskThatIsJustBeingAddedIsChosenWhenItIsThere)
{
    LoomView view;
    view.setNetwork(chain(900), {});
    view.setCurrentTask(QStringLiteral("t3"));
    QSignalSpy chosen(&view, &LoomView::currentTaskChanged);
    view.setNetwork(chain(901), {});
    view.setCurrentTask(QStringLiteral("t900"));
    EXPECT_EQ(view.currentTask(), QStringLiteral("t3")) << "not yet";
    EXPECT_TRUE(
        QTest::qWaitFor([&] { return view.currentTask() == QStringLiteral("t900"); }, 20000));
}

TEST(LoomBeside, AViewThatGoesAwayMeanwhileHurtsNobody)
{
    {
        LoomView view;
        view.setNetwork(chain(900), {});
        view.setNetwork(chain(901), {});
    }
    QTest::qWait(50);
}

} // namespace
} // namespace ohmwright::ui
