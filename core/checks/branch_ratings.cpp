// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/branch_ratings.h"

#include "core/checks/worksheet.h"

#include <QCoreApplication>

#include <algorithm>
#include <limits>

namespace ohmwright {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("BranchRatings", text);
}

constexpr double kForever = std::numeric_limits<double>::infinity();

struct Demand
{
    QString name;
    Current current;
    double seconds = kForever;
    const CurrentDemand *told = nullptr;
};

struct Limit
{
    Current current;
    double seconds = kForever;
    Origin from; // of the current; and of how long it is taken
    std::optional<Origin> lasts = {};
};

// What is known of one part, and what is recorded with a gap.
struct PartLimits
{
    QString path;
    std::vector<Limit> known;
    std::vector<const CurrentLimit *> gaps; // of peaks
    QString continuousField, peakField;     // where one that is missing can be filled in
};

// A demand held to a limit, or what would have to be known to do so.
struct Held
{
    QString path;
    const Demand *demand = nullptr;
    Limit limit;
    [[nodiscard]] double margin() const { return 1 - demand->current / limit.current; }
};

QString spokenTime(double seconds)
{
    return seconds == kForever ? tr("continuous") : tr("for %1").arg(showSi(seconds, u"s"));
}

std::vector<Demand> takeDemands(Worksheet &sheet, const std::vector<CurrentDemand> &demands)
{
    std::vector<Demand> taken;
    for (const CurrentDemand &demand : demands) {
        const Current current = sheet.take(demand.current, demand.lasts ? u"Î" : u"I", u"A", 0);
        double seconds = kForever;
        if (demand.lasts)
            seconds = sheet.take(*demand.lasts, u"t", u"s", 1e-6).si();
        if (current.si() > 0 && seconds > 0)
            taken.push_back({demand.name, current, seconds, &demand});
    }
    return taken;
}

void nameIfEmpty(Origin &origin, const QString &name, const QString &path)
{
    if (origin.name.isEmpty())
        origin.name = name;
    if (origin.path.isEmpty())
        origin.path = path;
}

PartLimits takeLimits(Worksheet &sheet, const QString &path, const Assembly<CurrentLimit> &part,
                      CurrentKind kind)
{
    PartLimits limits;
    limits.path = path;
    for (const CurrentLimit &recorded : part.limits) {
        if (recorded.kind.value_or(kind) != kind)
            continue;
        QString &field = recorded.lasts ? limits.peakField : limits.continuousField;
        if (field.isEmpty())
            field = recorded.current.origin.field;
        if (!recorded.current.value || (recorded.lasts && !recorded.lasts->value)) {
            // what is not known for hours is no more than what is known for moments
            if (recorded.lasts)
                limits.gaps.push_back(&recorded);
            continue;
        }
        Given<Current> current = recorded.current;
        nameIfEmpty(current.origin,
                    recorded.lasts ? tr("peak current limit of %1").arg(path)
                                   : tr("continuous current limit of %1").arg(path),
                    path);
        const Current most = sheet.take(current, recorded.lasts ? u"Îₘ" : u"Iₘ", u"A", 1e-6);
        double seconds = kForever;
        std::optional<Origin> lastsFrom;
        if (recorded.lasts) {
            Given<Duration> lasts = *recorded.lasts;
            nameIfEmpty(lasts.origin, tr("duration of the peak current limit of %1").arg(path),
                        path);
            seconds = sheet.take(lasts, u"tₘ", u"s", 1e-6).si();
            lastsFrom = lasts.origin;
        }
        if (most.si() > 0 && seconds > 0)
            limits.known.push_back({most, seconds, current.origin, lastsFrom});
    }
    return limits;
}

// Of the limits for one duration the safer counts; what is left falls with the duration only if
// the papers make sense, so a longer limit that is higher also answers for shorter times.
std::vector<Limit> saferOfEachDuration(std::vector<Limit> limits)
{
    std::sort(limits.begin(), limits.end(), [](const Limit &a, const Limit &b) {
        return a.seconds != b.seconds ? a.seconds < b.seconds : a.current < b.current;
    });
    limits.erase(std::unique(limits.begin(), limits.end(),
                             [](const Limit &a, const Limit &b) { return a.seconds == b.seconds; }),
                 limits.end());
    return limits;
}

const Limit *highestAnswering(const std::vector<Limit> &limits, const Demand &demand)
{
    const Limit *highest = nullptr;
    for (const Limit &limit : limits) {
        if (limit.seconds >= demand.seconds && (!highest || highest->current < limit.current))
            highest = &limit;
    }
    return highest;
}

