// SPDX-License-Identifier: GPL-3.0-or-later
// ohmwright chart BOOK --out FILE.pdf|.svg [--paper A4|A3|A2|A1] [--sheets N] [--by date|chain]
// [--done whole|out] [--tiles]
#include "app/commands/commands.h"
#include "core/book/book.h"
#include "core/forecast/loom_facts.h"
#include "core/plan/loom_facts.h"
#include "core/plan/plan_view.h"
#include "ui/build_order/loom_sheet.h"

#include <QCoreApplication>
#include <QJsonArray>

namespace ohmwright {

namespace {

class ChartCommand final : public Command
{
    Q_DECLARE_TR_FUNCTIONS(ChartCommand)

public:
    [[nodiscard]] QString name() const override { return QStringLiteral("chart"); }
    [[nodiscard]] QString summary() const override
    {
        return tr("Draws the build order as a wiring loom, for paper.");
    }
    [[nodiscard]] QString arguments() const override
    {
        return QStringLiteral(
            "BOOK --out FILE.pdf|.svg [--paper A3] [--sheets N] [--by date|chain]");
    }
    [[nodiscard]] bool draws() const override { return true; }

    void describe(QCommandLineParser &parser) const override
    {
        parser.addOption({QStringLiteral("out"),
                          tr("The file to write; its ending says what kind."), tr("file")});
        parser.addOption({QStringLiteral("paper"),
                          tr("A4, A3, A2 or A1, on its side. Without it: A3 for .pdf; as .svg one "
                             "picture, as large as it comes out."),
                          tr("size")});
        parser.addOption({QStringLiteral("by"),
                          tr("chain: what waits on what; date: when it is planned. chain."),
                          tr("layout")});
        parser.addOption(
            {QStringLiteral("sheets"),
             tr("Folded on as many sheets at most, 1 to %1. Without it: as many as letters of "
                "%2\u00A0pt take. Of several an .svg is a file each: chart-1.svg, chart-2.svg …")
                 .arg(ui::kMostSheets)
                 .arg(ui::kLegiblePoints),
             tr("number")});
        parser.addOption(
            {QStringLiteral("done"),
             tr("whole: what is done is drawn; out: it is left out and counted. Without "
                "it: left out on paper where that makes the letters much larger."),
             tr("how")});
        parser.addOption({QStringLiteral("tiles"),
                          tr("On as many pages as it takes to be read, to be glued together.")});
    }

