// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/axle_loads.h"

#include "core/checks/taken.h"

#include <QCoreApplication>

#include <cmath>

namespace ohmwright {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("AxleLoads", text);
}

struct TakenMass
{
    MassMove move = MassMove::In;
    std::optional<Mass> mass; // negative when taken out
    std::optional<Length> place;
    std::optional<Length> height;
    bool heightKnown = false;
};

struct Known
{
    std::optional<Length> wheelbase;
    std::optional<AxleMasses> before, weighed;
    std::vector<TakenMass> moved;
};

std::optional<AxleMasses> takeAxles(Worksheet &sheet, const Given<Mass> &front,
                                    const Given<Mass> &rear, QStringView frontSymbol,
                                    QStringView rearSymbol)
{
    const auto frontMass = taken(sheet, front, frontSymbol, u"kg", 1, 1e5);
    const auto rearMass = taken(sheet, rear, rearSymbol, u"kg", 1, 1e5);
    if (!frontMass || !rearMass)
        return std::nullopt;
    return AxleMasses{*frontMass, *rearMass};
}

// Weighed after, what came out and went in is on the scales already and only told.
bool counts(const TakenMass &mass, bool weighed)
{
    return mass.move == MassMove::Load || !weighed;
}

Known takeAll(Worksheet &sheet, const AxleLoadsInputs &inputs)
{
    Known known;
    known.wheelbase = taken(sheet, inputs.wheelbase, u"L", u"m", 0.5, 15);
    const bool asksWeighed = inputs.frontWeighed || inputs.rearWeighed;
    if (asksWeighed) {
        const Given<Mass> missing = notKnown<Mass>(tr("weighed mass of the other axle"));
        known.weighed = takeAxles(sheet, inputs.frontWeighed.value_or(missing),
                                  inputs.rearWeighed.value_or(missing), u"m_fw", u"m_rw");
    }
    if (!known.weighed || (inputs.frontBefore.value && inputs.rearBefore.value))
        known.before = takeAxles(sheet, inputs.frontBefore, inputs.rearBefore, u"m_f", u"m_r");
    for (const MovedMass &moved : inputs.moved) {
        TakenMass one;
        one.move = moved.move;
        const bool needed = counts(one, known.weighed.has_value());
        if (needed || (moved.mass.value && moved.place.value)) {
            one.mass = taken(sheet, moved.mass, u"m", u"kg", 0, 1e5);
            one.place = taken(sheet, moved.place, u"x", u"m", -5, 20);
        }
        if (one.mass && moved.move == MassMove::Out)
            one.mass = -*one.mass;
        if (moved.height && inputs.heightBefore && !inputs.heightAfter) {
            one.height = taken(sheet, *moved.height, u"z", u"m", 0, 5);
            one.heightKnown = one.height.has_value();
        }
        known.moved.push_back(one);
    }
    return known;
}

struct States
{
    std::optional<AxleMasses> computed; // unladen
    std::optional<AxleMasses> unladen;  // that counts
    std::optional<AxleMasses> laden;
    std::optional<Mass> leastLaden; // whatever places are: only additions are missing
};

States statesOf(const Known &known)
{
    States states;
    bool missingOut = false;
    Mass total;
    if (known.weighed)
        total = known.weighed->total();
    else if (known.before)
        total = known.before->total();
    else
        return states;
    states.computed = known.before;
    std::optional<AxleMasses> laden;
    if (!known.wheelbase)
        states.computed.reset();
    for (const TakenMass &moved : known.moved) {
        if (counts(moved, known.weighed.has_value())) {
            missingOut = missingOut || (!moved.mass && moved.move == MassMove::Out);
            total += moved.mass.value_or(Mass());
        }
        if (moved.move == MassMove::Load)
            continue;
        if (states.computed && moved.mass && moved.place)
            states.computed =
                withMass(*states.computed, *moved.mass, *moved.place, *known.wheelbase);
        else
            states.computed.reset();
    }
    if (!missingOut)
        states.leastLaden = total;
    states.unladen = known.weighed ? known.weighed : states.computed;
    laden = states.unladen;
    for (const TakenMass &moved : known.moved) {
        if (moved.move != MassMove::Load || !laden)
            continue;
        if (moved.mass && moved.place && known.wheelbase)
            laden = withMass(*laden, *moved.mass, *moved.place, *known.wheelbase);
        else
            laden.reset();
    }
    states.laden = laden;
    return states;
}

