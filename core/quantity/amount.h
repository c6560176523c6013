// SPDX-License-Identifier: GPL-3.0-or-later
// Amount: a number with its unit, exactly as a person or a nameplate gave it.
//
// "3.3 kW" stays 3.3 and kW, so it prints back as it was typed and round trips through the book
// without a digit changing. Its SI value is computed when asked for.
//
//     parseAmount(u"2,5 kW", style)     // 2.5 and kW, Measure::Power
//     parseAmount(u"2/0 AWG", style)    // American wire gauge 2/0, Measure::Area
//     printAmount(amount)               // "2.5 kW", always re-readable
#pragma once

#include "core/quantity/result.h"

#include <QString>
#include <QStringList>
#include <QStringView>

#include <optional>
#include <span>
#include <vector>

namespace ohmwright {

// What is measured. Torque and energy share a dimension, so the dimension alone is not enough.
enum class Measure {
    Voltage,
    Current,
    Resistance,
    Power,
    Energy,
    EnergyPerDistance,
    Charge,
    Capacitance,
    Inductance,
    Mass,
    Unbalance,
    Length,
    Area,
    Volume,
    Density,
    Duration,
    Temperature,
    Frequency,
    Speed,
    RotationSpeed,
    Torque,
    Force,
    Pressure,
    FlowRate,
    Acceleration,
    ThermalConductance,
    Ratio,
    Count,
};

// A unit we can read and write. The list is a constant table in units.cpp; a Unit is a row of it.
struct UnitInfo
{
    QString symbol; // as printed: "kW", "mm²", "N·m", "°C", "AWG"
    Measure measure;
    double toSi;            // SI = number * toSi + offset; not used for AWG
    double offset;          // for °C and °F
    QStringList alsoReadAs; // "mm2", "sqmm", "Nm", "degC", …
};

class Unit
{
public:
    Unit() = default; // a plain count: symbol "", Measure::Count
    // By symbol or another way of writing it. Capitals are forgiven where only one unit can be
    // meant; never between milli and mega, nor for a single letter. "C" is coulomb and "F" farad
    // unless `preferred` is temperature.
    [[nodiscard]] static std::optional<Unit>
    fromSymbol(QStringView symbol, std::optional<Measure> preferred = std::nullopt);
    // Symbols that differ from this only in capitals: what a person may have meant.
    [[nodiscard]] static QStringList similarSymbols(QStringView symbol);
    [[nodiscard]] static std::span<const UnitInfo> all();
    [[nodiscard]] static std::vector<Unit> ofMeasure(Measure measure); // in the table's order
    [[nodiscard]] const UnitInfo &info() const;
    [[nodiscard]] QString symbol() const { return info().symbol; }
    [[nodiscard]] Measure measure() const { return info().measure; }
    bool operator==(const Unit &) const = default;

private:
    explicit Unit(int row) : m_row(row) {}
    int m_row = 0;
};

// How numbers are written. Never taken from the process's locale behind a caller's back.
struct NumberStyle
{
    QChar decimal = QLatin1Char('.');
    [[nodiscard]] static NumberStyle pointDecimal() { return {QLatin1Char('.')}; }
    [[nodiscard]] static NumberStyle commaDecimal() { return {QLatin1Char(',')}; }
};

class Amount
{
public:
    Amount() = default;
    Amount(double number, Unit unit) : m_number(number), m_unit(unit) {}
    // From a value in the measure's SI unit. AWG takes the nearest gauge, as to() does.
    [[nodiscard]] static Amount fromSi(double si, Unit unit);

    [[nodiscard]] double number() const { return m_number; }
    [[nodiscard]] Unit unit() const { return m_unit; }
    [[nodiscard]] Measure measure() const { return m_unit.measure(); }
    // In the SI coherent unit of the measure: V, A, Ω, W, J, J/m, C, F, H, kg, kg·m, m, m², m³,
    // kg/m³, s, K, Hz, m/s, m/s², rad/s, N·m, N, Pa, m³/s, W/K, 1. AWG n gives the area of a solid
    // wire of that gauge (ASTM B258).
    [[nodiscard]] double si() const;
    // The same quantity in another unit of the same measure (asserted). There are only whole AWG
    // gauges: to(AWG) takes the one nearest in diameter, from 4/0 to 56, so it alone is not exact.
    [[nodiscard]] Amount to(Unit unit) const;

    bool operator==(const Amount &) const = default;

private:
    double m_number = 0.0; // AWG: the gauge, 2/0 is -1
    Unit m_unit;
};

// Number as typed. Takes "1250", "1,250.5", "1.250,5", "1 250,5", "1'250.5", "1.2e-6"; a lone
// separator that can group, with three digits behind it ("1.250"), is read by `style`; any other
// lone separator is the decimal one ("0.125", "1250.125" and "12,5" in any style).
// BadInput for anything else, for infinities and not-a-number, and beyond 10^15 either way: whole
// numbers that were read are exact and fit an int64.
Result<double> parseNumber(QStringView text, NumberStyle style);

// Number, then a unit we know, with or without a space. `expected`, when given, must be the unit's
// measure; a bare number then takes `defaultUnit` if that is given. Without `expected` a bare
// number is a count. AWG gauges are whole, 4/0 to 56: "2/0 AWG", "AWG 10", "00 AWG".
// BadInput, with what to do: no number, no unit, unknown unit, other measure, below absolute zero.
// Trailing "DC" or "AC" is not part of an amount: see splitCurrentKind.
Result<Amount> parseAmount(QStringView text, NumberStyle style,
                           std::optional<Measure> expected = std::nullopt,
                           std::optional<Unit> defaultUnit = std::nullopt);

// Interchange form: point decimal, no grouping, shortest digits that read back the same, one space.
// An AWG amount that is no gauge prints as its area in mm². The number must be finite (asserted).
QString printAmount(const Amount &amount);
// For people: the style's decimal sign, thin grouping from five digits on, no-break space, minus
// sign; rounded to the given count of significant digits (1 to 15). Fifteen show what was typed
// and hide the noise of binary arithmetic.
QString showAmount(const Amount &amount, NumberStyle style, int significantDigits = 15);
// As showAmount, without a unit.
QString showNumber(double number, NumberStyle style, int significantDigits = 15);

QString measureName(Measure measure); // "voltage", "rotation speed", …

enum class CurrentKind { Dc, Ac };
struct AmountWithKind
{
    QString amountText;
    std::optional<CurrentKind> kind;
};
// "400 V DC" -> {"400 V", Dc}; "230 V~", "230 VAC", "AC 230 V", "30 V AC rms" -> Ac; "403 V" -> no
// kind. A text that claims both is left whole, so that reading it as an amount is refused.
AmountWithKind splitCurrentKind(QStringView text);

} // namespace ohmwright
