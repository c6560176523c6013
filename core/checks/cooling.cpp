// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/cooling.h"

#include "core/checks/taken.h"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>

namespace ohmwright {

namespace {

constexpr double kZeroCelsius = 273.15;
// Dry air at sea level and 35 °C, 1.146 kg/m³ · 1007 J/(kg·K); any text on heat transfer.
constexpr VolumetricHeatCapacity kAir = VolumetricHeatCapacity::fromSi(1.146 * 1007);

QString tr(const char *text)
{
    return QCoreApplication::translate("Cooling", text);
}

QString nameOf(Coolant coolant)
{
    switch (coolant) {
    case Coolant::Water:
        return tr("water");
    case Coolant::EthyleneGlycol:
        return tr("ethylene glycol in water");
    case Coolant::PropyleneGlycol:
        return tr("propylene glycol in water");
    }
    return {};
}

std::optional<FlowRate> takeFlow(Worksheet &sheet, const CoolingInputs &in)
{
    if (!in.pump)
        return taken(sheet, in.flow, u"V̇", u"L/min", kAboveNothing);
    const PumpAndLoop &pump = *in.pump;
    const auto shutOff = taken(sheet, pump.shutOff, u"Δp₀", u"kPa", kAboveNothing);
    const auto freeFlow = taken(sheet, pump.freeFlow, u"V̇₀", u"L/min", kAboveNothing);
    const auto drop = taken(sheet, pump.loopDrop, u"Δp₁", u"kPa", kAboveNothing);
    const auto at = taken(sheet, pump.loopFlow, u"V̇₁", u"L/min", kAboveNothing);
    if (!shutOff || !freeFlow || !drop || !at)
        return std::nullopt;
    const double ratio = *freeFlow / *at;
    const FlowRate flow = *freeFlow / std::sqrt(1 + *drop / *shutOff * ratio * ratio);
    sheet.step(tr("flow where pump and loop meet"),
               QStringLiteral("V̇ = V̇₀/√(1 + Δp₁/Δp₀·(V̇₀/V̇₁)²)"),
               tr("both taken as parabolas: %1 of %2, %3 of %4")
                   .arg(show(*drop, u"kPa"), show(*shutOff, u"kPa"), show(*freeFlow, u"L/min"),
                        show(*at, u"L/min")),
               flow, u"L/min");
    return flow;
}

struct Mixture
{
    Coolant coolant;
    double glycol;
};

std::optional<Mixture> takeMixture(Worksheet &sheet, const CoolingInputs &in)
{
    sheet.takeChoice(in.coolant.origin, in.coolant.value ? nameOf(*in.coolant.value) : QString());
    if (!in.coolant.value)
        return std::nullopt;
    if (*in.coolant.value == Coolant::Water)
        return Mixture{Coolant::Water, 0};
    const auto glycol = taken(sheet, in.glycol, u"x", u"%", 0, 0.6);
    return glycol ? std::optional(Mixture{*in.coolant.value, *glycol}) : std::nullopt;
}

// The radiator's kilowatts for each kelvin between coolant in and air in.
std::optional<ThermalConductance> takeRadiator(Worksheet &sheet, const CoolingInputs &in,
                                               std::optional<ThermalConductance> coolant)
{
    if (!in.airSide)
        return taken(sheet, in.radiator, u"K", u"kW/K", kAboveNothing);
    const auto exchange = taken(sheet, in.airSide->exchange, u"U·A", u"kW/K", kAboveNothing);
    const auto air = taken(sheet, in.airSide->air, u"V̇ₐ", u"m³/h", kAboveNothing);
    if (!exchange || !air || !coolant)
        return std::nullopt;
    const ThermalConductance airCarries = *air * kAir;
    sheet.step(tr("heat the air takes for each kelvin"), QStringLiteral("Cₐ = ρ·c·V̇ₐ"),
               QString(show(*air, u"m³/h") + QStringLiteral(" · 1.154 kJ/(m³·K)")), airCarries,
               u"kW/K");
    const ThermalConductance least = std::min(airCarries, *coolant);
    const double units = *exchange / least, ratio = least / std::max(airCarries, *coolant);
    const double effectiveness = crossFlowEffectiveness(units, ratio);
    sheet.step(tr("effectiveness of the radiator"),
               QStringLiteral("ε(N, r), cross flow, both sides unmixed"),
               QString(QStringLiteral("N = ") + show(units, u"") + QStringLiteral(", r = ") +
                       show(ratio, u"")),
               effectiveness, u"%");
    const ThermalConductance carries = least * effectiveness;
    sheet.step(tr("heat of the radiator for each kelvin"), QStringLiteral("K = ε·min(C, Cₐ)"),
               QString(show(effectiveness, u"%") + QStringLiteral(" · ") + show(least, u"kW/K")),
               carries, u"kW/K");
    return carries;
}

struct Fed
{
    QString name, limitFrom;
    std::optional<Power> heat;
    std::optional<Temperature> hottest;
};

void judgeParts(Worksheet &sheet, const std::vector<Fed> &parts, Power heat, Temperature ambient,
                ThermalConductance radiator, ThermalConductance coolant)
{
    const Temperature intoRadiator = heat / radiator; // above ambient, as all below
    const Temperature behind = intoRadiator - heat / coolant;
    sheet.step(tr("coolant into the radiator, above the air"), QStringLiteral("ΔT = Q/K"),
               QString(show(heat, u"kW") + QStringLiteral(" / ") + show(radiator, u"kW/K")),
               intoRadiator, u"K");
    sheet.step(tr("coolant behind the radiator"), QStringLiteral("T_air + Q/K − Q/C"),
               QString(show(ambient, u"°C") + QStringLiteral(" + ") + show(intoRadiator, u"K") +
                       QStringLiteral(" − ") + show(heat / coolant, u"K")),
               ambient + behind, u"°C");
    double most = kNoLimit; // of the heat, before the first part is too hot
    Temperature rise = behind;
    for (const Fed &part : parts) {
        if (part.hottest) {
            const Temperature allowed = *part.hottest - ambient;
            sheet.atMost(tr("coolant into %1, above the air").arg(part.name), rise, allowed, u"K",
                         part.limitFrom);
            sheet.mendedBy(tr("A larger radiator or fan, more flow, or the most delicate part "
                              "first behind the radiator."));
            most = std::min(most, rise.si() > 0 ? std::max(0.0, allowed / rise) : kNoLimit);
        }
        if (part.heat)
            rise += *part.heat / coolant;
    }
    if (most < kNoLimit) {
        sheet.step(tr("heat carried at the first limit"), QStringLiteral("Q·ΔTₘₐₓ/ΔT"),
                   show(heat, u"kW"), heat * most, u"kW");
        sheet.result(tr("%1 of heat where %2 are carried at %3")
                         .arg(show(heat, u"kW"), show(heat * most, u"kW"), show(ambient, u"°C")));
    }
}

} // namespace

double crossFlowEffectiveness(double transferUnits, double ratio)
{
    const double one = transferUnits, other = transferUnits * ratio;
    if (other < 1e-9) // one side does not warm up
        return -std::expm1(-one);
    if (one > 500) // where e^−N is lost; by then all is given over that can be
        return 1;
    double termOne = std::exp(-one), termOther = std::exp(-other); // e^−N·N^m/m!
    double leftOne = -std::expm1(-one), leftOther = -std::expm1(-other);
    double sum = 0;
    for (int n = 1; n < 5000; ++n) {
        const double term = leftOne * leftOther;
        sum += term;
        if (n > one && term < 1e-13 * sum)
            break;
        termOne *= one / n;
        termOther *= other / n;
        leftOne = std::max(0.0, leftOne - termOne);
        leftOther = std::max(0.0, leftOther - termOther);
    }
    return std::min(1.0, sum / other);
}

Check judgeCooling(const CoolingInputs &in)
{
    Worksheet sheet(QStringLiteral("cooling"), tr("Cooling loop"), Protects::Electronics);
    sheet.about(in.loop);
    sheet.caution(QStringLiteral("coolant"));
    sheet.afterwards(tr("Then bleed the loop and measure flow and coolant temperature on a long "
                        "climb or a full charge on a hot day: trapped air undoes every figure."));
    const auto ambient = taken(sheet, in.ambient, u"T_air", u"°C", kZeroCelsius - 60, 363.15);
    const auto coldest = taken(sheet, in.coldest, u"T_min", u"°C", kZeroCelsius - 90, 363.15);
    const auto flow = takeFlow(sheet, in);
    const auto mixture = takeMixture(sheet, in);
    std::vector<Fed> parts;
    std::optional<Power> heat = Power();
    for (const CooledPart &part : in.parts) {
        parts.push_back({part.name, part.hottest.origin.name,
                         taken(sheet, part.heat, u"Q", u"kW", 0),
                         taken(sheet, part.hottest, u"Tₘₐₓ", u"°C", 0, 1000)});
        heat = heat && parts.back().heat ? std::optional(*heat + *parts.back().heat) : std::nullopt;
    }
    if (in.parts.empty())
        sheet.doubt(tr("Nothing is told that this loop cools."));

    if (mixture && coldest) {
        if (const auto freezes = freezingPointOf(mixture->coolant, mixture->glycol)) {
            keepAtMost(sheet, tr("first ice in the coolant"), *freezes, *coldest, u"°C",
                       in.coldest.origin.name);
            sheet.mendedBy(tr("More glycol in the coolant."));
        } else {
            sheet.doubt(tr("The table of freezing points ends below this share of glycol."));
        }
    }
    std::optional<ThermalConductance> coolant;
    if (mixture && flow && ambient) {
        // colder than the table's 0 °C the coolant carries a little less than is told here
        const Temperature at = Temperature::fromSi(std::max(ambient->si() + 20, kZeroCelsius));
        if (const auto capacity = heatCapacityOf(mixture->coolant, mixture->glycol, at)) {
            coolant = *flow * *capacity;
            sheet.step(tr("heat the coolant takes for each kelvin"), QStringLiteral("C = ρ·c·V̇"),
                       QString(show(*flow, u"L/min") + QStringLiteral(" · ") +
                               showNumber(capacity->si() / 1e6, NumberStyle::pointDecimal(), 4) +
                               QStringLiteral(" MJ/(m³·K)")),
                       *coolant, u"kW/K");
        } else {
            sheet.doubt(tr("The air is hotter than the table of coolants goes."));
        }
    }
    const auto radiator = takeRadiator(sheet, in, coolant);
    if (coolant && radiator && *coolant < *radiator) {
        sheet.refuse(
            tr("The radiator cannot give off more for each kelvin than the coolant brings: "
               "its figure belongs to a larger flow."));
    } else if (coolant && radiator && heat && ambient && !in.parts.empty()) {
        judgeParts(sheet, parts, *heat, *ambient, *radiator, *coolant);
    }
    return sheet.finish(tr("Heat balance; Mason 1954 for radiators in cross flow; ASHRAE "
                           "Handbook, Fundamentals, for coolants"));
}

} // namespace ohmwright
