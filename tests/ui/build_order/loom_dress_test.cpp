// SPDX-License-Identifier: GPL-3.0-or-later
// What the chart adds to a loom that is laid out: gaps where no wire lies, bars along the dates,
// what may fail, and more of what is lacking on paper.
#include "tests/core/plan/loom_networks.h"
#include "ui/build_order/loom_dress.h"
#include "ui/build_order/loom_legend.h"
#include "ui/build_order/loom_painter.h"
#include "ui/build_order/loom_time.h"
#include "ui/build_order/loom_view.h"

#include <QApplication>

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

namespace ohmwright::ui {
namespace {

using plan::Loom;
using plan::LoomTask;

class LoomDress : public testing::Test
{
protected:
    [[nodiscard]] Loom laidOut(plan::LoomBy by, bool dressed, bool paper = false,
                               bool shareRuns = false) const
    {
        plan::LoomOptions how;
        how.by = by;
        how.shareRuns = shareRuns;
        Loom loom = plan::layOutLoom(network, facts, painter.metrics(), how);
        if (dressed)
            dressLoom(loom, network, facts, painter.metrics(), {&risks, paper});
        return loom;
    }
    static std::size_t spansOf(const Loom &loom)
    {
        std::size_t sum = 0;
        for (const plan::LoomBranch &branch : loom.branches)
            for (const plan::LoomTrunk &run : branch.runs)
                sum += run.spans.size();
        return sum;
    }
    static QRectF textsOf(const LoomTask &task)
    {
        QRectF all = task.body;
        for (const QRectF &box : {task.title.box, task.date.box, task.missing.box, task.plan.box,
                                  task.ready.box, task.slack.box})
            all |= box;
        return all;
    }

