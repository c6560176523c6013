// SPDX-License-Identifier: GPL-3.0-or-later
// With more hands than there is work, levelling is the critical path method: five hundred random
// workloads beside python3-networkx, a published graph library (levelling_check.py), and beside
// criticalPath(), which networkx_test.cpp holds to it as well.
#include "core/plan/levelling.h"
#include "core/plan/network.h"
#include "tests/core/plan/random_network.h"
#include "tests/support/chance.h"
#include "tests/support/level_check.h"

#include <QFile>
#include <QIODevice>
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <QProcess>
#include <QString>
#include <QTemporaryDir>

#include <gtest/gtest.h>

#include <cstddef>
#include <vector>

namespace ohmwright::plan {
namespace {

constexpr int kWorkloads = 500;

// One slot a day with all the hands in the world.
Workload unlimited(Chance &chance)
{
    const int count = chance.between(1, 40);
    Workload workload{Timeline{{Slot{}}, {{count}}, 0, 1}, {}, {}};
    for (int i = 0; i < count; ++i) {
        Activity made;
        made.work = chance.between(1, 12);
        made.demand = {1};
        made.manner = chance.oneIn(2) ? Manner::Split : Manner::Unbroken;
        made.waitDays = chance.oneIn(3) ? chance.between(1, 9) : 0;
        made.releaseDay = chance.oneIn(3) ? chance.between(1, 40) : 0;
        for (int links = i == 0 ? 0 : chance.between(0, 3); links > 0; --links)
            made.after.push_back(static_cast<std::size_t>(chance.below(i)));
        workload.activities.push_back(made);
    }
    return workload;
}

QJsonArray toJson(const Workload &workload)
{
    QJsonArray result;
    for (const Activity &activity : workload.activities) {
        QJsonArray after;
        for (const std::size_t before : activity.after)
            after.append(static_cast<qint64>(before));
        result.append(QJsonObject{{"work", activity.work},
                                  {"wait", activity.waitDays},
                                  {"release", activity.releaseDay},
                                  {"after", after}});
    }
    return result;
}

TEST(LevellingBesideNetworkx, IsTheCriticalPathMethodWhenNothingIsScarce)
{
    Chance chance(31);
    std::vector<Workload> workloads;
    QJsonArray asked;
    for (int i = 0; i < kWorkloads; ++i) {
        workloads.push_back(unlimited(chance));
        asked.append(toJson(workloads.back()));
    }
    const QTemporaryDir folder;
    QFile question(folder.filePath("workloads.json"));
    ASSERT_TRUE(question.open(QIODevice::WriteOnly));
    question.write(QJsonDocument(asked).toJson());
    question.close();
    QProcess python;
    const QString script = QStringLiteral(OHMWRIGHT_SOURCE_DIR) +
                           QStringLiteral("/tests/published/plan/levelling_check.py");
    python.start(QStringLiteral("/usr/bin/python3"),
                 {script, question.fileName(), folder.filePath("answers.json")});
    ASSERT_TRUE(python.waitForFinished(110'000)) << python.errorString().toStdString();
    ASSERT_EQ(python.exitCode(), 0) << "needs the package python3-networkx\n"
                                    << python.readAllStandardError().toStdString();
    QFile answered(folder.filePath("answers.json"));
    ASSERT_TRUE(answered.open(QIODevice::ReadOnly));
    const QJsonArray answers = QJsonDocument::fromJson(answered.readAll()).array();
    ASSERT_EQ(answers.size(), kWorkloads);

    for (int i = 0; i < kWorkloads; ++i) {
        SCOPED_TRACE(i);
        const QJsonObject answer = answers[i].toObject();
        const Workload &workload = workloads[static_cast<std::size_t>(i)];
        Levelling levelling(workload);
        const Levelled &plan = levelling.pass();
        EXPECT_EQ(testing::LevelCheck(workload).faults(plan, levelling.workedSlots()), "");
        EXPECT_EQ(plan.endDay + 1, answer["end"].toInt());
        for (std::size_t a = 0; a < workload.activities.size(); ++a)
            EXPECT_EQ(plan.start[a], answer["start"][static_cast<qsizetype>(a)].toInt());
        const Latest &latest = levelling.latest(plan.endDay);
        for (std::size_t a = 0; a < workload.activities.size(); ++a)
            EXPECT_EQ(latest.startDay[a], answer["latest"][static_cast<qsizetype>(a)].toInt());
    }
}

// Milestones as well, and floats; nothing waits or is delivered.
TEST(LevellingBesideCriticalPath, AgreesWhenNothingIsScarce)
{
    testing::RandomNetworks networks(32);
    testing::Chances chances;
    chances.done = 0;
    for (int i = 0; i < kWorkloads; ++i) {
        SCOPED_TRACE(i);
        const Network network = networks.make(chances);
        const auto count = static_cast<int>(network.tasks.size());
        Workload workload{Timeline{{Slot{}}, {{count}}, 0, 1}, {}, {}};
        for (const Task &task : network.tasks) {
            Activity made;
            made.work = task.elapsedDays;
            made.demand = {1};
            made.after = task.after;
            workload.activities.push_back(made);
        }
        const Pass pass = criticalPath(network);
        Levelling levelling(workload);
        const Levelled &plan = levelling.pass();
        EXPECT_EQ(testing::LevelCheck(workload).faults(plan, levelling.workedSlots()), "");
        EXPECT_EQ(plan.start, pass.earlyStart);
        EXPECT_EQ(plan.finish, pass.earlyFinish);
        EXPECT_EQ(plan.end, pass.length);
        const Latest &latest = levelling.latest(plan.endDay);
        for (std::size_t a = 0; a < network.tasks.size(); ++a) {
            if (network.tasks[a].elapsedDays > 0) {
                EXPECT_EQ(latest.floatDays[a], pass.slack(a));
            }
        }
    }
}

} // namespace
} // namespace ohmwright::plan
