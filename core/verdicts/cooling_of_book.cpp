// SPDX-License-Identifier: GPL-3.0-or-later
// Cooling loops out of a book: each radiator with its pump and what stands in its loop.
#include "core/checks/cooling.h"
#include "core/verdicts/build_parts.h"
#include "core/verdicts/vehicle_checks_of_book.h"
#include "core/verdicts/vehicle_tools.h"

#include <QCoreApplication>

namespace ohmwright {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("CoolingOfBook", text);
}

constexpr FigureName kFlow{RatedQuantity::Flow, RatingKind::Actual, RatingBasis::Nominal, {}};

// Told nothing, everything is in the one loop there is.
double loopOf(const BookInputs &in, const Part &part)
{
    return in.figure<double>("cooling.loop", part).value.value_or(1);
}

bool isCooled(const BookInputs &in, const Part &part)
{
    return in.has("cooling.order", part) || in.has("cooling.heat", part) ||
           in.has("cooling.hottest", part);
}

// In the order the coolant meets them; those whose place nobody told last.
std::vector<CooledPart> cooledParts(const BookInputs &in, double loop)
{
    constexpr double kLast = 1e9;
    std::vector<std::pair<double, const Part *>> ordered;
    for (const Part *part : partsWithFigures(in.records(), QLatin1String("cooling.")))
        if (isCooled(in, *part) && loopOf(in, *part) == loop)
            ordered.emplace_back(in.figure<double>("cooling.order", *part).value.value_or(kLast),
                                 part);
    std::stable_sort(ordered.begin(), ordered.end(),
                     [](const auto &a, const auto &b) { return a.first < b.first; });
    std::vector<CooledPart> cooled;
    for (const auto &[place, part] : ordered)
        cooled.push_back({part->name, in.figure<Power>("cooling.heat", *part),
                          in.figure<Temperature>("cooling.hottest", *part)});
    return cooled;
}

// The measured flow leads; a pump's and a loop's figures come next, then the pump's own flow.
void putFlow(const BookInputs &in, const Part &radiator, const Part *pump, CoolingInputs &cooling)
{
    cooling.flow = in.figure<FlowRate>("cooling.flow", radiator);
    if (in.has("cooling.flow", radiator) || !pump)
        return;
    if (in.has("cooling.shut_off", *pump) || in.has("cooling.free_flow", *pump)) {
        cooling.pump = PumpAndLoop{in.figure<Pressure>("cooling.shut_off", *pump),
                                   in.figure<FlowRate>("cooling.free_flow", *pump),
                                   in.figure<Pressure>("cooling.loop_drop", radiator),
                                   in.figure<FlowRate>("cooling.loop_drop_at", radiator)};
        return;
    }
    const Given<FlowRate> ofPump = in.rating<FlowRate>(*pump, kFlow);
    if (ofPump.value)
        cooling.flow = ofPump;
}

Check judgeLoop(const BookInputs &in, const Part &radiator, const std::vector<const Part *> &pumps)
{
    const double loop = loopOf(in, radiator);
    CoolingInputs cooling;
    cooling.loop = radiator.key;
    cooling.parts = cooledParts(in, loop);
    const auto pump = std::find_if(pumps.begin(), pumps.end(),
                                   [&](const Part *part) { return loopOf(in, *part) == loop; });
    putFlow(in, radiator, pump == pumps.end() ? nullptr : *pump, cooling);
    cooling.coolant = givenChoice<Coolant>(in, "cooling.coolant", radiator);
    cooling.glycol = in.figure<double>("cooling.glycol", radiator);
    constexpr double kHotDay = 273.15 + 40;
    cooling.ambient = in.figureOr<Temperature>(
        Temperature::fromSi(kHotDay),
        tr("a hot day behind a grille; common practice, no published source"), "cooling.ambient");
    cooling.coldest = in.figure<Temperature>("cooling.coldest");
    if (in.has("cooling.exchange", radiator) || in.has("cooling.air_flow", radiator))
        cooling.airSide = AirSide{in.figure<ThermalConductance>("cooling.exchange", radiator),
                                  in.figure<FlowRate>("cooling.air_flow", radiator)};
    else
        cooling.radiator = in.figure<ThermalConductance>("cooling.radiator", radiator);
    return about(judgeCooling(cooling), radiator.key, tr("Cooling loop of %1").arg(radiator.name));
}

} // namespace

std::vector<Check> judgeCoolingOfBook(const BookInputs &in)
{
    std::vector<Check> checks;
    const std::vector<const Part *> radiators = partsOfRole(in.records(), PartRole::Radiator);
    if (radiators.empty())
        return checks;
    const std::vector<const Part *> pumps = partsOfRole(in.records(), PartRole::Pump);
    for (const Part *radiator : radiators)
        checks.push_back(judgeLoop(in, *radiator, pumps));
    return checks;
}

} // namespace ohmwright
