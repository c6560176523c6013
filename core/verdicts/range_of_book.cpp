// SPDX-License-Identifier: GPL-3.0-or-later
// Range and consumption out of a book: the traction pack and the vehicle.
#include "core/checks/range.h"
#include "core/verdicts/link_facts.h"
#include "core/verdicts/vehicle_checks_of_book.h"
#include "core/verdicts/vehicle_of_book.h"
#include "core/verdicts/vehicle_tools.h"

namespace ohmwright {

// By the keys of core/checks/drive_cycle.h.
enum class HeldToCycle { Wltc, Nedc, Udds, Ftp75, Highway };
template <>
struct EnumWords<HeldToCycle>
{
    static constexpr std::array words{"wltc-3b", "nedc", "udds", "ftp-75", "hwfet"};
};

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("RangeOfBook", text);
}

QString commonPractice(const QString &what)
{
    return tr("%1; common practice, no published source").arg(what);
}

// What the pack's own facts do not name yet is asked for under this name.
template <class Q>
Given<Q> named(Given<Q> fact, const QString &name)
{
    if (fact.origin.name.isEmpty())
        fact.origin.name = name;
    return fact;
}

RangeInputs::Regeneration regenerationOf(const BookInputs &in, const PackFacts &pack)
{
    constexpr double kEfficiency = 0.65, kShare = 0.6, kUpTo = 0.9, kFadesBelow = 15 / 3.6;
    RangeInputs::Regeneration regeneration;
    regeneration.set = in.figure<Power>("range.regeneration");
    regeneration.packLimit =
        named(pack.greatestChargePower, tr("power the pack takes for some seconds"));
    regeneration.efficiency = in.figureOr<double>(
        kEfficiency, commonPractice(tr("gears, motor and inverter, braking gently")),
        "range.regeneration_efficiency");
    regeneration.drivenShare =
        in.figureOr<double>(kShare, commonPractice(tr("one driven axle, brakes used as well")),
                            "range.regeneration_share");
    regeneration.fadesBelow = in.figureOr<Speed>(
        Speed::fromSi(kFadesBelow), commonPractice(tr("motors brake little at a walking pace")),
        "range.regeneration_fades_below");
    regeneration.fullAbove = in.figureOr<double>(
        kUpTo, commonPractice(tr("a full pack takes nothing back")), "range.regeneration_up_to");
    regeneration.toldTwice = regenerationToldTwice(in, pack);
    return regeneration;
}

} // namespace

std::vector<Check> judgeRangeOfBook(const BookInputs &in)
{
    const PackFacts &pack = packFacts(in);
    if (!pack.circuit)
        return {};
    constexpr double kEfficiency = 0.80, kAuxiliaries = 400;
    RangeInputs range;
    range.subject = pack.circuit->key;
    putRoadLoad(in, range);
    range.efficiency = in.figureOr<double>(
        kEfficiency, commonPractice(tr("inverter 0.96, motor 0.90, gears 0.93")),
        "range.efficiency");
    range.auxiliaries =
        in.figureOr<Power>(watts(kAuxiliaries), commonPractice(tr("12 V side by day, no heating")),
                           "range.auxiliaries");
    range.usableEnergy = named(pack.usableEnergy, tr("usable energy of the pack"));
    range.packLimit = named(pack.greatestPower, tr("power the pack gives for some seconds"));
    if (in.has("range.regeneration"))
        range.regeneration = regenerationOf(in, pack);
    range.startCharge = pack.highestCharge.value.value_or(range.startCharge);
    range.endCharge = pack.lowestCharge.value.value_or(range.endCharge);
    range.topSpeed = figureIfAny<Speed>(in, "range.top_speed");
    const HeldToCycle cycle =
        in.choice<HeldToCycle>("range.cycle").value.value_or(HeldToCycle::Wltc);
    range.cycle = wordOf(cycle);
    range.wantedRange = figureIfAny<Length>(in, "range.wanted");
    Check check =
        about(judgeRange(range), pack.circuit->key, tr("Range and consumption of the vehicle"));
    tellChoice(check, in, range.cycle, tr("of cars and light vans, UN R154"), "range.cycle");
    return {check};
}

} // namespace ohmwright