void tell(Worksheet &sheet, const QString &state, const AxleMasses &axles,
          std::optional<Length> wheelbase, const QString &formula)
{
    const QString worked =
        tr("front %1, rear %2").arg(show(axles.front, u"kg"), show(axles.rear, u"kg"));
    sheet.step(tr("front axle, %1").arg(state), formula, worked, axles.front, u"kg");
    sheet.step(tr("rear axle, %1").arg(state), formula, worked, axles.rear, u"kg");
    if (wheelbase && axles.total().si() > 0)
        sheet.step(tr("centre of gravity behind the front axle, %1").arg(state),
                   QStringLiteral("a1 = L·m_r/(m_f + m_r)"),
                   QString(show(*wheelbase, u"m") + QStringLiteral(" · ") +
                           show(axles.rear, u"kg") + QStringLiteral(" / ") +
                           show(axles.total(), u"kg")),
                   centreOfGravity(axles, *wheelbase), u"m");
}

void judgeAxle(Worksheet &sheet, const QString &axle, QChar index, std::optional<Mass> load,
               const Given<Mass> &plate, const AxleLoadsInputs::AxleTyres &tyres,
               const std::vector<const Origin *> &loadFrom)
{
    const auto permitted =
        taken(sheet, plate, QString(QStringLiteral("m_p") + index), u"kg", 1, 1e5);
    const auto tyre =
        taken(sheet, tyres.load, QString(QStringLiteral("m_t") + index), u"kg", 1, 1e5);
    constexpr double kTwo = 2, kTwins = 4;
    const auto count =
        tyres.count ? taken(sheet, *tyres.count, u"n", u"", kTwo, kTwins) : std::optional(kTwo);
    if (count && *count != kTwo && *count != kTwins)
        sheet.refuse(tr("An axle has two tyres or four."));
    const QString remedy =
        tr("Heavy things further from the %1, or less in the vehicle.").arg(axle);
    if (load && permitted) {
        sheet.restsOn(plate, loadFrom);
        if (sheet.atMost(tr("%1, laden").arg(axle), *load, *permitted, u"kg", plate.origin.name) !=
            Verdict::Holds)
            sheet.turnedBy(remedy);
    }
    if (load && tyre && count)
        sheet.restsOn(tyres.load, tyres.count, loadFrom);
    if (load && tyre && count &&
        sheet.atMost(tr("each tyre of the %1, laden").arg(axle), *load / *count, *tyre, u"kg",
                     tyres.load.origin.name) != Verdict::Holds)
        sheet.turnedBy(tr("Tyres of a higher load index on the %1.").arg(axle));
}

void tellHeight(Worksheet &sheet, const AxleLoadsInputs &inputs, const Known &known)
{
    if (inputs.heightAfter) {
        const auto height = taken(sheet, *inputs.heightAfter, u"h", u"m", 0.05, 5);
        if (height)
            sheet.step(tr("height of the centre of gravity, unladen"), QStringLiteral("h"),
                       tr("measured after"), *height, u"m");
        return;
    }
    if (!inputs.heightBefore)
        return;
    const auto before = taken(sheet, *inputs.heightBefore, u"h", u"m", 0.05, 5);
    if (!before || !known.before)
        return;
    auto moment = known.before->total() * *before;
    Mass total = known.before->total();
    for (const TakenMass &moved : known.moved) {
        if (moved.move == MassMove::Load)
            continue;
        if (!moved.mass || !moved.heightKnown)
            return; // one height missing, nothing to carry on
        moment += *moved.mass * *moved.height;
        total += *moved.mass;
    }
    if (total.si() <= 0)
        return;
    sheet.step(tr("height of the centre of gravity, unladen"),
               QStringLiteral("h' = (m·h ± Σ m·z)/m'"),
               tr("from %1 before").arg(show(*before, u"m")), moment / total, u"m");
}

// What the laden masses rest on: the things that weigh most first.
std::vector<const Origin *> massesFrom(const AxleLoadsInputs &inputs, bool places)
{
    std::vector<const MovedMass *> moved;
    const bool weighed = inputs.frontWeighed && inputs.rearWeighed;
    for (const MovedMass &one : inputs.moved)
        if (one.move == MassMove::Load || !weighed)
            moved.push_back(&one);
    std::stable_sort(moved.begin(), moved.end(), [](const MovedMass *a, const MovedMass *b) {
        return b->mass.value.value_or(Mass()) < a->mass.value.value_or(Mass());
    });
    std::vector<const Origin *> from;
    if (weighed)
        from = {&inputs.frontWeighed->origin, &inputs.rearWeighed->origin};
    else
        from = {&inputs.frontBefore.origin, &inputs.rearBefore.origin};
    if (places)
        from.push_back(&inputs.wheelbase.origin);
    for (const MovedMass *one : moved) {
        from.push_back(&one->mass.origin);
        if (places)
            from.push_back(&one->place.origin);
    }
    return from;
}

