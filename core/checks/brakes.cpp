// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/brakes.h"

#include "core/checks/taken.h"

#include <QCoreApplication>

namespace ohmwright {

namespace {

constexpr Acceleration kGravity = Acceleration::fromSi(9.80665);

QString tr(const char *text)
{
    return QCoreApplication::translate("Brakes", text);
}

struct Forces
{
    Force front, rear;
    [[nodiscard]] Force sum() const { return front + rear; }
    [[nodiscard]] double frontShare() const { return front / sum(); }
};

std::optional<Forces> takeForces(Worksheet &sheet, const BrakesInputs &in)
{
    const auto front = taken(sheet, in.frontForce, u"F_f", u"kN", 0);
    const auto rear = taken(sheet, in.rearForce, u"F_r", u"kN", 0);
    const auto pedal = taken(sheet, in.pedalForce, u"F_p", u"N", kAboveNothing);
    // less than allowed is what is wanted; only too much is held against it
    if (pedal && (*pedal > in.pedal.inForce() || in.pedal.isLoosened())) {
        sheet.restsOn(in.pedalForce);
        sheet.within(tr("force at the pedal"), *pedal, in.pedal, u"N");
        sheet.mendedBy(
            tr("More boost, or brakes of a heavier variant of the vehicle, approved for it."));
    }
    if (!front || !rear)
        return std::nullopt;
    if ((*front + *rear).si() <= 0) {
        sheet.refuse(tr("Brakes that give no force are none."));
        return std::nullopt;
    }
    return Forces{*front, *rear};
}

// The vehicle laden in one of the ways it drives.
struct Laden
{
    QString name;   // empty: as driven
    double atRest;  // share of its weight on the front axle, standing
    Length height;  // of its centre of gravity
    double braking; // with these forces, times gravity
};

QString named(const QString &what, const Laden &laden)
{
    return laden.name.isEmpty() ? what : tr("%1, %2").arg(what, laden.name);
}

void judgeBalance(Worksheet &sheet, const BrakesInputs &in, const Forces &forces,
                  const Laden &laden, Length wheelbase)
{
    const auto &[name, atRest, height, braking] = laden;
    const double front = forces.frontShare();
    if (name.isEmpty())
        sheet.step(
            tr("share of the front brakes"), QStringLiteral("F_f/(F_f + F_r)"),
            QString(show(forces.front, u"kN") + QStringLiteral(" / ") + show(forces.sum(), u"kN")),
            front, u"%");
    const double upTo = in.frontFirstTo.inForce();
    const auto ideal = [&](double z) {
        return frontShareBraking(atRest, height, wheelbase, z);
    };
    sheet.step(
        named(tr("share of the weight on the front axle, braking at %1 g").arg(show(upTo, u"")),
              laden),
        QStringLiteral("φ = (b + z·h)/L"),
        QString(show(atRest, u"%") + QStringLiteral(" + ") + show(upTo, u"") +
                QStringLiteral(" · ") + show(height, u"m") + QStringLiteral(" / ") +
                show(wheelbase, u"m")),
        ideal(upTo), u"%");
    // braking at which both axles would lock together: below it the front one locks first
    const double together = (front - atRest) * (wheelbase / height);
    sheet.step(named(tr("braking at which both axles lock together (times gravity)"), laden),
               QStringLiteral("z = (φ_F − b/L)·L/h"),
               QString(QLatin1Char('(') + show(front, u"%") + QStringLiteral(" − ") +
                       show(atRest, u"%") + QStringLiteral(") · ") + show(wheelbase, u"m") +
                       QStringLiteral(" / ") + show(height, u"m")),
               together, u"");
    const CarriedLoad *carried = name.isEmpty() || !in.carried ? nullptr : &*in.carried;
    const auto rest = [&] {
        sheet.restsOn(in.height, in.frontForce, in.rearForce, in.frontAxle, in.mass, in.wheelbase,
                      carried ? &carried->mass : nullptr, carried ? &carried->place : nullptr,
                      carried ? &carried->height : nullptr);
    };
    rest();
    sheet.within(named(tr("front axle locks first up to (times gravity)"), laden), together,
                 in.frontFirstTo, u"");
    sheet.mendedBy(
        tr("Mass moved forward or lower, or a limiting valve set anew by those who may."));

    const double loaded = ideal(braking);
    if (loaded >= 1) {
        sheet.doubt(tr("At this braking the rear wheels would leave the road."));
        return;
    }
    const double usedFront = front * braking / loaded;
    const double usedRear = (1 - front) * braking / (1 - loaded);
    sheet.step(named(tr("adhesion used by the front axle"), laden), QStringLiteral("f = F_f/N_f"),
               QString(show(front * braking, u"") + QStringLiteral(" / ") + show(loaded, u"")),
               usedFront, u"");
    sheet.step(
        named(tr("adhesion used by the rear axle"), laden), QStringLiteral("f = F_r/N_r"),
        QString(show((1 - front) * braking, u"") + QStringLiteral(" / ") + show(1 - loaded, u"")),
        usedRear, u"");
    if (braking >= 0.15 && mostAdhesionUsed(braking) <= 0.8) {
        rest();
        sheet.atMost(named(tr("adhesion used, the greater of the axles"), laden),
                     std::max(usedFront, usedRear), mostAdhesionUsed(braking), u"",
                     tr("UN R13-H, distribution of braking"));
        sheet.mendedBy(
            tr("Mass moved forward or lower, or a limiting valve set anew by those who may."));
    }
}

Acceleration judgeDeceleration(Worksheet &sheet, const BrakesInputs &in, const QString &state,
                               Mass mass, const Origin &massFrom, const Forces &forces)
{
    const Acceleration reached = forces.sum() / mass;
    sheet.step(tr("deceleration, %1").arg(state), QStringLiteral("a = (F_f + F_r)/m"),
               QString(show(forces.sum(), u"kN") + QStringLiteral(" / ") + show(mass, u"kg")),
               reached, u"m/s²");
    sheet.restsOn(in.frontForce, massFrom, in.rearForce);
    sheet.within(tr("deceleration, %1").arg(state), reached, in.deceleration, u"m/s²");
    sheet.mendedBy(
        tr("Less mass, or brakes of a heavier variant of the vehicle, approved for it."));
    return reached;
}

struct AsDriven
{
    Mass mass, front;
    Length height, wheelbase;
};

// R13-H holds for all states of load: without what is carried, and with as much more of it at its
// place as the approved mass allows.
void judgeOtherLoads(Worksheet &sheet, const BrakesInputs &in, const Forces &forces,
                     const AsDriven &driven, const std::optional<Mass> &approved)
{
    const auto load = taken(sheet, in.carried->mass, u"m_l", u"kg", 0);
    const auto place = taken(sheet, in.carried->place, u"x_l", u"m", -5, 10);
    const auto high = taken(sheet, in.carried->height, u"h_l", u"m", 0, 5);
    if (!load || !place || !high)
        return;
    const auto judge = [&](const QString &name, Mass more) {
        const Mass mass = driven.mass + more;
        const Mass front = driven.front + more * (1 - *place / driven.wheelbase);
        if (mass.si() <= 0 || front.si() <= 0 || mass <= front || std::abs(more.si()) < 1)
            return;
        const Length height = driven.height * (driven.mass / mass) + *high * (more / mass);
        const double braking = forces.sum() / mass / kGravity;
        judgeBalance(sheet, in, forces, {name, front / mass, height, braking}, driven.wheelbase);
    };
    judge(tr("without what is carried"), Mass() - *load);
    if (approved && driven.mass < *approved)
        judge(tr("at the plated gross mass"), *approved - driven.mass);
}

// Laden as the plate allows: somebody will load it so, and the brakes give no more for it.
std::optional<Acceleration> judgeLaden(Worksheet &sheet, const BrakesInputs &in,
                                       const std::optional<Mass> &plate,
                                       const std::optional<Forces> &forces)
{
    if (!plate || !forces)
        return std::nullopt;
    return judgeDeceleration(sheet, in, tr("at the plated gross mass"), *plate,
                             in.approvedMass.origin, *forces);
}

void judgeBoost(Worksheet &sheet, const BrakesInputs &in)
{
    sheet.takeChoice(in.boost.origin, in.boost.value ? wordOf(*in.boost.value) : QString());
    if (!in.boost.value)
        return;
    switch (*in.boost.value) {
    case BrakeBoost::Unassisted:
        sheet.stepText(tr("boost"), {}, tr("none, as built: the pedal's force tells it all"), {});
        break;
    case BrakeBoost::EngineVacuum:
        if (!in.engineStays) {
            sheet.restsOn(in.boost);
            sheet.within(tr("vacuum for the booster, its engine gone"), Pressure(), in.leastVacuum,
                         u"kPa");
            sheet.mendedBy(
                tr("A vacuum pump with a reservoir and a warning, or an electric booster."));
        }
        break;
    case BrakeBoost::VacuumPump:
        if (const auto vacuum = taken(sheet, in.vacuum, u"p", u"kPa", 0, 101.325e3)) {
            sheet.restsOn(in.vacuum, in.boost);
            sheet.within(tr("vacuum for the booster"), *vacuum, in.leastVacuum, u"kPa");
            sheet.mendedBy(
                tr("A pump or reservoir that gives more vacuum, or an electric booster."));
        }
        break;
    case BrakeBoost::Electric:
        sheet.stepText(tr("boost"), {},
                       tr("electric: its 12 V supply is judged with the reserve of that side"), {});
        break;
    }
}

} // namespace

double frontShareBraking(double frontAtRest, Length height, Length wheelbase, double braking)
{
    return frontAtRest + braking * (height / wheelbase);
}

double mostAdhesionUsed(double braking)
{
    return (braking - 0.1) / 0.7 + 0.2;
}

Check judgeBrakes(const BrakesInputs &in)
{
    Worksheet sheet(QStringLiteral("brakes"), tr("Brakes at the new mass"), Protects::People);
    sheet.about(in.vehicle);
    sheet.caution(QStringLiteral("brakes"));
    sheet.afterwards(
        tr("Then measure on a roller tester, laden and unladen, and once more with the "
           "boost switched off: it must still stop."));
    const auto mass = taken(sheet, in.mass, u"m", u"kg", kAboveNothing);
    const auto frontAxle = taken(sheet, in.frontAxle, u"m_f", u"kg", kAboveNothing);
    const auto wheelbase = taken(sheet, in.wheelbase, u"L", u"m", kAboveNothing);
    const auto height = taken(sheet, in.height, u"h", u"m", kAboveNothing, 5);
    const auto approved = taken(sheet, in.approvedMass, u"mₐ", u"kg", kAboveNothing);
    const auto forces = takeForces(sheet, in);
    if (mass && approved) {
        sheet.restsOn(in.mass, in.approvedMass);
        sheet.atMost(tr("mass the brakes were approved for"), *mass, *approved, u"kg",
                     in.approvedMass.origin.name);
        sheet.mendedBy(
            tr("Less mass in the vehicle, or brakes of a heavier variant, approved for it."));
    }
    const std::optional<Acceleration> laden = judgeLaden(sheet, in, approved, forces);
    if (mass && forces) {
        const Acceleration reached =
            judgeDeceleration(sheet, in, tr("as driven"), *mass, in.mass.origin, *forces);
        const bool isLess = laden && *laden < reached;
        sheet.result(tr("%1 at the pedal's force, %2, which decides; %3 of it by the front brakes")
                         .arg(show(isLess ? *laden : reached, u"m/s²"),
                              isLess
                                  ? tr("at the plated gross mass of %1").arg(show(*approved, u"kg"))
                                  : tr("as driven with %1").arg(show(*mass, u"kg")),
                              show(forces->frontShare(), u"%")));
        if (frontAxle && *frontAxle >= *mass)
            sheet.refuse(tr("The front axle cannot carry all of the vehicle."));
        else if (frontAxle && wheelbase && height) {
            const double atRest = *frontAxle / *mass, braking = reached / kGravity;
            const Mass load = *mass * frontShareBraking(atRest, *height, *wheelbase, braking);
            sheet.step(tr("load of the front axle while braking so"),
                       QStringLiteral("N_f = m·(g·b + a·h)/L"),
                       QString(show(*frontAxle, u"kg") + QStringLiteral(" + ") +
                               show(load - *frontAxle, u"kg")),
                       load * kGravity, u"kN");
            judgeBalance(sheet, in, *forces, {{}, atRest, *height, braking}, *wheelbase);
            if (in.carried)
                judgeOtherLoads(sheet, in, *forces, {*mass, *frontAxle, *height, *wheelbase},
                                approved);
        }
    }
    judgeBoost(sheet, in);
    return sheet.finish(tr("Equilibrium of a braked vehicle: Gillespie, Fundamentals of Vehicle "
                           "Dynamics; UN R13-H"));
}

} // namespace ohmwright
