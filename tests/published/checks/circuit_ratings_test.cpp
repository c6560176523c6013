// SPDX-License-Identifier: GPL-3.0-or-later
// Sources: the relay inside a heater is common practice, no published source (the figures follow by
// multiplication). 325 V is the peak of 230 V rms, as every text on alternating current prints it.
// Modulation: six-step has a fundamental of √6/π = 0.780 times the link from line to line (Mohan,
// Undeland, Robbins, Power Electronics) and an rms worked here from its wave; space vector ends
// where a line-to-line peak is the link's. Voltage classes: ISO 6469-3, their lower edge also in 49
// CFR 571.305 S3. The inverse is held to a brute force that tries one count after the other.
#include "core/checks/circuit_ratings.h"
#include "core/checks/worksheet.h"
#include "tests/published/checks/reading.h"
#include "tests/support/chance.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace ohmwright {

namespace {

using RatedPart = Assembly<VoltageLimit>;

VoltageLimit limit(double v, std::optional<CurrentKind> kind = CurrentKind::Dc,
                   Evidence evidence = Evidence::Nameplate)
{
    Given<Voltage> voltage{volts(v), {}};
    voltage.origin.evidence = evidence;
    return {voltage, kind};
}

VoltageSource source(double v, CurrentKind kind = CurrentKind::Dc)
{
    VoltageSource source;
    source.name = QStringLiteral("charger's maximum output");
    source.voltage = given(volts(v), source.name);
    source.kind = kind;
    return source;
}

CircuitRatingsInputs packOf(double cells, double full = 4.2)
{
    CircuitRatingsInputs in;
    in.name = QStringLiteral("traction circuit");
    in.pack.cellsInSeries = given(cells, QStringLiteral("cells in series"));
    in.pack.cellFull = given(volts(full), QStringLiteral("full voltage of a cell"));
    in.pack.cellNominal = volts(3.6);
    in.motor.applies = false;
    in.motor.whyNot = QStringLiteral("induction motor: no magnets");
    return in;
}

CircuitRatingsInputs heaterOn108Cells()
{
    CircuitRatingsInputs in = packOf(108);
    in.parts = {RatedPart{QStringLiteral("Cabin heater"),
                          {limit(480)},
                          true,
                          {RatedPart{QStringLiteral("main relay"), {limit(400)}, true, {}}}},
                RatedPart{QStringLiteral("Inverter"), {limit(500)}, true, {}}};
    return in;
}

} // namespace

// 108 · 3.6 V = 389 V nominal would pass a relay for 400 V; 108 · 4.2 V = 453.6 V does not. The
// heater itself is plated 480 V. Tolerance: exact.
TEST(CircuitRatings, FindsTheRelayInsideTheHeaterAndShowsThePathToIt)
{
    const Check check = judgeCircuitRatings(heaterOn108Cells());
    EXPECT_EQ(check.verdict, Verdict::Fails);
    EXPECT_EQ(reading::step(check, QStringLiteral("pack at full charge")), 453.6);
    EXPECT_NEAR(
        reading::step(check, QStringLiteral("at its nominal voltage, not held to anything")), 389,
        0.5);
    ASSERT_EQ(check.comparisons.size(), 3U);
    EXPECT_EQ(check.comparisons.front().what, QStringLiteral("Cabin heater › main relay"));
    EXPECT_EQ(check.comparisons.front().limitFrom,
              QStringLiteral("nameplate of Cabin heater › main relay"));
    EXPECT_EQ(check.comparisons[1].verdict, Verdict::Tight);
    EXPECT_EQ(check.comparisons[2].what, QStringLiteral("Inverter"));
    EXPECT_TRUE(check.result.contains(QStringLiteral("Cabin heater › main relay decides")));
    ASSERT_EQ(check.turnedBy.size(), 1);
    EXPECT_TRUE(check.turnedBy.front().contains(QStringLiteral("at most 95 cells")));
}

