// SPDX-License-Identifier: GPL-3.0-or-later
// Times, top speeds, steepest starts and cycle energies of random vehicles, beside what
// driving_scipy.py makes of them with scipy's quadrature and root finding and with numpy.
#include "core/checks/cycle_energy.h"
#include "core/checks/tractive_effort.h"
#include "tests/support/chance.h"

#include <QByteArray>
#include <QFile>
#include <QIODevice>
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <QProcess>
#include <QTemporaryDir>

#include <gtest/gtest.h>

#include <cstddef>
#include <vector>

namespace ohmwright {

namespace {

constexpr int kVehicles = 40;
constexpr int kMissing = 3; // the script's exit code without scipy

struct DrivenVehicle
{
    Driveline line;
    RoadLoad load;
    Speed to;
    QJsonObject asked;
};

DrivenVehicle randomVehicle(Chance &chance)
{
    const double mass = chance.between(700, 2500), rolling = 1e-3 * chance.between(7, 20);
    const double dragArea = 0.01 * chance.between(40, 140), torque = chance.between(80, 300);
    const double power = 1e3 * chance.between(25, 120), highest = chance.between(600, 1200);
    DrivenVehicle v;
    QJsonArray ratios;
    double ratio = chance.between(8, 15);
    for (int gears = chance.between(1, 4); gears > 0; --gears) {
        v.line.ratios.push_back(ratio);
        ratios.append(ratio);
        ratio *= 0.01 * chance.between(55, 75);
    }
    v.line.motor =
        MotorTorque(Torque::fromSi(torque), watts(power), RotationSpeed::fromSi(highest));
    v.line.efficiency = 0.9;
    v.line.radius = metres(0.3);
    v.load = roadLoadOf({kilograms(mass), rolling, 1, Area::fromSi(dragArea)});
    v.load.rotating = 1.05;
    v.to = topSpeed(v.line, v.load) * 0.8;
    v.asked = {{"mass", mass},   {"rolling", rolling}, {"dragArea", dragArea}, {"torque", torque},
               {"power", power}, {"highest", highest}, {"ratios", ratios},     {"efficiency", 0.9},
               {"radius", 0.3},  {"rotating", 1.05},   {"to", v.to.si()}};
    return v;
}

} // namespace

TEST(DrivingScipy, AgreesOnRandomVehicles)
{
    Chance chance(11);
    std::vector<DrivenVehicle> vehicles;
    QJsonArray asked, cycles;
    for (int i = 0; i < kVehicles; ++i) {
        vehicles.push_back(randomVehicle(chance));
        asked.append(vehicles.back().asked);
    }
    for (const DriveCycle &cycle : publishedDriveCycles()) {
        QJsonArray points;
        for (const auto &[time, speed] : cycle.points)
            points.append(QJsonArray{time.si(), speed.si()});
        cycles.append(points);
    }
    const QTemporaryDir folder;
    ASSERT_TRUE(folder.isValid());
    QFile questions(folder.filePath("questions.json"));
    ASSERT_TRUE(questions.open(QIODevice::WriteOnly));
    questions.write(QJsonDocument(QJsonObject{{"vehicles", asked}, {"cycles", cycles}})
                        .toJson(QJsonDocument::Compact));
    questions.close();

    QProcess python; // Debian's: another one on the path does not see Debian's modules
    python.start(QStringLiteral("/usr/bin/python3"),
                 {QStringLiteral(OHMWRIGHT_SOURCE_DIR "/tests/published/checks/driving_scipy.py"),
                  questions.fileName(), folder.filePath("answers.json")});
    if (!python.waitForFinished(110'000) || python.exitCode() == kMissing)
        GTEST_SKIP() << "NOT COMPARED: needs /usr/bin/python3 with python3-scipy\n"
                     << python.readAllStandardError().toStdString();
    ASSERT_EQ(python.exitCode(), 0) << python.readAllStandardError().toStdString();
    QFile answers(folder.filePath("answers.json"));
    ASSERT_TRUE(answers.open(QIODevice::ReadOnly));
    const QJsonArray theirs = QJsonDocument::fromJson(answers.readAll()).array();
    ASSERT_EQ(theirs.size(), kVehicles);

    PackSide pack;
    pack.regeneration = {true, watts(15e3), Speed::fromSi(5), 1.0, 0.6};
    for (int i = 0; i < kVehicles; ++i) {
        const DrivenVehicle &v = vehicles[static_cast<std::size_t>(i)];
        const QJsonObject other = theirs[i].toObject();
        const auto run = sprint(v.line, v.load, v.to);
        ASSERT_TRUE(run) << i;
        const double time = other["sprint"].toDouble();
        EXPECT_NEAR(run->time.si(), time, time * 5e-4) << i;
        EXPECT_NEAR(topSpeed(v.line, v.load).si(), other["top"].toDouble(), 2e-3) << i;
        EXPECT_NEAR(steepestStart(v.line, v.load), other["start"].toDouble(), 1e-9) << i;
        const QJsonArray energies = other["cycles"].toArray();
        qsizetype at = 0;
        for (const DriveCycle &cycle : publishedDriveCycles()) {
            const CycleEnergy own = energyOver(cycle, v.load, pack, seconds(0.1));
            const QJsonArray energy = energies[at++].toArray();
            EXPECT_NEAR(own.drive.si(), energy[0].toDouble(), energy[0].toDouble() * 1e-6);
            EXPECT_NEAR(own.net.si(), energy[1].toDouble(), energy[0].toDouble() * 1e-6);
            EXPECT_NEAR(own.intoPack.si(), energy[2].toDouble(), energy[2].toDouble() * 1e-6);
        }
    }
}

} // namespace ohmwright
