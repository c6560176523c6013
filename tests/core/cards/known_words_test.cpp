// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/cards/known_words.h"

#include <QSet>

#include <gtest/gtest.h>

namespace ohmwright {
namespace {

TEST(KnownWords, NoTwoAreSpokenTheSame)
{
    for (const auto &words :
         {knownWords("check_figure", "figure"), knownWords("own_threshold", "name")}) {
        ASSERT_FALSE(words.empty());
        QSet<QString> spoken;
        for (const KnownWord &word : words) {
            EXPECT_FALSE(spoken.contains(word.spoken.toCaseFolded())) << word.spoken.toStdString();
            EXPECT_NE(word.spoken, word.stored);
            spoken.insert(word.spoken.toCaseFolded());
        }
    }
}

TEST(KnownWords, AFieldThatTakesAnyTextHasNone)
{
    EXPECT_TRUE(knownWords("seller", "name").empty());
    EXPECT_TRUE(knownWords("check_figure", "source").empty());
}

} // namespace
} // namespace ohmwright
