// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/build_order/task_texts.h"

#include <gtest/gtest.h>

namespace ohmwright::ui {
namespace {

TEST(TaskTexts, HoursAreShownAsTheyAreSaidAndReadAgain)
{
    EXPECT_EQ(showWorkTime(45), QStringLiteral("45 min"));
    EXPECT_EQ(showWorkTime(110), QStringLiteral("1 h 50 min"));
    EXPECT_EQ(showWorkTime(120), QStringLiteral("2 h"));
    for (int minutes = 1; minutes <= 3000; ++minutes) {
        const Result<int> again = readWorkMinutes(showWorkTime(minutes));
        ASSERT_TRUE(again.has_value()) << minutes;
        ASSERT_EQ(*again, minutes);
    }
    EXPECT_EQ(readWorkMinutes(QStringLiteral("2.5 h")).value(), 150);
    EXPECT_EQ(readWorkMinutes(QStringLiteral("1h30min")).value(), 90);
}

} // namespace
} // namespace ohmwright::ui
