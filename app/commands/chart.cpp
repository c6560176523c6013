// SPDX-License-Identifier: GPL-3.0-or-later
// ohmwright chart BOOK --out FILE.pdf|.svg [--paper A4|A3|A2|A1] [--by date|chain] [--tiles]
#include "app/commands/commands.h"
#include "core/book/book.h"
#include "core/forecast/loom_facts.h"
#include "core/plan/loom_facts.h"
#include "core/plan/plan_view.h"
#include "ui/build_order/loom_sheet.h"

#include <QCoreApplication>

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
        return QStringLiteral("BOOK --out FILE.pdf|.svg [--paper A3] [--by date|chain]");
    }
    [[nodiscard]] bool draws() const override { return true; }

    void describe(QCommandLineParser &parser) const override
    {
        parser.addOption({QStringLiteral("out"),
                          tr("The file to write; its ending says what kind."), tr("file")});
        parser.addOption({QStringLiteral("paper"),
                          tr("A4, A3, A2 or A1, on its side; A3. Not for .svg."), tr("size")});
        parser.addOption({QStringLiteral("by"),
                          tr("chain: what waits on what; date: when it is planned. chain."),
                          tr("layout")});
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
        ui::LoomSheetOptions how;
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
        how.tiles = options.isSet(QStringLiteral("tiles"));
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
        facts.forecast = forecast::loomForecastOf(work, forecast::forecastOf(work), network);
        const Result<ui::LoomSheetMade> made = ui::LoomSheet(network, facts, how).write(path);
        if (!made)
            return refuse(io, made.error());
        if (options.isSet(QStringLiteral("json"))) {
            printJson(io, {{QStringLiteral("file"), path},
                           {QStringLiteral("pages"), made->pages},
                           {QStringLiteral("strips"), made->strips},
                           {QStringLiteral("smallest_text_points"), made->smallestText}});
            return kExitDone;
        }
        io.out << (made->pages == 1 ? tr("Wrote %1.").arg(path)
                                    : tr("Wrote %1, %2 pages.").arg(path).arg(made->pages))
               << Qt::endl;
        if (made->smallestText < kLegible)
            io.out << tr("The smallest text is %1\u00A0pt: larger paper or --tiles can be read "
                         "better.")
                          .arg(made->smallestText, 0, 'f', 1)
                   << Qt::endl;
        return kExitDone;
    }

private:
    static constexpr double kLegible = 4.5; // points, at arm's length
};

} // namespace

std::unique_ptr<Command> makeChartCommand()
{
    return std::make_unique<ChartCommand>();
}

} // namespace ohmwright
