// SPDX-License-Identifier: GPL-3.0-or-later
// Loops, orders, lengths and hold-ups of a thousand random networks, beside what networkx_check.py
// makes of the same networks with python3-networkx, a published graph library. Without it the test
// fails: an answer nobody compared is not one that agrees.
#include "core/plan/network.h"
#include "tests/core/plan/random_network.h"

#include <QByteArray>
#include <QFile>
#include <QIODevice>
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <QJsonValue>
#include <QProcess>
#include <QString>
#include <QStringList>
#include <QTemporaryDir>

#include <gtest/gtest.h>

#include <array>
#include <cstddef>
#include <utility>
#include <vector>

namespace ohmwright::plan {
namespace {

using testing::Chances;
using testing::RandomNetworks;

constexpr int kNetworks = 1000;

struct Question
{
    Network network;
    std::size_t milestone = 0;
    int deadline = 0;
    std::vector<std::pair<std::size_t, std::size_t>> links; // before, task
};

template <class Numbers>
QJsonArray array(const Numbers &numbers)
{
    QJsonArray result;
    for (const auto number : numbers)
        result.append(static_cast<qint64>(number));
    return result;
}

QJsonArray array(const std::vector<QString> &texts)
{
    QJsonArray result;
    for (const QString &text : texts)
        result.append(text);
    return result;
}

QJsonObject toJson(const LeafNeed &need)
{
    return {{"key", need.key},
            {"met", need.met},
            {"move", moveKindName(need.move)},
            {"subject", need.subject},
            {"subjectName", need.subjectName},
            {"reason", need.reason},
            {"daysToMeet", need.daysToMeet}};
}

QJsonObject toJson(const Question &question)
{
    QJsonArray tasks;
    for (const Task &task : question.network.tasks) {
        QJsonArray needs;
        for (const LeafNeed &need : task.needs)
            needs.append(toJson(need));
        tasks.append(QJsonObject{
            {"key", task.key},
            {"title", task.title},
            {"done", task.done},
            {"started", task.started},
            {"elapsedDays", task.elapsedDays},
            {"after", array(task.after)},
            {"needs", needs},
            {"date", task.date ? QJsonValue(task.date->toString(Qt::ISODate)) : QJsonValue()}});
    }
    QJsonArray links;
    for (const auto &[before, task] : question.links)
        links.append(array(std::array{before, task}));
    return {{"tasks", tasks},
            {"milestone", static_cast<qint64>(question.milestone)},
            {"deadline", question.deadline},
            {"links", links}};
}

QJsonObject toJson(const Pass &pass)
{
    return {{"length", pass.length},
            {"earlyStart", array(pass.earlyStart)},
            {"earlyFinish", array(pass.earlyFinish)},
            {"lateStart", array(pass.lateStart)},
            {"lateFinish", array(pass.lateFinish)}};
}

QJsonObject toJson(const HoldUps &held)
{
    QJsonArray moves;
    for (const Move &move : held.moves) {
        moves.append(QJsonObject{
            {"kind", moveKindName(move.kind)},
            {"subject", move.subject},
            {"title", move.title},
            {"why", move.why},
            {"needs", array(move.needs)},
            {"for", array(move.for_)},
            {"frees", array(move.frees)},
            {"chainDays", move.chainDays},
            {"latestStart", move.latestStart ? QJsonValue(move.latestStart->toString(Qt::ISODate))
                                             : QJsonValue()}});
    }
    return {{"chain", array(held.chain)},
            {"chainDays", held.chainDays},
            {"driving", array(held.driving)},
            {"moves", moves}};
}

QJsonObject ownAnswer(const Question &question)
{
    const std::vector<std::size_t> loop = findLoop(question.network);
    QJsonArray loopsIfLinked;
    for (const auto &[before, task] : question.links)
        loopsIfLinked.append(array(loopIfLinked(question.network, before, task)));
    QJsonObject answer{
        {"acyclic", loop.empty()}, {"loop", array(loop)}, {"loopsIfLinked", loopsIfLinked}};
    if (loop.empty()) {
        answer["order"] = array(topologicalOrder(question.network));
        answer["pass"] = toJson(criticalPath(question.network));
        answer["passToDeadline"] = toJson(criticalPath(question.network, question.deadline));
        answer["holdUps"] = toJson(holdUps(question.network, question.milestone));
    }
    return answer;
}

// Small ones, where odd shapes are likely, up to sixty tasks; every fifth may have loops.
std::vector<Question> randomQuestions()
{
    RandomNetworks random(1000);
    std::vector<Question> questions;
    for (int i = 0; i < kNetworks; ++i) {
        Chances chances;
        chances.mostTasks = i % 4 == 0 ? 5 : 60;
        chances.linksPerTask = 0.75 + 0.5 * (i % 5);
        chances.backward = i % 5 == 4 ? 0.04 : 0;
        chances.done = i % 3 == 0 ? 0.05 : 0.3;
        chances.needsPerTask = i % 4 == 1 ? 3 : 1.2;
        chances.subjects = i % 2 == 0 ? 40 : 2;
        Question question;
        question.network = random.make(chances);
        const std::size_t count = question.network.tasks.size();
        question.milestone = random.milestoneOf(question.network);
        question.deadline = random.days(120);
        for (int link = 0; link < 4; ++link)
            question.links.emplace_back(random.below(count), random.below(count));
        questions.push_back(std::move(question));
    }
    return questions;
}

QByteArray compact(const QJsonValue &value)
{
    return QJsonDocument(QJsonArray{value}).toJson(QJsonDocument::Compact);
}

TEST(Networkx, AgreesOnAThousandRandomNetworks)
{
    const std::vector<Question> questions = randomQuestions();
    QJsonArray asked;
    for (const Question &question : questions)
        asked.append(toJson(question));

    const QTemporaryDir folder;
    ASSERT_TRUE(folder.isValid());
    QFile networks(folder.filePath("networks.json"));
    ASSERT_TRUE(networks.open(QIODevice::WriteOnly));
    const QByteArray text = QJsonDocument(asked).toJson(QJsonDocument::Compact);
    ASSERT_EQ(networks.write(text), text.size());
    networks.close();

    // Debian's python: another one on the path does not see Debian's modules.
    QProcess python;
    const QString script = QStringLiteral(OHMWRIGHT_SOURCE_DIR) +
                           QStringLiteral("/tests/published/plan/networkx_check.py");
    python.start(QStringLiteral("/usr/bin/python3"),
                 {script, networks.fileName(), folder.filePath("answers.json")});
    ASSERT_TRUE(python.waitForFinished(110'000)) << python.errorString().toStdString();
    ASSERT_EQ(python.exitStatus(), QProcess::NormalExit);
    ASSERT_EQ(python.exitCode(), 0) << "needs the package python3-networkx\n"
                                    << python.readAllStandardError().toStdString();

    QFile answers(folder.filePath("answers.json"));
    ASSERT_TRUE(answers.open(QIODevice::ReadOnly));
    const QJsonArray theirs = QJsonDocument::fromJson(answers.readAll()).array();
    ASSERT_EQ(theirs.size(), kNetworks);

    int looped = 0, moves = 0, merged = 0;
    for (int i = 0; i < kNetworks; ++i) {
        const QJsonObject own = ownAnswer(questions[static_cast<std::size_t>(i)]);
        const QJsonObject other = theirs[i].toObject();
        ASSERT_EQ(own.keys(), other.keys()) << i;
        for (const QString &key : own.keys()) {
            ASSERT_EQ(own[key], other[key])
                << "network " << i << ", " << key.toStdString() << "\nown      "
                << compact(own[key]).constData() << "\nnetworkx " << compact(other[key]).constData()
                << "\nnetwork  " << compact(asked[i]).constData();
        }
        looped += own["acyclic"].toBool() ? 0 : 1;
        for (const auto &move : own["holdUps"]["moves"].toArray()) {
            ++moves;
            merged += move.toObject()["needs"].toArray().size() > 1 ? 1 : 0;
        }
    }
    // the comparison is worth something only if there was something to compare
    EXPECT_GT(looped, 50);
    EXPECT_GT(moves, 3000);
    EXPECT_GT(merged, 300);
}

} // namespace
} // namespace ohmwright::plan
