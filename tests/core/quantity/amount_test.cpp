// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/quantity/amount.h"
#include "tests/core/quantity/printers.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <random>

namespace ohmwright {

namespace {

const NumberStyle kPoint = NumberStyle::pointDecimal();
const NumberStyle kComma = NumberStyle::commaDecimal();

Unit unit(QStringView symbol)
{
    return Unit::fromSymbol(symbol).value();
}

void expectAmount(QStringView text, double number, QStringView symbol, NumberStyle style = kPoint,
                  std::optional<Measure> expected = std::nullopt)
{
    const Result<Amount> amount = parseAmount(text, style, expected);
    ASSERT_TRUE(amount) << text.toString().toStdString() << ": "
                        << amount.error().sentence.toStdString();
    EXPECT_EQ(amount->number(), number) << text.toString().toStdString();
    EXPECT_EQ(amount->unit().symbol(), symbol.toString()) << text.toString().toStdString();
}

void expectRefused(QStringView text, const QString &sentence, const QString &whatToDo,
                   std::optional<Measure> expected = std::nullopt)
{
    const Result<Amount> amount = parseAmount(text, kPoint, expected);
    ASSERT_FALSE(amount) << text.toString().toStdString();
    EXPECT_EQ(amount.error().code, ProblemCode::BadInput);
    EXPECT_EQ(amount.error().sentence, sentence);
    EXPECT_EQ(amount.error().whatToDo, whatToDo);
}

// Any finite number up to 10^15, over all magnitudes, sometimes whole.
double randomNumber(std::mt19937_64 &random)
{
    const double digits = std::uniform_real_distribution<>(-10, 10)(random);
    const int power = std::uniform_int_distribution<>(-300, 14)(random);
    const double number = digits * std::pow(10.0, power % 3 == 0 ? power / 20 : power);
    return random() % 4 == 0 ? std::round(number) : number;
}

} // namespace

TEST(ParseAmount, TakesWhatPeopleAndNameplatesWrite)
{
    expectAmount(u"35 mm2", 35, u"mm²");
    expectAmount(u"35mm²", 35, u"mm²");
    expectAmount(u"35 sqmm", 35, u"mm²");
    expectAmount(u"2,5 kW", 2.5, u"kW");
    expectAmount(u"1.250,5 W", 1250.5, u"W");
    expectAmount(u"403 V", 403, u"V");
    expectAmount(u"403V", 403, u"V");
    expectAmount(u"200 N·m", 200, u"N·m");
    expectAmount(u"200 Nm", 200, u"N·m");
    expectAmount(u"60 ft-lb", 60, u"lbf·ft");
    expectAmount(u"-40 degC", -40, u"°C");
    expectAmount(u"−40 °C", -40, u"°C");
    expectAmount(u"25 C", 25, u"°C", kPoint, Measure::Temperature);
    expectAmount(u"47 ohm", 47, u"Ω");
    expectAmount(u"10 kOhm", 10, u"kΩ");
    expectAmount(u"1.2 mohm", 1.2, u"mΩ");
    expectAmount(u"1000 uF", 1000, u"µF");
    expectAmount(u"1000 \u00B5F", 1000, u"µF");
    expectAmount(u"1000 \u03BCF", 1000, u"µF");
    expectAmount(u"5 M\u2126", 5, u"MΩ");
    expectAmount(u"5 M\u03A9", 5, u"MΩ");
    expectAmount(u"6000 1/min", 6000, u"rpm");
    expectAmount(u"6 000 r/min", 6000, u"rpm");
    expectAmount(u"10\u202F000\u00A0rpm", 10000, u"rpm");
    expectAmount(u"4.1:1", 4.1, u":1");
    expectAmount(u"85 %", 85, u"%");
    expectAmount(u"28\"", 28, u"in");
    expectAmount(u"5'", 5, u"ft");
    expectAmount(u"1'250 V", 1250, u"V");
    expectAmount(u"1e-6 F", 1e-6, u"F");
    expectAmount(u"12", 12, u"");
    expectAmount(u"4 pcs", 4, u"");
}

TEST(ParseAmount, ReadsWireGauges)
{
    expectAmount(u"2/0 AWG", -1, u"AWG");
    expectAmount(u"2/0AWG", -1, u"AWG");
    expectAmount(u"AWG 2/0", -1, u"AWG");
    expectAmount(u"00 awg", -1, u"AWG");
    expectAmount(u"4/0 AWG", -3, u"AWG");
    expectAmount(u"0000 AWG", -3, u"AWG");
    expectAmount(u"0 AWG", 0, u"AWG");
    expectAmount(u"1/0 AWG", 0, u"AWG");
    expectAmount(u"AWG10", 10, u"AWG", kPoint, Measure::Area);
    expectAmount(u"8 AWG", 8, u"AWG");
    expectAmount(u"8 A.W.G.", 8, u"AWG");
    expectAmount(u"56 AWG", 56, u"AWG");
    const Result<Amount> understood = parseAmount(u"2/0", kPoint, Measure::Area, unit(u"AWG"));
    EXPECT_EQ(*understood, Amount(-1, unit(u"AWG")));
    EXPECT_EQ(*parseAmount(u"10", kPoint, std::nullopt, unit(u"AWG")), Amount(10, unit(u"AWG")));
    for (const QStringView text : {u"35 mm²", u"35 mm2"})
        EXPECT_EQ(*parseAmount(text, kPoint, Measure::Area, unit(u"AWG")),
                  Amount(35, unit(u"mm²")));
}

TEST(ParseAmount, RefusesGaugesThatDoNotExist)
{
    const QString whatToDo =
        QStringLiteral("Gauges are whole, from 4/0 AWG to 56 AWG; other sizes are given in mm².");
    for (const QStringView text :
         {u"5/0 AWG", u"0/0 AWG", u"10.5 AWG", u"-1 AWG", u"57 AWG", u"100 AWG", u"AWG",
          u"00000 AWG", u"AWG 2/0 AWG", u"250 AWG.", u"8.5 A.W.G."}) {
        expectRefused(text, u"“" + text.toString() + u"” is not a wire gauge.", whatToDo);
    }
    EXPECT_FALSE(parseAmount(u"10.5", kPoint, Measure::Area, unit(u"AWG")));
}

TEST(ParseAmount, GivesABareNumberTheDefaultUnit)
{
    EXPECT_EQ(*parseAmount(u"403", kPoint, Measure::Voltage, unit(u"V")), Amount(403, unit(u"V")));
    EXPECT_EQ(*parseAmount(u"403", kPoint, std::nullopt, unit(u"V")), Amount(403, unit(u"V")));
    EXPECT_EQ(*parseAmount(u"0.4 kV", kPoint, Measure::Voltage, unit(u"V")),
              Amount(0.4, unit(u"kV")));
    EXPECT_EQ(*parseAmount(u"3", kPoint, Measure::Count), Amount(3, Unit()));
}

TEST(ParseAmount, RefusesWithOnePlainSentence)
{
    const QString sample = QStringLiteral("Write a number and its unit, such as 403 V.");
    const QString volts = QStringLiteral("Voltage is given in V, mV, kV, µV.");
    expectRefused(u"", QStringLiteral("An amount is missing."), sample);
    expectRefused(u"kW", QStringLiteral("“kW” does not start with a number."), sample);
    expectRefused(u"eer", QStringLiteral("“eer” does not start with a number."),
                  QStringLiteral("Write a number and its unit: voltage is given in V, mV, kV, µV."),
                  Measure::Voltage);
    expectRefused(u"eer", QStringLiteral("“eer” does not start with a number."),
                  QStringLiteral("Write a number."), Measure::Count);
    expectRefused(u"V 403", QStringLiteral("“V 403” does not start with a number."), sample);
    expectRefused(u"403", QStringLiteral("“403” has no unit."), volts, Measure::Voltage);
    expectRefused(u"40 A", QStringLiteral("“40 A” is a current, but a voltage is wanted here."),
                  volts, Measure::Voltage);
    expectRefused(u"40 V", QStringLiteral("“40 V” is a voltage, but an energy is wanted here."),
                  QStringLiteral("Energy is given in J, mJ, kJ, MJ, Wh, kWh, MWh."),
                  Measure::Energy);
    expectRefused(u"40 V", QStringLiteral("“40 V” is a voltage, but a count is wanted here."),
                  QStringLiteral("A count has no unit."), Measure::Count);
    expectRefused(u"40 furlong", QStringLiteral("“furlong” is not a unit we know."),
                  QStringLiteral("Write the unit's symbol, such as V, kW or mm²."));
    expectRefused(u"40 furlong", QStringLiteral("“furlong” is not a unit we know."), volts,
                  Measure::Voltage);
    expectRefused(u"40 MV", QStringLiteral("“MV” is not a unit we know."),
                  QStringLiteral("Capitals matter here: do you mean mV?"));
    expectRefused(u"400 V DC", QStringLiteral("“V DC” is not a unit we know."),
                  QStringLiteral("Write the unit's symbol, such as V, kW or mm²."));
    expectRefused(u"1 25 V", QStringLiteral("“1 25 V” is not a number and a unit."),
                  QStringLiteral("Write the number like 1250.5."));
    expectRefused(u"1.2.3 V", QStringLiteral("“1.2.3” is not a number."),
                  QStringLiteral("Write it like 1250.5."));
    expectRefused(u"-300 °C", QStringLiteral("“-300 °C” is colder than anything can be."),
                  QString());
    expectRefused(u"1e20 V", QStringLiteral("“1e20” is too large or too near zero to keep."),
                  QStringLiteral("Choose a unit that makes the number handier."));
}

TEST(PrintAmount, KeepsTheUnitAndTheDigitsGiven)
{
    EXPECT_EQ(printAmount(*parseAmount(u"2,5 kW", kComma)), QStringLiteral("2.5 kW"));
    EXPECT_EQ(printAmount(*parseAmount(u"3.30 kW", kPoint)), QStringLiteral("3.3 kW"));
    EXPECT_EQ(printAmount(*parseAmount(u"1.250,5 W", kPoint)), QStringLiteral("1250.5 W"));
    EXPECT_EQ(printAmount(*parseAmount(u"0,1 mΩ", kPoint)), QStringLiteral("0.1 mΩ"));
    EXPECT_EQ(printAmount(*parseAmount(u"6000 1/min", kPoint)), QStringLiteral("6000 rpm"));
    EXPECT_EQ(printAmount(*parseAmount(u"1e-9 F", kPoint)), QStringLiteral("0.000000001 F"));
    EXPECT_EQ(printAmount(*parseAmount(u"00 AWG", kPoint)), QStringLiteral("2/0 AWG"));
    EXPECT_EQ(printAmount(*parseAmount(u"0 AWG", kPoint)), QStringLiteral("1/0 AWG"));
    EXPECT_EQ(printAmount(Amount(12, Unit())), QStringLiteral("12"));
    EXPECT_EQ(printAmount(Amount(-0.0, unit(u"V"))), QStringLiteral("0 V"));
    EXPECT_EQ(printAmount(Amount(1e15, unit(u"V"))), QStringLiteral("1000000000000000 V"));
}

TEST(PrintAmount, ReadsBackAsTheSameAmountInEveryUnit)
{
    std::mt19937_64 random(20260301);
    int checked = 0;
    for (const UnitInfo &info : Unit::all()) {
        const Unit u = unit(info.symbol);
        for (int i = 0; i < 500; ++i) {
            const Amount amount(u.symbol() == u"AWG" ? static_cast<double>(random() % 60) - 3
                                                     : randomNumber(random),
                                u);
            if (u.measure() == Measure::Temperature && amount.si() < 0)
                continue;
            const QString text = printAmount(amount);
            for (const auto &expected : {std::optional<Measure>(), std::optional(u.measure())}) {
                const Result<Amount> again = parseAmount(text, kPoint, expected);
                ASSERT_TRUE(again)
                    << text.toStdString() << ": " << again.error().sentence.toStdString();
                ASSERT_EQ(*again, amount) << text.toStdString();
                ASSERT_EQ(printAmount(*again), text);
                ++checked;
            }
        }
    }
    EXPECT_GT(checked, 50000);
}

TEST(ShowAmount, ReadsBackInItsOwnStyle)
{
    std::mt19937_64 random(7);
    for (const UnitInfo &info : Unit::all()) {
        const Unit u = unit(info.symbol);
        for (int i = 0; i < 50; ++i) {
            // what a person types: up to nine digits, up to three of them decimals
            const double number = u.symbol() == u"AWG"
                                      ? static_cast<double>(random() % 60) - 3
                                      : static_cast<double>(random() % 1'000'000'000) / 1000.0;
            for (const NumberStyle style : {kPoint, kComma}) {
                const QString text = showAmount(Amount(number, u), style);
                ASSERT_EQ(*parseAmount(text, style, u.measure()), Amount(number, u))
                    << text.toStdString();
            }
        }
    }
}

TEST(ShowAmount, IsWrittenForPeople)
{
    EXPECT_EQ(showAmount(Amount(12500.5, unit(u"W")), kComma),
              QStringLiteral("12\u202F500,5\u00A0W"));
    EXPECT_EQ(showAmount(Amount(-40, unit(u"°C")), kPoint), QStringLiteral("−40\u00A0°C"));
    EXPECT_EQ(showAmount(Amount(-1, unit(u"AWG")), kPoint), QStringLiteral("2/0\u00A0AWG"));
    EXPECT_EQ(showAmount(Amount(3, unit(u"US gal")), kPoint), QStringLiteral("3\u00A0US\u00A0gal"));
    EXPECT_EQ(showAmount(Amount(96, Unit()), kPoint), QStringLiteral("96"));
    EXPECT_EQ(showAmount(Amount(3.3, unit(u"kW")).to(unit(u"hp")), kPoint, 3),
              QStringLiteral("4.43\u00A0hp"));
}

TEST(AmountTo, ConvertsWithinTheMeasure)
{
    EXPECT_DOUBLE_EQ(Amount(3.3, unit(u"kW")).to(unit(u"W")).number(), 3300);
    EXPECT_DOUBLE_EQ(Amount(100, unit(u"°C")).to(unit(u"°F")).number(), 212);
    EXPECT_DOUBLE_EQ(Amount(2.5, unit(u"h")).to(unit(u"min")).number(), 150);
    const Amount odd(0.1, unit(u"kV"));
    EXPECT_EQ(odd.to(unit(u"kV")), odd);
}

TEST(AmountTo, TakesTheNearestGaugeForAWG)
{
    EXPECT_EQ(printAmount(Amount(35, unit(u"mm²")).to(unit(u"AWG"))), QStringLiteral("2 AWG"));
    EXPECT_EQ(printAmount(Amount(70, unit(u"mm²")).to(unit(u"AWG"))), QStringLiteral("2/0 AWG"));
    EXPECT_EQ(printAmount(Amount(1, unit(u"m²")).to(unit(u"AWG"))), QStringLiteral("4/0 AWG"));
    EXPECT_EQ(printAmount(Amount(0, unit(u"m²")).to(unit(u"AWG"))), QStringLiteral("56 AWG"));
    EXPECT_EQ(printAmount(Amount(-5, unit(u"m²")).to(unit(u"AWG"))), QStringLiteral("56 AWG"));
    for (int gauge = -3; gauge <= 56; ++gauge) {
        const Amount wire(gauge, unit(u"AWG"));
        EXPECT_EQ(wire.to(unit(u"mm²")).to(unit(u"AWG")), wire);
    }
}

TEST(PrintAmount, GivesTheAreaOfAGaugeThatIsNone)
{
    const QString text = printAmount(Amount(10.5, unit(u"AWG")));
    EXPECT_TRUE(text.endsWith(QStringLiteral(" mm²"))) << text.toStdString();
    EXPECT_TRUE(parseAmount(text, kPoint, Measure::Area));
}

TEST(AmountDeathTest, MistakesOfOurOwnAreAsserted)
{
    EXPECT_DEATH(static_cast<void>(Amount(1, unit(u"V")).to(unit(u"A"))), "within its measure");
    EXPECT_DEATH(static_cast<void>(printAmount(Amount(std::nan(""), unit(u"V")))), "finite");
    EXPECT_DEATH(static_cast<void>(parseAmount(u"1", kPoint, Measure::Voltage, unit(u"A"))),
                 "default unit");
}

} // namespace ohmwright
