// SPDX-License-Identifier: GPL-3.0-or-later
// Drive out of a book: each motor with the inverter, the gearbox, the pack, the vehicle.
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
    const Part *inverter = nullptr;
    const Part *gearbox = nullptr;
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
                                                     const Part &inverter, Torque peak)
{
    const auto ofMotor = peakLimit<Current>(in, motor, RatedQuantity::Current, CurrentKind::Ac);
    const auto ofInverter =
        peakLimit<Current>(in, inverter, RatedQuantity::Current, CurrentKind::Ac);
    if (!ofMotor.value || !ofInverter.value || *ofMotor.value <= *ofInverter.value)
        return std::nullopt;
    Given<Torque> torque{peak * (*ofInverter.value / *ofMotor.value), ofInverter.origin};
    torque.origin.name = tr("torque at the current of %1").arg(inverter.name);
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
    if (around.inverter) {
        powers.push_back(peakLimit<Power>(in, *around.inverter, RatedQuantity::Power));
        lasting.push_back(in.rating<Power>(*around.inverter, kContinuousPower));
    }
    if (around.gearbox)
        speeds.push_back(in.rating<RotationSpeed>(*around.gearbox, kHighestSpeed));
    drive.motorLimit = lowestOf(in.rating<RotationSpeed>(motor, kHighestSpeed), speeds);
    drive.continuousPower = lowestOf(in.rating<Power>(motor, kContinuousPower), lasting);

    std::optional<Torque> peak;
    if (const RatedCurve *curve = in.curve(motor, CurveKind::MotorTorque)) {
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
        drive.peakPower = lowestOf(peakLimit<Power>(in, motor, RatedQuantity::Power), powers);
        peak = drive.peakTorque.value;
    }
    drive.torqueSet = figureIfAny<Torque>(in, "drive.torque_set");
    if (!around.inverter || !peak)
        return;
    const auto byCurrent = torqueAtInverterCurrent(in, motor, *around.inverter, *peak);
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
    if (drive.gears.empty() && around.gearbox) {
        const Given<double> only = in.rating<double>(*around.gearbox, kRatio);
        drive.gears.push_back(
            {around.gearbox->name, only.value ? only : in.figure<double>(kRatios.front())});
    }
    if (drive.gears.size() > 1) {
        constexpr double kChange = 1.5;
        drive.gearChange = in.figureOr<Duration>(
            seconds(kChange), tr("by hand, without a clutch; common practice, no published source"),
            "drive.gear_change");
    }
    if (around.gearbox)
        drive.gearboxTorque = peakLimit<Torque>(in, *around.gearbox, RatedQuantity::Torque);
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

} // namespace

std::vector<Check> judgeDriveOfBook(const BookInputs &in)
{
    const std::vector<const Part *> motors = partsOfRole(in.records(), PartRole::Motor);
    std::vector<Check> checks;
    if (motors.empty())
        return checks;
    const Around around{onlyPartOfRole(in.records(), PartRole::Inverter),
                        onlyPartOfRole(in.records(), PartRole::Gearbox),
                        atTheShaft(in, packFacts(in).greatestPower)};
    for (const Part *motor : motors) {
        DriveInputs drive;
        drive.subject = motor->key;
        putMotor(in, *motor, around, drive);
        putGears(in, around, drive);
        putRoadLoad(in, drive);
        putWishes(in, drive);
        checks.push_back(about(judgeDrive(drive), motor->key, tr("Drive by %1").arg(motor->name)));
    }
    return checks;
}

} // namespace ohmwright