Plot barsOf(const Known &known, const States &states)
{
    Plot plot;
    plot.title = tr("Axle loads before and after");
    plot.yName = tr("mass on the axle");
    plot.yUnit = QStringLiteral("kg");
    plot.barNames = {tr("front axle"), tr("rear axle")};
    const auto add = [&](const QString &name, const std::optional<AxleMasses> &axles) {
        if (axles)
            plot.series.push_back({name, {{0, axles->front.si()}, {1, axles->rear.si()}}, true});
    };
    add(tr("before"), known.before);
    add(tr("after"), states.unladen);
    add(tr("after, laden"), states.laden);
    return plot;
}

} // namespace

AxleMasses withMass(AxleMasses before, Mass mass, Length place, Length wheelbase)
{
    const Mass rear = mass * (place / wheelbase);
    return {before.front + mass - rear, before.rear + rear};
}

Length centreOfGravity(AxleMasses axles, Length wheelbase)
{
    return wheelbase * (axles.rear / axles.total());
}

Length heightByLifting(Mass shifted, Mass total, Length wheelbase, double angle, Length radius)
{
    return radius + wheelbase * (shifted / total / std::tan(angle));
}

Check judgeAxleLoads(const AxleLoadsInputs &inputs)
{
    Worksheet sheet(QStringLiteral("axle_loads"), tr("Axle loads and centre of gravity"),
                    Protects::Chassis);
    sheet.about(inputs.subject);
    sheet.caution(QStringLiteral("lifting"));
    sheet.afterwards(tr("Then weigh each axle, unladen and laden, on a calibrated scale: the "
                        "ticket counts, not this sum."));
    const QString source =
        tr("Equilibrium about the axles; Jazar, Vehicle Dynamics; Gillespie. Tyre load: UN "
           "Regulation 30 or 54, annex 4");

    const Known known = takeAll(sheet, inputs);
    const States states = statesOf(known);
    if (known.before)
        tell(sheet, tr("before"), *known.before, known.wheelbase, tr("weighed"));
    if (states.computed)
        tell(sheet, known.weighed ? tr("after, computed") : tr("after"), *states.computed,
             known.wheelbase, QStringLiteral("m_r' = m_r ± Σ m·x/L"));
    if (known.weighed)
        tell(sheet, tr("after"), *known.weighed, known.wheelbase, tr("weighed"));
    if (states.laden)
        tell(sheet, tr("laden"), *states.laden, known.wheelbase,
             QStringLiteral("m_r' = m_r + Σ m·x/L"));
    for (const auto &axles : {states.unladen, states.laden}) {
        if (axles && (axles->front.si() < 0 || axles->rear.si() < 0)) {
            sheet.refuse(tr("These masses at these places would lift an axle off the ground."));
            return sheet.finish(source);
        }
    }

    const std::vector<const Origin *> loadFrom = massesFrom(inputs, true);
    judgeAxle(sheet, tr("front axle"), u'f',
              states.laden ? std::optional(states.laden->front) : std::nullopt, inputs.frontPlate,
              inputs.frontTyres, loadFrom);
    judgeAxle(sheet, tr("rear axle"), u'r',
              states.laden ? std::optional(states.laden->rear) : std::nullopt, inputs.rearPlate,
              inputs.rearTyres, loadFrom);
    const auto gross = taken(sheet, inputs.grossPlate, u"m_g", u"kg", 1, 2e5);
    // with something still to be added, the sum so far can only fail
    if (gross && states.leastLaden && (states.laden || *gross < *states.leastLaden)) {
        sheet.restsOn(inputs.grossPlate, massesFrom(inputs, false));
        if (sheet.atMost(tr("whole vehicle, laden"), *states.leastLaden, *gross, u"kg",
                         inputs.grossPlate.origin.name) != Verdict::Holds)
            sheet.turnedBy(tr("Less mass in the vehicle, or a gross mass approved anew where the "
                              "law allows it."));
    }
    tellHeight(sheet, inputs, known);
    sheet.plot(barsOf(known, states));
    if (states.laden)
        sheet.result(tr("Laden %1 in front, %2 at the rear, %3 in all")
                         .arg(show(states.laden->front, u"kg"), show(states.laden->rear, u"kg"),
                              show(states.laden->total(), u"kg")));
    return sheet.finish(source);
}

} // namespace ohmwright
