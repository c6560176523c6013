// SPDX-License-Identifier: GPL-3.0-or-later
// Every combination of answers to every starter, as records and as a network.
#include "core/parts/guided_tests.h"
#include "core/plan/plan_view.h"
#include "core/starters/starters.h"
#include "tests/core/interchange/counting_ids.h"
#include "tests/core/starters/combinations.h"

#include <QCryptographicHash>

#include <gtest/gtest.h>

#include <algorithm>
#include <set>

namespace ohmwright {
namespace {

constexpr std::size_t kFewest = 80, kMost = 150;
constexpr int kFewestMilestones = 6, kMostMilestones = 9;
const std::set<QString> kComfort{QStringLiteral("sell-engine")}; // leads nowhere, may be left out

// All tasks before `task`, near and far.
std::set<std::size_t> allBefore(const plan::Network &network, std::size_t task)
{
    std::set<std::size_t> found;
    std::vector<std::size_t> open{task};
    while (!open.empty()) {
        const std::size_t one = open.back();
        open.pop_back();
        for (const std::size_t before : network.tasks[one].after)
            if (found.insert(before).second)
                open.push_back(before);
    }
    return found;
}

// Which tasks wait on `first`, near and far; `order` is topological.
std::vector<char> allBehind(const plan::Network &network, const std::vector<std::size_t> &order,
                            std::size_t first)
{
    std::vector<char> behind(network.tasks.size(), 0);
    for (const std::size_t task : order)
        for (const std::size_t before : network.tasks[task].after)
            if (before == first || behind[before])
                behind[task] = 1;
    return behind;
}

bool waitsOnLetter(const Records &records, const Task &task, const char *letter)
{
    const auto needs = records.of<TaskNeed>(task.id);
    return std::any_of(needs.begin(), needs.end(), [&](const TaskNeed &need) {
        const Letter *named = records.find(need.letter);
        return named && named->key == QLatin1String(letter);
    });
}

// Nothing of high voltage before the course, and not before its certificate is there.
void expectTrainingFirst(const Records &records, const plan::Network &network)
{
    const auto course = network.find(QStringLiteral("hv-course"));
    ASSERT_TRUE(course);
    const Task &trained = records.all<Task>().rows()[*course];
    const Letter *certificate = records.find(trained.asks);
    ASSERT_NE(certificate, nullptr);
    EXPECT_EQ(certificate->key, QStringLiteral("training-hv"));
    EXPECT_GT(trained.waitDays, 0) << "days at the provider, no evenings";
    const std::vector<char> behind = allBehind(network, plan::topologicalOrder(network), *course);
    for (std::size_t i = 0; i < network.tasks.size(); ++i) {
        const Task &task = records.all<Task>().rows()[i];
        if (!task.highVoltage)
            continue;
        EXPECT_TRUE(behind[i]) << task.key.toStdString();
        EXPECT_TRUE(waitsOnLetter(records, task, "training-hv")) << task.key.toStdString();
    }
}

// What a task sends for is waited for once: by the delivery or the answer, in the tasks behind it
// that need it.
void expectSentForOnce(const Records &records, const plan::Network &network)
{
    const auto &tasks = records.all<Task>().rows();
    const std::vector<std::size_t> order = plan::topologicalOrder(network);
    std::set<QString> bought;
    for (std::size_t i = 0; i < tasks.size(); ++i) {
        if (!tasks[i].buys && !tasks[i].asks)
            continue;
        if (const Part *part = records.find(tasks[i].buys)) {
            bought.insert(part->key);
            EXPECT_EQ(tasks[i].waitDays, 0) << tasks[i].key.toStdString();
        }
        const std::vector<char> behind = allBehind(network, order, i);
        bool needed = false;
        for (std::size_t other = 0; other < tasks.size(); ++other)
            for (const TaskNeed &need : records.of<TaskNeed>(tasks[other].id)) {
                if (need.kind == NeedKind::Figure ||
                    !((need.part && need.part == tasks[i].buys) ||
                      (need.letter && need.letter == tasks[i].asks)))
                    continue;
                needed = true;
                EXPECT_TRUE(behind[other])
                    << tasks[other].key.toStdString() << " after " << tasks[i].key.toStdString();
            }
        EXPECT_TRUE(needed) << "nobody needs what is sent for by " << tasks[i].key.toStdString();
    }
    for (const char *dear : {"pack", "motor", "inverter", "drive-unit", "bus-bars", "donor-vehicle",
                             "box-making", "coupling-machining", "shaft-making", "final-report"}) {
        const Part *part = records.byKey<Part>(QLatin1String(dear));
        if (part && part->estimate && !part->estimate->isZero()) {
            EXPECT_TRUE(bought.count(part->key)) << dear;
        }
    }
    // whatever costs money is needed by a task, so that the cash is counted when it falls due
    std::set<Id<Part>> needed;
    for (const TaskNeed &need : records.all<TaskNeed>())
        if (need.part)
            needed.insert(*need.part);
    for (const Part &part : records.all<Part>())
        if (part.estimate && !part.estimate->isZero()) {
            EXPECT_TRUE(needed.count(part.id)) << part.key.toStdString();
        }
}

class EveryStarter : public testing::TestWithParam<const char *>
{
protected:
    const QString name = QLatin1String(GetParam());
    const Starter starter = *findStarter(name);
};

TEST_P(EveryStarter, asksSixQuestionsThatHaveAUsualAnswer)
{
    EXPECT_EQ(starter.questions.size(), 6U);
    for (const StarterQuestion &question : starter.questions) {
        EXPECT_GE(question.answers.size(), 2U);
        EXPECT_TRUE(question.asks.endsWith(u'?')) << question.asks.toStdString();
        EXPECT_TRUE(std::any_of(question.answers.begin(), question.answers.end(),
                                [&](const StarterAnswer &a) { return a.key == question.usual; }));
    }
}

// The interchange refuses loops, references to nothing and records that do not go together, so a
// book that comes out has none of them.
TEST_P(EveryStarter, givesABookForEveryCombinationOfAnswers)
{
    std::set<QByteArray> different; // by their digests
    const std::vector<StarterAnswers> all = everyCombination(starter);
    for (const StarterAnswers &answers : all) {
        SCOPED_TRACE(saying(answers));
        const Result<Records> made = starterRecords(name, answers, sampleBook(), countingIds());
        ASSERT_TRUE(made) << made.error().sentence.toStdString() << " at "
                          << made.error().where.toStdString();
        const Records &records = *made;
        different.insert(QCryptographicHash::hash(dump(records), QCryptographicHash::Sha256));

        const auto &tasks = records.all<Task>().rows();
        EXPECT_GE(tasks.size(), kFewest);
        EXPECT_LE(tasks.size(), kMost);
        const plan::Network network = plan::networkOf(records, sampleBook().today);
        ASSERT_TRUE(plan::findLoop(network).empty());
        std::set<std::size_t> leading;
        int milestones = 0;
        for (std::size_t i = 0; i < tasks.size(); ++i) {
            if (!tasks[i].milestone)
                continue;
            ++milestones;
            const std::set<std::size_t> before = allBefore(network, i);
            EXPECT_FALSE(before.empty())
                << tasks[i].key.toStdString() << " is reached from nothing";
            EXPECT_TRUE(tasks[i].targetOn && *tasks[i].targetOn > sampleBook().today);
            leading.insert(before.begin(), before.end());
            leading.insert(i);
        }
        EXPECT_GE(milestones, kFewestMilestones);
        EXPECT_LE(milestones, kMostMilestones);
        for (std::size_t i = 0; i < tasks.size(); ++i)
            EXPECT_NE(leading.count(i), kComfort.count(tasks[i].key))
                << tasks[i].key.toStdString() << " leads to no milestone, or is no comfort";
        const auto end = network.find(QStringLiteral("road-ready"));
        ASSERT_TRUE(end);
        EXPECT_EQ(allBefore(network, *end).size() + 1 + kComfort.size(), tasks.size())
            << "all else leads to the road";

        expectTrainingFirst(records, network);
        expectSentForOnce(records, network);

        // what is cut and what is bought wait on the letters (approval route first)
        const Task *cut = records.byKey<Task>(QStringLiteral("first-cut"));
        const Task *pack =
            records.byKey<Task>(name == QLatin1String("axle") ? QStringLiteral("buy-donor")
                                                              : QStringLiteral("buy-pack"));
        ASSERT_TRUE(cut && pack);
        for (const Task *held : {cut, pack})
            for (const char *letter : {"authority-route", "insurer-laid-up"})
                EXPECT_TRUE(waitsOnLetter(records, *held, letter)) << letter;
        EXPECT_TRUE(waitsOnLetter(records, *pack, "training-hv"));
        EXPECT_EQ(waitsOnLetter(records, *cut, "engineer-drawings"),
                  answers.value(QStringLiteral("approval")) != QLatin1String("end"));
        if (HasFailure())
            return;
    }
    EXPECT_EQ(different.size(), all.size()) << "each answer changes the book";
}

TEST_P(EveryStarter, beginsWithTheAuthorityAndTheVehicleAsItCame)
{
    const auto records = starterRecords(name, {}, sampleBook(), countingIds());
    ASSERT_TRUE(records);
    const plan::Network network = plan::networkOf(*records, sampleBook().today);
    const auto next = plan::nextMilestone(network);
    ASSERT_TRUE(next);
    EXPECT_EQ(network.tasks[*next].key, QStringLiteral("route-agreed"));
    const std::set<QString> asItCame{QStringLiteral("papers"), QStringLiteral("body & chassis")};
    const plan::HoldUps first = plan::holdUps(network, *next);
    for (const std::size_t task : first.chain)
        EXPECT_TRUE(asItCame.count(network.tasks[task].area))
            << network.tasks[task].key.toStdString();

    // the same stand first on the way to the road
    const plan::HoldUps all = plan::holdUps(network, *network.find(QStringLiteral("road-ready")));
    ASSERT_GE(all.moves.size(), 8U);
    EXPECT_EQ(all.moves.front().subject, QStringLiteral("ask-authority"));
    for (const plan::Move &move : all.moves)
        EXPECT_NE(move.subject, QStringLiteral("letter:authority-route"))
            << "asked by its task, no move beside it";
    QStringList start;
    for (std::size_t i = 0; i < 8; ++i)
        start << all.moves[i].subject;
    EXPECT_TRUE(start.contains(QStringLiteral("ask-authority"))) << start.join(u' ').toStdString();
    EXPECT_TRUE(start.contains(QStringLiteral("part:corner-scales")));
    EXPECT_TRUE(start.contains(QStringLiteral("photo-record")));
    for (const plan::Move &move : all.moves)
        EXPECT_FALSE(move.kind == plan::MoveKind::Order &&
                     move.subject == QLatin1String("part:pack"))
            << "the battery is bought by its task, when the letters are there";
}

TEST_P(EveryStarter, isTheSameBookAfterDumpAndLoad)
{
    for (const StarterAnswers &answers :
         {StarterAnswers{},
          StarterAnswers{{QStringLiteral("charging"), QStringLiteral("dc")},
                         {QStringLiteral("approval"), QStringLiteral("visits")}}}) {
        const auto records = starterRecords(name, answers, sampleBook(), countingIds());
        ASSERT_TRUE(records);
        const QByteArray once = dump(*records);
        const auto again = parse(once, countingIds());
        ASSERT_TRUE(again) << again.error().sentence.toStdString();
        EXPECT_EQ(dump(*again), once);
    }
}

TEST_P(EveryStarter, hasTheGuidedStepsOfTheFirstPowerUp)
{
    const auto records = starterRecords(name, {}, sampleBook(), countingIds());
    ASSERT_TRUE(records);
    const TestRecord *test = records->byKey<TestRecord>(QStringLiteral("first-power-up"));
    ASSERT_NE(test, nullptr);
    EXPECT_EQ(records->of<TestStep>(test->id).size(), firstPowerUpSteps().size());
}

// A fresh book whose budget is short on the first day teaches people to pass over it.
TEST_P(EveryStarter, hasAllowancesThatCoverWhatItsPartsAreExpectedToCost)
{
    for (const StarterAnswers &answers : everyPair(starter)) {
        const auto records = starterRecords(name, answers, sampleBook(), countingIds());
        ASSERT_TRUE(records);
        for (const BudgetLine &line : records->all<BudgetLine>()) {
            Money sum = Money::zero(Currency());
            for (const Part &part : records->all<Part>())
                if (part.line == line.id && part.estimate)
                    sum = sum + *part.estimate;
            EXPECT_LE(sum.minor(), line.allowance.minor())
                << line.key.toStdString() << ": " << saying(answers);
        }
        if (HasFailure())
            return;
    }
}

// No rate is made up.
TEST_P(EveryStarter, setsNoAllowanceInACurrencyItDoesNotKnow)
{
    const Currency pounds = *Currency::fromCode(u"GBP");
    const auto records = starterRecords(name, {}, sampleBook(pounds), countingIds());
    ASSERT_TRUE(records) << records.error().sentence.toStdString();
    EXPECT_EQ(records->build().currency, pounds);
    for (const BudgetLine &line : records->all<BudgetLine>()) {
        EXPECT_EQ(line.allowance, Money::zero(pounds));
        EXPECT_TRUE(line.note.contains(QLatin1String("EUR"))) << line.note.toStdString();
    }
}

INSTANTIATE_TEST_SUITE_P(Starters, EveryStarter, testing::Values("gearbox", "unit", "axle"),
                         [](const auto &each) { return std::string(each.param); });

TEST(Starters, areListedWithTheirNames)
{
    QStringList names;
    for (const Starter &starter : starters()) {
        names << starter.name;
        EXPECT_FALSE(starter.title.isEmpty());
        EXPECT_FALSE(starter.summary.isEmpty());
    }
    EXPECT_EQ(names, (QStringList{QStringLiteral("gearbox"), QStringLiteral("unit"),
                                  QStringLiteral("axle")}));
}

TEST(Starters, refuseWhatTheyDoNotKnowNamingTheChoices)
{
    const auto none = findStarter(QStringLiteral("rocket"));
    ASSERT_FALSE(none);
    EXPECT_TRUE(none.error().sentence.contains(QLatin1String("gearbox, unit, axle")));
    const Starter gearbox = *findStarter(QStringLiteral("gearbox"));
    const auto refused = [&](const QStringList &words) {
        const auto answers = readAnswers(gearbox, words);
        return answers ? QString() : answers.error().sentence;
    };
    EXPECT_TRUE(
        refused({QStringLiteral("colour=red")}).contains(QLatin1String("approval, assist")));
    EXPECT_TRUE(
        refused({QStringLiteral("charging=solar")}).contains(QLatin1String("outlet, ac, dc")));
    EXPECT_TRUE(refused({QStringLiteral("charging")}).contains(QLatin1String("QUESTION=ANSWER")));
    EXPECT_TRUE(refused({QStringLiteral("charging=ac"), QStringLiteral("charging=dc")})
                    .contains(QLatin1String("twice")));
    EXPECT_EQ(refused({QStringLiteral("charging=dc"), QStringLiteral("pack=two")}), QString());
    EXPECT_FALSE(starterRecords(QStringLiteral("gearbox"),
                                {{QStringLiteral("pack"), QStringLiteral("none")}}, sampleBook(),
                                countingIds()));
}

} // namespace
} // namespace ohmwright
