// SPDX-License-Identifier: GPL-3.0-or-later
// Drive out of a book: each motor with the inverters, the gearboxes, the pack, the vehicle.
//
// Nothing tells which of several inverters or gearboxes a motor drives with: it is held to the
// lowest limit of all of them. Motors that share a gearbox add their torques there; what each does
// for the vehicle's speed and climbing is judged of each alone, which is the lesser.
#include "core/checks/drive.h"
#include "core/verdicts/build_parts.h"
#include "core/verdicts/derived.h"
#include "core/verdicts/drive_demand.h"
#include "core/verdicts/pack_facts.h"
#include "core/verdicts/vehicle_checks_of_book.h"
#include "core/verdicts/vehicle_of_book.h"
#include "core/verdicts/vehicle_tools.h"

namespace ohmwright {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("DriveOfBook", text);
}

constexpr FigureName kHighestSpeed{
    RatedQuantity::RotationSpeed, RatingKind::Limit, RatingBasis::Continuous, {}};
constexpr FigureName kContinuousPower{
    RatedQuantity::Power, RatingKind::Limit, RatingBasis::Continuous, {}};
constexpr FigureName kRatio{RatedQuantity::Ratio, RatingKind::Actual, RatingBasis::Nominal, {}};

struct Around
{
    std::vector<const Part *> inverters, gearboxes;
    Given<Power> pack; // the most it gives, at the shaft; not a limit while not known
};

// What the pack gives at its terminals, less what inverter and motor lose of it.
Given<Power> atTheShaft(const BookInputs &in, const Given<Power> &ofPack)
{
    return derived(called(tr("%1, at the motor's shaft").arg(ofPack.origin.name),
                          ofPack.origin.source, ofPack.origin.field),
                   std::multiplies<>(), ofPack, electricEfficiency(in));
}

// A motor's torque goes with its current, as far as the iron is not saturated.
std::optional<Given<Torque>> torqueAtInverterCurrent(const BookInputs &in, const Part &motor,
                                                     const std::vector<const Part *> &inverters,
                                                     Torque peak, std::vector<Origin> &missing)
{
    const auto currentOf = [&in](const Part &part) {
        return peakLimit<Current>(in, part, RatedQuantity::Current, CurrentKind::Ac);
    };
    const Given<Current> ofMotor = currentOf(motor);
    if (!ofMotor.value)
        return std::nullopt;
    const auto lowest = lowestOfParts<Current>(inverters, currentOf, missing);
    // what the inverter gives may be less than the motor takes, whoever has forgotten it
    if (!lowest && !inverters.empty())
        missing.push_back(currentOf(*inverters.front()).origin);
    if (!lowest || *ofMotor.value <= *lowest->limit.value)
        return std::nullopt;
    const Given<Current> &ofInverter = lowest->limit;
    Given<Torque> torque{peak * (*ofInverter.value / *ofMotor.value), ofInverter.origin};
    torque.origin.name = tr("torque at the current of %1").arg(lowest->part->name);
    torque.origin.evidence = std::max(ofMotor.origin.evidence, ofInverter.origin.evidence);
    torque.origin.source = tr("in proportion to the peak currents, %1 of %2")
                               .arg(show(*ofInverter.value, u"A"), show(*ofMotor.value, u"A"));
    return torque;
}

// The curve, nowhere above the power that inverter and pack give.
std::vector<std::pair<RotationSpeed, Torque>> heldTo(const Curve<RotationSpeed, Torque> &curve,
                                                     const std::optional<Power> &most)
{
    const auto &points = curve.points();
    if (!most)
        return points;
    constexpr int kBetween = 8; // the power's curve is bent, the lines between points are not
    std::vector<std::pair<RotationSpeed, Torque>> held;
    const auto isOver = [&](RotationSpeed at) {
        return curve.at(at) * at > *most;
    };
    const auto add = [&](RotationSpeed at) {
        held.emplace_back(at, isOver(at) ? *most / at : curve.at(at));
    };
    for (std::size_t i = 0; i < points.size(); ++i) {
        add(points[i].first);
        if (i + 1 == points.size())
            break;
        const RotationSpeed step = (points[i + 1].first - points[i].first) / kBetween;
        if (isOver(points[i].first) || isOver(points[i].first + step * (kBetween / 2.0)) ||
            isOver(points[i + 1].first))
            for (int between = 1; between < kBetween; ++between)
                add(points[i].first + step * between);
    }
    return held;
}

