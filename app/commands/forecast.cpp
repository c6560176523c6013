// SPDX-License-Identifier: GPL-3.0-or-later
// ohmwright forecast BOOK [--milestone NAME] [--samples N] [--seed N] [--confidence N] [--try
// CHANGE]
#include "app/commands/commands.h"
#include "app/commands/forecast_json.h"
#include "core/book/book.h"
#include "core/forecast/drivers.h"
#include "core/forecast/milestone_dates.h"
#include "core/quantity/dates.h"

#include <QCoreApplication>
#include <QJsonArray>

#include <algorithm>

namespace ohmwright {

namespace {

using namespace forecast;

class ForecastCommand final : public Command
{
    Q_DECLARE_TR_FUNCTIONS(ForecastCommand)

public:
    [[nodiscard]] QString name() const override { return QStringLiteral("forecast"); }
    [[nodiscard]] QString summary() const override
    {
        return tr("When milestones are reached at 50, 80 and 95 %, what drives them, what to order "
                  "by when, the cash needed by month. Exit 1 if a milestone's date is at risk or "
                  "the money runs out.");
    }
    [[nodiscard]] QString arguments() const override
    {
        return QStringLiteral("BOOK [--milestone NAME] [--samples N] [--seed N] [--try CHANGE]");
    }

    void describe(QCommandLineParser &parser) const override
    {
        parser.addOption({QStringLiteral("milestone"),
                          tr("Key or title of the milestone to look at; else the next one."),
                          tr("name")});
        parser.addOption({QStringLiteral("samples"),
                          tr("How often the plan is played through, 100 to 1000000; 10000."),
                          tr("number")});
        parser.addOption({QStringLiteral("seed"), tr("Which luck is drawn; 1."), tr("number")});
        parser.addOption({QStringLiteral("confidence"),
                          tr("At which order-by days are told, 50 to 99; the book's, else 80."),
                          tr("percent")});
        parser.addOption(
            {QStringLiteral("try"),
             tr("What a change would bring: hours+60, evening:monday+120, helper:saturday, "
                "order:PART, drop:TASK."),
             tr("change")});
    }

    int run(const QCommandLineParser &options, const QStringList &positional,
            CommandIo io) const override
    {
        if (positional.size() != 1)
            return refuse(io, tr("Name one book and nothing more: ohmwright forecast BOOK."));
        const Result<std::unique_ptr<Book>> book = openBook(positional[0], io.clock);
        if (!book)
            return refuse(io, book.error());
        const Records &records = (*book)->records();
        const WorkPlan plan = workPlanOf(records, io.clock.today());
        const Result<ForecastAsked> asked = read(options, records, plan);
        if (!asked)
            return refuse(io, asked.error());
        if (plan.activities.empty()) {
            if (options.isSet(QStringLiteral("json")))
                printJson(io, {{QStringLiteral("done"), true}});
            else
                io.out << tr("Every task is done.") << Qt::endl;
            return kExitDone;
        }
        const Simulation simulation(plan, asked->settings);
        const Forecast forecast = simulation.run();
        if (asked->change)
            return tryChange(records, plan, simulation, forecast, *asked, options, io);

        const ForecastTold told{
            records,
            plan,
            forecast,
            *asked,
            orderByDays(plan, simulation, asked->confidence),
            cashOf(records, plan, simulation, std::min(kCashSamples, asked->settings.samples)),
            sureGains(records, plan, simulation, forecast, milestoneKeyOf(plan, *asked),
                      asked->settings),
            learnedFrom(records)};
        if (options.isSet(QStringLiteral("json")))
            printJson(io, forecastJson(told));
        else
            printText(told, io.out);
        return isBadNews(told) ? kExitBadNews : kExitDone;
    }

private:
    static Result<int> number(const QCommandLineParser &options, const char *option, int usual,
                              int least, int most)
    {
        const QString name = QLatin1String(option);
        if (!options.isSet(name))
            return usual;
        bool read = false;
        const int value = options.value(name).toInt(&read);
        if (!read || value < least || value > most)
            return fail(ProblemCode::BadInput,
                        tr("--%1 is a whole number from %2 to %3.").arg(name).arg(least).arg(most));
        return value;
    }

