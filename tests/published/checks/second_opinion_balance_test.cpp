// SPDX-License-Identifier: GPL-3.0-or-later
// Splitting into equal groups beside an integer program (scipy's HiGHS), and the series
// for cross-flow radiators beside Nusselt's solution (integrated by scipy), all in one call.
// Without scipy the test is skipped and says so.
#include "core/checks/balanced_groups.h"
#include "core/checks/cooling.h"
#include "tests/support/chance.h"

#include <QFile>
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <QProcess>
#include <QTemporaryDir>

#include <gtest/gtest.h>

namespace ohmwright {

namespace {

struct Split
{
    std::vector<PairOfValues> items;
    std::size_t size;
    double weight;
};

std::vector<Split> randomSplits()
{
    Chance chance(90);
    std::vector<Split> splits;
    for (int round = 0; round < 12; ++round) {
        Split split{{}, 2 + static_cast<std::size_t>(round % 3), chance.between(0, 4) / 4.0};
        for (std::size_t i = 0; i < split.size * (split.size == 4 ? 2 : 3); ++i)
            split.items.push_back(
                {60 + chance.below(1000) / 100.0, 400 + chance.below(1000) / 10.0});
        splits.push_back(std::move(split));
    }
    return splits;
}

QJsonObject question(const Split &split)
{
    QJsonArray first, second;
    for (const PairOfValues &item : split.items) {
        first.append(item.first);
        second.append(item.second);
    }
    return {{"kind", "grouping"},
            {"first", first},
            {"second", second},
            {"size", static_cast<qint64>(split.size)},
            {"weight", split.weight}};
}

} // namespace

TEST(SecondOpinion, AgreesOnGroupsAndRadiators)
{
    const std::vector<Split> splits = randomSplits();
    std::vector<std::pair<double, double>> radiators;
    QJsonArray asked;
    for (const Split &split : splits)
        asked.append(question(split));
    for (const double units : {0.3, 0.8, 1.5, 2.5, 4.0}) {
        for (const double ratio : {0.2, 0.6, 1.0}) {
            radiators.emplace_back(units, ratio);
            asked.append(QJsonObject{{"kind", "crossflow"}, {"n", units}, {"r", ratio}});
        }
    }

    const QTemporaryDir folder;
    ASSERT_TRUE(folder.isValid());
    QFile questions(folder.filePath("questions.json"));
    ASSERT_TRUE(questions.open(QIODevice::WriteOnly));
    questions.write(QJsonDocument(asked).toJson(QJsonDocument::Compact));
    questions.close();
    QProcess python;
    python.start(
        QStringLiteral("/usr/bin/python3"),
        {QStringLiteral(OHMWRIGHT_SOURCE_DIR "/tests/published/checks/second_opinion_balance.py"),
         questions.fileName(), folder.filePath("answers.json")});
    ASSERT_TRUE(python.waitForFinished(110'000)) << python.errorString().toStdString();
    if (python.exitCode() == 3)
        GTEST_SKIP() << "NOT COMPARED: needs python3-scipy; "
                     << python.readAllStandardError().toStdString();
    ASSERT_EQ(python.exitCode(), 0) << python.readAllStandardError().toStdString();
    QFile answers(folder.filePath("answers.json"));
    ASSERT_TRUE(answers.open(QIODevice::ReadOnly));
    const QJsonArray theirs = QJsonDocument::fromJson(answers.readAll()).array();
    ASSERT_EQ(theirs.size(), asked.size());

    qsizetype at = 0;
    for (const Split &split : splits) {
        const BalancedGroups made = groupEvenly(split.items, split.size, split.weight);
        EXPECT_TRUE(made.proven);
        EXPECT_NEAR(made.cost, theirs[at].toDouble(), 1e-6) << at;
        ++at;
    }
    for (const auto &[units, ratio] : radiators) {
        const double exact = theirs[at++].toDouble();
        EXPECT_NEAR(crossFlowEffectiveness(units, ratio), exact, 1e-7) << units << ", " << ratio;
    }
}

} // namespace ohmwright
