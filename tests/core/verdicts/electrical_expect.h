// SPDX-License-Identifier: GPL-3.0-or-later
// What a check read out of a book is held to: the same check worked by hand, what it must ask for,
// and both verdicts where a threshold was loosened.
#pragma once

// first: g++ 12 takes its enumerators for shadows of the quantities' types
#include "core/checks/check.h"
#include "core/verdicts/input_address.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace ohmwright {

// As by hand: the same verdict, for the same reason.
inline void expectSame(const std::vector<Check> &ofBook, const Check &byHand)
{
    ASSERT_EQ(ofBook.size(), 1U);
    EXPECT_EQ(ofBook.front().id, byHand.id);
    EXPECT_EQ(ofBook.front().verdict, byHand.verdict)
        << ofBook.front().sentence.toStdString() << "\nby hand: " << byHand.sentence.toStdString();
    EXPECT_EQ(ofBook.front().unknowns, QStringList());
    ASSERT_TRUE(ofBook.front().margin && byHand.margin);
    EXPECT_NEAR(*ofBook.front().margin, *byHand.margin, 1e-9);
}

// Unknown (or a failure already known, which stays one), names the input, and says where it can be
// filled in.
inline void expectAsks(const std::vector<Check> &checks, const char *name,
                       Verdict verdict = Verdict::Unknown)
{
    ASSERT_FALSE(checks.empty());
    const Check &check = checks.front();
    EXPECT_EQ(check.verdict, verdict) << check.sentence.toStdString();
    const auto asked = std::ranges::find_if(check.inputs, [&](const CheckInput &input) {
        return input.shown.isEmpty() && input.origin.name.contains(QString::fromUtf8(name));
    });
    ASSERT_NE(asked, check.inputs.end()) << check.unknowns.join(u'\n').toStdString();
    EXPECT_TRUE(parseInputAddress(asked->origin.field).has_value())
        << asked->origin.field.toStdString();
}

// The published verdict is told beside the own one.
inline void expectBothVerdicts(const std::vector<Check> &checks)
{
    ASSERT_FALSE(checks.empty());
    EXPECT_TRUE(checks.front().publishedVerdict.has_value());
    EXPECT_EQ(checks.front().publishedVerdict, Verdict::Fails);
    EXPECT_NE(checks.front().verdict, Verdict::Fails) << checks.front().sentence.toStdString();
}

} // namespace ohmwright