    int run(const QCommandLineParser &options, const QStringList &positional,
            CommandIo io) const override
    {
        const QString path = options.value(QStringLiteral("out"));
        if (positional.size() != 1 || path.isEmpty())
            return refuse(io, tr("Say which book and where to: ohmwright chart BOOK --out "
                                 "FILE.pdf."));
        const bool uncut = path.endsWith(QLatin1String(".svg"), Qt::CaseInsensitive) &&
                           !options.isSet(QStringLiteral("paper"));
        if (uncut &&
            (options.isSet(QStringLiteral("sheets")) || options.isSet(QStringLiteral("tiles"))))
            return refuse(io,
                          tr("Without --paper an .svg is one picture, as large as it comes out: "
                             "--sheets and --tiles need a --paper."));
        ui::LoomSheetOptions how;
        how.sheets = ui::kAsReadingTakes;
        const QString by = options.value(QStringLiteral("by"));
        if (by == QLatin1String("date"))
            how.by = plan::LoomBy::Date;
        else if (!by.isEmpty() && by != QLatin1String("chain"))
            return refuse(io, tr("--by is “date” or “chain”, not “%1”.").arg(by));
        if (options.isSet(QStringLiteral("paper"))) {
            const auto paper = ui::chartPaper(options.value(QStringLiteral("paper")));
            if (!paper)
                return refuse(io, paper.error());
            how.paper = *paper;
        }
        if (options.isSet(QStringLiteral("sheets"))) {
            bool isNumber = false;
            const QString sheets = options.value(QStringLiteral("sheets"));
            how.sheets = sheets.toInt(&isNumber);
            if (!isNumber || how.sheets < 1 || how.sheets > ui::kMostSheets)
                return refuse(io, tr("--sheets is a number from 1 to %1, not “%2”.")
                                      .arg(ui::kMostSheets)
                                      .arg(sheets));
        }
        const QString done = options.value(QStringLiteral("done"));
        if (done == QLatin1String("out"))
            how.done = ui::LoomDone::LeftOut;
        else if (done == QLatin1String("whole"))
            how.done = ui::LoomDone::Whole;
        else if (!done.isEmpty())
            return refuse(io, tr("--done is “whole” or “out”, not “%1”.").arg(done));
        how.tiles = options.isSet(QStringLiteral("tiles"));
        if (how.tiles && options.isSet(QStringLiteral("sheets")))
            return refuse(io, tr("--tiles takes as many pages as it takes: without --sheets."));
        const Result<std::unique_ptr<Book>> book = openBook(positional[0], io.clock);
        if (!book)
            return refuse(io, book.error());
        const Records &records = (*book)->records();
        how.title = records.build().title;
        how.today = io.clock.today();
        const plan::Network network = plan::networkOf(records, how.today);
        plan::LoomFacts facts = plan::loomFactsOf(network, plan::nextMilestone(network));
        // The same luck as `ohmwright forecast` draws, so that both tell the same days.
        const forecast::WorkPlan work = forecast::workPlanOf(records, how.today);
        const forecast::Simulation simulation(work, {});
        std::vector<forecast::OrderBy> orders;
        if (work.activities.size() <= forecast::kMostForOrderBy)
            orders = forecast::orderByDays(work, simulation,
                                           records.build().confidencePercent.value_or(80));
        facts.forecast = forecast::loomForecastOf(work, simulation.run(), network, orders);
        how.risks = ui::loomRisksOf(records);
        const ui::LoomSheet sheet(network, facts, how);
        const Result<ui::LoomSheetMade> made = sheet.write(path);
        if (!made)
            return refuse(io, made.error());
        if (options.isSet(QStringLiteral("json"))) {
            printJson(io, {{QStringLiteral("files"), QJsonArray::fromStringList(made->files)},
                           {QStringLiteral("pages"), made->pages},
                           {QStringLiteral("bands"), made->bands},
                           {QStringLiteral("left_out"), made->leftOut},
                           {QStringLiteral("smallest_text_points"), made->smallestText}});
            return kExitDone;
        }
        const bool severalPages = made->pages > 1 && made->files.size() == 1;
        io.out << (severalPages
                       ? tr("Wrote %1, %2 pages: %3.")
                             .arg(ui::chartFiles(*made))
                             .arg(made->pages)
                             .arg(ui::chartLetters(*made))
                       : tr("Wrote %1: %2.").arg(ui::chartFiles(*made), ui::chartLetters(*made)))
               << Qt::endl;
        if (made->leftOut > 0)
            io.out
                << tr("%1 that are done are left out; --done whole draws them.").arg(made->leftOut)
                << Qt::endl;
        if (!uncut && made->smallestText < ui::kLegiblePoints)
            io.out << larger(sheet, how) << Qt::endl;
        return kExitDone;
    }

private:
    // What would make the letters legible.
    static QString larger(const ui::LoomSheet &sheet, const ui::LoomSheetOptions &how)
    {
        QStringList ways;
        const QPageSize::PageSizeId taken = how.paper.value_or(QPageSize::A3);
        if (how.sheets != ui::kAsReadingTakes) // else it has been tried
            if (const auto more = sheet.legibleOn(taken); more && more->pages > how.sheets)
                ways += tr("--sheets %1 gives %2").arg(more->pages).arg(ui::chartLetters(*more));
        for (const char *name : {"A3", "A2", "A1"}) {
            const QString paper = QLatin1String(name);
            const auto size = ui::chartPaper(paper);
            // Page sizes of Qt are not in order: the width tells which is the larger.
            if (!size ||
                QPageSize(*size).sizePoints().width() <= QPageSize(taken).sizePoints().width())
                continue;
            const ui::LoomSheetMade on = sheet.wouldMake(*size, how.sheets);
            ways += tr("--paper %1 gives %2").arg(paper, ui::chartLetters(on));
            if (on.smallestText >= ui::kLegiblePoints)
                break;
        }
        if (ways.isEmpty())
            return tr("That is small; --tiles draws it on pages to be glued together.");
        return tr("Under %1\u00A0pt it is hard to read on a wall: %2.")
            .arg(ui::kLegiblePoints)
            .arg(ways.join(tr(", ")));
    }
};

} // namespace

std::unique_ptr<Command> makeChartCommand()
{
    return std::make_unique<ChartCommand>();
}

} // namespace ohmwright