    plan::Network network = plan::vanNetwork();
    plan::LoomFacts facts = plan::inventedForecast(network);
    LoomPainter painter{QApplication::font().family(), LoomColours::light()};
    LoomRisks risks{{QStringLiteral("ba15"), {10, QStringLiteral("Pack built")}},
                    {QStringLiteral("lv04"), {20, {}}}};
};

// Two housings of one area side by side are joined only if one waits on the other.
TEST_F(LoomDress, ATubeLiesOnlyWhereAWireDoes)
{
    for (const plan::LoomBy by : {plan::LoomBy::Chain, plan::LoomBy::Date}) {
        for (const bool shareRuns : {false, true}) {
            const Loom loom = laidOut(by, true, true, shareRuns);
            EXPECT_LT(spansOf(loom), spansOf(laidOut(by, false, true, shareRuns)));
            for (const plan::LoomBranch &branch : loom.branches) {
                for (const plan::LoomTrunk &run : branch.runs) {
                    EXPECT_TRUE(run.fork.empty()) << "no wire lies in a bend";
                    for (const plan::LoomSpan &span : run.spans) {
                        if (&span == &run.spans.front())
                            continue; // between the name and the first housing
                        EXPECT_TRUE(std::any_of(
                            loom.wires.begin(), loom.wires.end(),
                            [&](const plan::LoomWire &wire) {
                                return std::abs(wire.path.front().y() - run.y) < 0.5 &&
                                       wire.alongTrunk && // and may end beside a plate's middle
                                       wire.path.front().x() <= span.left + 10 &&
                                       wire.path.back().x() >= span.right - 10;
                            }))
                            << branch.area.toStdString() << " at " << span.left;
                    }
                }
            }
        }
    }
}

// A run that hung from a bend has its name beside its first housing.
TEST_F(LoomDress, EveryRunHasAName)
{
    const Loom loom = laidOut(plan::LoomBy::Chain, true);
    std::size_t runs = 0;
    for (const plan::LoomBranch &branch : loom.branches)
        runs += branch.runs.size();
    EXPECT_GT(runs, loom.branches.size());
    EXPECT_EQ(painter.sleeves(loom, 1, std::nullopt).size(), runs);
}

TEST_F(LoomDress, ByDateTheDayWrittenIsTheDayOneStandsAt)
{
    const Loom loom = laidOut(plan::LoomBy::Date, true);
    const LoomTime time(loom);
    ASSERT_TRUE(time.known());
    int ranges = 0;
    for (const LoomTask &task : loom.tasks) {
        if (task.plan.lines.isEmpty())
            continue;
        ASSERT_EQ(task.plan.lines.size(), 1);
        const QString words = task.plan.lines.front();
        const QDate start = loom.today.addDays(*task.days.start);
        const QDate end = loom.today.addDays(*task.days.finish);
        // From the day of the start, which is where it stands, to that of the end.
        EXPECT_TRUE(words.startsWith(QString::number(start.day()))) << words.toStdString();
        EXPECT_TRUE(words.endsWith(plan::loomDay(end, loom.today))) << words.toStdString();
        EXPECT_EQ(words.contains(QChar(u'–')), start != end);
        ranges += start != end ? 1 : 0;
        for (const plan::LoomRule &rule : loom.rules) {
            if (!rule.day.isValid() || rule.kind == plan::LoomRule::Kind::Today)
                continue;
            if (rule.x > task.body.center().x()) {
                EXPECT_GT(rule.day, start) << words.toStdString();
            }
        }
    }
    EXPECT_GT(ranges, 30);
}

TEST_F(LoomDress, DaysGoOnlyRightAlongTheAxis)
{
    const Loom loom = laidOut(plan::LoomBy::Date, true);
    const LoomTime time(loom);
    double last = 0;
    for (int day = 0; day < 400; ++day) {
        EXPECT_GE(time.at(day), last);
        last = time.at(day);
        for (const plan::LoomRule &rule : loom.rules) {
            if (!rule.day.isValid() || rule.kind == plan::LoomRule::Kind::Today)
                continue;
            const auto ruled = static_cast<int>(loom.today.daysTo(rule.day));
            if (day < ruled) {
                EXPECT_LE(time.at(day), rule.x + 0.01) << day;
            } else if (rule.x < time.right()) {
                EXPECT_GE(time.at(day), rule.x - 0.01) << day;
            }
        }
    }
}

TEST_F(LoomDress, UncertaintyLiesAlongTheDates)
{
    for (const bool shareRuns : {false, true}) {
        const Loom loom = laidOut(plan::LoomBy::Date, true, false, shareRuns);
        const LoomTime time(loom);
        int last = 0;
        std::vector<const LoomTask *> drawn;
        for (const LoomTask &task : loom.tasks) {
            if (!task.days.ready[0] || task.state == plan::LoomState::Done)
                continue;
            last = std::max(last, *task.days.ready[2]);
            ASSERT_FALSE(task.whisker.isNull());
            const auto at = [&](int day) {
                return std::max(task.body.left(), time.at(day));
            };
            EXPECT_NEAR(task.whisker.left(), at(*task.days.ready[0]), 0.01);
            EXPECT_NEAR(task.whiskerMark, at(*task.days.ready[1]), 0.01);
            EXPECT_NEAR(task.whisker.right(), at(*task.days.ready[2]), 0.01);
            if (task.days.finish) {
                for (const plan::LoomWire &wire : loom.wires) {
                    if (wire.from == task.task && !wire.aside &&
                        loom.tasks[wire.to].days.start > task.days.finish) {
                        EXPECT_LE(at(*task.days.finish), loom.tasks[wire.to].body.left() + 0.01)
                            << "nothing seems to end behind what waits on it";
                    }
                }
            }
            drawn.push_back(&task);
            // It passes through no text of its row.
            const QRectF line(task.body.left(), task.whisker.center().y() - 0.5,
                              std::max(1.0, task.whisker.right() - task.body.left()), 1);
            for (const LoomTask &other : loom.tasks) {
                if (other.row == task.row) {
                    EXPECT_FALSE(textsOf(other).intersects(line))
                        << network.tasks[task.task].title.toStdString();
                }
            }
            EXPECT_TRUE(loom.bounds.contains(task.whisker.center()));
        }
        EXPECT_GT(drawn.size(), 60U);
        // The axis does not end before what is drawn along it.
        EXPECT_LT(time.at(last - 1), time.at(last));
    }
}

TEST_F(LoomDress, RowsMakeRoomAndNothingElseMoves)
{
    for (const plan::LoomBy by : {plan::LoomBy::Chain, plan::LoomBy::Date}) {
        const Loom before = laidOut(by, false);
        const Loom loom = laidOut(by, true);
        for (std::size_t at = 0; at < loom.tasks.size(); ++at) {
            const LoomTask &task = loom.tasks[at];
            EXPECT_EQ(task.body.size(), before.tasks[at].body.size());
            EXPECT_GE(task.body.left(), before.tasks[at].body.left());
            EXPECT_GE(task.body.top(), before.tasks[at].body.top());
            const plan::LoomBranch &branch = loom.branches[task.branch];
            EXPECT_GE(textsOf(task).top(), branch.top - 1);
            EXPECT_LE(textsOf(task).bottom(), branch.bottom + 1);
            for (std::size_t other = 0; other < at; ++other)
                EXPECT_FALSE(loom.tasks[other].body.intersects(task.body));
        }
        ASSERT_EQ(loom.wires.size(), before.wires.size());
        for (const plan::LoomWire &wire : loom.wires) {
            const QRectF to = loom.tasks[wire.to].body;
            const QRectF from = loom.tasks[wire.from].body;
            EXPECT_TRUE(to.adjusted(-9, -1, 9, 1).contains(wire.path.back()));
            EXPECT_TRUE(from.adjusted(-9, -1, 9, 1).contains(wire.path.front()));
        }
    }
}

TEST_F(LoomDress, WhatMayFailIsToldWithItsSign)
{
    const Loom loom = laidOut(plan::LoomBy::Chain, true);
    const auto pack = network.find(QStringLiteral("ba15"));
    ASSERT_TRUE(pack);
    const plan::LoomLabel &words = loom.tasks[*pack].date;
    EXPECT_EQ(words.lines.join(QLatin1Char(' ')),
              QStringLiteral("may fail 10\u00A0%, again from Pack built"));
    EXPECT_GT(words.box.top(), loom.tasks[*pack].ready.box.bottom());
    const LoomLegend legend(painter, network, loom);
    EXPECT_TRUE(legend.text().contains(QStringLiteral("may fail, how likely")));
    risks.clear();
    const Loom sure = laidOut(plan::LoomBy::Chain, true);
    EXPECT_TRUE(sure.tasks[*pack].date.lines.isEmpty());
    EXPECT_FALSE(LoomLegend(painter, network, sure).text().contains(QStringLiteral("may fail")));
}

TEST_F(LoomDress, TheLegendTellsThePlan)
{
    const QString dated = LoomLegend(painter, network, laidOut(plan::LoomBy::Date, true)).text();
    EXPECT_TRUE(dated.contains(QStringLiteral("from the day it is planned to start, where it "
                                              "stands on the dates above")));
    EXPECT_TRUE(dated.contains(QStringLiteral("50\u00A0%")));
    const QString chained = LoomLegend(painter, network, laidOut(plan::LoomBy::Chain, true)).text();
    EXPECT_FALSE(chained.contains(QStringLiteral("planned to start")));
}

// On the screen the rest is told where one points; nobody can point at paper.
TEST_F(LoomDress, OnPaperThreeThingsHang)
{
    const Loom screen = laidOut(plan::LoomBy::Chain, true, false);
    const Loom paper = laidOut(plan::LoomBy::Chain, true, true);
    int more = 0;
    for (std::size_t at = 0; at < network.tasks.size(); ++at) {
        const plan::Task &task = network.tasks[at];
        const auto lacking =
            task.done ? 0
                      : std::count_if(task.needs.begin(), task.needs.end(),
                                      [](const plan::LeafNeed &need) { return !need.met; });
        const QStringList lines = paper.tasks[at].missing.lines;
        const auto further = std::count_if(lines.begin(), lines.end(), [](const QString &line) {
            return line.startsWith(furtherLack());
        });
        EXPECT_EQ(further, lacking < 2 ? 0 : std::min<std::ptrdiff_t>(lacking, 3) - 1);
        EXPECT_LE(lines.size(), 3);
        more += lacking > 1 ? 1 : 0;
        if (lacking < 2)
            continue;
        EXPECT_TRUE(screen.tasks[at]
                        .missing.lines.join(QLatin1Char(' '))
                        .contains(QStringLiteral("+%1").arg(lacking - 1)));
    }
    EXPECT_GT(more, 5);
}

// As the widget has it: the same additions, and the tool tip tells the risk.
TEST_F(LoomDress, TheViewShowsIt)
{
    LoomView view;
    view.resize(1280, 760);
    view.setNetwork(network, facts, risks);
    view.setBy(plan::LoomBy::Date);
    const auto pack = network.find(QStringLiteral("ba15"));
    EXPECT_FALSE(view.loom().tasks[*pack].date.lines.isEmpty());
    EXPECT_FALSE(view.loom().tasks[*pack].whisker.isNull());
    EXPECT_TRUE(view.description(*pack).contains(QStringLiteral("again from Pack built")));
    // Only the risks have changed.
    view.setNetwork(network, facts, {});
    EXPECT_TRUE(view.loom().tasks[*pack].date.lines.isEmpty());
}

} // namespace
} // namespace ohmwright::ui