const Limit *lowestOutlasted(const std::vector<Limit> &limits, const Demand &demand)
{
    const Limit *lowest = nullptr;
    for (const Limit &limit : limits) {
        if (limit.seconds < demand.seconds && (!lowest || limit.current < lowest->current))
            lowest = &limit;
    }
    return lowest;
}

void needToKnow(Worksheet &sheet, const QString &name, const QString &path, const QString &field)
{
    Given<Current> missing;
    missing.origin.name = name;
    missing.origin.path = path;
    missing.origin.field = field;
    sheet.take(missing, u"Iₘ", u"A");
}

// The limit the demand is held to; none, and what is missing named, when no limit decides.
std::optional<Limit> decide(Worksheet &sheet, const PartLimits &part, const Demand &demand)
{
    const bool peak = demand.seconds != kForever;
    const std::vector<Limit> limits = saferOfEachDuration(part.known);
    const Limit *answering = highestAnswering(limits, demand);
    if (answering && demand.current <= answering->current)
        return *answering;
    const Limit *outlasted = lowestOutlasted(limits, demand);
    if (outlasted && demand.current > outlasted->current && (peak || !answering))
        return *outlasted; // beyond even what it takes for a shorter time
    const bool anyPeak = std::any_of(limits.begin(), limits.end(),
                                     [](const Limit &limit) { return limit.seconds != kForever; });
    if (answering && (!peak || (anyPeak && part.gaps.empty())))
        return *answering;
    needToKnow(sheet,
               peak ? tr("peak current limit of %1 for at least %2")
                          .arg(part.path, showSi(demand.seconds, u"s"))
                    : tr("continuous current limit of %1").arg(part.path),
               part.path, peak ? part.peakField : part.continuousField);
    return std::nullopt;
}

} // namespace

Check judgeBranchRatings(const BranchRatingsInputs &inputs)
{
    Worksheet sheet(QStringLiteral("branch_ratings"), tr("Current ratings: %1").arg(inputs.name),
                    Protects::Electronics);
    sheet.about(inputs.branch);
    sheet.caution(QStringLiteral("battery"));
    sheet.afterwards(tr("Then measure the current, and feel for warm joints after switching off "
                        "and proving there is no voltage."));
    const QString source = tr("A limit holds for its duration and anything shorter: common "
                              "practice, no published source");

    const std::vector<Demand> demands = takeDemands(sheet, inputs.demands);
    std::vector<PartLimits> parts;
    visitAll(inputs.parts, [&](const QString &path, const Assembly<CurrentLimit> &part) {
        if (part.isLive)
            parts.push_back(takeLimits(sheet, path, part, inputs.current));
    });
    if (inputs.demands.empty())
        sheet.doubt(tr("It is not said what current the branch carries."));
    if (parts.empty())
        sheet.doubt(tr("No part of the branch is listed."));

    std::vector<Held> all;
    for (const PartLimits &part : parts) {
        for (const Demand &demand : demands) {
            if (const std::optional<Limit> limit = decide(sheet, part, demand))
                all.push_back({part.path, &demand, *limit});
        }
    }
    std::stable_sort(all.begin(), all.end(),
                     [](const Held &a, const Held &b) { return a.margin() < b.margin(); });
    Verdict decided = Verdict::Holds;
    for (const Held &held : all) {
        sheet.restsOn(held.demand->told->current, held.limit.from, held.demand->told->lasts,
                      held.limit.lasts);
        const Verdict verdict = sheet.atMost(tr("%1: %2").arg(held.path, held.demand->name),
                                             held.demand->current, held.limit.current, u"A",
                                             tr("%1 of %2, %3")
                                                 .arg(spokenOf(held.limit.from.evidence), held.path,
                                                      spokenTime(held.limit.seconds)));
        decided = std::max(decided, verdict);
    }
    if (!all.empty()) {
        const Held &worst = all.front();
        sheet.stepText(tr("deciding part"), QStringLiteral("I ≤ Iₘ"),
                       tr("%1, %2").arg(worst.demand->name, spokenTime(worst.demand->seconds)),
                       worst.path);
        if (decided != Verdict::Holds)
            sheet.turnedBy(tr("Less current, or %1 replaced by one for at least %2 %3.")
                               .arg(worst.path,
                                    show(limitThatTurns(worst.demand->current, decided), u"A"),
                                    spokenTime(worst.demand->seconds)));
        sheet.result(tr("%1 decides: %2 asked %3, %4 allowed %5")
                         .arg(worst.path, show(worst.demand->current, u"A"),
                              spokenTime(worst.demand->seconds), show(worst.limit.current, u"A"),
                              spokenTime(worst.limit.seconds)));
    }
    return sheet.finish(source);
}

} // namespace ohmwright
