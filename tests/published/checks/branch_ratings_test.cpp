// SPDX-License-Identifier: GPL-3.0-or-later
// Sources: a contactor's data sheet (TE Connectivity, EVC 250 main contactor, V23720: continuous
// 250 A at 85 °C with 50 mm²; 300 A for 7 min, 600 A for 1 min, 6000 A for 25 ms) and another's
// (EVC 135: 135 A at 85 °C with 35 mm²; 225 A for 360 s, 400 A for 60 s); both read. The verdicts
// of random parts are held to an independent brute force over the same rule, labelled so.
#include "core/checks/branch_ratings.h"
#include "core/checks/worksheet.h"
#include "tests/published/checks/reading.h"
#include "tests/support/chance.h"

#include <gtest/gtest.h>

namespace ohmwright {

namespace {

using RatedPart = Assembly<CurrentLimit>;

CurrentLimit continuous(double a)
{
    Given<Current> current{amperes(a), {}};
    current.origin.evidence = Evidence::Datasheet;
    return {current, std::nullopt, std::nullopt};
}

CurrentLimit peak(double a, double s)
{
    CurrentLimit limit = continuous(a);
    limit.lasts = given(seconds(s), QString());
    return limit;
}

CurrentDemand demand(double a, std::optional<double> s = std::nullopt)
{
    CurrentDemand demand;
    demand.name = s ? QStringLiteral("acceleration") : QStringLiteral("cruising");
    demand.current = given(amperes(a), demand.name);
    if (s)
        demand.lasts = given(seconds(*s), QStringLiteral("how long it lasts"));
    return demand;
}

Check judge(std::vector<CurrentDemand> demands, std::vector<RatedPart> parts)
{
    BranchRatingsInputs in;
    in.name = QStringLiteral("motor feed");
    in.demands = std::move(demands);
    in.parts = std::move(parts);
    return judgeBranchRatings(in);
}

RatedPart part(std::vector<CurrentLimit> limits)
{
    return RatedPart{QStringLiteral("Contactor"), std::move(limits), true, {}};
}

} // namespace

// What the sheets print is carried to its last second and ampere, and not beyond. Exact.
TEST(BranchRatings, CarriesWhatTheContactorsSheetsPrint)
{
    const RatedPart large =
        part({continuous(250), peak(300, 7 * 60), peak(600, 60), peak(6000, 0.025)});
    const RatedPart small = part({continuous(135), peak(225, 360), peak(400, 60)});
    struct Case
    {
        const RatedPart &part;
        double amps;
        std::optional<double> lasts;
        bool carried;
    };
    for (const Case &one :
         {Case{large, 250, {}, true}, Case{large, 251, {}, false}, Case{large, 300, 420, true},
          Case{large, 300, 421, false}, Case{large, 301, 420, false}, Case{large, 600, 60, true},
          Case{large, 600, 61, false}, Case{large, 6000, 0.025, true},
          Case{large, 6000, 0.026, false}, Case{small, 135, {}, true}, Case{small, 136, {}, false},
          Case{small, 225, 360, true}, Case{small, 225, 361, false}, Case{small, 400, 60, true},
          Case{small, 400, 61, false}}) {
        const Check check = judge({demand(one.amps, one.lasts)}, {one.part});
        EXPECT_EQ(check.verdict != Verdict::Fails, one.carried)
            << one.amps << " A for " << one.lasts.value_or(0)
            << " s: " << check.sentence.toStdString();
        EXPECT_NE(check.verdict, Verdict::Unknown);
    }
}

// 10 kW at 400 V: 25 A, which a part for 30 A carries with 1/6 to spare. Tolerance: exact.
TEST(BranchRatings, HoldsAContinuousDemandToTheContinuousLimit)
{
    const Current heater = watts(10e3) / volts(400);
    const Check check = judge({demand(heater.si())}, {part({continuous(30)})});
    EXPECT_EQ(check.verdict, Verdict::Holds);
    EXPECT_NEAR(*check.margin, 1.0 / 6, 1e-12);
    EXPECT_EQ(judge({demand(heater.si())}, {part({continuous(20)})}).verdict, Verdict::Fails);
}

TEST(BranchRatings, APeakLimitHoldsForItsDurationOnly)
{
    const std::vector<RatedPart> parts{part({continuous(200), peak(400, 30)})};
    EXPECT_EQ(judge({demand(350, 10)}, parts).verdict, Verdict::Holds);
    EXPECT_EQ(judge({demand(350, 30)}, parts).verdict, Verdict::Holds);
    const Check longer = judge({demand(350, 31)}, parts);
    EXPECT_EQ(longer.verdict, Verdict::Fails);
    EXPECT_EQ(longer.comparisons.front().limit, showSi(200, u"A"));
}

TEST(BranchRatings, IsUnknownWhereNoLimitAnswers)
{
    const Check noPeak = judge({demand(350, 10)}, {part({continuous(200)})});
    EXPECT_EQ(noPeak.verdict, Verdict::Unknown);
    EXPECT_EQ(noPeak.unknowns,
              QStringList(QStringLiteral("peak current limit of Contactor for at least ") +
                          showSi(10, u"s")));
    const Check noContinuous = judge({demand(150)}, {part({peak(400, 30)})});
    EXPECT_EQ(noContinuous.verdict, Verdict::Unknown);
    EXPECT_EQ(noContinuous.unknowns,
              QStringList(QStringLiteral("continuous current limit of Contactor")));
}

TEST(BranchRatings, FailsAboveAPeakLimitThatItOutlasts)
{
    EXPECT_EQ(judge({demand(450)}, {part({peak(400, 30)})}).verdict, Verdict::Fails);
}

TEST(BranchRatings, AsksForNothingThatDoesNotMatter)
{
    CurrentLimit gap = peak(400, 30);
    gap.lasts->value.reset(); // 400 A for an unknown time
    const Check check = judge({demand(150), demand(190, 10)}, {part({continuous(200), gap})});
    EXPECT_EQ(check.verdict, Verdict::Tight);
    EXPECT_TRUE(check.unknowns.isEmpty());
    EXPECT_EQ(judge({demand(250, 10)}, {part({continuous(200), gap})}).verdict, Verdict::Unknown);
}

TEST(BranchRatings, FindsThePartInsideAndNeverMixesKinds)
{
    CurrentLimit ac = continuous(500);
    ac.kind = CurrentKind::Ac;
    RatedPart box = part({continuous(300)});
    box.inside = {RatedPart{QStringLiteral("busbar joint"), {continuous(150)}, true, {}}};
    const Check check = judge({demand(200)}, {box});
    EXPECT_EQ(check.verdict, Verdict::Fails);
    EXPECT_EQ(check.comparisons.front().what, QStringLiteral("Contactor › busbar joint: cruising"));
    EXPECT_EQ(judge({demand(200)}, {part({ac})}).verdict, Verdict::Unknown);
}

TEST(BranchRatings, RefusesWhatPhysicsDoesNotAllow)
{
    EXPECT_EQ(judge({demand(-5)}, {part({continuous(200)})}).refusals.size(), 1);
    EXPECT_EQ(judge({demand(5, -1)}, {part({continuous(200)})}).refusals.size(), 1);
}

// Brute force, labelled so: one part with a continuous and one peak limit, the rule in four lines.
TEST(BranchRatings, AgreesWithTheRuleWrittenOutIndependently)
{
    Chance chance(11);
    for (int i = 0; i < 500; ++i) {
        const double c = chance.between(50, 300);
        const double p = c + chance.between(0, 300);
        const double tp = chance.between(1, 60);
        const double a = chance.between(20, 700);
        const double t = chance.between(1, 90);
        const double allowed = t <= tp ? p : c;
        const Verdict expected = a > allowed              ? Verdict::Fails
                                 : 1 - a / allowed < 0.10 ? Verdict::Tight
                                                          : Verdict::Holds;
        EXPECT_EQ(judge({demand(a, t)}, {part({continuous(c), peak(p, tp)})}).verdict, expected)
            << a << " A for " << t << " s against " << c << " A, " << p << " A for " << tp << " s";
    }
}

// Worse: more current, a longer demand, lower or shorter limits.
TEST(BranchRatings, NoVerdictIsBetterWhenAnInputIsWorse)
{
    Chance chance(12);
    for (int i = 0; i < 500; ++i) {
        double a = chance.between(20, 500);
        double t = chance.between(1, 90);
        double c = chance.between(50, 300);
        double p = chance.between(300, 600);
        double tp = chance.between(1, 60);
        const bool withPeak = !chance.oneIn(3);
        const bool withContinuous = !chance.oneIn(3);
        const auto now = [&] {
            std::vector<CurrentLimit> limits;
            if (withContinuous)
                limits.push_back(continuous(c));
            if (withPeak)
                limits.push_back(peak(p, tp));
            return judge({demand(a, t)}, {part(limits)}).verdict;
        };
        const Verdict before = now();
        switch (chance.below(5)) {
        case 0:
            a *= 1.4;
            break;
        case 1:
            t *= 2;
            break;
        case 2:
            c *= 0.6;
            break;
        case 3:
            p = std::max(p * 0.7, c);
            break;
        default:
            // shorter is worse where it decides; where it only bounded a longer demand it may free
            // a failure to unknown
            if (t > tp)
                continue;
            tp /= 2;
        }
        EXPECT_GE(now(), before);
    }
}

} // namespace ohmwright
