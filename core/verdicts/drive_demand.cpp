// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/verdicts/drive_demand.h"

#include "core/verdicts/build_parts.h"
#include "core/verdicts/derived.h"
#include "core/verdicts/vehicle_tools.h"

#include <QCoreApplication>

namespace ohmwright {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("DriveDemand", text);
}

using Parts = std::vector<const Part *>;

// Of all of them together; not known while one of them is not. None for no parts.
template <class Q, class Read>
std::optional<Given<Q>> sumOf(const Parts &parts, Read read)
{
    std::optional<Given<Q>> sum;
    for (const Part *part : parts) {
        const Given<Q> one = read(*part);
        if (!one.value)
            return one;
        sum = sum ? derived(sum->origin, std::plus<>(), *sum, one) : one;
    }
    return sum;
}

Given<Power> continuousPower(const BookInputs &in, const Part &part)
{
    return in.rating<Power>(
        part, FigureName{RatedQuantity::Power, RatingKind::Limit, RatingBasis::Continuous, {}});
}

// The lower of what motors and inverters are good for; where only one of them is known, that one.
template <class Read>
std::optional<Given<Power>> atTheShaft(const Parts &motors, const Parts &inverters, Read read)
{
    const auto ofMotors = sumOf<Power>(motors, read);
    const auto ofInverters = sumOf<Power>(inverters, read);
    if (!ofMotors || (!ofMotors->value && ofInverters))
        return ofInverters;
    return ofInverters ? lowestOf(*ofMotors, {*ofInverters}) : *ofMotors;
}

Given<Power> fromThePack(const BookInputs &in, const char *name, const Circuit &circuit,
                         const Given<Power> &shaft)
{
    Origin told = in.originOf(name, circuit);
    told.source = tr("%1 and what is lost before it").arg(shaft.origin.name);
    return derived(told, std::divides<>(), shaft, electricEfficiency(in));
}

// The longest of them: whichever limits the power, it is asked for no longer.
Given<Duration> peakDuration(const BookInputs &in, const Circuit &circuit, const Parts &motors,
                             const Parts &inverters)
{
    Given<Duration> longest = in.figure<Duration>("pack.peak_duration", circuit);
    if (in.has("pack.peak_duration", circuit))
        return longest;
    for (const Parts *parts : {&motors, &inverters})
        for (const Part *part : *parts) {
            const Rating *peak =
                figureFor(in.records(), *part,
                          {RatedQuantity::Power, RatingKind::Limit, RatingBasis::Peak, {}})
                    .inForce;
            if (!peak || !peak->duration)
                continue;
            const Duration one = Duration::fromSi(peak->duration->si());
            if (longest.value && one <= *longest.value)
                continue;
            longest.value = one;
            longest.origin.evidence = peak->evidence;
            longest.origin.source = tr("as long as %1 gives its peak power").arg(part->name);
        }
    return longest;
}

} // namespace

std::optional<Given<Current>> ownCurrentLimit(const BookInputs &in, const Parts &inverters,
                                              RatingBasis basis)
{
    auto limit = sumOf<Current>(inverters, [&](const Part &inverter) {
        return in.rating<Current>(
            inverter, {RatedQuantity::Current, RatingKind::Limit, basis, CurrentKind::Dc});
    });
    return limit && limit->value ? limit : std::nullopt;
}

Given<double> electricEfficiency(const BookInputs &in)
{
    constexpr double kEfficiency = 0.88;
    return in.figureOr<double>(
        kEfficiency,
        tr("inverter 0.96, motor 0.92 at much load; common practice, no published source"),
        "drive.electric_efficiency");
}

std::optional<DriveDemand> driveDemand(const BookInputs &in, const Wiring &wiring,
                                       const PackFacts &pack)
{
    const Circuit &circuit = *pack.circuit;
    const Parts inverters = wiring.on(circuit, PartRole::Inverter);
    const bool isTold = in.has("pack.peak_power", circuit);
    if (inverters.empty() && !isTold)
        return std::nullopt;
    const Parts motors = partsOfRole(in.records(), PartRole::Motor);
    DriveDemand demand;
    demand.peak = in.figure<Power>("pack.peak_power", circuit);
    demand.peakLasts = peakDuration(in, circuit, motors, inverters);
    demand.peakCurrent = ownCurrentLimit(in, inverters, RatingBasis::Peak);
    demand.continuousCurrent = ownCurrentLimit(in, inverters, RatingBasis::Continuous);
    if (const auto shaft = atTheShaft(
            motors, inverters,
            [&](const Part &part) { return peakLimit<Power>(in, part, RatedQuantity::Power); });
        shaft && !isTold)
        demand.peak = fromThePack(in, "pack.peak_power", circuit, *shaft);
    if (in.has("pack.continuous_power", circuit))
        demand.continuous = in.figure<Power>("pack.continuous_power", circuit);
    else if (const auto shaft = atTheShaft(
                 motors, inverters, [&](const Part &part) { return continuousPower(in, part); });
             shaft && shaft->value)
        demand.continuous = fromThePack(in, "pack.continuous_power", circuit, *shaft);
    return demand;
}

} // namespace ohmwright
