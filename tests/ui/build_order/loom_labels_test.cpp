// SPDX-License-Identifier: GPL-3.0-or-later
// What is written over the chart and keeps its size: the dates, the branches' names, the legend.
// A drawing in SVG tells which words were painted and where.
#include "tests/core/plan/loom_networks.h"
#include "ui/build_order/loom_legend.h"
#include "ui/build_order/loom_legend_bar.h"
#include "ui/build_order/loom_painter.h"
#include "ui/build_order/loom_view.h"

#include <QApplication>
#include <QBuffer>
#include <QPainter>
#include <QSvgGenerator>
#include <QXmlStreamReader>

#include <gtest/gtest.h>

#include <algorithm>
#include <functional>

namespace ohmwright::ui {
namespace {

QStringList wordsOf(const std::function<void(QPainter &)> &paint)
{
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    QSvgGenerator generator;
    generator.setOutputDevice(&buffer);
    generator.setSize({2000, 1200});
    {
        QPainter painter(&generator);
        paint(painter);
    }
    QStringList words;
    QXmlStreamReader reader(bytes);
    while (!reader.atEnd()) {
        if (reader.readNext() == QXmlStreamReader::StartElement &&
            reader.name() == QLatin1String("text"))
            words += reader.readElementText().trimmed();
    }
    EXPECT_FALSE(reader.hasError()) << reader.errorString().toStdString();
    return words;
}

class LoomLabels : public testing::Test
{
protected:
    LoomLabels()
    {
        plan::LoomOptions how;
        how.by = plan::LoomBy::Date;
        dated = plan::layOutLoom(network, facts, painter.metrics(), how);
    }
    // What is written on the band with this much of the chart in sight.
    QStringList datesFrom(double left, double width, double scale)
    {
        LoomMarks marks;
        marks.slideFrom = left;
        marks.slideTop = dated.bounds.center().y();
        plan::Loom bare = dated;
        bare.branches.clear(); // names of branches are not asked for
        return wordsOf([&](QPainter &onto) {
            painter.paintLabels(onto, network, bare, marks,
                                {left, *marks.slideTop, width, 400 / scale}, scale);
        });
    }

    plan::Network network = plan::vanNetwork();
    plan::LoomFacts facts = plan::inventedForecast(network);
    LoomPainter painter{QApplication::font().family(), LoomColours::light()};
    plan::Loom dated;
};

TEST_F(LoomLabels, TheMonthIsToldWhereverTheChartBegins)
{
    QStringList months;
    for (const double scale : {2.0, 1.0, 0.5}) {
        const double width = 900 / scale;
        for (std::size_t at = 0; at + 1 < dated.rules.size(); ++at) {
            const plan::LoomRule &rule = dated.rules[at];
            const double room = (dated.rules[at + 1].x - rule.x) * scale;
            if (!rule.day.isValid() || room < 90)
                continue;
            // The line itself is just out of sight.
            const QStringList words = datesFrom(rule.x + 2 / scale, width, scale);
            const QString month = rule.day.toString(QStringLiteral("MMM"));
            EXPECT_TRUE(std::any_of(words.begin(), words.end(),
                                    [&](const QString &word) { return word.startsWith(month); }))
                << month.toStdString() << " at " << scale << ": " << words.join(',').toStdString();
            months += month;
        }
    }
    EXPECT_GT(months.size(), 6);
}

TEST_F(LoomLabels, TheBandKeepsItsHeightAndCoversNoSleeve)
{
    for (const double scale : {0.1, 0.2, 0.5, 1.0, 2.0}) {
        const QRectF band = painter.axisBand(dated, scale);
        EXPECT_NEAR(band.height() * scale, dated.axisBand.height(), 1e-6);
        for (const LoomPainter::Sleeve &sleeve : painter.sleeves(dated, scale, std::nullopt))
            EXPECT_GT(sleeve.box.top(), band.bottom());
        EXPECT_TRUE(painter.extent(dated, scale).contains(band));
        const double last = dated.rules.back().x;
        EXPECT_GT((band.right() - last) * scale, 55) << "room for the last line's words";
    }
}

TEST_F(LoomLabels, WhatHasNoDateIsSaidInFullAtTheRightEnd)
{
    facts.forecast->tasks[network.tasks.size() - 1] = {};
    plan::LoomOptions how;
    how.by = plan::LoomBy::Date;
    dated = plan::layOutLoom(network, facts, painter.metrics(), how);
    ASSERT_EQ(dated.rules.back().kind, plan::LoomRule::Kind::NoDate);
    for (const double scale : {0.15, 0.4, 1.0}) {
        const QRectF all = painter.extent(dated, scale);
        const double width = std::min(all.width(), 900 / scale);
        EXPECT_TRUE(datesFrom(all.right() - width, width, scale).contains("no date")) << scale;
    }
}

TEST_F(LoomLabels, NoNameOfABranchLiesOnAnother)
{
    const plan::Loom chained = plan::layOutLoom(network, facts, painter.metrics());
    for (const plan::Loom &loom : {chained, dated}) {
        for (const double scale : {0.08, 0.12, 0.2, 0.3, 0.6, 1.0, 2.0}) {
            for (const std::optional<double> &edge :
                 {std::optional<double>(), std::optional<double>(loom.bounds.center().x())}) {
                const auto sleeves = painter.sleeves(loom, scale, edge);
                EXPECT_GE(sleeves.size(), loom.branches.size());
                for (std::size_t at = 0; at < sleeves.size(); ++at) {
                    const QSizeF own = loom.branches[sleeves[at].branch].sleeve.size();
                    const QSizeF first = loom.branches[sleeves[0].branch].sleeve.size();
                    EXPECT_NEAR(sleeves[at].box.height() / own.height(),
                                sleeves[0].box.height() / first.height(), 1e-9)
                        << "letters of one size";
                    for (std::size_t other = 0; other < at; ++other)
                        EXPECT_FALSE(sleeves[at].box.intersects(sleeves[other].box)) << scale;
                }
            }
        }
    }
}

TEST_F(LoomLabels, TheLegendIsCompleteInAnyWidth)
{
    const LoomLegend legend(painter, network, dated);
    const double wide = legend.paint(nullptr, {}, 100000);
    for (const double width : {1280.0, 1066.0, 700.0, 300.0}) {
        double high = 0;
        const QStringList words =
            wordsOf([&](QPainter &onto) { high = legend.paint(&onto, {}, width); });
        EXPECT_GE(words.size(), legend.text().count(QStringLiteral(" · ")) + 1);
        EXPECT_TRUE(words.contains("weeks are as wide as their work needs"));
        EXPECT_GT(high, wide);
    }
    LoomView view;
    view.resize(1280, 760);
    view.setNetwork(network, facts);
    view.setBy(plan::LoomBy::Date);
    view.show();
    QApplication::processEvents();
    const auto *bar = view.findChild<LoomLegendBar *>();
    ASSERT_NE(bar, nullptr);
    EXPECT_EQ(bar->height(), bar->heightFor(1280));
    EXPECT_GT(bar->height(), 2 * wide);
    EXPECT_LE(bar->geometry().bottom(), view.viewport()->geometry().top());
}

} // namespace
} // namespace ohmwright::ui