void putMotor(const BookInputs &in, const Part &motor, const Around &around, DriveInputs &drive)
{
    std::vector<Given<Power>> powers{around.pack};
    std::vector<Given<Power>> lasting;
    std::vector<Given<RotationSpeed>> speeds;
    const auto peakPowerOf = [&in](const Part &part) {
        return peakLimit<Power>(in, part, RatedQuantity::Power);
    };
    if (const auto one = lowestOfParts<Power>(around.inverters, peakPowerOf, drive.missing))
        powers.push_back(one->limit);
    if (const auto one = lowestOfParts<Power>(
            around.inverters,
            [&in](const Part &part) { return in.rating<Power>(part, kContinuousPower); },
            drive.missing))
        lasting.push_back(one->limit);
    if (const auto one = lowestOfParts<RotationSpeed>(
            around.gearboxes,
            [&in](const Part &part) { return in.rating<RotationSpeed>(part, kHighestSpeed); },
            drive.missing))
        speeds.push_back(one->limit);
    drive.motorLimit = lowestOf(in.rating<RotationSpeed>(motor, kHighestSpeed), speeds);
    drive.overspeed = figureIfAny<RotationSpeed>(in, "motor.overspeed", motor);
    drive.continuousPower = lowestOf(in.rating<Power>(motor, kContinuousPower), lasting);

    std::optional<Torque> peak;
    if (const RatedCurve *curve = in.curve(motor, CurveKind::MotorTorque)) {
        if (const auto own = peakLimit<Torque>(in, motor, RatedQuantity::Torque); own.value)
            drive.torqueLimit = own;
        powers.push_back(peakPowerOf(motor));
        std::optional<Power> most;
        for (const Given<Power> &power : powers)
            if (power.value && (!most || *power.value < *most))
                most = power.value;
        const auto points = in.pointsOf<RotationSpeed, Torque>(*curve);
        drive.curve = heldTo(points, most);
        drive.curveOrigin = in.curveOrigin(
            motor, CurveKind::MotorTorque,
            most ? tr("torque curve of %1, at no more than %2").arg(motor.name, show(*most, u"kW"))
                 : tr("torque curve of %1").arg(motor.name));
        for (const auto &point : points.points())
            peak = std::max(peak.value_or(Torque()), point.second);
    } else {
        drive.peakTorque = peakLimit<Torque>(in, motor, RatedQuantity::Torque);
        drive.peakPower = lowestOf(peakPowerOf(motor), powers);
        peak = drive.peakTorque.value;
    }
    drive.torqueSet = figureIfAny<Torque>(in, "drive.torque_set");
    if (!peak)
        return;
    const auto byCurrent =
        torqueAtInverterCurrent(in, motor, around.inverters, *peak, drive.missing);
    if (byCurrent && (!drive.torqueSet ||
                      (drive.torqueSet->value && *byCurrent->value < *drive.torqueSet->value)))
        drive.torqueSet = byCurrent;
}

void putGears(const BookInputs &in, const Around &around, DriveInputs &drive)
{
    constexpr std::array kRatios{"drive.ratio_1", "drive.ratio_2", "drive.ratio_3",
                                 "drive.ratio_4", "drive.ratio_5", "drive.ratio_6"};
    for (std::size_t gear = 0; gear < kRatios.size(); ++gear)
        if (in.has(kRatios[gear]))
            drive.gears.push_back({tr("gear %1").arg(gear + 1), in.figure<double>(kRatios[gear])});
    if (drive.gears.empty() && !around.gearboxes.empty()) {
        const Part &first = *around.gearboxes.front();
        const bool isOnly = around.gearboxes.size() == 1; // else what they make together is asked
        const Given<double> only = isOnly ? in.rating<double>(first, kRatio) : Given<double>();
        drive.gears.push_back({isOnly ? first.name : tr("gear %1").arg(1),
                               only.value ? only : in.figure<double>(kRatios.front())});
    }
    if (drive.gears.size() > 1) {
        constexpr double kChange = 1.5;
        drive.gearChange = in.figureOr<Duration>(
            seconds(kChange), tr("by hand, without a clutch; common practice, no published source"),
            "drive.gear_change");
    }
    const auto torqueOf = [&in](const Part &part) {
        return peakLimit<Torque>(in, part, RatedQuantity::Torque);
    };
    if (const auto one = lowestOfParts<Torque>(around.gearboxes, torqueOf, drive.missing))
        drive.gearboxTorque = one->limit;
    else if (!around.gearboxes.empty())
        drive.gearboxTorque = torqueOf(*around.gearboxes.front());
    drive.axleTorque = figureIfAny<Torque>(in, "drive.axle_torque");
    drive.finalDrive = in.figure<double>("drive.final_drive");
    constexpr double kEfficiency = 0.93;
    drive.efficiency = in.figureOr<double>(
        kEfficiency,
        tr("two gear meshes, joints and bearings; common practice, no published "
           "source"),
        "drive.efficiency");
    drive.rollingRadius = in.figure<Length>("drive.rolling_radius");
    const Vehicle &vehicle = in.records().vehicle();
    if (const auto tyre = tyreOf(vehicle); tyre && !in.has("drive.rolling_radius")) {
        drive.rollingRadius.value = tyre->rollingRadius();
        drive.rollingRadius.origin.evidence = Evidence::Nameplate;
        drive.rollingRadius.origin.source =
            tr("marking %1, within 2 %").arg(vehicle.tyreSize.trimmed());
    }
}

