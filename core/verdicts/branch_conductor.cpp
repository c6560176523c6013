// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/verdicts/branch_conductor.h"

#include "core/verdicts/derived.h"
#include "core/verdicts/wiring.h"

#include <QCoreApplication>
#include <QRegularExpression>

#include <algorithm>

namespace ohmwright {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("BranchConductor", text);
}

// The branch's own words are as printed on the cable.
Origin inWords(const Branch &branch, Origin told)
{
    told.evidence = Evidence::Nameplate;
    told.source = tr("“%1”, entered with the branch").arg(branch.conductor);
    return told;
}

Chosen<ConductorMaterial> materialOf(const BookInputs &in, const Branch &branch)
{
    auto told = in.choice<ConductorMaterial>("conductor.material", branch);
    if (told.value || in.has("conductor.material", branch))
        return told;
    const bool copper = branch.conductor.contains(QLatin1String("copper"), Qt::CaseInsensitive);
    const bool aluminium =
        branch.conductor.contains(QLatin1String("aluminium"), Qt::CaseInsensitive) ||
        branch.conductor.contains(QLatin1String("aluminum"), Qt::CaseInsensitive);
    if (copper == aluminium)
        return told;
    return {copper ? ConductorMaterial::Copper : ConductorMaterial::Aluminium,
            inWords(branch, told.origin)};
}

// What the cable itself tells, where it is in the book as a part: the lowest of them.
std::optional<Given<Temperature>> ofTheCable(const BookInputs &in, const Branch &branch)
{
    std::optional<Given<Temperature>> lowest;
    for (const Part *part : wiringOf(in).on(branch)) {
        if (part->kind != PartKind::Hardware || part->role)
            continue;
        const Given<Temperature> one = in.rating<Temperature>(
            *part, {RatedQuantity::Temperature, RatingKind::Limit, RatingBasis::Continuous, {}});
        if (one.value && (!lowest || *one.value < *lowest->value))
            lowest = one;
    }
    return lowest;
}

// "… 125 °C": the last temperature in the words.
Given<Temperature> insulationOf(const BookInputs &in, const Branch &branch)
{
    Given<Temperature> told = in.figure<Temperature>("conductor.insulation", branch);
    if (in.has("conductor.insulation", branch))
        return told;
    static const QRegularExpression degrees(QStringLiteral("(\\d+)\\s*°\\s*C"));
    auto found = degrees.globalMatch(branch.conductor);
    while (found.hasNext()) {
        told.value = celsius(found.next().captured(1).toDouble());
        told.origin = inWords(branch, told.origin);
    }
    return told.value ? told : ofTheCable(in, branch).value_or(told);
}

Chosen<Installation> installationOf(const BookInputs &in, const Branch &branch)
{
    auto told = in.choice<Installation>("conductor.installation", branch);
    if (!in.has("conductor.installation", branch)) {
        told.value = Installation::InConduit;
        told.origin.evidence = Evidence::Assumed;
        told.origin.source = tr("the worst there is a table for, unless it is told");
    }
    return told;
}

} // namespace

bool hasConductor(const BookInputs &in, const Branch &branch)
{
    return branch.conductorSize || branch.conductorLength || !branch.conductor.isEmpty() ||
           in.has("conductor.maker_current", branch);
}

AmpacityConditions ampacityConditions(const BookInputs &in, const Branch &branch)
{
    AmpacityConditions conditions;
    conditions.material = materialOf(in, branch);
    conditions.area = in.field<Area>(branch, &Branch::conductorSize, "conductor_size",
                                     tr("size of the conductor of %1").arg(branch.name),
                                     Evidence::Nameplate, tr("entered with the branch"));
    conditions.ambient = in.figureOr(celsius(50),
                                     tr("common practice, no published source: under a vehicle in "
                                        "summer"),
                                     "conductor.ambient", branch);
    conditions.installation = installationOf(in, branch);
    conditions.bunched =
        in.figureOr(1.0, tr("it lies alone, unless it is told"), "conductor.bunched", branch);
    conditions.insulation = insulationOf(in, branch);
    return conditions;
}

AmpacityTable tableFor(const BookInputs &in, const Branch &branch,
                       const AmpacityConditions &conditions)
{
    const std::vector<AmpacityTable> tables = ampacityTables();
    const Installation installation =
        conditions.installation.value.value_or(Installation::InConduit);
    const Given<Current> maker = in.figure<Current>("conductor.maker_current", branch);
    if (maker.value && conditions.area.value && conditions.insulation.value) {
        AmpacityTable own = tables.front(); // its factors for bunching are everybody's
        own.name = maker.origin.source.isEmpty()
                       ? tr("current of the cable's maker, %1").arg(wordOf(maker.origin.evidence))
                       : tr("current of the cable's maker, %1: %2")
                             .arg(wordOf(maker.origin.evidence), maker.origin.source);
        own.material = conditions.material.value.value_or(ConductorMaterial::Copper);
        own.installation = installation;
        own.conductor = *conditions.insulation.value;
        own.hottest = *conditions.insulation.value;
        own.rows = {{*conditions.area.value, *maker.value}};
        return own;
    }
    // of those for how it lies, the one that asks most of the insulation it has
    const AmpacityTable *best = nullptr;
    for (const AmpacityTable &table : tables) {
        const bool stands =
            !conditions.insulation.value || table.conductor <= *conditions.insulation.value;
        if (table.installation == installation && stands &&
            (!best || best->conductor < table.conductor))
            best = &table;
    }
    return best ? *best : tables.front(); // the check says why it does not apply
}

