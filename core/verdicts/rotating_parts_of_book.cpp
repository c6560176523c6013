// SPDX-License-Identifier: GPL-3.0-or-later
// Rotating parts and the bolted joints beside them, out of a book.
#include "core/checks/bolted_flange.h"
#include "core/checks/rotating_part.h"
#include "core/verdicts/build_parts.h"
#include "core/verdicts/vehicle_checks_of_book.h"
#include "core/verdicts/vehicle_tools.h"

#include <QCoreApplication>

#include <set>

namespace ohmwright {

enum class ShearPlane { Thread, Shank };
template <>
struct EnumWords<ShearPlane>
{
    static constexpr std::array words{"thread", "shank"};
};

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("RotatingPartsOfBook", text);
}

constexpr FigureName kMass{RatedQuantity::Mass, RatingKind::Actual, RatingBasis::Nominal, {}};
constexpr FigureName kHighestSpeed{
    RatedQuantity::RotationSpeed, RatingKind::Limit, RatingBasis::Continuous, {}};

// Couplings, and whatever else is told how it turns.
std::vector<const Part *> rotatingParts(const Records &records)
{
    std::vector<const Part *> parts = partsOfRole(records, PartRole::Coupling);
    const std::set<const Part *> known(parts.begin(), parts.end());
    for (const Part *part : partsWithFigures(records, QLatin1String("rotating.")))
        if (!known.contains(part))
            parts.push_back(part);
    std::sort(parts.begin(), parts.end(),
              [](const Part *a, const Part *b) { return a->key < b->key; });
    return parts;
}

using Motors = std::vector<const Part *>;

// As recorded; else as fast as any motor may turn or the wheels can turn it: nothing tells which of
// several turns it.
Given<RotationSpeed> highestSpeed(const BookInputs &in, const Part &part, const Motors &motors,
                                  std::vector<Origin> &missing)
{
    const Given<RotationSpeed> told = in.figure<RotationSpeed>("rotating.highest_speed", part);
    if (in.has("rotating.highest_speed", part))
        return told;
    std::optional<Given<RotationSpeed>> fastest;
    std::vector<Origin> silent;
    for (const Part *motor : motors) {
        const Given<RotationSpeed> limit = in.rating<RotationSpeed>(*motor, kHighestSpeed);
        const Given<RotationSpeed> turned = in.figure<RotationSpeed>("motor.overspeed", *motor);
        if (!limit.value)
            silent.push_back(limit.origin);
        for (const Given<RotationSpeed> &one : {limit, turned})
            if (one.value && (!fastest || *fastest->value < *one.value))
                fastest = one;
    }
    if (fastest)
        missing = silent;
    return fastest.value_or(told);
}

Check judgePart(const BookInputs &in, const Part &part, const Motors &motors)
{
    RotatingPartInputs rotating;
    rotating.subject = part.key;
    rotating.shape = in.choice<RotatingShape>("rotating.shape", part);
    rotating.outerRadius = in.figure<Length>("rotating.outer_radius", part);
    rotating.innerRadius = in.figure<Length>("rotating.bore_radius", part);
    rotating.mass = in.rating<Mass>(part, kMass);
    rotating.density = in.figure<Density>("rotating.density", part);
    constexpr double kPoisson = 0.3;
    rotating.poisson = in.figureOr<double>(
        kPoisson, tr("steel and aluminium, 0.29 to 0.33: Shigley, Mechanical Engineering Design"),
        "rotating.poisson", part);
    rotating.yieldStrength = in.figure<Pressure>("rotating.yield_strength", part);
    // only a certificate that is there proves anything
    rotating.certified = in.yesNo("rotating.certified", part).value_or(false);
    rotating.spinTestedTo = figureIfAny<RotationSpeed>(in, "rotating.spin_tested", part);
    rotating.concentration = figureIfAny<double>(in, "rotating.concentration", part);
    rotating.highestSpeed = highestSpeed(in, part, motors, rotating.missing);
    rotating.overspeed = toldOr(in, rotating.overspeed, "rotating.overspeed", part);
    rotating.residualUnbalance = in.figure<Unbalance>("rotating.unbalance", part);
    in.hold(rotating.leastOverspeed);
    in.hold(rotating.safety);
    in.hold(rotating.balanceGrade);
    Check check =
        about(judgeRotatingPart(rotating), part.key, tr("Rotating part: %1").arg(part.name));
    tellChoice(check, in, rotating.certified ? tr("yes") : tr("no"), tr("none is recorded"),
               "rotating.certified", part);
    return check;
}

