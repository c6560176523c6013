// SPDX-License-Identifier: GPL-3.0-or-later
// Branch ratings out of a book.
//
// The continuous current is always asked for, the peak and how long it lasts where there is one.
// Resistors for precharge and discharge are judged by their pulse and their loss, not by a current.
// A battery module carries only its share of the pack's current: its limits count as many times as
// there are modules in parallel.
#include "core/checks/branch_ratings.h"
#include "core/verdicts/branch_conductor.h"
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

bool tellsCurrentLimit(const Rating &rating)
{
    return rating.quantity == RatedQuantity::Current && rating.kind == RatingKind::Limit;
}

bool isStale(const Part &part, const Rating &rating)
{
    return rating.part.isSet() && part.reworkedOn && (!rating.on || *rating.on < *part.reworkedOn);
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
        if (branch.peakCurrent)
            inputs.demands.push_back(
                {tr("peak"),
                 m_in.field<Current>(branch, &Branch::peakCurrent, "peak_current",
                                     tr("peak current of %1").arg(branch.name), Evidence::Assumed,
                                     tr("entered with the branch")),
                 m_in.figure<Duration>("branch.peak_duration", branch)});
        inputs.parts = m_wiring.assemblies<CurrentLimit>(
            branch, [this](const Part &part) { return m_in.pathOf(part); },
            [&](const Part &part, Assembly<CurrentLimit> &made) {
                made.isLive = isLive(part);
                if (made.isLive)
                    made.limits =
                        circuit.kind == CircuitKind::LowVoltage && m_wiring.hasLowSide(part)
                            ? lowSideOf(part, circuit.current)
                            : limitsOf(part, circuit.current, branch.peakCurrent.has_value());
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
               std::ranges::any_of(ratingsOf(part),
                                   [](const Rating *r) { return tellsCurrentLimit(*r); });
    }

    [[nodiscard]] std::vector<const Rating *> ratingsOf(const Part &part) const
    {
        std::vector<const Rating *> all;
        for (const Rating &rating : m_in.records().of<Rating>(part.id))
            all.push_back(&rating);
        if (part.type)
            for (const Rating &rating : m_in.records().of<Rating>(*part.type))
                all.push_back(&rating);
        return all;
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
        const Given<Current> ofAny = m_in.rating<Current>(part, name);
        if (ofKind.value || !ofAny.value)
            limits.push_back({shared(part, ofKind), current, std::nullopt});
        if (ofAny.value)
            limits.push_back({shared(part, ofAny), std::nullopt, std::nullopt});
        addPeaks(limits, part, current);
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

    // Peaks stand apart by their duration. As with other limits, a settled one stands alone unless
    // it raises what papers say, and one from before the rework counts only if no other is there.
    void addPeaks(std::vector<CurrentLimit> &limits, const Part &part, CurrentKind current) const
    {
        std::map<std::pair<double, std::optional<CurrentKind>>, std::vector<const Rating *>> peaks;
        for (const Rating *rating : ratingsOf(part))
            if (tellsCurrentLimit(*rating) && rating->basis == RatingBasis::Peak && rating->value &&
                rating->current.value_or(current) == current)
                peaks[{rating->duration ? rating->duration->si() : 0, rating->current}].push_back(
                    rating);
        for (auto &[key, all] : peaks) {
            const bool anyFresh = std::ranges::any_of(
                all, [&](const Rating *rating) { return !isStale(part, *rating); });
            const bool freshPaper = std::ranges::any_of(all, [&](const Rating *rating) {
                return !isStale(part, *rating) && isPaper(rating->evidence);
            });
            // stale papers hold a limit down until fresh ones are there
            if (anyFresh)
                std::erase_if(all, [&](const Rating *rating) {
                    return isStale(part, *rating) && (freshPaper || !isPaper(rating->evidence));
                });
            const bool anyPaper = std::ranges::any_of(
                all, [](const Rating *rating) { return isPaper(rating->evidence); });
            const auto settled = std::ranges::find_if(all, [&](const Rating *rating) {
                return rating->settled && (isPaper(rating->evidence) || !anyPaper);
            });
            if (settled != all.end())
                all = {*settled};
            for (const Rating *rating : all) {
                Given<Duration> lasts = notKnown<Duration>(
                    tr("duration of the peak current limit of %1").arg(part.name));
                if (rating->duration)
                    lasts = given(Duration::fromSi(rating->duration->si()), lasts.origin.name,
                                  rating->evidence, rating->source);
                limits.push_back(
                    {shared(part, m_in.rating<Current>(part, *rating)), rating->current, lasts});
            }
        }
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
        if (const Circuit *circuit = in.records().find(branch.circuit))
            checks.push_back(judgeBranchRatings(reader.read(branch, *circuit)));
    return checks;
}

} // namespace ohmwright
