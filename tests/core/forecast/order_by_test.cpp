// SPDX-License-Identifier: GPL-3.0-or-later
// A day to order by that comes before the thing can be ordered is told by the task it waits for.
#include "core/forecast/order_by.h"

#include <gtest/gtest.h>

namespace ohmwright::forecast {
namespace {

// Drawing, then the machined piece, then fitting: by hand.
class OrderedBehind : public testing::Test
{
protected:
    OrderedBehind()
    {
        plan.activities.resize(3);
        plan.activities[1].toOrder = true;
        plan.activities[1].after = {0};
        plan.activities[2].after = {1};
        forecast.activities.resize(3);
        forecast.activities[0].ready = {10, 14, 30}; // at 50, 80, 95 %
    }

    std::optional<std::size_t> at(int latestDay, int percent)
    {
        return orderedBehind(plan, forecast, {1, latestDay, true}, percent);
    }

    WorkPlan plan;
    Forecast forecast;
};

TEST_F(OrderedBehind, IsTheTaskThatIsDoneLater)
{
    EXPECT_EQ(at(9, 50), 0U);
    EXPECT_EQ(at(13, 80), 0U);
    EXPECT_EQ(at(29, 95), 0U);
}

TEST_F(OrderedBehind, IsNoneWhereTheDayComesAfterIt)
{
    EXPECT_EQ(at(10, 50), std::nullopt);
    EXPECT_EQ(at(14, 80), std::nullopt);
    EXPECT_EQ(at(13, 50), std::nullopt);
}

TEST_F(OrderedBehind, IsTheLastOfSeveral)
{
    plan.activities.emplace_back();
    plan.activities[1].after = {0, 3};
    forecast.activities.emplace_back();
    forecast.activities[3].ready = {12, 20, 40};
    EXPECT_EQ(at(5, 80), 3U);
    EXPECT_EQ(at(15, 80), 3U);
}

TEST_F(OrderedBehind, IsNoneOfWhatNobodyNeedsAndOfAnotherConfidence)
{
    EXPECT_EQ(orderedBehind(plan, forecast, {1, 0, false}, 80), std::nullopt);
    EXPECT_EQ(at(0, 70), std::nullopt);
}

} // namespace
} // namespace ohmwright::forecast