// 95 · 4.2 V = 399.0 V is the most under 400 V.
TEST(CircuitRatings, TellsTheMostCellsAndWhichPartDecides)
{
    const MostCells most = mostCellsInSeries(heaterOn108Cells());
    EXPECT_EQ(most.cells, 95);
    EXPECT_EQ(most.decidedBy, QStringLiteral("Cabin heater › main relay"));
    EXPECT_TRUE(most.unknowns.isEmpty());
}

// 230 V rms has a peak of 325 V (230·√2 = 325.27). Tolerance: last digit.
TEST(CircuitRatings, BringsAnAlternatingVoltageToTheLinkByItsPeak)
{
    CircuitRatingsInputs in = packOf(50);
    in.motor.applies = true;
    in.motor.noLoad = given(volts(115), QStringLiteral("no-load voltage"));
    in.motor.noLoadSpeed = given(RotationSpeed::fromSi(300), QStringLiteral("at"));
    in.motor.highestSpeed = given(RotationSpeed::fromSi(600), QStringLiteral("highest speed"));
    in.parts = {RatedPart{QStringLiteral("Inverter"), {limit(400)}, true, {}}};
    const Check check = judgeCircuitRatings(in);
    EXPECT_NEAR(reading::step(check, QStringLiteral("motor's no-load voltage at overspeed")), 230,
                1e-9);
    EXPECT_NEAR(
        reading::step(check, QStringLiteral("motor's no-load voltage at overspeed, by its peak")),
        325, 0.5);
    EXPECT_EQ(check.comparisons.front().value, showSi(325.269, u"V"));
}

// The wave of six-step from line to line: U for a third of the turn, nothing for a sixth, −U for a
// third, nothing for a sixth. By brute force its fundamental is 0.7797·U, as printed, and its rms
// 0.8165·U; a sine whose peak is U has 0.7071·U.
TEST(CircuitRatings, BringsTheLinkToThePhasesByTheInvertersModulation)
{
    constexpr int kSteps = 60000;
    double squares = 0;
    double sines = 0;
    for (int i = 0; i < kSteps; ++i) {
        const double turn = (i + 0.5) / kSteps;
        const bool on = std::fmod(turn, 0.5) > 1.0 / 12 && std::fmod(turn, 0.5) < 5.0 / 12;
        const double wave = on ? (turn < 0.5 ? 1 : -1) : 0;
        squares += wave * wave / kSteps;
        sines += wave * std::sin(2 * std::numbers::pi * turn) * 2 / kSteps;
    }
    EXPECT_NEAR(sines / std::numbers::sqrt2, 0.780, 5e-4);

    CircuitRatingsInputs in = packOf(108);
    in.current = CurrentKind::Ac;
    in.parts = {RatedPart{QStringLiteral("Motor"), {limit(360, CurrentKind::Ac)}, true, {}}};
    const QString step = QStringLiteral("pack at full charge, rms from line to line");
    const Check wide = judgeCircuitRatings(in); // nobody said: six-step is assumed
    EXPECT_NEAR(reading::step(wide, step), 453.6 * std::sqrt(squares), 0.05);
    EXPECT_EQ(wide.verdict, Verdict::Fails);
    EXPECT_TRUE(wide.sentence.contains(QStringLiteral("an assumption for modulation")));
    in.modulation = chosen(Modulation::SpaceVector, QStringLiteral("modulation"));
    const Check linear = judgeCircuitRatings(in);
    EXPECT_NEAR(reading::step(linear, step), 453.6 / std::numbers::sqrt2, 0.05);
    EXPECT_EQ(linear.verdict, Verdict::Holds);
    in.modulation.value.reset();
    EXPECT_EQ(judgeCircuitRatings(in).verdict, Verdict::Unknown);
}

