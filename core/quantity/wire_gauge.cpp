// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/quantity/wire_gauge.h"

#include "core/quantity/number_text.h"

#include <algorithm>
#include <cmath>
#include <numbers>

using namespace Qt::StringLiterals;

namespace ohmwright::detail {

namespace {

constexpr int kThickest = -3; // 4/0
constexpr int kThinnest = 56;
constexpr double kDiameter36 = 0.127e-3; // m
constexpr double kRatio = 92.0;          // of the diameters of 4/0 and 36
constexpr double kSteps = 39.0;

bool allAre(QStringView text, bool (*test)(QChar))
{
    return !text.isEmpty() && std::all_of(text.begin(), text.end(), test);
}

std::optional<int> gaugeOf(QStringView text)
{
    if (text.endsWith(u"/0") && text.size() == 3 && text[0] >= u'1' && text[0] <= u'4')
        return 1 - text[0].digitValue();
    if (text.size() <= 4 && allAre(text, [](QChar c) { return c == u'0'; }))
        return 1 - static_cast<int>(text.size());
    if (text.size() <= 2 && allAre(text, isDigit)) {
        const int gauge = text.toInt();
        return gauge <= kThinnest ? std::optional(gauge) : std::nullopt;
    }
    return std::nullopt;
}

} // namespace

Unit awg()
{
    static const Unit kUnit = Unit::fromSymbol(u"AWG").value();
    return kUnit;
}

Unit squareMillimetre()
{
    static const Unit kUnit = Unit::fromSymbol(u"mm²").value();
    return kUnit;
}

QStringView textOfGauge(QStringView text)
{
    const QStringView trimmed = text.trimmed();
    if (trimmed.endsWith(u"AWG", Qt::CaseInsensitive))
        return trimmed.chopped(3).trimmed();
    if (trimmed.startsWith(u"AWG", Qt::CaseInsensitive))
        return trimmed.mid(3).trimmed();
    return {};
}

Result<double> readGauge(QStringView gauge, QStringView whole)
{
    if (const auto number = gaugeOf(gauge.trimmed()))
        return static_cast<double>(*number);
    return fail(ProblemCode::BadInput, quoted(whole) + u" is not a wire gauge."_s,
                u"Gauges are whole, from 4/0 AWG to 56 AWG; other sizes are given in mm²."_s);
}

QString printGauge(double number)
{
    if (std::isnan(number) || number < kThickest || number > kThinnest ||
        number != std::floor(number))
        return {};
    const int gauge = static_cast<int>(number);
    return gauge <= 0 ? QString::number(1 - gauge) + u"/0 AWG"_s
                      : QString::number(gauge) + u" AWG"_s;
}

double areaOfGauge(double number)
{
    const double diameter = kDiameter36 * std::pow(kRatio, (36.0 - number) / kSteps);
    return std::numbers::pi / 4.0 * diameter * diameter;
}

double nearestGauge(double area)
{
    if (!(area > 0.0))
        return kThinnest;
    const double diameter = std::sqrt(area * 4.0 / std::numbers::pi);
    const double gauge = 36.0 - kSteps * std::log(diameter / kDiameter36) / std::log(kRatio);
    return std::clamp(std::round(gauge), double(kThickest), double(kThinnest));
}

} // namespace ohmwright::detail
