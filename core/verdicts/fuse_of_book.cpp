// SPDX-License-Identifier: GPL-3.0-or-later
// Fuses out of a book: of each branch of a direct-current circuit and of each other one with a
// fuse, but those of 12 V circuits, which are judged with their loads.
//
// A branch without a fuse of its own names the fuse further up that protects it; each cable is then
// held to it. Where none is named the check asks for it: a pack melts what no fuse guards.
//
// The strongest fault is a full, warm pack shorted at the fuse: three quarters of its resistance as
// measured, unless told. The weakest an empty pack with its worst module's resistance, shorted at
// the far end of the hot cable. How long the fuse then takes is read off its maker's curve and
// entered. A peak up to what is left of the rating melts nothing. Assumed unless told otherwise: a
// tenth of the rating lost where it is warm.
#include "core/checks/fuse.h"
#include "core/checks/missing_fuse.h"
#include "core/verdicts/branch_conductor.h"
#include "core/verdicts/cell_facts.h"
#include "core/verdicts/derived.h"
#include "core/verdicts/electrical_checks_of_book.h"
#include "core/verdicts/link_facts.h"

#include <QCoreApplication>

namespace ohmwright {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("FuseOfBook", text);
}

// Of the resistance measured at room temperature, what a warm and full pack may have left.
constexpr double kWarm = 0.75;

enum class FuseRange { Full, Partial };

} // namespace

template <>
struct EnumWords<FuseRange>
{
    static constexpr std::array words{"full range", "partial range"};
};

namespace {

class FuseReader
{
public:
    explicit FuseReader(const BookInputs &in)
        : m_in(in), m_pack(packFacts(in)), m_cells(cellFacts(in))
    {}

    [[nodiscard]] FuseInputs read(const Branch &branch, const Circuit &circuit) const
    {
        FuseInputs inputs;
        inputs.branch = branch.key;
        inputs.current = circuit.current;
        readFuse(inputs, branch, m_in.records().find(branch.fuse));
        WorstVoltage worst = worstVoltage(m_in, circuit);
        inputs.worstVoltage = std::move(worst.known);
        inputs.missing = std::move(worst.missing);
        inputs.continuous = continuousCurrentOf(m_in, branch);
        readPeak(inputs, branch);
        readFaults(inputs, branch, circuit);
        const AmpacityConditions conditions = ampacityConditions(m_in, branch);
        inputs.cableCapacity = capacityOf(m_in, branch);
        inputs.material = conditions.material;
        inputs.area = conditions.area;
        inputs.insulation = conditions.insulation;
        inputs.shortTime = shortTimeOf(m_in, branch);
        m_in.hold(inputs.clearing);
        return inputs;
    }

    [[nodiscard]] MissingFuseInputs readMissing(const Branch &branch) const
    {
        MissingFuseInputs inputs;
        inputs.branch = branch.key;
        inputs.name = branch.name;
        inputs.fuse = called(
            tr("fuse of %1, or the one further up that protects it").arg(branch.name), {},
            print(FieldAddress{RecordTraits<Branch>::table, branch.key, QStringLiteral("fuse")}));
        inputs.continuous = continuousCurrentOf(m_in, branch);
        inputs.cableCapacity = capacityOf(m_in, branch);
        return inputs;
    }

private:
    static FigureName limit(RatedQuantity quantity, std::optional<CurrentKind> kind)
    {
        return {quantity, RatingKind::Limit, RatingBasis::Continuous, kind};
    }

    void readFuse(FuseInputs &inputs, const Branch &branch, const Part *fuse) const
    {
        const Given<Current> entered = m_in.field<Current>(
            branch, &Branch::fuseRating, "fuse_rating", tr("fuse of %1").arg(branch.name),
            Evidence::Assumed, tr("entered with the branch"));
        inputs.rating = entered;
        if (!fuse) { // without the part its papers have no place: that is what has to be told
            Origin missing;
            missing.field = print(
                FieldAddress{RecordTraits<Branch>::table, branch.key, QStringLiteral("fuse")});
            missing.name = tr("voltage rating of the fuse of %1").arg(branch.name);
            inputs.voltage = {{{std::nullopt, missing}, inputs.current}};
            missing.name = tr("breaking capacity of the fuse of %1").arg(branch.name);
            inputs.breaking = {std::nullopt, missing};
            missing.name =
                tr("part of the rating left at the place of the fuse of %1").arg(branch.name);
            missing.source = warm();
            inputs.temperatureFactor = {0.9, missing};
            return;
        }
        for (const std::optional<CurrentKind> kind :
             {std::optional(inputs.current), std::optional<CurrentKind>()}) {
            const Given<Current> rated =
                m_in.rating<Current>(*fuse, limit(RatedQuantity::Current, kind));
            if (rated.value) {
                inputs.rating = rated;
                break;
            }
        }
        for (const CurrentKind kind : {CurrentKind::Dc, CurrentKind::Ac})
            inputs.voltage.push_back(
                {m_in.rating<Voltage>(*fuse, limit(RatedQuantity::Voltage, kind)), kind});
        inputs.breaking =
            m_in.rating<Current>(*fuse, limit(RatedQuantity::BreakingCapacity, std::nullopt));
        if (!inputs.breaking.value) { // where it is told for one kind of current only
            const Given<Current> ofKind =
                m_in.rating<Current>(*fuse, limit(RatedQuantity::BreakingCapacity, inputs.current));
            if (ofKind.value)
                inputs.breaking = ofKind;
        }
        // one that is not said to break everything has a least current it breaks
        const std::optional<FuseRange> range = m_in.choice<FuseRange>("fuse.range", *fuse).value;
        if (range != FuseRange::Full)
            inputs.leastBreaking = m_in.figure<Current>("fuse.least_breaking", *fuse);
        inputs.isPartialRange = range == FuseRange::Partial;
        inputs.cannotBeOverloaded = m_in.yesNo("branch.cannot_overload", branch) == true;
        readConventional(inputs, *fuse, range == FuseRange::Full);
        inputs.temperatureFactor = m_in.figureOr(0.9, warm(), "fuse.temperature_factor", *fuse);
        inputs.loadShare = m_in.figureOr(*inputs.loadShare.value, inputs.loadShare.origin.source,
                                         "fuse.load_share", *fuse);
        if (inputs.loadShare.origin.source.isEmpty())
            inputs.loadShare.origin.source = inputs.loadShare.origin.name;
    }