// 360 V · √(3/2)/4.2 V = 104.98 and 360 V · √2/4.2 V = 121.2; with 354 V told for 108 cells, as of
// six-step's fundamental, 108 · 360/354 = 109.8.
TEST(CircuitRatings, WorksTheInverseWithTheCircuitsOwnFactor)
{
    const QString what = QStringLiteral("most cells in series that every known limit allows");
    CircuitRatingsInputs in = packOf(108);
    in.current = CurrentKind::Ac;
    in.parts = {RatedPart{QStringLiteral("Motor"), {limit(360, CurrentKind::Ac)}, true, {}},
                RatedPart{QStringLiteral("Cable"), {}, true, {}}};
    EXPECT_EQ(reading::step(judgeCircuitRatings(in), what), 104);
    in.modulation = chosen(Modulation::SpaceVector, QStringLiteral("modulation"));
    EXPECT_EQ(reading::step(judgeCircuitRatings(in), what), 121);
    in.others = {source(354, CurrentKind::Ac)};
    in.others.front().ofThePack = true;
    const Check check = judgeCircuitRatings(in);
    EXPECT_EQ(reading::step(check, what), 109);
    EXPECT_TRUE(check.result.endsWith(QStringLiteral("at most 109 cells in series")));
    const auto told = std::ranges::find(check.steps, what, &CheckStep::what);
    ASSERT_NE(told, check.steps.end());
    EXPECT_TRUE(told->worked.contains(QStringLiteral("Motor decides")));
    const auto open = std::ranges::find(check.steps, QStringLiteral("what could still lower it"),
                                        &CheckStep::what);
    ASSERT_NE(open, check.steps.end());
    EXPECT_EQ(open->worked, QStringLiteral("AC voltage limit of Cable"));
}

// 95 cells of 4.2 V are 399 V; a charger set to 450 V is above 400 V however few they are. What is
// told of the pack itself, 453.6 V of 108 cells, is not.
TEST(CircuitRatings, TellsWhatFewerCellsDoNotMend)
{
    CircuitRatingsInputs in = heaterOn108Cells();
    in.others = {source(453.6)};
    in.others.front().ofThePack = true;
    EXPECT_EQ(mostCellsInSeries(in).cells, 95);
    EXPECT_TRUE(mostCellsInSeries(in).above.isEmpty());
    EXPECT_TRUE(judgeCircuitRatings(in).turnedBy.front().contains(
        QStringLiteral("at most 95 cells in series")));
    in.others.push_back(source(450));
    EXPECT_EQ(mostCellsInSeries(in).above, QStringList(QStringLiteral("charger's maximum output")));
    const Check check = judgeCircuitRatings(in);
    EXPECT_FALSE(check.turnedBy.front().contains(QStringLiteral("cells in series")));
    EXPECT_EQ(reading::step(check, QStringLiteral("above that limit however few the cells")), 400);
    // with no limit known there is still the line, and what is missing
    in.parts = {RatedPart{QStringLiteral("Heater"), {}, true, {}}};
    const Check open = judgeCircuitRatings(in);
    EXPECT_TRUE(std::ranges::any_of(open.steps, [](const CheckStep &step) {
        return step.what == QStringLiteral("what could still lower it") &&
               step.worked == QStringLiteral("DC voltage limit of Heater");
    }));
}

// 399 V of 400 V is tight: 443.4 V would leave a tenth to spare, as would 85 cells of 4.2 V (357
// V).
TEST(CircuitRatings, SaysWhatWouldMakeATightOneHold)
{
    CircuitRatingsInputs in = packOf(95);
    in.parts = {RatedPart{QStringLiteral("Relay"), {limit(400)}, true, {}}};
    const Check check = judgeCircuitRatings(in);
    EXPECT_EQ(check.verdict, Verdict::Tight);
    ASSERT_EQ(check.turnedBy.size(), 1);
    EXPECT_EQ(check.turnedBy.front(),
              QString(QStringLiteral("Relay replaced by one for at least ") +
                      show(volts(443.4), u"V") +
                      QStringLiteral(" DC, or at most 85 cells in series.")));
    in.parts.front().limits.front().voltage.value = volts(443.4);
    EXPECT_EQ(judgeCircuitRatings(in).verdict, Verdict::Holds);
    EXPECT_TRUE(judgeCircuitRatings(in).turnedBy.isEmpty());
    in = packOf(85);
    in.parts = {RatedPart{QStringLiteral("Relay"), {limit(400)}, true, {}}};
    EXPECT_EQ(judgeCircuitRatings(in).verdict, Verdict::Holds);
}

