// SPDX-License-Identifier: GPL-3.0-or-later
// Sources: TA-I Technology, thin film chip fuse, document TCP-XXOS006H, page 10 of 17 (1.5 A at a
// safety coefficient of 0.7 and a derating ratio of 0.95 needs more than 2.255 A; read);
// Littelfuse, Fuseology (a 10 A fuse for a 7.5 A circuit at 25 °C, read as quoted); IEC 60364-4-43,
// 433.1 and 434.5.2 with k of the reprinted table (k 143: 50 mm² permits 5.1123e7 A²s, 35 mm²
// carries 5 kA for 1.0020 s, both worked from it).
#include "core/checks/fuse.h"
#include "core/checks/worksheet.h"
#include "tests/published/checks/reading.h"
#include "tests/support/chance.h"

#include <gtest/gtest.h>

namespace ohmwright {

namespace {

FaultCase fault(const QString &name, double v, double r, double s)
{
    return {name, given(volts(v), QString(name + QStringLiteral(" voltage"))),
            given(ohms(r), QString(name + QStringLiteral(" loop"))),
            given(seconds(s), QString(name + QStringLiteral(" clearing")))};
}

FuseInputs usual()
{
    FuseInputs in;
    in.rating = given(amperes(200), QStringLiteral("rating"));
    in.voltage = {{given(volts(500), QStringLiteral("voltage rating")), CurrentKind::Dc}};
    in.breaking = given(amperes(20e3), QStringLiteral("breaking capacity"));
    in.temperatureFactor = given(0.95, QStringLiteral("temperature factor"));
    in.worstVoltage = given(volts(400), QStringLiteral("worst voltage"));
    in.continuous = given(amperes(120), QStringLiteral("continuous current"));
    in.faults = {fault(QStringLiteral("at the fuse"), 400, 0.08, 0.005),
                 fault(QStringLiteral("at the far end"), 300, 0.15, 0.05)};
    in.cableCapacity = given(amperes(250), QStringLiteral("capacity of the cable"));
    in.material = chosen(ConductorMaterial::Copper, QStringLiteral("material"));
    in.area = given(Area::fromSi(50e-6), QStringLiteral("size"));
    in.insulation = given(celsius(90), QStringLiteral("insulation"));
    in.shortTime = given(celsius(250), QStringLiteral("insulation, short time"));
    return in;
}

Verdict judged(const FuseInputs &in)
{
    return judgeFuse(in).verdict;
}

} // namespace

// 1.5 A / (0.7 · 0.95) = 2.255 A; 7.5 A / 0.75 = 10 A. Tolerance: last digit.
TEST(Fuse, NeedsTheRatingOfTheMakersExample)
{
    EXPECT_NEAR(leastRating(amperes(1.5), 0.7, 0.95).si(), 2.255, 0.001);
    EXPECT_NEAR(leastRating(amperes(7.5), 0.75, 1).si(), 10, 1e-9);
}

// k 143: 50 mm² permits 5.1123e7 A²s; 5 kA in 35 mm² may last 1.0020 s. Tolerance 1e-4.
TEST(Fuse, KeepsTheCableBelowItsPermittedHeat)
{
    EXPECT_NEAR(leastArea(amperes(5000), seconds(1.0020), 143).si() * 1e6, 35, 35e-4);
    EXPECT_NEAR(leastArea(amperes(1000), seconds(51.123), 143).si() * 1e6, 50, 50e-4);
}

TEST(Fuse, HoldsAndSaysThatTheShareOfTheRatingIsAssumed)
{
    const Check check = judgeFuse(usual());
    EXPECT_EQ(check.verdict, Verdict::Holds);
    EXPECT_EQ(check.weakest, Evidence::Assumed);
    EXPECT_TRUE(check.sentence.endsWith(
        QStringLiteral("resting on an assumption for share of the rating for a steady load.")));
    EXPECT_NEAR(reading::step(check, QStringLiteral("prospective current, at the fuse")), 5000,
                0.5);
    EXPECT_NEAR(reading::step(check, QStringLiteral("rating that the load needs")), 168.4, 0.05);
}

TEST(Fuse, FailsForEachOfItsReasons)
{
    FuseInputs in = usual();
    in.voltage.front().voltage.value = volts(350);
    EXPECT_EQ(judged(in), Verdict::Fails);
    in = usual();
    in.breaking.value = amperes(4000);
    EXPECT_EQ(judged(in), Verdict::Fails);
    in = usual();
    in.leastBreaking = given(amperes(2500), QStringLiteral("least breaking current"));
    EXPECT_EQ(judged(in), Verdict::Fails); // the weak fault drives only 2 kA
    in = usual();
    in.continuous.value = amperes(150);
    EXPECT_EQ(judged(in), Verdict::Fails);
    in = usual();
    in.cableCapacity.value = amperes(190);
    EXPECT_EQ(judged(in), Verdict::Fails);
    in = usual();
    in.area.value = Area::fromSi(2.5e-6);
    EXPECT_EQ(judged(in), Verdict::Fails);
    in = usual();
    in.faults[1].clearing.value = seconds(8);
    EXPECT_EQ(judged(in), Verdict::Fails);
    in = usual();
    in.peaks = {{QStringLiteral("acceleration"), given(amperes(400), QStringLiteral("peak")),
                 given(seconds(20), QStringLiteral("lasts")),
                 given(seconds(12), QStringLiteral("melting time"))}};
    EXPECT_EQ(judged(in), Verdict::Fails);
}

TEST(Fuse, AnAlternatingRatingNeverAnswersForDirectVoltage)
{
    FuseInputs in = usual();
    in.voltage.front().kind = CurrentKind::Ac;
    EXPECT_EQ(judged(in), Verdict::Unknown);
    EXPECT_EQ(judgeFuse(in).unknowns, QStringList(QStringLiteral("DC voltage rating of the fuse")));
    in.voltage.front().kind.reset();
    EXPECT_EQ(judged(in), Verdict::Unknown);
}

// I₂ ≤ 1.45·I_z of IEC 60364-4-43, 433.1 (quoted in many reprints): a 200 A fuse that opens at 1.6
// times its rating within its conventional time asks for a cable of 320/1.45 = 220.7 A.
TEST(Fuse, HoldsItsConventionalCurrentToTheCableWhereItIsTold)
{
    FuseInputs in = usual();
    in.conventional = given(amperes(320), QStringLiteral("conventional current"));
    EXPECT_EQ(judged(in), Verdict::Holds);
    in.cableCapacity.value = amperes(221);
    EXPECT_EQ(judged(in), Verdict::Tight);
    in.cableCapacity.value = amperes(220);
    EXPECT_EQ(judged(in), Verdict::Fails);
    in.conventional.reset();
    EXPECT_EQ(judged(in), Verdict::Tight); // by the rating alone
}

TEST(Fuse, OfPartialRangeKeepsNoOverloadOffTheCable)
{
    FuseInputs in = usual();
    in.isPartialRange = true;
    in.leastBreaking = given(amperes(800), QStringLiteral("least breaking current"));
    const Check check = judgeFuse(in);
    EXPECT_EQ(check.verdict, Verdict::Unknown);
    EXPECT_EQ(check.doubts.size(), 1);
    in.cannotBeOverloaded = true;
    EXPECT_EQ(judged(in), Verdict::Holds);
    in.cableCapacity.value = amperes(190); // below the rating, which then is no matter
    EXPECT_EQ(judged(in), Verdict::Holds);
}

TEST(Fuse, IsUnknownWithoutAFaultOrItsResistance)
{
    FuseInputs in = usual();
    in.faults.clear();
    EXPECT_EQ(judged(in), Verdict::Unknown);
    in = usual();
    in.faults.front().loop.value.reset();
    EXPECT_EQ(judged(in), Verdict::Unknown);
    in.voltage.front().voltage.value = volts(350);
    EXPECT_EQ(judged(in), Verdict::Fails);
}

TEST(Fuse, RefusesWhatPhysicsDoesNotAllow)
{
    FuseInputs in = usual();
    in.shortTime.value = celsius(60);
    EXPECT_EQ(judgeFuse(in).refusals.size(), 1);
    in = usual();
    in.rating.value = amperes(-1);
    EXPECT_EQ(judgeFuse(in).refusals.size(), 1);
}

// Worse: more load, a hotter fuse, a thinner cable, a slower fuse, a higher voltage, less breaking.
TEST(Fuse, NoVerdictIsBetterWhenAnInputIsWorse)
{
    Chance chance(434);
    for (int i = 0; i < 400; ++i) {
        FuseInputs in = usual();
        in.continuous.value = amperes(chance.between(20, 200));
        in.area.value = Area::fromSi(chance.between(2, 70) * 1e-6);
        in.faults[1].clearing.value = seconds(chance.between(1, 60) / 10.0);
        in.worstVoltage.value = volts(chance.between(200, 600));
        const Verdict before = judged(in);
        switch (chance.below(6)) {
        case 0:
            in.continuous.value = *in.continuous.value * 1.3;
            break;
        case 1:
            in.temperatureFactor.value = 0.7;
            break;
        case 2:
            in.area.value = *in.area.value * 0.5;
            break;
        case 3:
            in.faults[1].clearing.value = *in.faults[1].clearing.value * 2;
            break;
        case 4:
            in.worstVoltage.value = *in.worstVoltage.value * 1.2;
            break;
        default:
            in.breaking.value = amperes(chance.between(1, 6) * 1e3);
        }
        EXPECT_GE(judged(in), before);
    }
}

} // namespace ohmwright
