// SPDX-License-Identifier: GPL-3.0-or-later
// The constant table of units and the look-up by symbol.
//
// Factors: SI brochure (BIPM, 9th edition) for the units accepted for use with the SI; the
// international definitions 1 in = 25.4 mm, 1 lb = 0.45359237 kg, standard gravity 9.80665 m/s²,
// 1 US gallon = 231 in³, 1 imperial gallon = 4.54609 L.
#include "core/quantity/amount.h"
#include "core/quantity/invariant.h"

#include <QHash>
#include <QList>

#include <iterator>
#include <numbers>

namespace ohmwright {

namespace {

constexpr double kInch = 0.0254;
constexpr double kFoot = 12 * kInch;
constexpr double kMile = 5280 * kFoot;
constexpr double kPound = 0.45359237;
constexpr double kGravity = 9.80665;
constexpr double kPoundForce = kPound * kGravity;
constexpr double kTurn = 2 * std::numbers::pi;
constexpr double kRankine = 5.0 / 9.0;

struct Row
{
    const char16_t *symbol = u"";
    Measure measure = Measure::Count;
    double toSi = 1.0;
    double offset = 0.0;
    const char16_t *alsoReadAs = u""; // separated by '|'
};

// Row 0 is the plain count: Unit() stands on it. Within a measure the order is the one offered.
// No two rows of one measure may be read from the same text (units_test.cpp).
// clang-format off
constexpr Row kRows[] = {
    {u"", Measure::Count, 1, 0, u"pcs|pc|pieces|piece"},

    {u"V", Measure::Voltage, 1, 0, u"v|volt|volts"},
    {u"mV", Measure::Voltage, 1e-3, 0, u"millivolt|millivolts"},
    {u"kV", Measure::Voltage, 1e3, 0, u"kilovolt|kilovolts"},
    {u"µV", Measure::Voltage, 1e-6, 0, u"uV"},

    {u"A", Measure::Current, 1, 0, u"a|amp|amps|ampere|amperes"},
    {u"mA", Measure::Current, 1e-3, 0, u"milliamp|milliamps"},
    {u"µA", Measure::Current, 1e-6, 0, u"uA"},
    {u"kA", Measure::Current, 1e3},

    {u"Ω", Measure::Resistance, 1, 0, u"ohm|ohms"},
    {u"mΩ", Measure::Resistance, 1e-3, 0, u"mohm|mohms|milliohm|milliohms"},
    {u"µΩ", Measure::Resistance, 1e-6, 0, u"uΩ|uohm|uohms|µohm|microohm|microohms"},
    {u"kΩ", Measure::Resistance, 1e3, 0, u"kohm|kohms|kiloohm|kilohm|kilohms"},
    {u"MΩ", Measure::Resistance, 1e6, 0, u"Mohm|Mohms|megohm|megohms|Megohm|Megohms"},
    {u"GΩ", Measure::Resistance, 1e9, 0, u"Gohm|Gohms"},

    {u"W", Measure::Power, 1, 0, u"w|watt|watts"},
    {u"kW", Measure::Power, 1e3, 0, u"kilowatt|kilowatts"},
    {u"MW", Measure::Power, 1e6},
    {u"mW", Measure::Power, 1e-3},
    {u"hp", Measure::Power, 550 * kFoot * kPoundForce, 0, u"bhp|horsepower"},
    {u"PS", Measure::Power, 75 * kGravity, 0, u"cv|ch|metric hp"},

    {u"J", Measure::Energy, 1, 0, u"j|joule|joules|W·s"},
    {u"mJ", Measure::Energy, 1e-3},
    {u"kJ", Measure::Energy, 1e3},
    {u"MJ", Measure::Energy, 1e6},
    {u"Wh", Measure::Energy, 3600, 0, u"W·h|watt hours|watthours"},
    {u"kWh", Measure::Energy, 3.6e6, 0, u"kW·h|kilowatt hours"},
    {u"MWh", Measure::Energy, 3.6e9, 0, u"MW·h"},

    {u"Wh/km", Measure::EnergyPerDistance, 3.6, 0, u"W·h/km"},
    {u"kWh/100 km", Measure::EnergyPerDistance, 36, 0, u"kW·h/100 km"},
    {u"J/m", Measure::EnergyPerDistance, 1},

    {u"C", Measure::Charge, 1, 0, u"A·s|coulomb|coulombs"},
    {u"mC", Measure::Charge, 1e-3},
    {u"Ah", Measure::Charge, 3600, 0, u"A·h|Ahr|amp hours|amphours"},
    {u"mAh", Measure::Charge, 3.6, 0, u"mA·h"},

    {u"F", Measure::Capacitance, 1, 0, u"farad|farads"},
    {u"mF", Measure::Capacitance, 1e-3},
    {u"µF", Measure::Capacitance, 1e-6, 0, u"uF|mfd|MFD"},
    {u"nF", Measure::Capacitance, 1e-9},
    {u"pF", Measure::Capacitance, 1e-12},

    {u"H", Measure::Inductance, 1, 0, u"henry|henries"},
    {u"mH", Measure::Inductance, 1e-3},
    {u"µH", Measure::Inductance, 1e-6, 0, u"uH"},
    {u"nH", Measure::Inductance, 1e-9},

    {u"kg", Measure::Mass, 1, 0, u"kilo|kilos|kilogram|kilograms"},
    {u"g", Measure::Mass, 1e-3, 0, u"gram|grams"},
    {u"mg", Measure::Mass, 1e-6},
    {u"t", Measure::Mass, 1e3, 0, u"tonne|tonnes"},
    {u"lb", Measure::Mass, kPound, 0, u"lbs|pound|pounds"},
    {u"oz", Measure::Mass, kPound / 16, 0, u"ounce|ounces"},

    {u"g·mm", Measure::Unbalance, 1e-6},
    {u"kg·mm", Measure::Unbalance, 1e-3},
    {u"kg·m", Measure::Unbalance, 1},

    {u"m", Measure::Length, 1, 0, u"metre|metres|meter|meters"},
    {u"mm", Measure::Length, 1e-3, 0, u"MM|millimetre|millimetres|millimeter|millimeters"},
    {u"cm", Measure::Length, 1e-2, 0, u"centimetre|centimetres|centimeter|centimeters"},
    {u"km", Measure::Length, 1e3, 0, u"kilometre|kilometres|kilometer|kilometers"},
    {u"µm", Measure::Length, 1e-6, 0, u"um|micron|microns"},
    {u"in", Measure::Length, kInch, 0, u"\"|″|inch|inches"},
    {u"ft", Measure::Length, kFoot, 0, u"'|′|foot|feet"},
    {u"yd", Measure::Length, 3 * kFoot, 0, u"yard|yards"},
    {u"mi", Measure::Length, kMile, 0, u"mile|miles"},

    {u"mm²", Measure::Area, 1e-6, 0, u"mm2|sqmm|sq mm|qmm"},
    {u"cm²", Measure::Area, 1e-4, 0, u"cm2|sqcm|sq cm|qcm"},
    {u"m²", Measure::Area, 1, 0, u"m2|sqm|sq m|qm"},
    {u"in²", Measure::Area, kInch * kInch, 0, u"in2|sqin|sq in"},
    {u"ft²", Measure::Area, kFoot * kFoot, 0, u"ft2|sqft|sq ft"},
    {u"AWG", Measure::Area, 1},
    {u"kcmil", Measure::Area, std::numbers::pi / 4 * kInch * kInch * 1e-3, 0, u"MCM"},

    {u"L", Measure::Volume, 1e-3, 0, u"l|litre|litres|liter|liters|dm3"},
    {u"mL", Measure::Volume, 1e-6},
    {u"dL", Measure::Volume, 1e-4},
    {u"cm³", Measure::Volume, 1e-6, 0, u"cm3|cc|ccm"},
    {u"m³", Measure::Volume, 1, 0, u"m3|cbm"},
    {u"in³", Measure::Volume, kInch * kInch * kInch, 0, u"in3|cu in|cuin"},
    {u"US gal", Measure::Volume, 231 * kInch * kInch * kInch, 0, u"gal US|US gallon|US gallons"},
    {u"imp gal", Measure::Volume, 4.54609e-3, 0, u"UK gal|gal UK|imp gallon|imp gallons"},

    {u"kg/m³", Measure::Density, 1, 0, u"kg/m3"},
    {u"g/cm³", Measure::Density, 1e3, 0, u"g/cm3|kg/L|kg/dm3"},

    {u"s", Measure::Duration, 1, 0, u"sec|secs|second|seconds"},
    {u"ms", Measure::Duration, 1e-3, 0, u"msec"},
    {u"µs", Measure::Duration, 1e-6, 0, u"us|usec"},
    {u"min", Measure::Duration, 60, 0, u"mins|minute|minutes"},
    {u"h", Measure::Duration, 3600, 0, u"hr|hrs|hour|hours"},
    {u"d", Measure::Duration, 86400, 0, u"day|days"},
    {u"wk", Measure::Duration, 7 * 86400, 0, u"week|weeks"},

    {u"°C", Measure::Temperature, 1, 273.15, u"degC|deg C|C|celsius|degrees C"},
    {u"°F", Measure::Temperature, kRankine, 459.67 * kRankine,
     u"degF|deg F|F|fahrenheit|degrees F"},
    {u"K", Measure::Temperature, 1, 0, u"kelvin"},

    {u"Hz", Measure::Frequency, 1, 0, u"hertz|1/s"},
    {u"kHz", Measure::Frequency, 1e3},
    {u"MHz", Measure::Frequency, 1e6},
    {u"GHz", Measure::Frequency, 1e9},

    {u"km/h", Measure::Speed, 1000.0 / 3600.0, 0, u"kmh|kph|km/hr"},
    {u"m/s", Measure::Speed, 1, 0, u"m·s-1"},
    {u"mm/s", Measure::Speed, 1e-3},
    {u"mph", Measure::Speed, kMile / 3600.0, 0, u"MPH|mi/h"},

    {u"rpm", Measure::RotationSpeed, kTurn / 60, 0,
     u"1/min|r/min|rev/min|U/min|/min|min-1"},
    {u"rad/s", Measure::RotationSpeed, 1, 0, u"rad·s-1"},
    {u"r/s", Measure::RotationSpeed, kTurn, 0, u"rev/s|rps|1/s"},

    {u"N·m", Measure::Torque, 1, 0, u"Nm|N-m|newton metre|newton metres"},
    {u"kN·m", Measure::Torque, 1e3, 0, u"kNm"},
    {u"N·cm", Measure::Torque, 1e-2, 0, u"Ncm"},
    {u"lbf·ft", Measure::Torque, kPoundForce * kFoot, 0,
     u"lb·ft|lb-ft|lbf-ft|ft·lb|ft-lb|ft·lbf|ft-lbf|ft·lbs|ft-lbs|foot pounds"},
    {u"lbf·in", Measure::Torque, kPoundForce * kInch, 0,
     u"lb·in|lb-in|lbf-in|in·lb|in-lb|in·lbf|in-lbf|in·lbs|in-lbs|inch pounds"},

    {u"N", Measure::Force, 1, 0, u"newton|newtons"},
    {u"kN", Measure::Force, 1e3},
    {u"lbf", Measure::Force, kPoundForce},
    {u"kgf", Measure::Force, kGravity, 0, u"kp"},

    {u"bar", Measure::Pressure, 1e5, 0, u"bars"},
    {u"mbar", Measure::Pressure, 1e2},
    {u"Pa", Measure::Pressure, 1, 0, u"pascal|pascals|N/m2"},
    {u"kPa", Measure::Pressure, 1e3},
    {u"MPa", Measure::Pressure, 1e6, 0, u"N/mm2"},
    {u"psi", Measure::Pressure, kPoundForce / (kInch * kInch), 0, u"PSI|lbf/in2|lb/in2"},

    {u"L/min", Measure::FlowRate, 1e-3 / 60, 0, u"lpm|litres/min|liters/min"},
    {u"L/h", Measure::FlowRate, 1e-3 / 3600, 0, u"lph"},
    {u"m³/h", Measure::FlowRate, 1.0 / 3600},
    {u"m³/s", Measure::FlowRate, 1},

    {u"m/s²", Measure::Acceleration, 1, 0, u"m/s/s|m·s-2"},

    {u"W/K", Measure::ThermalConductance, 1},
    {u"kW/K", Measure::ThermalConductance, 1e3},

    {u"%", Measure::Ratio, 0.01, 0, u"percent|per cent|pct"},
    {u":1", Measure::Ratio, 1, 0, u"to 1"},
};
// clang-format on

std::vector<UnitInfo> makeTable()
{
    std::vector<UnitInfo> table;
    table.reserve(std::size(kRows));
    for (const Row &row : kRows) {
        table.push_back({QString::fromUtf16(row.symbol), row.measure, row.toSi, row.offset,
                         QString::fromUtf16(row.alsoReadAs).split(u'|', Qt::SkipEmptyParts)});
    }
    return table;
}

const std::vector<UnitInfo> &table()
{
    static const std::vector<UnitInfo> kTable = makeTable();
    return kTable;
}

// What makes no difference in a written unit is taken out, so that the table lists only what does:
// compatibility forms (² and 2, both micro signs, both ohm signs, ℃), spaces, raised and centred
// dots, "^", and "." after an abbreviation.
QString keyOf(QStringView symbol)
{
    constexpr qsizetype kLongest = 32; // of anything we know
    const QStringView trimmed = symbol.trimmed();
    if (trimmed.size() > kLongest)
        return {};
    QString text = trimmed.toString();
    text.replace(QChar(0x00BA), QChar(0x00B0)); // the ordinal sign and the ring above are
    text.replace(QChar(0x02DA), QChar(0x00B0)); // taken for a degree sign on many keyboards
    text = text.normalized(QString::NormalizationForm_KC);

    QString key;
    for (const QChar c : text) {
        const bool dot = c == u'.' || c == u'*' || c == u'^' || c == QChar(0x00B7) ||
                         c == QChar(0x2219) || c == QChar(0x22C5) || c == QChar(0x2022);
        if (!key.isEmpty() && (dot || c.isSpace()))
            continue;
        key += c == QChar(0x2212) ? QChar(u'-') : c;
    }
    return key;
}

QString foldedAll(const QString &key)
{
    return key.toCaseFolded();
}

// Capitals forgiven, but for the first letter where they tell milli from mega and pico from peta;
// nothing for a single letter, where they tell hour from henry.
QString foldedSafely(const QString &key)
{
    if (key.size() < 2)
        return {};
    const QChar first = key[0];
    const bool prefix = first.toLower() == u'm' || first.toLower() == u'p';
    return prefix ? first + key.mid(1).toCaseFolded() : key.toCaseFolded();
}

using RowsByKey = QHash<QString, QList<int>>;

struct Index
{
    RowsByKey exact; // rows whose symbol it is stand before rows where it is another writing
    RowsByKey safelyFolded;
    RowsByKey allFolded;
};

void add(RowsByKey &rows, const QString &key, int row)
{
    if (!key.isEmpty() && !rows[key].contains(row))
        rows[key].append(row);
}

Index makeIndex()
{
    Index index;
    const auto addAll = [&index](const QString &symbol, int row) {
        const QString key = keyOf(symbol);
        add(index.exact, key, row);
        add(index.safelyFolded, foldedSafely(key), row);
        add(index.allFolded, foldedAll(key), row);
    };
    const int count = static_cast<int>(table().size());
    for (int row = 0; row < count; ++row)
        addAll(table()[static_cast<std::size_t>(row)].symbol, row);
    for (int row = 0; row < count; ++row) {
        for (const QString &symbol : table()[static_cast<std::size_t>(row)].alsoReadAs)
            addAll(symbol, row);
    }
    return index;
}

const Index &index()
{
    static const Index kIndex = makeIndex();
    return kIndex;
}

const UnitInfo &infoAt(int row)
{
    return table()[static_cast<std::size_t>(row)];
}

std::optional<int> rowOfMeasure(const QList<int> &rows, std::optional<Measure> measure)
{
    for (const int row : rows) {
        if (infoAt(row).measure == measure)
            return row;
    }
    return std::nullopt;
}

} // namespace

std::optional<Unit> Unit::fromSymbol(QStringView symbol, std::optional<Measure> preferred)
{
    // most are written as they are kept, and checks ask for thousands
    const QString asWritten = QString::fromRawData(symbol.data(), symbol.size());
    if (const auto rows = index().exact.constFind(asWritten); rows != index().exact.constEnd())
        return Unit(rowOfMeasure(*rows, preferred).value_or(rows->first()));
    const QString key = keyOf(symbol);
    if (key.isEmpty())
        return symbol.trimmed().isEmpty() ? std::optional(Unit()) : std::nullopt;
    const QList<int> exact = index().exact.value(key);
    if (!exact.isEmpty())
        return Unit(rowOfMeasure(exact, preferred).value_or(exact.first()));

    const QList<int> folded = index().safelyFolded.value(foldedSafely(key));
    if (const auto row = rowOfMeasure(folded, preferred))
        return Unit(*row);
    return folded.size() == 1 ? std::optional(Unit(folded.first())) : std::nullopt;
}

QStringList Unit::similarSymbols(QStringView symbol)
{
    QStringList symbols;
    const QString key = keyOf(symbol);
    if (key.isEmpty())
        return symbols;
    for (const int row : index().allFolded.value(foldedAll(key)))
        symbols.append(infoAt(row).symbol);
    return symbols;
}

std::span<const UnitInfo> Unit::all()
{
    return table();
}

std::vector<Unit> Unit::ofMeasure(Measure measure)
{
    std::vector<Unit> units;
    for (int row = 0; row < static_cast<int>(table().size()); ++row) {
        if (infoAt(row).measure == measure)
            units.push_back(Unit(row));
    }
    return units;
}

const UnitInfo &Unit::info() const
{
    return infoAt(m_row);
}

QString measureName(Measure measure)
{
    // clang-format off
    switch (measure) {
    case Measure::Voltage: return QStringLiteral("voltage");
    case Measure::Current: return QStringLiteral("current");
    case Measure::Resistance: return QStringLiteral("resistance");
    case Measure::Power: return QStringLiteral("power");
    case Measure::Energy: return QStringLiteral("energy");
    case Measure::EnergyPerDistance: return QStringLiteral("energy per distance");
    case Measure::Charge: return QStringLiteral("charge");
    case Measure::Capacitance: return QStringLiteral("capacitance");
    case Measure::Inductance: return QStringLiteral("inductance");
    case Measure::Mass: return QStringLiteral("mass");
    case Measure::Unbalance: return QStringLiteral("unbalance");
    case Measure::Length: return QStringLiteral("length");
    case Measure::Area: return QStringLiteral("area");
    case Measure::Volume: return QStringLiteral("volume");
    case Measure::Density: return QStringLiteral("density");
    case Measure::Duration: return QStringLiteral("duration");
    case Measure::Temperature: return QStringLiteral("temperature");
    case Measure::Frequency: return QStringLiteral("frequency");
    case Measure::Speed: return QStringLiteral("speed");
    case Measure::RotationSpeed: return QStringLiteral("rotation speed");
    case Measure::Torque: return QStringLiteral("torque");
    case Measure::Force: return QStringLiteral("force");
    case Measure::Pressure: return QStringLiteral("pressure");
    case Measure::FlowRate: return QStringLiteral("flow rate");
    case Measure::Acceleration: return QStringLiteral("acceleration");
    case Measure::ThermalConductance: return QStringLiteral("thermal conductance");
    case Measure::Ratio: return QStringLiteral("ratio");
    case Measure::Count: return QStringLiteral("count");
    }
    // clang-format on
    brokenInvariant("a measure is one of the list");
}

} // namespace ohmwright
