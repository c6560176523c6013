// SPDX-License-Identifier: GPL-3.0-or-later
// ohmwright holdups BOOK [--milestone NAME]
#include "app/commands/commands.h"
#include "core/book/book.h"
#include "core/forecast/move_days.h"
#include "core/plan/plan_view.h"

#include <QCoreApplication>
#include <QJsonArray>

#include <algorithm>

namespace ohmwright {

namespace {

class HoldUpsCommand final : public Command
{
    Q_DECLARE_TR_FUNCTIONS(HoldUpsCommand)

public:
    [[nodiscard]] QString name() const override { return QStringLiteral("holdups"); }
    [[nodiscard]] QString summary() const override
    {
        return tr("The next moves that free a milestone, what to start first on top. Exit 1 while "
                  "anything holds it up.");
    }
    [[nodiscard]] QString arguments() const override
    {
        return QStringLiteral("BOOK [--milestone NAME]");
    }

    void describe(QCommandLineParser &parser) const override
    {
        parser.addOption({QStringLiteral("milestone"),
                          tr("Key or title of the milestone; else the next one."), tr("name")});
    }

    int run(const QCommandLineParser &options, const QStringList &positional,
            CommandIo io) const override
    {
        if (positional.size() != 1)
            return refuse(io, tr("Name one book and nothing more: ohmwright holdups BOOK."));
        const Result<std::unique_ptr<Book>> book = openBook(positional[0], io.clock);
        if (!book)
            return refuse(io, book.error());
        const plan::Network network = plan::networkOf((*book)->records(), io.clock.today());
        if (const auto loop = plan::findLoop(network); !loop.empty())
            return refuse(io, tr("The tasks run in a loop: %1 Take out one of these links.")
                                  .arg(plan::describeLoop(network, loop)));
        if (!options.isSet(QStringLiteral("milestone")) && allReached(network)) {
            if (options.isSet(QStringLiteral("json")))
                printJson(io, {{QStringLiteral("reached"), true}});
            else
                io.out << tr("Every milestone is reached, or of an option not planned with.")
                       << Qt::endl;
            return kExitDone;
        }
        const Result<std::size_t> milestone =
            choose(network, options.value(QStringLiteral("milestone")));
        if (!milestone)
            return refuse(io, milestone.error());
        plan::HoldUps holdUps = plan::holdUps(network, *milestone);
        // The same days as the window tells, and `ohmwright forecast`.
        const Records &records = (*book)->records();
        const forecast::WorkPlan work = forecast::workPlanOf(records, io.clock.today());
        const int confidence = records.build().confidencePercent.value_or(80);
        const std::vector<std::size_t> sent = forecast::sentByMoves(holdUps, work);
        const bool tooLarge = work.activities.size() > forecast::kMostForOrderBy;
        std::vector<forecast::OrderBy> orders;
        if (!sent.empty() && !tooLarge)
            orders =
                forecast::orderByDays(work, forecast::Simulation(work, {}), confidence, {}, sent);
        forecast::tellLatestDays(holdUps, network, work, orders, confidence);
        if (options.isSet(QStringLiteral("json")))
            printJson(io, asJson(network, holdUps, !orders.empty() || sent.empty()));
        else
            printText(network, holdUps, io.clock.today(), io.out);
        if (!sent.empty() && tooLarge && !options.isSet(QStringLiteral("json")))
            io.out << tr("In a plan of this size the days to order by are left to “ohmwright "
                         "forecast”: some of these may come earlier.")
                   << Qt::endl;
        return holdUps.moves.empty() ? kExitDone : kExitBadNews;
    }

private:
    static bool allReached(const plan::Network &network)
    {
        const auto isMilestone = [](const plan::Task &task) {
            return task.milestone;
        };
        return std::ranges::any_of(network.tasks, isMilestone) && !plan::nextMilestone(network);
    }

