// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/fuse.h"

#include "core/checks/usable.h"

#include <QCoreApplication>

#include <algorithm>

namespace ohmwright {

namespace {

constexpr QLatin1StringView kPeak("I_p");
constexpr QLatin1StringView kPeakLasts("t_p");
constexpr QLatin1StringView kMelting("t_m");
constexpr QLatin1StringView kFaultVoltage("U_k");
constexpr QLatin1StringView kFaultLoop("R_k");
constexpr QLatin1StringView kFaultCurrent("I_k");
constexpr QLatin1StringView kClearing("t_k");

QString tr(const char *text)
{
    return QCoreApplication::translate("Fuse", text);
}

// The n-th of several: "U_k2"; a single one needs no number.
QString nth(QLatin1StringView symbol, std::size_t n, std::size_t of)
{
    return of > 1 ? QString(symbol + QString::number(n + 1)) : QString(symbol);
}

QString from(const Origin &origin)
{
    return tr("%1: %2").arg(origin.name, spokenOf(origin.evidence));
}

void judgeVoltage(Worksheet &sheet, const FuseInputs &inputs)
{
    Given<Voltage> rated;
    rated.origin.name = tr("%1 voltage rating of the fuse").arg(wordOf(inputs.current));
    for (const VoltageLimit &limit : inputs.voltage) {
        if (limit.kind == inputs.current && !limit.voltage.value && !rated.value &&
            !limit.voltage.origin.name.isEmpty())
            rated.origin = limit.voltage.origin; // what is missing, and where it goes
        if (limit.kind == inputs.current && limit.voltage.value &&
            (!rated.value || *limit.voltage.value < *rated.value)) {
            const QString name = rated.origin.name;
            rated = limit.voltage;
            if (rated.origin.name.isEmpty())
                rated.origin.name = name;
        }
    }
    const Voltage worst = sheet.take(inputs.worstVoltage, u"U", u"V", 1e-3);
    if (inputs.worstVoltage.value) // else the first of them stands for it
        for (const Origin &missing : inputs.missing)
            sheet.takeChoice(missing, {});
    const Voltage limit = sheet.take(rated, u"Uₙ", u"V", 1e-3);
    if (isUsable(inputs.worstVoltage, worst) && isUsable(rated, limit)) {
        sheet.restsOn(inputs.worstVoltage, rated);
        sheet.atMost(tr("voltage across the open fuse"), worst, limit, u"V", from(rated.origin));
        sheet.mendedBy(tr("A fuse of a higher DC voltage rating."));
    }
}

void judgeOverload(Worksheet &sheet, const FuseInputs &inputs, Current rating, Current capacity)
{
    if (inputs.isPartialRange && inputs.cannotBeOverloaded) {
        sheet.stepText(tr("overload of the cable"), QStringLiteral("IEC 60364-4-43, 433.3"),
                       tr("a partial-range fuse does not open on one"),
                       tr("what it feeds cannot cause one"));
        return;
    }
    if (inputs.isPartialRange)
        sheet.doubt(tr("A partial-range fuse does not open on an overload: say what keeps one off "
                       "the cable."));
    if (!isUsable(inputs.cableCapacity, capacity))
        return;
    if (rating.si() > 0) {
        sheet.restsOn(inputs.cableCapacity, inputs.rating);
        sheet.atMost(tr("rating against the cable"), rating, capacity, u"A",
                     tr("IEC 60364-4-43, 433.1"));
        sheet.mendedBy(tr("A smaller fuse, or a cable for more current."));
    }
    if (!inputs.conventional)
        return;
    const Current opens = sheet.take(*inputs.conventional, u"I₂", u"A", 1e-6);
    if (!isUsable(*inputs.conventional, opens))
        return;
    constexpr double kOverload = 1.45;
    sheet.step(tr("overload the cable takes until it opens"), QStringLiteral("1.45·I_z"),
               show(capacity, u"A"), capacity * kOverload, u"A");
    sheet.restsOn(inputs.cableCapacity, *inputs.conventional);
    sheet.atMost(tr("conventional current against the cable"), opens, capacity * kOverload, u"A",
                 tr("IEC 60364-4-43, 433.1"));
    sheet.mendedBy(tr("A smaller fuse, or a cable for more current."));
}

void judgeLoad(Worksheet &sheet, const FuseInputs &inputs, Current rating)
{
    const Current load = sheet.take(inputs.continuous, u"I_b", u"A", 0);
    const double factor = sheet.take(inputs.temperatureFactor, u"k_t", u"", 0.01, 2);
    const double share = sheet.take(inputs.loadShare, u"s", u"%", 0.01, 1);
    if (rating.si() > 0 && isUsable(inputs.continuous, load) &&
        isUsable(inputs.temperatureFactor, factor) && isUsable(inputs.loadShare, share)) {
        const Current least = leastRating(load, share, factor);
        sheet.step(tr("rating that the load needs"), QStringLiteral("I_b/(s·k_t)"),
                   QString(show(load, u"A") + QStringLiteral(" / (") + show(share, u"%") +
                           QStringLiteral(" · ") + show(factor, u"") + QLatin1Char(')')),
                   least, u"A");
        sheet.restsOn(inputs.continuous, inputs.rating, inputs.loadShare, inputs.temperatureFactor);
        sheet.atLeast(tr("rating for the load"), rating, least, u"A",
                      inputs.loadShare.origin.source);
        sheet.mendedBy(tr("A larger fuse as far as its cable allows, or less load."));
    }
    const std::size_t peaks = inputs.peaks.size();
    for (std::size_t i = 0; i < peaks; ++i) {
        const FusePeak &peak = inputs.peaks[i];
        sheet.take(peak.current, nth(kPeak, i, peaks), u"A", 0);
        const Duration lasts = sheet.take(peak.lasts, nth(kPeakLasts, i, peaks), u"s", 0);
        const Duration melting = sheet.take(peak.melting, nth(kMelting, i, peaks), u"s", 1e-9);
        if (isUsable(peak.lasts, lasts) && isUsable(peak.melting, melting)) {
            sheet.restsOn(peak.melting, peak.lasts, peak.current);
            sheet.atMost(tr("%1, without melting").arg(peak.name), lasts, melting, u"s",
                         from(peak.melting.origin));
            sheet.mendedBy(tr("A fuse that melts more slowly, or a shorter peak."));
        }
    }
    const Current capacity = sheet.take(inputs.cableCapacity, u"I_z", u"A", 1e-6);
    judgeOverload(sheet, inputs, rating, capacity);
}

struct Fault
{
    const FaultCase *told = nullptr;
    std::size_t number = 0;
    Current current;
    std::optional<Duration> clearing;
};

std::vector<Fault> takeFaults(Worksheet &sheet, const std::vector<FaultCase> &faults)
{
    std::vector<Fault> taken;
    for (std::size_t i = 0; i < faults.size(); ++i) {
        const FaultCase &fault = faults[i];
        const QString u = nth(kFaultVoltage, i, faults.size());
        const QString r = nth(kFaultLoop, i, faults.size());
        const Voltage voltage = sheet.take(fault.voltage, u, u"V", 1e-3);
        const Resistance loop = sheet.take(fault.loop, r, u"mΩ", 1e-6);
        const Duration clearing =
            sheet.take(fault.clearing, nth(kClearing, i, faults.size()), u"s", 1e-9);
        if (!isUsable(fault.voltage, voltage) || !isUsable(fault.loop, loop))
            continue;
        const Current current = voltage / loop;
        sheet.step(tr("prospective current, %1").arg(fault.name),
                   QString(nth(kFaultCurrent, i, faults.size()) + QStringLiteral(" = ") + u +
                           QLatin1Char('/') + r),
                   QString(show(voltage, u"V") + QStringLiteral(" / ") + show(loop, u"mΩ")),
                   current, u"kA");
        taken.push_back(
            {&fault, i, current,
             isUsable(fault.clearing, clearing) ? std::optional(clearing) : std::nullopt});
    }
    return taken;
}

void judgeBreaking(Worksheet &sheet, const FuseInputs &inputs, const std::vector<Fault> &faults)
{
    const Current breaking = sheet.take(inputs.breaking, u"I₁", u"kA", 1e-6);
    Current least;
    if (inputs.leastBreaking)
        least = sheet.take(*inputs.leastBreaking, u"I_min", u"A", 0);
    if (faults.empty())
        return;
    const auto [weakest, strongest] =
        std::minmax_element(faults.begin(), faults.end(),
                            [](const Fault &a, const Fault &b) { return a.current < b.current; });
    if (isUsable(inputs.breaking, breaking)) {
        sheet.restsOn(strongest->told->loop, inputs.breaking, strongest->told->voltage);
        sheet.atMost(tr("strongest fault"), strongest->current, breaking, u"kA",
                     from(inputs.breaking.origin));
        sheet.mendedBy(tr("A fuse of a higher breaking capacity."));
    }
    if (inputs.leastBreaking && isUsable(*inputs.leastBreaking, least)) {
        sheet.restsOn(weakest->told->loop, inputs.leastBreaking, weakest->told->voltage);
        sheet.atLeast(tr("weakest fault"), weakest->current, least, u"A",
                      from(inputs.leastBreaking->origin));
        sheet.mendedBy(tr("A fuse that breaks smaller currents, or a thicker cable."));
    }
}

void judgeCable(Worksheet &sheet, const FuseInputs &inputs, const std::vector<Fault> &faults)
{
    const auto material = takeChosen(sheet, inputs.material);
    const Area area = sheet.take(inputs.area, u"S", u"mm²", 1e-9);
    const Temperature start = sheet.take(inputs.insulation, u"θᵢ", u"°C", 273.15, 1273.15);
    const Temperature end = sheet.take(inputs.shortTime, u"θ_f", u"°C", 273.15, 1273.15);
    const bool known = material && isUsable(inputs.area, area) &&
                       isUsable(inputs.insulation, start) && isUsable(inputs.shortTime, end);
    if (known && end <= start) {
        sheet.refuse(tr("The insulation cannot stand less in a short circuit than always."));
        return;
    }
    const double k = known ? adiabaticK(*material, start, end) : 0;
    if (known)
        sheet.step(tr("k of the cable"),
                   QStringLiteral("k = √(Qc·(β + 20 °C)/ρ₂₀ · ln(1 + (θf − θi)/(β + θi)))"),
                   tr("%1 to %2").arg(show(start, u"°C"), show(end, u"°C")), k, u"");
    for (const Fault &fault : faults) {
        if (!fault.clearing)
            continue;
        sheet.restsOn(fault.told->clearing);
        sheet.within(tr("clearing, %1").arg(fault.told->name), *fault.clearing, inputs.clearing,
                     u"s");
        sheet.mendedBy(tr("A faster fuse, or a thicker cable so that more current flows."));
        if (!known)
            continue;
        if (kAdiabaticUpTo < *fault.clearing) { // also when the threshold was loosened
            sheet.doubt(tr("The formula for the cable in a short circuit ends at %1.")
                            .arg(show(kAdiabaticUpTo, u"s")));
            continue;
        }
        const Area least = leastArea(fault.current, *fault.clearing, k);
        sheet.step(
            tr("least cable, %1").arg(fault.told->name),
            QString(QStringLiteral("S = √(") +
                    nth(kFaultCurrent, fault.number, inputs.faults.size()) + QStringLiteral("² ") +
                    nth(kClearing, fault.number, inputs.faults.size()) + QStringLiteral(")/k")),
            QString(show(fault.current, u"kA") + QStringLiteral(", ") +
                    show(*fault.clearing, u"s")),
            least, u"mm²");
        sheet.restsOn(fault.told->loop, inputs.area, fault.told->clearing, fault.told->voltage,
                      inputs.shortTime, inputs.insulation, inputs.material);
        sheet.atLeast(tr("cable, %1").arg(fault.told->name), area, least, u"mm²",
                      tr("IEC 60364-4-43, 434.5.2"));
        sheet.mendedBy(tr("A larger cable, or a faster fuse."));
    }
}

} // namespace

Current leastRating(Current load, double share, double temperatureFactor)
{
    return load / (share * temperatureFactor);
}

Check judgeFuse(const FuseInputs &inputs)
{
    Worksheet sheet(QStringLiteral("fuse"), tr("Fuse"), Protects::Pack);
    sheet.about(inputs.branch);
    sheet.caution(QStringLiteral("battery"));
    sheet.afterwards(tr("Then measure the pack's resistance, from which the fault current comes, "
                        "and look up on the fuse's sheet up to which time constant L/R its DC "
                        "rating holds."));
    const QString source = tr("IEC 60364-4-43, 433.1 and 434.5.2; IEC 60364-5-54, annex A; maker's "
                              "curves");

    judgeVoltage(sheet, inputs);
    const Current rating = sheet.take(inputs.rating, u"Iₙ", u"A", 1e-6);
    judgeLoad(sheet, inputs, rating);
    const std::vector<Fault> faults = takeFaults(sheet, inputs.faults);
    if (inputs.faults.empty())
        sheet.doubt(tr("No short circuit is given that the fuse has to break."));
    judgeBreaking(sheet, inputs, faults);
    judgeCable(sheet, inputs, faults);
    if (!faults.empty()) {
        const auto strongest =
            std::max_element(faults.begin(), faults.end(),
                             [](const Fault &a, const Fault &b) { return a.current < b.current; });
        sheet.result(tr("%1 fuse, up to %2 to break")
                         .arg(show(rating, u"A"), show(strongest->current, u"kA")));
    }
    return sheet.finish(source);
}

} // namespace ohmwright
