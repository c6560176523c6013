// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/quantity/amount.h"
#include "tests/core/quantity/printers.h"

#include <QSet>

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace ohmwright {

namespace {

constexpr int kMeasures = static_cast<int>(Measure::Count) + 1;

double si(double number, QStringView symbol)
{
    const auto unit = Unit::fromSymbol(symbol);
    return unit ? Amount(number, *unit).si() : std::nan("");
}

QString read(QStringView symbol, std::optional<Measure> preferred = std::nullopt)
{
    const auto unit = Unit::fromSymbol(symbol, preferred);
    return unit ? unit->symbol() : QStringLiteral("none");
}

} // namespace

TEST(Units, EveryMeasureHasAUnitAndAName)
{
    QSet<QString> names;
    for (int i = 0; i < kMeasures; ++i) {
        const auto measure = static_cast<Measure>(i);
        EXPECT_FALSE(Unit::ofMeasure(measure).empty());
        EXPECT_FALSE(measureName(measure).isEmpty());
        names.insert(measureName(measure));
        for (const Unit &unit : Unit::ofMeasure(measure))
            EXPECT_EQ(unit.measure(), measure);
    }
    EXPECT_EQ(names.size(), kMeasures);
}

TEST(Units, EverySymbolIsReadAsItsOwnUnit)
{
    for (const UnitInfo &info : Unit::all()) {
        const auto unit = Unit::fromSymbol(info.symbol);
        ASSERT_TRUE(unit) << info.symbol.toStdString();
        EXPECT_EQ(unit->symbol(), info.symbol);
        EXPECT_EQ(&unit->info(), &info);
    }
}

TEST(Units, EveryOtherWritingIsReadAsItsUnitWithinTheMeasure)
{
    for (const UnitInfo &info : Unit::all()) {
        for (const QString &writing : info.alsoReadAs) {
            const auto unit = Unit::fromSymbol(writing, info.measure);
            ASSERT_TRUE(unit) << writing.toStdString();
            EXPECT_EQ(unit->symbol(), info.symbol) << writing.toStdString();
        }
    }
}

TEST(Units, OnlyThreeWritingsDependOnTheMeasureWanted)
{
    QStringList shared;
    for (const UnitInfo &info : Unit::all()) {
        for (const QString &writing : info.alsoReadAs) {
            if (Unit::fromSymbol(writing)->symbol() != info.symbol)
                shared.append(writing);
        }
    }
    EXPECT_EQ(shared,
              QStringList({QStringLiteral("C"), QStringLiteral("F"), QStringLiteral("1/s")}));
    EXPECT_EQ(read(u"C"), QStringLiteral("C"));
    EXPECT_EQ(read(u"C", Measure::Temperature), QStringLiteral("°C"));
    EXPECT_EQ(read(u"F", Measure::Temperature), QStringLiteral("°F"));
    EXPECT_EQ(read(u"F", Measure::Capacitance), QStringLiteral("F"));
    EXPECT_EQ(read(u"1/s", Measure::RotationSpeed), QStringLiteral("r/s"));
}

TEST(Units, CompatibilityCharactersMakeNoDifference)
{
    EXPECT_EQ(read(u"\u00B5F"), QStringLiteral("µF")); // micro sign
    EXPECT_EQ(read(u"\u03BCF"), QStringLiteral("µF")); // Greek mu
    EXPECT_EQ(read(u"uF"), QStringLiteral("µF"));
    EXPECT_EQ(read(u"k\u03A9"), QStringLiteral("kΩ")); // Greek omega
    EXPECT_EQ(read(u"k\u2126"), QStringLiteral("kΩ")); // ohm sign
    EXPECT_EQ(read(u"mm2"), QStringLiteral("mm²"));
    EXPECT_EQ(read(u"mm^2"), QStringLiteral("mm²"));
    EXPECT_EQ(read(u"mm²"), QStringLiteral("mm²"));
    EXPECT_EQ(read(u"\u2103"), QStringLiteral("°C"));  // one character
    EXPECT_EQ(read(u"\u00BAC"), QStringLiteral("°C")); // ordinal sign
    EXPECT_EQ(read(u"min⁻¹"), QStringLiteral("rpm"));
    for (const QStringView text : {u"N·m", u"N⋅m", u"N∙m", u"N•m", u"N*m", u"N.m", u"N m", u"Nm"})
        EXPECT_EQ(read(text), QStringLiteral("N·m")) << text.toString().toStdString();
}

TEST(Units, CapitalsAreForgivenWhereOnlyOneUnitCanBeMeant)
{
    EXPECT_EQ(read(u"kw"), QStringLiteral("kW"));
    EXPECT_EQ(read(u"KW"), QStringLiteral("kW"));
    EXPECT_EQ(read(u"kwh"), QStringLiteral("kWh"));
    EXPECT_EQ(read(u"KG"), QStringLiteral("kg"));
    EXPECT_EQ(read(u"kOhm"), QStringLiteral("kΩ"));
    EXPECT_EQ(read(u"mAH"), QStringLiteral("mAh"));
    EXPECT_EQ(read(u"v"), QStringLiteral("V"));
    EXPECT_EQ(read(u"RPM"), QStringLiteral("rpm"));
    EXPECT_EQ(read(u"nm"), QStringLiteral("N·m"));
}

TEST(Units, MilliIsNeverTakenForMegaNorOneLetterForAnother)
{
    EXPECT_EQ(read(u"mohm"), QStringLiteral("mΩ"));
    EXPECT_EQ(read(u"Mohm"), QStringLiteral("MΩ"));
    EXPECT_EQ(read(u"MOHM"), QStringLiteral("MΩ"));
    EXPECT_EQ(read(u"mw"), QStringLiteral("mW"));
    EXPECT_EQ(read(u"Mw"), QStringLiteral("MW"));
    for (const QStringView text :
         {u"MA", u"MV", u"MAh", u"mPa", u"pA", u"M", u"k", u"S", u"T", u"G", u"D"})
        EXPECT_EQ(read(text), QStringLiteral("none")) << text.toString().toStdString();
    EXPECT_EQ(Unit::similarSymbols(u"MA"), QStringList(QStringLiteral("mA")));
    EXPECT_EQ(Unit::similarSymbols(u"mpa"), QStringList(QStringLiteral("MPa")));
    EXPECT_TRUE(Unit::similarSymbols(u"furlong").isEmpty());
}

TEST(Units, NothingWrittenIsAPlainCount)
{
    EXPECT_EQ(Unit::fromSymbol(u""), Unit());
    EXPECT_EQ(Unit().measure(), Measure::Count);
    EXPECT_EQ(Unit().symbol(), QString());
    EXPECT_EQ(Unit::fromSymbol(u"pcs"), Unit());
}

TEST(Units, UnknownTextIsNoUnit)
{
    for (const QStringView text : {u"furlong", u"²", u"·", u".V", u"V/V", u"gal", u"kk"})
        EXPECT_EQ(Unit::fromSymbol(text), std::nullopt) << text.toString().toStdString();
    EXPECT_EQ(Unit::fromSymbol(QString(100000, u'V')), std::nullopt);
}

// Sources: SI brochure (BIPM, 9th edition), tables 5, 7 and 8, for min, h, d, L, t and the
// prefixes; international yard and pound agreement of 1959 for in, ft, mi, lb; 1 hp = 550 ft·lbf/s
// and 1 PS = 75 kgf·m/s by definition. From memory.
TEST(Units, FactorsAreTheDefinedOnes)
{
    EXPECT_DOUBLE_EQ(si(1, u"in"), 0.0254);
    EXPECT_DOUBLE_EQ(si(1, u"ft"), 0.3048);
    EXPECT_DOUBLE_EQ(si(1, u"yd"), 0.9144);
    EXPECT_DOUBLE_EQ(si(1, u"mi"), 1609.344);
    EXPECT_DOUBLE_EQ(si(1, u"lb"), 0.45359237);
    EXPECT_DOUBLE_EQ(si(1, u"oz"), 0.028349523125);
    EXPECT_NEAR(si(1, u"lbf"), 4.4482216, 5e-8);
    EXPECT_NEAR(si(1, u"hp"), 745.69987, 5e-6);
    EXPECT_DOUBLE_EQ(si(1, u"PS"), 735.49875);
    EXPECT_NEAR(si(1, u"psi"), 6894.7573, 5e-5);
    EXPECT_NEAR(si(1, u"lbf·ft"), 1.3558179, 5e-8);
    EXPECT_NEAR(si(1, u"lbf·in"), 0.11298483, 5e-9);
    EXPECT_DOUBLE_EQ(si(1, u"mph"), 0.44704);
    EXPECT_DOUBLE_EQ(si(36, u"km/h"), 10);
    EXPECT_DOUBLE_EQ(si(6.3, u"mm/s"), 0.0063);
    EXPECT_DOUBLE_EQ(si(120, u"g·mm"), 120e-6);
    EXPECT_DOUBLE_EQ(si(7.85, u"g/cm3"), 7850);
    EXPECT_DOUBLE_EQ(si(1000, u"Wh/km"), 3600); // 1 kWh over 1 km: 3.6 MJ over 1000 m
    EXPECT_DOUBLE_EQ(si(10, u"kWh/100 km"), si(100, u"Wh/km"));
    EXPECT_DOUBLE_EQ(si(60, u"rpm"), 2 * std::numbers::pi);
    EXPECT_DOUBLE_EQ(si(1, u"kWh"), 3.6e6);
    EXPECT_DOUBLE_EQ(si(1, u"Ah"), 3600);
    EXPECT_DOUBLE_EQ(si(1, u"L"), 1e-3);
    EXPECT_NEAR(si(1, u"US gal"), 3.785411784e-3, 1e-15);
    EXPECT_DOUBLE_EQ(si(6, u"L/min"), 1e-4);
    EXPECT_DOUBLE_EQ(si(1, u"wk"), 604800);
    EXPECT_DOUBLE_EQ(si(85, u"%"), 0.85);
    EXPECT_DOUBLE_EQ(si(4.1, u":1"), 4.1);
    EXPECT_NEAR(si(1000, u"kcmil"), 506.7075e-6, 5e-11);
    EXPECT_DOUBLE_EQ(si(1, u"bar"), 1e5);
    EXPECT_DOUBLE_EQ(si(6.43, u"m/s2"), 6.43);
    EXPECT_DOUBLE_EQ(si(1.2, u"kW/K"), 1200);
}

// Source: ITS-90 relations, 0 °C = 273.15 K, 32 °F = 0 °C, 212 °F = 100 °C. From memory.
TEST(Units, TemperaturesHaveTheirZero)
{
    EXPECT_DOUBLE_EQ(si(25, u"°C"), 298.15);
    EXPECT_DOUBLE_EQ(si(32, u"°F"), 273.15);
    EXPECT_DOUBLE_EQ(si(212, u"°F"), 373.15);
    EXPECT_DOUBLE_EQ(si(-459.67, u"°F"), 0);
}

} // namespace ohmwright
