// SPDX-License-Identifier: GPL-3.0-or-later
// Sources: IEC 60228:2004, tables 2 and 3 (agreeing reprints) and its own temperature factors;
// IEC 60364-5-52 tables B.52.4, B.52.10, B.52.14, B.52.17 and EN 50355 (reprints by cable makers);
// IEC 60364-5-54, annex A and tables A.54.2 ff. (reprint); IEC 60949 worked example (95 mm², 90 °C
// to 250 °C, 1 s: 13.6 kA).
#include "core/checks/conductor.h"
#include "core/checks/worksheet.h"
#include "tests/published/checks/reading.h"
#include "tests/support/chance.h"

#include <gtest/gtest.h>

#include <cmath>

namespace ohmwright {

namespace {

Area mm2(double area)
{
    return Area::fromSi(area * 1e-6);
}

ConductorInputs cable(double area, double amps, double length = 4)
{
    ConductorInputs in;
    in.table = ampacityTables().back(); // single core in free air, 90 °C
    AmpacityConditions &at = in.conditions;
    at.material = chosen(ConductorMaterial::Copper, QStringLiteral("material"));
    at.area = given(mm2(area), QStringLiteral("size"));
    at.ambient = given(celsius(40), QStringLiteral("ambient"));
    at.installation = chosen(Installation::FreeAir, QStringLiteral("installation"));
    at.bunched = given(1.0, QStringLiteral("circuits bunched"));
    at.insulation = given(celsius(90), QStringLiteral("temperature of the insulation"));
    in.strands = chosen(ConductorClass::Flexible, QStringLiteral("class"));
    in.length = given(metres(length), QStringLiteral("length"));
    in.continuous = given(amperes(amps), QStringLiteral("continuous current"));
    in.voltage = given(volts(300), QStringLiteral("lowest voltage"));
    return in;
}

double ohmsPerKilometre(ConductorMaterial material, ConductorClass strands, double area)
{
    const auto found = conductorResistance(material, strands, mm2(area), metres(1000));
    return found ? found->at20.si() : -1;
}

const AmpacityTable &tableNamed(const std::vector<AmpacityTable> &tables, const QString &part)
{
    return *std::find_if(tables.begin(), tables.end(),
                         [&](const AmpacityTable &table) { return table.name.contains(part); });
}

} // namespace

// A pump that starts with 65 A on 3.6 m of 10 mm², there and back: 1.91 Ω/km · (1 + 0.00393·70) ·
// 3.6 m · 65 A = 0.57 V of 12 V.
TEST(Conductor, TellsTheDropAtThePeakBesideThatOfTheContinuousCurrent)
{
    ConductorInputs in = cable(10, 12, 3.6);
    in.voltage.value = volts(12);
    const QString row = QStringLiteral("voltage drop at its peak");
    EXPECT_EQ(reading::comparison(judgeConductor(in), row), nullptr);
    in.peak = given(amperes(65), QStringLiteral("peak current"));
    const Check check = judgeConductor(in);
    ASSERT_NE(reading::comparison(check, row), nullptr);
    EXPECT_NEAR(reading::si(reading::comparison(check, row)->value), 0.0475, 1e-4);
    EXPECT_EQ(check.verdict, Verdict::Holds);
    in.peak->value = amperes(140); // 10.2 %
    EXPECT_EQ(judgeConductor(in).verdict, Verdict::Fails);
    in.peak = notKnown<Current>(QStringLiteral("peak current"));
    EXPECT_EQ(judgeConductor(in).verdict, Verdict::Unknown);
}

// IEC 60228:2004, table 2 (class 2) and table 3 (class 5), Ω/km at 20 °C. Exact.
TEST(Conductor, HasTheResistancesOfTheStandard)
{
    const double sizes[] = {1.5, 2.5, 4, 6, 10, 16, 25, 35, 50, 70, 95, 120, 150, 185, 240, 300};
    const double class2[] = {12.1,  7.41,  4.61,  3.08,  1.83,  1.15,   0.727,  0.524,
                             0.387, 0.268, 0.193, 0.153, 0.124, 0.0991, 0.0754, 0.0601};
    const double class5[] = {13.3,  7.98,  4.95,  3.30,  1.91,  1.21,  0.780,  0.554,
                             0.386, 0.272, 0.206, 0.161, 0.129, 0.106, 0.0801, 0.0641};
    for (std::size_t i = 0; i < std::size(sizes); ++i) {
        EXPECT_NEAR(ohmsPerKilometre(ConductorMaterial::Copper, ConductorClass::Stranded, sizes[i]),
                    class2[i], 1e-12);
        EXPECT_NEAR(ohmsPerKilometre(ConductorMaterial::Copper, ConductorClass::Flexible, sizes[i]),
                    class5[i], 1e-12);
    }
    const double aluminium[][2] = {{10, 3.08},   {16, 1.91},  {25, 1.20},  {35, 0.868},
                                   {50, 0.641},  {70, 0.443}, {95, 0.320}, {120, 0.253},
                                   {150, 0.206}, {185, 0.164}};
    for (const auto &[size, resistance] : aluminium)
        EXPECT_NEAR(ohmsPerKilometre(ConductorMaterial::Aluminium, ConductorClass::Stranded, size),
                    resistance, 1e-12);
    EXPECT_EQ(ohmsPerKilometre(ConductorMaterial::Aluminium, ConductorClass::Flexible, 50), -1);
    EXPECT_EQ(ohmsPerKilometre(ConductorMaterial::Copper, ConductorClass::Flexible, 0.3), -1);
}

// A gauge is an area like any other. 2/0 AWG of ASTM B258 is 67.4 mm²; solid copper of that area
// has 0.2557 Ω/km by IEC 60028: what the table's neighbours give is above it by up to an eighth.
TEST(Conductor, TakesGaugesFromTheNeighbouringSizesToTheHighSide)
{
    for (const char16_t *gauge : {u"2/0 AWG", u"1/0 AWG", u"2 AWG", u"4 AWG", u"10 AWG"}) {
        const double area = parseAmount(gauge, NumberStyle::pointDecimal())->si() * 1e6;
        const double solid = 17.241 / area;
        const double ours =
            ohmsPerKilometre(ConductorMaterial::Copper, ConductorClass::Flexible, area);
        EXPECT_GT(ours, solid);
        EXPECT_LT(ours, solid * 1.17);
    }
    EXPECT_FALSE(conductorResistance(ConductorMaterial::Copper, ConductorClass::Flexible, mm2(67.4),
                                     metres(1))
                     ->fromTable);
}

// IEC 60228's factors back to 20 °C: 60 °C 0.862, 90 °C 0.781. They follow 0.004 /K, α = 0.00393 /K
// differs by up to 0.4 %.
TEST(Conductor, WarmsAsTheStandardsFactorsDo)
{
    const double factors[][2] = {{5, 1.064},  {10, 1.042}, {30, 0.962}, {40, 0.926}, {50, 0.893},
                                 {60, 0.862}, {70, 0.833}, {80, 0.806}, {90, 0.781}};
    for (const auto &[t, factor] : factors)
        EXPECT_NEAR(1 / atTemperature(ohms(1), ConductorMaterial::Copper, celsius(t)).si(), factor,
                    0.0045);
}

// 300 A through 4 m of 50 mm², class 5: 0.4632 V at 20 °C, 0.5360 V at 60 °C (factor 1.1572); at
// 250 A and 20 °C 24.13 W/m. Tolerance 1e-4; worked from the tables.
TEST(Conductor, DropsTheVoltageTheTablesGive)
{
    const Resistance cold =
        conductorResistance(ConductorMaterial::Copper, ConductorClass::Flexible, mm2(50), metres(4))
            ->at20;
    EXPECT_NEAR((amperes(300) * cold).si(), 0.4632, 1e-5);
    EXPECT_NEAR((amperes(300) * atTemperature(cold, ConductorMaterial::Copper, celsius(60))).si(),
                0.5360, 6e-5);
    EXPECT_NEAR((amperes(250) * amperes(250) * cold).si() / 4, 24.13, 0.01);
}

// Printed k: copper 115 (70 → 160 °C), 143 (90 → 250), 134 (85 → 220), 143 (30 → 160), 176
// (30 → 250), 166 (30 → 220); aluminium 76, 94, 89, 95, 116, 110. Tolerance: 1 unit.
TEST(Conductor, KeepsToThePrintedK)
{
    struct Row
    {
        double from, to, copper, aluminium;
    };
    const Row rows[] = {{70, 160, 115, 76}, {90, 250, 143, 94},  {85, 220, 134, 89},
                        {30, 160, 143, 95}, {30, 250, 176, 116}, {30, 220, 166, 110}};
    for (const Row &row : rows) {
        EXPECT_NEAR(adiabaticK(ConductorMaterial::Copper, celsius(row.from), celsius(row.to)),
                    row.copper, 1);
        EXPECT_NEAR(adiabaticK(ConductorMaterial::Aluminium, celsius(row.from), celsius(row.to)),
                    row.aluminium, 1);
    }
}

// 2500 A for 0.1 s with k 115: 6.9 mm²; 12 kA for 0.02 s with k 143: 11.9 mm² (0.5 %). IEC 60949's
// example, 95 mm² from 90 °C to 250 °C in 1 s: 13.6 kA.
TEST(Conductor, NeedsTheAreaOfThePublishedExamples)
{
    EXPECT_NEAR(leastArea(amperes(2500), seconds(0.1), 115).si() * 1e6, 6.87, 0.005 * 6.87);
    EXPECT_NEAR(leastArea(amperes(12e3), seconds(0.02), 143).si() * 1e6, 11.87, 0.005 * 11.87);
    const double k = adiabaticK(ConductorMaterial::Copper, celsius(90), celsius(250));
    EXPECT_NEAR(leastArea(amperes(13.6e3), seconds(1), k).si() * 1e6, 95, 0.005 * 95);
}

// Ambient factors of B.52.14: PVC 10 °C 1.22, 40 0.87, 50 0.71, 60 0.50; cross-linked 10 °C 1.15,
// 40 0.91, 50 0.82, 60 0.71, 80 0.41. Tolerance: last digit.
TEST(Conductor, CorrectsForTheAmbientAsTheStandardPrints)
{
    const std::vector<AmpacityTable> tables = ampacityTables();
    const double pvc[][2] = {{10, 1.22}, {20, 1.12}, {30, 1},    {40, 0.87},
                             {45, 0.79}, {50, 0.71}, {55, 0.61}, {60, 0.50}};
    for (const auto &[t, factor] : pvc)
        EXPECT_NEAR(ambientFactor(tables.front(), celsius(t)), factor, 0.0055);
    const double linked[][2] = {{10, 1.15}, {20, 1.08}, {40, 0.91}, {50, 0.82},
                                {60, 0.71}, {70, 0.58}, {80, 0.41}};
    for (const auto &[t, factor] : linked)
        EXPECT_NEAR(ambientFactor(tables.back(), celsius(t)), factor, 0.0055);
    EXPECT_EQ(groupFactor(tables.back(), 3), 0.70);
    EXPECT_EQ(groupFactor(tables.back(), 10), 0.45); // the next higher, 12
    EXPECT_FALSE(groupFactor(tables.back(), 21));
}

// A machine maker's instruction book prints B.52.4, method B2, already corrected, in whole amperes:
// 50 mm² 118 A at 30 °C, 103 at 40, 93 at 45, 84 at 50, 72 at 55; 120 mm² 206, 179, 163, 146, 126.
// Tolerance: 0.5 A for the rounding and 0.5 % for factors printed to two digits.
TEST(Conductor, GivesTheCorrectedCapacitiesPrintedElsewhere)
{
    const std::vector<AmpacityTable> tables = ampacityTables();
    const AmpacityTable &b2 = tableNamed(tables, QStringLiteral("B2"));
    const double printed[][6] = {{4, 27, 23, 21, 19, 16},
                                 {16, 62, 54, 49, 44, 38},
                                 {50, 118, 103, 93, 84, 72},
                                 {120, 206, 179, 163, 146, 126}};
    const double ambients[] = {30, 40, 45, 50, 55};
    for (const auto &row : printed) {
        for (std::size_t i = 0; i < 5; ++i) {
            const double ours =
                tabulated(b2, mm2(row[0]))->si() * ambientFactor(b2, celsius(ambients[i]));
            EXPECT_NEAR(ours, row[i + 1], 0.5 + 0.005 * row[i + 1]) << row[0] << ' ' << ambients[i];
        }
    }
}

TEST(Conductor, DoubtsWhenTheTableDoesNotApply)
{
    ConductorInputs in = cable(50, 150);
    EXPECT_EQ(judgeConductor(in).verdict, Verdict::Holds);
    in.conditions.ambient.value = celsius(85);
    Check check = judgeConductor(in);
    EXPECT_EQ(check.verdict, Verdict::Unknown);
    ASSERT_EQ(check.doubts.size(), 1);
    EXPECT_TRUE(check.doubts.front().startsWith(QStringLiteral("The table does not apply")));
    in = cable(50, 150);
    in.conditions.insulation.value = celsius(70);
    EXPECT_EQ(judgeConductor(in).verdict, Verdict::Unknown);
    in = cable(50, 150);
    in.conditions.installation.value = Installation::InConduit;
    EXPECT_EQ(judgeConductor(in).verdict, Verdict::Unknown);
    in = cable(50, 150);
    in.conditions.bunched.value = 25;
    EXPECT_EQ(judgeConductor(in).verdict, Verdict::Unknown);
    in = cable(400, 150);
    EXPECT_EQ(judgeConductor(in).verdict, Verdict::Unknown);
}

TEST(Conductor, HoldsAShortCircuitToFiveSeconds)
{
    ConductorInputs in = cable(35, 100);
    in.shortCircuit = ShortCircuit{given(amperes(5000), QStringLiteral("fault current")),
                                   given(seconds(0.9), QStringLiteral("clearing time")),
                                   given(celsius(250), QStringLiteral("short-time temperature"))};
    EXPECT_EQ(judgeConductor(in).verdict, Verdict::Tight); // 5 kA in 35 mm²: 1.00 s at most
    in.shortCircuit->clearing.value = seconds(1.1);
    EXPECT_EQ(judgeConductor(in).verdict, Verdict::Fails);
    in.shortCircuit->clearing.value = seconds(6);
    EXPECT_EQ(judgeConductor(in).verdict, Verdict::Unknown);
}

TEST(Conductor, NamesWhatIsNotKnownAndRefusesNonsense)
{
    ConductorInputs in = cable(50, 150);
    in.conditions.installation.value.reset();
    EXPECT_EQ(judgeConductor(in).unknowns, QStringList(QStringLiteral("installation")));
    in = cable(-50, 150);
    EXPECT_EQ(judgeConductor(in).refusals.size(), 1);
}

// Worse: more current, a longer run, a hotter place, more circuits bunched, a lower voltage.
TEST(Conductor, NoVerdictIsBetterWhenAnInputIsWorse)
{
    Chance chance(60228);
    for (int i = 0; i < 300; ++i) {
        ConductorInputs in =
            cable(chance.between(2, 200), chance.between(5, 400), chance.between(1, 12));
        in.conditions.ambient.value = celsius(chance.between(-10, 75));
        const Verdict before = judgeConductor(in).verdict;
        switch (chance.below(5)) {
        case 0:
            in.continuous.value = *in.continuous.value * 1.3;
            break;
        case 1:
            in.length.value = *in.length.value * 2;
            break;
        case 2:
            if (before == Verdict::Fails)
                continue; // beyond the table's ambient nothing is compared any more
            in.conditions.ambient.value = celsius(in.conditions.ambient.value->si() - 273.15 + 20);
            break;
        case 3:
            in.conditions.bunched.value = 3;
            break;
        default:
            in.voltage.value = *in.voltage.value * 0.5;
        }
        EXPECT_GE(judgeConductor(in).verdict, before);
    }
}

TEST(Conductor, CapacityRisesWithTheSizeAndMeetsTheTable)
{
    const std::vector<AmpacityTable> tables = ampacityTables();
    for (const AmpacityTable &table : tables) {
        Current before;
        for (double s = 4; s < 120; s += 0.37) {
            const Current now = *tabulated(table, mm2(s));
            EXPECT_LE(before, now);
            before = now;
        }
        for (const auto &[size, current] : table.rows)
            EXPECT_EQ(tabulated(table, size), current);
    }
}

} // namespace ohmwright