// ISO 6469-3: class B is above 60 V DC or 30 V AC, up to 1500 V DC or 1000 V AC. Exact.
TEST(CircuitRatings, NamesTheVoltageClassOfTheStandard)
{
    EXPECT_EQ(voltageClass(volts(60), CurrentKind::Dc), QStringLiteral("class A"));
    EXPECT_EQ(voltageClass(volts(60.1), CurrentKind::Dc), QStringLiteral("class B"));
    EXPECT_EQ(voltageClass(volts(30), CurrentKind::Ac), QStringLiteral("class A"));
    EXPECT_EQ(voltageClass(volts(30.1), CurrentKind::Ac), QStringLiteral("class B"));
    EXPECT_EQ(voltageClass(volts(1500), CurrentKind::Dc), QStringLiteral("class B"));
    EXPECT_EQ(voltageClass(volts(1000.1), CurrentKind::Ac), QStringLiteral("beyond class B"));
}

TEST(CircuitRatings, NeverAnswersForDirectCurrentWithAnAlternatingLimit)
{
    CircuitRatingsInputs in = packOf(90);
    in.parts = {RatedPart{QStringLiteral("Relay"), {limit(1000, CurrentKind::Ac)}, true, {}},
                RatedPart{QStringLiteral("Fuse"), {limit(1000, std::nullopt)}, true, {}},
                RatedPart{QStringLiteral("Inverter"), {limit(500)}, true, {}}};
    const Check check = judgeCircuitRatings(in);
    EXPECT_EQ(check.verdict, Verdict::Unknown);
    ASSERT_EQ(check.unknowns.size(), 2);
    EXPECT_EQ(check.unknowns[0],
              QStringLiteral("DC voltage limit of Relay (only a limit for AC is known)"));
    EXPECT_EQ(check.unknowns[1], QStringLiteral("DC voltage limit of Fuse (a limit is known, but "
                                                "not if it is for DC or AC)"));
    EXPECT_EQ(mostCellsInSeries(in).unknowns.size(), 2);
}

TEST(CircuitRatings, IsUnknownWhenASourceThatAppliesIsNotKnown)
{
    CircuitRatingsInputs in = packOf(90);
    in.parts = {RatedPart{QStringLiteral("Inverter"), {limit(500)}, true, {}}};
    EXPECT_EQ(judgeCircuitRatings(in).verdict, Verdict::Holds);
    in.motor.applies = true;
    in.motor.noLoad = given(volts(100), QStringLiteral("no-load voltage"));
    in.motor.noLoadSpeed = given(RotationSpeed::fromSi(300), QStringLiteral("at"));
    in.motor.highestSpeed = notKnown<RotationSpeed>(QStringLiteral("highest motor speed"));
    const Check check = judgeCircuitRatings(in);
    EXPECT_EQ(check.verdict, Verdict::Unknown);
    EXPECT_EQ(check.sentence, QStringLiteral("Unknown for want of highest motor speed."));
}

TEST(CircuitRatings, KeepsAKnownFailureWhateverElseIsUnknown)
{
    CircuitRatingsInputs in = heaterOn108Cells();
    in.others = {source(0)};
    in.others.front().voltage.value.reset();
    in.parts.push_back(RatedPart{QStringLiteral("Charger"), {}, true, {}});
    const Check check = judgeCircuitRatings(in);
    EXPECT_EQ(check.verdict, Verdict::Fails);
    EXPECT_EQ(check.unknowns.size(), 2);
}

TEST(CircuitRatings, ABoxThatOnlyHoldsOthersNeedsNoLimit)
{
    CircuitRatingsInputs in = packOf(90);
    in.parts = {RatedPart{QStringLiteral("Junction box"),
                          {},
                          false,
                          {RatedPart{QStringLiteral("contactor"), {limit(450)}, true, {}}}}};
    const Check check = judgeCircuitRatings(in);
    EXPECT_EQ(check.verdict, Verdict::Holds);
    EXPECT_EQ(check.comparisons.front().what, QStringLiteral("Junction box › contactor"));
}

