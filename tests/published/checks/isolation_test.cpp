// SPDX-License-Identifier: GPL-3.0-or-later
// Sources: UN R100 rev. 2, 5.1.3 and its annex on isolation resistance (method, 10 MΩ, nominal
// voltage, ± 20 % of the known resistor). The readings 210 V, 190 V, 150 V with 40 kΩ on 400 V are
// worked from its formula (30 476 Ω); a resistor network solved node by node is the second opinion.
#include "core/checks/isolation.h"
#include "tests/published/checks/reading.h"
#include "tests/support/chance.h"

#include <gtest/gtest.h>

namespace ohmwright {

namespace {

IsolationInputs readings(double negative, double positive, double loaded, double known = 40e3)
{
    IsolationInputs in;
    in.record = {QStringLiteral("first tester"), QDate(2026, 5, 1), QStringLiteral("multimeter 7")};
    in.workingVoltage = given(volts(400), QStringLiteral("working voltage"));
    in.nominalVoltage = given(volts(355), QStringLiteral("nominal voltage"));
    in.packVoltage = given(volts(400), QStringLiteral("pack voltage"));
    in.negativeToChassis = given(volts(negative), QStringLiteral("negative to chassis"));
    in.positiveToChassis = given(volts(positive), QStringLiteral("positive to chassis"));
    in.knownResistor = given(ohms(known), QStringLiteral("known resistor"));
    in.withResistor = given(volts(loaded), QStringLiteral("with the resistor"));
    in.voltmeter = given(ohms(10e6), QStringLiteral("voltmeter"));
    return in;
}

double ohmsOf(const Check &check)
{
    return reading::step(check, QStringLiteral("isolation resistance"));
}

} // namespace

// V_b 400, V₁ 210, V₂ 190, R₀ 40 kΩ, V₁′ 150 V: 30 476 Ω = 76.19 Ω/V, fails 100 Ω/V. 1e-4.
TEST(Isolation, GivesTheRegulationsFigureAndFails)
{
    const Check check = judgeIsolation(readings(210, 190, 150));
    EXPECT_NEAR(ohmsOf(check), 30476, 5);
    EXPECT_EQ(check.verdict, Verdict::Fails);
    EXPECT_TRUE(check.result.contains(QStringLiteral("76.19")));
    EXPECT_EQ(check.comparisons.front().limitFrom, QStringLiteral("UN R100, 5.1.3.1: 100 Ω/V"));
}

// Second opinion: leaks of the poles to the chassis put in, the three readings computed as the
// network gives them (ideal meter), the smaller leak has to come back out.
TEST(Isolation, FindsTheLeakThatANetworkWasBuiltWith)
{
    Chance chance(100);
    for (int i = 0; i < 200; ++i) {
        const double rn = chance.between(10, 2000) * 1e3;
        const double rp = chance.between(10, 2000) * 1e3;
        const double v = 400;
        const double r0 = 40e3;
        const double v1 = v * rn / (rn + rp);
        const double v2 = v - v1;
        const double side = std::max(rn, rp); // reads more
        const double other = std::min(rn, rp);
        const double parallel = 1 / (1 / side + 1 / r0);
        const double loaded = v * parallel / (parallel + other);
        const Check check = judgeIsolation(readings(v1, v2, loaded, r0));
        EXPECT_NEAR(ohmsOf(check), other, 1e-3 * other);
        if (other != 40e3) { // rounding decides there
            EXPECT_EQ(check.verdict == Verdict::Fails, other < 40e3) << rn << ' ' << rp;
        }
    }
}

// UN R100, 5.1.3.1 and 5.1.3.2: 100 Ω/V, 500 Ω/V; 205 Ω/V lies between them.
TEST(Isolation, AsksFiveHundredOhmsAVoltOfWhatIsJoinedWithAc)
{
    IsolationInputs in = readings(205, 195, 100); // 82 kΩ, 205 Ω/V
    EXPECT_EQ(judgeIsolation(in).verdict, Verdict::Holds);
    in.joinedWithAc = true;
    EXPECT_EQ(judgeIsolation(in).verdict, Verdict::Fails);
    in.acProtected = true;
    EXPECT_EQ(judgeIsolation(in).verdict, Verdict::Holds);
    in.current = CurrentKind::Ac;
    EXPECT_EQ(judgeIsolation(in).verdict, Verdict::Fails);
}

TEST(Isolation, DoubtsARecordThatTheMethodDoesNotAllow)
{
    IsolationInputs in = readings(205, 195, 100);
    in.voltmeter.value = ohms(1e6);
    EXPECT_EQ(judgeIsolation(in).verdict, Verdict::Unknown);
    in = readings(205, 195, 100);
    in.packVoltage.value = volts(340);
    in.negativeToChassis.value = volts(175);
    in.positiveToChassis.value = volts(165);
    EXPECT_EQ(judgeIsolation(in).verdict, Verdict::Unknown);
    in = readings(205, 250, 100);
    EXPECT_EQ(judgeIsolation(in).verdict, Verdict::Unknown);
    EXPECT_EQ(judgeIsolation(readings(100, 90, 150)).refusals.size(), 1);
}

TEST(Isolation, IsUnknownWhenNobodySignedForIt)
{
    IsolationInputs in = readings(205, 195, 100);
    in.record.by.clear();
    const Check check = judgeIsolation(in);
    EXPECT_EQ(check.verdict, Verdict::Unknown);
    EXPECT_EQ(check.doubts, QStringList(QStringLiteral("It is not recorded by whom.")));
    in = readings(210, 190, 150); // a failure stays one
    in.record = {};
    EXPECT_EQ(judgeIsolation(in).verdict, Verdict::Fails);
    EXPECT_EQ(judgeIsolation(in).unknowns.size(), 3);
}

TEST(Isolation, ShowsThePublishedVerdictBesideALoosenedOne)
{
    IsolationInputs in = readings(210, 190, 150);
    in.leastDc.own = 50;
    in.leastDc.reason = QStringLiteral("the old rule");
    EXPECT_EQ(judgeIsolation(in).verdict, Verdict::Holds);
    EXPECT_EQ(judgeIsolation(in).publishedVerdict, Verdict::Fails);
}

// Worse: a reading nearer to the one without the resistor, a smaller meter, a higher working
// voltage.
TEST(Isolation, NoVerdictIsBetterWhenAnInputIsWorse)
{
    Chance chance(101);
    for (int i = 0; i < 300; ++i) {
        IsolationInputs in = readings(chance.between(200, 215), 190, chance.between(20, 199));
        const Verdict before = judgeIsolation(in).verdict;
        switch (chance.below(3)) {
        case 0:
            in.withResistor.value = (*in.withResistor.value + *in.negativeToChassis.value) * 0.5;
            break;
        case 1:
            in.voltmeter.value = ohms(2e6);
            break;
        default:
            in.workingVoltage.value = volts(450);
        }
        EXPECT_GE(judgeIsolation(in).verdict, before);
    }
}

} // namespace ohmwright