enum class DrivenAxle { Front, Rear, Both };

} // namespace

template <>
struct EnumWords<DrivenAxle>
{
    static constexpr std::array words{"front", "rear", "both"};
};

namespace {

// Of one driven axle; none where that is not told, or both are driven.
std::optional<Given<double>> weightShift(const BookInputs &in)
{
    const auto axle = in.choice<DrivenAxle>("drive.driven_axle").value;
    if (!axle || *axle == DrivenAxle::Both)
        return std::nullopt;
    const Given<Length> height = drivenVehicle(in).height;
    const std::optional<Amount> &wheelbase = in.records().vehicle().wheelbase;
    Given<double> shift;
    shift.origin = height.origin;
    shift.origin.name =
        tr("height of the centre of gravity / wheelbase, below 0 for driven front wheels");
    if (height.value && wheelbase && wheelbase->si() > 0)
        shift.value = height.value->si() / wheelbase->si() * (*axle == DrivenAxle::Front ? -1 : 1);
    return shift;
}

void putWishes(const BookInputs &in, DriveInputs &drive)
{
    drive.torqueTolerance =
        in.figureOr(*drive.torqueTolerance.value, drive.torqueTolerance.origin.source,
                    "drive.torque_tolerance");
    drive.wantedSpeed = in.figure<Speed>("drive.wanted_speed");
    drive.wantedTo50 = figureIfAny<Duration>(in, "drive.time_to_50");
    drive.wantedTo80 = figureIfAny<Duration>(in, "drive.time_to_80");
    drive.wantedTo100 = figureIfAny<Duration>(in, "drive.time_to_100");
    if (in.has("drive.driven_share") || in.has("drive.friction"))
        drive.grip = DriveInputs::Grip{in.figure<double>("drive.driven_share"),
                                       in.figure<double>("drive.friction"), weightShift(in)};
    in.hold(drive.startGrade);
}

// The most it puts into the gearbox.
Given<Torque> mostTorqueOf(const Part &motor, const DriveInputs &drive)
{
    Given<Torque> most = drive.peakTorque;
    if (!drive.curve.empty()) {
        most = {Torque(), drive.curveOrigin};
        for (const auto &point : drive.curve)
            most.value = std::max(*most.value, point.second);
    }
    if (drive.torqueSet && drive.torqueSet->value && most.value &&
        *drive.torqueSet->value < *most.value)
        most = *drive.torqueSet;
    most.origin.name = tr("torque of %1").arg(motor.name);
    return most;
}

// Several motors may turn one gearbox or one each: that has to be said, for their torques add up.
void putSharedGearbox(const BookInputs &in, const std::vector<const Part *> &motors,
                      std::vector<DriveInputs> &drives)
{
    if (motors.size() < 2)
        return;
    const std::vector<DriveInputs> alone = drives;
    for (std::size_t i = 0; i < motors.size(); ++i) {
        const auto shares = in.yesNo("motor.shares_gearbox", *motors[i]);
        if (!shares)
            drives[i].missing.push_back(in.originOf("motor.shares_gearbox", *motors[i]));
        if (!shares.value_or(false))
            continue;
        for (std::size_t other = 0; other < motors.size(); ++other)
            if (other != i && in.yesNo("motor.shares_gearbox", *motors[other]).value_or(true))
                drives[i].otherTorques.push_back(mostTorqueOf(*motors[other], alone[other]));
    }
}

} // namespace

std::vector<Check> judgeDriveOfBook(const BookInputs &in)
{
    const std::vector<const Part *> motors = partsOfRole(in.records(), PartRole::Motor);
    std::vector<Check> checks;
    if (motors.empty())
        return checks;
    const Around around{partsOfRole(in.records(), PartRole::Inverter),
                        partsOfRole(in.records(), PartRole::Gearbox),
                        atTheShaft(in, packFacts(in).greatestPower)};
    std::vector<DriveInputs> drives(motors.size());
    for (std::size_t i = 0; i < motors.size(); ++i) {
        drives[i].subject = motors[i]->key;
        putMotor(in, *motors[i], around, drives[i]);
        putGears(in, around, drives[i]);
        putRoadLoad(in, drives[i]);
        putWishes(in, drives[i]);
    }
    if (!around.gearboxes.empty())
        putSharedGearbox(in, motors, drives);
    for (std::size_t i = 0; i < motors.size(); ++i)
        checks.push_back(
            about(judgeDrive(drives[i]), motors[i]->key, tr("Drive by %1").arg(motors[i]->name)));
    return checks;
}

} // namespace ohmwright