    static Result<ForecastAsked> read(const QCommandLineParser &options, const Records &records,
                                      const WorkPlan &plan)
    {
        ForecastAsked asked;
        const Result<int> samples = number(options, "samples", 10'000, 100, 1'000'000);
        const Result<int> seed = number(options, "seed", 1, 0, 2'000'000'000);
        const Result<int> confidence =
            number(options, "confidence", records.build().confidencePercent.value_or(80), 50, 99);
        for (const Result<int> *one : {&samples, &seed, &confidence})
            if (!*one)
                return fail(one->error());
        asked.settings.samples = *samples;
        asked.settings.seed = static_cast<std::uint64_t>(*seed);
        asked.confidence = *confidence;
        if (records.all<Task>().rows().empty())
            return fail(ProblemCode::NotFound, tr("There are no tasks to plan yet."));
        if (const QString wanted = options.value(QStringLiteral("milestone")); !wanted.isEmpty()) {
            const auto found =
                std::find_if(plan.milestones.begin(), plan.milestones.end(), [&](std::size_t m) {
                    const Activity &a = plan.activities[m];
                    return a.key == wanted || a.name.compare(wanted, Qt::CaseInsensitive) == 0;
                });
            if (found == plan.milestones.end())
                return fail(ProblemCode::NotFound, whyNot(wanted, records, plan));
            asked.milestone = static_cast<std::size_t>(found - plan.milestones.begin());
        }
        if (options.isSet(QStringLiteral("try"))) {
            const QString text = options.value(QStringLiteral("try"));
            const Result<PlanChange> change = parsePlanChange(text, records);
            if (!change)
                return fail(change.error());
            asked.change = *change;
        }
        return asked;
    }

    // Why no milestone of that name is looked at: it is reached, set aside or not there.
    static QString whyNot(const QString &wanted, const Records &records, const WorkPlan &plan)
    {
        for (const Task &task : records.all<Task>())
            if (task.milestone &&
                (task.key == wanted || task.title.compare(wanted, Qt::CaseInsensitive) == 0))
                return task.state == TaskState::Done
                           ? tr("“%1” is reached.").arg(task.title)
                           : tr("“%1” is of an option that is not planned with.").arg(task.title);
        QStringList names;
        for (const std::size_t m : plan.milestones)
            names += plan.activities[m].name;
        const QString none = tr("There is no milestone “%1” to reach.").arg(wanted);
        return names.isEmpty() ? none : tr("%1 There are: %2.").arg(none, names.join(tr(", ")));
    }

    // "2027-02 is 156.69 EUR short at 80 %, 94.69 EUR at 50 %; there is enough again from 2027-03."
    static QString shortageInWords(const Cash &cash)
    {
        QStringList months;
        bool wasShort = false;
        for (const CashMonth &month : cash.months) {
            const QString name = month.month.toString(QStringLiteral("yyyy-MM"));
            if (!month.available)
                continue;
            const Money at80 = month.due80 - *month.available;
            const Money at50 = month.due50 - *month.available;
            if (at80.minor() > 0)
                months += at50.minor() > 0
                              ? tr("%1 is %2 short at 80 %, %3 at 50 %")
                                    .arg(name, printMoney(at80), printMoney(at50))
                              : tr("%1 is %2 short at 80 %").arg(name, printMoney(at80));
            else if (wasShort)
                months += tr("there is enough again from %1").arg(name);
            wasShort = at80.minor() > 0;
        }
        return tr("The money runs out: %1.").arg(months.join(tr("; ")));
    }

    static int tryChange(const Records &records, const WorkPlan &plan, const Simulation &simulation,
                         const Forecast &forecast, const ForecastAsked &asked,
                         const QCommandLineParser &options, CommandIo io)
    {
        if (plan.milestones.empty())
            return refuse(io, tr("There is no milestone to gain days for."));
        const std::vector<Gain> gains =
            gainsOf(records, plan, simulation, plan.milestones, *asked.change, asked.settings);
        const Gain &gain = gains[asked.milestone];
        const QString why = whyNothing(*asked.change, records, plan);
        if (options.isSet(QStringLiteral("json"))) {
            QJsonObject object = forecastGainJson(gain);
            QJsonArray milestones;
            for (const Gain &one : gains)
                milestones << forecastGainJson(one);
            if (!why.isEmpty())
                object.insert(QStringLiteral("why_nothing"), why);
            object.insert(QStringLiteral("milestones"), milestones);
            printJson(io, object);
            return kExitDone;
        }
        io.out << forecast::describe(*asked.change, records) << '\n';
        if (!why.isEmpty())
            io.out << "  " << why << '\n';
        for (std::size_t m = 0; m < gains.size(); ++m) {
            const std::size_t goal = plan.milestones[m];
            io.out << "  "
                   << tr("%1 (%2 as planned, at 80 %): %3.")
                          .arg(plan.activities[goal].name,
                               dayInForecast(forecast, forecast.activities[goal].ready[1]),
                               gainInWords(gains[m]))
                   << '\n';
        }
        io.out.flush();
        return kExitDone;
    }

    static QString percent(double share) { return tr("%1 %").arg(std::lround(share * 100)); }

    static std::optional<QDate> wished(const ForecastTold &told, std::size_t activity)
    {
        const auto *task = told.records.byKey<Task>(told.plan.activities[activity].key);
        if (!task)
            return std::nullopt;
        return task->fixedOn ? task->fixedOn : task->targetOn;
    }

    static bool isLate(const ForecastTold &told, std::size_t activity)
    {
        const int ready = told.forecast.activities[activity].ready[1];
        const std::optional<QDate> date = wished(told, activity);
        return ready == plan::kNever || (date && told.forecast.dayOf(ready) > *date);
    }

    static bool isBadNews(const ForecastTold &told)
    {
        return told.cash.runsOut.has_value() ||
               std::any_of(told.plan.milestones.begin(), told.plan.milestones.end(),
                           [&](std::size_t m) { return isLate(told, m); });
    }

    static void printText(const ForecastTold &told, QTextStream &out)
    {
        printMilestones(told, out);
        printDriving(told, out);
        printOrders(told, out);
        printCash(told, out);
        if (!told.gains.empty()) {
            const std::size_t goal = told.plan.milestones[told.asked.milestone];
            out << '\n'
                << tr("What would help to reach “%1”").arg(told.plan.activities[goal].name) << '\n';
            for (const Gain &gain : told.gains)
                out << "  " << forecast::describe(gain.change, told.records) << ": "
                    << gainInWords(gain) << ".\n";
        }
        for (const Learned &one : told.learned)
            if (one.isOffered())
                out << '\n'
                    << tr("%1 work took %2 times the estimate in %3 tasks; %4 open ones could be "
                          "changed by that.")
                           .arg(wordOf(one.trade))
                           .arg(one.factor(), 0, 'f', 2)
                           .arg(one.tasks)
                           .arg(one.openTasks)
                    << '\n';
        for (const QString &doubt : told.plan.doubts)
            out << '\n' << doubt << '\n';
        out.flush();
    }

    static void printMilestones(const ForecastTold &told, QTextStream &out)
    {
        const double hours = told.plan.minutesPerWeek / 60.0;
        out << tr("Played through %1 times from %2, with %3 hours of work a week%4.")
                   .arg(told.forecast.samples)
                   .arg(showDate(told.plan.today))
                   .arg(hours, 0, 'f', 1)
                   .arg(told.plan.hoursAssumed
                            ? tr(" (spread over Tuesday, Thursday and Saturday: assumed)")
                            : QString());
        if (told.plan.estimatesAssumed > 0)
            out << ' '
                << tr("%1 of %2 estimates have no least and most; these are assumed.")
                       .arg(told.plan.estimatesAssumed)
                       .arg(told.plan.activities.size());
        out << "\n\n";
        std::vector<QStringList> rows{{tr("milestone"), tr("likely plan"), tr("50 %"), tr("80 %"),
                                       tr("95 %"), tr("wished"), QString()}};
        for (const std::size_t m : told.plan.milestones) {
            const ActivityForecast &a = told.forecast.activities[m];
            const std::optional<QDate> date = wished(told, m);
            const bool fixed = appointmentOf(told.records, told.plan.activities[m]).has_value();
            rows.push_back(
                {told.plan.activities[m].name, dayInForecast(told.forecast, a.plannedFinish),
                 dayInForecast(told.forecast, a.ready[0]), dayInForecast(told.forecast, a.ready[1]),
                 dayInForecast(told.forecast, a.ready[2]),
                 !date   ? QString()
                 : fixed ? tr("%1 (appointment)").arg(printDate(*date))
                         : printDate(*date),
                 isLate(told, m) && date ? tr("late at 80 %") : QString()});
        }
        out << columns(rows, {});
    }

    static void printDriving(const ForecastTold &told, QTextStream &out)
    {
        if (told.plan.milestones.empty())
            return;
        const std::size_t goal = told.plan.milestones[told.asked.milestone];
        out << '\n' << tr("What drives “%1”").arg(told.plan.activities[goal].name) << '\n';
        std::vector<QStringList> rows{
            {tr("how often"), tr("what"), tr("planned from"), tr("float to the end")}};
        for (const Drives &one :
             whatDrives(told.plan, told.forecast, told.asked.milestone, kDriversShown)) {
            const ActivityForecast &a = told.forecast.activities[one.activity];
            rows.push_back({percent(one.share), one.name,
                            one.isAgain ? QString() : dayInForecast(told.forecast, a.plannedStart),
                            one.isAgain    ? QString()
                            : one.isLinked ? tr("%1\u00A0d").arg(a.floatDays)
                                           : tr("no link, but the hands")});
        }
        out << columns(rows, {0, 3});
    }

    // What has to be drawn, decided or bought first is ordered when that is done, whatever the day.
    static QString byOf(const ForecastTold &told, const OrderBy &order)
    {
        if (!order.needed)
            return tr("any day");
        if (const auto task = orderedBehind(told.plan, told.forecast, order, told.asked.confidence))
            return tr("at once after “%1”").arg(told.plan.activities[*task].name);
        return dayInForecast(told.forecast, order.latestDay);
    }

    static void printOrders(const ForecastTold &told, QTextStream &out)
    {
        if (told.orders.empty())
            return;
        out << '\n'
            << tr("Order and ask by, at %1 %: each alone on its day, all others ordered and asked "
                  "today.")
                   .arg(told.asked.confidence)
            << '\n';
        std::vector<QStringList> rows{{tr("by"), tr("what"), tr("takes"), tr("price"), QString()}};
        for (const OrderBy &order : told.orders) {
            const Activity &a = told.plan.activities[order.activity];
            rows.push_back({byOf(told, order), a.toAsk ? tr("letter: %1").arg(a.name) : a.name,
                            (a.wait.assumed ? tr("%1 to %2 days, assumed") : tr("%1 to %2 days"))
                                .arg(a.wait.least)
                                .arg(a.wait.most),
                            a.cost ? printMoney(*a.cost) : QString(),
                            a.forShop ? tr("for the shop") : QString()});
        }
        out << columns(rows, {3});
    }

    static void printCash(const ForecastTold &told, QTextStream &out)
    {
        if (told.cash.months.empty())
            return;
        out << '\n' << tr("Cash needed from today to the end of the month") << '\n';
        std::vector<QStringList> rows{{tr("month"), tr("50 %"), tr("80 %"), tr("there is")}};
        for (const CashMonth &month : told.cash.months)
            rows.push_back({month.month.toString(QStringLiteral("yyyy-MM")),
                            printMoney(month.due50), printMoney(month.due80),
                            month.available ? printMoney(*month.available) : tr("not told")});
        out << columns(rows, {1, 2, 3});
        if (told.cash.runsOut)
            out << shortageInWords(told.cash) << '\n';
        for (const QString &gap : told.cash.gaps)
            out << gap << '\n';
    }
};

} // namespace

std::unique_ptr<Command> makeForecastCommand()
{
    return std::make_unique<ForecastCommand>();
}

} // namespace ohmwright
