// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/verdicts/branch_currents.h"

#include "core/checks/pack.h"
#include "core/checks/worksheet.h"
#include "core/verdicts/cell_facts.h"
#include "core/verdicts/derived.h"
#include "core/verdicts/drive_demand.h"
#include "core/verdicts/unit_currents.h"
#include "core/verdicts/wiring.h"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>
#include <map>

namespace ohmwright {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("BranchCurrents", text);
}

// What driving takes of the whole pack; none: not known.
struct Drawn
{
    std::optional<Given<Current>> continuous, peak;
    Given<Duration> peakLasts;
};

std::optional<Given<Current>> drawnAt(const Given<Power> &power,
                                      const std::optional<Given<Current>> &atMost,
                                      const Given<Voltage> &resting, const Given<Resistance> &inner)
{
    if (!power.value || !resting.value || !inner.value)
        return std::nullopt;
    std::optional<Current> current = currentAtPower(*resting.value, *inner.value, *power.value);
    const bool isHeld = atMost && (!current || *atMost->value < *current);
    if (isHeld)
        current = *atMost->value;
    if (!current)
        return std::nullopt; // the pack does not give it, which its own check says
    const QString how = isHeld ? tr("no more than %1").arg(atMost->origin.name)
                               : tr("%1 of a low and cold pack").arg(show(*power.value, u"kW"));
    Given<Current> drawn = derived(
        called({}, how), [&](Power, Voltage, Resistance) { return *current; }, power, resting,
        inner);
    if (isHeld)
        drawn.origin.evidence = weakerOf(drawn.origin.evidence, atMost->origin.evidence);
    return drawn;
}

Drawn workOut(const BookInputs &in)
{
    Drawn drawn;
    const PackFacts &pack = packFacts(in);
    const auto demand =
        pack.circuit ? driveDemand(in, wiringOf(in), pack) : std::optional<DriveDemand>();
    if (!demand)
        return drawn;
    const CellFacts &cells = cellFacts(in);
    const Given<Voltage> resting = restingWhenLow(pack, cells);
    drawn.peak = drawnAt(demand->peak, demand->peakCurrent, resting, cells.coldPack);
    if (demand->continuous)
        drawn.continuous =
            drawnAt(*demand->continuous, demand->continuousCurrent, resting, cells.coldPack);
    drawn.peakLasts = demand->peakLasts;
    return drawn;
}

// Of the pack's current; none where the branch does not carry it, or nobody can say how much.
std::optional<double> shareOfModules(const PackFacts &pack, const std::vector<const Part *> &parts)
{
    const auto here = std::ranges::count_if(pack.modules, [&](const Part *module) {
        return std::ranges::find(parts, module) != parts.end();
    });
    const double parallel = pack.modulesInParallel.value.value_or(0);
    const double series = pack.modulesInSeries.value.value_or(0);
    if (here == 0 || parallel <= 0 || series <= 0)
        return std::nullopt;
    const double strings = static_cast<double>(here) / series;
    if (parallel == 1)
        return 1;
    return strings >= 1 && strings == std::floor(strings) ? std::optional(strings / parallel)
                                                          : std::nullopt;
}

// As much of the pack's current as the branch carries.
std::optional<Given<Current>> ofBranch(const BookInputs &in, const Branch &branch,
                                       std::optional<Given<Current>> ofPack, RatingBasis basis)
{
    const PackFacts &pack = packFacts(in);
    if (!ofPack || !pack.circuit || branch.circuit != pack.circuit->id)
        return std::nullopt;
    const Wiring &wiring = wiringOf(in);
    const std::vector<const Part *> &parts = wiring.on(branch);
    if (const auto share = shareOfModules(pack, parts)) {
        ofPack->value = *ofPack->value * *share;
        return ofPack;
    }
    std::vector<const Part *> inverters;
    std::ranges::copy_if(parts, std::back_inserter(inverters),
                         [](const Part *part) { return part->role == PartRole::Inverter; });
    if (inverters.empty())
        return std::nullopt;
    if (inverters.size() < wiring.on(*pack.circuit, PartRole::Inverter).size())
        if (const auto own = ownCurrentLimit(in, inverters, basis);
            own && *own->value < *ofPack->value)
            return own;
    return ofPack;
}

