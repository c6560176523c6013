// SPDX-License-Identifier: GPL-3.0-or-later
// The split itself is held to published instances in balanced_groups_test.cpp.
// Sources: capacities add in parallel, 4 of 2.6 Ah give 10.4 Ah (teaching text on packs, 13s4p);
// resistances in parallel, any text on circuits; outliers, Iglewicz and Hoaglin 1993 (worked here).
#include "core/checks/grouping.h"
#include "core/checks/robust_statistics.h"
#include "core/checks/worksheet.h"
#include "tests/published/checks/reading.h"
#include "tests/support/chance.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace ohmwright {

namespace {

MeasuredModule module(int number, double ampereHours, double milliohms, double lostMillivolts = 6)
{
    const QString n = QString::number(number);
    MeasuredModule m;
    m.name = QStringLiteral("M") + n;
    m.capacity = given(Charge::fromSi(ampereHours * 3600),
                       QString(QStringLiteral("capacity of module ") + n), Evidence::Measured);
    m.resistance = given(ohms(milliohms * 1e-3),
                         QString(QStringLiteral("resistance of module ") + n), Evidence::Measured);
    m.lost = given(volts(lostMillivolts * 1e-3),
                   QString(QStringLiteral("voltage lost by module ") + n), Evidence::Measured);
    return m;
}

GroupingInputs layout(std::vector<MeasuredModule> modules, int groups, int size)
{
    GroupingInputs in;
    in.modules = std::move(modules);
    in.groupsInSeries = given(double(groups), QStringLiteral("groups in series"));
    in.modulesInGroup = given(double(size), QStringLiteral("modules in a group"));
    in.cellsInModule = given(2.0, QStringLiteral("cells in a module"));
    in.rest = given(seconds(10 * 86400), QStringLiteral("rest"), Evidence::Measured);
    return in;
}

std::vector<MeasuredModule> randomModules(Chance &chance, int count)
{
    std::vector<MeasuredModule> modules;
    for (int i = 0; i < count; ++i)
        modules.push_back(module(i, 60 + chance.below(400) / 100.0, 2 + chance.below(20) / 100.0,
                                 5 + chance.below(20) / 10.0));
    return modules;
}

} // namespace

// 10.4 Ah (exact as printed); four of 1.2 mΩ in parallel 0.3 mΩ.
TEST(Grouping, AddsCapacitiesAndConductances)
{
    std::vector<MeasuredModule> modules;
    for (int i = 0; i < 8; ++i)
        modules.push_back(module(i, 2.6, 1.2));
    const Check check = judgeGrouping(layout(modules, 2, 4));
    const auto step = std::find_if(check.steps.begin(), check.steps.end(), [](const CheckStep &s) {
        return s.what == QStringLiteral("group 1");
    });
    ASSERT_NE(step, check.steps.end());
    EXPECT_EQ(step->result,
              QString(showSi(10.4 * 3600, u"Ah") + QStringLiteral(", ") + showSi(0.3e-3, u"mΩ")));
    EXPECT_EQ(check.verdict, Verdict::Holds);
    EXPECT_EQ(check.caution, QStringLiteral("battery"));
}

// Median 10, MAD 1: 0.6745·(20 − 10)/1 = 6.745; no MAD: 0.7979·90/11.25 = 6.383.
TEST(Grouping, ScoresOutliersAsIglewiczAndHoaglin)
{
    EXPECT_NEAR(modifiedZScores({9, 10, 11, 8.5, 20, 9.5, 11})[4], 0.6745 * 10 / 1, 1e-3);
    EXPECT_NEAR(modifiedZScores({10, 10, 10, 10, 10, 10, 10, 100})[7], 6.383, 1e-3);
    EXPECT_EQ(modifiedZScores({3, 3, 3}), std::vector<double>(3, 0.0));
}

