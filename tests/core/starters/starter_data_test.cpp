// SPDX-License-Identifier: GPL-3.0-or-later
// What the starters' data must keep to beside what the interchange asks for: three-point times,
// cautions, acceptance before opening, hands that are there, and what comes before what so that
// nobody is hurt (common practice, no published source). Read from the documents as JSON; and
// the files themselves against their schema, by python3-jsonschema.
#include "core/starters/starter_files.h"
#include "core/starters/starter_links.h"
#include "core/starters/starters.h"
#include "tests/core/starters/combinations.h"

#include <QFile>
#include <QProcess>
#include <QTemporaryDir>

#include <gtest/gtest.h>

#include <algorithm>
#include <functional>
#include <map>
#include <set>

namespace ohmwright {
namespace {

using Json = StarterJson;

Json documentOf(const QString &name, const StarterAnswers &answers = {})
{
    const Result<QByteArray> document = starterDocument(name, answers, sampleBook());
    EXPECT_TRUE(document) << document.error().sentence.toStdString();
    return document ? Json::parse(document->toStdString()) : Json();
}

std::string textOf(const Json &record, const char *field)
{
    return record.value(field, std::string());
}

// Keys of all tasks before each, near and far.
std::map<std::string, std::set<std::string>> allBefore(const Json &tasks)
{
    std::map<std::string, std::set<std::string>> before;
    const std::function<const std::set<std::string> &(const std::string &)> of =
        [&](const std::string &key) -> const std::set<std::string> & {
        if (const auto known = before.find(key); known != before.end())
            return known->second;
        std::set<std::string> found;
        for (const Json &task : tasks) {
            if (task["key"] != key)
                continue;
            for (const Json &need : task["needs"])
                if (need["kind"] == "task") {
                    const auto near = need["after"].get<std::string>();
                    const std::set<std::string> &far = of(near);
                    found.insert(near);
                    found.insert(far.begin(), far.end());
                }
        }
        return before[key] = std::move(found);
    };
    for (const Json &task : tasks)
        of(task["key"].get<std::string>());
    return before;
}

void expectOrdered(const Json &record, const std::string &what)
{
    if (!record.contains("least_" + what))
        return;
    EXPECT_LE(record["least_" + what], record[what]) << record["key"];
    EXPECT_LE(record[what], record["most_" + what]) << record["key"];
}

// A book's tasks as rules ask about them.
class Tasks
{
public:
    explicit Tasks(const Json &document)
        : m_document(document), m_before(allBefore(document["tasks"]))
    {
        for (const Json &task : document["tasks"])
            m_byKey[textOf(task, "key")] = &task;
    }

    const std::map<std::string, const Json *> &all() const { return m_byKey; }
    bool has(const std::string &key) const { return m_byKey.count(key) > 0; }
    const Json &at(const std::string &key) const { return *m_byKey.at(key); }
    bool isAfter(const std::string &key, const std::string &first) const
    {
        return m_before.at(key).count(first) > 0;
    }

    // Whether the task has a need of the kind whose field says that; of any that kind if none is
    // named.
    static bool asks(const Json &task, const char *kind, const char *field = "",
                     const std::string &what = {})
    {
        return std::ranges::any_of(task["needs"], [&](const Json &need) {
            return need["kind"] == kind && (what.empty() || textOf(need, field) == what);
        });
    }

    // Whether it, or a task before it, waits for that test.
    bool waitsForTest(const std::string &key, const std::string &test) const
    {
        return asks(at(key), "test", "test", test) ||
               std::ranges::any_of(m_before.at(key), [&](const std::string &before) {
                   return asks(at(before), "test", "test", test);
               });
    }

