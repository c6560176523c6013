// SPDX-License-Identifier: GPL-3.0-or-later
// A day to order by that comes before the thing can be ordered is told by the task it waits for;
// the days are those found by playing every sample for every day.
#include "core/forecast/order_by.h"
#include "tests/support/generated_book.h"

#include <gtest/gtest.h>

#include <algorithm>

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

// How many samples reach each goal later than `kept`, with one activity let go on that day.
std::vector<std::size_t> lateGoals(const WorkPlan &plan, const Simulation &simulation,
                                   std::size_t activity, int day, const std::vector<int> &kept)
{
    std::vector<int> released;
    for (const Activity &a : plan.activities)
        released.push_back(a.releaseDay);
    released[activity] = std::max(released[activity], day);
    const Samples samples = simulation.sample(plan.milestones, released);
    std::vector<std::size_t> late;
    for (std::size_t g = 0; g < kept.size(); ++g)
        late.push_back(static_cast<std::size_t>(
            std::ranges::count_if(samples.ready[g], [&](int ready) { return ready > kept[g]; })));
    return late;
}

TEST(OrderByDays, AreThoseOfPlayingEverySampleForEveryDay)
{
    int asked = 0;
    int late = 0;
    for (std::uint32_t seed = 1; seed <= 40; ++seed) {
        const GeneratedBook generated = generateBook(seed);
        const WorkPlan plan = workPlanOf(generated.records, QDate(2026, 6, 15));
        if (plan.milestones.empty())
            continue;
        Settings settings;
        settings.samples = 70;
        settings.orderPasses = 0;
        settings.seed = seed;
        const Simulation simulation(plan, settings);
        const int percent = seed % 2 == 0 ? 50 : 80;
        std::vector<int> kept;
        Samples samples = simulation.sample(plan.milestones, {});
        for (std::vector<int> &ready : samples.ready)
            kept.push_back(dayAt(ready, percent));
        const std::size_t most = mayBeLate(70, percent);
        for (const OrderBy &order : orderByDays(plan, simulation, percent)) {
            if (!order.needed)
                continue;
            const auto moves = [&](int day) {
                const auto counts = lateGoals(plan, simulation, order.activity, day, kept);
                return std::ranges::any_of(counts, [&](std::size_t count) { return count > most; });
            };
            const std::vector<OrderBy> alone =
                orderByDays(plan, simulation, percent, {}, {order.activity});
            ASSERT_EQ(alone.size(), 1U);
            EXPECT_EQ(alone[0].latestDay, order.latestDay) << "whoever asks, for whatever else";
            EXPECT_FALSE(moves(order.latestDay)) << "seed " << seed;
            EXPECT_TRUE(moves(order.latestDay + 1)) << "seed " << seed << ": a day later is late";
            ++asked;
            late += order.latestDay > 0 ? 1 : 0;
        }
    }
    EXPECT_GT(asked, 15);
    EXPECT_GT(late, 10);
}

TEST(OrderByDays, LookAtFewerSamplesInALargePlanButAtAThousand)
{
    WorkPlan plan;
    plan.activities.resize(100);
    for (std::size_t i = 0; i < 20; ++i)
        plan.activities[i].toOrder = true;
    EXPECT_EQ(orderBySamples(plan, 10'000), 10'000); // 20 orders of 100 activities: all
    EXPECT_EQ(orderBySamples(plan, 400), 400);
    plan.activities.resize(400);
    EXPECT_EQ(orderBySamples(plan, 10'000), 2500);
    plan.activities.resize(4000);
    EXPECT_EQ(orderBySamples(plan, 10'000), 1000);
}

// By hand: 2 standard errors of 10,000 samples are 80 of them at 80 %, 43.6 at 95 %.
TEST(OrderByDays, LetAsManySamplesBeLateAsTheConfidenceLeavesOutAndTheirErrorHides)
{
    EXPECT_EQ(mayBeLate(10'000, 80), 2080U);
    EXPECT_EQ(mayBeLate(10'000, 95), 543U);
    EXPECT_EQ(mayBeLate(100, 50), 60U);
    EXPECT_EQ(mayBeLate(1, 50), 0U) << "never all";
    EXPECT_EQ(mayBeLate(4, 50), 3U);
}

} // namespace
} // namespace ohmwright::forecast