TEST(CircuitRatings, MeetsAPlateThatNamesTheVeryVoltage)
{
    CircuitRatingsInputs in = packOf(96); // 96 · 4.2 is 403.20000000000005 in binary
    in.parts = {RatedPart{QStringLiteral("Inverter"), {limit(403.2)}, true, {}}};
    EXPECT_EQ(judgeCircuitRatings(in).verdict, Verdict::Tight);
    EXPECT_EQ(mostCellsInSeries(in).cells, 96);
}

TEST(CircuitRatings, RefusesWhatPhysicsDoesNotAllow)
{
    CircuitRatingsInputs in = packOf(-3);
    in.parts = {RatedPart{QStringLiteral("Inverter"), {limit(-5)}, true, {}}};
    const Check check = judgeCircuitRatings(in);
    EXPECT_EQ(check.verdict, Verdict::Unknown);
    EXPECT_EQ(check.refusals.size(), 2);
}

// Brute force, labelled so: the count that still passes while one more does not.
TEST(CircuitRatings, TheInverseAgreesWithTryingEveryCount)
{
    Chance chance(431);
    for (int i = 0; i < 100; ++i) {
        CircuitRatingsInputs in = packOf(1, chance.between(36, 44) / 10.0);
        for (int p = chance.between(1, 4); p > 0; --p)
            in.parts.push_back(RatedPart{QStringLiteral("part %1").arg(p),
                                         {limit(chance.between(500, 9000) / 10.0)},
                                         true,
                                         {}});
        int tried = 0;
        do {
            in.pack.cellsInSeries.value = tried + 1;
        } while (judgeCircuitRatings(in).verdict != Verdict::Fails && ++tried < 1000);
        EXPECT_EQ(mostCellsInSeries(in).cells, tried);
    }
}

// Worse: any source higher, any limit lower, anything forgotten.
TEST(CircuitRatings, NoVerdictIsBetterWhenAnInputIsWorse)
{
    Chance chance(7);
    for (int i = 0; i < 300; ++i) {
        CircuitRatingsInputs in = packOf(chance.between(20, 120));
        in.others = {source(chance.between(50, 500)),
                     source(chance.between(50, 350), CurrentKind::Ac)};
        for (int p = 0; p < 3; ++p)
            in.parts.push_back(RatedPart{
                QStringLiteral("part"),
                {limit(chance.between(300, 700))},
                true,
                {RatedPart{
                    QStringLiteral("inside"), {limit(chance.between(300, 700))}, true, {}}}});
        const Check before = judgeCircuitRatings(in);
        Voltage &part = *in.parts[1].inside[0].limits[0].voltage.value;
        switch (chance.below(5)) {
        case 0:
            *in.pack.cellsInSeries.value += chance.between(1, 30);
            break;
        case 1:
            in.others[1].voltage.value = *in.others[1].voltage.value * 1.3;
            break;
        case 2:
            part = part * 0.7;
            break;
        case 3:
            in.others[0].voltage.value.reset();
            if (before.verdict == Verdict::Fails)
                continue; // the failure may have been known from this alone
            break;
        default:
            in.parts[0].limits.clear();
            if (before.verdict == Verdict::Fails)
                continue;
        }
        EXPECT_GE(judgeCircuitRatings(in).verdict, before.verdict);
    }
}

TEST(CircuitRatings, DoublingEveryVoltageChangesNoMargin)
{
    CircuitRatingsInputs in = heaterOn108Cells();
    const Check before = judgeCircuitRatings(in);
    in.pack.cellFull.value = volts(8.4);
    for (RatedPart *part : {&in.parts[0], &in.parts[0].inside[0], &in.parts[1]})
        part->limits[0].voltage.value = *part->limits[0].voltage.value * 2;
    const Check after = judgeCircuitRatings(in);
    ASSERT_EQ(after.comparisons.size(), before.comparisons.size());
    for (std::size_t i = 0; i < after.comparisons.size(); ++i)
        EXPECT_NEAR(after.comparisons[i].margin, before.comparisons[i].margin, 1e-12);
}

} // namespace ohmwright