Chosen<ConductorClass> strandsOf(const BookInputs &in, const Branch &branch)
{
    auto told = in.choice<ConductorClass>("conductor.strands", branch);
    if (told.value || in.has("conductor.strands", branch))
        return told;
    static const QRegularExpression word(QStringLiteral("class\\s*([256])"),
                                         QRegularExpression::CaseInsensitiveOption);
    const QString number = word.match(branch.conductor).captured(1);
    if (number.isEmpty())
        return told;
    Origin origin = inWords(branch, told.origin);
    if (number == QLatin1String("6")) // IEC 60228 gives both the same resistance
        origin.source += tr("; class 6 has the resistance of class 5");
    return {number == QLatin1String("2") ? ConductorClass::Stranded : ConductorClass::Flexible,
            origin};
}

Given<Length> runOf(const BookInputs &in, const Branch &branch)
{
    const Given<Length> told = in.figure<Length>("conductor.run", branch);
    if (in.has("conductor.run", branch))
        return told;
    const Given<Length> oneWay =
        in.field<Length>(branch, &Branch::conductorLength, "conductor_length",
                         tr("length of the conductor of %1").arg(branch.name), Evidence::Measured,
                         tr("entered with the branch"));
    Origin origin = told.origin;
    origin.source = tr("twice the length of the branch");
    return derived(
        origin, [](Length l) { return l * 2; }, oneWay);
}

Given<Current> capacityOf(const BookInputs &in, const Branch &branch)
{
    const AmpacityConditions conditions = ampacityConditions(in, branch);
    const AmpacityTable table = tableFor(in, branch, conditions);
    Worksheet aside(QStringLiteral("conductor"), {}, Protects::Electronics);
    const std::optional<Current> capacity = takeAmpacity(aside, conditions, table);
    const Check worked = aside.finish(table.name);
    Given<Current> result{
        capacity, called(tr("current the cable of %1 carries").arg(branch.name), table.name)};
    if (capacity) {
        result.origin.evidence = worked.weakest.value_or(Evidence::Datasheet);
        result.origin.field = in.originOf("conductor.maker_current", branch).field;
        return result;
    }
    for (const CheckInput &input : worked.inputs)
        if (input.shown.isEmpty()) {
            result.origin = input.origin; // what is missing, and where it goes
            return result;
        }
    result.origin.field =
        in.originOf("conductor.maker_current", branch).field; // no table answers: its maker must
    return result;
}

Given<Temperature> shortTimeOf(const BookInputs &in, const Branch &branch)
{
    const Given<Temperature> insulation = insulationOf(in, branch);
    if (!insulation.value || in.has("conductor.short_time", branch))
        return in.figure<Temperature>("conductor.short_time", branch);
    // what stands 90 °C for good is cross-linked or better
    const bool crossLinked = *insulation.value >= celsius(90);
    return in.figureOr(crossLinked ? celsius(250) : celsius(160),
                       crossLinked ? tr("IEC 60364-4-43, table 43A: cross-linked, 250 °C")
                                   : tr("IEC 60364-4-43, table 43A: PVC, 160 °C"),
                       "conductor.short_time", branch);
}

Given<Resistance> hotResistanceOf(const BookInputs &in, const Branch &branch)
{
    const AmpacityConditions conditions = ampacityConditions(in, branch);
    const Chosen<ConductorClass> strands = strandsOf(in, branch);
    const Given<ConductorMaterial> material{conditions.material.value, conditions.material.origin};
    const Given<ConductorClass> kind{strands.value, strands.origin};
    const QString name = tr("resistance of the cable, hot");
    const auto found = derived(
        called(name),
        [](ConductorMaterial m, ConductorClass c, Area s, Length l, Temperature hot) {
            const auto cold = conductorResistance(m, c, s, l);
            return cold ? std::optional(atTemperature(cold->at20, m, hot)) : std::nullopt;
        },
        material, kind, conditions.area, runOf(in, branch), conditions.insulation);
    Given<Resistance> result{found.value.value_or(std::nullopt), found.origin};
    if (found.value && !*found.value) // no table has it: the whole loop has to be told
        result.origin.field = in.originOf("fault.greatest_loop", branch).field;
    return result;
}

} // namespace ohmwright
