// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/drive.h"

#include "core/checks/take_road_load.h"
#include "core/checks/taken.h"
#include "core/checks/tractive_effort.h"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>

namespace ohmwright {

namespace {

constexpr double kKmh = 1 / 3.6;

QString tr(const char *text)
{
    return QCoreApplication::translate("Drive", text);
}

struct NamedRatio
{
    QString name;
    double ratio = 0; // all in one
};

// What the motor's torque rests on, at no and at much speed.
std::vector<const Origin *> motorFrom(const DriveInputs &inputs)
{
    if (!inputs.curve.empty())
        return {&inputs.curveOrigin};
    return {&inputs.peakPower.origin, &inputs.peakTorque.origin};
}

// The controller's setting, not the motor, bounds the torque.
bool isBySetting(const DriveInputs &inputs, const std::optional<Torque> &most)
{
    return inputs.torqueSet && inputs.torqueSet->value && most && *inputs.torqueSet->value <= *most;
}

// What the greatest torque rests on.
std::vector<const Origin *> torqueFrom(const DriveInputs &inputs, const std::optional<Torque> &most)
{
    if (isBySetting(inputs, most))
        return {&inputs.torqueSet->origin};
    return {inputs.curve.empty() ? &inputs.peakTorque.origin : &inputs.curveOrigin};
}

// The ratio of the shortest or the longest gear.
const Origin *gearFrom(const DriveInputs &inputs, bool shortest)
{
    const DriveGear *found = nullptr;
    for (const DriveGear &gear : inputs.gears)
        if (gear.ratio.value && (!found || (shortest ? *found->ratio.value < *gear.ratio.value
                                                     : *gear.ratio.value < *found->ratio.value)))
            found = &gear;
    return found ? &found->ratio.origin : nullptr;
}

// What could be read off the inputs.
struct Known
{
    MotorTorque motor;
    std::optional<Torque> mostTorque;
    std::optional<RotationSpeed> motorLimit;
    std::optional<Power> continuousPower;
    std::optional<std::vector<NamedRatio>> ratios; // from high to low
    std::optional<Duration> gearChange;
    std::optional<double> efficiency;
    std::optional<Length> radius;
    std::optional<RoadLoad> load;
    std::optional<Force> grip;
    double gripShift = 0;
    std::optional<Speed> wantedSpeed;
    bool motorKnown = false;
    bool gripKnown = true; // or not considered
};

void takeMotor(Worksheet &sheet, const DriveInputs &inputs, Known &known)
{
    known.motorLimit = taken(sheet, inputs.motorLimit, u"n", u"rpm", 0.1, 1e5);
    if (!inputs.curve.empty()) {
        sheet.takeChoice(inputs.curveOrigin, tr("%1 points").arg(inputs.curve.size()));
        const bool possible =
            std::all_of(inputs.curve.begin(), inputs.curve.end(), [](const auto &point) {
                return std::isfinite(point.first.si()) && point.first.si() >= 0 &&
                       std::isfinite(point.second.si()) && point.second.si() >= 0;
            });
        if (!possible)
            sheet.refuse(tr("A point of the torque curve lies below zero or is no number."));
        known.motorKnown = possible && known.motorLimit;
        if (possible) {
            known.motor = MotorTorque(Curve(inputs.curve),
                                      known.motorLimit.value_or(inputs.curve.back().first));
            known.mostTorque = known.motor.most();
        }
    } else {
        const auto peak = taken(sheet, inputs.peakTorque, u"T", u"N·m", 0, 1e6);
        const auto power = taken(sheet, inputs.peakPower, u"P", u"kW", 0, 1e9);
        known.motorKnown = peak && power && known.motorLimit;
        if (known.motorKnown)
            known.motor = MotorTorque(*peak, *power, *known.motorLimit);
        known.mostTorque = peak;
    }
    if (inputs.torqueSet) {
        const auto set = taken(sheet, *inputs.torqueSet, u"T_set", u"N·m", 0, 1e6);
        if (set) {
            known.motor.limitTo(*set);
            known.mostTorque = std::min(known.mostTorque.value_or(*set), *set);
        }
    }
    if (inputs.continuousPower)
        known.continuousPower = taken(sheet, *inputs.continuousPower, u"P_c", u"kW", 0, 1e9);
}

void takeGears(Worksheet &sheet, const DriveInputs &inputs, Known &known)
{
    std::vector<NamedRatio> gears;
    bool all = true;
    for (const DriveGear &gear : inputs.gears) {
        const auto ratio = taken(sheet, gear.ratio, u"i", u":1", 0.05, 100);
        all = all && ratio;
        gears.push_back({gear.name, ratio.value_or(0)});
    }
    if (gears.empty())
        gears.push_back({tr("without a gearbox"), 1.0});
    const auto final = taken(sheet, inputs.finalDrive, u"i_f", u":1", 0.05, 100);
    if (all && final) {
        for (NamedRatio &gear : gears)
            gear.ratio *= *final;
        std::stable_sort(gears.begin(), gears.end(),
                         [](const auto &a, const auto &b) { return a.ratio > b.ratio; });
        known.ratios = std::move(gears);
    }
    known.gearChange = inputs.gearChange ? taken(sheet, *inputs.gearChange, u"t_g", u"s", 0, 60)
                                         : std::optional(Duration());
    known.efficiency = taken(sheet, inputs.efficiency, u"η", u"%", 0.01, 1);
    known.radius = taken(sheet, inputs.rollingRadius, u"r", u"m", 0.05, 2);
}

void takeVehicle(Worksheet &sheet, const DriveInputs &inputs, Known &known)
{
    known.load = takeRoadLoad(sheet, inputs);
    if (inputs.grip) {
        const auto share = taken(sheet, inputs.grip->drivenShare, u"x_d", u"%", 0, 1);
        const auto friction = taken(sheet, inputs.grip->friction, u"µ_g", u"", 0, 3);
        std::optional<double> shift = 0;
        if (inputs.grip->shift)
            shift = taken(sheet, *inputs.grip->shift, u"h/L", u"", -0.9, 0.9);
        known.gripKnown = share && friction && shift && known.load;
        if (known.gripKnown) {
            known.grip = known.load->mass * kStandardGravity * (*share * *friction);
            known.gripShift = *shift * *friction;
        }
    }
    known.wantedSpeed = taken(sheet, inputs.wantedSpeed, u"v", u"km/h", 0.1, 150);
}

// What all motors of the gearbox put into it at once; none while one of them is not known.
std::optional<Torque> togetherWithOthers(Worksheet &sheet, const DriveInputs &inputs,
                                         std::optional<Torque> together)
{
    for (const Given<Torque> &other : inputs.otherTorques) {
        const auto torque = taken(sheet, other, u"T_o", u"N·m", 0, 1e6);
        if (!together || !torque)
            together.reset();
        else
            together = *together + *torque;
    }
    if (together && !inputs.otherTorques.empty())
        sheet.step(tr("torque of all motors into the gearbox"), QStringLiteral("T + ΣT_o"), {},
                   *together, u"N·m");
    return together;
}

void judgeTorques(Worksheet &sheet, const DriveInputs &inputs, const Known &known)
{
    if (!inputs.gearboxTorque && !inputs.axleTorque && !inputs.torqueLimit)
        return;
    // what a plate says the motor gives has its own tolerance; what is set has the controller's
    const bool set = isBySetting(inputs, known.mostTorque);
    const std::optional<double> tolerance =
        set ? taken(sheet, inputs.torqueTolerance, u"u_T", u"%", 0, 1) : std::optional(0.0);
    if (set && tolerance && *tolerance > 0)
        sheet.step(tr("torque that may come of what is set"), QStringLiteral("T_set·(1 + u_T)"),
                   QString(show(*known.mostTorque, u"N·m") + QStringLiteral(" · ") +
                           show(1 + *tolerance, u"")),
                   *known.mostTorque * (1 + *tolerance), u"N·m");
    const Given<double> *toleranceFrom = set ? &inputs.torqueTolerance : nullptr;
    const std::optional<Torque> together = togetherWithOthers(sheet, inputs, known.mostTorque);
    if (inputs.torqueLimit) {
        const auto limit = taken(sheet, *inputs.torqueLimit, u"T_m", u"N·m", 0, 1e6);
        sheet.restsOn(torqueFrom(inputs, known.mostTorque), inputs.torqueLimit, toleranceFrom);
        if (limit && known.mostTorque && tolerance) {
            sheet.readAtMost(tr("torque of the motor"), *known.mostTorque, *tolerance, *limit,
                             u"N·m", inputs.torqueLimit->origin.name);
            sheet.mendedBy(tr("A lower torque set in the controller."));
        }
    }
    if (inputs.gearboxTorque) {
        const auto limit = taken(sheet, *inputs.gearboxTorque, u"T_g", u"N·m", 0, 1e6);
        sheet.restsOn(torqueFrom(inputs, known.mostTorque), inputs.gearboxTorque, toleranceFrom,
                      inputs.otherTorques);
        if (limit && together && tolerance &&
            sheet.readAtMost(tr("torque into the gearbox"), *together, *tolerance, *limit, u"N·m",
                             inputs.gearboxTorque->origin.name) != Verdict::Holds)
            sheet.turnedBy(tr("A lower torque set in the controller, or a gearbox for more."));
    }
    if (inputs.axleTorque) {
        const auto limit = taken(sheet, *inputs.axleTorque, u"T_a", u"N·m", 0, 1e6);
        if (limit && together && known.ratios && known.efficiency && tolerance) {
            const double ratio = known.ratios->front().ratio;
            const Torque torque = *together * (ratio * *known.efficiency);
            sheet.step(tr("torque at the drive shafts"), QStringLiteral("T_s = T·i·i_f·η"),
                       QString(show(*together, u"N·m") + QStringLiteral(" · ") + show(ratio, u"") +
                               QStringLiteral(" · ") + show(*known.efficiency, u"%")),
                       torque, u"N·m");
            sheet.restsOn(torqueFrom(inputs, known.mostTorque), inputs.axleTorque,
                          gearFrom(inputs, true), inputs.finalDrive, inputs.efficiency,
                          toleranceFrom, inputs.otherTorques);
            if (sheet.readAtMost(tr("torque at the drive shafts"), torque, *tolerance, *limit,
                                 u"N·m", inputs.axleTorque->origin.name) != Verdict::Holds)
                sheet.turnedBy(tr("A lower torque set in the controller, or not driving in the "
                                  "lowest gear."));
        }
    }
}

void judgeMotorSpeed(Worksheet &sheet, const DriveInputs &inputs, const Known &known)
{
    if (!known.ratios || !known.radius)
        return;
    if (known.motorLimit) {
        for (const NamedRatio &gear : *known.ratios) {
            const Speed most = *known.motorLimit * *known.radius / gear.ratio;
            sheet.step(tr("road speed at the motor's limit, %1").arg(gear.name),
                       QStringLiteral("v = ω·r/(i·i_f)"),
                       QString(show(*known.motorLimit, u"rpm") + QStringLiteral(" · ") +
                               show(*known.radius, u"m") + QStringLiteral(" / ") +
                               show(gear.ratio, u"")),
                       most, u"km/h");
        }
    }
    if (!known.wantedSpeed)
        return;
    const NamedRatio &fastest = known.ratios->back();
    const RotationSpeed turning = *known.wantedSpeed / *known.radius * fastest.ratio;
    sheet.step(tr("motor speed at the wanted speed, %1").arg(fastest.name),
               QStringLiteral("ω = v·i·i_f/r"),
               QString(show(*known.wantedSpeed, u"km/h") + QStringLiteral(" · ") +
                       show(fastest.ratio, u"") + QStringLiteral(" / ") +
                       show(*known.radius, u"m")),
               turning, u"rpm");
    sheet.restsOn(inputs.wantedSpeed, inputs.motorLimit, gearFrom(inputs, false), inputs.finalDrive,
                  inputs.rollingRadius);
    if (known.motorLimit &&
        sheet.atMost(tr("motor speed at the wanted speed"), turning, *known.motorLimit, u"rpm",
                     inputs.motorLimit.origin.name) != Verdict::Holds)
        sheet.turnedBy(tr("A longer gear or final drive, larger tyres, or a lower wanted speed."));
}

void judgeOverspeed(Worksheet &sheet, const DriveInputs &inputs, const Known &known)
{
    if (!inputs.overspeed)
        return;
    const auto turned = taken(sheet, *inputs.overspeed, u"n_w", u"rpm", 0, 1e5);
    sheet.restsOn(inputs.overspeed, inputs.motorLimit);
    if (turned && known.motorLimit &&
        sheet.atMost(tr("motor speed, turned by the wheels"), *turned, *known.motorLimit, u"rpm",
                     inputs.motorLimit.origin.name) != Verdict::Holds)
        sheet.turnedBy(tr("Low gears locked out at speed, or a lower speed downhill."));
}

void judgeHolding(Worksheet &sheet, const DriveInputs &inputs, const Known &known)
{
    if (!known.load || !known.wantedSpeed)
        return;
    const RoadLoad &load = *known.load;
    const Speed v = *known.wantedSpeed;
    const Force air = load.drag * v * v;
    sheet.step(tr("rolling resistance"), QStringLiteral("F_r = µ·m·g"),
               QString(show(inputs.rollingCoefficient.value.value_or(0), u"") +
                       QStringLiteral(" · ") + show(load.mass, u"kg") +
                       QStringLiteral(" · 9.807 m/s²")),
               load.rolling, u"N");
    sheet.step(tr("air drag at the wanted speed"), QStringLiteral("F_d = ½·ρ·Cd·A·v²"),
               QString(QStringLiteral("½ · ") + show(*inputs.airDensity.value, u"kg/m³") +
                       QStringLiteral(" · ") + show(*inputs.dragCoefficient.value, u"") +
                       QStringLiteral(" · ") + show(*inputs.frontalArea.value, u"m²") +
                       QStringLiteral(" · (") + show(v, u"km/h") + QStringLiteral(")²")),
               air, u"N");
    if (!known.efficiency)
        return;
    const Power needed = load.steady(v) * v / *known.efficiency;
    sheet.step(tr("power to hold the wanted speed"), QStringLiteral("P = (F_r + F_d)·v/η"),
               QString(QStringLiteral("(") + show(load.steady(v), u"N") + QStringLiteral(") · ") +
                       show(v, u"km/h") + QStringLiteral(" / ") + show(*known.efficiency, u"%")),
               needed, u"kW");
    sheet.restsOn(inputs.wantedSpeed, inputs.continuousPower, inputs.dragCoefficient,
                  inputs.frontalArea, inputs.rollingCoefficient, inputs.mass, inputs.efficiency);
    if (known.continuousPower &&
        sheet.atMost(tr("power to hold the wanted speed"), needed, *known.continuousPower, u"kW",
                     inputs.continuousPower->origin.name) != Verdict::Holds)
        sheet.turnedBy(tr("A lower cruising speed, less drag, or a motor with more continuous "
                          "power."));
}

Plot effortPlot(const Driveline &driveline, const std::vector<NamedRatio> &ratios,
                const RoadLoad &load, const std::vector<double> &grades)
{
    Plot plot;
    plot.title = tr("Effort against road load by gear");
    plot.xName = tr("road speed");
    plot.xUnit = QStringLiteral("km/h");
    plot.yName = tr("force");
    plot.yUnit = QStringLiteral("N");
    constexpr int kPoints = 80;
    for (std::size_t gear = 0; gear < ratios.size(); ++gear) {
        PlotSeries series;
        series.name = ratios[gear].name;
        const Speed highest = driveline.highestSpeed(gear);
        for (int i = 0; i <= kPoints; ++i) {
            const Speed v = highest * (double{1} * i / kPoints);
            series.points.emplace_back(v.si() / kKmh, driveline.effort(gear, v).si());
        }
        plot.series.push_back(std::move(series));
    }
    const Speed fastest = driveline.highestSpeed(ratios.size() - 1);
    constexpr double kCreep = 1e-6; // in motion
    for (const double grade : grades) {
        PlotSeries series;
        series.name =
            grade == 0 ? tr("road load, level") : tr("road load, grade %1").arg(show(grade, u"%"));
        const RoadLoad there = load.onGrade(grade);
        for (int i = 0; i <= kPoints; ++i) {
            const Speed v = fastest * (double{1} * i / kPoints);
            series.points.emplace_back(v.si() / kKmh, there.steady(v + Speed::fromSi(kCreep)).si());
        }
        plot.series.push_back(std::move(series));
    }
    return plot;
}

struct Wanted
{
    int kmh;
    const std::optional<Given<Duration>> &time;
};

void judgePace(Worksheet &sheet, const DriveInputs &inputs, const Driveline &driveline,
               const RoadLoad &load, Speed top)
{
    for (const Wanted &wanted : {Wanted{50, inputs.wantedTo50}, Wanted{80, inputs.wantedTo80},
                                 Wanted{100, inputs.wantedTo100}}) {
        const Speed to = Speed::fromSi(wanted.kmh * kKmh);
        const QString what = tr("0 to %1 km/h").arg(wanted.kmh);
        const auto run = to <= top ? sprint(driveline, load, to) : std::nullopt;
        const QString formula = QStringLiteral("t = ∫ λ·m·dv / (F − R)");
        if (run)
            sheet.step(what, formula, tr("over %1").arg(show(run->distance, u"m")), run->time,
                       u"s");
        else
            sheet.stepText(what, formula, {}, tr("not reached"));
        if (!wanted.time)
            continue;
        const auto limit = taken(sheet, *wanted.time, u"t", u"s", 0, 1e4);
        if (!limit)
            continue;
        sheet.restsOn(motorFrom(inputs), torqueFrom(inputs, driveline.motor.most()), inputs.mass,
                      inputs.gearChange, inputs.efficiency, inputs.rotating, inputs.finalDrive,
                      inputs.rollingRadius, *wanted.time);
        if (!run)
            sheet.atLeast(tr("speed reached at all"), top, to, u"km/h", wanted.time->origin.name);
        else
            sheet.atMost(what, run->time, *limit, u"s", wanted.time->origin.name);
    }
}

// With no more than the motor's continuous power, at its shaft.
std::optional<Speed> topSpeedForGood(Driveline driveline, const RoadLoad &load,
                                     const std::optional<Power> &continuous)
{
    if (!continuous)
        return std::nullopt;
    driveline.motor.limitTo(*continuous);
    return topSpeed(driveline, load);
}

} // namespace

Check judgeDrive(const DriveInputs &inputs)
{
    Worksheet sheet(QStringLiteral("drive"), tr("Drive"), Protects::Driveline);
    sheet.about(inputs.subject);
    sheet.caution(QStringLiteral("rotating"));
    sheet.afterwards(tr("Then measure on the road: motor speed against road speed, and the heat "
                        "of motor, inverter and gearbox after a long climb. An inverter may cut "
                        "the torque of a motor held at standstill."));
    const QString source =
        tr("Equilibrium of a vehicle on a grade, F = T·i·η/r against µ·m·g·cos θ + ½·ρ·Cd·A·v² + "
           "m·g·sin θ + λ·m·a; Gillespie, Fundamentals of Vehicle Dynamics");

    Known known;
    takeMotor(sheet, inputs, known);
    takeGears(sheet, inputs, known);
    takeVehicle(sheet, inputs, known);
    for (const Origin &missing : inputs.missing)
        sheet.takeChoice(missing, {});
    judgeTorques(sheet, inputs, known);
    judgeMotorSpeed(sheet, inputs, known);
    judgeOverspeed(sheet, inputs, known);
    judgeHolding(sheet, inputs, known);
    if (!known.motorKnown || !known.ratios || !known.gearChange || !known.efficiency ||
        !known.radius || !known.load || !known.gripKnown)
        return sheet.finish(source);

    Driveline driveline;
    driveline.motor = known.motor;
    for (const NamedRatio &gear : *known.ratios)
        driveline.ratios.push_back(gear.ratio);
    driveline.efficiency = *known.efficiency;
    driveline.radius = *known.radius;
    driveline.gearChange = *known.gearChange;
    driveline.grip = known.grip;
    driveline.gripShift = known.gripShift;
    const RoadLoad &load = *known.load;

    const Force atMotor = known.motor.at(RotationSpeed()) / driveline.radius *
                          (driveline.ratios.front() * driveline.efficiency);
    sheet.step(tr("effort of the motor at standstill, %1").arg(known.ratios->front().name),
               QStringLiteral("F = T·i·i_f·η/r"),
               QString(show(known.motor.at(RotationSpeed()), u"N·m") + QStringLiteral(" · ") +
                       show(driveline.ratios.front(), u"") + QStringLiteral(" · ") +
                       show(driveline.efficiency, u"%") + QStringLiteral(" / ") +
                       show(driveline.radius, u"m")),
               atMotor, u"N");
    if (const Force held = driveline.effort(0, Speed()); held < atMotor * (1 - 1e-9))
        sheet.step(tr("as much as the tyres hold"), QStringLiteral("F = µ·x·m·g"), {}, held, u"N");
    const double steepest = steepestStart(driveline, load);
    sheet.step(tr("steepest start"),
               known.grip ? QStringLiteral("sin θ + µ·cos θ = F/(m·g), tan θ ≤ (µ_g·x_d − "
                                           "µ)/(1 − µ_g·h/L)")
                          : QStringLiteral("sin θ + µ·cos θ = F/(m·g)"),
               steepest >= 1 ? tr("steeper than any road") : QString(), steepest, u"%");
    const Speed top = topSpeed(driveline, load);
    sheet.step(tr("top speed at peak power"), QStringLiteral("F(v) = R(v), ω ≤ ω_max"),
               tr("on the level, for as long as motor and inverter give it"), top, u"km/h");
    const std::optional<Speed> lasting = topSpeedForGood(driveline, load, known.continuousPower);
    if (lasting)
        sheet.step(
            tr("top speed at continuous power"),
            QStringLiteral("F(v) = R(v), F·v ≤ P_c·η, ω ≤ ω_max"),
            tr("on the level, continuously with %1").arg(show(*known.continuousPower, u"kW")),
            *lasting, u"km/h");

    sheet.restsOn(torqueFrom(inputs, known.mostTorque), inputs.mass, gearFrom(inputs, true),
                  inputs.finalDrive, inputs.rollingRadius, inputs.efficiency,
                  inputs.rollingCoefficient);
    if (sheet.within(tr("steepest start"), steepest, inputs.startGrade, u"%") != Verdict::Holds)
        sheet.turnedBy(tr("A shorter gear, more torque at standstill, or less mass."));
    if (known.wantedSpeed) {
        const Given<double> &rolling = inputs.rollingCoefficient, &drag = inputs.dragCoefficient;
        const Given<Area> &area = inputs.frontalArea;
        sheet.restsOn(motorFrom(inputs), drag, area, inputs.wantedSpeed, inputs.efficiency, rolling,
                      inputs.mass);
        Verdict reached = sheet.atLeast(tr("top speed at peak power"), top, *known.wantedSpeed,
                                        u"km/h", inputs.wantedSpeed.origin.name);
        if (lasting) {
            sheet.restsOn(inputs.continuousPower, drag, area, inputs.wantedSpeed, inputs.efficiency,
                          rolling, inputs.mass);
            reached = std::max(reached, sheet.atLeast(tr("top speed at continuous power"), *lasting,
                                                      *known.wantedSpeed, u"km/h",
                                                      inputs.wantedSpeed.origin.name));
        }
        if (reached != Verdict::Holds)
            sheet.turnedBy(tr("More power, less drag, or a gear in which the motor turns slower."));
    }
    judgePace(sheet, inputs, driveline, load, top);
    sheet.plot(effortPlot(driveline, *known.ratios, load, inputs.gradesDrawn));
    const QString speeds = lasting ? tr("Top speed %1 at peak power, %2 at continuous power")
                                         .arg(show(top, u"km/h"), show(*lasting, u"km/h"))
                                   : tr("Top speed %1 at peak power").arg(show(top, u"km/h"));
    sheet.result(tr("%1, steepest start %2, %3 at standstill")
                     .arg(speeds, show(steepest, u"%"), show(driveline.effort(0, Speed()), u"N")));
    return sheet.finish(source);
}

} // namespace ohmwright
