// SPDX-License-Identifier: GPL-3.0-or-later
// Branch ratings out of a book.
//
// The continuous current is always asked for, the peak and how long it lasts where there is one.
// Resistors for precharge and discharge are judged by their pulse and their loss, not by a current.
// A battery module carries only its share of the pack's current: its limits count as many times as
// there are modules in parallel.
#include "core/checks/branch_ratings.h"
#include "core/verdicts/branch_conductor.h"
#include "core/verdicts/branch_currents.h"
#include "core/verdicts/current_limits.h"
#include "core/verdicts/derived.h"
#include "core/verdicts/electrical_checks_of_book.h"
#include "core/verdicts/pack_facts.h"
#include "core/verdicts/wiring.h"

#include <QCoreApplication>

#include <algorithm>

namespace ohmwright {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("BranchRatingsOfBook", text);
}

class BranchReader
{
public:
    explicit BranchReader(const BookInputs &in)
        : m_in(in), m_wiring(wiringOf(in)), m_pack(packFacts(in))
    {}

    [[nodiscard]] BranchRatingsInputs read(const Branch &branch, const Circuit &circuit) const
    {
        BranchRatingsInputs inputs;
        inputs.branch = branch.key;
        inputs.name = branch.name;
        inputs.current = circuit.current;
        inputs.demands.push_back(
            {tr("continuous"), continuousCurrentOf(m_in, branch), std::nullopt});
        const std::optional<BranchPeak> peak = peakOf(m_in, branch);
        if (peak)
            inputs.demands.push_back({tr("peak"), peak->current, peak->lasts});
        inputs.parts = m_wiring.assemblies<CurrentLimit>(
            branch, [this](const Part &part) { return m_in.pathOf(part); },
            [&](const Part &part, Assembly<CurrentLimit> &made) {
                made.isLive = isLive(part);
                if (made.isLive)
                    made.limits =
                        circuit.kind == CircuitKind::LowVoltage && m_wiring.hasLowSide(part)
                            ? lowSideOf(part, circuit.current)
                            : limitsOf(part, circuit.current, peak.has_value());
            });
        return inputs;
    }

private:
    [[nodiscard]] bool isLive(const Part &part) const
    {
        if (const std::optional<bool> told = m_in.yesNo("part.is_live", part))
            return *told;
        if (part.role == PartRole::PrechargeResistor || part.role == PartRole::DischargeResistor)
            return false;
        return part.kind != PartKind::Hardware || m_wiring.isConnectedItself(part) ||
               anyRating(m_in.records(), part, tellsCurrentLimit);
    }

    // One limit for good and for moments: nobody tells a peak of a coil or a converter's output.
    [[nodiscard]] std::vector<CurrentLimit> lowSideOf(const Part &part, CurrentKind current) const
    {
        return {{m_in.figure<Current>("part.low_side_current", part), current, std::nullopt}};
    }

    [[nodiscard]] std::vector<CurrentLimit> limitsOf(const Part &part, CurrentKind current,
                                                     bool hasPeak) const
    {
        std::vector<CurrentLimit> limits;
        FigureName name{RatedQuantity::Current, RatingKind::Limit, RatingBasis::Continuous,
                        current};
        const Given<Current> ofKind = m_in.rating<Current>(part, name);
        name.current.reset();
        const bool tellsAny = anyRating(
            m_in.records(), part, [&](const Rating &rating) { return figureOf(rating) == name; });
        const Given<Current> ofAny =
            tellsAny ? m_in.rating<Current>(part, name) : notKnown<Current>({});
        if (ofKind.value || !ofAny.value)
            limits.push_back({shared(part, ofKind), current, std::nullopt});
        if (ofAny.value)
            limits.push_back({shared(part, ofAny), std::nullopt, std::nullopt});
        for (CurrentLimit peak : peakCurrentLimits(m_in, part, current)) {
            peak.current = shared(part, peak.current);
            limits.push_back(std::move(peak));
        }
        const bool anyPeak = std::ranges::any_of(
            limits, [](const CurrentLimit &limit) { return limit.lasts.has_value(); });
        if (hasPeak && !anyPeak) {
            // so that what is asked for has its address
            name = {RatedQuantity::Current, RatingKind::Limit, RatingBasis::Peak, current};
            limits.push_back({m_in.rating<Current>(part, name), current, notKnown<Duration>({})});
            limits.back().current.value.reset();
        }
        return limits;
    }

    [[nodiscard]] Given<Current> shared(const Part &part, const Given<Current> &limit) const
    {
        if (part.kind != PartKind::Module || !limit.value ||
            m_pack.modulesInParallel.value == 1.0 ||
            std::ranges::find(m_pack.modules, &part) == m_pack.modules.end())
            return limit;
        Origin told = limit.origin;
        told.name = tr("%1, times the modules in parallel").arg(told.name);
        return derived(
            told, [](Current one, double parallel) { return one * parallel; }, limit,
            m_pack.modulesInParallel);
    }

    const BookInputs &m_in;
    const Wiring &m_wiring;
    PackFacts m_pack;
};

} // namespace

std::vector<Check> judgeBranchRatingsOfBook(const BookInputs &in)
{
    std::vector<Check> checks;
    const BranchReader reader(in);
    for (const Branch &branch : in.records().all<Branch>())
        if (const Circuit *circuit = in.records().find(branch.circuit);
            circuit && in.isAsked(branch.key))
            checks.push_back(judgeBranchRatings(reader.read(branch, *circuit)));
    return checks;
}

} // namespace ohmwright
