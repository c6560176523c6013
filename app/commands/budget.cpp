// SPDX-License-Identifier: GPL-3.0-or-later
// ohmwright budget BOOK
#include "core/budget/budget.h"

#include "app/commands/commands.h"
#include "core/book/book.h"

#include <QCoreApplication>
#include <QJsonArray>

namespace ohmwright {

namespace {

class BudgetCommand final : public Command
{
    Q_DECLARE_TR_FUNCTIONS(BudgetCommand)

public:
    [[nodiscard]] QString name() const override { return QStringLiteral("budget"); }
    [[nodiscard]] QString summary() const override
    {
        return tr("Spent, committed, to come, got back and left, by budget line. Exit 1 if the "
                  "money does "
                  "not reach.");
    }
    [[nodiscard]] QString arguments() const override { return QStringLiteral("BOOK"); }

    int run(const QCommandLineParser &options, const QStringList &positional,
            CommandIo io) const override
    {
        if (positional.size() != 1)
            return refuse(io, tr("Name one book and nothing more: ohmwright budget BOOK."));
        const Result<std::unique_ptr<Book>> book = openBook(positional[0], io.clock);
        if (!book)
            return refuse(io, book.error());
        const Budget budget = budgetOf((*book)->records(), io.clock.today());
        if (options.isSet(QStringLiteral("json")))
            printJson(io, asJson(budget));
        else
            printText(budget, io.out);
        return budget.left().minor() < 0 ? kExitBadNews : kExitDone;
    }

private:
    static void printText(const Budget &budget, QTextStream &out)
    {
        std::vector<QStringList> rows{{tr("line (%1)").arg(budget.currency.code()), tr("allowance"),
                                       tr("spent"), tr("committed"), tr("to come"), tr("got back"),
                                       tr("left")}};
        const auto add = [&](const LineSums &line) {
            rows.push_back({line.name, printMoneyNumber(line.allowance),
                            printMoneyNumber(line.spent), printMoneyNumber(line.committed),
                            printMoneyNumber(line.toCome), printMoneyNumber(line.gotBack),
                            printMoneyNumber(line.left())});
        };
        for (const LineSums &line : budget.lines)
            add(line);
        add(budget.total);
        out << columns(rows, {1, 2, 3, 4, 5, 6}) << '\n';
        out << tr("Contingency %1, left with it %2.")
                   .arg(printMoney(budget.contingency), printMoney(budget.left()))
            << '\n';
        if (!budget.total.expectedBack.isZero())
            out << tr("Expected back, not counted yet: %1.")
                       .arg(printMoney(budget.total.expectedBack))
                << '\n';
        if (!budget.shop.isZero())
            out << tr("Bought for the shop, not counted to the build: %1.")
                       .arg(printMoney(budget.shop))
                << '\n';
        for (const QString &gap : budget.gaps)
            out << tr("Not counted: %1").arg(gap) << '\n';
        out.flush();
    }

    static QJsonObject asJson(const LineSums &line)
    {
        return {{QStringLiteral("name"), line.name},
                {QStringLiteral("allowance"), printMoney(line.allowance)},
                {QStringLiteral("spent"), printMoney(line.spent)},
                {QStringLiteral("committed"), printMoney(line.committed)},
                {QStringLiteral("to_come"), printMoney(line.toCome)},
                {QStringLiteral("got_back"), printMoney(line.gotBack)},
                {QStringLiteral("expected_back"), printMoney(line.expectedBack)},
                {QStringLiteral("left"), printMoney(line.left())}};
    }

    static QJsonObject asJson(const Budget &budget)
    {
        QJsonArray lines;
        for (const LineSums &line : budget.lines)
            lines << asJson(line);
        return {{QStringLiteral("currency"), budget.currency.code()},
                {QStringLiteral("lines"), lines},
                {QStringLiteral("total"), asJson(budget.total)},
                {QStringLiteral("contingency"), printMoney(budget.contingency)},
                {QStringLiteral("left"), printMoney(budget.left())},
                {QStringLiteral("shop"), printMoney(budget.shop)},
                {QStringLiteral("gaps"), QJsonArray::fromStringList(budget.gaps)}};
    }
};

} // namespace

std::unique_ptr<Command> makeBudgetCommand()
{
    return std::make_unique<BudgetCommand>();
}

} // namespace ohmwright
