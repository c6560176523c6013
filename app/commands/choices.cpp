// SPDX-License-Identifier: GPL-3.0-or-later
// ohmwright choices BOOK
#include "core/forecast/choices.h"

#include "app/commands/commands.h"
#include "core/book/book.h"
#include "core/verdicts/judge_book.h"
#include "core/verdicts/verdict_counts.h"

#include <QCoreApplication>
#include <QJsonArray>

#include <algorithm>

namespace ohmwright {

namespace {

using namespace forecast;

class ChoicesCommand final : public Command
{
    Q_DECLARE_TR_FUNCTIONS(ChoicesCommand)

public:
    [[nodiscard]] QString name() const override { return QStringLiteral("choices"); }
    [[nodiscard]] QString summary() const override
    {
        return tr("Choices still open, their options side by side: tasks, cost, checks, dates, and "
                  "the day to decide by. Exit 1 if that day is today.");
    }
    [[nodiscard]] QString arguments() const override { return QStringLiteral("BOOK"); }

    int run(const QCommandLineParser &options, const QStringList &positional,
            CommandIo io) const override
    {
        if (positional.size() != 1)
            return refuse(io, tr("Name one book and nothing more: ohmwright choices BOOK."));
        const Result<std::unique_ptr<Book>> book = openBook(positional[0], io.clock);
        if (!book)
            return refuse(io, book.error());
        const Records &records = (*book)->records();
        const QDate today = io.clock.today();
        const std::vector<ChoiceOutlook> choices =
            openChoices(records, today, {}, records.build().confidencePercent.value_or(80));
        if (options.isSet(QStringLiteral("json")))
            printJson(io, asJson(records, choices, today));
        else
            printText(records, choices, today, io.out);
        const bool now = std::any_of(choices.begin(), choices.end(), [](const ChoiceOutlook &c) {
            return c.decideBy && *c.decideBy <= 0;
        });
        return now ? kExitBadNews : kExitDone;
    }

private:
    static QString day(QDate today, int days)
    {
        return days == plan::kNever ? tr("never") : printDate(today.addDays(days));
    }

    static VerdictCounts verdicts(const Records &records, Id<ChoiceOption> option, QDate today)
    {
        return countVerdicts(judgeBook(withOption(records, *records.find(option)), today));
    }

    static void printText(const Records &records, const std::vector<ChoiceOutlook> &choices,
                          QDate today, QTextStream &out)
    {
        if (choices.empty())
            out << tr("No choice is open.") << '\n';
        for (const ChoiceOutlook &choice : choices) {
            out << choice.question << '\n';
            if (choice.decideBy)
                out << tr("Decide by %1.").arg(day(today, *choice.decideBy)) << '\n';
            std::vector<QStringList> rows{{tr("option"), tr("tasks"), tr("hours"), tr("cost"),
                                           tr("all done at 50 %"), tr("at 80 %"), tr("start by"),
                                           tr("checks: fail"), tr("unknown"), tr("tight"),
                                           tr("hold")}};
            for (const OptionOutlook &option : choice.options) {
                const VerdictCounts checks = verdicts(records, option.option, today);
                rows.push_back(
                    {option.name, QString::number(option.openTasks),
                     QString::number(option.openMinutes / 60.0, 'f', 1),
                     printMoney(option.cost) + (option.unpriced > 0
                                                    ? tr(" and %1 unpriced").arg(option.unpriced)
                                                    : QString()),
                     day(today, option.ready50), day(today, option.ready80),
                     option.startBy ? day(today, *option.startBy) : tr("any day"),
                     QString::number(countOf(Verdict::Fails, checks)),
                     QString::number(countOf(Verdict::Unknown, checks)),
                     QString::number(countOf(Verdict::Tight, checks)),
                     QString::number(countOf(Verdict::Holds, checks))});
            }
            out << columns(rows, {1, 2, 3, 7, 8, 9, 10}) << '\n';
        }
        out.flush();
    }

    static QJsonObject asJson(const Records &records, const std::vector<ChoiceOutlook> &choices,
                              QDate today)
    {
        QJsonArray list;
        for (const ChoiceOutlook &choice : choices) {
            QJsonArray options;
            for (const OptionOutlook &option : choice.options) {
                const VerdictCounts checks = verdicts(records, option.option, today);
                QJsonObject one{{QStringLiteral("key"), records.find(option.option)->key},
                                {QStringLiteral("name"), option.name},
                                {QStringLiteral("tasks"), option.openTasks},
                                {QStringLiteral("work_minutes"), option.openMinutes},
                                {QStringLiteral("cost"), printMoney(option.cost)},
                                {QStringLiteral("unpriced"), option.unpriced},
                                {QStringLiteral("end_at_50"), day(today, option.ready50)},
                                {QStringLiteral("end_at_80"), day(today, option.ready80)},
                                {QStringLiteral("fails"), countOf(Verdict::Fails, checks)},
                                {QStringLiteral("unknown"), countOf(Verdict::Unknown, checks)},
                                {QStringLiteral("tight"), countOf(Verdict::Tight, checks)},
                                {QStringLiteral("holds"), countOf(Verdict::Holds, checks)}};
                if (option.startBy)
                    one.insert(QStringLiteral("start_by"), day(today, *option.startBy));
                options << one;
            }
            QJsonObject one{{QStringLiteral("key"), choice.key},
                            {QStringLiteral("question"), choice.question},
                            {QStringLiteral("options"), options}};
            if (choice.decideBy)
                one.insert(QStringLiteral("decide_by"), day(today, *choice.decideBy));
            list << one;
        }
        return {{QStringLiteral("choices"), list}};
    }
};

} // namespace

std::unique_ptr<Command> makeChoicesCommand()
{
    return std::make_unique<ChoicesCommand>();
}

} // namespace ohmwright
