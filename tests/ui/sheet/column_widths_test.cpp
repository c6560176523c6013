// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/sheet/column_widths.h"

#include <gtest/gtest.h>

#include <numeric>
#include <random>

namespace ohmwright::sheet {

TEST(ColumnWidths, SharesDivideTheWidthInProportion)
{
    const auto widths = shareOutWidth({{10, 500, 1, true}, {10, 20, 3, true}}, 400);
    EXPECT_DOUBLE_EQ(widths[0], 100);
    EXPECT_DOUBLE_EQ(widths[1], 300);
}

TEST(ColumnWidths, AColumnWithoutAShareTakesItsNaturalWidth)
{
    const auto widths = shareOutWidth({{10, 60, 0, true}, {10, 20, 1, true}}, 400);
    EXPECT_DOUBLE_EQ(widths[0], 60);
    EXPECT_DOUBLE_EQ(widths[1], 340);
}

TEST(ColumnWidths, WhatIsLeftGoesToTheColumnsThatCanUseIt)
{
    const auto widths = shareOutWidth({{10, 60, 0, true}, {10, 40, 0, false}}, 200);
    EXPECT_DOUBLE_EQ(widths[0], 160);
    EXPECT_DOUBLE_EQ(widths[1], 40);
}

TEST(ColumnWidths, NoColumnIsNarrowerThanItsLongestWordWhileThereIsRoom)
{
    const auto widths = shareOutWidth({{90, 90, 1, true}, {10, 20, 9, true}}, 200);
    EXPECT_DOUBLE_EQ(widths[0], 90);
    EXPECT_DOUBLE_EQ(widths[1], 110);
}

TEST(ColumnWidths, TogetherTheyAreTheTotalWhateverIsAsked)
{
    EXPECT_TRUE(shareOutWidth({}, 100).empty());
    for (unsigned seed = 0; seed < 1000; ++seed) {
        std::mt19937 random(seed);
        std::uniform_real_distribution<double> length(0, 300);
        std::uniform_int_distribution<int> small(0, 4);
        std::vector<ColumnNeed> needs(static_cast<std::size_t>(1 + small(random) * 3));
        double least = 0;
        for (ColumnNeed &need : needs) {
            need.least = length(random) / 3;
            need.natural = need.least + length(random);
            need.share = small(random) - 1 < 0 ? 0 : small(random);
            need.stretches = small(random) > 1;
            least += need.least;
        }
        const auto widths = shareOutWidth(needs, 500);
        EXPECT_NEAR(std::accumulate(widths.begin(), widths.end(), 0.0), 500, 0.001) << seed;
        for (std::size_t i = 0; i < needs.size(); ++i) {
            EXPECT_GE(widths[i], 0) << seed;
            if (least <= 500) {
                EXPECT_GE(widths[i], needs[i].least - 0.001) << seed;
            }
        }
    }
}

} // namespace ohmwright::sheet