// As recorded; else what all motors give together, told as the assumption it is.
Given<Torque> carriedTorque(const BookInputs &in, const Part &part, const Motors &motors,
                            std::vector<Origin> &missing)
{
    Given<Torque> carried = in.figure<Torque>("flange.carried", part);
    if (motors.empty() || in.has("flange.carried", part))
        return carried;
    QStringList names;
    std::vector<Origin> silent;
    for (const Part *motor : motors) {
        const Given<Torque> peak = peakLimit<Torque>(in, *motor, RatedQuantity::Torque);
        names << motor->name;
        if (peak.value)
            carried.value = carried.value ? *carried.value + *peak.value : *peak.value;
        else
            silent.push_back(peak.origin);
    }
    if (carried.value)
        missing = silent;
    carried.origin.evidence = Evidence::Assumed;
    carried.origin.source =
        tr("peak torque of %1; a joint behind gears carries more, as does a shock")
            .arg(names.join(tr(" and ")));
    return carried;
}

Check judgeJoint(const BookInputs &in, const Part &part, const Motors &motors)
{
    BoltedFlangeInputs flange;
    flange.subject = part.key;
    flange.bolts = in.figure<double>("flange.bolts", part);
    const Given<BoltSize> thread = givenChoice<BoltSize>(in, "flange.thread", part);
    flange.diameter.origin = thread.origin;
    flange.pitch = in.figure<Length>("flange.pitch", part);
    if (thread.value) {
        flange.diameter.value = diameterOf(*thread.value);
        if (!in.has("flange.pitch", part)) {
            flange.pitch.value = pitchOf(*thread.value);
            flange.pitch.origin.evidence = Evidence::Datasheet;
            flange.pitch.origin.source = tr("coarse thread, ISO 261");
        }
    }
    flange.strength = in.choice<BoltClass>("flange.class", part);
    flange.circleRadius = in.figure<Length>("flange.circle_radius", part);
    flange.tightening = in.figure<Torque>("flange.tightening", part);
    constexpr double kDry = 0.2, kCleanFaces = 0.15;
    flange.nutFactor = in.figureOr<double>(kDry, tr("as delivered, not oiled; Shigley"),
                                           "flange.nut_factor", part);
    flange.scatter = toldOr(in, flange.scatter, "flange.scatter", part);
    flange.friction = in.figureOr<double>(
        kCleanFaces, tr("clean dry metal; common practice, no published source"), "flange.friction",
        part);
    flange.carried = carriedTorque(in, part, motors, flange.missing);
    // the thread is the weaker, so it is what stands there until told otherwise
    flange.threadInShear =
        in.choice<ShearPlane>("flange.shear_plane", part).value != ShearPlane::Shank;
    in.hold(flange.slipSafety);
    in.hold(flange.shearSafety);
    Check check =
        about(judgeBoltedFlange(flange), part.key, tr("Bolted joint of %1").arg(part.name));
    tellChoice(check, in, wordOf(flange.threadInShear ? ShearPlane::Thread : ShearPlane::Shank),
               tr("the weaker of the two"), "flange.shear_plane", part);
    return check;
}

} // namespace

std::vector<Check> judgeRotatingPartsOfBook(const BookInputs &in)
{
    const Motors motors = partsOfRole(in.records(), PartRole::Motor);
    std::vector<Check> checks;
    for (const Part *part : rotatingParts(in.records()))
        checks.push_back(judgePart(in, *part, motors));
    return checks;
}

std::vector<Check> judgeBoltedFlangesOfBook(const BookInputs &in)
{
    const Motors motors = partsOfRole(in.records(), PartRole::Motor);
    std::vector<Check> checks;
    for (const Part *part : partsWithFigures(in.records(), QLatin1String("flange.")))
        checks.push_back(judgeJoint(in, *part, motors));
    return checks;
}

} // namespace ohmwright
