// SPDX-License-Identifier: GPL-3.0-or-later
// Source: IEC 62440, table 3, bending radius of cables for fixed installation, normal use, as a
// cable maker prints it. For the fit itself nothing is published: independent brute force on a
// grid of places, labelled so.
#include "core/checks/cable_bend.h"
#include "core/checks/fit.h"
#include "core/checks/worksheet.h"
#include "tests/published/checks/reading.h"
#include "tests/support/chance.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace ohmwright {

namespace {

using Whole = std::array<int, 3>;

BayBox box(const QString &name, double l, double w, double h)
{
    BayBox b;
    b.name = name;
    b.length = given(metres(l / 1000), QString(QStringLiteral("length of ") + name));
    b.width = given(metres(w / 1000), QString(QStringLiteral("width of ") + name));
    b.height = given(metres(h / 1000), QString(QStringLiteral("height of ") + name));
    return b;
}

FitInputs bay(double l, double w, double h, std::vector<BayBox> boxes)
{
    FitInputs in;
    in.bayLength = given(metres(l / 1000), QStringLiteral("length of the bay"));
    in.bayWidth = given(metres(w / 1000), QStringLiteral("width of the bay"));
    in.bayHeight = given(metres(h / 1000), QStringLiteral("height of the bay"));
    in.boxes = std::move(boxes);
    return in;
}

bool mayFit(const Check &check)
{
    return check.verdict == Verdict::Holds || check.verdict == Verdict::Tight;
}

// Every turning by right angles, told apart by what points up.
std::vector<Whole> turned(const Whole &b, bool heightUp, bool lengthUp, bool widthUp)
{
    std::vector<Whole> ways;
    Whole axes{0, 1, 2};
    do {
        const int up = axes[2];
        if ((up == 0 && lengthUp) || (up == 1 && widthUp) || (up == 2 && heightUp))
            ways.push_back({b[static_cast<std::size_t>(axes[0])],
                            b[static_cast<std::size_t>(axes[1])],
                            b[static_cast<std::size_t>(axes[2])]});
    } while (std::next_permutation(axes.begin(), axes.end()));
    return ways;
}

// Brute force: one box in the corner of places, the other at every place of the grid, both in every
// turning, clearance to walls and between.
bool pairFits(const Whole &bayExtent, const std::vector<Whole> &a, const std::vector<Whole> &b,
              int clearance)
{
    const auto places = [&](const Whole &extent) {
        std::vector<Whole> result;
        for (int x = clearance; x + extent[0] + clearance <= bayExtent[0]; ++x) {
            for (int y = clearance; y + extent[1] + clearance <= bayExtent[1]; ++y) {
                for (int z = clearance; z + extent[2] + clearance <= bayExtent[2]; ++z)
                    result.push_back({x, y, z});
            }
        }
        return result;
    };
    for (const Whole &one : a) {
        for (const Whole &other : b) {
            for (const Whole &at : places(one)) {
                for (const Whole &to : places(other)) {
                    for (std::size_t i = 0; i < 3; ++i) {
                        if (at[i] + one[i] + clearance <= to[i] ||
                            to[i] + other[i] + clearance <= at[i])
                            return true;
                    }
                }
            }
        }
    }
    return false;
}

} // namespace

// Printed: 4D to 8 mm, 5D to 12 mm, 6D to 20 mm and above. Exact.
TEST(Fit, BendsCablesAsPrinted)
{
    const std::pair<double, double> printed[] = {{5, 4},  {8, 4},  {8.1, 5}, {12, 5},
                                                 {13, 6}, {20, 6}, {25, 6}};
    for (const auto &[millimetres, factor] : printed)
        EXPECT_EQ(leastBendFactor(metres(millimetres / 1000)), factor) << millimetres;
    EXPECT_NEAR(roomForBend(metres(0.05), metres(0.015), 6).si(), 0.155, 1e-12);
}

TEST(Fit, CountsTheRoomOfACableOnItsSideOnly)
{
    BayBox inverter = box(QStringLiteral("inverter"), 300, 200, 150);
    inverter.ports = {{QStringLiteral("DC"), Face::Front,
                       given(metres(0.015), QStringLiteral("diameter of the DC cable")),
                       given(metres(0.05), QStringLiteral("DC connector")), std::nullopt}};
    // 300 + 155 (bend) and 10 mm at both ends: 475 mm
    EXPECT_EQ(judgeFit(bay(480, 240, 180, {inverter})).verdict, Verdict::Holds);
    EXPECT_EQ(judgeFit(bay(474, 240, 180, {inverter})).verdict, Verdict::Fails);
    inverter.ports[0].bendFactor = given(4.0, QStringLiteral("bending radius, data sheet"));
    EXPECT_TRUE(mayFit(judgeFit(bay(474, 240, 180, {inverter}))));
    inverter.ports[0].connector = notKnown<Length>(QStringLiteral("DC connector"));
    EXPECT_EQ(judgeFit(bay(480, 240, 180, {inverter})).sentence,
              QStringLiteral("Unknown for want of DC connector."));
}