TEST(Grouping, SetsAsideWhatStandsOutAndWhatLosesChargeWithTheReason)
{
    Chance chance(5);
    std::vector<MeasuredModule> modules = randomModules(chance, 15);
    modules[3] = module(3, 48, 2.1);
    modules[7] = module(7, 62, 4.4);
    modules[11] = module(11, 62, 2.1, 200);
    const ModuleGrouping made = groupModules(layout(modules, 3, 4));
    ASSERT_EQ(made.setAside.size(), 3U);
    EXPECT_EQ(made.setAside[0].module, 3U);
    EXPECT_TRUE(made.setAside[0].reason.startsWith(QStringLiteral("Its capacity of")));
    EXPECT_EQ(made.setAside[1].module, 7U);
    EXPECT_TRUE(made.setAside[1].reason.startsWith(QStringLiteral("Its resistance of")));
    EXPECT_EQ(made.setAside[2].module, 11U);
    // 200 mV of two cells in ten days: 70 mV a cell in a week
    EXPECT_EQ(made.setAside[2].reason, QStringLiteral("It loses %1 a cell in a week, more than %2.")
                                           .arg(showSi(0.07, u"mV"), showSi(0.01, u"mV")));
    EXPECT_EQ(made.groups.size(), 3U);
    EXPECT_TRUE(made.spare.empty());
    for (const auto &group : made.groups) {
        EXPECT_EQ(group.size(), 4U);
        EXPECT_EQ(std::count(group.begin(), group.end(), 3U), 0);
    }
}

TEST(Grouping, ShowsTheBoundAndTheDistanceFromIt)
{
    Chance chance(6);
    const Check check = judgeGrouping(layout(randomModules(chance, 12), 6, 2));
    const double distance = reading::step(check, QStringLiteral("distance from the bound"));
    EXPECT_NEAR(distance, 0, 1e-9); // small: proven
    EXPECT_GT(reading::step(check, QStringLiteral("weakest group")), 0);
    EXPECT_EQ(check.plots.size(), 1U);
}

TEST(Grouping, FailsWithTooFewWhateverElseIsNotKnown)
{
    std::vector<MeasuredModule> modules{module(0, 60, 2), module(1, 60, 2)};
    modules[1].resistance = notKnown<Resistance>(QStringLiteral("resistance of module 1"));
    const Check few = judgeGrouping(layout(modules, 3, 2));
    EXPECT_EQ(few.verdict, Verdict::Fails);
    const Check open = judgeGrouping(layout(modules, 1, 2));
    EXPECT_EQ(open.verdict, Verdict::Unknown);
    EXPECT_EQ(open.sentence, QStringLiteral("Unknown for want of resistance of module 1."));
}

TEST(Grouping, RefusesPartsOfModulesAndDoesNotGroupThem)
{
    Chance chance(7);
    GroupingInputs in = layout(randomModules(chance, 6), 3, 2);
    in.modulesInGroup.value = 1.5;
    EXPECT_EQ(judgeGrouping(in).verdict, Verdict::Unknown);
    EXPECT_TRUE(groupModules(in).groups.empty());
    in.modulesInGroup.value = 2;
    in.modules[2].capacity.value = Charge::fromSi(-1);
    EXPECT_EQ(judgeGrouping(in).verdict, Verdict::Unknown);
    EXPECT_EQ(judgeGrouping(in).refusals.size(), 1);
}

TEST(Grouping, TellsTheCurrentOfJoiningUnequalModules)
{
    std::vector<MeasuredModule> modules{module(0, 60, 2), module(1, 60, 2)};
    GroupingInputs in = layout(modules, 1, 2);
    in.differenceBeforeJoining = given(volts(0.2), QStringLiteral("difference before joining"));
    EXPECT_NEAR(
        reading::step(judgeGrouping(in), QStringLiteral("current at the moment two are joined")),
        50, 1e-9);
}

// Worse: fewer modules, a shorter rest, tighter thresholds.
TEST(Grouping, NoVerdictIsBetterWhenAnInputIsWorse)
{
    Chance chance(8);
    for (int round = 0; round < 60; ++round) {
        const int size = chance.between(1, 3);
        const int groups = chance.between(2, 6);
        const GroupingInputs in =
            layout(randomModules(chance, size * groups + chance.below(3)), groups, size);
        const Verdict verdict = judgeGrouping(in).verdict;
        GroupingInputs fewer = in;
        fewer.modules.resize(static_cast<std::size_t>(size * groups - 1));
        EXPECT_GE(judgeGrouping(fewer).verdict, verdict);
        GroupingInputs shorter = in;
        shorter.rest.value = *in.rest.value * 0.6;
        for (MeasuredModule &m : shorter.modules)
            m.lost.value = *m.lost.value * 0.6; // the same loss a week
        EXPECT_GE(judgeGrouping(shorter).verdict, verdict);
        GroupingInputs tighter = in;
        tighter.capacitySpread.own = in.capacitySpread.published * 0.3;
        tighter.resistanceSpread.own = in.resistanceSpread.published * 0.3;
        EXPECT_GE(judgeGrouping(tighter).verdict, verdict);
    }
}

} // namespace ohmwright
