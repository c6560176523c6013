// SPDX-License-Identifier: GPL-3.0-or-later
// Sources: D = rim + 2·S·aspect, ETRTO / ISO 4000-1 (245/55R18 is 726.7 mm or 28.61 in as printed
// in a tyre maker's data; the others worked from the formula). Load index and speed symbol tables
// as printed by tyre makers and dealers after UN Regulation 30, annex 4: exact. The rolling
// circumferences of 3.05 and 2.99 times the diameter, and what is not named here, are from memory.
#include "core/checks/tyre.h"

#include <gtest/gtest.h>

#include <cmath>
#include <iterator>
#include <utility>

namespace ohmwright {

namespace {

Tyre tyre(const char *marking)
{
    const Result<Tyre> read = parseTyre(QString::fromLatin1(marking));
    EXPECT_TRUE(read.has_value()) << marking;
    return read.value_or(Tyre());
}

Speed kmh(double v)
{
    return Speed::fromSi(v / 3.6);
}

} // namespace

TEST(Tyre, HasTheDiameterOfItsSize)
{
    const std::pair<const char *, double> sizes[] = {{"245/55R18", 726.7}, {"205/55R16", 631.9},
                                                     {"195/65R15", 634.5}, {"185/65R14", 596.1},
                                                     {"165/70R13", 561.2}, {"155/80R13", 578.2}};
    for (const auto &[marking, millimetres] : sizes)
        EXPECT_NEAR(tyre(marking).diameter().si() * 1e3, millimetres, 0.05) << marking;
    EXPECT_NEAR(tyre("245/55R18").diameter().si() / 0.0254, 28.61, 5e-3);
}

// 3.05·D, nominal.
TEST(Tyre, RollsThreeTimesAndABitItsDiameter)
{
    const std::pair<const char *, double> sizes[] = {{"245/55R18", 2216}, {"205/55R16", 1927},
                                                     {"195/65R15", 1935}, {"185/65R14", 1818},
                                                     {"165/70R13", 1712}, {"155/80R13", 1764}};
    for (const auto &[marking, millimetres] : sizes)
        EXPECT_NEAR(tyre(marking).rollingCircumference().si() * 1e3, millimetres, 1) << marking;
}

TEST(Tyre, CarriesWhatItsLoadIndexSays)
{
    const std::pair<int, double> rows[] = {
        {71, 345},  {75, 387},   {80, 450},   {81, 462},  {82, 475},  {85, 515},
        {86, 530},  {87, 545},   {88, 560},   {90, 600},  {91, 615},  {92, 630},
        {94, 670},  {95, 690},   {96, 710},   {98, 750},  {100, 800}, {103, 875},
        {106, 950}, {108, 1000}, {110, 1060}, {112, 1120}};
    for (const auto &[index, mass] : rows)
        EXPECT_EQ(loadOfIndex(index), kilograms(mass)) << index;
    // agricultural and lorry tyres carry the same list: 142 is 2650 kg (a tractor's manual)
    EXPECT_EQ(loadOfIndex(142), kilograms(2650));
    EXPECT_EQ(loadOfIndex(-1), std::nullopt);
    EXPECT_EQ(loadOfIndex(151), std::nullopt);
    for (int index = 1; index <= 150; ++index)
        EXPECT_GT(loadOfIndex(index), loadOfIndex(index - 1)) << index;
}

// The list is a series of preferred numbers: 40 steps multiply by about ten to the half. Brute
// comparison of every row with 45 kg · 10^(i/80), within 3 %.
TEST(Tyre, LoadIndicesRiseEvenly)
{
    for (int index = 0; index <= 150; ++index)
        EXPECT_NEAR(loadOfIndex(index)->si() / (45 * std::pow(10, index / 80.0)), 1, 0.03) << index;
}

TEST(Tyre, RunsAsFastAsItsSymbolSays)
{
    const std::pair<const char *, double> rows[] = {{"N", 140}, {"P", 150}, {"Q", 160}, {"R", 170},
                                                    {"S", 180}, {"T", 190}, {"U", 200}, {"H", 210},
                                                    {"V", 240}, {"W", 270}, {"Y", 300}};
    for (const auto &[symbol, speed] : rows)
        EXPECT_NEAR(speedOfSymbol(QString::fromLatin1(symbol))->si(), speed / 3.6, 1e-9) << symbol;
    EXPECT_EQ(speedOfSymbol(u"O"), std::nullopt);
    EXPECT_EQ(speedOfSymbol(u""), std::nullopt);
}

// V carries 91 % at 240 km/h, W 85 % at 270 km/h (UN R30 as quoted in the literature).
TEST(Tyre, CarriesLessAtItsHighestSpeeds)
{
    EXPECT_NEAR(loadShareAt(u"V", kmh(240)), 0.91, 1e-9);
    EXPECT_NEAR(loadShareAt(u"V", kmh(225)), 0.955, 1e-9);
    EXPECT_EQ(loadShareAt(u"V", kmh(210)), 1);
    EXPECT_NEAR(loadShareAt(u"W", kmh(270)), 0.85, 1e-9);
    EXPECT_EQ(loadShareAt(u"T", kmh(190)), 1);
    EXPECT_EQ(loadShareAt(u"T", kmh(191)), 0);
}

TEST(Tyre, ReadsMarkingsAsTheyStandOnSidewalls)
{
    const Tyre car = tyre("195/65 R15 91T");
    EXPECT_EQ(car.loadIndex, 91);
    EXPECT_EQ(car.speedSymbol, QStringLiteral("T"));
    EXPECT_EQ(tyre("195/65R1591t"), car);
    EXPECT_EQ(tyre(" 195 / 65 R 15 91 T XL "), car);

    const Tyre van = tyre("195/70 R15C 104/102R");
    EXPECT_TRUE(van.commercial);
    EXPECT_EQ(van.loadIndex, 104);
    EXPECT_EQ(van.loadIndexInDual, 102);

    EXPECT_EQ(tyre("P205/55ZR16 91W").speedSymbol, QStringLiteral("W"));
    EXPECT_EQ(tyre("245/45ZR18(100Y)").loadIndex, 100);
    EXPECT_TRUE(tyre("165 SR 13").aspectAssumed);
    EXPECT_EQ(tyre("165 SR 13").speedSymbol, QStringLiteral("S"));
    EXPECT_EQ(tyre("155/80R13").loadIndex, std::nullopt);
    EXPECT_EQ(tyre("175/70-13").build, TyreBuild::Diagonal);
}

TEST(Tyre, RefusesWhatIsNoTyre)
{
    for (const char *text : {"", "R15", "195/65", "19565R15", "195/65R15 91", "195/65R15 91I",
                             "195/65R15 151T", "20/65R15", "195/10R15", "195/65R99", "5.60-15"}) {
        const Result<Tyre> read = parseTyre(QString::fromLatin1(text));
        ASSERT_FALSE(read.has_value()) << text;
        EXPECT_TRUE(read.error().sentence.endsWith(QLatin1Char('.')));
    }
    EXPECT_FALSE(parseTyre(QString(1000, u'1')).has_value());
}

} // namespace ohmwright