    // A full-range fuse opens for certain within the hour at 1.6 times its rating if it is a gG one
    // of IEC 60269, from memory; its maker may promise less.
    void readConventional(FuseInputs &inputs, const Part &fuse, bool isFullRange) const
    {
        constexpr double kGeneral = 1.6;
        const Given<Current> told = m_in.figure<Current>("fuse.conventional_current", fuse);
        if (m_in.has("fuse.conventional_current", fuse)) {
            inputs.conventional = told;
        } else if (isFullRange && inputs.rating.value) {
            Origin origin = told.origin;
            origin.evidence = Evidence::Assumed;
            origin.source = tr("1.6 times its rating, as a gG fuse of IEC 60269");
            inputs.conventional = {*inputs.rating.value * kGeneral, origin};
        }
    }

    static QString warm()
    {
        return tr("a tenth less where it is warm: common practice, no "
                  "published source");
    }

    void readPeak(FuseInputs &inputs, const Branch &branch) const
    {
        const std::optional<BranchPeak> peak = peakOf(m_in, branch);
        const bool melts = peak && !(inputs.rating.value && inputs.temperatureFactor.value &&
                                     *peak->current.value <=
                                         *inputs.rating.value * *inputs.temperatureFactor.value);
        if (!melts)
            return;
        Given<Duration> melting = m_in.figure<Duration>("fuse.melting", branch);
        if (!peak->isEntered) { // that time is told at the peak as entered, which is less
            melting.value.reset();
            melting.origin.name =
                tr("%1 (it takes %2)").arg(melting.origin.name, show(*peak->current.value, u"A"));
            melting.origin.field = peak->current.origin.field;
        }
        inputs.peaks.push_back({tr("peak"), peak->current, peak->lasts, melting});
    }

    void readFaults(FuseInputs &inputs, const Branch &branch, const Circuit &circuit) const
    {
        const bool onPack = m_pack.circuit == &circuit;
        Given<Resistance> near = m_in.figure<Resistance>("fault.least_loop", branch);
        Given<Resistance> far = m_in.figure<Resistance>("fault.greatest_loop", branch);
        if (onPack && !m_in.has("fault.least_loop", branch)) {
            near.origin.source = tr("three quarters of the modules as measured, for warm ones: "
                                    "common practice, no published source");
            near = derived(
                near.origin, [](Resistance r) { return r * kWarm; }, m_cells.pack);
            near.origin.evidence = Evidence::Assumed;
        }
        if (onPack && !m_in.has("fault.greatest_loop", branch)) {
            far.origin.source = tr("of the pack at its worst and the hot cable");
            far = derived(
                far.origin,
                [](Resistance module, double series, double parallel, Resistance cable) {
                    return module * (series / parallel) + cable;
                },
                m_cells.worstModule, m_pack.modulesInSeries, m_pack.modulesInParallel,
                hotResistanceOf(m_in, branch));
            if (far.value && m_cells.joints && m_cells.joints->value)
                *far.value += *m_cells.joints->value;
        }
        inputs.faults = {{tr("full pack, at the fuse"), highestVoltage(m_in, circuit, m_pack), near,
                          m_in.figure<Duration>("fault.clearing_near", branch)},
                         {tr("empty pack, at the far end"), lowestVoltage(m_in, circuit, m_pack),
                          far, m_in.figure<Duration>("fault.clearing_far", branch)}};
        if (!onPack) {
            inputs.faults[0].name = tr("at the fuse");
            inputs.faults[1].name = tr("at the far end");
        }
    }

    const BookInputs &m_in;
    PackFacts m_pack;
    const CellFacts &m_cells;
};

} // namespace

std::vector<Check> judgeFuseOfBook(const BookInputs &in)
{
    std::vector<Check> checks;
    const FuseReader reader(in);
    for (const Branch &branch : in.records().all<Branch>()) {
        const Circuit *circuit = in.records().find(branch.circuit);
        if (!circuit || !in.isAsked(branch.key) || circuit->kind == CircuitKind::LowVoltage)
            continue;
        const bool isTold = branch.fuse || branch.fuseRating;
        const bool hasToBe = circuit->current == CurrentKind::Dc &&
                             (hasConductor(in, branch) || branch.continuousCurrent ||
                              !wiringOf(in).on(branch).empty());
        if (!isTold && !hasToBe)
            continue;
        Check check = isTold ? judgeFuse(reader.read(branch, *circuit))
                             : judgeMissingFuse(reader.readMissing(branch));
        addToTitle(check, branch.name);
        checks.push_back(std::move(check));
    }
    return checks;
}

} // namespace ohmwright