// Under the name and the address of what is entered, which is less.
Given<Current> insteadOf(const Given<Current> &entered, const Given<Current> &taken,
                         const QString &who)
{
    Given<Current> greater = taken;
    greater.origin.name = entered.origin.name;
    greater.origin.field = entered.origin.field;
    const QString told = who.arg(taken.origin.source);
    greater.origin.source =
        entered.value
            ? tr("%1; %2 is entered with the branch").arg(told, show(*entered.value, u"A"))
            : tr("%1; none is entered with the branch").arg(told);
    return greater;
}

QString driving()
{
    return tr("driving takes it: %1");
}

QString itsUnits()
{
    return tr("what hangs on it takes it: %1");
}

bool isMore(const std::optional<Given<Current>> &taken, Current than)
{
    // the noise of a division is no more
    constexpr double kNoise = 1e-6;
    return taken && taken->value && than.si() * (1 + kNoise) < taken->value->si();
}

bool isOfTraction(const BookInputs &in, const Branch &branch)
{
    const Circuit *circuit = in.records().find(branch.circuit);
    return circuit && circuit->kind == CircuitKind::Traction;
}

} // namespace

Given<Current> continuousCurrentEntered(const BookInputs &in, const Branch &branch)
{
    return in.field<Current>(branch, &Branch::continuousCurrent, "continuous_current",
                             tr("continuous current of %1").arg(branch.name), Evidence::Assumed,
                             tr("entered with the branch"));
}

namespace {

Given<Current> continuousWorked(const BookInputs &in, const Branch &branch)
{
    const Given<Current> entered = continuousCurrentEntered(in, branch);
    if (!entered.value || *entered.value == Current())
        return entered; // said to carry nothing for long
    const auto driven =
        isOfTraction(in, branch)
            ? ofBranch(in, branch, in.once<Drawn>(workOut).continuous, RatingBasis::Continuous)
            : std::optional<Given<Current>>();
    if (isMore(driven, *entered.value))
        return insteadOf(entered, *driven, driving());
    const std::optional<Given<Current>> units = unitsContinuous(in, branch);
    return isMore(units, *entered.value) ? insteadOf(entered, *units, itsUnits()) : entered;
}

std::optional<BranchPeak> peakWorked(const BookInputs &in, const Branch &branch,
                                     const Given<Current> &continuous)
{
    const Given<Duration> lasts = in.figure<Duration>("branch.peak_duration", branch);
    const Given<Current> entered = in.field<Current>(
        branch, &Branch::peakCurrent, "peak_current", tr("peak current of %1").arg(branch.name),
        Evidence::Assumed, tr("entered with the branch"));
    const auto driven = isOfTraction(in, branch)
                            ? ofBranch(in, branch, in.once<Drawn>(workOut).peak, RatingBasis::Peak)
                            : std::optional<Given<Current>>();
    const Current most =
        std::max(entered.value.value_or(Current()), continuous.value.value_or(Current()));
    const bool isLastingTold = in.has("branch.peak_duration", branch);
    if (isMore(driven, most))
        return BranchPeak{insteadOf(entered, *driven, driving()),
                          isLastingTold ? lasts : in.once<Drawn>(workOut).peakLasts, false};
    if (const auto units = unitsPeak(in, branch);
        units && (entered.value || units->lasts) && isMore(units->current, most))
        return BranchPeak{insteadOf(entered, units->current, itsUnits()),
                          isLastingTold || !units->lasts ? lasts : *units->lasts, false};
    return entered.value ? std::optional(BranchPeak{entered, lasts}) : std::nullopt;
}

// Half a dozen checks ask for them.
struct Carried
{
    Given<Current> continuous;
    std::optional<BranchPeak> peak;
};
using CarriedByAll = std::map<Id<Branch>, Carried>;

CarriedByAll workOutAll(const BookInputs &in)
{
    CarriedByAll all;
    for (const Branch &branch : in.records().all<Branch>()) {
        Carried &carried = all[branch.id];
        carried.continuous = continuousWorked(in, branch);
        carried.peak = peakWorked(in, branch, carried.continuous);
    }
    return all;
}

} // namespace

Given<Current> continuousCurrentOf(const BookInputs &in, const Branch &branch)
{
    return in.once<CarriedByAll>(workOutAll).at(branch.id).continuous;
}

std::optional<BranchPeak> peakOf(const BookInputs &in, const Branch &branch)
{
    return in.once<CarriedByAll>(workOutAll).at(branch.id).peak;
}

} // namespace ohmwright
