// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/ui/checks/sample_checks.h"

#include "core/checks/axle_loads.h"
#include "core/checks/circuit_ratings.h"
#include "core/checks/discharge.h"
#include "core/checks/drive.h"
#include "core/checks/grouping.h"
#include "core/checks/pack.h"
#include "core/checks/precharge.h"
#include "core/checks/range.h"
#include "core/checks/rotating_part.h"
#include "core/checks/worksheet.h"

#include <cmath>
#include <numbers>

namespace ohmwright::samples {

namespace {

const QString kTraction = QStringLiteral("traction");
const QString kVan = QStringLiteral("van");

QString text(const char *utf8)
{
    return QString::fromUtf8(utf8);
}

RotationSpeed rpm(double n)
{
    return RotationSpeed::fromSi(n * 2 * std::numbers::pi / 60);
}

Speed kmh(double v)
{
    return Speed::fromSi(v / 3.6);
}

// A figure that can be edited where it stands.
template <class Q>
Given<Q> figure(const Figures &figures, const char *field, const char *name, Evidence evidence,
                const char *source = "", const char *path = "")
{
    Given<Q> input;
    input.origin = {text(name), text(path), text(field), evidence, text(source), false, false};
    const auto amount = parseAmount(figures.value(text(field)), NumberStyle::pointDecimal());
    if (amount) {
        if constexpr (std::is_same_v<Q, double>)
            input.value = amount->si();
        else
            input.value = Q::fromSi(amount->si());
    }
    return input;
}

Check precharge(const Figures &f)
{
    PrechargeInputs in;
    in.circuit = kTraction;
    in.packVoltage = figure<Voltage>(f, "pack.full", "pack at full charge", Evidence::Datasheet,
                                     "cell datasheet, page 4");
    in.linkCapacitance =
        figure<Capacitance>(f, "link.capacitance", "capacitance of the link", Evidence::Seller,
                            "message of 3 May", "Inverter › link capacitor");
    in.resistance =
        figure<Resistance>(f, "precharge.resistance", "precharge resistor", Evidence::Measured,
                           "bench meter, 12 May", "Contactor box › precharge resistor");
    in.resistance.origin.stale = true;
    in.pulseEnergy =
        figure<Energy>(f, "precharge.pulse", "pulse energy of the resistor", Evidence::Datasheet,
                       "datasheet, figure 3", "Contactor box › precharge resistor");
    in.timeBeforeClosing = given(seconds(0.2), text("time before closing"), Evidence::ServiceManual,
                                 text("controller's parameter file"));
    in.reached.own = 0.90;
    in.reached.reason = text("the inverter's maker allows 90 %");
    return judgePrecharge(in);
}

Check discharge(const Figures &f)
{
    DischargeInputs in;
    in.circuit = kTraction;
    in.start = figure<Voltage>(f, "pack.full", "pack at full charge", Evidence::Datasheet,
                               "cell datasheet, page 4");
    in.capacitance = figure<Capacitance>(f, "link.capacitance", "capacitance of the link",
                                         Evidence::Seller, "message of 3 May");
    in.bleed = figure<Resistance>(f, "bleed.resistance", "bleed resistor", Evidence::Measured);
    in.bleedRating = given(watts(10), text("power the bleed takes"), Evidence::Nameplate);
    return judgeDischarge(in);
}

Check ratings(const Figures &f)
{
    CircuitRatingsInputs in;
    in.circuit = kTraction;
    in.name = text("traction circuit");
    in.pack.cellsInSeries = given(108.0, text("cells in series"), Evidence::Measured);
    in.pack.cellFull = given(volts(4.2), text("full voltage of a cell"));
    in.pack.cellNominal = volts(3.6);
    in.motor.noLoad = figure<Voltage>(f, "motor.no_load", "no-load voltage of the motor",
                                      Evidence::Measured, "", "Motor");
    in.motor.noLoadSpeed = given(rpm(6000), text("speed of that voltage"), Evidence::Measured);
    in.motor.highestSpeed = given(rpm(8000), text("highest speed of the motor"));
    const auto limit = [](double v, const char *path, Evidence evidence) {
        VoltageLimit l{given(volts(v), text("voltage limit"), evidence), CurrentKind::Dc};
        l.voltage.origin.path = text(path);
        l.voltage.origin.field = text(path);
        return l;
    };
    using RatedPart = Assembly<VoltageLimit>;
    in.parts = {
        RatedPart{text("Cabin heater"),
                  {limit(480, "Cabin heater", Evidence::Nameplate)},
                  true,
                  {RatedPart{text("main relay"),
                             {limit(400, "Cabin heater › main relay", Evidence::Nameplate)},
                             true,
                             {}}}},
        RatedPart{text("Inverter"), {limit(500, "Inverter", Evidence::Datasheet)}, true, {}}};
    return judgeCircuitRatings(in);
}

Check pack(const Figures &f)
{
    PackInputs in;
    in.pack = text("pack");
    in.modulesInSeries = given(9.0, text("modules in series"), Evidence::Measured);
    in.modulesInParallel = given(1.0, text("modules in parallel"), Evidence::Measured);
    in.cellsInSeriesPerModule = given(12.0, text("cells in a module"), Evidence::Datasheet);
    in.openCircuit = Curve<double, Voltage>({{0.0, volts(3.0)},
                                             {0.05, volts(3.4)},
                                             {0.5, volts(3.7)},
                                             {0.9, volts(4.05)},
                                             {1.0, volts(4.2)}});
    in.openCircuitFrom.name = text("open-circuit voltage of a cell");
    in.openCircuitFrom.evidence = Evidence::Measured;
    in.moduleCapacity = given(Charge::fromSi(52 * 3600), text("capacity of the weakest module"),
                              Evidence::Measured, text("bench, 15 °C"));
    in.moduleResistance = figure<Resistance>(f, "module.resistance", "resistance of a module",
                                             Evidence::Measured, "pulse of 10 s");
    in.connections = given(ohms(8e-3), text("resistance of the connections"), Evidence::Assumed);
    in.highestCharge = given(0.95, text("highest state of charge"), Evidence::Assumed);
    in.lowestCharge = given(0.10, text("lowest state of charge"), Evidence::Assumed);
    in.cellFloor = given(volts(2.8), text("lowest voltage of a cell"));
    in.load = given(watts(30e3), text("load"), Evidence::Assumed);
    in.moduleCurrentLimit = given(amperes(150), text("current limit of a module"));
    in.neededEnergy = given(joules(16 * 3.6e6), text("energy for the wanted drive"));
    in.windows = {{text("inverter"), given(volts(250), text("inverter least")),
                   given(volts(500), text("inverter most")), false}};
    return judgePack(in);
}

Check axles(const Figures &f)
{
    AxleLoadsInputs in;
    in.subject = kVan;
    in.wheelbase = given(metres(2.4), text("wheelbase"), Evidence::Measured);
    in.frontBefore = given(kilograms(600), text("front axle as it came"), Evidence::Measured);
    in.rearBefore = given(kilograms(520), text("rear axle as it came"), Evidence::Measured);
    const auto moved = [](MassMove move, const char *what, double mass, double place) {
        return MovedMass{
            text(what), move, given(kilograms(mass), text(what), Evidence::Measured),
            given(metres(place), QString(text("place of ") + text(what)), Evidence::Measured),
            std::nullopt};
    };
    MovedMass battery = moved(MassMove::In, "battery", 0, 1.6);
    battery.mass = figure<Mass>(f, "battery.mass", "battery", Evidence::Measured);
    in.moved = {moved(MassMove::Out, "engine", 150, -0.1), moved(MassMove::Out, "tank", 40, 2.2),
                moved(MassMove::In, "motor", 60, 0.1), battery,
                moved(MassMove::Load, "people and luggage", 150, 1.2)};
    in.frontPlate = given(kilograms(750), text("front plate"), Evidence::Nameplate);
    in.rearPlate = given(kilograms(900), text("rear plate"), Evidence::Nameplate);
    in.grossPlate = given(kilograms(1600), text("gross plate"), Evidence::Nameplate);
    in.frontTyres.load = given(kilograms(475), text("load index of the front tyres"));
    in.rearTyres.load = given(kilograms(475), text("load index of the rear tyres"));
    return judgeAxleLoads(in);
}

Check drive(const Figures &f)
{
    DriveInputs in;
    in.subject = kVan;
    in.peakTorque = given(Torque::fromSi(150), text("peak torque"));
    in.peakPower = given(watts(50e3), text("peak power"));
    in.motorLimit = given(rpm(8000), text("highest motor speed"));
    in.continuousPower = given(watts(30e3), text("continuous power"));
    in.gears = {{text("2nd gear"), given(2.0, text("ratio of 2nd gear"), Evidence::ServiceManual)},
                {text("1st gear"), given(3.5, text("ratio of 1st gear"), Evidence::ServiceManual)},
                {text("3rd gear"), given(1.3, text("ratio of 3rd gear"), Evidence::ServiceManual)}};
    in.finalDrive = figure<double>(f, "final_drive", "final drive", Evidence::ServiceManual);
    in.efficiency = given(0.9, text("efficiency, motor to tyre"), Evidence::Assumed);
    in.rollingRadius = given(metres(0.308), text("rolling radius"), Evidence::Measured);
    in.gearChange = given(seconds(1), text("gear change"), Evidence::Assumed);
    in.gearboxTorque =
        given(Torque::fromSi(170), text("torque limit of the gearbox"), Evidence::Community);
    in.mass = given(kilograms(1380), text("mass"), Evidence::Measured);
    in.rollingCoefficient = given(0.012, text("rolling coefficient"), Evidence::Assumed);
    in.dragCoefficient = given(0.4, text("drag coefficient"), Evidence::Community);
    in.frontalArea = given(Area::fromSi(2.4), text("frontal area"), Evidence::Measured);
    in.wantedSpeed = given(kmh(100), text("wanted speed"));
    return judgeDrive(in);
}

Check range()
{
    RangeInputs in;
    in.mass = given(kilograms(1400), text("mass"), Evidence::Measured);
    in.rollingCoefficient = given(0.011, text("rolling coefficient"), Evidence::Assumed);
    in.dragCoefficient = given(0.36, text("drag coefficient"), Evidence::Community);
    in.frontalArea = given(Area::fromSi(2.0), text("frontal area"));
    in.efficiency = given(0.85, text("efficiency"), Evidence::Assumed);
    in.auxiliaries = given(watts(300), text("auxiliaries"), Evidence::Measured);
    in.usableEnergy = given(joules(16 * 3.6e6), text("usable energy"));
    in.packLimit = given(watts(90e3), text("most power of the pack"));
    return judgeRange(in);
}

Check grouping()
{
    GroupingInputs in;
    in.pack = text("pack");
    for (int i = 0; i < 12; ++i) {
        const QString n = QString::number(i + 1);
        in.modules.push_back(
            {QString(text("M") + n),
             given(Charge::fromSi((62 + std::sin(i * 2.1) * 0.4) * 3600),
                   QString(text("capacity of module ") + n), Evidence::Measured),
             given(ohms((2 + std::cos(i * 1.3) * 0.04) * 1e-3),
                   QString(text("resistance of module ") + n), Evidence::Measured),
             given(volts(6e-3), QString(text("voltage lost by module ") + n), Evidence::Measured)});
    }
    in.groupsInSeries = given(4.0, text("groups in series"));
    in.modulesInGroup = given(3.0, text("modules in a group"));
    in.cellsInModule = given(2.0, text("cells in a module"));
    in.rest = given(seconds(10 * 86400), text("rest"), Evidence::Measured);
    return judgeGrouping(in);
}

Check coupler()
{
    RotatingPartInputs in;
    in.subject = text("coupler");
    in.outerRadius = given(metres(0.07), text("outer radius"), Evidence::Measured);
    in.innerRadius = given(metres(0.02), text("bore radius"), Evidence::Measured);
    in.mass = given(kilograms(2.1), text("mass of the coupler"), Evidence::Measured);
    in.density = given(Density::fromSi(7850), text("density"));
    in.poisson = given(0.3, text("Poisson's ratio"));
    in.yieldStrength = given(Pressure::fromSi(355e6), text("yield strength"), Evidence::Seller);
    in.highestSpeed = given(rpm(8000), text("highest speed of the motor"));
    in.residualUnbalance = notKnown<Unbalance>(text("residual unbalance"));
    return judgeRotatingPart(in);
}

} // namespace

Figures vanFigures()
{
    return {{text("pack.full"), text("453.6 V")},
            {text("link.capacitance"), text("1.2 mF")},
            {text("precharge.resistance"), text("60 Ω")},
            {text("precharge.pulse"), text("150 J")},
            {text("bleed.resistance"), text("33 kΩ")},
            {text("motor.no_load"), QString()},
            {text("module.resistance"), text("14 mΩ")},
            {text("battery.mass"), text("240 kg")},
            {text("final_drive"), text("4.1")}};
}

std::vector<Check> vanChecks(const Figures &figures)
{
    std::vector<Check> checks{
        range(),          grouping(),    drive(figures), precharge(figures), axles(figures),
        ratings(figures), pack(figures), coupler(),      discharge(figures)};
    return checks;
}

std::vector<Check> manyChecks(int count)
{
    std::vector<Check> checks;
    for (int i = 0; i < count; ++i) {
        const int verdict = i % 4;
        Worksheet sheet(QStringLiteral("sample"),
                        QStringLiteral("Branch %1, cable and fuse").arg(i + 1),
                        static_cast<Protects>(i % 5));
        sheet.about(QStringLiteral("branch%1").arg(i));
        Given<Current> load = given(amperes(verdict == 1   ? 110
                                            : verdict == 2 ? 95
                                                           : 50 + i % 30),
                                    QStringLiteral("load"));
        if (verdict == 3)
            load = notKnown<Current>(QStringLiteral("load of branch %1").arg(i + 1));
        const Current taken = sheet.take(load, u"I", u"A", 0);
        if (!sheet.isIncomplete())
            sheet.atMost(QStringLiteral("continuous current"), taken, amperes(100), u"A",
                         QStringLiteral("cable"));
        checks.push_back(sheet.finish(QStringLiteral("common practice, no published source")));
    }
    return checks;
}

} // namespace ohmwright::samples
