// SPDX-License-Identifier: GPL-3.0-or-later
// Quantities slanted, their descriptive subscripts upright: ISO 80000-1 and -2.
#include "ui/checks/formula_text.h"

#include <gtest/gtest.h>

using namespace ohmwright;
using namespace ohmwright::ui;

TEST(FormulaText, SetsSubscriptsPowersAndQuantities)
{
    EXPECT_EQ(formulaHtml(QStringLiteral("E = ½·C·U²")),
              QStringLiteral("<i>E</i> = ½·<i>C</i>·<i>U</i>²"));
    EXPECT_EQ(formulaHtml(QStringLiteral("F_f/(F_f + F_r)")),
              QStringLiteral("<i>F</i><sub>f</sub>/(<i>F</i><sub>f</sub> + <i>F</i><sub>r</sub>)"));
    EXPECT_EQ(formulaHtml(QStringLiteral("1 − e^(−t/(R·C))")),
              QStringLiteral("1 − <i>e</i><sup>−t/(R·C)</sup>"));
}

TEST(FormulaText, LeavesProseAndFunctionsUpright)
{
    EXPECT_EQ(formulaHtml(QStringLiteral("greatest of a & b")),
              QStringLiteral("greatest of a &amp; b"));
    EXPECT_EQ(formulaHtml(QStringLiteral("min(I, P/U)")),
              QStringLiteral("min(<i>I</i>, <i>P</i>/<i>U</i>)"));
}

TEST(FormulaText, WritesAStepUnderItsEqualsSign)
{
    const auto lines =
        workedLines({QStringLiteral("stored energy"), QStringLiteral("E = ½·C·U²"),
                     QStringLiteral("½ · 1.2 mF · (453.6 V)²"), QStringLiteral("123.5 J")});
    ASSERT_EQ(lines.size(), 3U);
    EXPECT_EQ(lines[0].left, QStringLiteral("E"));
    EXPECT_EQ(lines[0].right, QStringLiteral("½·C·U²"));
    EXPECT_EQ(lines[1].sign, QStringLiteral("="));
    EXPECT_EQ(lines[2].sign, QStringLiteral("="));
    EXPECT_TRUE(lines[2].isResult);
}

TEST(FormulaText, PutsNoEqualsSignBeforeWords)
{
    const auto lines =
        workedLines({QStringLiteral("boost"), QString(), QStringLiteral("none, as built"),
                     QStringLiteral("not judged")});
    ASSERT_EQ(lines.size(), 2U);
    EXPECT_TRUE(lines[0].sign.isEmpty());
    EXPECT_TRUE(lines[1].sign.isEmpty());
    const auto named = workedLines({QStringLiteral("cell"), QStringLiteral("θ"),
                                    QStringLiteral("90 °C, 30 °C"), QStringLiteral("0.8")});
    EXPECT_TRUE(named[1].sign.isEmpty());
}
