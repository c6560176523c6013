// SPDX-License-Identifier: GPL-3.0-or-later
// What the forecast makes of the starters: nothing that protects people is ever offered to be left
// out, nothing is ordered before it is decided, nobody is alone where two must be, and the wished
// dates are ones that can be kept.
#include "core/forecast/free_work.h"
#include "core/forecast/gains.h"
#include "core/starters/starters.h"
#include "tests/core/interchange/counting_ids.h"
#include "tests/core/starters/combinations.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <set>

namespace ohmwright {
namespace {

using namespace forecast;

class StarterForecast : public testing::TestWithParam<const char *>
{
protected:
    const QString name = QLatin1String(GetParam());
    const Starter starter = *findStarter(name);

    Records recordsOf(const StarterAnswers &answers) const
    {
        auto records = starterRecords(name, answers, sampleBook(), countingIds());
        EXPECT_TRUE(records) << records.error().sentence.toStdString();
        return *records;
    }
};

TEST_P(StarterForecast, LeavesOutComfortAloneAndNeverWhatProtectsPeople)
{
    const std::set<QString> comfort{QStringLiteral("sell-engine")};
    const std::set<QString> safety{QStringLiteral("interlock"),    QStringLiteral("bonding"),
                                   QStringLiteral("flange-guard"), QStringLiteral("brakes-bled"),
                                   QStringLiteral("hv-labels"),    QStringLiteral("labels")};
    for (const StarterAnswers &answers : everyPair(starter)) {
        SCOPED_TRACE(saying(answers));
        const Records records = recordsOf(answers);
        const WaitedOn waited = waitedOnBy(records);
        for (const Task &task : records.all<Task>()) {
            const QString kept = whyKept(records, task, waited);
            const bool isComfort = comfort.count(task.key) > 0; // all else leads to the road
            EXPECT_EQ(kept.endsWith(u'.'), !isComfort) << task.key.toStdString();
            const auto change = parsePlanChange(QStringLiteral("drop:") + task.key, records);
            EXPECT_EQ(change.has_value(), isComfort) << task.key.toStdString();
            const QString alone = whyKept(records, task, {}); // if nothing waited on it
            if (task.highVoltage || safety.count(task.key)) {
                EXPECT_FALSE(task.highVoltage && alone.isEmpty()) << task.key.toStdString();
                EXPECT_FALSE(kept.isEmpty()) << task.key.toStdString();
            }
        }
        if (HasFailure())
            return;
    }
}

TEST_P(StarterForecast, OrdersTodayOnlyWhatWaitsForNothing)
{
    for (const StarterAnswers &answers : everyPair(starter)) {
        SCOPED_TRACE(saying(answers));
        const Records records = recordsOf(answers);
        const WorkPlan plan = workPlanOf(records, sampleBook().today);
        Settings settings;
        settings.samples = 1;
        settings.orderPasses = 0;
        const Simulation simulation(plan, settings);
        for (const PlanChange &change :
             worthTrying(records, plan, simulation.run(), QStringLiteral("road-ready"))) {
            EXPECT_NE(change.kind, PlanChange::Kind::Drop) << change.key.toStdString();
            if (change.kind != PlanChange::Kind::Order)
                continue;
            for (const Task &task : records.all<Task>())
                if (records.find(task.buys) == records.byKey<Part>(change.key)) {
                    for (const TaskNeed &need : records.of<TaskNeed>(task.id))
                        EXPECT_NE(need.kind, NeedKind::Task) << change.key.toStdString();
                }
        }
        if (const Part *report = records.byKey<Part>(QStringLiteral("final-report"))) {
            EXPECT_FALSE(parsePlanChange(QStringLiteral("order:final-report"), records));
            EXPECT_TRUE(whyNotToday(records, *report).contains(report->name));
        }
        if (HasFailure())
            return;
    }
}

TEST_P(StarterForecast, PlansNobodyAloneWhereACautionOrANeedSaysTwo)
{
    for (const StarterAnswers &answers : everyPair(starter)) {
        SCOPED_TRACE(saying(answers));
        const Records records = recordsOf(answers);
        const WorkPlan plan = workPlanOf(records, sampleBook().today);
        EXPECT_TRUE(plan.doubts.isEmpty()) << plan.doubts.join(u'\n').toStdString();
        for (const Activity &a : plan.activities) {
            if (!a.task || a.work.most == 0)
                continue;
            const Task &task = records.all<Task>().rows()[*a.task];
            const auto needs = records.of<TaskNeed>(task.id);
            const bool two = task.note.contains(QLatin1String("second person")) ||
                             std::any_of(needs.begin(), needs.end(), [](const TaskNeed &need) {
                                 return need.kind == NeedKind::Person;
                             });
            if (two) {
                EXPECT_EQ(task.hands, 2) << task.key.toStdString();
                EXPECT_GE(a.demand.at(0), 2) << a.key.toStdString();
            }
        }
        if (HasFailure())
            return;
    }
}

// The wished dates are a rule of thumb (starter_records.cpp); a milestone's 80 % day stands by it.
TEST_P(StarterForecast, WishesForDatesNearThoseItTellsAt80Percent)
{
    std::vector<StarterAnswers> all{{}};
    for (const StarterQuestion &question : starter.questions)
        for (const StarterAnswer &answer : question.answers)
            if (question.key == QLatin1String("hands") && answer.key != question.usual)
                all.push_back({{question.key, answer.key}});
    for (const StarterAnswers &answers : all) {
        SCOPED_TRACE(saying(answers));
        const Records records = recordsOf(answers);
        const WorkPlan plan = workPlanOf(records, sampleBook().today);
        Settings settings;
        settings.samples = 400;
        settings.orderPasses = 4000;
        const Forecast told = forecastOf(plan, settings);
        for (const std::size_t m : plan.milestones) {
            const Task *task = records.byKey<Task>(plan.activities[m].key);
            const auto wished = static_cast<int>(sampleBook().today.daysTo(*task->targetOn));
            const int at80 = told.activities[m].ready[1];
            EXPECT_LE(wished * 100, at80 * (task->key == QLatin1String("road-ready") ? 125 : 180))
                << task->key.toStdString() << " wished for day " << wished << ", told " << at80;
            EXPECT_GE(wished * 100, at80 * 90)
                << task->key.toStdString() << " wished for day " << wished << ", told " << at80;
        }
    }
}

INSTANTIATE_TEST_SUITE_P(Starters, StarterForecast, testing::Values("gearbox", "unit", "axle"),
                         [](const auto &each) { return std::string(each.param); });

} // namespace
} // namespace ohmwright