    const Json &records(const char *kind) const { return m_document[kind]; }
    bool hasRecord(const char *kind, const std::string &key) const
    {
        return std::ranges::any_of(records(kind),
                                   [&](const Json &record) { return record["key"] == key; });
    }

private:
    const Json &m_document;
    std::map<std::string, std::set<std::string>> m_before;
    std::map<std::string, const Json *> m_byKey;
};

// What is live or may be, or is opened, takes training, a permit and two.
void expectPermitAndSecondPerson(const Tasks &tasks)
{
    for (const auto &[key, task] : tasks.all()) {
        if ((*task)["high_voltage"] != true && !task->contains("opens"))
            continue;
        EXPECT_TRUE(Tasks::asks(*task, "letter", "letter", "training-hv")) << key;
        EXPECT_TRUE(Tasks::asks(*task, "permit")) << key;
        EXPECT_TRUE(Tasks::asks(*task, "person")) << key;
        EXPECT_EQ(task->value("hands", 1), 2) << key;
    }
}

// A unit passes its acceptance checks before it is energised for the first time.
void expectAcceptanceBeforePower(const Tasks &tasks)
{
    for (const Json &test : tasks.records("tests")) {
        if (test["kind"] != "acceptance")
            continue;
        const std::string key = textOf(test, "key");
        EXPECT_TRUE(tasks.waitsForTest("supply-up", key)) << key;
        if (key.starts_with("motor-") || key.starts_with("unit-") || key.starts_with("axle-") ||
            key.starts_with("inverter-")) {
            EXPECT_TRUE(tasks.waitsForTest("first-spin", key)) << key;
        }
    }
    EXPECT_TRUE(tasks.waitsForTest("precharge-bench", "inverter-accepted"));
    if (tasks.has("donor-recorded")) {
        EXPECT_TRUE(tasks.waitsForTest("donor-recorded", "donor-accepted"));
    }
}

// The first voltage on the vehicle, and on the bench, is a current-limited supply's, with something
// in line that opens; only then is the pack put on.
void expectSupplyBeforePack(const Tasks &tasks)
{
    for (const auto &[key, task] : tasks.all())
        if ((*task)["high_voltage"] == true && tasks.isAfter(key, "hv-fitted") &&
            key != "supply-up") {
            EXPECT_TRUE(tasks.isAfter(key, "supply-up")) << key;
        }
    EXPECT_TRUE(tasks.isAfter("supply-up", "hv-fitted"));
    EXPECT_TRUE(tasks.isAfter("supply-up", "interlock"));
    EXPECT_TRUE(tasks.isAfter("first-power-up", "isolation-whole"));
    EXPECT_TRUE(tasks.waitsForTest("first-power-up", "monitor-trips"));
    EXPECT_EQ(tasks.hasRecord("parts", "bench-contactor"),
              !tasks.hasRecord("parts", "contactor-plus"));
    const bool standIn = tasks.hasRecord("parts", "bench-contactor");
    for (const char *onSupply : {"precharge-bench", "bench-supplied", "rig-supplied", "supply-up"})
        if (tasks.has(onSupply)) {
            EXPECT_EQ(Tasks::asks(tasks.at(onSupply), "tool", "part", "bench-contactor"), standIn)
                << onSupply;
        }
    for (const char *turned : {"first-spin", "bench-run", "supply-up"})
        if (tasks.has(turned)) {
            EXPECT_NE(textOf(tasks.at(turned), "note").find("Regeneration off"), std::string::npos)
                << turned;
        }
}

// Nothing is cut or welded in the body before the leave for the first cut is there, nor before the
// petrol is gone, nor while a pack is in.
void expectCuttingInItsPlace(const Tasks &tasks)
{
    for (const char *cut :
         {"inlet-fitted", "body-frame", "body-frame-out", "mounts-made", "carriers-made"})
        if (tasks.has(cut)) {
            EXPECT_TRUE(tasks.isAfter(cut, "first-cut")) << cut;
        }
    for (const char *hot : {"body-frame", "body-frame-out", "mounts-made", "carriers-made"})
        if (tasks.has(hot)) {
            EXPECT_TRUE(tasks.isAfter("pack-lifted", hot)) << hot;
        }
    EXPECT_TRUE(tasks.isAfter("first-cut", "tank-out"));
    for (const char *old : {"tank-out", "engine-loosened"})
        EXPECT_TRUE(tasks.isAfter(old, "drain-tank")) << old;
    if (tasks.has("drawings-answered")) { // an engineer sees what turns
        for (const char *turning : {"coupling-made", "coupling-ordered", "hubs"})
            if (tasks.has(turning)) {
                EXPECT_TRUE(tasks.isAfter(turning, "drawings-answered")) << turning;
            }
    }
}

void expectProofInItsPlace(const Tasks &tasks)
{
    for (const auto &[key, task] : tasks.all())
        if (key != "crimp-samples" && Tasks::asks(*task, "tool", "part", "crimper")) {
            EXPECT_TRUE(tasks.waitsForTest(key, "crimp-pull")) << key;
            EXPECT_TRUE(tasks.isAfter(key, "crimp-samples")) << key;
        }
    for (const char *measured : {"drive-in", "boxes-mounted", "charger-mounted", "heater-fitted"}) {
        EXPECT_TRUE(tasks.isAfter("cables-cut", measured)) << measured;
        EXPECT_TRUE(tasks.isAfter("bonding-measured", measured)) << measured;
    }
    EXPECT_TRUE(tasks.isAfter("alignment", "pack-lifted"));
    EXPECT_TRUE(tasks.isAfter("first-drive", "alignment"));
    for (const Json &test : tasks.records("tests")) {
        const std::string key = textOf(test, "key");
        const auto waits = [&](const auto &task) {
            return Tasks::asks(*task.second, "test", "test", key);
        };
        EXPECT_TRUE(std::ranges::any_of(tasks.all(), waits)) << "nothing waits for " << key;
    }
    for (const Json &letter : tasks.records("letters")) {
        const std::string key = textOf(letter, "key");
        const auto sends = [&](const auto &task) {
            return textOf(*task.second, "asks") == key;
        };
        EXPECT_EQ(std::ranges::count_if(tasks.all(), sends), 1) << "who asks for " << key;
    }
}

// What an inspection takes is there on the day, and nothing else holds it up.
void expectInspectionInItsPlace(const Tasks &tasks)
{
    for (const Json &need : tasks.at("inspection-day")["needs"])
        if (need["kind"] != "task") {
            EXPECT_EQ(need.value("each_time", false), true) << need.dump();
        }
    for (const char *once : {"visit-before-cut", "visit-before-power"})
        if (tasks.has(once)) {
            EXPECT_GT(tasks.at(once).value("fail_percent", 0), 0) << once;
        }
    EXPECT_FALSE(tasks.isAfter("inspection-day", "sell-engine"));
    if (tasks.has("dc-first-charge")) { // at a public post, so registered
        EXPECT_TRUE(tasks.isAfter("dc-first-charge", "registered"));
        EXPECT_TRUE(tasks.isAfter("road-ready", "dc-first-charge"));
    }
    if (tasks.has("engineer-report")) {
        EXPECT_TRUE(tasks.isAfter("folder", "engineer-report"));
    }
}

class StarterData : public testing::TestWithParam<const char *>
{
protected:
    const QString name = QLatin1String(GetParam());
    const Starter starter = *findStarter(name);
};

TEST_P(StarterData, keepsToTheTradeForEveryPairOfAnswers)
{
    for (const StarterAnswers &answers : everyPair(starter)) {
        SCOPED_TRACE(saying(answers));
        const Json document = documentOf(name, answers);
        const Json &tasks = document["tasks"];
        const auto before = allBefore(tasks);
        std::map<std::string, std::string> accepts; // test: part
        for (const Json &test : document["tests"])
            if (test["kind"] == "acceptance")
                accepts[textOf(test, "key")] = textOf(test, "part");
        for (const Json &letter : document["letters"])
            expectOrdered(letter, "answer_days");
        for (const Json &part : document["parts"])
            expectOrdered(part, "lead_days");

        std::map<std::string, const Json *> byKey;
        for (const Json &task : tasks)
            byKey[textOf(task, "key")] = &task;
        for (const Json &task : tasks) {
            const std::string key = textOf(task, "key");
            if (task["milestone"] == true) {
                EXPECT_EQ(task["work_minutes"], 0) << key;
                continue;
            }
            EXPECT_TRUE(task.contains("least_work_minutes")) << key;
            EXPECT_GT(task["work_minutes"], 0) << key;
            EXPECT_TRUE(task.contains("trade")) << key;
            EXPECT_FALSE(textOf(task, "note").empty()) << key;
            expectOrdered(task, "work_minutes");
            expectOrdered(task, "wait_days");

            if (textOf(task, "trade") == "testing" || task["high_voltage"] == true ||
                task.contains("opens")) {
                EXPECT_NE(textOf(task, "note").find("Caution: "), std::string::npos) << key;
            }
            if (const std::string redo = textOf(task, "redo_from"); !redo.empty()) {
                EXPECT_TRUE(before.at(key).count(redo)) << key << " redone from " << redo;
            }

            // nothing is opened before its low-energy acceptance checks have passed
            if (const std::string opened = textOf(task, "opens"); !opened.empty()) {
                bool accepted = false;
                std::set<std::string> way = before.at(key);
                way.insert(key);
                for (const std::string &one : way)
                    for (const Json &need : (*byKey.at(one))["needs"])
                        accepted = accepted ||
                                   (need["kind"] == "test" && accepts.count(textOf(need, "test")) &&
                                    accepts[textOf(need, "test")] == opened);
                EXPECT_TRUE(accepted) << key << " opens " << opened;
            }
        }
        if (HasFailure())
            return;
    }
}

TEST_P(StarterData, keepsItsOrderForEveryCombinationOfAnswers)
{
    for (const StarterAnswers &answers : everyCombination(starter)) {
        SCOPED_TRACE(saying(answers));
        const Json document = documentOf(name, answers);
        const Tasks tasks(document);
        expectPermitAndSecondPerson(tasks);
        expectAcceptanceBeforePower(tasks);
        expectSupplyBeforePack(tasks);
        expectCuttingInItsPlace(tasks);
        expectProofInItsPlace(tasks);
        expectInspectionInItsPlace(tasks);
        if (HasFailure())
            return;
    }
}

// A task that cannot be left overnight, or takes two, must fit a time of the week there is.
TEST_P(StarterData, hasTheHandsAndHoursThatItsTasksTake)
{
    for (const StarterAnswers &answers : everyPair(starter)) {
        const Json document = documentOf(name, answers);
        std::map<std::string, std::pair<int, int>> own, helper; // weekday: minutes, hands
        int most = 0, together = 0;
        for (const Json &time : document["working_times"]) {
            const auto day = textOf(time, "weekday");
            const bool isOwn = textOf(time, "key").starts_with("own-");
            (isOwn ? own : helper)[day] = {time["minutes"], time["hands"]};
        }
        for (const auto &[day, time] : own) {
            most = std::max(most, time.first);
            if (const auto with = helper.find(day); with != helper.end())
                together = std::max(together, std::min(time.first, with->second.first));
        }
        EXPECT_GT(together, 0) << saying(answers);
        for (const Json &task : document["tasks"]) {
            const int hands = task.value("hands", 1);
            EXPECT_LE(hands, 2) << task["key"];
            if (task.value("one_sitting", false)) {
                EXPECT_LE(task["most_work_minutes"].get<int>() / hands,
                          hands == 1 ? most : together)
                    << task["key"] << " " << saying(answers);
            }
        }
        if (HasFailure())
            return;
    }
}

TEST_P(StarterData, leavesOutNeedsOfWhatTheAnswersLeaveOut)
{
    const Json one = documentOf(name, {{QStringLiteral("assist"), QStringLiteral("neither")}});
    for (const Json &part : one["parts"])
        EXPECT_NE(part["key"], "vacuum-pump");
    for (const Json &task : one["tasks"])
        for (const Json &need : task["needs"])
            EXPECT_NE(need.value("test", std::string()), "vacuum") << task["key"];
}

INSTANTIATE_TEST_SUITE_P(Starters, StarterData, testing::Values("gearbox", "unit", "axle"),
                         [](const auto &each) { return std::string(each.param); });

TEST(StarterFiles, fitTheirSchema)
{
    const QTemporaryDir folder;
    QFile documents(folder.filePath(QStringLiteral("documents")));
    ASSERT_TRUE(documents.open(QIODevice::WriteOnly));
    const QStringList names = QStringList{QStringLiteral("common")} + starterNames();
    for (const QString &name : names)
        documents.write((starterFile(name)->dump() + "\n").c_str());
    Json wrong = *starterFile(QStringLiteral("gearbox"));
    wrong["tasks"][0]["colour"] = "red";
    documents.write((wrong.dump() + "\n").c_str());
    documents.close();
    QProcess judge;
    judge.start(QStringLiteral("/usr/bin/python3"),
                {QStringLiteral(OHMWRIGHT_SOURCE_DIR "/tests/core/interchange/validate.py"),
                 QStringLiteral(OHMWRIGHT_SOURCE_DIR "/resources/schema/starter-1.schema.json"),
                 documents.fileName()});
    ASSERT_TRUE(judge.waitForFinished(60'000));
    ASSERT_EQ(judge.exitCode(), 0) << judge.readAllStandardError().toStdString();
    EXPECT_EQ(judge.readAllStandardOutput().toStdString(), "valid\nvalid\nvalid\nvalid\ninvalid\n");
}

TEST(StarterFiles, leaveOutLinksThatALongerWaySays)
{
    Json tasks = Json::parse(R"([
        {"key": "a", "needs": []},
        {"key": "b", "needs": [{"kind": "task", "after": "a"}]},
        {"key": "c", "needs": [{"kind": "task", "after": "a"}, {"kind": "task", "after": "b"},
                               {"kind": "task", "after": "b"}, {"kind": "person", "what": "one"}]},
        {"key": "d", "needs": [{"kind": "task", "after": "nowhere"}]}])");
    leaveOutLinksSaidByOthers(tasks);
    EXPECT_EQ(tasks[1]["needs"].size(), 1U);
    ASSERT_EQ(tasks[2]["needs"].size(), 2U);
    EXPECT_EQ(tasks[2]["needs"][0]["after"], "b");
    EXPECT_EQ(tasks[2]["needs"][1]["kind"], "person");
    EXPECT_EQ(tasks[3]["needs"].size(), 1U) << "for the interchange to refuse";

    Json loop = Json::parse(R"([{"key": "a", "needs": [{"kind": "task", "after": "b"}]},
                                {"key": "b", "needs": [{"kind": "task", "after": "a"}]}])");
    const Json before = loop;
    leaveOutLinksSaidByOthers(loop);
    EXPECT_EQ(loop, before);
}

TEST(StarterFiles, holdConditionsAgainstAllAnswers)
{
    const QMap<std::string, std::string> answers{{"pack", "two"}, {"starter", "unit"}};
    const auto included = [&](const char *json) {
        return isIncluded(Json::parse(json), answers);
    };
    EXPECT_TRUE(*included("{}"));
    EXPECT_TRUE(*included(R"({"when": {"pack": "two"}})"));
    EXPECT_TRUE(*included(R"({"when": {"pack": ["one", "two"], "starter": "unit"}})"));
    EXPECT_FALSE(*included(R"({"when": {"pack": "two", "starter": "axle"}})"));
    EXPECT_FALSE(*included(R"({"unless": {"pack": "one", "starter": "unit"}})"));
    EXPECT_TRUE(*included(R"({"unless": {"pack": "one"}})"));
    const auto unknown = included(R"({"when": {"weather": "fine"}})");
    ASSERT_FALSE(unknown);
    EXPECT_TRUE(unknown.error().sentence.contains(QLatin1String("weather")));
}

} // namespace
} // namespace ohmwright