    static Result<std::size_t> choose(const plan::Network &network, const QString &name)
    {
        if (name.isEmpty()) {
            if (const auto next = plan::nextMilestone(network))
                return *next;
            return fail(ProblemCode::NotFound,
                        tr("There is no milestone that is not reached yet."));
        }
        for (std::size_t i = 0; i < network.tasks.size(); ++i) {
            const plan::Task &task = network.tasks[i];
            if (task.milestone &&
                (task.key == name || task.title.compare(name, Qt::CaseInsensitive) == 0))
                return i;
        }
        QStringList names;
        for (const plan::Task &task : network.tasks)
            if (task.milestone)
                names << task.title;
        return fail(ProblemCode::NotFound, tr("There is no milestone “%1”.").arg(name),
                    names.isEmpty() ? QString() : tr("There are: %1.").arg(names.join(tr(", "))));
    }

    static QString startBy(const plan::Move &move, QDate today)
    {
        if (!move.latestStart)
            return tr("%1 days before").arg(move.chainDays);
        const QString day = printDate(*move.latestStart);
        return *move.latestStart < today ? tr("%1 late").arg(day) : day;
    }

    static void printText(const plan::Network &network, const plan::HoldUps &holdUps, QDate today,
                          QTextStream &out)
    {
        const plan::Task &goal = network.tasks[holdUps.milestone];
        out << goal.title;
        if (goal.date)
            out << tr(", %1").arg(showDate(*goal.date));
        if (holdUps.moves.empty()) {
            out << '\n'
                << (goal.aside ? tr("Set aside: of an option not planned with.") : tr("Reached."))
                << Qt::endl;
            return;
        }
        out << '\n'
            << tr("Tasks to go: %1. Days on the longest chain, hands not counted: %2.")
                   .arg(holdUps.chain.size())
                   .arg(holdUps.chainDays)
            << '\n';
        if (holdUps.likely)
            out << tr("%1 will not be kept: likely %2, which the days below keep.")
                       .arg(showDate(*goal.date), showDate(*holdUps.likely))
                << '\n';
        out << '\n';
        std::vector<QStringList> rows{
            {tr("start by"), tr("move"), tr("what"), tr("why"), tr("frees")}};
        for (const plan::Move &move : holdUps.moves)
            rows.push_back({startBy(move, today), plan::moveKindName(move.kind), move.title,
                            move.why, QString::number(move.frees.size())});
        out << columns(rows, {4});
        out.flush();
    }

    static QJsonObject asJson(const plan::Network &network, const plan::HoldUps &holdUps,
                              bool orderByCounted)
    {
        const auto keys = [&](const std::vector<std::size_t> &tasks) {
            QJsonArray array;
            for (const std::size_t t : tasks)
                array << network.tasks[t].key;
            return array;
        };
        QJsonArray moves;
        for (const plan::Move &move : holdUps.moves) {
            QJsonObject object{{QStringLiteral("move"), plan::moveKindName(move.kind)},
                               {QStringLiteral("subject"), move.subject},
                               {QStringLiteral("title"), move.title},
                               {QStringLiteral("why"), move.why},
                               {QStringLiteral("for"), keys(move.for_)},
                               {QStringLiteral("frees"), keys(move.frees)},
                               {QStringLiteral("chain_days"), move.chainDays}};
            if (move.latestStart)
                object.insert(QStringLiteral("latest_start"), printDate(*move.latestStart));
            moves << object;
        }
        const plan::Task &goal = network.tasks[holdUps.milestone];
        QJsonObject object{{QStringLiteral("milestone"), goal.key},
                           {QStringLiteral("title"), goal.title},
                           {QStringLiteral("chain"), keys(holdUps.chain)},
                           {QStringLiteral("driving"), keys(holdUps.driving)},
                           {QStringLiteral("chain_days"), holdUps.chainDays},
                           {QStringLiteral("order_by_counted"), orderByCounted},
                           {QStringLiteral("moves"), moves}};
        if (goal.date)
            object.insert(QStringLiteral("date"), printDate(*goal.date));
        if (holdUps.likely)
            object.insert(QStringLiteral("likely"), printDate(*holdUps.likely));
        return object;
    }
};

} // namespace

std::unique_ptr<Command> makeHoldUpsCommand()
{
    return std::make_unique<HoldUpsCommand>();
}

} // namespace ohmwright