TEST(Fit, LiesOnlyAsItMay)
{
    BayBox charger = box(QStringLiteral("charger"), 300, 200, 100);
    const FitInputs flat = bay(400, 300, 130, {charger});
    EXPECT_EQ(judgeFit(flat).verdict, Verdict::Holds);
    EXPECT_EQ(judgeFit(bay(400, 130, 300, {charger})).verdict, Verdict::Fails);
    charger.widthUp = true;
    EXPECT_EQ(judgeFit(bay(400, 130, 300, {charger})).verdict, Verdict::Holds);
    EXPECT_EQ(judgeFit(bay(130, 240, 400, {charger})).verdict, Verdict::Fails);
    charger.lengthUp = true;
    EXPECT_EQ(judgeFit(bay(130, 240, 400, {charger})).verdict, Verdict::Holds);
    charger.heightUp = charger.widthUp = charger.lengthUp = false;
    EXPECT_EQ(judgeFit(bay(400, 300, 130, {charger})).refusals.size(), 1);
}

// Independent brute force: exact for one box and for two.
TEST(Fit, AgreesWithBruteForceOnPairs)
{
    Chance chance(17);
    int fitting = 0, rounds = 0;
    for (int round = 0; round < 400; ++round) {
        const Whole space{chance.between(5, 9), chance.between(5, 9), chance.between(4, 8)};
        std::vector<Whole> extents;
        std::vector<BayBox> boxes;
        std::vector<std::vector<Whole>> ways;
        for (int i = 0; i < 2; ++i) {
            const Whole e{chance.between(1, 6), chance.between(1, 6), chance.between(1, 5)};
            BayBox b = box(QString::number(i), e[0] * 10, e[1] * 10, e[2] * 10);
            b.lengthUp = chance.oneIn(2);
            b.widthUp = chance.oneIn(2);
            b.heightUp = chance.oneIn(2) || (!b.lengthUp && !b.widthUp);
            ways.push_back(turned(e, b.heightUp, b.lengthUp, b.widthUp));
            extents.push_back(e);
            boxes.push_back(b);
        }
        const int clearance = chance.below(2);
        FitInputs in = bay(space[0] * 10, space[1] * 10, space[2] * 10, boxes);
        // half a millimetre aside of the grid, so that rounding decides nothing
        in.clearance.own = metres(clearance * 0.010 - 0.0005 + (clearance == 0 ? 0.0004 : 0));
        const bool fits = pairFits(space, ways[0], ways[1], clearance);
        EXPECT_EQ(mayFit(judgeFit(in)), fits) << round;
        fitting += fits ? 1 : 0;
        ++rounds;
    }
    EXPECT_GT(fitting, rounds / 10);
    EXPECT_LT(fitting, rounds * 9 / 10);
}

TEST(Fit, MoreThanTwoAreARowOrADoubtNeverAWrongFailure)
{
    const auto cube = [](const QString &name) {
        return box(name, 100, 100, 100);
    };
    std::vector<BayBox> four{cube(QStringLiteral("A")), cube(QStringLiteral("B")),
                             cube(QStringLiteral("C")), cube(QStringLiteral("D"))};
    EXPECT_EQ(judgeFit(bay(460, 130, 130, four)).verdict, Verdict::Holds);
    const Check square = judgeFit(bay(235, 235, 130, four)); // two by two would do
    EXPECT_EQ(square.verdict, Verdict::Unknown);
    EXPECT_EQ(square.doubts.size(), 1);
    four[3] = box(QStringLiteral("D"), 200, 200, 100);
    EXPECT_EQ(judgeFit(bay(235, 235, 130, four)).verdict, Verdict::Fails); // A and D do not
}

// Worse: a larger box, a smaller bay, more clearance, a thicker cable.
TEST(Fit, ScalesAndNeverJudgesWorseInputsBetter)
{
    Chance chance(18);
    for (int round = 0; round < 300; ++round) {
        std::vector<BayBox> boxes;
        for (int i = chance.between(1, 3); i > 0; --i) {
            boxes.push_back(box(QString::number(i), chance.between(50, 300),
                                chance.between(50, 300), chance.between(50, 300)));
            boxes.back().widthUp = chance.oneIn(2);
            boxes.back().ports = {
                {QStringLiteral("port"), Face::Left,
                 given(metres(chance.between(3, 20) / 1000.0), QStringLiteral("cable")),
                 given(metres(0.03), QStringLiteral("connector")), std::nullopt}};
        }
        const FitInputs in = bay(chance.between(200, 900), chance.between(200, 600),
                                 chance.between(150, 500), boxes);
        const Verdict verdict = judgeFit(in).verdict;
        FitInputs worse = in;
        worse.bayWidth.value = *in.bayWidth.value * 0.9;
        EXPECT_GE(judgeFit(worse).verdict, verdict);
        worse = in;
        worse.boxes[0].length.value = *in.boxes[0].length.value * 1.1;
        EXPECT_GE(judgeFit(worse).verdict, verdict);
        worse = in;
        worse.clearance.own = in.clearance.published * 2.0;
        EXPECT_GE(judgeFit(worse).verdict, verdict);
        worse = in;
        worse.boxes[0].ports[0].cableDiameter.value =
            *in.boxes[0].ports[0].cableDiameter.value * 1.5;
        EXPECT_GE(judgeFit(worse).verdict, verdict);
    }
}

} // namespace ohmwright
